"""One end of one job sized: once, for its figures alone, its report and its bands."""

from __future__ import annotations

from functools import lru_cache

from calc.impossible import Impossible
from calc.job import Job, Problem, Ranges, Resolved
from calc.sizing.choice import EndSizing, size_end


def fields_of(job: Job, end: str) -> tuple[Resolved, ...]:
    """The fields that an end rests on; one that did not change is the same object."""
    return tuple(found for found in job.fields.values() if found.field.end in (end, "both"))


def part(fields: tuple[Resolved, ...], ranges: Ranges) -> Job:
    """A job of these fields alone."""
    return Job({}, {found.field.path: found for found in fields}, ranges=ranges)


@lru_cache(maxsize=16)
def sized(end: str, fields: tuple[Resolved, ...], ranges: Ranges) -> tuple[EndSizing | None, tuple[Problem, ...]]:
    """An end sized, or None and the problems that stand in the way."""
    job = part(fields, ranges)
    barred = tuple(problem for problem in job.problems if problem.end in (end, "both"))
    if barred:
        return None, barred
    try:
        return size_end(job, end), ()
    except Impossible as error:
        return None, (problem_of(error, end),)


def problem_of(error: Impossible, end: str) -> Problem:
    """An impossibility as a problem at its field."""
    return Problem(error.field or "", error.code, error.message, way_out=error.way_out, end=end)
