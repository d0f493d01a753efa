"""Inside Pyodide on the shipped files alone: import every module of a list. Arguments: the list's JSON file, the folder."""

import importlib
import json
import sys
from pathlib import Path

names, folder = sys.argv[1:]
sys.path.insert(0, folder)
for name in json.loads(Path(names).read_text()):
    try:
        importlib.import_module(name)
    except ModuleNotFoundError:
        # "from a import b" names a.b, which may be a function.
        parent, _, last = name.rpartition(".")
        if not hasattr(sys.modules.get(parent), last):
            raise
# The test is worth something only if nothing came from the stock library or the desk.
for name in ("json", "numpy", "pint", "calc"):
    origin = getattr(sys.modules[name].__spec__, "origin", None)
    if Path(str(origin)).suffix != ".pyc":
        raise RuntimeError(f"{name} came from {origin}, not from the shipped bytecode")
