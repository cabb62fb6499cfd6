// Turns every text into a longer one with accents, as another language would have it: words longer by two fifths, brackets
// at the ends. Numbers, units, formulas and the name of the page stay.
const UNITS = /^(?:[kmcdµn]?(?:A|V|m|g|L|l|s|h|S|C|W|mol|Hz)|min|Ah|mil|in|oz|gal|ft|dm|kg|mA|mV)$/;
const accents = { a: "á", e: "ë", i: "î", o: "ö", u: "û", A: "Å", E: "É", I: "Ï", O: "Ø", U: "Ü", y: "ý", n: "ñ", c: "ç", s: "š" };
const longer = (word) => {
  if (word.length < 2 || UNITS.test(word)) return word;
  const letters = [...word].map((c) => accents[c] || c);
  const more = Math.ceil(0.4 * letters.length);
  for (let n = 0; n < more; n += 1) letters.splice(1 + ((n * 2) % letters.length), 0, letters[1 + ((n * 2) % (letters.length - 1))]);
  return letters.join("");
};
const other = (text) => text.replace(/\S(?:.*\S)?/s, (inner) => `[${inner.replace(/(?<![\p{L}/·])\p{L}+(?![\p{L}²³/])/gu, longer)}]`);
let count = 0;
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const nodes = [];
while (walk.nextNode()) nodes.push(walk.currentNode);
for (const node of nodes) {
  const e = node.parentElement;
  if (e.closest("script, style, math, pre, textarea, .unit, .name") || !e.closest("#app") || !/\p{L}{2}/u.test(node.data)) continue;
  node.data = other(node.data);
  count += 1;
}
for (const e of document.querySelectorAll("[placeholder]")) if (/\p{L}{2}/u.test(e.placeholder)) e.placeholder = other(e.placeholder);
return [String(count)];
