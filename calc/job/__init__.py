"""A job: the document that holds one bike, its rider and what is known of them. No physics here."""

from calc.job.document import FORMAT, VERSION, JobError, parse_header
from calc.job.problem import Problem
from calc.job.ranges import Ranges
from calc.job.resolve import Job, Resolved, load

__all__ = ["FORMAT", "VERSION", "Job", "JobError", "Problem", "Ranges", "Resolved", "load", "parse_header"]
