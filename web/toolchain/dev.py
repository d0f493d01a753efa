"""`build.py dev`: the page from its sources by vite's own server, with the core as it stands at every edit.

vite.config.ts watches calc/ and runs this module after a change: python -m web.toolchain.dev. What was edited since the last
build goes to the page as source, which its Python compiles; all else is the build's bytecode. So an edit costs no start of
Pyodide here, and what was built stays as it is: all this lies in a stage of its own.
"""

from __future__ import annotations

import json
import os
import shutil
import tempfile
from pathlib import Path

from . import generated, packs, reach
from .node import run_node, tool
from .places import BUILD, GENERATED, ROOT, RUNTIME, STAGE, VENV_PYTHON, WEB, Stop, run, say, sha256

DEV = BUILD / "dev"
KEPT = WEB / "offline" / "static"  # what the page asks for beside its modules: first script, icons, manifest
PACK = "core.pack.wasm"


def serve(port: int) -> None:
    shutil.rmtree(DEV, ignore_errors=True)
    for folder in (STAGE, KEPT):
        shutil.copytree(folder, DEV, copy_function=os.link, dirs_exist_ok=True)
    say("edit web/ or calc/ and see; the security policy, the offline copy and the browser's cache take part only in `serve`")
    env = {"STANCHION_STAGE": str(DEV), "STANCHION_PYTHON": str(VENV_PYTHON)}
    run_node([tool("vite", "vite"), "--port", str(port), "--strictPort"], env=env, limit=None)


def edited(name: str, source: Path) -> bool:
    """Whether a module is younger than its bytecode, or has none yet."""
    code = packs.BYTECODE / "core" / f"{name}c"
    return not code.exists() or source.stat().st_mtime > code.stat().st_mtime


def core_files() -> dict[str, Path]:
    """The pack's files by name: bytecode where it is up to date, else the source."""
    found = {}
    for name, source in packs.core_files(json.loads(reach.REACHED.read_text())).items():
        if source.suffix != ".py":
            found[name] = source
        elif edited(name, source):
            compile(source.read_bytes(), str(source), "exec", dont_inherit=True)  # told here, where it was typed
            found[name] = source
        else:
            found[f"{name}c"] = packs.BYTECODE / "core" / f"{name}c"
    return found


def replace(path: Path, content: bytes) -> None:
    """Not written into: the old file is the build's own."""
    part = path.with_name(f"{path.name}.part")
    part.write_bytes(content)
    part.replace(path)


def refresh_core() -> None:
    runtime = DEV / RUNTIME.name
    made = runtime / f"{PACK}.part"
    packs.write_pack(made, core_files())
    made.replace(runtime / PACK)
    index = json.loads((RUNTIME / "runtime.json").read_text())
    index["files"][PACK] = {"bytes": (runtime / PACK).stat().st_size, "sha256": sha256(runtime / PACK)}
    replace(runtime / "runtime.json", json.dumps(index).encode())


def refresh_schema() -> bool:
    """The declared fields; whether they changed.

    The demos' reports stay the build's: each is on the screen only until the page has sized it itself.
    """
    changed = False
    with tempfile.TemporaryDirectory(dir=BUILD) as folder:
        run([VENV_PYTHON, "-B", generated.WRITER, folder, "schema"], env={"PYTHONPATH": str(ROOT)}, quiet=True)
        for path in Path(folder).iterdir():
            # Else the page would reload twice.
            if (GENERATED / path.name).read_bytes() != path.read_bytes():
                replace(GENERATED / path.name, path.read_bytes())
                changed = True
    return changed


if __name__ == "__main__":
    try:
        changed = refresh_schema()
        refresh_core()
        print("fields changed" if changed else "")  # for vite.config.ts
    except (Stop, SyntaxError, OSError) as problem:
        raise SystemExit(f"{type(problem).__name__}: {problem}") from None
