"""Where things lie, and how a step speaks, runs a program and gives up."""

from __future__ import annotations

import hashlib
import os
import shlex
import subprocess
import sys
import textwrap
import tomllib
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parents[2]
WEB = ROOT / "web"
DIST = WEB / "dist"
GENERATED = WEB / "generated"
MODULES = WEB / "node_modules"
LICENCES = WEB / "toolchain" / "licences"
PINS = WEB / "toolchain" / "pins.json"
PYODIDE = MODULES / "pyodide"
INSIDE = WEB / "toolchain" / "inside"
BUILD = ROOT / ".build"
VENV = BUILD / "venv"
CACHE = BUILD / "cache"
MUTATION = BUILD / "mutation"
STAGE = BUILD / "stage"
RUNTIME = STAGE / "runtime"
# What vite tells of its bundles; it would ship with them otherwise.
TOLD = BUILD / "vite"
VENV_PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")

TESTS = ROOT / "tests"
# The floors of the core's tests. Each file of them runs on the desk and, unless desk_only.txt names it, inside Pyodide.
CORE_TESTS = [TESTS / "unit", TESTS / "whole"]
DESK_ONLY = TESTS / "desk_only.txt"

# No step takes nearly as long, however slow the network or busy the machine [s].
LIMIT = 40 * 60


class Stop(Exception):
    """A step cannot go on; the message says why and what to do."""


def stop(message: str) -> NoReturn:
    raise Stop(message)


def say(message: str) -> None:
    print(f"- {message}", flush=True)


def run(
    command: list[str | Path],
    *,
    env: dict[str, str] | None = None,
    cwd: Path = ROOT,
    quiet: bool = False,
    limit: int | None = LIMIT,
) -> str:
    """Run a program with nothing on its standard input; stop the build when it fails or takes too long [s]."""
    words = [str(word) for word in command]
    try:
        done = subprocess.run(
            words,
            cwd=cwd,
            env={**os.environ, **(env or {})},
            stdin=subprocess.DEVNULL,
            text=True,
            timeout=limit,
            stdout=subprocess.PIPE if quiet else None,
            stderr=subprocess.STDOUT if quiet else None,
        )
    except FileNotFoundError:
        stop(f"there is no program {words[0]}")
    except subprocess.TimeoutExpired:
        stop(f"this command was still at work after {(limit or 0) // 60} minutes: {shown(words)}")
    if done.returncode != 0:
        if quiet:
            sys.stderr.write(done.stdout)
        stop(f"this command failed (exit {done.returncode}): {shown(words)}")
    return done.stdout or ""


def shown(words: list[str]) -> str:
    return textwrap.shorten(shlex.join(words), 300, placeholder=" ...")


def version() -> str:
    """Of the whole: its one source is pyproject.toml."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return str(project["version"])


def sha256(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
