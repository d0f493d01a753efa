"""Which tests to run for a change, in which order."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from ..places import MUTATION, ROOT, VENV_PYTHON, run, say
from ..stamp import Stamp, key_of
from . import names

# Of one test with many cases so many are run, evenly among them by time; and a slow test [s] only where few quick ones reach.
# The score can only come out lower for it.
CASES, SLOW, FEW = 3, 5.0, 5


@dataclass(frozen=True)
class Reach:
    """Seconds of each test, and the tests that run each line of each file (or files of tests, for what collecting them runs)."""

    seconds: dict[str, float]
    lines: dict[str, dict[str, list[str]]]

    def tests(self, path: str, line: int) -> dict[str, float]:
        """The tests that could notice a change at a line, and the seconds of each: first those that run it, quick ones first.

        What runs while a file of tests is collected, or in a fixture that its tests share, concerns all of that file. What runs
        on import concerns whoever runs a line that names what the statement makes, and every file of tests that names it.
        """
        statement = names.statement_at(path, line)
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
        return {test: self.seconds[test] for test in some(quick if len(quick) > FEW else order)}

    def at(self, path: str, lines: range) -> set[str]:
        return {test for number in lines for test in self.lines.get(path, {}).get(str(number), [])}

    def whole(self, contexts: set[str]) -> set[str]:
        return {test for test in self.seconds if test.partition("::")[0] in contexts}


def some(tests: list[str]) -> list[str]:
    """The tests in their order, of each test's cases not more than CASES."""
    cases: dict[str, list[str]] = {}
    for test in tests:
        cases.setdefault(test.partition("[")[0], []).append(test)
    kept = {case for of_one in cases.values() for case in (of_one if len(of_one) <= CASES else
            [of_one[i * (len(of_one) - 1) // (CASES - 1)] for i in range(CASES)])}
    return [test for test in tests if test in kept]


def recorded() -> Reach:
    """The record for the core and tests as they are; made when there is none."""
    out, stamp = MUTATION / "reached.json", Stamp("mutants-reached")
    key = key_of(ROOT / "calc", ROOT / "tests" / "core", Path(__file__).parent / "record.py")
    if not stamp.fresh(key):
        say("recording which test runs which line (some minutes, once for a state of the core and its tests)")
        stamp.clear()
        run([VENV_PYTHON, "-m", "web.toolchain.mutation.record", out])
        stamp.put(key, [out])
    return Reach(**json.loads(out.read_text()))
