// Runs axe; a line for each rule broken or undecided, with the kind of element it is about.
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const kind = (target) => {
  const element = document.querySelector(target);
  if (!element) return target;
  const named = (e) => {
    const of = e.getAttribute("class");
    return e.localName + (of ? "." + of.trim().split(/\s+/).join(".") : "");
  };
  const above = element.parentElement;
  return (above ? named(above) + " > " : "") + named(element);
};
return axe
  .run(document, { runOnly: { type: "tag", values: tags }, resultTypes: ["violations", "incomplete"] })
  .then((found) => {
    const lines = new Set();
    for (const [name, rules] of [["violation", found.violations], ["undecided", found.incomplete]]) {
      for (const rule of rules) {
        for (const node of rule.nodes) {
          const more = name === "violation" ? " " + node.failureSummary.replace(/\s+/g, " ") + " " + node.html.slice(0, 160) : "";
          // Why it is undecided, where the rule says so; else which element.
          const key = node.any.map((check) => check.data && check.data.messageKey).find(Boolean);
          const where = name === "undecided" && key ? key : kind(node.target[0]);
          lines.add(`${name} ${rule.id} ${where}${more}`);
        }
      }
    }
    return [...lines];
  });
