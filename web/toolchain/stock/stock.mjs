// The same core on the same runtime, loaded as Pyodide's introduction says: nothing trimmed, compiled or overlapped.
import { loadPyodide } from "./pyodide.mjs";

const pyodide = await loadPyodide();
await pyodide.loadPackage("numpy");
pyodide.unpackArchive(await (await fetch("core.zip")).arrayBuffer(), "zip");
const request = await (await fetch("request.json")).text();
const reply = pyodide.pyimport("calc.boundary").answer(request);
if (JSON.parse(reply).kind !== "report") throw new Error(reply);
performance.mark("stanchion:first-computed");
