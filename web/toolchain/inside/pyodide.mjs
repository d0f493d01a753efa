// Runs one Python file in the pinned Pyodide under Node: node pyodide.mjs FILE ARGUMENTS...
// A script that fails raises, and Node then ends with an error. The repository is mounted at its own path,
// so that a path means the same on both sides.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { loadPyodide } from "pyodide";

const root = resolve(import.meta.dirname, "../../..");
const [file, ...words] = process.argv.slice(2);
const pyodide = await loadPyodide({ env: { HOME: "/tmp", CI: process.env.CI ?? "" } });
pyodide.FS.mkdirTree(root);
pyodide.mountNodeFS(root, root);
pyodide.pyimport("sys").argv = pyodide.toPy([file, ...words]);
pyodide.runPython(readFileSync(file, "utf8"), { filename: file });
