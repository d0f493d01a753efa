"""What the page takes from the core: the declared fields, their types, and the demo jobs with their reports."""

from __future__ import annotations

import shutil
from pathlib import Path

from .node import run_node, tool
from .places import GENERATED, ROOT, VENV_PYTHON, run
from .stamp import Stamp, key_of

# What the declared names of calc.job.declared stand for on the page.
BANNER = """// Written by the build from calc/report/types and calc/boundary.py. Do not edit.
import type { JobDocument } from '../store/document.ts'
import type { FieldPath, Origin, Use } from './schema.ts'
"""
WRITER = Path(__file__).parent / "inside" / "generate.py"


def prepare() -> None:
    stamp = Stamp("generated")
    key = key_of(ROOT / "calc", Stamp("venv").path, Stamp("node_modules").path, Path(__file__), WRITER, str(GENERATED))
    if stamp.fresh(key):
        return
    stamp.clear()
    shutil.rmtree(GENERATED, ignore_errors=True)
    GENERATED.mkdir()
    # A process of its own, so that a core that changed since the build started is read as it is now.
    run([VENV_PYTHON, "-B", WRITER, GENERATED], env={"PYTHONPATH": str(ROOT)})
    types = GENERATED / "report.schema.json"
    run_node([tool("json-schema-to-typescript", "json2ts"), "--input", types, "--output", GENERATED / "report.ts",
              "--bannerComment", BANNER, "--additionalProperties=false"])
    types.unlink()
    stamp.put(key, [GENERATED])
