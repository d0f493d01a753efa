"""From a job's readings to the model: conditions, axle loads, both ends' assemblies, targets and limits."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc import fitted
from calc.array import Number
from calc.assembly import ForkAssembly, ShockAssembly
from calc.atmosphere import STANDARD_GRAVITY, pressure_at
from calc.gas import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.loads import Axles, share_aboard, sprung_load
from calc.motion import LeverageMotion
from calc.practice import GENERAL, usual
from calc.quantity import convert
from calc.setup import Loads, Setup
from calc.sizing import Limits


@dataclass(frozen=True)
class Conditions:
    """Ambient pressure [MPa] where the legs were bled and where the bike is ridden; gas exponent [-] of fast moves."""

    bleed: Number
    ambient: Number
    exponent: Number


def conditions(job: Job) -> Conditions:
    """Pressures of the two places; a place of riding that is not named is the place of bleeding."""
    bleed = _pressure(job, "bled")
    named = job.known("place.ridden_pressure") or job.entered("place.ridden_altitude")
    return Conditions(bleed, _pressure(job, "ridden") if named else bleed, job.value("place.exponent"))


def _pressure(job: Job, where: str) -> Number:
    if job.known(f"place.{where}_pressure"):
        return job.value(f"place.{where}_pressure")
    return pressure_at(job.value(f"place.{where}_altitude"))


def alone(job: Job) -> Axles:
    """Axle masses of the bike alone: both scales, one scale and the bike's mass, or mass and share."""
    front, rear = (job.value(p) if job.known(p) else None for p in ("bike.front_axle", "bike.rear_axle"))
    if front is not None and rear is not None:
        return Axles(front, rear)
    mass = job.value("bike.mass")
    if front is not None:
        return _both(Axles(front, mass - front), "bike.front_axle", mass)
    if rear is not None:
        return _both(Axles(mass - rear, rear), "bike.rear_axle", mass)
    share = job.value("bike.front_share")
    return Axles(mass * share, mass * (1.0 - share))


def _both(axles: Axles, path: str, mass: Number) -> Axles:
    if np.any(np.minimum(axles.front, axles.rear) <= 0):
        raise Impossible(
            "axle",
            f"One axle carries as much as the whole bike of {np.min(mass):g} kg.",
            "Check the axle reading and the bike's mass.",
            path,
        )
    return axles


def loaded(job: Job) -> Axles:
    """Axle masses of the bike with passenger and luggage as the use has them, the rider off."""
    axles = alone(job)
    for who in ("passenger", "luggage"):
        if job.fields[f"rider.{who}"].applies and job.known(f"rider.{who}"):
            axles = axles.plus(job.value(f"rider.{who}"), job.value(f"rider.{who}_front_share"))
    return axles


def rider_share(job: Job) -> Number:
    """The rider's front share in the posture of the use: from scales, carried over between postures by the practice shares."""
    share = _share_on_scales(job)
    if share is None:
        return _practice_share(job, job.posture)
    read = job.choice("rider.posture")
    if read == job.posture:
        return share
    return share + _practice_share(job, job.posture) - _practice_share(job, read)


def _share_on_scales(job: Job) -> Number | None:
    base, mass = loaded(job), job.value("rider.mass")
    for axle in ("front", "rear"):
        path = f"rider.{axle}_axle"
        if job.known(path):
            share = share_aboard(getattr(base, axle), job.value(path), mass)
            _check_share(share, axle, path)
            return share if axle == "front" else 1.0 - share
    return None


def _check_share(share: Number, axle: str, path: str) -> None:
    if np.any(np.asarray(share) < 0) or np.any(np.asarray(share) > 1):
        gained = "lost weight" if np.any(np.asarray(share) < 0) else "gained more than the rider weighs"
        raise Impossible(
            "axle", f"With the rider aboard the {axle} axle {gained}.", "Weigh again, or check the rider's mass.", path
        )


def _practice_share(job: Job, posture: str) -> Number:
    path = f"rider.front_share_{posture}"
    if not job.known(path):
        raise Impossible(
            "posture",
            f"Readings taken {job.choice('rider.posture')} cannot be carried over to {job.posture}: "
            f"the trade has no {posture} share here.",
            f"Weigh again {job.posture}.",
            "rider.posture",
        )
    return job.value(path)


