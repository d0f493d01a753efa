"""The gas of a fork leg with a sealed cartridge, in each of its states."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number
from calc.gas.chamber import Chamber, Gas, circle
from calc.gas.piston import LeakingPiston, SpringPiston
from calc.gas.warm import Warmth, warmed
from calc.impossible import Impossible, decimals_apart
from calc.job import Job
from calc.leg.open import LegGas, OpenLeg
from calc.leg.sealed import SealedLeg
from calc.model import fitted


def state(job: Job, as_sold: bool) -> str:
    """The cartridge's state.

    Parameters: job; as_sold, which is as built.
    Returns: a key of the field's choices.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> state(load(jobs()["trail"]), as_sold=True)
        'as built'
    """
    return "as built" if as_sold else job.choice("front.cartridge_state")


def sealed_leg(job: Job, around: OpenLeg, how: str, charged: Number, warmth: Warmth | None, set_shut: bool = False) -> LegGas:
    """A leg with a sealed cartridge, or one that was sealed.

    Parameters: job; around, the space over the oil as the gap tells it, its whole seal area swept; how, the state it is in; charged
    [MPa], ambient pressure where it was charged; warmth of its own oil, None where there is one temperature only; set_shut:
    the gap is from before it leaked.
    Returns: LegGas.
    Raises: Impossible where sizes cannot be, or a reading that the state needs is not entered.
    Formula: see `calc.leg.sealed`.
    Source: geometry.
    Example: see `tests/unit/model/test_cartridge.py`.
    """
    if how == "opened into one":
        return around
    rod = circle(job.value("front.damper_rod"))
    if np.any(np.asarray(rod) <= 0):
        raise Impossible("rod", "A sealed cartridge has a damper rod: its diameter is 0 mm.", "Measure it.", "front.damper_rod")
    if np.any(np.asarray(rod) >= around.area):
        raise Impossible("rod", "The damper rod is not thinner than the seal diameter.", "Measure both again.", "front.damper_rod")
    moved = fitted.needed(job, "front.oil_moved") if how == "oil moved" else 0.0
    bled_since = how != "oil moved" or job.choice("front.bled_since") == "yes"
    if job.choice("front.cartridge_fill") == "gas":
        outer = replace(around, inside=rod, name="outer chamber")
        chamber = _gas(job, rod, charged, warmth, moved)
        if how == "seal leaking" and job.choice("front.leak_bled") == "yes":
            chamber = replace(chamber, pressure0=around.bleed)
        small = how == "seal leaking" and job.choice("front.leak") == "small"
        joined = _joined(job, around) if how == "seal leaking" and not small else None
        return SealedLeg(outer, chamber, joined, small, moved, bled_since)
    if how == "seal leaking":
        return _leaking(job, replace(around, name="outer chamber"), rod, set_shut)
    return _sprung(job, replace(around, name="outer chamber"), rod, warmth, moved, bled_since)


def _joined(job: Job, around: OpenLeg) -> Number:
    """Stroke [mm] from which a wide leak joins the spaces."""
    joined = job.value("front.joined_stroke")
    if np.any(np.asarray(joined) > around.stroke):
        most, travel = float(np.max(joined)), float(np.min(around.stroke))
        places = decimals_apart(most, travel, 0)
        raise Impossible(
            "joined",
            f"The stroke it leaks from, {most:.{places}f} mm, lies beyond the travel of {travel:.{places}f} mm.",
            "Enter the stroke of the wear, 0 for all along.",
            "front.joined_stroke",
        )
    return np.maximum(joined, 0.0)


def gauge(job: Job, rod: Number) -> Number:
    """The charge over ambient.

    Parameters: job; rod [mm2], the area of its rod, > 0.
    Returns: pressure [MPa].
    Raises: Impossible where it is known from scales, and their reading is not entered.
    Formula: a pressure as read; else force on the rod's end / area.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(gauge(load(jobs()["trail"]), circle(12.0))), 3)
        0.15
    """
    if job.choice("front.charge_by") == "scale":
        return fitted.needed(job, "front.charge_force") / rod
    return job.value("front.cartridge_charge")


def _gas(job: Job, rod: Number, charged: Number, warmth: Warmth | None, moved: Number) -> Chamber:
    """The cartridge's gas; oil that left it gave its gas room, the gas itself is kept."""
    volume, pressure = job.value("front.cartridge_gas"), gauge(job, rod) + charged
    room = volume + moved
    if np.any(np.asarray(room) <= 0):
        raise Impossible(
            "moved",
            f"More oil went into the cartridge than the {np.min(volume) / 1000:.0f} ml of its gas.",
            "Check both volumes.",
            "front.oil_moved",
        )
    cold = Chamber(room, pressure * volume / room, rod, "cartridge")
    return cold if warmth is None else warmed(cold, warmth, cold.pressure0)


