"""Why no spring is ordered by an answer yet: nobody weighed the rider, weights contradict each other, a sag fits nothing."""

from __future__ import annotations

from dataclasses import replace

from calc.job import Job
from calc.model.weight_sums import weights_contradict
from calc.practice import Axle
from calc.report.bike import rider_unweighed
from calc.report.types import EndOk, EndReport
from calc.uncertainty.corrected import SagsFound

_SAGS = {"alone": "free sag", "aboard": "rider sag"}


def doubted(job: Job, axle: Axle, end: EndReport, found: SagsFound) -> EndReport:
    """An end, whose answer says so where it is in doubt.

    Parameters: job; axle; end, its report; found, what the job's sags say.
    Returns: the end's report.
    Raises: nothing.
    Formula: none.
    Source: what a scale or a tape read is not overruled by a model without another look; common practice, no source.
    Example: see `tests/unit/report/test_doubt.py`.
    """
    if end.state != "ok":
        return end
    doubt = _of_the_rider(job) or (_of_an_order(job, axle, found) if _ordered(end) else "")
    return replace(end, answer=f"{end.answer} {doubt}", doubt=doubt) if doubt else end


def _of_the_rider(job: Job) -> str:
    if not rider_unweighed(job):
        return ""
    return f"This is for a rider of {job.number('rider.mass'):.0f} kg in kit, the usual one for such a bike: weigh yours first."


def _ordered(end: EndOk) -> bool:
    """True where springs are told that are not in."""
    return end.verdict in ("fit", "nearest") and not end.chosen.fitted and not end.chosen.pressure


def _of_an_order(job: Job, axle: Axle, found: SagsFound) -> str:
    order = f"Don't order {'springs' if axle == 'front' else 'a spring'} by this yet"
    if weights_contradict(job):
        return f"{order}: the weights that were entered contradict each other. Weigh again."
    left_out = [one.read for one in found.compared if not one.believed and one.read.axle == axle]
    if not left_out or job.choice("bike.sags_of") == "built":
        return ""
    sags = " and ".join(f"the {_SAGS[read.case]}" for read in left_out)
    read, fits, again = ("was read", "fits", "it") if len(left_out) == 1 else ("were read", "fit", "them")
    return f"{order}: {sags} that {read} {fits} nothing else. Read {again} again; if that stands, put what is in on a tester."
