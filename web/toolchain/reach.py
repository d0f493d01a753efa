"""Which modules the page's Python needs: what the core's source names, then what importing and using it brings in."""

from __future__ import annotations

import ast
import json
from collections.abc import Iterator
from importlib.util import resolve_name
from pathlib import Path

from .places import BUILD, INSIDE, ROOT
from .sources import NUMPY, PURE, run_inside
from .stamp import Stamp, key_of

CORE = ROOT / "calc"
REACHED = BUILD / "reached.json"
NAMED = BUILD / "named.json"


def reached() -> dict[str, str]:
    """Each module the core needs and the file it came from, as found inside Pyodide."""
    stamp = Stamp("reached")
    key = key_of(Stamp("sources").path, CORE, INSIDE, Path(__file__))
    if not stamp.fresh(key):
        stamp.clear()
        NAMED.write_text(json.dumps(named_by_core()))
        run_inside("reach.py", REACHED, NAMED, ROOT, NUMPY, PURE)
        stamp.put(key, [REACHED])
    found: dict[str, str] = json.loads(REACHED.read_text())
    return found


# What only the command line prints with.
_TEXTS = (
    "bench_text", "columns", "damping_text", "leg_text", "letter", "offer_text", "oil_text", "push_text", "states_text", "text",
)  # fmt: skip
PRINTED = {"__main__.py", "arguments.py", *(f"report/{name}.py" for name in _TEXTS)}


def core_sources() -> list[Path]:
    """The core as the page gets it: without the command line and what it prints, and without what calibrates the tables."""
    return [
        path
        for path in sorted(CORE.rglob("*"))
        if path.is_file()
        and path.relative_to(CORE).as_posix() not in PRINTED
        and not {"__pycache__", "calibrate"} & set(path.parts)
    ]


def named_by_core() -> list[str]:
    """Every module that an import, or an `np.part`, anywhere in the core may mean, unread branches included."""
    names = set()
    for path in core_sources():
        if path.suffix != ".py":
            continue
        module = ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        package = module if path.name == "__init__.py" else module.rpartition(".")[0]
        names.add(module)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names.update(named_by(node, package))
    return sorted(names)


def named_by(node: ast.AST, package: str) -> Iterator[str]:
    match node:
        case ast.Import(names=names):
            yield from (alias.name for alias in names)
        case ast.ImportFrom(module=module, names=names, level=level):
            start = resolve_name("." * level + (module or ""), package) if level else module or ""
            yield start
            yield from (f"{start}.{alias.name}" for alias in names)
        case ast.Attribute(value=ast.Name(id="np"), attr=part):
            yield f"numpy.{part}"
