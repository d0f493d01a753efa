"""The states of a fork as data and sentences: each row's words are made of the row's own figures."""

from __future__ import annotations

from dataclasses import replace

from calc.conditions.states import InState, State, States, states
from calc.impossible import Impossible
from calc.job import Job
from calc.job.fields.air import STATES
from calc.report.quantity import figure_text, quantity, size_text
from calc.report.types import ForkState, LostAt, Quantity, ReplacedBy, StateFigures, StatesReport

LABELS = {**STATES, "charge lost": "Charge lost"}
_MEANS: dict[State, str] = {
    "as built": "sealed, with its charge",
    "charge lost": "sealed, its gas at no more than the air outside",
    "seal leaking": "what was in the cartridge and the leg's own air are at one pressure",
    "oil moved": "sealed, some of its oil on the other side of the seal",
    "opened into one": "one space with the leg, bled",
}
_AT = ("Rider sag", "Half travel", "Full travel")
_REFUSED = "An entry that this rests on is refused. Mend it first."


def states_report(job: Job, corrected: Job) -> StatesReport | None:
    """The states of the fork as found.

    Parameters: job; corrected, the same as sags found correct it.
    Returns: StatesReport; None where the fork has no sealed cartridge.
    Raises: nothing.
    Formula: see `calc.conditions.states`.
    Source: see there.
    Example: see `tests/unit/report/test_states_report.py`.
    """
    if job.choice("front.air") != "sealed cartridge":
        return None
    if any(problem.end in ("front", "both") for problem in job.problems):
        return _nothing(_REFUSED)
    try:
        found = states(corrected)
    except Impossible as error:
        return _nothing(_said(error))
    return None if found is None else _told(corrected, found)


def _nothing(problem: str) -> StatesReport:
    return StatesReport(problem, (), (), (), None, (), "")


def _said(error: Impossible) -> str:
    return f"{error.message} {error.way_out}".rstrip()


def _told(job: Job, found: States) -> StatesReport:
    strokes = tuple(quantity(stroke, "mm", at.lower(), 0) for at, stroke in zip(_AT, found.strokes, strict=True))
    report = StatesReport(
        problem="" if found.unreplaced is None else f"Nothing replaces it: {_said(found.unreplaced)}",
        strokes=strokes,
        rows=tuple(_row(found, how, one) for how, one in found.told.items()),
        lost=tuple(
            LostAt(
                at,
                stroke,
                quantity(lost.backing, "bar", f"{at.lower()}, as built less opened", 1, "MPa"),
                quantity(lost.rod_push, "N", f"{at.lower()}, one leg", 0),
            )
            for at, stroke, lost in zip(_AT, strokes, found.lost, strict=False)
        ),
        replaced=_replaced(found),
        words=(),
        note=_note(job, found),
    )
    return replace(report, words=_words(report))


def _row(found: States, how: State, one: InState | Impossible) -> ForkState:
    label = LABELS[how]
    if isinstance(one, Impossible):
        return ForkState(how, label, None, "", f"{label}: {_said(one)}")
    done = one.figures
    behind = tuple(
        quantity(one.behind(stroke, i == 0), "bar", f"{at.lower()}, over the air outside", 1, "MPa")
        for i, (at, stroke) in enumerate(zip(_AT, found.strokes, strict=True))
    )
    figures = StateFigures(
        free_sag=quantity(done.free.stroke, "mm", "bike alone", 0),
        rider_sag=quantity(done.rider.stroke, "mm", "rider aboard", 0),
        end_force=quantity(done.end_force / 1000.0, "kN", "full travel, both legs, vertical", 2),
        end_multiple=quantity(done.end_multiple, "", "full travel, times the rider load", 1),
        gas_share=quantity(100.0 * one.gas_share, "%", "full travel, of the force", 0),
        behind=behind,
        gap_now=None if one.gap_now is None else quantity(one.gap_now, "mm", "mean of both legs", 0),
    )
    return ForkState(one.state, label, figures, _row_words(f"{label}, {_MEANS[how]}", figures), "")


def _row_words(state: str, told: StateFigures) -> str:
    bars = [one.text for one in told.behind]
    shows = "" if told.gap_now is None else f" Its oil shows a gap of {figure_text(told.gap_now)}."
    return (
        f"{state}: rider sag {figure_text(told.rider_sag)}; at full travel {told.end_multiple.text} times the rider load, "
        f"{figure_text(told.gas_share)} of it from the gas; behind the damper's oil {bars[0]}, {bars[1]} and {bars[2]} bar.{shows}"
    )


def _replaced(found: States) -> ReplacedBy | None:
    done, opened = found.replaced, found.told["opened into one"]
    if done is None or isinstance(opened, Impossible):
        return None
    coil = opened.assembly.springs > 0
    more = done.setup.preload - opened.setup.preload
    return ReplacedBy(
        preload=quantity(done.setup.preload, "mm", "opened, rider sag as built", 1) if coil else None,
        more=quantity(more, "mm", "than as found", 1) if coil else None,
        gap=quantity(done.setup.gap, "mm", "opened, full travel as built, mean of both legs", 0),
        oil=quantity(done.oil, "ml", "into each leg", 0, "mm3"),
    )


def _words(report: StatesReport) -> tuple[str, ...]:
    """What was lost row by row, then what replaces it."""
    lost = tuple(_lost_words(row) for row in report.lost)
    replaced = report.replaced
    if replaced is None:
        return lost
    oil = replaced.oil
    way = "out of" if oil.value < 0 else "into"
    amount = f"{size_text(oil)} ml of oil {way} each leg" if float(size_text(oil)) else "no more oil"
    gap = f"a gap of {figure_text(replaced.gap)}, read as in an open leg ({amount})"
    if replaced.preload is None or replaced.more is None:
        return (*lost, f"Opened, {gap} gives the force at full travel back.")
    way = "less" if replaced.more.value < 0 else "more"
    preload = f"{size_text(replaced.more)} mm {way} preload, {figure_text(replaced.preload)} in all"
    said = f"Opened, {preload}, gives the rider sag back, and {gap}, the force at full travel."
    if any(row.backing.value > 0 for row in report.lost):
        said += " Neither brings back what stood behind the damper's oil: that is work on the damper."
    return (*lost, said)


def _lost_words(row: LostAt) -> str:
    where = f"{row.at}, {figure_text(row.stroke)}:"
    bar, push = size_text(row.backing), size_text(row.rod_push)
    if row.backing.value < 0:
        return f"{where} opened, {bar} bar more stands behind the damper's oil than as built, and {push} N more push on each rod."
    return (
        f"{where} opened, {bar} bar less stands behind the damper's oil, and {push} N less push on each rod. "
        f"The base valve must hold {bar} bar more there, or the piston ask {bar} bar less."
    )


def _note(job: Job, found: States) -> str:
    gap: Quantity = quantity(found.shut_gap, "mm", "around the shut cartridge", 0)
    moved = quantity(abs(found.moved), "ml", "oil moved", 0, "mm3")
    way = "into" if found.moved < 0 else "out of"
    assumed = ", an example, as nobody entered how much" if found.assumed else ""
    opened = job.choice("front.cartridge_state") == "opened into one"
    as_sold = " as sold" if opened and not job.entered("front.push_gap") else ""
    return (
        f"Springs and preload as found in every row, oil by a gap of {gap.text} mm{as_sold} around the shut cartridge. "
        f"Oil moved: {moved.text} ml {way} the cartridge{assumed}. Pressures are over the air outside; at half and full travel "
        "the leg got there fast from its rider sag. No +/- stands beside these."
    )
