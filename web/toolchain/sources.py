"""The Python sources that go to the page, side by side in .build/sources: stdlib, numpy and the core's few packages."""

from __future__ import annotations

import base64
import shutil
import zipfile
from importlib import metadata
from pathlib import Path

from . import pins
from .fetch import numpy_wheel
from .node import run_node
from .places import BUILD, INSIDE, PYODIDE, sha256, stop
from .stamp import Stamp, key_of

SOURCES = BUILD / "sources"
STDLIB = SOURCES / "stdlib"
NUMPY = SOURCES / "numpy"
PURE = SOURCES / "pure"
# pint and what it needs; the versions are those of tests/requirements.txt, the same on the desk and on the page.
PURE_PACKAGES = ("pint", "flexcache", "flexparser", "platformdirs", "typing_extensions")


def run_inside(script: str, *arguments: str | Path, shown: bool = False, library: Path | None = None) -> None:
    """Run one of the files of inside/ in the pinned Pyodide; what it prints is shown, or only if it fails."""
    run_node(
        [INSIDE / "pyodide.mjs", INSIDE / script, *arguments],
        quiet=not shown,
        env={"STANCHION_LIBRARY": str(library)} if library else {},
    )


def prepare() -> None:
    stamp = Stamp("sources")
    wheel = numpy_wheel()
    versions = [f"{name} {metadata.version(name)}" for name in PURE_PACKAGES]
    key = key_of(pins.version(), wheel.name, *versions, Path(__file__), str(SOURCES))
    if stamp.fresh(key):
        return
    stamp.clear()
    shutil.rmtree(SOURCES, ignore_errors=True)
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        archive.extractall(STDLIB)
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(NUMPY)
    for name in PURE_PACKAGES:
        copy_package(name)
    stamp.put(key, [SOURCES])


def copy_package(name: str) -> None:
    for entry in metadata.files(name) or []:
        source = Path(str(entry.locate()))
        if ".." in entry.parts or source.suffix == ".pyc" or "testsuite" in entry.parts:
            continue
        if entry.hash and entry.hash.value != recorded(source):
            Stamp("venv").clear()
            stop(f"{source} is not as {name}'s wheel brought it. Run this again: the environment is made anew.")
        target = PURE / entry
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(source, target)


def recorded(path: Path) -> str:
    """A file's hash as a wheel's record has it."""
    return base64.urlsafe_b64encode(bytes.fromhex(sha256(path))).decode().rstrip("=")
