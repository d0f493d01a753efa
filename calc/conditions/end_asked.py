"""What a fork's setup reaches at full travel, in the measure that the job asks in: so a ride can move what is asked for next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from calc.end.figures import figures
from calc.end.setup import Setup
from calc.job import Job
from calc.model.axles import end_loads
from calc.model.conditions import conditions
from calc.model.fork import fork

Measure = Literal["multiple", "force", "energy"]


@dataclass(frozen=True)
class EndReached:
    """Force over rider load [-], force [N] or landing energy [N mm] at full travel, by `measure`."""

    measure: Measure
    amount: float


def end_reached(job: Job, setup: Setup) -> EndReached:
    """What a fork's setup reaches at full travel where the job says that it is ridden, not where this ride was.

    Parameters: job, not drawn; setup, of the front.
    Returns: EndReached; over the rider load where the job asks for what the standard has.
    Raises: Impossible as `calc.end.figures.figures`.
    Formula: see `calc.end.figures`.
    Source: see there.
    Example: see `tests/whole/test_ride_target.py`.
    """
    done = figures(fork(job, conditions(job)).end(setup), end_loads(job, "front"), job.value("place.exponent"))
    asked = job.choice("front.end_target")
    if asked == "force":
        return EndReached("force", float(np.asarray(done.end_force)))
    if asked == "energy":
        return EndReached("energy", float(np.asarray(done.energy)))
    return EndReached("multiple", float(np.asarray(done.end_multiple)))
