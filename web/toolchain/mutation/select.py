"""Which tests to run for a change, in which order."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from ..places import MUTATION, ROOT, VENV_PYTHON, run, say
from ..stamp import Stamp, key_of
from .record import IMPORTING


@dataclass(frozen=True)
class Reach:
    """Seconds of each test, and the tests that run each line of each file (or files of tests, for what collecting them runs)."""

    seconds: dict[str, float]
    lines: dict[str, dict[str, list[str]]]

    def tests(self, path: str, line: int, statements: list[range]) -> dict[str, float]:
        """The tests that could notice a change at a line, and the seconds of each: first those that run it, quick ones first.

        What runs while a file of tests is collected, or in a fixture that its tests share, concerns all of that file. What runs
        on import concerns everything: first the tests that touch the module, at last all that touch the core.
        """
        lines = self.lines.get(path, {})
        span = next((span for span in statements if line in span), range(line, line + 1))
        direct = {test for number in span for test in lines.get(str(number), [])}
        shared = {test for test in self.seconds if test.partition("::")[0] in direct}
        near = all_in(lines) if IMPORTING in direct else set()
        far = set().union(*map(all_in, self.lines.values())) if near else set()
        ranks: dict[str, int] = {}
        for rank, tests in enumerate((direct, shared, near, far)):
            for test in tests & self.seconds.keys():
                ranks.setdefault(test, rank)
        return {test: self.seconds[test] for test in sorted(ranks, key=lambda test: (ranks[test], self.seconds[test]))}


def all_in(lines: dict[str, list[str]]) -> set[str]:
    return {test for tests in lines.values() for test in tests}


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
