"""Hours or kilometres: when each end is due for its next service, and by how much one is overdue."""

from __future__ import annotations

from typing import Literal

from calc.job import Job, Resolved
from calc.job.field import Part
from calc.job.fields.service import COUNTED
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.quantity import figure_text, quantity, size_text
from calc.report.types import Due, Quantity, Service

_ENDS: tuple[tuple[Axle, Literal["fork", "shock"]], ...] = (("front", "fork"), ("rear", "shock"))
_UNIT = {"hours": "h", "km": "km"}
_MANUAL = "Service intervals belong to the maker's manual: it takes precedence."
_USUAL = "An interval that nobody entered is the usual one for the riding; common practice, no source."


def service_report(job: Job) -> Service | None:
    """What is due.

    Parameters: job.
    Returns: Service; None where nothing of it is entered.
    Raises: nothing.
    Formula: due = last + every; left = due - now.
    Source: arithmetic.
    Example: see `tests/unit/report/test_service.py`.
    """
    if not any(found.applies and found.entered for found in job.fields.values() if _is_own(found)):
        return None
    now = _read(job, "now")
    ends = tuple(_due(job, axle, what, now) for axle, what in _ENDS)
    assumed = any(not job.entered(_path(job, f"{what}_every")) for _, what in _ENDS)
    return Service(now, ends, " ".join([_MANUAL, *([_USUAL] if assumed else [])]))


def _is_own(found: Resolved) -> bool:
    return found.field.part is Part.SERVICE and found.field is not COUNTED


def _path(job: Job, key: str) -> str:
    return f"service.{key}_{job.choice(COUNTED.path)}"


def _read(job: Job, key: str) -> Quantity | None:
    """A count, in hours or kilometres; None where it is not known or refused."""
    path, counted = _path(job, key), job.choice(COUNTED.path)
    if not job.known(path) or job.fields[path].problem is not None:
        return None
    field = job.fields[path].field
    unit = _UNIT[counted]
    return quantity(convert(job.number(path), "s" if field.dimension == "time" else "mm", unit), unit, field.label.lower(), 0)


def _due(job: Job, axle: Axle, what: str, now: Quantity | None) -> Due:
    last, every = _read(job, f"{what}_last"), _read(job, f"{what}_every")
    name = what.capitalize()
    if last is None or every is None:
        missing = f"{name}: nobody entered when it was last serviced"
        return Due(axle, None, None, f"{missing}; {figure_text(every)} is usual between services." if every else f"{missing}.")
    due = quantity(last.value + every.value, last.unit, f"{what}, next service", 0)
    said = f"{name}: next service due at {figure_text(due)}"
    if now is None:
        return Due(axle, due, None, f"{said}. Read the meter to see how long that is.")
    left = quantity(due.value - now.value, last.unit, f"{what}, until its next service", 0)
    if left.value < 0:
        return Due(axle, due, left, f"{name}: service was due at {figure_text(due)} and is {size_text(left)} {left.unit} overdue.")
    return Due(axle, due, left, f"{said}, in {figure_text(left)}." if left.value > 0 else f"{said}: now.")
