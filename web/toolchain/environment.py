"""The build's own Python environment: every package pinned and checked by hash (tests/requirements.txt)."""

from __future__ import annotations

import platform
import shutil
import sys
import venv
from pathlib import Path

from .places import MUTATION, ROOT, VENV, VENV_PYTHON, Stop, run, say
from .stamp import Stamp, key_of

LOCK = ROOT / "tests" / "requirements.txt"
MUTANTS = ROOT / "tests" / "requirements-mutants.txt"
PACKAGES = MUTATION / "packages"


def prepare() -> None:
    """Make the environment, or make it again when the lock, this Python or a file in it has changed."""
    stamp = Stamp("venv")
    key = key_of(LOCK, sys.version, platform.platform(), str(VENV))
    if stamp.fresh(key):
        return
    say(f"installing the build's Python packages into {VENV.relative_to(ROOT)}")
    stamp.clear()
    shutil.rmtree(VENV, ignore_errors=True)
    try:
        venv.create(VENV, with_pip=True, symlinks=sys.platform != "win32")
    except Exception as problem:
        raise Stop(f"could not make a Python environment ({problem}). On Debian: apt-get install python3-venv") from problem
    install(LOCK)
    stamp.put(key, [], tools=[VENV])


def install(lock: Path, *where: str | Path) -> None:
    words = [VENV_PYTHON, "-m", "pip", "install", "--require-hashes", "--only-binary=:all:",
             "--no-deps", "-qq", "--disable-pip-version-check", "-r", lock, *where]  # fmt: skip
    try:
        run(words)
    except Stop:
        say("that failed: once more without pip's cache, in case the cache is broken")
        run([*words, "--no-cache-dir", "--force-reinstall"])


def lock() -> None:
    """Write the locks anew, each from the .in file beside it."""
    for lock, how in (LOCK, []), (MUTANTS, ["--no-deps"]):
        wanted = lock.with_suffix(".in")
        run([VENV_PYTHON, "-m", "uv", "pip", "compile", "--universal", "--python-version", "3.11", "--upgrade",
             "--generate-hashes", "--only-binary", ":all:", "--no-emit-index-url", "--no-annotate", "--no-header",
             "--quiet", *how, wanted, "--output-file", lock])  # fmt: skip
        lock.write_text(f"# Made from {wanted.name} by: python3 build.py lock\n{lock.read_text()}")
        say(f"wrote {lock.relative_to(ROOT)}; the next command installs it")


def prepare_mutants() -> None:
    """Lay what the mutation run needs into a folder of its own: the build and the tests never see it."""
    stamp = Stamp("mutants")
    key = key_of(MUTANTS, sys.version, platform.platform())
    if stamp.fresh(key):
        return
    say(f"installing the mutation run's Python packages into {PACKAGES.relative_to(ROOT)}")
    stamp.clear()
    shutil.rmtree(PACKAGES, ignore_errors=True)
    install(MUTANTS, "--target", PACKAGES)
    stamp.put(key, [], tools=[PACKAGES])
