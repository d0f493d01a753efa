"""The rear end as the readings describe it."""

from __future__ import annotations

from calc.end.assembly import ShockAssembly
from calc.gas.chamber import Chamber, Gas, SteadyCharge, circle
from calc.job import Job
from calc.model import fitted
from calc.model.conditions import Conditions
from calc.model.motion import rear_motion
from calc.model.stops import stops


def shock(job: Job, at: Conditions) -> ShockAssembly:
    """One shock or two on a swingarm.

    Parameters: job; at, conditions.
    Returns: ShockAssembly.
    Raises: Impossible naming the reading that cannot be.
    Formula: see `calc.model.motion` and `calc.model.fitted`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.conditions import conditions
        >>> job = load(jobs()["enduro"])
        >>> float(shock(job, conditions(job)).travel)
        305.0
    """
    motion = rear_motion(job)
    stroke = motion.stroke(job.value("rear.travel"))
    return ShockAssembly(
        gas=_gas(job, at),
        arrangement=fitted.arrangement(job, "rear", stroke),
        motion=motion,
        travel=job.value("rear.travel"),
        ambient=at.ambient,
        friction=job.value("rear.friction"),
        springs=int(job.choice("rear.shocks")),
        stops=stops(job, "rear", stroke),
    )


def _gas(job: Job, at: Conditions) -> Gas:
    """The gas behind the rod; its charge was filled where the legs were bled, and is constant where its volume is not known."""
    charge, area = job.value("rear.charge") + at.charged, circle(job.value("rear.rod_diameter"))
    if not job.known("rear.gas_volume"):
        return SteadyCharge(charge, area)
    return Chamber(job.value("rear.gas_volume"), charge, area)
