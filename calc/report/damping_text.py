"""The dampers as plain text for the command line: what the page shows."""

from __future__ import annotations

from calc.report.columns import columns, wrapped
from calc.report.quantity import banded_text
from calc.report.types import DampingOfEnd, HoldsIn


def damping_lines(ends: tuple[DampingOfEnd, ...]) -> list[str]:
    """Of each end: sentences, then clickers, limits and shims as tables."""
    return [line for end in ends for line in [*_end(end), ""]]


def _end(end: DampingOfEnd) -> list[str]:
    lines = [f"Damping, {end.axle}"]
    for words in (end.problem, *end.words, *end.limits, *end.besides):
        lines += wrapped(words, "    ", "  ") if words else []
    if end.shims:
        lines += wrapped(f"Shims. {end.shims.problem or end.shims.words}", "    ", "  ")
        lines += [line for words in end.shims.groups for line in wrapped(words, "      ", "    ")]
    if end.follows:
        rows = [[one.since, banded_text(one.ride), banded_text(one.full)] for one in end.follows]
        lines += ["", *columns(["Damping times", "rebound and\ncompression", "rebound from\nfull travel"], rows)]
    lines += [line for one in end.holds if one.rows for line in _holds(one)]
    if end.clickers:
        rows = [[one.label, one.found, one.built] for one in end.clickers]
        lines += ["", *columns(["Clickers from closed", "as found", "as built"], rows)]
    return [*lines, *wrapped(end.left_out, "  ", "  ")]


def _holds(one: HoldsIn) -> list[str]:
    heads = ["stroke\nmm", "behind oil\nbar gauge", "piston takes\nat most bar", "rod force\nat most N", "check valve\nat most bar"]
    stated = any(row.stated_force for row in one.rows)
    if stated:
        heads[3:3] = ["with base\nvalve bar"]
        heads[5:5] = ["with base\nvalve N"]
    rows = []
    for row in one.rows:
        cells = [row.stroke.text, row.behind.text, row.drop.text, row.force.text, row.refill.text]
        if stated:
            cells[3:3] = [row.stated_drop.text if row.stated_drop else ""]
            cells[5:5] = [row.stated_force.text if row.stated_force else ""]
        rows.append(cells)
    return ["", f"  {one.label}, before the oil tears:", *columns(heads, rows, left=0)]
