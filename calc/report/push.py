"""A bench push as data: the states that the leg may be in, the points and what each state misses them by, the next one to read."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Literal, cast, get_args

import numpy as np

from calc.job import Job
from calc.report.push_corrects import corrects_words
from calc.report.push_words import LABELS, NOTE, push_words, verdict_words
from calc.report.quantity import quantity, with_half
from calc.report.types import PushExpected, PushFurther, PushPoint, PushReport, PushRival, Quantity
from calc.report.types.push import PushState
from calc.uncertainty.compared import DOUBTFUL
from calc.uncertainty.corrected import SagsFound
from calc.uncertainty.rivals import Banded, Further, PushFound, Rival, push_found

_READ: dict[float, Literal["in", "out", "both"]] = {1.0: "in", -1.0: "out", 0.0: "both"}


def push_report(job: Job, corrected: SagsFound) -> PushReport | None:
    """The report of a job's bench push.

    Parameters: job, not corrected; corrected, what was found of it says of its readings.
    Returns: PushReport; None where none is entered.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/whole/test_push_words.py`.
    """
    found = push_found(job)
    if found is None:
        return None
    points = tuple(_points(found))
    bare = PushReport(found.refused, found.refused, (), _READ[found.push.sign], points, (), (), (), None, (), "", ())
    if found.refused:
        return bare
    report = replace(
        bare,
        states=tuple(_state(state) for state in found.states),
        doubtful=tuple(np.flatnonzero(found.doubtful).tolist()),
        rivals=tuple(_rival(found, one) for one in found.rivals),
        strokes=tuple(found.strokes.tolist()),
        further=None if found.further is None else _further(found.further),
        note=NOTE if len(found.rivals) > 1 else "",
    )
    return replace(
        report, verdict=verdict_words(report), words=tuple(push_words(job, report)), corrects=corrects_words(job, report, corrected)
    )


def _points(found: PushFound) -> Iterator[PushPoint]:
    """The points, with what a force may be off by where its stroke is off too."""
    push = found.push
    steep = np.zeros(len(push.strokes))
    if found.rivals:
        curve = found.rivals[0].curve
        known = ~np.isnan(curve)
        if np.count_nonzero(known) > 1:
            steep = np.interp(push.strokes, found.strokes[known], np.gradient(curve[known], found.strokes[known]))
    off = 2.0 * np.hypot(push.force_off, steep * push.stroke_off)
    for stroke, force, half in zip(push.strokes, push.forces, off, strict=True):
        yield PushPoint(quantity(stroke, "mm", "as read", 0), with_half(quantity(force, "N", "as read, one leg", 0), float(half)))


def _state(key: str) -> PushState:
    assert key in get_args(PushState)
    return cast(PushState, key)


def _rival(found: PushFound, one: Rival) -> PushRival:
    state = _state(one.state)
    last = next((i for i, force in enumerate(one.curve) if math.isnan(force)), len(one.curve))
    return PushRival(
        state,
        LABELS[state],
        chance_figure(one.chance),
        one.fits,
        one in found.open,
        _figure(one.gap, "mm", "gap last set, by the push alone"),
        _figure(one.gap_now, "mm", "gap by now"),
        _figure(one.moved, "ml", "out of the cartridge", "mm3"),
        _figure(one.friction, "N", "one leg, slow"),
        tuple(round(float(force), 1) for force in one.curve[:last]),
        tuple(quantity(off, "N", "read less expected", 0) for off in found.push.forces - one.fitted),
        tuple(abs(float(surprise)) > DOUBTFUL for surprise in one.surprise),
        None if found.without is None or one.state not in found.without else chance_figure(found.without[one.state]),
    )


def _figure(banded: Banded | None, unit: str, case: str, internal: str | None = None) -> Quantity | None:
    if banded is None:
        return None
    half = quantity(banded.half, unit, case, 0, internal).value
    return with_half(quantity(banded.value, unit, case, 0, internal), half)


def chance_figure(chance: float) -> Quantity:
    """A chance [-] in 100; never told as none or all."""
    figure = quantity(100.0 * chance, "in 100", "all states equally likely beforehand", 0)
    return replace(figure, text="over 99" if figure.value > 99.5 else "under 1" if figure.value < 0.5 else figure.text)


def _further(further: Further) -> PushFurther:
    one, other = (_expected(_state(state), force) for state, force in further.expected)
    apart = with_half(quantity(abs(one.force.value - other.force.value), "N", "between the two", 0), further.half)
    return PushFurther(quantity(further.stroke, "mm", "to be read next", 0), (one, other), apart, further.tells)


def _expected(state: PushState, force: float) -> PushExpected:
    return PushExpected(state, LABELS[state], quantity(force, "N", "as scales would show it", 0))
