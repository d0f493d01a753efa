// In the page: type into a field and wait for another figure in the result strip; the milliseconds of each edit.
export async function timeEdits([field, values]) {
  const input = document.querySelector(`input[name="${field}"]`);
  const strip = document.querySelector("[data-strip]");
  if (!input || !strip) throw new Error(`the page shows no ${input ? "result strip" : `field ${field}`}`);
  const settled = () => new Promise((resolve) => setTimeout(resolve, 400));
  const spent = [];
  for (const value of values) {
    await settled();
    const before = strip.textContent;
    const started = performance.now();
    input.value = value;
    input.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve, reject) => {
      const limit = setTimeout(() => reject(new Error(`no new figure 20 s after ${field} became ${value}`)), 20_000);
      const watch = () => {
        if (strip.textContent === before) return requestAnimationFrame(watch);
        clearTimeout(limit);
        resolve();
      };
      watch();
    });
    spent.push(performance.now() - started);
  }
  return spent;
}
