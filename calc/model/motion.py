"""How the shock follows the rear wheel, by what is known of it."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from calc.impossible import Impossible
from calc.job import Job
from calc.motion.linkage import LinkageMotion, Point, Rocker
from calc.motion.measured import Fit, FittedMotion, TableMotion, covers, fit_pairs
from calc.motion.ratio import LeverageMotion, Motion

# What a fit of pairs may be off by: standard normal numbers, among a drawn job's samples under these names.
FIT_OFF = ("rear.pairs start", "rear.pairs bend", "rear.pairs shape")
_NO_POINT = np.array(0j)


def rear_motion(job: Job) -> Motion:
    """How the shock follows the rear wheel.

    Parameters: job.
    Returns: Motion, by what is known of it: leverage, measured pairs, a table, or the linkage's points.
    Raises: Impossible where what it needs is not entered, pairs do not reach from hanging to full travel, or the shock does
    not shorten all the way.
    Formula: see `calc.motion`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(rear_motion(load(jobs()["enduro"])).ratio(100.0)), 3)
        0.383
    """
    known, travel = job.choice("rear.motion_from"), job.value("rear.travel")
    if known == "leverage":
        return LeverageMotion(job.value("rear.leverage"), job.value("rear.leverage_fall"), travel)
    if known == "points":
        return _linkage(job)
    pairs = job.fields["rear.pairs"].pairs
    if not pairs:
        words = "Wheel travel and shock length are not entered."
        raise Impossible("pairs", words, "Enter the pairs, or take the motion from the leverage.", "rear.pairs")
    heights, lengths = np.array(pairs).T
    covers(heights, job.number("rear.travel"))
    if known == "table":
        return TableMotion(heights, lengths, travel)
    start, bend, shape = (job.samples.get(name, 0.0) for name in FIT_OFF)
    return FittedMotion(fitted_pairs(pairs), travel, (start, bend, shape))


@lru_cache(maxsize=8)
def fitted_pairs(pairs: tuple[tuple[float, float], ...]) -> Fit:
    """The quadratic through measured pairs; worked out once for all draws.

    Parameters: pairs of wheel travel [mm], vertical, and shock length [mm].
    Returns: Fit.
    Raises: Impossible for too few heights.
    Formula: see `calc.motion.measured.fit_pairs`.
    Source: as there.
    Example:
        >>> round(fitted_pairs(((0.0, 480.0), (50.0, 459.5), (100.0, 438.0), (150.0, 415.5), (200.0, 392.0))).start, 6)
        0.4
    """
    heights, lengths = np.array(pairs).T
    return fit_pairs(heights, lengths)


def _linkage(job: Job) -> LinkageMotion:
    by_rocker = job.choice("rear.linkage") == "rocker"
    return LinkageMotion(
        axle=_point(job, "axle"),
        shock_top=_point(job, "shock_top"),
        shock_foot=_NO_POINT if by_rocker else _point(job, "shock_foot"),
        measured_at=job.value("rear.points_at"),
        full_travel=job.value("rear.travel"),
        rocker=_rocker(job) if by_rocker else None,
    )


def _rocker(job: Job) -> Rocker:
    return Rocker(
        pivot=_point(job, "rocker"),
        rod_rocker=_point(job, "rocker_rod"),
        shock_rocker=_point(job, "rocker_shock"),
        rod_other=_point(job, "rod"),
        on_swingarm=job.choice("rear.rocker_on") == "swingarm",
    )


def _point(job: Job, key: str) -> Point:
    for path in (f"rear.{key}_x", f"rear.{key}_z"):
        if not job.known(path):
            label = job.fields[path].field.label
            raise Impossible("linkage", f"{label} is not entered.", "Enter every point, or choose leverage.", path)
    return np.asarray(job.value(f"rear.{key}_x") + 1j * np.asarray(job.value(f"rear.{key}_z")))
