"""The fork as the readings describe it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number, some
from calc.end.assembly import ForkAssembly
from calc.end.setup import Setup
from calc.gas.warm import TUBE_EXPANSION, Warmth
from calc.impossible import Impossible, decimals_apart
from calc.job import Job
from calc.leg.open import LegGas, OpenLeg
from calc.model import fitted
from calc.model.airleg import air_leg, has_coil
from calc.model.cartridge import sealed_leg, state
from calc.model.conditions import Conditions, conditions
from calc.model.gap import Pieces, by_volume, free_area, gaps_found, gaps_read
from calc.model.stops import stops


def fork(job: Job, at: Conditions, as_sold: bool = False) -> ForkAssembly:
    """Both legs: their gas, their springs, how they lean. As sold: a cartridge as built, an air spring at its pressure as sold."""
    left, right = legs(job, at, as_sold)
    travel = job.value("front.travel")
    coils = 1 if job.choice("front.springs_in") == "one" and not fitted.unequal(job, "front") else 2
    return ForkAssembly(
        gas=left,
        arrangement=fitted.arrangement(job, "front", travel),
        stroke=travel,
        ambient=at.ambient,
        rake=job.value("bike.rake"),
        friction=job.value("front.friction"),
        springs=coils if has_coil(job) else 0,
        stops=stops(job, "front", travel),
        gas_right=right,
    )


def fork_as_sold(job: Job, at: Conditions, now: ForkAssembly) -> ForkAssembly:
    """The same fork as it was sold; the one at hand where nothing of its gas differs."""
    kind = job.choice("front.air")
    same = kind == "open" or (kind == "sealed cartridge" and job.choice("front.cartridge_state") == "as built")
    return now if same else fork(job, at, as_sold=True)


def legs(job: Job, at: Conditions, as_sold: bool = False) -> tuple[LegGas, LegGas | None]:
    """The gas of the left leg, and of the right one where it is of another kind."""
    kind = job.choice("front.air")
    if kind == "sealed cartridge":
        how = state(job, as_sold)
        own = _warmth(job, at, job.value("front.cartridge_oil"))
        if own is not None:
            own = replace(own, closed=own.read)  # it was closed when it was charged, not when the legs were bled
        return sealed_leg(job, open_part(job, at, as_sold), how, at.charged, own), None
    around = open_part(job, at)
    if kind == "air leg":
        return air_leg(job, around, at, as_sold), around if job.choice("front.air_in") == "left" else None
    return around, None


def found_gaps(job: Job, at: Conditions) -> tuple[Number, Number]:
    """Gap [mm] of the left and the right leg as found: read, or by the volume filled."""
    return gaps_found(job, open_part(job, at)) if by_volume(job) else gaps_read(job)


def oil_to_add(job: Job, forks: ForkAssembly, setup: Setup) -> dict[str, Number]:
    """Oil [mm3] that brings each leg from its own gap and spring as found to the new ones; below 0 to take out."""
    found = forks.rates(Setup(fitted.rate(job, "front"), 0.0, 0.0, fitted.split(job, "front")))
    new = forks.rates(setup)
    legs_ = zip(("left", "right"), found, found_gaps(job, conditions(job)), new, strict=True)
    return {leg: forks.gas.oil_to_add(rate, gap, other, setup.gap) for leg, rate, gap, other in legs_}


def open_part(job: Job, at: Conditions, as_sold: bool = False) -> OpenLeg:
    """The space over the oil, as the gap tells it, with the whole seal area swept."""
    sealed = job.choice("front.air") == "sealed cartridge"
    shut_now, shut = (sealed and state(job, sold) != "opened into one" for sold in (False, as_sold))
    return _open_leg(job, at, free_area(job, shut_now, shut))


def _open_leg(job: Job, at: Conditions, pieces: Pieces) -> OpenLeg:
    travel, collapsed = job.value("front.travel"), job.value("front.collapsed_stroke")
    if some(collapsed < travel):
        least, most = float(np.min(collapsed)), float(np.max(travel))
        places = decimals_apart(least, most, 0)
        raise Impossible(
            "collapsed",
            f"The stroke to fully collapsed, {least:.{places}f} mm, is below the travel of {most:.{places}f} mm.",
            "Measure exposed chrome hanging and collapsed again.",
            "front.collapsed_stroke",
        )
    return OpenLeg(
        pieces=pieces,
        seal_diameter=job.value("front.seal_diameter"),
        collapsed_stroke=0.0 if job.choice("front.gap_state") == "extended" else collapsed,
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
