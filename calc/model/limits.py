"""What can be built at an end, what is usual there, and the setup it was sold with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import Pumped
from calc.model import fitted
from calc.model.airleg import has_coil
from calc.model.conditions import conditions
from calc.model.gaps import gap_as_sold, gap_limits
from calc.practice import Axle
from calc.quantities.entry import convert

AS_SOLD: Mapping[Axle, str] = {"front": "standard.fork_springs", "rear": "standard.shock_spring"}


def standard_setup(job: Job, axle: Axle) -> Setup:
    """The standard setup of an end.

    Parameters: job; axle.
    Returns: Setup: rate [N/mm], preload and gap [mm]; springs as sold that are not named are the fitted ones.
    Raises: Impossible as `calc.model.fork.gap_as_sold`.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> float(standard_setup(load(jobs()["enduro"]), "front").gap)
        126.0
    """
    strut, gap = ("fork", gap_as_sold(job, conditions(job))) if axle == "front" else ("shock", 0.0)
    air = None
    if axle == "front" and job.choice("front.air") == "air leg":
        air = Pumped(job.value("standard.air_pressure"))
        if not has_coil(job):
            return Setup(0.0, 0.0, gap, air=air)
    path, preload = f"standard.{strut}_rate", job.value(f"standard.{strut}_preload") if standard_preload_known(job, axle) else 0.0
    known = job.choice(AS_SOLD[axle])
    if known == "as sold" and (marked := marked_as_sold(job, axle)) is not None:
        return Setup(marked, preload, gap, fitted.split(job, axle), air)
    if known == "changed" or (known == "unknown" and job.entered(path)):
        return Setup(job.value(path), preload, gap, air=air)
    off = 0.0 if known == "as sold" else job.value(path) - job.value(f"{axle}.rate")  # by what the row's width leaves open
    return Setup(fitted.rate(job, axle) + off, preload, gap, fitted.split(job, axle), air)


def marked_as_sold(job: Job, axle: Axle) -> float | None:
    """What springs that were tested were once sold as: they may have worn since.

    Parameters: job; axle.
    Returns: rate [N/mm] as entered for the springs as sold, or else as marked; None where neither was, or no tester's points are.
    Raises: Impossible as `calc.model.fitted.by_tester`.
    Formula: none.
    Source: none.
    Example: see `tests/unit/model/test_worn.py`.
    """
    if fitted.by_tester(job, axle) is None:
        return None
    paths = (f"standard.{'fork' if axle == 'front' else 'shock'}_rate", f"{axle}.rate")
    return next((job.number(path) for path in paths if job.entered(path)), None)


def standard_preload_known(job: Job, axle: Axle) -> bool:
    """Tell whether the preload as sold is known.

    Parameters: job; axle.
    Returns: True where it was entered, or is tried out.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> standard_preload_known(load(jobs()["enduro"]), "front")
        True
    """
    path = f"standard.{'fork' if axle == 'front' else 'shock'}_preload"
    return path in job.samples or job.known(path)


def limits(job: Job, axle: Axle) -> Limits:
    """What can be built at an end.

    Parameters: job, not drawn; axle.
    Returns: Limits, lengths [mm].
    Raises: Impossible where a limit is below the least.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> limits(load(jobs()["enduro"]), "front").gap
        (75.0, 165.0)
    """
    low, high = job.number(f"{axle}.preload_min"), job.number(f"{axle}.preload_max")
    gap = gap_limits(job, conditions(job)) if axle == "front" else None
    for bounds, path in (((low, high), f"{axle}.preload_max"), (gap, "front.gap_max")):
        if bounds and bounds[0] > bounds[1]:
            words = f"{job.fields[path].field.label} is below the minimum."
            raise Impossible("limits", words, "Swap them, or measure again.", path)
    free = job.value(f"{axle}.free_length") if job.known(f"{axle}.free_length") else None
    solid = fitted.solid(job, axle)
    margin = job.usual("coil bind margin fork" if axle == "front" else "coil bind margin shock")
    assert margin is not None
    built = Limits((low, high), gap, free, solid, margin.typical, fitted.fit(job, axle), fitted.second_room(job, axle))
    built = replace(built, preload_read=(job.entered(f"{axle}.preload_min"), job.entered(f"{axle}.preload_max")))
    if axle == "front":
        built = replace(built, gap_read=(job.entered("front.gap_min"), job.entered("front.gap_max")))
    if axle == "front" and job.choice("front.air") == "air leg":
        most = job.number("front.air_most") if job.known("front.air_most") else None
        return replace(built, pressure=most, oil=job.number("front.air_filled"))
    return built


def free_sag_window(job: Job, axle: Axle) -> tuple[float, float]:
    """Usual free sag of the use at this end's travel.

    Parameters: job; axle.
    Returns: lowest and highest [mm], as it is read.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> [round(x) for x in free_sag_window(load(jobs()["enduro"]), "front")]
        [24, 42]
    """
    return sag_window(job, axle, "free sag")


def sag_window(job: Job, axle: Axle, row: str) -> tuple[float, float]:
    """Usual sag of a practice row.

    Parameters: job; axle; row, whose name the axle ends.
    Returns: lowest and highest [mm], as it is read.
    Raises: nothing.
    Formula: the row's % of travel.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> [round(x) for x in sag_window(load(jobs()["enduro"]), "rear", "rider sag")]
        [98, 113]
    """
    found = job.usual(f"{row} {axle}")
    assert found is not None
    travel = job.number(f"{axle}.travel")
    return tuple(convert(x, "%", "1") * travel for x in (found.low, found.high))  # type: ignore[return-value]
