"""The whole report, of both ends or of one: its parts, each worked out by its own module."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.job import DRAWS, Job, load
from calc.job.work import FIRST_RIDE, REASSEMBLY
from calc.model.contradictions import contradictions
from calc.practice import AXLES, MODIFIERS, USES, Axle
from calc.report import VERSION
from calc.report.bike import attitude, scale_notes, to_measure
from calc.report.cautions import LEFT_OUT
from calc.report.damping import damping_report
from calc.report.doubt import doubted
from calc.report.end import end_report
from calc.report.fields import field_states, shares_assumed
from calc.report.filling import filling_report
from calc.report.gas import cautions, gas_notes
from calc.report.message import message
from calc.report.offer import offer_report
from calc.report.oil import oil_report
from calc.report.options import options_report
from calc.report.push import push_report
from calc.report.ride import ride_report
from calc.report.sags import sags_report
from calc.report.sags_told import sags_told
from calc.report.service import service_report
from calc.report.states import states_report
from calc.report.types import Caution, Check, EndReport, Ends, Header, Modifier, PartReport, Report, WholeBike, values
from calc.uncertainty.corrected import sags_found


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
    found = sags_found(job, with_bands)
    corrected = found.correct(job)
    ends = Ends(*(doubted(job, axle, end_report(corrected, axle, with_bands), found) for axle in AXLES))
    whole = _whole(job, {"front": ends.front, "rear": ends.rear}, with_bands)
    filled, told = filling_report(corrected, ends.front), message(corrected, whole, ends)
    return Report(**values(whole), ends=ends, attitude=attitude(corrected, ends, found), filling=filled, message=told)


def part_of(job: Job, axle: Axle, with_bands: bool = True) -> PartReport:
    """The report of one end, for whoever cannot wait for both; what it says of damping is of that end alone too."""
    found = sags_found(job, with_bands)
    end = doubted(job, axle, end_report(found.correct(job), axle, with_bands), found)
    return PartReport(**values(_whole(job, {axle: end}, with_bands)), axle=axle, end=end)


def _whole(job: Job, ends: Mapping[Axle, EndReport], with_bands: bool) -> WholeBike:
    found = sags_found(job, with_bands)
    corrected = found.correct(job)
    header: dict[str, Any] = dict(job.header)
    sags = sags_report(job, found)
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
        sags=sags,
        sags_told=sags_told(job, sags),
        ride=ride_report(job, corrected, found),
        push=push_report(job, found) if with_bands else None,
        oil=oil_report(job),
        states=states_report(job, corrected) if with_bands else None,
        damping=tuple(damping_report(job, corrected, axle, end) for axle, end in ends.items()) if with_bands else (),
        offer=offer_report(job),
        options=options_report(job, corrected) if with_bands else None,
        notes=(*(words for _, words in contradictions(job)), *scale_notes(job), *gas_notes(job)),
        modifiers=tuple(Modifier(when, words) for when, words in MODIFIERS.items()),
        cautions=tuple(Caution(key, title, words) for key, (title, words) in cautions(job).items()),
        reassembly=_checks(job, REASSEMBLY),
        first_ride=_checks(job, FIRST_RIDE),
        service=service_report(job),
        left_out=LEFT_OUT,
    )


def _checks(job: Job, words: Mapping[str, str]) -> tuple[Check, ...]:
    return tuple(Check(key, said, job.ticks.get(key, "")) for key, said in words.items())
