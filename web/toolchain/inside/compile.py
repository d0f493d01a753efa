"""Inside Pyodide: bytecode for the interpreter that will run it (the desk's Python has another magic number).

Argument: a JSON file of [source, target, name, optimize] rows; the name is what a traceback shows. No source: an empty module.
Unchecked-hash invalidation: the files never change once packed, so nothing is compared at import.
"""

import importlib.util
import json
import sys
from importlib._bootstrap_external import _code_to_hash_pyc  # type: ignore[attr-defined]  # the only way to such a file without its source beside it
from pathlib import Path

for source, target, name, optimize in json.loads(Path(sys.argv[1]).read_text()):
    text = Path(source).read_bytes() if source else b""
    code = compile(text, name, "exec", dont_inherit=True, optimize=optimize)
    Path(target).parent.mkdir(parents=True, exist_ok=True)
    Path(target).write_bytes(_code_to_hash_pyc(code, importlib.util.source_hash(text), False))
