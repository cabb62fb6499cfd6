// Lines for targets that are too small or too near to another. What is used at the bench with wet hands is 56 px; the rest 48 px.
const found = [];
const boxes = [];
for (const e of root.querySelectorAll(CONTROLS)) {
  if (e.matches("[tabindex='0']:not(button, input, select, textarea, summary)")) continue;
  const hit = target(e);
  if (!seen(hit) || e.disabled && !seen(hit)) continue;
  const r = hit.getBoundingClientRect();
  const bench = e.matches(".entry *, .option *, .option, .button, .piece, .exact summary");
  const least = bench ? 56 : 48;
  if (r.height < least - 0.01 || r.width < 48 - 0.01)
    found.push(`${name(e)} “${short(hit.textContent)}” is ${r.width.toFixed(0)}x${r.height.toFixed(0)}, wants ${least}`);
  boxes.push([e, hit, r, bench]);
}
for (let i = 0; i < boxes.length; i += 1) {
  for (let k = i + 1; k < boxes.length; k += 1) {
    const [a, hit, r, benchA] = boxes[i];
    const [b, other, s, benchB] = boxes[k];
    // The minus, the number and the plus of a count are one field.
    if (hit === other || hit.closest(".entry") && hit.closest(".entry") === other.closest(".entry")) continue;
    if (hit.contains(other) || other.contains(hit)) continue;
    const layer = (e) => e.closest(".top, .edition, .sheet");
    if (layer(a) !== layer(b)) continue;
    const across = Math.max(r.left, s.left) - Math.min(r.right, s.right);
    const down = Math.max(r.top, s.top) - Math.min(r.bottom, s.bottom);
    const apart = Math.max(across, down);
    const least = benchA && benchB ? 12 : 0;
    if (apart < least - 0.01)
      found.push(`${name(a)} “${short(hit.textContent)}” is ${apart.toFixed(1)} from ${name(b)} “${short(other.textContent)}”, wants ${least}`);
  }
}
return found;
