"""Sags found: beside what was expected, what they correct, and what is not the springs' doing."""

from __future__ import annotations

import math

from calc.job import Job
from calc.job.fields import FIELDS
from calc.model.observed import STICKS
from calc.practice import AXLES, Axle
from calc.quantities.entry import convert, convert_difference, internal_unit
from calc.quantities.reading import Reading
from calc.report.quantity import banded_text, figure_text, number_text, quantity, rate_text, spring_rate, with_half
from calc.report.types import CorrectedReading, Quantity, SagRow, SagsOfEnd, SagsReport
from calc.uncertainty.by_sags import rate_by_sags
from calc.uncertainty.corrected import DOUBTFUL, Compared, Correction, SagsFound, shown_reading

_VAGUE = 20.0  # mm either way: what is expected so loosely is no check
_CASES = {"alone": "free sag", "aboard": "rider sag"}
# Common practice, no source.
_LOOK = {
    "front": "Not the springs: look for a bent tube (runout over 0.2 mm), dry bushes or seals, an axle that pulls a leg over.",
    "rear": "Not the spring: look for a linkage that binds, a chain too tight, dry bearings or a dry seal.",
}
_BOTH_DEEPER = {
    "front": "preload less than entered, springs that have sagged",
    "rear": "preload less than entered, a spring that has sagged, a shock that lost its charge",
}
_BOTH_HIGHER = "preload more than entered, or something that holds it up"


def sags_report(job: Job, found: SagsFound) -> SagsReport | None:
    """The report of a job's sags.

    Parameters: job, not corrected; found, of that job.
    Returns: SagsReport; None where no sag was read.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/report/test_sags.py`.
    """
    ends = tuple(
        _end(job, axle, found) for axle in AXLES if axle in found.refused or any(one.read.axle == axle for one in found.compared)
    )
    if not ends and not found.corrections:
        return None
    corrections = tuple(_corrected(one) for one in found.corrections)
    applied = bool(found.fields) and job.choice("bike.sags_correct") == "yes"
    return SagsReport(
        "built" if job.choice("bike.sags_of") == "built" else "found",
        _lead(ends),
        ends,
        corrections,
        applied,
        _whole_words(corrections, applied),
    )


def _lead(ends: tuple[SagsOfEnd, ...]) -> str:
    """What matters most: why an end says nothing; a sag that fits nothing; one that is off; else that all are as expected."""
    said = [(_rank(end, place), end, end.words[place]) for end in ends for place in range(len(end.rows) or 1)]
    rank, end, words = min(said, key=lambda one: one[0], default=(_PLAIN, None, ""))
    if end is None:
        return ""
    return "The sags found are as expected." if rank == _PLAIN else f"{end.axle.capitalize()}: {words[0].lower()}{words[1:]}"


_PLAIN = 3


def _rank(end: SagsOfEnd, place: int) -> int:
    if end.refused:
        return 0
    row = end.rows[place]
    if not row.believed:
        return 1
    room = ((row.expected.plus_minus_95 or 0.0) ** 2 + (row.found.plus_minus_95 or 0.0) ** 2) ** 0.5
    return 2 if abs(row.found.value - row.expected.value) > room else _PLAIN


def _whole_words(corrections: tuple[CorrectedReading, ...], applied: bool) -> str:
    if not corrections:
        return "These sags change none of your readings." if applied else ""
    if applied:
        return "The answer rests on the corrected readings. What you typed stays as it is."
    return "The answer rests on your readings as they are: these sags are only compared."


def _end(job: Job, axle: Axle, found: SagsFound) -> SagsOfEnd:
    travel = job.number(f"{axle}.travel") if job.known(f"{axle}.travel") else 0.0
    if axle in found.refused:
        return SagsOfEnd(axle, travel, (), None, None, found.refused[axle], (found.refused[axle],))
    compared = [one for one in found.compared if one.read.axle == axle]
    rows = tuple(_row(one) for one in compared)
    rate, friction = _rate(job, axle, compared), _friction(found, axle)
    words = (
        *(_compared_words(one, row) for one, row in zip(compared, rows, strict=True)),
        *_rate_words(job, axle, rate),
        *_shift_words(axle, compared),
        *_friction_words(job, axle, friction, found),
    )
    return SagsOfEnd(axle, travel, rows, rate, friction, "", words)


def _row(one: Compared) -> SagRow:
    label = _CASES[one.read.case]
    twice = one.read.spread is not None
    off = 2.0 * one.read.uncertainty / (2**0.5 if twice else 1.0)
    found = with_half(quantity(max(one.read.sag, 0.0), "mm", label, 0), off)
    expected = with_half(quantity(max(one.expected, 0.0), "mm", label, 0), one.expected_half)
    return SagRow(one.read.axle, label, found, expected, one.believed)


def _compared_words(one: Compared, row: SagRow) -> str:
    """Found beside expected, and how they stand to each other: by the same numbers as the row."""
    where = f"{row.label[0].upper()}{row.label[1:]}"
    beside = f"{where} {row.found.text} mm found, {banded_text(row.expected)} expected"
    if not row.believed:
        return f"{beside}. It fits nothing else that was read, and is left out: read it again."
    if one.read.topped_out:
        return f"{beside}. It stands at its top by itself, so this is only a limit."
    off, room = one.read.sag - one.expected, (one.expected_half**2 + (row.found.plus_minus_95 or 0.0) ** 2) ** 0.5
    if abs(off) <= room:
        return f"{beside}: {'no surprise, but little is known of this end yet' if one.expected_half > _VAGUE else 'as expected'}."
    return f"{beside}: {number_text(abs(off), 0)} mm {'more' if off > 0 else 'less'}, beyond what your readings allow."


