"""A job: the document that holds one bike, its rider and what is known of them. No physics here."""

from calc.job.document import FORMAT, VERSION, parse_header
from calc.job.job import DRAWS, MAX_DRAWS, MIN_DRAWS, Job, Resolved
from calc.job.problem import Problem
from calc.job.ranges import Ranges
from calc.job.resolve import load
from calc.job.shape import JobError

__all__ = [
    "DRAWS",
    "FORMAT",
    "MAX_DRAWS",
    "MIN_DRAWS",
    "VERSION",
    "Job",
    "JobError",
    "Problem",
    "Ranges",
    "Resolved",
    "load",
    "parse_header",
]
