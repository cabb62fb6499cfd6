// Edits every field that can be seen: a wrong entry first, then another right one with a comma. A line for each:
// address, what happened. arguments[0]: their addresses; without any, gives all there are. The clock must stand still meanwhile (`start/local` holds a time).
const frames = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
// Ways out come when nothing was typed for a while: they are no sign of a change.
const without = (e) => [...e.querySelectorAll(".ways")].reduce((text, way) => text.replace(way.textContent, ""), e.textContent);
const answer = () => [...document.querySelectorAll(".give, .detail, #measure p, #measure + *, .bar")].map(without).join("|");
const help = (id) => document.getElementById(`${id}-help`).textContent.trim();
// What is worked out after the answer comes a moment later.
const comes = async (wanted) => {
  for (let n = 0; n < 90 && !wanted(); n += 1) await frames();
  return wanted();
};
const type = async (id, text) => {
  const field = document.getElementById(id);
  field.focus();
  field.select();
  if (text) document.execCommand("insertText", false, text);
  else document.execCommand("delete");
  await frames();
  const during = help(id);
  field.blur();
  await frames();
  return during;
};
return (async (...given) => {
  const lines = [];
  const ids = given;
  // What was worked out for the plan itself has come before the first field is touched.
  for (let still = 0, was = answer(); still < 60; still += 1) {
    await frames();
    if (answer() !== was) [still, was] = [0, answer()];
  }
  if (!ids.length) return [...document.querySelectorAll("main input[inputmode=decimal]")].filter((e) => e.offsetWidth).map((e) => e.id);
  for (const id of ids) {
    const field = () => document.getElementById(id);
    if (!field()) continue;
    const first = field().value;
    const hint = field().placeholder;
    const before = answer();
    const told = [];
    // A wrong entry: kept, said on leaving and not before.
    const during = await type(id, "abc");
    const message = help(id);
    if (field().value !== "abc") told.push(`does not keep the wrong entry but holds “${field().value}”`);
    if (during.includes("abc")) told.push("speaks before it is left");
    if (!message.includes("abc") || field().getAttribute("aria-invalid") !== "true") told.push(`says “${message}” of a wrong entry`);
    const bounds = message.match(/from (-?[\d.,]+)[^\d-]*? to (-?[\d.,]+)/);
    // Another right one.
    const usual = parseFloat((first || hint).replace(",", "."));
    let other;
    if (/16:20/.test(message) || /start\/local|clock/.test(id)) other = "17:45";
    else if (!bounds) told.push(`does not say what is fine: “${message}”`);
    else {
      const [least, most] = bounds.slice(1).map(Number);
      const count = field().closest(".entry").querySelector(".step");
      let value = Number.isFinite(usual) && usual > 0 ? usual * 1.25 : least > 0 ? Math.sqrt(least * most) : most / 3;
      if (value > most) value = Number.isFinite(usual) ? usual * 0.8 : most;
      if (value < least) value = least;
      other = count ? String(Math.max(1, Math.round(usual || 1) + 1)) : String(Number(value.toPrecision(3))).replace(".", ",");
      if (!count && !other.includes(",")) other += ",0";
    }
    if (other) {
      await type(id, other);
      if (!field()) told.push("is gone after another entry");
      else {
        if (field().getAttribute("aria-invalid") === "true") told.push(`refuses “${other}”: ${help(id)}`);
        if (field().value !== other) told.push(`turns “${other}” into “${field().value}”`);
        if (other.includes(",") && !help(id).includes("read as")) told.push(`does not repeat “${other}” but says “${help(id)}”`);
        if (!(await comes(() => answer() !== before))) told.push("changes nothing");
      }
    }
    if (field()) await type(id, first);
    if (!(await comes(() => answer() === before))) {
      const after = answer();
      const n = [...before].findIndex((c, k) => c !== after[k]);
      told.push(`does not go back with its text: from “${before.slice(n - 20, n + 60)}” to “${after.slice(n - 20, n + 60)}”`);
    };
    lines.push(`${id}\t${told.join("; ")}`);
  }
  return lines;
})(...arguments[0]);
