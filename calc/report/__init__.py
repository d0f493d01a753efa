"""The report: everything that the page and the command line show, of the types in `calc.report.types`."""

from __future__ import annotations

from typing import Any

from calc.job import DRAWS, Job, load
from calc.model.contradictions import contradictions
from calc.practice import AXLES, MODIFIERS, USES, Axle
from calc.report.bike import attitude, scale_notes, to_measure
from calc.report.cautions import FIRST_RIDE, LEFT_OUT, REASSEMBLY
from calc.report.end import end_report
from calc.report.fields import field_states, shares_assumed
from calc.report.gas import cautions, gas_notes
from calc.report.oil import oil_report
from calc.report.push import push_report
from calc.report.ride import ride_report
from calc.report.sags import sags_report
from calc.report.states import states_report
from calc.report.types import Caution, Ends, Header, Modifier, PartReport, Report, WholeBike, values
from calc.uncertainty.corrected import sags_found

VERSION = 3
ENDS = AXLES

__all__ = ["ENDS", "VERSION", "part_of", "report", "report_of"]


def report(document: object, with_bands: bool = True, draws: int = DRAWS) -> Report:
    """Size a job and report it.

    Parameters: document, what a JSON reader returned for a job file; with_bands, whether the +/- of the results are worked
    out too, and with them whom the spring holds for and the other conditions (about five times the work); draws behind each
    +/- [-], 20 to 10 000.
    Returns: a Report; every quantity with value, unit, case, origin and plus_minus_95, and its text.
    Raises: JobError when the document is not a job at all; a refused entry or an impossible bike is reported, not raised.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> report(jobs()["enduro"]).ends.front.state
        'ok'
    """
    return report_of(load(document, draws), with_bands)


def report_of(job: Job, with_bands: bool = True) -> Report:
    """`report` of a job that is already read."""
    whole, job = _whole(job, with_bands), sags_found(job, with_bands).correct(job)
    ends = Ends(end_report(job, "front", with_bands), end_report(job, "rear", with_bands))
    return Report(**values(whole), ends=ends, attitude=attitude(job, ends))


def part_of(job: Job, axle: Axle, with_bands: bool = True) -> PartReport:
    """The report of one end, for whoever cannot wait for both."""
    corrected = sags_found(job, with_bands).correct(job)
    return PartReport(**values(_whole(job, with_bands)), axle=axle, end=end_report(corrected, axle, with_bands))


def _whole(job: Job, with_bands: bool) -> WholeBike:
    found = sags_found(job, with_bands)
    header: dict[str, Any] = dict(job.header)
    return WholeBike(
        format="stanchion-report",
        version=VERSION,
        header=Header(**header),
        use=job.use,
        use_label=USES.get(job.use, ""),
        posture=job.posture if job.use else "",
        fields=field_states(job),
        range_problems=job.range_problems,
        assumed=shares_assumed(job),
        measure_first=to_measure(job),
        sags=sags_report(job, found),
        ride=ride_report(job, found.correct(job), found),
        push=push_report(job) if with_bands else None,
        oil=oil_report(job),
        states=states_report(job, found.correct(job)) if with_bands else None,
        notes=(*(words for _, words in contradictions(job)), *scale_notes(job), *gas_notes(job)),
        modifiers=tuple(Modifier(when, words) for when, words in MODIFIERS.items()),
        cautions=tuple(Caution(key, title, words) for key, (title, words) in cautions(job).items()),
        reassembly=REASSEMBLY,
        first_ride=FIRST_RIDE,
        left_out=LEFT_OUT,
    )
