// In the page: wait for the first computed answer, then tell the moments of this visit [ms from its navigation].
export async function marks([names, limit]) {
  const at = (name) => performance.getEntriesByName(`stanchion:${name}`)[0]?.startTime ?? null;
  while (at("first-computed") === null) {
    if (performance.now() > limit) throw new Error(`nothing computed: ${document.body.textContent.slice(0, 400)}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return Object.fromEntries(names.map((name) => [name, at(name)]));
}
