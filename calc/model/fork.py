"""The fork as the readings describe it."""

from __future__ import annotations

import numpy as np

from calc import fitted
from calc.array import Number
from calc.assembly import ForkAssembly
from calc.gas import circle
from calc.gas_warm import TUBE_EXPANSION, Warmth
from calc.impossible import Impossible
from calc.job import Job
from calc.leg import LegGas, OpenLeg
from calc.model.conditions import Conditions
from calc.model.stops import stops


def fork(job: Job, at: Conditions) -> ForkAssembly:
    """Both legs: their gas, their springs, how they lean."""
    return ForkAssembly(
        gas=leg_gas(job, at),
        arrangement=fitted.arrangement(job, "front", job.value("front.travel")),
        stroke=job.value("front.travel"),
        ambient=at.ambient,
        rake=job.value("bike.rake"),
        friction=job.value("front.friction"),
        springs=1 if job.choice("front.springs_in") == "one" and not fitted.unequal(job, "front") else 2,
        stops=stops(job, "front", job.value("front.travel")),
    )


def leg_gas(job: Job, at: Conditions) -> LegGas:
    """The gas of a leg, by its kind."""
    return _open_leg(job, at)


def _open_leg(job: Job, at: Conditions) -> OpenLeg:
    travel, collapsed = job.value("front.travel"), job.value("front.collapsed_stroke")
    if np.any(np.asarray(collapsed) < travel):
        raise Impossible(
            "collapsed",
            f"The stroke to fully collapsed, {np.min(collapsed):.0f} mm, is below the travel of {np.max(travel):.0f} mm.",
            "Measure exposed chrome hanging and collapsed again.",
            "front.collapsed_stroke",
        )
    return OpenLeg(
        pieces=_free_area(job),
        seal_diameter=job.value("front.seal_diameter"),
        collapsed_stroke=collapsed,
        stroke=travel,
        steel=fitted.steel(job),
        fitted_rate=fitted.rate(job, "front"),
        spacer=job.value("front.spacer_volume"),
        others=sum(job.value(f"front.{what}_volume") for what in ("washers", "cap", "rod")),
        spring_in=job.choice("front.gap_read") == "in",
        free_length=job.value("front.free_length"),
        spacer_length=job.value("front.spacer_length"),
        bleed=at.bleed,
        bled_stroke=job.value("place.bled_stroke"),
        warmth=_warmth(job, at, job.value("front.oil_volume")),
    )


def _warmth(job: Job, at: Conditions, oil: Number) -> Warmth | None:
    """What a space with some oil [mm3] sees of the temperatures; None where there is only one."""
    if at.one_temperature:
        return None
    tube = TUBE_EXPANSION[job.choice("front.tube_metal")]
    return Warmth(at.read_temperature, at.bled_temperature, at.temperature, oil, tube)


def _free_area(job: Job) -> tuple[tuple[Number, Number], ...]:
    """Free area from the tube's top downwards: one piece, or two in an upside-down leg."""
    seal = job.value("front.seal_diameter")
    upside_down = job.choice("front.layout") == "upside-down"
    outer = circle(job.value("front.outer_bore")) if upside_down else 0.0
    if upside_down and np.any(outer <= circle(seal)):
        raise Impossible("bore", "The outer tube's bore is not above the seal diameter.", "Measure both again.", "front.outer_bore")
    if job.choice("front.area_by") == "raised":
        if not job.known("front.raised_height"):
            raise Impossible(
                "raised",
                "How far the oil rose is not entered.",
                "Pour and read the rise, or choose diameters.",
                "front.raised_height",
            )
        deep: Number = job.value("front.raised_volume") / job.value("front.raised_height")
    else:
        bore = seal - 2.0 * job.value("front.wall")
        if np.any(np.asarray(bore) <= 0):
            raise Impossible("wall", "The chrome tube's wall leaves no bore.", "Measure wall and diameter again.", "front.wall")
        deep = circle(bore) + (outer - circle(seal) if upside_down else 0.0)
    return ((job.value("front.outer_depth"), outer), (0.0, deep)) if upside_down else ((0.0, deep),)
