"""The shipped runtime holds every module that the core can reach, and its list tells the truth."""

import json
import shutil
import zipfile

from web.toolchain import reach, sources
from web.toolchain.places import BUILD, ROOT, RUNTIME, sha256

SHIPPED = BUILD / "shipped"
INDEX = json.loads((RUNTIME / "runtime.json").read_text())


def unpacked(name: str) -> dict[str, bytes]:
    data = (RUNTIME / f"{name}.pack.wasm").read_bytes()
    at = 4 + int.from_bytes(data[:4], "little")
    files = {}
    for path, length in json.loads(data[4:at]):
        files[path] = data[at : at + length]
        at += length
    assert at == len(data)
    return files


def test_the_list_matches_the_files() -> None:
    there = {
        path.name: {"bytes": path.stat().st_size, "sha256": sha256(path)}
        for path in RUNTIME.iterdir()
        if path.name != "runtime.json"
    }
    assert INDEX["files"] == there


def test_packs_hold_bytecode_and_no_source() -> None:
    with zipfile.ZipFile(RUNTIME / "stdlib.zip.wasm") as library:
        names = [*library.namelist(), *unpacked("numpy"), *unpacked("core")]
        assert all(row.compress_type == zipfile.ZIP_STORED for row in library.infolist())
    assert not [name for name in names if name.endswith(".py")]
    assert {"calc/boundary.pyc", "pint/__init__.pyc", "numpy/__init__.pyc", "json/__init__.pyc"} <= set(names)


def test_no_path_of_the_build_machine_is_shipped() -> None:
    for name in ("stdlib.zip.wasm", "numpy.pack.wasm", "core.pack.wasm"):
        assert str(ROOT).encode() not in (RUNTIME / name).read_bytes()


def test_every_module_is_there_inside_the_shipped_runtime() -> None:
    """Start Pyodide on the shipped library and packs alone, and import all that the core can reach."""
    shutil.rmtree(SHIPPED, ignore_errors=True)
    for pack in ("numpy", "core"):
        for name, content in unpacked(pack).items():
            target = SHIPPED / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(content)
    wanted = [*reach.reached(), *reach.named_by_core()]
    assert {"calc.boundary", "pint", "numpy"} <= set(wanted)
    listing = BUILD / "wanted.json"
    listing.write_text(json.dumps(wanted))
    sources.run_inside("import_all.py", listing, SHIPPED, library=RUNTIME / "stdlib.zip.wasm")


def test_nothing_that_only_a_desk_needs_is_shipped() -> None:
    """numpy's masked arrays came with np.unique alone; the page has no command line and makes no tables of the trade."""
    kept_back = ("numpy/ma/", "numpy/testing/", "calc/practice/calibrate/", "calc/__main__", "calc/arguments", "calc/report/text")
    assert not [name for name in (*unpacked("numpy"), *unpacked("core")) if name.startswith(kept_back)]
