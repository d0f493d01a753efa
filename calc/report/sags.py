"""Sags found: beside what was expected, what they correct, and what is not the springs' doing."""

from __future__ import annotations

import math

from calc.job import Job
from calc.model.observed import STICKS, sags_read
from calc.practice import AXLES, Axle
from calc.report.corrected import by_words, corrected_readings, points_words, rests_words
from calc.report.quantity import banded_text, known_rate, number_text, quantity, rate_text, with_half
from calc.report.types import Quantity, SagRow, SagsOfEnd, SagsReport
from calc.uncertainty.by_sags import rate_by_sags
from calc.uncertainty.compared import DOUBTFUL, Compared
from calc.uncertainty.corrected import SagsFound, shown_reading

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
_COUNT = {"front": "count the adjuster's turns, measure the spacer", "rear": "measure the collar"}
_BOTH_HIGHER = "preload more than entered, or something that holds it up"


def sags_report(job: Job, found: SagsFound) -> SagsReport | None:
    """The report of a job's sags.

    Parameters: job, not corrected; found, of that job.
    Returns: SagsReport; None where no sag was read and nothing else corrects a reading.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/whole/test_random_sags.py`.
    """
    ends = tuple(
        _end(job, axle, found) for axle in AXLES if axle in found.refused or any(one.read.axle == axle for one in found.compared)
    )
    corrections, left_out = corrected_readings(found), points_words(found)
    if not ends and not corrections and not left_out:
        return None
    applied = bool(found.fields) and found.applied
    return SagsReport(
        "built" if job.choice("bike.sags_of") == "built" else "found",
        _lead(ends),
        ends,
        corrections,
        by_words(found),
        applied,
        (*left_out, *rests_words(job, found)),
    )


def _lead(ends: tuple[SagsOfEnd, ...]) -> str:
    """What matters most: why an end says nothing; a sag that fits nothing; one that is off; else that all are as expected,
    where any could be expected.
    """
    said = [(_rank(end, place), end, end.words[place]) for end in ends for place in range(len(end.rows) or 1)]
    rank, end, words = min(said, key=lambda one: one[0], default=(_PLAIN, None, ""))
    if end is None:
        return ""
    return "The sags found are as expected." if rank == _PLAIN else f"{end.axle.capitalize()}: {words[0].lower()}{words[1:]}"


_PLAIN, _UNKNOWN = 3, 4


def _rank(end: SagsOfEnd, place: int) -> int:
    if end.refused:
        return 0
    row = end.rows[place]
    if not row.believed:
        return 1
    if abs(row.found.value - row.expected.value) > _room(row):
        return 2
    return _UNKNOWN if _vague(row) else _PLAIN


def _vague(row: SagRow) -> bool:
    """Whether too little is known to expect a sag: the number would be read as one."""
    return (row.expected.plus_minus_95 or 0.0) > _VAGUE


def _room(row: SagRow) -> float:
    """What found and expected may be apart [mm] by what is known of both: by the tape and by the other readings."""
    return math.hypot(row.expected.plus_minus_95 or 0.0, row.found.plus_minus_95 or 0.0)


