// The installed page: kept by `worker.js`, so that it opens without the network. Says by an attribute of <html> and an
// event that a newer edition waits, and takes it when the person says so. Only a page with a manifest is a site's.
(() => {
  "use strict";
  const keeper = navigator.serviceWorker;
  if (!keeper || !document.querySelector("link[rel=manifest]")) return;
  let asked = false;
  const register = async () => {
    const kept = await keeper.register("worker.js", { updateViaCache: "none" });
    const look = () => {
      // The first edition waits too, but takes the place of none.
      if (!kept.waiting || !kept.active) return;
      document.documentElement.dataset.edition = "waiting";
      document.dispatchEvent(new Event("edition"));
    };
    shell.takeOver = () => {
      asked = true;
      // Another window may have been faster.
      if (kept.waiting) kept.waiting.postMessage("take over");
      else location.reload();
    };
    look();
    kept.addEventListener("updatefound", () => kept.installing?.addEventListener("statechange", look));
    // A page on a home screen is seldom loaded anew. No answer is as good as no news.
    document.addEventListener("visibilitychange", () => document.hidden || kept.update().catch(() => {}));
  };
  keeper.addEventListener("controllerchange", () => asked && location.reload());
  // A browser that keeps nothing still shows the page.
  register().catch((error) => console.warn(error));
})();
