"""The states of a fork as plain text for the command line: what the page shows."""

from __future__ import annotations

from collections.abc import Iterator

from calc.job import Job
from calc.report.columns import columns, wrapped
from calc.report.quantity import banded_text, number_text
from calc.report.states import states_report
from calc.report.states_looked import states_looked
from calc.report.types import ForkState, LostRow, StateLooked, StatesLooked, StatesReport
from calc.uncertainty.corrected import sags_found

ROWS = 6  # steps of the stroke that are told


def states_text(job: Job) -> tuple[str, StatesLooked | None]:
    """The states of a job's fork, as rows and along the stroke; the latter as data too."""
    looked = states_looked(job)
    rows = states_report(job, sags_found(job, with_draws=False).correct(job))
    return "\n".join([*states_lines(rows), *looked_lines(looked)]), looked


def states_lines(states: StatesReport | None) -> list[str]:
    """A row for each state, why one cannot be, what opening takes away and what replaces it."""
    if states is None:
        return []
    lines = ["States of this fork", "", *(wrapped(states.problem, "  ", "  ") if states.problem else [])]
    heads = ["", "free sag\nmm", "rider sag\nmm", "full\ntravel kN", "x rider\nload", "gas\n%", "gap\nnow mm"]
    heads += [f"behind oil, bar\nat {stroke.text} mm" for stroke in states.strokes]
    rows = [cells for row in states.rows if (cells := _cells(row))]
    lines += columns(heads, rows) if rows else []
    lines += _said(*(row.problem or row.words for row in states.rows))
    if states.lost:
        lines += ["", "  What opening takes away, and what gives it back:", *_lost(states)]
    cautions = (f"{one.label}: {one.caution}" for one in states.replacements if one.caution)
    lines += _said(*cautions, states.build, states.note)
    plain = [row.plain for row in states.rows if row.plain]
    return [*lines, *(["", "  For the customer:", *_said(*plain)] if plain else []), ""]


def _said(*sentences: str) -> list[str]:
    return [line for words in sentences if words for line in wrapped(words, "  ", "  ")]


def _cells(row: ForkState) -> list[str]:
    told = row.figures
    if told is None:
        return []
    shown = (told.free_sag, told.rider_sag, told.end_force, told.end_multiple, told.gas_share, told.gap_now, *told.behind)
    return [row.label, *("" if one is None else banded_text(one) for one in shown)]


def _lost(states: StatesReport) -> list[str]:
    def cells(row: LostRow) -> list[str]:
        return [row.label, *(banded_text(figure) for figure in row.figures)]

    table = columns(["", *(f"at {stroke.text}\nmm" for stroke in states.strokes)], [cells(row) for row in states.lost])
    return [*table, *_said(*(row.replaced for row in states.lost))]


def looked_lines(looked: StatesLooked | None) -> list[str]:
    """Force, the gas's share of it and what stands behind the damper's oil of each state along the stroke."""
    if looked is None:
        return ["  This fork has no sealed cartridge."]
    if looked.problem or not looked.states:
        return _said(looked.problem)
    lines = []
    for one in looked.states:
        lines += [
            f"  {one.label}, along the stroke:",
            *columns(["mm", "kN", "of it\ngas %", "behind\noil bar"], list(_along(one)), left=0),
            "",
        ]
    return lines


def _along(one: StateLooked) -> Iterator[list[str]]:
    strokes = one.curve.stroke
    for i in range(0, len(strokes), max(len(strokes) // ROWS, 1)):
        share = one.gas_share[i]
        part = "" if share is None else number_text(share, 0)
        yield [number_text(strokes[i], 0), number_text(one.curve.working[i], 2), part, number_text(one.behind[i], 1)]
