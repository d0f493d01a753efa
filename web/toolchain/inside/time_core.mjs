// In the page: ask the shipped core the same thing again and again; the milliseconds of each answer.
export async function timeCore([script, text, times]) {
  const name = JSON.stringify({ runtime: new URL("runtime/", document.baseURI).href, verify: true });
  const worker = new Worker(script, { type: "module", name });
  const spent = [];
  let asked = 0;
  return new Promise((resolve, reject) => {
    const ask = () => {
      asked = performance.now();
      worker.postMessage({ id: spent.length, text });
    };
    worker.onerror = (event) => reject(new Error(event.message));
    worker.onmessage = ({ data }) => {
      if (data.type === "failed" || data.type === "broken") return reject(new Error(JSON.stringify(data)));
      if (data.type === "answer") spent.push(performance.now() - asked);
      if (spent.length === times) return worker.terminate(), resolve(spent);
      if (data.type === "answer" || data.type === "ready") ask();
    };
  });
}
