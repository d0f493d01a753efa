"""Top-out spring and bump rubber of an end as the readings describe them."""

from __future__ import annotations

from calc.array import Number
from calc.end.assembly import Stops
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.job import Job
from calc.model import fitted
from calc.practice import Axle


def stops(job: Job, axle: Axle, stroke: Number) -> Stops:
    """What works at either end of a strut of a full stroke [mm]; the wheel and what moves with it hang on it in the air."""
    return Stops(fitted.topout(job, axle), job.value(f"{axle}.unsprung") * STANDARD_GRAVITY, fitted.rubber(job, axle, stroke))
