"""After the ride: what held, what did not, of each end of which something was read."""

from __future__ import annotations

import numpy as np

from calc.conditions.after_ride import USED, Change, Ridden, SagFound, change_first, ridden
from calc.impossible import Impossible
from calc.job import Job
from calc.model.marks import was_built
from calc.practice import AXLES, Axle
from calc.report.quantity import banded_text, figure_text, number_text, quantity, with_half
from calc.report.ride_change import change_report
from calc.report.types import Quantity, RideOfEnd
from calc.report.types.ride import SetupRidden
from calc.uncertainty.compared import Landed
from calc.uncertainty.corrected import SagsFound

Said = tuple[bool, str]  # whether it held, and the words


def ride_report(job: Job, corrected: Job, found: SagsFound) -> tuple[RideOfEnd, ...]:
    """What the ride says.

    Parameters: job, as entered; corrected, by what was found where it says so; found, of that job.
    Returns: RideOfEnd of each end whose mark was read or of which the rider was asked.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/whole/test_ride.py`.
    """
    asked = [axle for axle in AXLES if any(job.entered(f"{axle}.{part}") for part in ("mark", "felt"))]
    return tuple(_end(job, corrected, axle, found) for axle in asked)


def _end(job: Job, corrected: Job, axle: Axle, found: SagsFound) -> RideOfEnd:
    of: SetupRidden = "built" if was_built(job, axle) else "found"
    if any(problem.end in (axle, "both") for problem in job.problems):
        return _none(axle, of, "An entry that this rests on is refused. Mend it first.")
    try:
        here = ridden(corrected, axle)
        sag = _sag_found(job, axle, of, found)
        doubted = sag is not None and not sag.believed
        change = Change("read") if doubted else change_first(corrected, axle, here, sag)
    except Impossible as error:
        return _none(axle, of, f"{error.message} {error.way_out}".rstrip())
    landed = next((one for one in found.landed if one.read.axle == axle), None)
    said = [one for one in (_sag_words(here, sag), _travel_words(axle, here), _landing_words(landed, here)) if one is not None]
    return RideOfEnd(
        axle=axle,
        of=of,
        stroke=float(f"{here.stroke:.12g}"),
        mark=_mark(job, axle, here),
        left=_left(here),
        multiple=_multiple(here),
        landing=_landing(landed),
        believed=landed is None or landed.believed,
        held=tuple(words for held, words in said if held),
        missed=tuple(words for held, words in said if not held),
        change=change_report(corrected, axle, here, change, sag),
        problem="",
    )


def _none(axle: Axle, of: SetupRidden, problem: str) -> RideOfEnd:
    return RideOfEnd(axle, of, 0.0, None, None, None, None, True, (), (), None, problem)


def _sag_found(job: Job, axle: Axle, of: SetupRidden, found: SagsFound) -> SagFound | None:
    """The rider sag of the setup that was ridden, as it was read."""
    if job.choice("bike.sags_of") != of:
        return None
    for one in found.compared:
        if one.read.axle == axle and one.read.case == "aboard":
            twice = one.read.spread is not None
            return SagFound(one.read.sag, 2.0 * one.read.uncertainty / (2**0.5 if twice else 1.0), one.believed)
    return None


def _mark(job: Job, axle: Axle, here: Ridden) -> Quantity | None:
    reading = job.fields[f"{axle}.mark"].reading
    if here.mark is None or reading is None:
        return None
    return with_half(quantity(here.mark, "mm", "highest mark", 0), reading.plus_minus_95)


def _multiple(here: Ridden) -> Quantity | None:
    if here.mark is None:
        return None
    times = here.force_at_mark() / float(np.asarray(here.loads.aboard))
    return quantity(times, "× rider load", "springs and gas, where the mark stands", 1)


def _landing(landed: Landed | None) -> Quantity | None:
    if landed is None:
        return None
    return with_half(quantity(landed.expected, "mm", "the most that springs and gas allow", 0), landed.expected_half)


def _sag_words(here: Ridden, sag: SagFound | None) -> Said | None:
    if sag is None:
        return None
    words = f"Rider sag {number_text(sag.value, 0)} mm found, {number_text(here.wanted, 0)} wanted."
    return not here.missed(sag), words


def _travel_words(axle: Axle, here: Ridden) -> Said | None:
    times = _multiple(here)
    left = _left(here)
    if times is None or left is None or here.mark is None:
        return None
    of = "travel" if axle == "front" else "shock's stroke"
    where = f"{banded_text(left)} mm of the {of} were left"
    if here.mark >= USED * here.stroke:
        where = f"All of the {of} was used"
    elif here.all_used:
        where = f"The mark stands at the end of the {of}, as near as that is known ({banded_text(left)} mm left)"
    return not here.unused, f"{where}; springs and gas push {figure_text(times)} at the mark."


def _left(here: Ridden) -> Quantity | None:
    return None if here.mark is None else with_half(quantity(here.left, "mm", "stroke not used", 0), here.off)


def _landing_words(landed: Landed | None, here: Ridden) -> Said | None:
    if landed is None:
        return None
    if landed.believed and landed.expected >= USED * here.stroke:
        return True, "Springs and gas alone would not have stopped that drop short of the end, so the mark says nothing of the gas."
    most = number_text(landed.expected, 0)
    if landed.believed and landed.read.mark > landed.expected:
        at = number_text(landed.read.mark, 0)
        beyond = f"The mark at {at} mm lies beyond the {most} mm at which springs and gas alone stop that drop"
        return True, f"{beyond}, by no more than the readings may be off: softer gas or springs than entered."
    if landed.believed:
        return True, f"Springs and gas alone would have stopped that drop by {most} mm; damping takes its share of it."
    return False, (
        f"The mark lies deeper than the {most} mm at which springs and gas alone stop that drop: "
        "the drop was higher, or there is more gas in the leg than entered."
    )
