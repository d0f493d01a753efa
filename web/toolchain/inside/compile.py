"""Inside Pyodide: bytecode for the interpreter that will run it (the desk's Python has another magic number).

Argument: a JSON file of [source, target, name, optimize] rows; the name is what a traceback shows. No source: an empty module.
Unchecked-hash invalidation: the files never change once packed, so nothing is compared at import.
"""

import ast
import importlib.util
import json
import sys
from importlib import _bootstrap_external as importing
from pathlib import Path


def without_function_docstrings(text: bytes) -> ast.Module:
    """The core's functions are told about at the desk; its classes keep a line, since a dataclass without one writes itself one."""
    tree = ast.parse(text)
    for node in ast.walk(tree):
        if isinstance(node, (ast.Module, ast.FunctionDef, ast.ClassDef)) and ast.get_docstring(node) is not None:
            said = node.body[0].value  # type: ignore[attr-defined]  # a docstring is an expression, as asked above
            if isinstance(node, ast.ClassDef):
                said.value = said.value.partition("\n")[0]
            elif len(node.body) > 1:
                del node.body[0]
            else:
                said.value = ""
    return tree


for source, target, name, optimize in json.loads(Path(sys.argv[1]).read_text()):
    text = Path(source).read_bytes() if source else b""
    stripped = without_function_docstrings(text) if "/calc/" in name else text
    code = compile(stripped, name, "exec", dont_inherit=True, optimize=optimize)
    Path(target).parent.mkdir(parents=True, exist_ok=True)
    Path(target).write_bytes(importing._code_to_hash_pyc(code, importlib.util.source_hash(text), False))  # type: ignore[attr-defined]
