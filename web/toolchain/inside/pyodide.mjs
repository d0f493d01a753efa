// Runs one Python file in the pinned Pyodide under Node: node pyodide.mjs FILE ARGUMENTS...
// A script that fails raises, and Node then ends with an error. The repository is mounted at its own path,
// so that a path means the same on both sides.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { loadPyodide } from "pyodide";

const root = resolve(import.meta.dirname, "../../..");
const [file, ...words] = process.argv.slice(2);
// Another standard library than the stock one, where the shipped one is under test.
const library = process.env.STANCHION_LIBRARY;
// Without the columns of every expression, which only draw marks under the lines of a traceback, the page is a tenth smaller.
const env = { HOME: "/tmp", PYTHONNODEBUGRANGES: "1" };
const pyodide = await loadPyodide({ env, ...(library && { stdLibURL: library }) });
pyodide.FS.mkdirTree(root);
pyodide.mountNodeFS(root, root);
pyodide.pyimport("sys").argv = pyodide.toPy([file, ...words]);
try {
  pyodide.runPython(readFileSync(file, "utf8"), { filename: file });
} catch (error) {
  // Python's own words; Node would print a page of Pyodide's source with them.
  console.error(error.message);
  process.exit(1);
}
