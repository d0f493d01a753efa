"""Inside Pyodide: which modules the core needs, found by importing all of it and letting it answer its demo jobs.

Arguments: the file to write, a JSON file of the modules named in the core's source, the folders to import from.
Little is imported here, since what this file imports counts as needed too.
"""

import importlib
import json
import sys

target, names, *folders = sys.argv[1:]
sys.path[:0] = folders
with open(names) as file:
    named = json.load(file)
for name in named:
    try:
        importlib.import_module(name)
    except ModuleNotFoundError as problem:
        # "from a import b" names a.b, which may be a function; anything else that is missing is an error.
        parent, _, last = name.rpartition(".")
        if problem.name != name or not hasattr(sys.modules.get(parent), last):
            raise

import numpy as np

from calc.boundary import answer
from calc.demo import jobs
from calc.quantities.entry import pint_lines

for job in jobs().values():
    reply = json.loads(answer(json.dumps({"kind": "size", "job": job})))
    if reply["kind"] != "report":
        raise RuntimeError(f"a demo job cannot be sized: {reply}")
pint_lines()  # pint imports its parts when it is asked
for broken in ("", "{}", '{"kind": "size", "job": 1}'):
    if json.loads(answer(broken))["kind"] != "failure":
        raise RuntimeError(f"the core took this for a request: {broken}")
# numpy imports what it needs to print and to complain only when it does.
repr(np.linspace(0.0, 1.0, 3)), str(np.float64(1.0))

found = {name: getattr(getattr(module, "__spec__", None), "origin", None) for name, module in sys.modules.items()}
with open(target, "w") as file:
    json.dump({name: origin for name, origin in sorted(found.items()) if origin}, file, indent=1)