def _rate(job: Job, axle: Axle, compared: list[Compared]) -> Quantity | None:
    found = rate_by_sags(job, axle, [one.read for one in compared if one.believed])
    return None if found is None else with_half(spring_rate(found[0], "by the sags"), found[1])


def _rate_words(job: Job, axle: Axle, rate: Quantity | None) -> tuple[str, ...]:
    if rate is None or rate.plus_minus_95 is None:
        return ()
    springs = "the springs are" if axle == "front" else "the spring is"
    said = f"By these two sags alone, gas taken off, {springs} {banded_text(rate)} N/mm"
    path = f"{axle}.built_rate" if job.choice("bike.sags_of") == "built" else f"{axle}.rate"
    if not job.entered(path) or not job.fields[path].applies:
        return (f"{said}.",)
    read = job.fields[path].reading
    assert read is not None
    off, room = rate.value - read.value, (rate.plus_minus_95**2 + read.plus_minus_95**2) ** 0.5
    if abs(off) <= DOUBTFUL / 2.0 * room:
        return (f"{said}: the {rate_text(read.value)} fits that.",)
    tired = (
        " Tired, or not what is marked: put it on a tester."
        if off < 0
        else " Not what is marked, or something holds it up: put it on a tester."
    )
    return (f"{said}, not {rate_text(read.value)}.{tired}",)


def _shift_words(axle: Axle, compared: list[Compared]) -> tuple[str, ...]:
    """Where both sags are off by much the same: a force is, not the rate."""
    if len(compared) < 2 or any(one.read.topped_out or not one.believed for one in compared):
        return ()
    off = [one.read.sag - one.expected for one in compared]
    half = [2.0 * one.read.uncertainty for one in compared]
    if off[0] * off[1] <= 0 or abs(off[1] - off[0]) > sum(half) or min(map(abs, off)) <= max(half):
        return ()
    way, look = ("deeper", _BOTH_DEEPER[axle]) if off[0] > 0 else ("higher", _BOTH_HIGHER)
    by = number_text(abs(sum(off)) / 2.0, 0)
    return (f"Both sags stand about {by} mm {way} than expected, so it is not the rate. Look for {look}.",)


def _friction(found: SagsFound, axle: Axle) -> Quantity | None:
    """Friction as the spreads have it; None where no sag was read twice."""
    path = f"{axle}.friction"
    twice = any(one.read.axle == axle and one.read.spread is not None and one.believed for one in found.compared)
    if not twice or path not in found.fields:
        return None
    reading = shown_reading(found.fields[path])
    return with_half(quantity(reading.value, "N", "between two readings of a sag", 0), reading.plus_minus_95)


def _friction_words(job: Job, axle: Axle, friction: Quantity | None, found: SagsFound) -> tuple[str, ...]:
    if friction is None:
        return ()
    usual = job.usual("friction per leg, ridden" if axle == "front" else "friction rear at the wheel")
    assert usual is not None
    where = "a leg" if axle == "front" else "at the wheel"
    said = f"It sticks by {banded_text(friction)} N {where}"
    spreads = [one.read.spread for one in found.compared if one.read.axle == axle and one.read.spread is not None]
    if friction.value > usual.high or max(spreads) > 0.8 * STICKS:
        return (f"{said}, more than the usual {usual.low:g} to {usual.high:g}. {_LOOK[axle]}",)
    return (f"{said}; usual is {usual.low:g} to {usual.high:g}.",)


def _corrected(one: Correction) -> CorrectedReading:
    field = FIELDS[one.path]
    places = _places(one.after, one.path)
    before, after = (_in_unit(reading, one.path, places) for reading in (one.before, one.after))
    far = abs(one.surprise) > DOUBTFUL
    label = (
        field.label
        if field.end == "both" or field.end in field.label.lower()
        else f"{field.end.capitalize()}: {field.label[0].lower()}{field.label[1:]}"
    )
    words = f"{label} {_text(before)} {one.before.origin}: {_text(after)} by your sags."
    if far:
        words += " That is further off than its ± allows: it may be this reading or one of the others here. Take it again."
    return CorrectedReading(one.path, label, before, after, words)


def _in_unit(reading: Reading, path: str, decimals: int) -> Quantity:
    """A reading in the unit of its field."""
    field = FIELDS[path]
    inside = internal_unit(field.dimension)
    shown, wide = convert(reading.value, inside, field.unit), convert_difference(reading.plus_minus_95, inside, field.unit)
    return with_half(quantity(shown, field.unit, "", decimals), wide)


def _places(reading: Reading, path: str) -> int:
    """The decimal that a reading's +/- begins at, in the unit of its field."""
    field = FIELDS[path]
    wide = convert_difference(reading.plus_minus_95, internal_unit(field.dimension), field.unit)
    return min(max(0, -math.floor(math.log10(wide))), 6) if wide > 0 else field.decimals


def _text(figure: Quantity) -> str:
    return f"{figure.text} {figure.plus_minus_text} {figure.unit}".strip() if figure.plus_minus_text else figure_text(figure)
