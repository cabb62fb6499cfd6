// Every word against what is painted behind it, by WCAG 2.2, 1.4.3: 4.5 to 1, or 3 to 1 for large text. Lines for what has less.
const found = new Set();
const parse = (text) => {
  const n = text.match(/[\d.]+/g).map(Number);
  return { rgb: n.slice(0, 3), a: n.length > 3 ? n[3] : 1 };
};
const linear = (c) => ((c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const light = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
const ratio = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
// A background of the page is opaque or not there at all.
const behind = (e) => {
  for (let one = e; one; one = one.parentElement) {
    const ground = parse(getComputedStyle(one).backgroundColor);
    if (ground.a === 1) return ground.rgb;
    if (ground.a > 0) found.add(`${name(one)} has a ground that shines through`);
  }
  return parse(getComputedStyle(document.documentElement).backgroundColor).rgb;
};
const judge = (e, colour, ground, words) => {
  const style = getComputedStyle(e);
  const size = parseFloat(style.fontSize);
  const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
  const has = ratio(parse(colour).rgb, ground);
  if (has < (large ? 3 : 4.5)) found.add(`${name(e)} “${short(words)}” has ${has.toFixed(2)} to 1`);
};
for (const node of texts()) {
  const e = node.parentElement;
  // A control that cannot be used is not held to it.
  if (e.closest(":disabled")) continue;
  if (!e.closest("svg")) {
    judge(e, getComputedStyle(e).color, behind(e), node.data);
    continue;
  }
  // Words in a drawing lie on what is drawn before them, or on the card.
  e.scrollIntoView({ block: "center" });
  const box = e.getBoundingClientRect();
  const under = document.elementsFromPoint(box.left + box.width / 2, box.top + box.height / 2).find((o) => o.matches("path") && !/none|rgba\(0, 0, 0, 0\)/.test(getComputedStyle(o).fill));
  judge(e, getComputedStyle(e).fill, under ? parse(getComputedStyle(under).fill).rgb : behind(e), node.data);
}
for (const e of root.querySelectorAll("input[type=text], select, textarea")) {
  if (!seen(e)) continue;
  const colour = e.value ? getComputedStyle(e).color : getComputedStyle(e, "::placeholder").color;
  judge(e, colour, behind(e), e.value || e.placeholder || e.id);
}
scrollTo(0, 0);
return [...found];
