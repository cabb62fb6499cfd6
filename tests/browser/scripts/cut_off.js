// Lines for text that is cut off, stands out of its box, lies over other text, or makes the page wider than the window.
const found = [];
const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
if (wide > 0) found.push(`the page is ${wide} wider than the window`);
const BOXES = "button, .entry, .option, .card, .note, .answer, .top, .sheet, .edition, td, th, li, dd, dt, p, label, summary";
const all = [];
for (const node of texts()) {
  const own = node.parentElement;
  // A formula that is too wide is scrolled in its own line; a text to copy in its own frame.
  const scrolls = own.closest(arguments[0] === "large" ? "math, pre, table.pieces" : "math, pre");
  const box = scrolls ? scrolls.parentElement : own.closest(BOXES);
  for (const r of rects(node)) {
    const line = `${name(own)} “${short(node.data)}”`;
    // The box of a letter is taller than what is drawn of it.
    const high = Math.max(4, 0.2 * r.height);
    if (!scrolls) {
      if (r.left < -1 || r.right > document.documentElement.clientWidth + 1) found.push(`${line} leaves the window`);
      if (box && !box.matches("dialog")) {
        const b = box.getBoundingClientRect();
        if (r.left < b.left - 1 || r.right > b.right + 1 || (!own.closest("svg") && (r.top < b.top - high || r.bottom > b.bottom + high)))
          found.push(`${line} stands out of ${name(box)}`);
      }
      for (const e of ancestors(node)) {
        const style = getComputedStyle(e);
        if (style.overflowX === "visible" && style.overflowY === "visible") continue;
        const b = e.getBoundingClientRect();
        if (style.overflowX !== "visible" && (r.left < b.left - 1 || r.right > b.right + 1)) found.push(`${line} is cut off by ${name(e)}`);
        const scrollable = /auto|scroll/.test(style.overflowY); // what scrolls downwards is reached
        if (!scrollable && style.overflowY !== "visible" && (r.top < b.top - high || r.bottom > b.bottom + high)) found.push(`${line} is cut off by ${name(e)}`);
      }
      all.push([node, r, line]);
    }
  }
}
// What is drawn on another layer may lie over the rest of the page.
const layer = (node) => [...ancestors(node)].find((e) => /sticky|fixed/.test(getComputedStyle(e).position)) || document.body;
const layers = new Map();
for (const row of all) {
  const key = layer(row[0]);
  if (!layers.has(key)) layers.set(key, []);
  layers.get(key).push(row);
}
for (const rows of layers.values()) {
  rows.sort((a, b) => a[1].top - b[1].top);
  for (let i = 0; i < rows.length; i += 1) {
    const [a, r, line] = rows[i];
    for (let k = i + 1; k < rows.length && rows[k][1].top < r.bottom; k += 1) {
      const [b, s, other] = rows[k];
      if (a === b) continue;
      const across = Math.min(r.right, s.right) - Math.max(r.left, s.left);
      const down = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
      // A line's box is taller than its letters.
      if (across > 2 && down > 0.4 * Math.min(r.height, s.height)) found.push(`${line} lies over ${other}`);
    }
  }
}
// What stands in fields and lists, which has no boxes of its own.
const pen = document.createElement("canvas").getContext("2d");
for (const e of root.querySelectorAll("input[type=text], select")) {
  if (!seen(e)) continue;
  const style = getComputedStyle(e);
  const room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - (e.matches("select") ? 16 : 0);
  const shown = e.matches("select") ? e.selectedOptions[0]?.text || "" : e.value || e.placeholder;
  pen.font = `${e.value || e.matches("select") ? style.fontWeight : 400} ${style.fontSize} ${style.fontFamily}`;
  const needs = pen.measureText(shown).width;
  // A name may be as long as the person likes, and a number may come with its unit: the field scrolls, and what was read
  // stands in full under it.
  const own = /label$|draft-name/.test(e.id) || (/[a-z]/i.test(e.value) && document.getElementById(`${e.id}-help`)?.textContent);
  // A list has one line; what does not fit ends in an ellipsis and stands in full where it opens. Only large text may need that.
  const large = arguments[0] === "large" && e.matches("select") && style.textOverflow === "ellipsis";
  if (needs > room + 1 && !own && !large) found.push(`${name(e)} cuts off “${shown}” by ${Math.round(needs - room)}`);
}
return [...new Set(found)];
