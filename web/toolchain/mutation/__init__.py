"""`build.py mutants`: change the core in one place at a time, and see whether a test notices.

The changes are made by cosmic-ray's operators on the text, in memory: no file is ever altered. Each is tried in a fork of one
warm process, where an import hook gives the changed module and pytest runs the tests that reach the changed line.
"""

from __future__ import annotations

import argparse
import os

from .. import environment
from ..places import ROOT, VENV_PYTHON, run, stop

# Everything takes hours; nothing takes longer than this [s].
LIMIT = 24 * 3600


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--sample", type=int, default=400, metavar="N", help="how many, drawn in proportion from every module")
    parser.add_argument("--all", action="store_true", help="every one of them (hours)")
    parser.add_argument("--again", action="store_true", help="those that survived the last time, by every test in full")
    parser.add_argument("--only", action="append", default=[], metavar="PATH", help="one folder or module, as calc/gas")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1, metavar="N", help="how many at a time")


def run_mutants(chosen: argparse.Namespace) -> None:
    if not hasattr(os, "fork"):
        stop("mutants are tried in forks, and this system has none: run them on Linux or macOS")
    environment.prepare_mutants()
    words = ["--sample", str(chosen.sample), "--seed", str(chosen.seed), "--jobs", str(chosen.jobs)]
    words += [f"--{name}" for name in ("all", "again") if getattr(chosen, name)]
    words += [word for path in chosen.only for word in ("--only", path)]
    # One thread each: the trials are what runs side by side.
    env = {"PYTHONPATH": os.pathsep.join([str(environment.PACKAGES), str(ROOT)]), "OPENBLAS_NUM_THREADS": "1"}
    run([VENV_PYTHON, "-m", __name__, *words], env=env, limit=LIMIT)