def _end(job: Job, axle: Axle, found: SagsFound) -> SagsOfEnd:
    travel = job.number(f"{axle}.travel") if job.known(f"{axle}.travel") else 0.0
    if axle in found.refused:
        stuck = any((read.spread or 0.0) > STICKS for read in sags_read(job, axle))
        words = (found.refused[axle], *([_LOOK[axle]] if stuck else []))
        return SagsOfEnd(axle, travel, (), None, None, found.refused[axle], words)
    compared = [one for one in found.compared if one.read.axle == axle]
    rows = tuple(_row(one) for one in compared)
    rate, friction = _rate(job, axle, compared), _friction(found, axle)
    words = (
        *(_compared_words(one, row) for one, row in zip(compared, rows, strict=True)),
        *_rate_words(job, axle, rate, all(one.believed for one in compared)),
        *_shift_words(axle, compared, rows),
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
    found = f"{row.label[0].upper()}{row.label[1:]} {row.found.text} mm found"
    beside = f"{found}, {banded_text(row.expected)} expected"
    if not row.believed:
        return f"{beside}. It fits nothing else that was read, and is left out: read it again."
    off = one.read.sag - one.expected
    within = abs(off) <= _room(row)
    if within and _vague(row):
        beside = f"{found}: too little is known of this end yet to expect one"
    if one.read.topped_out:
        return f"{beside}. It stands at its top by itself, so this is only a limit."
    if within:
        return f"{beside}." if _vague(row) else f"{beside}: as expected."
    return f"{beside}: {number_text(abs(off), 0)} mm {'more' if off > 0 else 'less'}, beyond what your readings allow."


def _rate(job: Job, axle: Axle, compared: list[Compared]) -> Quantity | None:
    found = rate_by_sags(job, axle, [one.read for one in compared])
    return None if found is None else known_rate(found[0], found[1], "by the sags")


def _rate_words(job: Job, axle: Axle, rate: Quantity | None, believed: bool) -> tuple[str, ...]:
    """What both sags make of the springs, taken as they were read where one of them was left out."""
    if rate is None or rate.plus_minus_95 is None:
        return ()
    springs = "the springs are" if axle == "front" else "the spring is"
    lead = "By these two sags alone" if believed else "Both taken as read"
    said = f"{lead}, gas taken off, {springs} {banded_text(rate)} N/mm"
    path = f"{axle}.built_rate" if job.choice("bike.sags_of") == "built" else f"{axle}.rate"
    if not job.entered(path) or not job.fields[path].applies:
        return (f"{said}.",)
    read = job.fields[path].reading
    assert read is not None
    off, room = rate.value - read.value, (rate.plus_minus_95**2 + read.plus_minus_95**2) ** 0.5
    if abs(off) <= room:
        return (f"{said}: the {rate_text(read.value)} fits that.",)
    if abs(off) <= DOUBTFUL / 2.0 * room:
        side = "softer" if off < 0 else "stiffer"
        return (f"{said}, {side} than {rate_text(read.value)} by a little more than is known of them.",)
    tired = (
        " Tired, or not what is marked: put it on a tester."
        if off < 0
        else " Not what is marked, or something holds it up: put it on a tester."
    )
    return (f"{said}, not {rate_text(read.value)}.{tired}",)


def _shift_words(axle: Axle, compared: list[Compared], rows: tuple[SagRow, ...]) -> tuple[str, ...]:
    """Where both sags are off by much the same, and by more than is known of either: a force is, not the rate."""
    if len(compared) == 2 and compared[0].read.topped_out and all(_higher(*pair) for pair in zip(compared, rows, strict=True)):
        return (f"It tops out by itself and sinks less with the rider too. Look for {_BOTH_HIGHER}: {_COUNT[axle]}.",)
    if len(compared) < 2 or any(one.read.topped_out or not one.believed for one in compared):
        return ()
    off = [one.read.sag - one.expected for one in compared]
    half = [2.0 * one.read.uncertainty for one in compared]
    if off[0] * off[1] <= 0 or abs(off[1] - off[0]) > sum(half):
        return ()
    if any(abs(by) <= _room(row) for by, row in zip(off, rows, strict=True)):
        return ()
    way, look = ("deeper", _BOTH_DEEPER[axle]) if off[0] > 0 else ("higher", _BOTH_HIGHER)
    by = number_text(abs(sum(off)) / 2.0, 0)
    return (f"Both sags stand about {by} mm {way} than expected, so it is not the rate. Look for {look}.",)


def _higher(one: Compared, row: SagRow) -> bool:
    """Whether an end stands higher than expected, by more than is known."""
    return one.read.sag - one.expected < -_room(row)


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
