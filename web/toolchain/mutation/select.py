"""Which tests to run for a change, in which order."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ..places import CORE_TESTS, MUTATION, ROOT, VENV_PYTHON, run, say
from ..stamp import files_of, key_of
from . import names, record

Record = dict[str, Any]

# Minutes of what another file has a share of: left out here, so that a record takes minutes too. The score can only be lower.
LONG = ("test_random_jobs.py",)
# Of one test with many cases so many are run, evenly among them by time; and a slow test [s] only where few quick ones reach.
# The score can only come out lower for it.
CASES, SLOW, FEW = 3, 5.0, 5


@dataclass(frozen=True)
class Reach:
    """Seconds of each test, and the tests that run each line of each file (or files of tests, for what collecting them runs)."""

    seconds: dict[str, float]
    lines: dict[str, dict[str, list[str]]]

    def tests(self, path: str, line: int, in_full: bool = False) -> dict[str, float]:
        """The tests that could notice a change at a line, and the seconds of each: first those that run it, quick ones first.

        What runs while a file of tests is collected, or in a fixture that its tests share, concerns all of that file. What runs
        on import concerns whoever runs a line that names what the statement makes, and every file of tests that names it.
        `in_full`: slow tests and every case too, but not every case of a slow test.
        """
        statement = names.statement_at(path, line)
        assert statement is not None
        direct = self.at(path, statement.lines)
        others: set[str] = set()
        if names.IMPORTING in direct:
            for user in names.users(statement):
                others |= self.at(user.path, user.lines) if user.path in self.lines else {user.path}
            others = others or set(self.seconds)
        ranks: dict[str, int] = {}
        for rank, tests in enumerate((direct, self.whole(direct), others, self.whole(others))):
            for test in tests & self.seconds.keys():
                ranks.setdefault(test, rank)
        order = sorted(ranks, key=lambda test: (ranks[test], self.seconds[test], test))
        quick = [test for test in order if self.seconds[test] < SLOW]
        if in_full:
            spared = {test for test in order if self.seconds[test] >= SLOW} - set(some(order))
            kept = [test for test in order if test not in spared]
        else:
            kept = some(quick if len(quick) > FEW else order)
        return {test: self.seconds[test] for test in kept}

    def at(self, path: str, lines: range) -> set[str]:
        return {test for number in lines for test in self.lines.get(path, {}).get(str(number), [])}

    def whole(self, contexts: set[str]) -> set[str]:
        return {test for test in self.seconds if test.partition("::")[0] in contexts}


def some(tests: list[str]) -> list[str]:
    """The tests in their order, of each test's cases not more than CASES."""
    cases: dict[str, list[str]] = {}
    for test in tests:
        cases.setdefault(test.partition("[")[0], []).append(test)
    kept = {
        case
        for of_one in cases.values()
        for case in (of_one if len(of_one) <= CASES else [of_one[i * (len(of_one) - 1) // (CASES - 1)] for i in range(CASES)])
    }
    return [test for test in tests if test in kept]


def recorded() -> Reach:
    """The record for the core and tests as they are: what is missing is run, a file of tests at a time."""
    out = MUTATION / "reached.json"
    held = json.loads(out.read_text()) if out.exists() else {"keys": {}, "seconds": {}, "lines": {}}
    # What only helps the tests concerns all of them.
    files = sorted(path for floor in CORE_TESTS for path in floor.rglob("test_*.py") if path.name not in LONG)
    helpers = (path for path in files_of(CORE_TESTS) if path not in files and path.name not in LONG)
    shared = key_of(ROOT / "calc", Path(record.__file__), *helpers)
    keys = {path.relative_to(ROOT).as_posix(): key_of(shared, path) for path in files}
    missing = [file for file, key in keys.items() if held["keys"].get(file) != key]
    if missing:
        say(f"recording which test runs which line, {len(missing)} files (minutes for all; kept until they or the core change)")
        fresh = MUTATION / "fresh.json"
        run([VENV_PYTHON, "-m", record.__name__, fresh, *missing])
        held = merged(held, json.loads(fresh.read_text()), set(keys) - set(missing)) | {"keys": keys}
        out.write_text(json.dumps(held))
    return Reach(held["seconds"], held["lines"])


def merged(held: Record, fresh: Record, kept: set[str]) -> Record:
    """A record with what is held of the files that are kept, and what is fresh of the others."""
    seconds = {test: time for test, time in held["seconds"].items() if test.partition("::")[0] in kept}
    lines: dict[str, dict[str, list[str]]] = {path: dict(by_line) for path, by_line in fresh["lines"].items()}
    for path, by_line in held["lines"].items():
        for line, contexts in by_line.items():
            old = [context for context in contexts if context.partition("::")[0] in kept]
            if old and path in lines:
                lines[path][line] = sorted({*old, *lines[path].get(line, [])})
    return {"seconds": seconds | fresh["seconds"], "lines": lines}
