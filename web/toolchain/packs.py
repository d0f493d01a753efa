"""What the page's runtime is made of: Pyodide's own files, a trimmed standard library, and packs of bytecode.

Written to .build/stage/runtime, which vite copies into the site as it is:
- pyodide.mjs, pyodide.asm.mjs, pyodide.asm.wasm: from the npm package, untouched.
- stdlib.zip.wasm: the trimmed standard library, .pyc in a stored zip, for loadPyodide's stdLibURL.
- numpy.pack.wasm, core.pack.wasm: files to write into SITE. Four bytes (little endian) hold the length of a
  JSON header, a list of [path, length]; the header and then the files' bytes follow back to back.
- runtime.json: {version, site, lock, files: {name: {bytes, sha256}}}; lock is for lockFileContents.
The ending .wasm is there because static hosts compress by file ending and know this one.
"""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path, PurePosixPath

from . import pins, sources
from .places import BUILD, INSIDE, PYODIDE, ROOT, RUNTIME, sha256
from .reach import core_sources, reached
from .stamp import Stamp, key_of

BYTECODE = BUILD / "bytecode"
SITE = "/lib/python3.14/site-packages"
LIBRARY = "/lib/python314.zip"
COPIED = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
# Beside what was seen at work: what Python imports only to tell of an error.
ALWAYS = ("traceback", "linecache", "tokenize", "textwrap", "contextlib", "warnings", "encodings.ascii",
          "encodings.latin_1", "_colorize")  # fmt: skip
# Kept whole (without its tests), since numpy imports within it as a need comes up.
NUMPY_WHOLE = "numpy/_core"
# Nothing but docstrings that they hang on what is compiled: on the page they are empty.
EMPTY = ("numpy/_core/_add_newdocs.py", "numpy/_core/_add_newdocs_scalars.py")
# 1 drops assertions, 2 also docstrings. The core's classes keep a line (inside/compile.py), since a dataclass without
# one writes itself one at start-up; so do the files of numpy that hand their docstrings on as they are imported.
DOCSTRINGS = ("calc/", "numpy/_core/multiarray.py", "numpy/_core/overrides.py")


def prepare() -> None:
    stamp = Stamp("packs")
    needed = reached()
    key = key_of(json.dumps(needed), Stamp("sources").path, ROOT / "calc", INSIDE, Path(__file__), str(RUNTIME))
    if stamp.fresh(key):
        return
    stamp.clear()
    for folder in (BYTECODE, RUNTIME):
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
    packs = {"stdlib": library_files(needed), "numpy": numpy_files(needed), "core": core_files(needed)}
    compiled = compile_all(packs)
    write_zip(RUNTIME / "stdlib.zip.wasm", compiled["stdlib"])
    for name in ("numpy", "core"):
        write_pack(RUNTIME / f"{name}.pack.wasm", compiled[name])
    for name in COPIED:
        shutil.copyfile(PYODIDE / name, RUNTIME / name)
    write_index()
    stamp.put(key, [RUNTIME])


def library_files(needed: dict[str, str]) -> dict[str, Path]:
    """The standard library's files by the name they get in the archive."""
    found = {}
    for origin in needed.values():
        if origin.startswith(LIBRARY):
            name = str(PurePosixPath(origin).relative_to(LIBRARY))
            found[name] = sources.STDLIB / name
    for module in ALWAYS:
        name = module.replace(".", "/")
        for candidate in (f"{name}.py", f"{name}/__init__.py"):
            if (sources.STDLIB / candidate).exists():
                found[candidate] = sources.STDLIB / candidate
    return found


def numpy_files(needed: dict[str, str]) -> dict[str, Path]:
    found = files_from(sources.NUMPY, needed)
    for path in (sources.NUMPY / NUMPY_WHOLE).rglob("*.py"):
        if "tests" not in path.parts:
            found[path.relative_to(sources.NUMPY).as_posix()] = path
    return found


def core_files(needed: dict[str, str]) -> dict[str, Path]:
    """calc whole, data included, and what it uses of the packages (modules only: calc has units of its own)."""
    found = files_from(sources.PURE, needed)
    return found | {path.relative_to(ROOT).as_posix(): path for path in core_sources()}


def files_from(folder: Path, needed: dict[str, str]) -> dict[str, Path]:
    return {
        Path(origin).relative_to(folder).as_posix(): Path(origin)
        for origin in needed.values()
        if Path(origin).is_relative_to(folder)
    }


def compile_all(packs: dict[str, dict[str, Path]]) -> dict[str, dict[str, Path]]:
    """Replace every .py by a .pyc beside which no source is needed."""
    rows: list[list[str | int]] = []
    compiled: dict[str, dict[str, Path]] = {}
    for pack, files in packs.items():
        compiled[pack] = {}
        for name, source in sorted(files.items()):
            if source.suffix != ".py":
                compiled[pack][name] = source
                continue
            target = BYTECODE / pack / f"{name}c"
            place = LIBRARY if pack == "stdlib" else SITE
            text = "" if name in EMPTY else str(source)
            rows.append([text, str(target), f"{place}/{name}", 1 if name.startswith(DOCSTRINGS) else 2])
            compiled[pack][f"{name}c"] = target
    listing = BYTECODE / "rows.json"
    listing.write_text(json.dumps(rows))
    sources.run_inside("compile.py", listing)
    return compiled


def write_zip(target: Path, files: dict[str, Path]) -> None:
    # Stored, with one fixed date: the host compresses, and the same input gives the same bytes.
    with zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as archive:
        for name, path in files.items():
            archive.writestr(zipfile.ZipInfo(name), path.read_bytes())


def write_pack(target: Path, files: dict[str, Path]) -> None:
    header = json.dumps([[name, path.stat().st_size] for name, path in files.items()], separators=(",", ":")).encode()
    with target.open("wb") as file:
        file.write(len(header).to_bytes(4, "little") + header)
        for path in files.values():
            file.write(path.read_bytes())


def write_index() -> None:
    info = json.loads((PYODIDE / "pyodide-lock.json").read_text())["info"]
    files = {path.name: {"bytes": path.stat().st_size, "sha256": sha256(path)} for path in sorted(RUNTIME.iterdir())}
    index = {"version": pins.version(), "site": SITE, "lock": {"info": info, "packages": {}}, "files": files}
    (RUNTIME / "runtime.json").write_text(json.dumps(index, indent=1) + "\n")
