"""Sags as the tables of setups tell them: what was read with a tape stands there, not what the model makes of the setup."""

from __future__ import annotations

from collections.abc import Iterable

from calc.job import Job
from calc.model.observed import SagRead, sags_read
from calc.practice import Axle
from calc.report.quantity import quantity
from calc.report.types import Quantity, SagsOfEnd, SagsReport, SagTold, SetupReport

_LABELS = {"alone": "free sag", "aboard": "rider sag"}
_LEFT_OUT = "left out: read again"
_REFUSED = "not used"  # why stands with the sags found


def sags_told(job: Job, sags: SagsReport | None) -> tuple[SagTold, ...]:
    """Each sag that was read, as it stands in a table of setups.

    Parameters: job, not corrected; sags, what is said of its sags.
    Returns: SagTold, front first, of the bike alone first; none where none was read.
    Raises: nothing. Formula: the mean where a sag was read twice. Source: none.
    Example: see `tests/unit/report/test_sags_told.py`.
    """
    if sags is None:
        return ()
    return tuple(_told(job, read, end, sags) for end in sags.ends for read in sags_read(job, end.axle))


def of_setup(told: Iterable[SagTold], axle: Axle, of: str) -> dict[str, SagTold]:
    """The sags that were read of one setup ("found" or "built") of an end, by "free sag" and "rider sag"."""
    return {one.label: one for one in told if one.axle == axle and one.of == of}


def sag_texts(setup: SetupReport, read: dict[str, SagTold]) -> list[str]:
    """Both sags of a setup for a table without +/-: as read, else as worked out."""
    worked_out = {"free sag": setup.free_sag, "rider sag": setup.rider_sag}
    return [f"{read[label].word} {read[label].found.text}" if label in read else sag.text for label, sag in worked_out.items()]


def left_out_words(name: str, read: dict[str, SagTold]) -> list[str]:
    """Those that nothing rests on, said under a table."""
    return [f"{name}: {label} {one.word} {one.found.text} mm, {one.left_out}" for label, one in read.items() if one.left_out]


def _told(job: Job, read: SagRead, end: SagsOfEnd, sags: SagsReport) -> SagTold:
    label = _LABELS[read.case]
    row = next((row for row in end.rows if row.label == label), None)
    left_out = _REFUSED if row is None else "" if row.believed else _LEFT_OUT
    found = _as_it_stands(read, label) if row is None else row.found
    return SagTold(end.axle, label, sags.of, "read", found, _origin(job, read), left_out)


def _as_it_stands(read: SagRead, label: str) -> Quantity:
    """What was read where the sags of an end say nothing, with whatever is wrong with it."""
    return quantity(read.sag, "mm", label, 0)


def _origin(job: Job, read: SagRead) -> str:
    """Where the first of its readings is from."""
    kind = "length" if read.taped else "sag"
    paths = (f"{read.axle}.{read.case}{again}_{kind}" for again in ("", "_again"))
    return next(job.fields[path].origin for path in paths if job.known(path))
