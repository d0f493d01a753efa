"""Top-out spring and bump rubber of an end as the readings describe them."""

from __future__ import annotations

from calc.array import Number
from calc.end.assembly import Stops
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.job import Job
from calc.model import fitted
from calc.practice import Axle


def stops(job: Job, axle: Axle, stroke: Number) -> Stops:
    """What works at either end of a strut; the wheel and what moves with it hang on it in the air.

    Parameters: job; axle; stroke [mm], the strut's full one.
    Returns: Stops.
    Raises: Impossible as `calc.model.fitted.topout` and `calc.model.fitted.rubber`.
    Formula: hanging = unsprung mass x g.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(stops(load(jobs()["enduro"]), "front", 300.0).hanging, 1)
        156.9
    """
    return Stops(fitted.topout(job, axle), job.value(f"{axle}.unsprung") * STANDARD_GRAVITY, fitted.rubber(job, axle, stroke))
