"""Weights that must add up: both axles against bike, rider and load."""

from __future__ import annotations

import math
from typing import NamedTuple

from calc.job import Job

SCALES_AGREE = 3.0  # [kg]; sums of careful readings differ by less; common practice, no source
A_SPRING = 0.05  # of a load: about a step of springs; common practice, no source


class Sums(NamedTuple):
    """What the axles carry, what is on them, and by how much the two may differ [kg]."""

    axles: float
    load: float
    room: float

    def apart(self, least: float = 0.0) -> bool:
        """True where they differ by more than that, a careful bench's scales, and `least` [kg]."""
        return abs(self.axles - self.load) > max(SCALES_AGREE, self.room, least)


def weights_contradict(job: Job) -> bool:
    """Tell whether weights contradict each other by as much as decides between two springs.

    Parameters: job.
    Returns: True where they do.
    Raises: nothing.
    Formula: sums that differ by a twentieth or more, about a step of springs, and by more than `contradictions` lets pass.
    Source: common practice, no source.
    Example: see `tests/unit/report/test_doubt.py`.
    """
    return any(sums is not None and sums.apart(A_SPRING * sums.load) for sums in (bike_sums(job), rider_sums(job)))


def bike_sums(job: Job) -> Sums | None:
    """Both axles against the bike's mass.

    Parameters: job.
    Returns: Sums; None where not all are entered.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/model/test_contradictions.py`.
    """
    axles = _sum(job, "bike.front_axle", "bike.rear_axle")
    if axles is None or not job.entered("bike.mass"):
        return None
    return Sums(axles[0], job.number("bike.mass"), math.hypot(axles[1], half_of(job, "bike.mass")))


def rider_sums(job: Job) -> Sums | None:
    """Both axles with the rider aboard against all that they carry.

    Parameters: job.
    Returns: Sums; None where not all are known.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/model/test_contradictions.py`.
    """
    aboard = _sum(job, "rider.front_axle", "rider.rear_axle")
    bike = _sum(job, "bike.front_axle", "bike.rear_axle") or _total(job, "bike.mass")
    if aboard is None or bike is None or not job.known("rider.mass"):
        return None
    loads = ("rider.mass", *(path for path in ("rider.passenger", "rider.luggage") if job.fields[path].applies))
    known = [bike, *filter(None, (_total(job, path) for path in loads))]
    return Sums(aboard[0], sum(part[0] for part in known), math.hypot(aboard[1], *(part[1] for part in known)))


def _total(job: Job, path: str) -> tuple[float, float] | None:
    return (job.number(path), half_of(job, path)) if job.known(path) else None


def _sum(job: Job, *paths: str) -> tuple[float, float] | None:
    """The sum of readings that are all entered, and its +/-."""
    if not all(job.entered(path) for path in paths):
        return None
    return sum(job.number(path) for path in paths), math.hypot(*(half_of(job, path) for path in paths))


def half_of(job: Job, path: str) -> float:
    """The +/- of a reading.

    Parameters: job; path.
    Returns: 95 % half-width [its internal unit], 0 for one that is not known.
    Raises: nothing. Formula: none. Source: none.
    Example: see `bike_sums`.
    """
    reading = job.fields[path].reading
    return 0.0 if reading is None else reading.plus_minus_95
