"""`build.py test`: every check, each in a process of its own; all are run, and one failure fails the whole."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from itertools import takewhile
from pathlib import Path
from typing import NamedTuple

from . import browser, budgets, sources
from .node import run_node, tool
from .places import CORE_TESTS, DESK_ONLY, ROOT, VENV_PYTHON, Stop, run, say, stop

Words = list[str]


def pytest(folders: list[Path], words: Words, *options: str, env: dict[str, str] | None = None) -> None:
    """Run pytest over the folders, or over the files that the words name; it fails by itself when it collects nothing."""
    run([VENV_PYTHON, "-m", "pytest", "-q", *options, *chosen(folders, words)], env=env)


def chosen(folders: list[Path], words: Words) -> Words:
    """What pytest gets: the words, behind the folders where no word is a file of tests."""
    named = any((ROOT / word.partition("::")[0]).exists() for word in words)
    return words if named else [*(str(folder) for folder in folders), *words]


def style(_: Words) -> None:
    run([VENV_PYTHON, "-m", "ruff", "check", "."])
    run([VENV_PYTHON, "-m", "ruff", "format", "--check", "."])


def types(_: Words) -> None:
    run([VENV_PYTHON, "-m", "mypy"])


def layers(_: Words) -> None:
    run(
        [VENV_PYTHON, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()", "--no-cache"],
        env={"PYTHONPATH": str(ROOT)},
        quiet=True,
    )


def page_types(_: Words) -> None:
    run_node([tool("typescript", "tsc"), "--noEmit"])


def page_style(_: Words) -> None:
    run_node([tool("@biomejs/biome", "biome"), "lint", "--error-on-warnings", "."])


def unused(_: Words) -> None:
    run_node([tool("knip", "knip")])


def page_units(words: Words) -> None:
    run_node([tool("vitest", "vitest"), "run", *words], limit=300)


def core(words: Words) -> None:
    pytest(CORE_TESTS, words, "-n", "2")


def build(words: Words) -> None:
    pytest([ROOT / "tests" / "build"], words)


def core_in_pyodide(words: Words) -> None:
    left_out = [f"--ignore={path}" for path in desk_only(DESK_ONLY.read_text(), CORE_TESTS)]
    told = {"root": str(ROOT), "folders": [str(ROOT), str(sources.NUMPY), str(sources.PURE)],
            "words": [*chosen(CORE_TESTS, words), *left_out]}  # fmt: skip
    sources.run_inside("core_tests.py", json.dumps(told), shown=True)


def desk_only(listing: str, floors: list[Path]) -> list[Path]:
    """The files that a list names, each with its reason behind a #."""
    found = []
    for line in listing.splitlines():
        name, _, reason = (word.strip() for word in line.partition("#"))
        if name:
            paths = [path for floor in floors for path in floor.rglob(name)]
            if len(paths) != 1 or not reason:
                stop(f"{DESK_ONLY.name}: it takes the name of one file of tests, and a reason: {line}")
            found += paths
    return found


def browsers(words: Words) -> None:
    twice([ROOT / "tests" / "browser"], words, env={browser.NAMED: str(browser.chromium())})


def twice(folders: list[Path], words: Words, env: dict[str, str]) -> None:
    """Try what failed once more by itself: a page can be late on a busy machine, a fault fails again, and both are told."""
    try:
        pytest(folders, words, env=env)
    except Stop as problem:
        say(f"{problem}\n- once more, what failed alone:")
        pytest(folders, words, "--last-failed", "--last-failed-no-failures=none", "--maxfail=1", env=env)
        say("what failed above passed by itself. It came late or hangs on what ran before it: worth a look")


def sizes(_: Words) -> None:
    budgets.check()


class Check(NamedTuple):
    title: str
    run: Callable[[Words], None]
    # Whether it takes words of its own: what to run, and how.
    wordy: bool = False


CHECKS = {
    "style": Check("ruff over all Python, faults and format", style),
    "types": Check("mypy --strict over the core and the toolchain", types),
    "layers": Check("the core's imports point one way", layers),
    "tsc": Check("the page's types", page_types),
    "lint": Check("biome over the page's TypeScript and CSS", page_style),
    "unused": Check("knip: nothing in the page is unused", unused),
    "sizes": Check("what the page weighs", sizes),
    "page": Check("the page's unit tests", page_units, wordy=True),
    "core": Check("the core's tests on the desk", core, wordy=True),
    "build": Check("the build's own tests", build, wordy=True),
    "pyodide": Check("the core's tests inside Pyodide", core_in_pyodide, wordy=True),
    "browser": Check("the whole page in Chromium", browsers, wordy=True),
}
GROUPS = "\n".join(f"  {name:8} {check.title}" for name, check in CHECKS.items())


def split(words: Words) -> tuple[Words, Words]:
    """The groups named first, and what follows them, which is for their runner."""
    if words == ["--list"]:
        print(GROUPS)
        raise SystemExit(0)
    groups = list(takewhile(CHECKS.__contains__, words))
    rest = words[len(groups) :]
    if rest and not groups:
        stop(f"{rest[0]} is no group of tests. They are:\n{GROUPS}")
    if rest and (deaf := [name for name in groups if not CHECKS[name].wordy]):
        stop(f"{deaf[0]} takes no further words: {' '.join(rest)}")
    return groups, rest


def run_checks(groups: Words, words: Words) -> None:
    results = {}
    for name in groups or CHECKS:
        check = CHECKS[name]
        print(f"\n== {check.title} ({name})", flush=True)
        started = time.monotonic()
        try:
            check.run(words)
            results[name] = ""
        except Stop as problem:
            results[name] = str(problem)
            print(problem, flush=True)
        say(f"{name}: {'failed' if results[name] else 'passed'} in {time.monotonic() - started:.0f} s")
    failed = [name for name, problem in results.items() if problem]
    if failed:
        stop(f"failed: {', '.join(failed)}. One alone: python3 build.py test {failed[0]}")
    print(f"\nAll passed: {', '.join(results)}")
