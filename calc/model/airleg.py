"""The gas of a fork whose legs are pumped up."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number
from calc.gas.chamber import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import AirLeg, AirSpring, Pumped
from calc.leg.open import OpenLeg
from calc.model.conditions import Conditions


def has_coil(job: Job) -> bool:
    """Tell whether a fork carries coil springs.

    Parameters: job.
    Returns: True where it does.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> has_coil(load(jobs()["enduro"]))
        True
    """
    return job.choice("front.air") != "air leg" or job.choice("front.air_coil") == "yes"


def air_leg(job: Job, around: OpenLeg, at: Conditions, as_sold: bool) -> AirLeg:
    """A leg with an air spring.

    Parameters: job; around, the space over the oil as the gap tells it, its whole seal area swept; at, conditions; as_sold: at its
    pressure as sold.
    Returns: AirLeg.
    Raises: Impossible where sizes or pressures cannot be.
    Formula: the outer air sweeps what the air spring leaves of the seal area.
    Source: geometry.
    Example: see `tests/whole/test_air.py`.
    """
    spring = _spring(job, at, job.value("standard.air_pressure" if as_sold else "front.air_pressure"))
    if np.any(np.asarray(spring.swept) >= around.area):
        raise Impossible(
            "air-piston", "The air piston is not smaller than the seal area.", "Measure both again.", "front.air_piston"
        )
    return AirLeg(replace(around, inside=spring.swept, name="outer chamber"), spring, at.charged, job.value("front.pump_loss"))


def pumped_as_found(job: Job) -> Pumped | None:
    """How the air springs are set as found.

    Parameters: job.
    Returns: Pumped, pressures [MPa, gauge]; None for legs that carry none.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> pumped_as_found(load(jobs()["enduro"])) is None
        True
    """
    if job.choice("front.air") != "air leg":
        return None
    return Pumped(job.value("front.air_pressure"), None, job.value("front.second_pressure") if has_second(job) else None)


def has_second(job: Job) -> bool:
    """Tell whether a second volume opens deep in the stroke.

    Parameters: job.
    Returns: True where it does.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> has_second(load(jobs()["enduro"]))
        False
    """
    return job.choice("front.second") == "yes"


def _spring(job: Job, at: Conditions, gauge: Number) -> AirSpring:
    piston = circle(job.value("front.air_piston"))
    pressure = gauge - job.value("front.pump_loss") + at.charged
    if np.any(np.asarray(pressure) <= 0):
        raise Impossible("pressure", "No pressure is left when the pump comes off.", "Check both.", "front.pump_loss")
    spring = AirSpring(piston, job.value("front.air_volume"), pressure, heat=at.temperature / at.read_temperature)
    if job.choice("front.balance") == "yes":
        area = piston - circle(job.value("front.balance_rod"))
        if np.any(np.asarray(area) <= 0):
            raise Impossible(
                "balance",
                "The balance chamber's rod is not thinner than the air piston.",
                "Measure both again.",
                "front.balance_rod",
            )
        spring = replace(spring, balance_area=area, balance_volume=job.value("front.balance_volume"), **_filled(job, at))
    if has_second(job):
        spring = replace(spring, second=job.value("front.second_volume"), charge=job.value("front.second_pressure") + at.charged)
    return spring


def _filled(job: Job, at: Conditions) -> dict[str, Number]:
    """How the balance chamber gets its pressure: from the main one at a stroke, or by a valve of its own."""
    if job.choice("front.balance_fill") == "valve":
        return {"balance_pressure": job.value("front.balance_pressure") + at.charged}
    return {"port": job.value("front.balance_port")}
