// What several measurements share; stands before each of them.
const seen = (e) => {
  if (e.closest(".unseen, [hidden]")) return false;
  const style = getComputedStyle(e);
  if (style.visibility === "hidden" || style.clipPath !== "none" || style.display === "none") return false;
  const box = e.getBoundingClientRect();
  return box.width > 1 && box.height > 1;
};
// While a dialogue is open nothing behind it counts.
const dialog = document.querySelector("dialog");
const root = dialog || document.body;
const name = (e) => `${e.localName}${e.id ? "#" + e.id : ""}${e.className && e.className.trim ? "." + e.className.trim().replace(/\s+/g, ".") : ""}`;
const short = (text) => text.trim().replace(/\s+/g, " ").slice(0, 50);
// Text nodes that can be seen.
const texts = () => {
  const all = [];
  const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const node = walk.currentNode;
    if (!node.data.trim() || node.parentElement.closest("script, style, template, option")) continue;
    if (seen(node.parentElement) && ![...ancestors(node)].some((e) => getComputedStyle(e).clipPath !== "none")) all.push(node);
  }
  return all;
};
function* ancestors(node) {
  for (let e = node.parentElement; e; e = e.parentElement) yield e;
}
const rects = (node) => {
  const range = document.createRange();
  range.selectNodeContents(node);
  return [...range.getClientRects()].filter((r) => r.width > 0.5);
};
const CONTROLS = "button, input, select, textarea, summary, a[href], [tabindex='0']";
// What a finger hits: the whole label of a card, the whole frame of a field.
const target = (e) => e.closest("label.option") || (e.matches("input, select") && e.closest(".entry")) || e;
