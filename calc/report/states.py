"""The states of a fork as data: a row for each, what opening takes away, and what replaces it."""

from __future__ import annotations

from calc.conditions.in_state import WAYS, InState, State
from calc.conditions.states import States, states
from calc.end.limits import Limits
from calc.impossible import Impossible
from calc.job import Job
from calc.job.declared import FieldPath
from calc.job.fields.air import STATES
from calc.model import conditions, found_gaps, limits
from calc.quantities.entry import convert_difference
from calc.report.quantity import figure_text, plain_number, quantity, size_text, with_half
from calc.report.setups import Cases, setup_report
from calc.report.states_words import backing_words, build_words, caution_words, given_back, note_words, plain_words, row_words
from calc.report.types import ForkState, LostRow, Quantity, Replacement, StateFigures, StatesReport
from calc.uncertainty.state_bands import Halves, StateBands, state_bands

AT = ("Rider sag", "Half travel", "Full travel")
LABELS: dict[State, str] = {**STATES, "charge lost": "Charge lost"}  # type: ignore[dict-item]  # the field's keys are these
_REFUSED = "An entry that this rests on is refused. Mend it first."
_OPENED: State = "opened into one"


def states_report(job: Job, corrected: Job) -> StatesReport | None:
    """The states of the fork as found.

    Parameters: job; corrected, the same as sags found correct it.
    Returns: StatesReport; None where the fork has no sealed cartridge.
    Raises: nothing.
    Formula: see `calc.conditions.states`.
    Source: see there.
    Example: see `tests/unit/report/test_states_report.py`.
    """
    found = worked_out(job, corrected)
    if found is None or isinstance(found, str):
        return None if found is None else StatesReport(found, (), (), (), (), "", "")
    sure = state_bands(corrected, found)
    strokes = tuple(quantity(stroke, "mm", at.lower(), 0) for at, stroke in zip(AT, found.strokes, strict=True))
    figures = {how: _figures(found, one, sure.figures.get(how, {})) for how, one in found.told.items() if isinstance(one, InState)}
    replacements = tuple(_replacement(job, corrected, found, how, figures[how]) for how in WAYS if how in figures)
    return StatesReport(
        problem="",
        strokes=strokes,
        rows=tuple(_row(found, how, one, figures, sure.left_out.get(how, 0.0)) for how, one in found.told.items()),
        lost=_lost(found, sure, figures, replacements),
        replacements=replacements,
        build=build_words(corrected, replacements),
        note=note_words(corrected, found),
    )


def worked_out(job: Job, corrected: Job) -> States | str | None:
    """All states; why there are none; None where the fork has no sealed cartridge."""
    if job.choice("front.air") != "sealed cartridge":
        return None
    if any(problem.end in ("front", "both") for problem in job.problems):
        return _REFUSED
    try:
        return states(corrected)
    except Impossible as error:
        return said(error)


def said(error: Impossible) -> str:
    """An impossibility and its way out."""
    return f"{error.message} {error.way_out}".rstrip()


def label_of(how: State, one: InState | Impossible) -> str:
    """What a state is called; one with something replaced, by what is set in it."""
    if how in LABELS:
        return LABELS[how]
    known = isinstance(one, InState)
    preload = f" {plain_number(float(one.setup.preload))} mm" if known else ""  # type: ignore[union-attr]
    gap = f" {plain_number(float(one.setup.gap))} mm" if known else ""  # type: ignore[union-attr]
    return {"preload replaced": f"Opened, preload{preload}", "gap replaced": f"Opened, gap{gap}"}.get(how, "Opened, both")


def _row(found: States, how: State, one: InState | Impossible, figures: dict[State, StateFigures], out: float) -> ForkState:
    label = label_of(how, one)
    if isinstance(one, Impossible):
        return ForkState(how, label, None, "", "", f"{label}: {said(one)}")
    moved = quantity(abs(found.moved), "ml", "oil moved", 0, "mm3")
    plain = plain_words(how, figures[how], figures.get("as built"), moved, found.moved < 0)
    return ForkState(how, label, figures[how], row_words(how, label, figures[how], out), plain, "")


def _figures(found: States, one: InState, halves: Halves) -> StateFigures:
    done = one.figures

    def told(name: str, value: object, unit: str, case: str, decimals: int, internal: str) -> Quantity:
        return _banded(quantity(value, unit, case, decimals, internal), halves.get(name), internal)

    behind = tuple(
        told(f"behind{i}", one.behind(stroke, i == 0), "bar", f"{at.lower()}, over the air outside", 1, "MPa")
        for i, (at, stroke) in enumerate(zip(AT, found.strokes, strict=True))
    )
    return StateFigures(
        free_sag=told("free_sag", done.free.stroke, "mm", "bike alone", 0, "mm"),
        rider_sag=told("rider_sag", done.rider.stroke, "mm", "rider aboard", 0, "mm"),
        end_force=told("end_force", done.end_force, "kN", "full travel, both legs, vertical", 2, "N"),
        end_multiple=told("end_multiple", done.end_multiple, "", "full travel, times the rider load", 1, ""),
        gas_share=told("gas_share", one.gas_share, "%", "full travel, of the force", 0, "1"),
        behind=behind,
        gap_now=None if one.gap_now is None else told("gap_now", one.gap_now, "mm", "mean of both legs", 0, "mm"),
    )


