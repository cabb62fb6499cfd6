// The focus is never lost: where what had it goes, or can no longer be used, what stands nearest gets it. Runs beside the
// program, which knows nothing of it.
(() => {
  let way = [];
  addEventListener("focusin", (event) => {
    way = [];
    for (let one = event.target; one; one = one.parentElement) way.push(one);
  });
  new MutationObserver(() => {
    const [own] = way;
    // Who has tapped beside everything wants no focus.
    if (!own || document.activeElement !== document.body || (own.isConnected && !own.disabled)) return;
    const around = way.find((one) => one !== own && one.isConnected);
    // No field: it would call up a keypad.
    around.querySelector("button:not(:disabled), summary, input:checked, select")?.focus();
  }).observe(document.getElementById("app"), { attributes: true, attributeFilter: ["disabled"], childList: true, subtree: true });
})();
