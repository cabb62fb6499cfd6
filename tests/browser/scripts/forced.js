// Forced colours: lines for controls without an edge that can be seen, and for those whose focus cannot.
const found = [];
const edge = (e) => {
  const style = getComputedStyle(e);
  const of = (side) => style[`border${side}Style`] !== "none" && parseFloat(style[`border${side}Width`]) >= 1 && style[`border${side}Color`] !== style.backgroundColor;
  return of("Top") && of("Bottom");
};
const ring = (e) => {
  const style = getComputedStyle(e);
  return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 ? `${style.outlineWidth} ${style.outlineStyle} ${style.outlineColor} ${style.outlineOffset}` : "";
};
document.activeElement.blur();
const state = (e) => {
  const style = getComputedStyle(e);
  return [ring(e), style.borderTopColor, style.borderTopWidth, style.backgroundColor].join("|");
};
for (const e of root.querySelectorAll(CONTROLS)) {
  const hit = target(e);
  if (!seen(hit) || e.disabled) continue;
  const line = `${name(e)} “${short(hit.textContent)}”`;
  const framed = hit.closest(".entry") || hit;
  if (!e.matches("[tabindex='0']") && !edge(framed)) found.push(`${line} has no edge`);
  const all = [framed, hit, e];
  const before = all.map(state).join();
  e.focus();
  const after = all.map(state).join();
  if (!all.some((one) => ring(one) && getComputedStyle(one).opacity !== "0")) found.push(`${line} shows no focus`);
  else if (before === after) found.push(`${line} looks the same with the focus`);
  e.blur();
}
// What is picked differs by more than a wash of colour.
for (const e of root.querySelectorAll(".option:has(input:checked), .option[aria-current=true], .piece[aria-pressed=true]")) {
  const other = [...e.parentElement.parentElement.querySelectorAll(`.${e.classList[0]}`)].find((o) => o.matches(".option:has(input:not(:checked)), .option:not([aria-current], :has(input)), .piece[aria-pressed=false]"));
  if (other && state(e) === state(other)) found.push(`${name(e)} “${short(e.textContent)}” looks like what is not picked`);
}
return found;