def _banded(figure: Quantity, half: float | None, internal: str) -> Quantity:
    return with_half(figure, None if half is None else convert_difference(half, internal, figure.unit) if internal else half)


def _lost(
    found: States, sure: StateBands, figures: dict[State, StateFigures], replacements: tuple[Replacement, ...]
) -> tuple[LostRow, ...]:
    """Each loss at each stroke, and what gives it back."""
    if not found.lost:
        return ()
    both = next((how for how in reversed(WAYS) if how in figures), None)
    set_anew = next((one for one in replacements if one.state == both), None)
    why = " ".join(said(one) for how, one in found.told.items() if how in WAYS and isinstance(one, Impossible))
    push, room = given_back(figures, set_anew, why)

    def at(value: str, unit: str, decimals: int, internal: str) -> tuple[Quantity, ...]:
        return tuple(
            _banded(
                quantity(getattr(lost, value), unit, f"{stroke.lower()}, one leg, as built less opened", decimals, internal),
                halves.get(value),
                internal,
            )
            for stroke, lost, halves in zip(AT, found.lost, sure.lost, strict=True)
        )

    backing = at("backing", "bar", 1, "MPa")
    rows = (
        LostRow("push", "Push on the rod, N less", at("rod_push", "N", 0, "N"), push),
        LostRow("room", "Room for gas over the oil, ml more", at("room", "ml", 0, "mm3"), room),
        LostRow("force", "Force of a leg, N less", at("force", "N", 0, "N"), ""),
        LostRow("backing", "Behind the damper’s oil, bar less", backing, backing_words(backing)),
    )
    # What shows 0 at every stroke was not lost, and nothing has to replace it.
    return tuple(row for row in rows if any(float(size_text(figure)) for figure in row.figures))


def _replacement(job: Job, corrected: Job, found: States, how: State, figures: StateFigures) -> Replacement:
    one, opened = found.told[how], found.told[_OPENED]
    assert isinstance(one, InState)
    assert isinstance(opened, InState)
    more = float(one.setup.preload - opened.setup.preload)
    by_preload, by_gap = how != "gap replaced" and one.assembly.springs > 0, how != "preload replaced"
    oil = found.oil.get(how)
    return Replacement(
        state=how,
        label=_set_words(one, more if by_preload else None, by_gap),
        preload=quantity(one.setup.preload, "mm", "opened", 0) if by_preload else None,
        more=quantity(more, "mm", "than as found", 0 if more == round(more) else 1) if by_preload else None,
        gap=figures.gap_now if by_gap else None,
        oil=None if oil is None else quantity(oil, "ml", "into each leg", 0, "mm3"),
        entries=_entries(job, corrected, one, by_gap),
        caution=caution_words(one, by_preload, by_gap, _limits(corrected)),
    )


def _set_words(one: InState, more: float | None, by_gap: bool) -> str:
    """What is set anew, as a hand would call it out."""
    way = "" if more is None or more < 0 else "+"
    preload = "" if more is None else f"preload {plain_number(float(one.setup.preload))} mm ({way}{plain_number(round(more, 1))})"
    gap = f"gap {plain_number(float(one.setup.gap))} mm" if by_gap else ""
    return f"Build {' and '.join(what for what in (preload, gap) if what)}"


def _limits(job: Job) -> Limits | None:
    try:
        return limits(job, "front")
    except Impossible:  # said at its field
        return None


def _entries(job: Job, corrected: Job, one: InState, by_gap: bool) -> tuple[tuple[FieldPath, str], ...]:
    """What is built, as it is typed; a gap that stays is the one that was read."""
    if job.choice("front.cartridge_state") != _OPENED:
        return ()
    rates: list[tuple[FieldPath, str]] = []
    if one.assembly.springs:
        setup = setup_report(one.setup, one.figures, Cases.of(corrected, "front"))
        both = (setup.rate, None) if setup.pair is None else (setup.pair.left, setup.pair.right)
        paths = ("front.built_rate", "front.built_rate_right")
        rates = [(path, figure_text(rate)) for path, rate in zip(paths, both, strict=True) if rate is not None]
        rates.append(("front.built_preload", f"{plain_number(float(one.setup.preload))} mm"))
    gaps = one.setup.gaps if by_gap else found_gaps(job, conditions(job))
    sides = (("front.built_gap_left", gaps[0]), ("front.built_gap_right", gaps[1]))
    return (*rates, *((path, f"{plain_number(round(float(gap), 1))} mm") for path, gap in sides))