def aboard(job: Job) -> Axles:
    """Axle masses with the rider aboard, in the posture of the use; scale readings in that posture are taken as they are."""
    base = loaded(job)
    axles = base.plus(job.value("rider.mass"), rider_share(job))
    if job.choice("rider.posture") != job.posture:
        return axles
    if job.known("rider.front_axle"):
        axles = replace(axles, front=job.value("rider.front_axle"))
    if job.known("rider.rear_axle"):
        axles = replace(axles, rear=job.value("rider.rear_axle"))
    return axles


def end_loads(job: Job, end: str, rider: Number | None = None) -> Loads:
    """Sprung loads of an end; with `rider` [kg] given, another rider of the same front share on the same bike."""
    axles = aboard(job) if rider is None else loaded(job).plus(rider, rider_share(job))
    unsprung = job.value(f"{end}.unsprung")
    free = sprung_load(getattr(alone(job), end), unsprung, end)
    return Loads(free, sprung_load(getattr(axles, end), unsprung, end), STANDARD_GRAVITY)


def fork(job: Job, at: Conditions) -> ForkAssembly:
    """The fork as the readings describe it."""
    travel, collapsed = job.value("front.travel"), job.value("front.collapsed_stroke")
    if np.any(np.asarray(collapsed) < travel):
        raise Impossible(
            "collapsed",
            f"The stroke to fully collapsed, {np.min(collapsed):.0f} mm, is below the travel of {np.max(travel):.0f} mm.",
            "Measure exposed chrome hanging and collapsed again.",
            "front.collapsed_stroke",
        )
    return ForkAssembly(
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
        ambient=at.ambient,
        bled_stroke=job.value("place.bled_stroke"),
        rake=job.value("bike.rake"),
        friction=job.value("front.friction"),
        springs=2 if job.choice("front.springs_in") == "both" else 1,
    )


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


def shock(job: Job, at: Conditions) -> ShockAssembly:
    """The rear end as the readings describe it; the charge was filled where the legs were bled."""
    travel = job.value("rear.travel")
    return ShockAssembly(
        motion=LeverageMotion(job.value("rear.leverage"), job.value("rear.leverage_fall"), travel),
        travel=travel,
        rod_diameter=job.value("rear.rod_diameter"),
        charge=job.value("rear.charge") + at.bleed,
        gas_volume=job.value("rear.gas_volume") if job.known("rear.gas_volume") else None,
        ambient=at.ambient,
        friction=job.value("rear.friction"),
        springs=int(job.choice("rear.shocks")),
    )


def standard_setup(job: Job, end: str) -> Setup:
    """The standard setup of an end; springs as sold that are not named are the fitted ones."""
    strut, gap = ("fork", job.value("standard.gap")) if end == "front" else ("shock", 0.0)
    path = f"standard.{strut}_rate"
    rate = job.value(path) if job.entered(path) else fitted.rate(job, end)
    return Setup(rate, job.value(f"standard.{strut}_preload"), gap)


def limits(job: Job, end: str) -> Limits:
    """What can be built at an end, and the free-sag window of the use."""
    low, high = job.number(f"{end}.preload_min"), job.number(f"{end}.preload_max")
    gap = (job.number("front.gap_min"), job.number("front.gap_max")) if end == "front" else None
    for bounds, path in (((low, high), f"{end}.preload_max"), (gap, "front.gap_max")):
        if bounds and bounds[0] > bounds[1]:
            raise Impossible("limits", f"{job.fields[path].field.label} is below the least.", "Swap them, or measure again.", path)
    free = job.value(f"{end}.free_length") if job.known(f"{end}.free_length") else None
    solid = fitted.solid(job, end)
    margin = GENERAL["coil bind margin fork" if end == "front" else "coil bind margin shock"].typical
    return Limits((low, high), gap, free_sag_window(job, end), free, solid, margin)


def free_sag_window(job: Job, end: str) -> tuple[float, float]:
    """Usual free sag [mm] of the use at this end's travel."""
    return sag_window(job, end, "free sag")


def sag_window(job: Job, end: str, row: str) -> tuple[float, float]:
    """Usual sag [mm] of a practice row in % of travel."""
    found = usual(f"{row} {end}", job.use)
    assert found is not None
    travel = job.number(f"{end}.travel")
    return tuple(convert(x, "%", "1") * travel for x in (found.low, found.high))  # type: ignore[return-value]
