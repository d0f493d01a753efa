"""Sags and marks as they were read: which of them say something, and why the others say nothing."""

from __future__ import annotations

from calc.impossible import Impossible
from calc.job import Job
from calc.model.marks import MarkRead, mark_read
from calc.model.observed import STICKS, TOPPED, SagRead, expected, sags_read
from calc.practice import AXLES, Axle


def usable(job: Job) -> tuple[tuple[SagRead | MarkRead, ...], dict[Axle, str]]:
    """Sags and marks that say something, and why an end's sags say nothing.

    Parameters: job, not drawn.
    Returns: reads; reasons in words, by end.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    reads: list[SagRead | MarkRead] = []
    refused: dict[Axle, str] = {}
    for axle in AXLES:
        these = sags_read(job, axle)
        reason = _refused(job, axle, these) if these else ""
        if reason:
            refused[axle] = reason
        else:
            reads += these
        reads += _marks(job, axle)
    return tuple(reads), refused


def _refused(job: Job, axle: Axle, reads: tuple[SagRead, ...]) -> str:
    """Why an end's sags say nothing, in words; empty where they say something."""
    for read in reads:
        if read.spread is not None and read.spread > STICKS:
            which = "with the rider" if read.case == "aboard" else "of the bike alone"
            return f"The two readings {which} differ by {read.spread:.0f} mm: something sticks. Free it and measure again."
        if read.sag < -TOPPED:
            return "One sag is below 0: longer than hanging. Check the hanging length."
    sags = {read.case: read.sag for read in reads}
    if len(sags) == 2 and sags["aboard"] <= sags["alone"]:
        return "The sag with the rider is no larger than without. Check which is which."
    if any(problem.end in (axle, "both") for problem in job.problems):
        return "An entry that this rests on is refused. Mend it first."
    try:
        expected(job, axle)
    except Impossible as error:
        return f"What was in can't be worked out: {error.message} {error.way_out}".rstrip()
    return ""


def _marks(job: Job, axle: Axle) -> list[MarkRead]:
    """The mark of a landing of known height; none where that cannot be worked out, which is told beside the mark."""
    try:
        read = mark_read(job, axle)
    except Impossible:
        return []
    return [] if read is None else [read]
