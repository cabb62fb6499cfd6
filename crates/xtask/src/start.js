// Starts the program inside #app. The saved page carries it packed in #wasm; the site fetches it from beside the page.
// The state is told by an attribute of <html>: "starting", then "running" or "failed".
(async () => {
  "use strict";
  const root = document.documentElement;
  const app = document.getElementById("app");
  const still = Array.from(app.childNodes);

  const fail = (error) => {
    // What stood there before the program came is better than nothing, but never replaces a person's work.
    if (root.dataset.state !== "running" || !app.hasChildNodes()) app.replaceChildren(...still);
    root.dataset.state = "failed";
    console.error(error);
  };

  const unpack = async (text) => {
    const letters = atob(text.trim());
    const bytes = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
    const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return new Response(plain).arrayBuffer();
  };

  const bring = async (address) => {
    const answer = await fetch(address);
    if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
    return answer.arrayBuffer();
  };

  // An error nobody caught comes from the program and leaves it stopped midway.
  addEventListener("error", (event) => event.error && fail(event.error));
  addEventListener("unhandledrejection", (event) => fail(event.reason));

  try {
    root.dataset.state = "starting";
    const packed = document.getElementById("wasm");
    const program = packed ? await unpack(packed.textContent) : await bring("page_bg.wasm");
    // Never `new WebAssembly.Module`: one engine refuses large programs there.
    await wasm_bindgen({ module_or_path: await WebAssembly.compile(program) });
    // The first drawing is done in a task of its own; one that fails has been heard of after this.
    await new Promise((resolve) => setTimeout(resolve));
    if (root.dataset.state === "starting") root.dataset.state = "running";
  } catch (error) {
    fail(error);
  }
})();
