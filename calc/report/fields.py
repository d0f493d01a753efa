"""The fields of a job as the page and the command line show them."""

from __future__ import annotations

from functools import lru_cache

from calc.job import Job, Resolved
from calc.practice import Axle
from calc.report.quantity import spread_text
from calc.report.types import FieldState, ShareAssumed, SharesAssumed, UsualRange


@lru_cache(maxsize=2048)
def field_state(found: Resolved) -> FieldState:
    """One field: what it holds, in the unit it was entered in, where it came from, what is wrong with it."""
    usual = found.usual if found.field.kind == "quantity" and _comparable(found) else None
    return FieldState(
        applies=found.applies,
        entered=found.entered,
        text=found.text,
        value=_rounded(found.number) if found.field.kind == "quantity" else (found.choice or None),
        rates=tuple(found.rates),
        pairs=tuple(found.pairs),
        unit=found.unit,
        plus_minus_95=_rounded(found.plus_minus),
        plus_minus_text=spread_text(found.plus_minus),
        origin=found.origin or None,
        reason=found.reason,
        note=found.note,
        usual=None if usual is None else UsualRange(usual.low, usual.high, usual.typical, usual.unit, usual.confidence),
        problem=found.problem if found.applies else None,
    )


def _comparable(found: Resolved) -> bool:
    """A range in % of travel, or of millimetres beyond the travel, is not a range of the field itself."""
    default = found.field.default
    same_unit = found.usual is not None and found.usual.unit == found.field.unit
    return same_unit and not (default and default.row == found.field.usual and default.follow)


def field_states(job: Job) -> dict[str, FieldState]:
    """The fields that apply or hold an entry, by path."""
    return {path: field_state(found) for path, found in job.fields.items() if found.applies or found.entered}


def _rounded(number: float | None) -> float | None:
    return None if number is None else float(f"{number:.10g}") + 0.0


def _share(job: Job, axle: Axle) -> ShareAssumed:
    """How many of the applying main quantities of an end are assumed, and how many there are."""
    rows = [
        f
        for f in job.fields.values()
        if f.applies and f.field.main and f.field.kind == "quantity" and f.reading is not None and f.field.end in (axle, "both")
    ]
    return ShareAssumed(sum(f.origin == "assumed" for f in rows), len(rows))


def shares_assumed(job: Job) -> SharesAssumed:
    """How much of what each end rests on is assumed."""
    return SharesAssumed(_share(job, "front"), _share(job, "rear"))
