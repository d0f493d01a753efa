// The same core on the same runtime, loaded as the introductions of its parts say: nothing trimmed, compiled or overlapped.
import { loadPyodide } from "./pyodide.mjs";

const text = async (name) => (await fetch(name)).text();

const pyodide = await loadPyodide();
await pyodide.loadPackage("numpy");
pyodide.unpackArchive(await (await fetch("core.zip")).arrayBuffer(), "zip");
pyodide.FS.writeFile("request.json", await text("request.json"));
const reply = pyodide.runPython(await text("stock.py"));
if (JSON.parse(reply).kind !== "figures") throw new Error(reply);
performance.mark("stanchion:first-computed");
