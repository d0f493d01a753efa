"""`build.py test`: every check, each in a process of its own; all are run, and one failure fails the whole."""

from __future__ import annotations

import time
from collections.abc import Callable

from . import browser, sources
from .node import run_node, tool
from .places import ROOT, VENV_PYTHON, WEB, Stop, run, say, stop

TESTS = ROOT / "tests"


def pytest(*arguments: str, env: dict[str, str] | None = None) -> None:
    # pytest itself fails when it collects nothing.
    run([VENV_PYTHON, "-m", "pytest", "-q", *arguments], env=env)


def style() -> None:
    run([VENV_PYTHON, "-m", "ruff", "check", "."])


def types() -> None:
    run([VENV_PYTHON, "-m", "mypy"])


def layers() -> None:
    run([VENV_PYTHON, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()", "--no-cache"],
        env={"PYTHONPATH": str(ROOT)}, quiet=True)


def page_types() -> None:
    run_node([tool("typescript", "tsc"), "--noEmit"])


def page_units() -> None:
    if not any(path for path in WEB.glob("[!n]*/**/*.test.ts*")):
        say("the page has no unit tests")
        return
    run_node([tool("vitest", "vitest"), "run"], limit=300)


def core() -> None:
    pytest("tests/core", "-n", "2")


def build() -> None:
    pytest("tests/build")


def core_in_pyodide() -> None:
    sources.run_inside("core_tests.py", ROOT, sources.NUMPY, sources.PURE, shown=True)


def browsers() -> None:
    pytest("tests/browser", env={browser.NAMED: str(browser.chromium())})


CHECKS: dict[str, tuple[str, Callable[[], None]]] = {
    "style": ("ruff over all Python", style),
    "types": ("mypy --strict over the core", types),
    "layers": ("the core's imports point one way", layers),
    "tsc": ("the page's types", page_types),
    "page": ("the page's unit tests", page_units),
    "core": ("the core's tests on the desk", core),
    "build": ("the build's own tests", build),
    "pyodide": ("the core's tests inside Pyodide", core_in_pyodide),
    "browser": ("the whole page in Chromium", browsers),
}


def run_checks(names: list[str]) -> None:
    results = {}
    for name in names or CHECKS:
        title, check = CHECKS[name]
        print(f"\n== {title} ({name})", flush=True)
        started = time.monotonic()
        try:
            check()
            results[name] = ""
        except Stop as problem:
            results[name] = str(problem)
            print(problem, flush=True)
        say(f"{name}: {'failed' if results[name] else 'passed'} in {time.monotonic() - started:.0f} s")
    failed = [name for name, problem in results.items() if problem]
    if failed:
        stop(f"failed: {', '.join(failed)}. One alone: python3 build.py test {failed[0]}")
    print(f"\nAll passed: {', '.join(results)}")