def _leaking(job: Job, around: OpenLeg, rod: Number, set_shut: bool) -> LegGas:
    """The spring has pushed its piston to its front stop: the charge is gone, all of the seal area works on the leg's own gas. With
    outside air behind the piston, a gap read as it leaks holds the oil that piston and rod pushed out with the leg collapsed,
    and what the rod pushed leaves gas once it is drawn out again; one that was set while it was shut holds neither.
    """
    piston, rate = circle(job.value("front.cartridge_piston")), job.value("front.piston_spring")
    inside, ahead = job.choice("front.piston_back") == "outer", job.value("front.piston_front")
    left = gauge(job, rod) * piston - rate * ahead
    if np.any(np.asarray(left) < 0):
        raise Impossible(
            "piston-front",
            f"The piston's spring is slack before its front stop at {np.max(ahead):.0f} mm.",
            "Check the charge, the spring and the stop.",
            "front.piston_front",
        )
    if job.choice("front.leak") == "wide":
        comes_out = piston * ahead + rod * around.drawn_out if set_shut and not inside else 0.0
        return replace(around, others=around.others + comes_out)
    if not inside:
        raise Impossible(
            "leak",
            "A small leak beside a piston with outside air behind it is not worked out: above its spring's pressure the leg's gas "
            "pushes oil through the leak and the piston back, so where it stands hangs on the ride before, which no reading tells.",
            "Choose “Wide open” for what it does given time.",
            "front.leak",
        )
    stop = job.value("front.piston_stop") + ahead if job.known("front.piston_stop") else np.inf
    bleed = job.value("front.piston_bleed") + ahead if job.known("front.piston_bleed") else np.inf
    return SealedLeg(around, LeakingPiston(SpringPiston(left, rate, rod, piston, stop, bleed)))


def _sprung(job: Job, around: OpenLeg, rod: Number, warmth: Warmth | None, moved: Number, bled_since: bool) -> LegGas:
    """A cartridge pressed by a spring-loaded piston, behind which is the leg's own air or the outside."""
    piston, rate = circle(job.value("front.cartridge_piston")), job.value("front.piston_spring")
    inside = job.choice("front.piston_back") == "outer"
    back = ((0.0 if warmth is None else warmth.oil_growth()) - moved) / piston  # where the piston stands with the rod out
    preload = gauge(job, rod) * piston + rate * back
    if np.any(np.asarray(preload) < 0):
        raise Impossible(
            "moved",
            f"With {np.max(moved) / 1000:.0f} ml gone the spring-loaded piston presses no more: the charge is lost.",
            "Choose “Seal leaking”, or check the volume.",
            "front.oil_moved",
            where=np.asarray(preload) < 0,
        )
    stop, bleed = (job.value(path) if job.known(path) else np.inf for path in ("front.piston_stop", "front.piston_bleed"))
    bleeds = bleed - back if inside else np.inf
    press: Gas = SpringPiston(preload, rate, rod, piston, stop - back, bleeds)
    if inside:
        if around.warmth is not None and warmth is not None:  # what grows in the cartridge takes the leg's air through the piston
            around = replace(around, warmth=replace(around.warmth, oil=around.warmth.oil + warmth.oil))
        return SealedLeg(around, press)
    return SealedLeg(replace(around, inside=rod), press, moved=moved, bled_since=bled_since)
