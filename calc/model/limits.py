"""What can be built at an end, what is usual there, and the setup it was sold with."""

from __future__ import annotations

from dataclasses import replace

from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import Pumped
from calc.model import fitted
from calc.model.airleg import has_coil
from calc.practice import Axle
from calc.quantities.entry import convert


def standard_setup(job: Job, axle: Axle) -> Setup:
    """The standard setup of an end; springs as sold that are not named are the fitted ones."""
    strut, gap = ("fork", job.value("standard.gap")) if axle == "front" else ("shock", 0.0)
    air = None
    if axle == "front" and job.choice("front.air") == "air leg":
        air = Pumped(job.value("standard.air_pressure"))
        if not has_coil(job):
            return Setup(0.0, 0.0, gap, air=air)
    path = f"standard.{strut}_rate"
    if job.entered(path):
        return Setup(job.value(path), job.value(f"standard.{strut}_preload"), gap, air=air)
    return Setup(fitted.rate(job, axle), job.value(f"standard.{strut}_preload"), gap, fitted.split(job, axle), air)


def limits(job: Job, axle: Axle) -> Limits:
    """What can be built at an end, and the free-sag window of the use."""
    low, high = job.number(f"{axle}.preload_min"), job.number(f"{axle}.preload_max")
    gap = (job.number("front.gap_min"), job.number("front.gap_max")) if axle == "front" else None
    for bounds, path in (((low, high), f"{axle}.preload_max"), (gap, "front.gap_max")):
        if bounds and bounds[0] > bounds[1]:
            raise Impossible("limits", f"{job.fields[path].field.label} is below the least.", "Swap them, or measure again.", path)
    free = job.value(f"{axle}.free_length") if job.known(f"{axle}.free_length") else None
    solid = fitted.solid(job, axle)
    margin = job.usual("coil bind margin fork" if axle == "front" else "coil bind margin shock")
    assert margin is not None
    built = Limits((low, high), gap, free_sag_window(job, axle), free, solid, margin.typical, fitted.fit(job, axle))
    built = replace(built, second_room=fitted.second_room(job, axle))
    if axle == "front" and job.choice("front.air") == "air leg":
        most = job.number("front.air_most") if job.known("front.air_most") else None
        return replace(built, pressure=most, oil=job.number("front.air_filled"))
    return built


def free_sag_window(job: Job, axle: Axle) -> tuple[float, float]:
    """Usual free sag [mm] of the use at this end's travel."""
    return sag_window(job, axle, "free sag")


def sag_window(job: Job, axle: Axle, row: str) -> tuple[float, float]:
    """Usual sag [mm] of a practice row in % of travel."""
    found = job.usual(f"{row} {axle}")
    assert found is not None
    travel = job.number(f"{axle}.travel")
    return tuple(convert(x, "%", "1") * travel for x in (found.low, found.high))  # type: ignore[return-value]
