// Does what a person does, one after the other, waiting for what each needs. arguments[0]: rows of [verb, where, text].
const frames = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
const there = async (find, row) => {
  for (let n = 0; n < 300; n += 1) {
    const found = find();
    if (found) return found;
    await frames();
  }
  throw new Error("never there: " + row);
};
// What follows a pause has come when nothing has changed for longer than that.
const still = () => new Promise((done) => {
  let timer;
  const watch = new MutationObserver(() => wait());
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => { watch.disconnect(); done(); }, 250);
  };
  watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  wait();
});
return (async () => {
  for (const [verb, where, text] of arguments[0]) {
    const row = `${verb} ${where}`;
    const first = () => there(() => document.querySelector(where), row);
    if (verb === "tap") (await first()).click();
    if (verb === "open") {
      await first();
      for (const one of document.querySelectorAll(where)) one.open = true;
    }
    if (verb === "wait") await first();
    if (verb === "type") {
      const field = await there(() => document.getElementById(where), row);
      field.focus();
      field.select();
      document.execCommand("insertText", false, text);
      field.blur();
    }
    if (verb === "pick") {
      const list = await there(() => document.getElementById(where), row);
      list.value = text;
      list.dispatchEvent(new Event("change", { bubbles: true }));
    }
    if (verb === "edition") {
      document.documentElement.setAttribute("data-edition", "");
      document.dispatchEvent(new Event("edition"));
    }
    await frames();
  }
  await frames();
  // What is still being worked out cannot be tapped, nor take the focus.
  await there(() => !document.querySelector("#app [inert]"), "all worked out");
  await still();
  return true;
})();
