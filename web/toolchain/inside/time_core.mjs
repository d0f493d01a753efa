// In the page: ask the shipped core one thing after another; the milliseconds of each answer.
export async function timeCore([script, texts]) {
  const name = JSON.stringify({ runtime: new URL("runtime/", document.baseURI).href, verify: true });
  const worker = new Worker(script, { type: "module", name });
  const spent = [];
  let asked = 0;
  return new Promise((resolve, reject) => {
    const ask = () => {
      asked = performance.now();
      worker.postMessage({ id: spent.length, text: texts[spent.length] });
    };
    worker.onerror = (event) => reject(new Error(event.message));
    worker.onmessage = ({ data }) => {
      if (data.type === "failed" || data.type === "broken") return reject(new Error(JSON.stringify(data)));
      if (data.type === "answer") {
        if (!data.text.startsWith('{"kind":"report"')) return reject(new Error(data.text));
        spent.push(performance.now() - asked);
      }
      if (spent.length === texts.length) {
        worker.terminate();
        return resolve(spent);
      }
      if (data.type === "answer" || data.type === "ready") ask();
    };
  });
}
