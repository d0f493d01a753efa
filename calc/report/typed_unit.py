"""What is told in the trade's unit, once more in the unit that the user typed such in."""

from __future__ import annotations

from calc.job import Job
from calc.job.limits import TRADE
from calc.job.lists import listed
from calc.practice import Axle
from calc.quantities.entry import convert, read_entry
from calc.report.quantity import figure_text, plain_number
from calc.report.types import Candidate
from calc.report.words import step_of

_FIGURES = 3  # as springs are marked and gauges read; common practice, no source


def in_typed_unit(job: Job, axle: Axle, chosen: Candidate) -> str:
    """The rate, or an air spring's pressure, in the unit in which what is on the shelf, or in, was typed.

    Parameters: job; axle; chosen, what is told.
    Returns: one sentence; empty where that is the unit it is told in, or of a pair, which has two rates.
    Raises: nothing.
    Formula: unit conversion.
    Source: none.
    Example: see `tests/unit/report/test_typed_unit.py`.
    """
    figure = step_of(chosen)
    unit = _typed(job, axle, figure.unit, bool(chosen.pressure))
    if unit == figure.unit or (chosen.pair and not chosen.pressure):
        return ""
    number = plain_number(float(f"{convert(figure.value, figure.unit, unit):.{_FIGURES}g}"))
    return f"{figure_text(figure)} is {number} {TRADE.get(unit, unit)}."


def _typed(job: Job, axle: Axle, told: str, air: bool) -> str:
    stock, own = job.fields[f"{axle}.stock"], job.fields["front.air_pressure" if air else f"{axle}.rate"]
    if not air and stock.applies and stock.rates:
        return read_entry(listed(stock.text)[0], "spring rate", told).unit
    return own.unit if own.entered and own.applies and own.number is not None else told
