// Starts the program inside #app; the page carries it packed in #wasm. The state is told by an attribute of <html>:
// "starting", then "running" or "failed". What the program asks of the page around it stands in `shell`.
window.shell = {};
(async () => {
  "use strict";
  const root = document.documentElement;
  const app = document.getElementById("app");
  const still = Array.from(app.childNodes);

  const fail = (error) => {
    // What stood there before the program came is better than nothing, but never replaces a person's work.
    if (root.dataset.state !== "running" || !app.hasChildNodes()) app.replaceChildren(...still);
    root.dataset.state = "failed";
    console.error(error);
  };

  // Two characters are a number of 31 bits: digits to the base 46341, the first of them U+00A0 (160).
  const unpack = (packed) => {
    const text = packed.textContent;
    const bytes = new Uint8Array(packed.dataset.bytes);
    let held = 0, bits = 0, n = 0;
    const add = (group, more) => {
      held = held << more | group;
      bits += more;
      while (bits > 7) bytes[n++] = held >> (bits -= 8);
    };
    for (let i = 0; i < text.length; i += 2) {
      const group = (text.charCodeAt(i) - 160) * 46341 + text.charCodeAt(i + 1) - 160;
      add(group >>> 15, 16);
      add(group & 32767, 15);
    }
    return unlzma(bytes, +packed.dataset.whole);
  };
  // What was packed with the program is put in place as it is; the policy names it by its hash.
  const place = (name, bytes) => {
    const element = document.createElement(name);
    element.dataset.packed = "";
    element.textContent = new TextDecoder().decode(bytes);
    document.head.append(element);
  };

  // Hands out this page as a file, as it was before the program came, with these records in it.
  shell.copy = (records, name) => {
    const page = root.cloneNode(true);
    const part = (selector) => page.querySelector(selector);
    for (const attribute of root.attributes) if (attribute.name !== "lang") page.removeAttribute(attribute.name);
    // The file belongs to no site: it may reach nothing.
    for (const element of page.querySelectorAll("[data-site], [data-packed]")) element.remove();
    part("[http-equiv]").content = part("[http-equiv]").content.replaceAll(" 'self'", "");
    part("#app").replaceChildren(...still.map((node) => node.cloneNode(true)));
    // Read back as the same JSON; nothing in it can end its element.
    part("#records").textContent = records.replaceAll("<", "\\u003c");
    const link = document.createElement("a");
    // In UTF-16, as this page came: two bytes a character, the low one first on every machine that has a browser.
    const text = "\ufeff<!doctype html>\n" + page.outerHTML;
    const units = Uint16Array.from(text, (_, i) => text.charCodeAt(i));
    link.href = URL.createObjectURL(new Blob([units], { type: "text/html" }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  };

  // An error nobody caught comes from the program and leaves it stopped midway.
  addEventListener("error", (event) => event.error && fail(event.error));
  addEventListener("unhandledrejection", (event) => fail(event.reason));

  try {
    root.dataset.state = "starting";
    const packed = document.getElementById("wasm");
    const whole = unpack(packed);
    const [code, style] = packed.dataset.parts.split(" ").map(Number);
    place("style", whole.subarray(code, code + style));
    place("script", whole.subarray(code + style));
    const program = whole.subarray(0, code);
    // Never `new WebAssembly.Module`: one engine refuses large programs there.
    await wasm_bindgen({ module_or_path: await WebAssembly.compile(program) });
    // The first drawing is done in a task of its own; one that fails has been heard of after this.
    await new Promise((resolve) => setTimeout(resolve));
    if (root.dataset.state === "starting") root.dataset.state = "running";
  } catch (error) {
    fail(error);
  }
})();
