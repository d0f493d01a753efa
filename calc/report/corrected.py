"""What readings found correct, reading by reading, in words; by what, and whether the answer rests on it."""

from __future__ import annotations

import math

from calc.job import Job
from calc.job.fields import FIELDS
from calc.quantities.entry import convert, convert_difference, internal_unit
from calc.quantities.reading import Origin, Reading, Spread
from calc.report.quantity import figure_text, number_text, quantity, with_half
from calc.report.types import CorrectedReading, Quantity
from calc.uncertainty.compared import DOUBTFUL
from calc.uncertainty.corrected import Correction, SagsFound

_EDGE = 0.98  # of half the range: the draws reach the end of what is usual


def corrected_readings(found: SagsFound) -> tuple[CorrectedReading, ...]:
    """Each reading as it was and as it is by what was found, with its sentence; none that reads the same after."""
    told = [(one, _corrected(one, found)) for one in found.corrections]
    return tuple(words for one, words in told if abs(one.surprise) > DOUBTFUL or _text(words.before) != _text(words.after))


def by_words(found: SagsFound) -> str:
    """What corrects: "your sags", "your sags and push"; empty where nothing is believed."""
    *most, last = found.by or ("",)
    return f"your {', '.join(most)} and {last}" if most else f"your {last}" if last else ""


def points_words(found: SagsFound) -> tuple[str, ...]:
    """The points of a push that fit nothing."""
    return tuple(
        f"The point at {number_text(one.stroke, 0)} mm of the push fits nothing else that was read, and is left out: read it again."
        for one in found.points
        if not one.believed
    )


def rests_words(job: Job, found: SagsFound) -> tuple[str, ...]:
    """Whether the answer rests on what was found."""
    applied = bool(found.fields) and found.applied
    compared = job.choice("bike.sags_correct") == "no" and bool(found.compared)
    if found.corrections and applied:
        beside = " The sags are only compared." if compared else ""
        return (f"The answer rests on the corrected readings. What you typed stays as it is.{beside}",)
    if found.corrections:
        return ("The answer rests on your readings as they are: these sags are only compared.",)
    return (
        (f"{by_words(found).capitalize()} change{'s' if found.by == ('push',) else ''} none of your readings.",) if applied else ()
    )


def at_the_edge(one: Correction) -> bool:
    """Whether an assumed reading has come to lie at an end of its range, beyond which it was not looked for."""
    reaches = abs(one.after.value - one.before.value) + one.after.plus_minus_95
    assumed = one.before.origin is Origin.ASSUMED and one.before.spread is Spread.RECTANGULAR
    return (
        assumed
        and reaches >= _EDGE * one.before.plus_minus_95
        and abs(one.after.value - one.before.value) > one.after.plus_minus_95
    )


# Common practice, no source.
_STICKS = {
    "front": "check bushes, seals and axle pinch",
    "rear": "check linkage bearings, the shock's seal and the chain's slack",
}


def _edge_words(one: Correction, found: SagsFound) -> str:
    """What to do about a reading at an end of what is usual: friction that sags read twice have told is measured already."""
    axle = FIELDS[one.path].end
    measured = one.path == f"{axle}.friction" and any(
        each.believed and each.read.axle == axle and each.read.spread is not None and not each.read.topped_out
        for each in found.compared
    )
    if not measured:
        return "That is the edge of what is usual: measure it."
    if one.after.value < one.before.value:
        return "It moves freely: nothing to do."
    return f"That is the high end of what is usual: {_STICKS[axle]}."


def _corrected(one: Correction, found: SagsFound) -> CorrectedReading:
    field = FIELDS[one.path]
    places = _places(one.after, one.path)
    before, after = (_in_unit(reading, one.path, places) for reading in (one.before, one.after))
    far = abs(one.surprise) > DOUBTFUL
    label = (
        field.label
        if field.end == "both" or field.end in field.label.lower()
        else f"{field.end.capitalize()}: {field.label[0].lower()}{field.label[1:]}"
    )
    words = f"{label} {_text(before)} {one.before.origin}: {_text(after)} by {by_words(found)}."
    if far:
        words += " That is further off than its ± allows: it may be this reading or one of the others here. Take it again."
    elif at_the_edge(one):
        words += f" {_edge_words(one, found)}"
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
