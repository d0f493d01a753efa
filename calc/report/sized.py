"""One end of one job sized: once, for its figures alone, its report and its bands."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.impossible import Impossible
from calc.job import Job, Problem, Ranges, Resolved
from calc.practice import Axle
from calc.sizing.choice import EndSizing, size_end
from calc.uncertainty.bands import Bands, bands


def fields_of(job: Job, axle: Axle) -> tuple[Resolved, ...]:
    """The fields that an end rests on; one that did not change is the same object."""
    return tuple(found for found in job.fields.values() if found.field.end in (axle, "both"))


def part(fields: tuple[Resolved, ...], ranges: Ranges) -> Job:
    """A job of these fields alone."""
    return Job({}, {found.field.path: found for found in fields}, ranges=ranges)


@lru_cache(maxsize=16)
def sized(axle: Axle, fields: tuple[Resolved, ...], ranges: Ranges) -> tuple[EndSizing | None, tuple[Problem, ...]]:
    """An end sized, or None and the problems that stand in the way."""
    job = part(fields, ranges)
    barred = tuple(problem for problem in job.problems if problem.end in (axle, "both"))
    if barred:
        return None, barred
    try:
        return size_end(job, axle), ()
    except Impossible as error:
        return None, (problem_of(error, axle),)


@lru_cache(maxsize=16)
def banded(axle: Axle, fields: tuple[Resolved, ...], ranges: Ranges, draws: int) -> Bands | None:
    """The bands of a sized end; None where it is not sized, or no spring is chosen."""
    done, _ = sized(axle, fields, ranges)
    return None if done is None else bands(replace(part(fields, ranges), draws=draws), axle, done)


def problem_of(error: Impossible, axle: Axle) -> Problem:
    """An impossibility as a problem at its field."""
    return Problem(error.field or "", error.code, error.message, way_out=error.way_out, end=axle)
