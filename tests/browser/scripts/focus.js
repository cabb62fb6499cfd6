// Lines where the focus is nowhere, or cannot be seen.
const at = document.activeElement;
if (!at || at === document.body || at === document.documentElement) return ["the focus is lost"];
const ringed = [at, at.closest(".entry"), at.closest(".option")].filter(Boolean).filter((e) => {
  const style = getComputedStyle(e);
  return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && style.opacity !== "0" && style.outlineColor !== style.backgroundColor;
});
const found = [];
if (!ringed.length) found.push(`${name(at)} shows no focus`);
const box = target(at).getBoundingClientRect();
const bar = document.querySelector(".top").getBoundingClientRect();
if (!at.closest(".top, dialog") && (box.bottom < bar.bottom || box.top > innerHeight)) found.push(`${name(at)} is out of view: ${box.top.toFixed(0)} to ${box.bottom.toFixed(0)}, bar to ${bar.bottom.toFixed(0)}`);
return found;
