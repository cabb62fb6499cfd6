// Keeps one edition of the page, whole or not at all, and answers from it. EDITION and FILES (names with their SHA-256)
// are written above this when the site is packaged, so that every change of a file changes this one too.
"use strict";
// Other pages of the same origin keep things here as well.
const OURS = `ionwright ${registration.scope} `;
const SHELF = OURS + EDITION;

const digest = async (bytes) => {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
};

const keep = async () => {
  const shelf = await caches.open(SHELF);
  await Promise.all(Object.entries(FILES).map(async ([name, wanted]) => {
    const answer = await fetch(name, { cache: "reload" });
    const bytes = await answer.arrayBuffer();
    // A server in the middle of an update hands out files of two editions.
    if (!answer.ok || await digest(bytes) !== wanted) throw new Error(`${name} is not of edition ${EDITION}`);
    const headers = { "content-type": answer.headers.get("content-type") ?? "" };
    await shelf.put(name, new Response(bytes, { headers }));
  }));
};

const tidy = async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== SHELF) await caches.delete(name);
  }
  await clients.claim();
};

const answer = async (request) => {
  const { origin, pathname } = new URL(request.url);
  const page = request.mode === "navigate" && (origin + pathname).replace(/index\.html$/, "") === registration.scope;
  const kept = await caches.match(page ? registration.scope : request, { cacheName: SHELF, ignoreSearch: true });
  return kept ?? fetch(request);
};

addEventListener("install", (event) => event.waitUntil(keep()));
addEventListener("activate", (event) => event.waitUntil(tidy()));
addEventListener("fetch", (event) => {
  if (event.request.method === "GET") event.respondWith(answer(event.request));
});
// Never unasked: a person may be in the middle of a run.
addEventListener("message", (event) => event.data === "take over" && skipWaiting());
