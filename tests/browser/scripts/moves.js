// Lines for whatever moves, or would move, although the person wants none of it.
const found = document.getAnimations().map((a) => `${name(a.effect.target)} moves`);
for (const e of document.querySelectorAll("*")) {
  const style = getComputedStyle(e);
  const long = (times) => times.split(",").some((t) => parseFloat(t) > 0);
  if (long(style.transitionDuration)) found.push(`${name(e)} has a transition`);
  if (style.animationName !== "none") found.push(`${name(e)} has an animation`);
  if (style.scrollBehavior === "smooth") found.push(`${name(e)} scrolls smoothly`);
}
return [...new Set(found)];
