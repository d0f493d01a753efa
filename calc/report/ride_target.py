"""The end target that a ride asks for next time, in words: what the change of gap makes of the force at full travel."""

from __future__ import annotations

from calc.conditions.after_ride import USED, Ridden
from calc.conditions.end_asked import EndReached, Measure, end_reached
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.job.declared import FieldPath
from calc.report.quantity import figure_text, number_text, quantity
from calc.report.types import Quantity, RideTarget

_PATHS: dict[Measure, FieldPath] = {"multiple": "front.end_multiple", "force": "front.end_force", "energy": "front.end_energy"}


def ride_target(job: Job, here: Ridden, changed: Setup) -> RideTarget | None:
    """What to ask for at full travel, so that the next answer has the change in it.

    Parameters: job, corrected; here, what was ridden; changed, the setup with the gap that the ride asks for.
    Returns: RideTarget; None where either cannot be worked out at the job's own place, or both are told alike.
    Raises: nothing.
    Formula: see `calc.conditions.end_asked.end_reached`.
    Source: none.
    Example: see `tests/whole/test_ride_target.py`.
    """
    try:
        was, now = (end_reached(job, setup) for setup in (here.setup, changed))
    except Impossible:
        return None
    ridden, asked = _figure(was, "as ridden"), _figure(now, "to ask for next time")
    if ridden.text == asked.text:
        return None
    why = _evidence(job, here, asked.value > ridden.value)
    words = f"{why}: next time ask for {figure_text(asked)} at full travel; the setup ridden has {figure_text(ridden)}."
    return RideTarget(ridden, asked, _PATHS[now.measure], words)


def _figure(reached: EndReached, case: str) -> Quantity:
    if reached.measure == "force":
        return quantity(reached.amount, "kN", case, 2, "N")
    if reached.measure == "energy":
        return quantity(reached.amount, "J", case, 0, "N mm")
    return quantity(reached.amount, "× rider load", case, 1)


def _evidence(job: Job, here: Ridden, more: bool) -> str:
    """What of the ride says so."""
    drop = f" in a drop of {number_text(job.number('ride.drop') / 10.0, 0)} cm" if job.known("ride.drop") else ""
    if more:
        used = here.mark is not None and here.mark >= USED * here.stroke
        where = "All of the travel was used" if used else "The mark stands at the end of the travel, as near as that is known"
        return f"{where}{drop}"
    return f"{number_text(here.left, 0)} mm of the travel were left{drop}"
