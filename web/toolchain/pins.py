"""The hashes of Pyodide's own files, kept with the source (pins.json): what ships is held against them at every build.

npm checks a package as a whole, and only as it is fetched; a byte that changes later would ship unseen.
"""

from __future__ import annotations

import json
from pathlib import Path

from .places import PINS, PYODIDE, say, sha256, stop

NAMES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")


def version() -> str:
    """Pyodide's, as it is installed."""
    return str(json.loads((PYODIDE / "package.json").read_text())["version"])


def held() -> dict[str, str]:
    """The pinned hash of each file, for the version that is installed."""
    pins = json.loads(PINS.read_text())
    if pins["version"] != version():
        stop(f"{PINS.name} is of Pyodide {pins['version']}, and {version()} is installed: python3 build.py lock")
    return dict(pins["sha256"])


def check(folder: Path) -> None:
    """Every pinned file in the folder is as its makers built it."""
    there = {folder / name: wanted for name, wanted in held().items() if (folder / name).exists()}
    wrong = [str(path) for path, wanted in there.items() if sha256(path) != wanted]
    if wrong:
        stop(f"not as {PINS.name} has it: {', '.join(wrong)}. Delete web/node_modules, and build again.")


def lock() -> None:
    """Pin the files as they are now, straight after npm has fetched them."""
    PINS.write_text(json.dumps({"version": version(), "sha256": {name: sha256(PYODIDE / name) for name in NAMES}}, indent=1) + "\n")
    say(f"wrote {PINS.name}")
