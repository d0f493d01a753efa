"""The fields of a job as the page and the command line show them."""

from __future__ import annotations

from functools import lru_cache

from calc.job import Job, Resolved
from calc.practice import Axle
from calc.report.data import Data


@lru_cache(maxsize=2048)
def field_data(found: Resolved) -> Data:
    """One field: what it holds, in the unit it was entered in, where it came from, what is wrong with it.

    Of an idle one only that it is idle.
    """
    if not found.applies and not found.entered:
        return {"applies": False}
    usual = found.usual
    return {
        "applies": found.applies,
        "entered": found.entered,
        "text": found.text,
        "value": _rounded(found.number) if found.field.kind == "quantity" else (found.choice or None),
        "rates": list(found.rates),
        "pairs": [list(pair) for pair in found.pairs],
        "unit": found.unit,
        "plus_minus_95": _rounded(found.plus_minus),
        "origin": found.origin or None,
        "reason": found.reason,
        "note": found.note,
        "usual": None
        if usual is None or found.field.kind != "quantity" or not _comparable(found)
        else {"low": usual.low, "high": usual.high, "typical": usual.typical, "unit": usual.unit, "confidence": usual.confidence},
        "problem": found.problem.as_data() if found.problem and found.applies else None,
    }


def _comparable(found: Resolved) -> bool:
    """A range in % of travel, or of millimetres beyond the travel, is not a range of the field itself."""
    assert found.usual is not None
    default = found.field.default
    return found.usual.unit == found.field.unit and not (default and default.row == found.field.usual and default.follow)


def fields_data(job: Job) -> dict[str, Data]:
    """Every field by path."""
    return {path: field_data(found) for path, found in job.fields.items()}


def _rounded(number: float | None) -> float | None:
    return None if number is None else float(f"{number:.10g}") + 0.0


def share_assumed(job: Job, axle: Axle) -> tuple[int, int]:
    """How many of the applying main quantities of an end are assumed, and how many there are."""
    rows = [
        f
        for f in job.fields.values()
        if f.applies and f.field.main and f.field.kind == "quantity" and f.reading is not None and f.field.end in (axle, "both")
    ]
    return sum(f.origin == "assumed" for f in rows), len(rows)
