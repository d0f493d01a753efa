"""`python -m calc.practice.calibrate`: what moves, from and to, in half-ranges; and whether `calibrated.py` holds it."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path
from textwrap import wrap

from calc.practice import calibrated
from calc.practice.calibrate.least_moves import Problem
from calc.practice.calibrate.rows import AS_SOLO, TOGETHER, Key, half_range, judged
from calc.practice.judged import JUDGED
from calc.practice.uses import USES

HEAD = '''"""Typical values that agree with each other under the model, by kind of riding, in the unit of their row.

Written by `python -m calc.practice.calibrate --write`. Do not edit.
"""

from __future__ import annotations

from collections.abc import Mapping

TYPICAL: Mapping[str, Mapping[str, float]] = {
'''


def main() -> int:
    """Print the moves; 1 where `calibrated.py` does not hold them."""
    parser = argparse.ArgumentParser(prog="python -m calc.practice.calibrate", description=__doc__)
    parser.add_argument("uses", nargs="*", help="kinds of riding, all if none is named")
    parser.add_argument("--write", action="store_true", help="write calibrated.py anew")
    asked = parser.parse_args()
    found: dict[Key, float] = {}
    for uses in problems(asked.uses or list(USES)):
        found |= Problem(uses).typical()
    print("\n".join(moves(found)))
    typical = {use: {row: value for (row, other), value in found.items() if other == use} for use in USES}
    if asked.write:
        kept = {use: rows or dict(calibrated.TYPICAL[use]) for use, rows in typical.items()}
        Path(calibrated.__file__).write_text(written(kept), encoding="utf-8")
        return 0
    return int(any(rows != calibrated.TYPICAL[use] for use, rows in typical.items() if rows))


def problems(uses: list[str]) -> list[tuple[str, ...]]:
    """The kinds of riding, those that share rows together."""
    found = [next((group for group in TOGETHER if use in group), (use,)) for use in uses]
    return list(dict.fromkeys(found))


def moves(values: Mapping[Key, float]) -> list[str]:
    """A table in Markdown of what moved: the value now and its move in half-ranges, a row for each row of practice."""
    uses = [use for use in USES if any(use == other for _, other in values)]
    lines = ["| " + " | ".join(("row", *uses)) + " |", "|---" * (len(uses) + 1) + "|"]
    for row in dict.fromkeys(row for row, _ in values):
        cells = [_cell((row, use), values) for use in uses]
        if any(cells):
            lines.append(f"| {row} ({JUDGED[row].confidence}) | " + " | ".join(cells) + " |")
    return lines


def _cell(key: Key, values: Mapping[Key, float]) -> str:
    """Empty where nothing moved, or where the row is another kind of riding's too and stands there."""
    if key not in values or values[key] == judged(key)[2]:
        return ""
    if key[0] in AS_SOLO and key[1] != leader(key[1]):
        return "as solo"
    return f"{values[key]:g} ({(values[key] - judged(key)[2]) / half_range(key):+.1f})"


def leader(use: str) -> str:
    """The kind of riding whose rows a use shares."""
    return problems([use])[0][0]


def written(typical: Mapping[str, Mapping[str, float]]) -> str:
    """The text of `calibrated.py`."""
    blocks = []
    for use in USES:
        entries = " ".join(f'"{row}":_{value:g},'.replace(" ", "_") for row, value in typical[use].items())
        rows = wrap(entries, 124, initial_indent=" " * 8, subsequent_indent=" " * 8, break_on_hyphens=False)
        blocks.append("\n".join([f'    "{use}": {{', *(row.replace("_", " ") for row in rows), "    },\n"]))
    return HEAD + "".join(blocks) + "}  # fmt: skip\n"


if __name__ == "__main__":
    raise SystemExit(main())
