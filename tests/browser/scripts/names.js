// Lines for controls whose name does not hold the words on them, and for places that tell the answer more or less than once.
const found = [];
const plain = (text) => text.replace(/\s+/g, " ").trim().toLowerCase();
for (const e of root.querySelectorAll("button, summary, input, select, textarea, [role=region], dialog")) {
  if (!seen(target(e))) continue;
  const label = e.labels && e.labels.length ? [...e.labels].map((l) => l.textContent).join(" ") : "";
  const by = e.getAttribute("aria-labelledby");
  const own = e.getAttribute("aria-label") || (by && document.getElementById(by).textContent) || label || (e.matches("button, summary") ? e.textContent : "");
  if (!plain(own)) found.push(`${name(e)} has no name`);
  const words = [...(e.matches("button, summary") ? [e] : e.labels || [])].flatMap((l) => [...l.querySelectorAll("*"), l]).filter(seen)
    .flatMap((l) => [...l.childNodes]).filter((n) => n.nodeType === 3 && /[a-z]/i.test(n.data)).map((n) => plain(n.data));
  for (const word of words) if (!plain(own).includes(word)) found.push(`${name(e)} is named “${own}” and reads “${word}”`);
}
const live = [...document.querySelectorAll("[aria-live], [role=status], [role=alert], [role=log], output")];
const known = (e) => e.matches(".help, #take-help, .edition, #measure [role=status]");
const answers = live.filter((e) => !known(e));
if (answers.length !== 1 || !answers[0].matches("p.unseen[role=status]")) found.push(`told by ${answers.map(name).join(" and ")}`);
for (const e of live.filter((one) => one.matches(".help"))) {
  const of = document.querySelector(`[aria-describedby="${e.id}"]`);
  if (!of) found.push(`the message ${e.id} belongs to no field`);
}
const ids = [...document.querySelectorAll("[id]")].map((e) => e.id);
for (const id of new Set(ids.filter((one, n) => ids.indexOf(one) !== n))) found.push(`two elements are called ${id}`);
return found;
