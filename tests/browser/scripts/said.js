// Everything the page says in words, seen or told: one line each, with where it stands.
const found = new Set();
const say = (e, text) => {
  if (/[a-zß-ž]/i.test(text)) found.add(`${e.id && !e.closest("svg") ? "#" + e.id : name(e)}\t${text.replace(/\s+/g, " ").trim()}`);
};
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walk.nextNode()) {
  const e = walk.currentNode.parentElement;
  if (e.closest("script, style, math, pre, textarea") || !e.closest("#app")) continue;
  if (arguments[0].some((selector) => e.closest(selector))) continue;
  say(e, walk.currentNode.data);
}
for (const e of document.querySelectorAll("[placeholder], [aria-label], [title], [alt]"))
  for (const attribute of ["placeholder", "aria-label", "title", "alt"])
    if (e.hasAttribute(attribute) && !arguments[0].some((selector) => e.closest(selector))) say(e, e.getAttribute(attribute));
return [...found];
