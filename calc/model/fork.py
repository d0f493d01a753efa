"""The fork as the readings describe it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number, some
from calc.end.assembly import ForkAssembly
from calc.gas.warm import TUBE_EXPANSION, Warmth
from calc.impossible import Impossible, decimals_apart
from calc.job import Job
from calc.leg.air import AirLeg
from calc.leg.open import LegGas, OpenLeg
from calc.leg.sealed import SealedLeg
from calc.model import fitted
from calc.model.airleg import air_leg, has_coil
from calc.model.cartridge import sealed_leg, state
from calc.model.conditions import Conditions
from calc.model.gap import free_area, rod_area
from calc.model.stops import stops


def fork(job: Job, at: Conditions, as_sold: bool = False) -> ForkAssembly:
    """Both legs: their gas, their springs, how they lean.

    Parameters: job; at, conditions; as_sold: a cartridge as built, an air spring at its pressure as sold.
    Returns: ForkAssembly.
    Raises: Impossible naming the reading that cannot be.
    Formula: see `calc.leg` and `calc.model.fitted`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.conditions import conditions
        >>> job = load(jobs()["enduro"])
        >>> round(float(fork(job, conditions(job)).gas.gases(4.2, 126.0)[0].volume0) / 1000)
        699
    """
    left, right = legs(job, at, as_sold)
    travel = job.value("front.travel")
    return ForkAssembly(
        gas=left,
        arrangement=fitted.arrangement(job, "front", travel),
        stroke=travel,
        ambient=at.ambient,
        rake=job.value("bike.rake"),
        friction=job.value("front.friction"),
        springs=coils(job),
        stops=stops(job, "front", travel),
        gas_right=right,
    )


def fork_as_sold(job: Job, at: Conditions, now: ForkAssembly) -> ForkAssembly:
    """The same fork as it was sold.

    Parameters: job; at, conditions; now, the fork as it is.
    Returns: ForkAssembly; the one at hand where nothing of its gas differs.
    Raises: Impossible as `fork`.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.conditions import conditions
        >>> job = load(jobs()["enduro"])
        >>> here = fork(job, conditions(job))
        >>> fork_as_sold(job, conditions(job), here) is here
        True
    """
    kind = job.choice("front.air")
    same = kind == "open" or (kind == "sealed cartridge" and job.choice("front.cartridge_state") == "as built")
    return now if same else fork(job, at, as_sold=True)


def legs(job: Job, at: Conditions, as_sold: bool = False) -> tuple[LegGas, LegGas | None]:
    """The gas of both legs.

    Parameters: job; at, conditions; as_sold, as in `fork`.
    Returns: the left leg's, and the right one's where it is of another kind.
    Raises: Impossible as `fork`.
    Formula: see `calc.leg`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.conditions import conditions
        >>> job = load(jobs()["enduro"])
        >>> legs(job, conditions(job))[1] is None
        True
    """
    kind = job.choice("front.air")
    if kind == "sealed cartridge":
        return leg_in_state(job, at, state(job, as_sold)), None
    around = over_the_oil(job, at, kind)
    if kind == "air leg":
        return air_leg(job, around, at, as_sold), around if job.choice("front.air_in") == "left" else None
    return around, None


def leg_in_state(job: Job, at: Conditions, how: str, set_shut: bool = False) -> LegGas:
    """The gas of a leg whose cartridge is, or was, sealed.

    Parameters: job; at, conditions; how, the state it is in; set_shut, as `calc.model.cartridge.sealed_leg`.
    Returns: LegGas.
    Raises: Impossible as `calc.model.cartridge.sealed_leg`.
    Formula: see there.
    Source: none.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    own = _warmth(job, at, job.value("front.cartridge_oil"))
    if own is not None:
        own = replace(own, closed=own.read)  # it was closed when it was charged, not when the legs were bled
    return sealed_leg(job, over_the_oil(job, at, how), how, at.charged, own, set_shut)


def leak_gap(job: Job, at: Conditions, rate: Number | None, gap: Number, shut: bool) -> Number:
    """The gap around a cartridge whose seal leaks wide, told of before it leaked or since.

    Parameters: job, drawn or not; at, conditions; rate [N/mm] of the spring, None for none; gap [mm], in the user's convention;
    shut: it is read as it leaks and told as it was while shut, else the other way.
    Returns: gap [mm]; the same but for a spring-loaded piston with outside air behind it.
    Raises: Impossible where it cannot be read so, or as `leg_in_state`.
    Formula: the gas over the oil with the rod out is the same, less what the piston pushed out on its way to its stop.
    Source: oil is conserved.
    Example: see `tests/unit/model/test_cartridge.py`.
    """
    if job.choice("front.cartridge_fill") == "gas" or job.choice("front.piston_back") == "outer":
        return gap
    wide = replace(job, fields={**job.fields, "front.leak": replace(job.fields["front.leak"], choice="wide")})
    since, before = (leg_in_state(wide, at, "seal leaking", set_shut=one) for one in (False, True))
    assert isinstance(since, OpenLeg)
    assert isinstance(before, OpenLeg)
    known, asked = (since, before) if shut else (before, since)
    return asked.gap_of_gas(known.hanging(rate, gap), rate)


def coils(job: Job) -> int:
    """Number of legs with a coil in them.

    Parameters: job.
    Returns: 2, 1 (the left one) or 0.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> coils(load(jobs()["enduro"]))
        2
    """
    if not has_coil(job):
        return 0
    return 1 if job.choice("front.springs_in") == "one" and not fitted.unequal(job, "front") else 2


def outer_parts(job: Job, at: Conditions, as_sold: bool = False) -> tuple[OpenLeg, OpenLeg]:
    """The space over the oil of both legs, in which a gap is read.

    Parameters: job; at, conditions; as_sold, as in `fork`.
    Returns: OpenLeg of the left and of the right leg, what other spaces sweep taken off.
    Raises: Impossible as `fork`.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.conditions import conditions
        >>> job = load(jobs()["enduro"])
        >>> round(float(outer_parts(job, conditions(job))[0].area))
        1810
    """
    left, right = legs(job, at, as_sold)
    return _outer(left), _outer(left if right is None else right)


def _outer(leg: LegGas) -> OpenLeg:
    outer = leg.outer if isinstance(leg, SealedLeg | AirLeg) else leg
    assert isinstance(outer, OpenLeg)
    return outer


def over_the_oil(job: Job, at: Conditions, how: str) -> OpenLeg:
    """The space over a leg's oil, as the gap tells it, with the whole seal area swept.

    Parameters: job; at, conditions; how, the state that a sealed cartridge in it is in.
    Returns: OpenLeg; around the cartridge where that is shut.
    Raises: Impossible as `fork`.
    Formula: none.
    Source: none.
    Example: see `outer_parts`.
    """
    sealed = job.choice("front.air") == "sealed cartridge"
    shut_now, shut = (sealed and one != "opened into one" for one in (state(job, False), how))
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
        pieces=free_area(job, shut_now, shut),
        rod=rod_area(job, shut),
        seal_diameter=job.value("front.seal_diameter"),
        collapsed_stroke=collapsed,
        extended=job.choice("front.gap_state") == "extended",
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
