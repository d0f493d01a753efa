"""The states of a fork as plain text for the command line: what the page shows."""

from __future__ import annotations

from calc.report.columns import columns, wrapped
from calc.report.types import ForkState, StatesReport


def states_lines(states: StatesReport | None) -> list[str]:
    """A row for each state, why one cannot be, what opening takes away and what replaces it."""
    if states is None:
        return []
    lines = ["States of this fork", "", *(wrapped(states.problem, "  ", "  ") if states.problem else [])]
    heads = ["", "free sag\nmm", "rider sag\nmm", "full\ntravel kN", "x rider\nload", "gas\n%", "gap\nnow mm"]
    heads += [f"behind oil, bar\nat {stroke.text} mm" for stroke in states.strokes]
    rows = [cells for row in states.rows if (cells := _cells(row))]
    lines += columns(heads, rows) if rows else []
    said = [row.problem or row.words for row in states.rows]
    return [*lines, *(line for words in (*said, *states.words, states.note) if words for line in wrapped(words, "  ", "  ")), ""]


def _cells(row: ForkState) -> list[str]:
    told = row.figures
    if told is None:
        return []
    shown = (told.free_sag, told.rider_sag, told.end_force, told.end_multiple, told.gas_share, told.gap_now, *told.behind)
    return [row.label, *("" if one is None else one.text for one in shown)]
