"""What the page takes from the core: the declared fields, their types, the demo jobs with their reports; and the version."""

from __future__ import annotations

import shutil
from pathlib import Path

from .places import GENERATED, ROOT, VENV_PYTHON, run, version
from .stamp import Stamp, key_of

WRITER = Path(__file__).parent / "inside" / "generate.py"


def prepare() -> None:
    stamp = Stamp("generated")
    key = key_of(ROOT / "calc", Stamp("venv").path, WRITER, version(), str(GENERATED))
    if stamp.fresh(key):
        return
    stamp.clear()
    shutil.rmtree(GENERATED, ignore_errors=True)
    GENERATED.mkdir()
    # A process of its own, so that a core that changed since the build started is read as it is now.
    run([VENV_PYTHON, "-B", WRITER, GENERATED], env={"PYTHONPATH": str(ROOT)})
    (GENERATED / "version.ts").write_text(f"export const VERSION = '{version()}'\n")
    stamp.put(key, [GENERATED])
