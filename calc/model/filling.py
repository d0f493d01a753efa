"""Oil that brings a leg from the gap read on the bench to the gap wanted, while the leg is being filled."""

from __future__ import annotations

from calc.array import Number
from calc.job import Job
from calc.model.conditions import conditions
from calc.model.fork import outer_parts

LEGS = ("left", "right")


def oil_to_gap(job: Job, leg: str, rate: Number | None, read: Number, wanted: Number) -> Number:
    """Oil to add to a leg so that the gap read becomes the gap wanted.

    Parameters: job, drawn or not; leg, "left" or "right"; rate [N/mm] of the spring in it, None for none; read, wanted [mm],
    both in the convention in which the user reads gaps, 0 to 500.
    Returns: oil [mm3]; below 0 to take out.
    Raises: Impossible as `calc.model.fork.outer_parts`.
    Formula: free area over the oil, integrated from the gap wanted to the gap read; the spring stands in it where the gap is read
    with the spring in, a damper rod where the area is known from diameters.
    Source: oil is conserved.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(oil_to_gap(load(jobs()["enduro"]), "left", 4.6, 123.0, 120.0)))
        5000
    """
    here = outer_parts(job, conditions(job))[LEGS.index(leg)]
    return here.oil_to_add(rate, read, rate, wanted)
