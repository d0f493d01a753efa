// In the page: type into a field and wait for another figure in the result strip, then for its +/-; the milliseconds of each
// edit to both, less what the page waits for the hand to rest before it asks for a +/-.
export async function timeEdits([field, values, rest]) {
  const input = document.querySelector(`input[name="${field}"]`);
  const strip = document.querySelector("[data-strip]");
  if (!input || !strip) throw new Error(`the page shows no ${input ? "result strip" : `field ${field}`}`);
  const until = (seen, words) =>
    new Promise((resolve, reject) => {
      const limit = setTimeout(() => reject(new Error(`no ${words} 20 s after the edit`)), 20_000);
      const watch = () => {
        if (!seen(strip.textContent)) return requestAnimationFrame(watch);
        clearTimeout(limit);
        resolve(performance.now());
      };
      watch();
    });
  const spent = { figures: [], bands: [] };
  for (const value of values) {
    await new Promise((resolve) => setTimeout(resolve, 400));
    const before = strip.textContent;
    const started = performance.now();
    input.value = value;
    input.dispatchEvent(new Event("input", { bubbles: true }));
    spent.figures.push((await until((text) => text !== before, `new figure for ${field} ${value}`)) - started);
    spent.bands.push((await until((text) => text.includes("±"), `+/- for ${field} ${value}`)) - started - rest);
  }
  return spent;
}
