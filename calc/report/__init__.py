"""The report: everything that the page and the command line show, as plain data."""

from __future__ import annotations

from collections.abc import Sequence

from calc.job import DRAWS, Job, load
from calc.practice import AXLES, MODIFIERS, USES, Axle
from calc.report.bike import attitude, scale_notes, to_measure
from calc.report.cautions import FIRST_RIDE, LEFT_OUT, REASSEMBLY
from calc.report.data import Data
from calc.report.end import end_data
from calc.report.fields import fields_data, share_assumed
from calc.report.gas import cautions, gas_notes

FORMAT = "stanchion-report"
VERSION = 1
ENDS = AXLES

__all__ = ["ENDS", "FORMAT", "VERSION", "report", "report_of"]


def report(document: object, with_bands: bool = True, ends: Sequence[Axle] = ENDS, draws: int = DRAWS) -> Data:
    """Size a job and report it.

    Parameters: document, what a JSON reader returned for a job file; with_bands, whether the +/- of the results are worked
    out too, and with them whom the spring holds for and the other conditions (about five times the work); ends, those to
    work out, for whoever cannot wait for both; draws behind each +/- [-], 20 to 10 000.
    Returns: plain data, ready for JSON; every quantity with value, unit, case, origin and plus_minus_95. What compares the
    ends is there only when both are.
    Raises: JobError when the document is not a job at all; a refused entry or an impossible bike is reported, not raised.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> report(jobs()["enduro"])["ends"]["front"]["state"]
        'ok'
    """
    return report_of(load(document, draws), with_bands, ends)


def report_of(job: Job, with_bands: bool = True, ends: Sequence[Axle] = ENDS) -> Data:
    """`report` of a job that is already read."""
    found = {end: end_data(job, end, with_bands) for end in ends}
    data: Data = {
        "format": FORMAT,
        "version": VERSION,
        "header": dict(job.header),
        "use": job.use,
        "use_label": USES.get(job.use, ""),
        "posture": job.posture if job.use else "",
        "fields": fields_data(job),
        "range_problems": [problem.as_data() for problem in job.range_problems],
        "ends": found,
        "assumed": {end: dict(zip(("assumed", "of"), share_assumed(job, end), strict=True)) for end in ENDS},
        "measure_first": to_measure(job),
        "notes": [*scale_notes(job), *gas_notes(job)],
        "modifiers": [{"when": when, "words": words} for when, words in MODIFIERS.items()],
        "cautions": [{"key": key, "title": title, "words": words} for key, (title, words) in cautions(job).items()],
        "reassembly": list(REASSEMBLY),
        "first_ride": list(FIRST_RIDE),
        "left_out": LEFT_OUT,
    }
    return data | {"attitude": attitude(job, found)} if set(ENDS) <= set(found) else data
