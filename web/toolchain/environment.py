"""The build's own Python environment: every package pinned and checked by hash (tests/requirements.txt)."""

from __future__ import annotations

import platform
import shutil
import sys
import venv

from .places import ROOT, VENV, VENV_PYTHON, Stop, run, say
from .stamp import Stamp, key_of

LOCK = ROOT / "tests" / "requirements.txt"
WANTED = ROOT / "tests" / "requirements.in"


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
        raise Stop(f"could not make a Python environment ({problem}). On Debian: apt-get install python3-venv") \
            from problem
    install = [VENV_PYTHON, "-m", "pip", "install", "--require-hashes", "--only-binary=:all:",
               "--no-deps", "-qq", "--disable-pip-version-check", "-r", LOCK]
    try:
        run(install)
    except Stop:
        say("that failed: once more without pip's cache, in case the cache is broken")
        run([*install, "--no-cache-dir", "--force-reinstall"])
    stamp.put(key, [VENV])


def lock() -> None:
    """Write the lock anew from requirements.in."""
    run([VENV_PYTHON, "-m", "uv", "pip", "compile", "--universal", "--python-version", "3.11", "--upgrade",
         "--generate-hashes", "--only-binary", ":all:", "--no-emit-index-url", "--no-annotate", "--no-header",
         "--quiet", WANTED, "--output-file", LOCK])
    LOCK.write_text(f"# Made from {WANTED.name} by: python3 build.py lock\n{LOCK.read_text()}")
    say(f"wrote {LOCK.relative_to(ROOT)}; the next command installs it")
