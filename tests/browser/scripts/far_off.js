// Reduces a picture of the window to 90x200 and measures the current to set in it. arguments[0]: the picture in base 64.
const bytes = Uint8Array.from(atob(arguments[0]), (c) => c.charCodeAt(0));
return (async () => {
  const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }), {
    resizeWidth: 90, resizeHeight: 200, resizeQuality: "high",
  });
  const canvas = new OffscreenCanvas(90, 200);
  const pen = canvas.getContext("2d");
  pen.drawImage(picture, 0, 0);
  const linear = (c) => ((c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  const box = document.getElementById("set").getBoundingClientRect();
  const [x, y] = [Math.floor(box.left / 4), Math.floor(box.top / 4)];
  const [w, h] = [Math.ceil(box.width / 4), Math.ceil(box.height / 4)];
  const data = pen.getImageData(x, y, w, h).data;
  const light = [];
  for (let n = 0; n < data.length; n += 4)
    light.push(0.2126 * linear(data[n]) + 0.7152 * linear(data[n + 1]) + 0.0722 * linear(data[n + 2]));
  // The ground is the commonest lightness, the ink what is farthest from it.
  const sorted = [...light].sort((a, b) => a - b);
  const ground = sorted[sorted.length >> 1];
  const far = light.map((l) => Math.abs(l - ground));
  const ratio = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  // What a tenth of the ink's points reach at least.
  const ink = light.filter((l) => ratio(l, ground) > 1.5).sort((a, b) => Math.abs(b - ground) - Math.abs(a - ground));
  const contrast = ink.length ? ratio(ink[Math.floor(ink.length / 4)], ground) : 1;
  const rows = [...Array(h).keys()].filter((row) => light.slice(row * w, (row + 1) * w).filter((l) => ratio(l, ground) > 3).length > 1);
  const sizes = [...document.querySelectorAll("main *")]
    .filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()) && !e.closest("#set") && e.getBoundingClientRect().top < 800 && e.offsetWidth > 1)
    .map((e) => parseFloat(getComputedStyle(e).fontSize));
  const own = parseFloat(getComputedStyle(document.getElementById("set")).fontSize);
  const blob = await canvas.convertToBlob();
  const text = btoa(String.fromCharCode(...new Uint8Array(await blob.arrayBuffer())));
  return [
    JSON.stringify({ height: rows.length, contrast, own, next: Math.max(...sizes) }),
    JSON.stringify(text),
  ];
})();
