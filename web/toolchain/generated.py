"""What the page takes from the core: the declared fields, their types, those of its replies, the demo jobs with their
reports; and the version.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from .node import run_node, tool
from .places import GENERATED, INSIDE, ROOT, VENV_PYTHON, run, version
from .stamp import Stamp, key_of

# What the declared names of calc.job.declared stand for on the page.
BANNER = """// Written by the build from calc/report/types and calc/boundary.py. Do not edit.
import type { JobDocument } from '../store/document.ts'
import type { FieldPath, Origin, Use } from './schema.ts'
"""
WRITER, TYPES = INSIDE / "generate.py", INSIDE / "report_types.py"


def prepare() -> None:
    stamp = Stamp("generated")
    key = key_of(ROOT / "calc", Stamp("venv").path, Stamp("node_modules").path, Path(__file__), INSIDE, version(), str(GENERATED))
    if stamp.fresh(key):
        return
    stamp.clear()
    shutil.rmtree(GENERATED, ignore_errors=True)
    GENERATED.mkdir()
    # A process of its own, so that a core that changed since the build started is read as it is now.
    run([VENV_PYTHON, "-B", WRITER, GENERATED], env={"PYTHONPATH": str(ROOT)})
    write_types()
    stamp.put(key, [GENERATED])


def write_types() -> None:
    """The page's types of the core's replies."""
    schema = GENERATED / "report.schema.json"
    run([VENV_PYTHON, "-B", TYPES, schema], env={"PYTHONPATH": str(ROOT)})
    run_node([tool("json-schema-to-typescript", "json2ts"), "--input", schema, "--output", GENERATED / "report.ts",
              "--bannerComment", BANNER, "--additionalProperties=false"])  # fmt: skip
    schema.unlink()
