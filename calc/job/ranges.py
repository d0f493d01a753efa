"""The ranges of the trade as one job sees them: the tables of practice, with the job's own ranges in their place."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calc.job.field import Field
from calc.job.fields import FIELDS
from calc.job.limits import between, span_words
from calc.job.problem import Problem
from calc.practice import GENERAL, ROWS, Usual, usual
from calc.quantities.entry import EntryError, convert, dimension_of, read_entry

OWN = "own"  # confidence of a range that the user set


@dataclass(frozen=True)
class Ranges:
    """Ranges for one kind of riding.

    Parameters: use, a key of practice.USES or empty; own, pairs of row name and Usual that stand in for the table's; loaded,
    whether a passenger or luggage is carried, None as the use has it.
    """

    use: str
    own: tuple[tuple[str, Usual], ...] = ()
    loaded: bool | None = None

    def usual(self, row: str) -> Usual | None:
        """The range of a row; None where the trade has none for this use, or no use is named and the row depends on it."""
        for name, found in self.own:
            if name == row:
                return found
        if row not in GENERAL and not self.use:
            return None
        return usual(row, self.use, self.loaded)


NO_RANGES = Ranges("")


def read_ranges(document: Mapping[str, Any], use: str, loaded: bool | None = None) -> tuple[Ranges, tuple[Problem, ...]]:
    """Read a job's own ranges.

    Parameters: document, a checked job document: its `practice` object holds {"low", "high", "typical"} by row, each a
    number in the row's unit or text with a unit; use, a key of practice.USES or empty; loaded, as `Ranges`.
    Returns: Ranges, and a Problem for each that was refused (the table's range then stands).
    Raises: nothing.
    Formula: low <= typical <= high.
    Source: none.
    Example:
        >>> ranges, problems = read_ranges({"practice": {"gap": {"low": 90, "high": 130, "typical": "110 mm"}}}, "enduro")
        >>> ranges.usual("gap").typical, problems
        (110.0, ())
    """
    table, own, problems = Ranges(use, loaded=loaded), [], []
    for row, entry in document.get("practice", {}).items():
        if row == "note":
            continue
        try:
            own.append((row, _own_range(row, entry, table.usual(row) or _any_use(row))))
        except EntryError as error:
            words, limit = f"Usual {row}: {error.message}.", span_words(*row_limits(row))
            problems.append(Problem(f"practice.{row}", error.code, words, limit, error.readings))
    return Ranges(use, tuple(own), loaded), tuple(problems)


def _any_use(row: str) -> Usual:
    """Unit and confidence of a row that this use has no range for."""
    return Usual(math.nan, math.nan, math.nan, ROWS[row].unit, ROWS[row].confidence)


@lru_cache(maxsize=256)
def row_limits(row: str) -> tuple[float, float, str]:
    """The limits of an own range: those of the field that it stands in for, or else ten times the trade's widest.

    Parameters: row, a key of practice.ROWS or GENERAL.
    Returns: low, high [row's unit], and the row's unit.
    Raises: KeyError for an unknown row.
    Formula: none.
    Source: none.
    Example:
        >>> row_limits("gap"), row_limits("rider sag front")
        ((20.0, 500.0, 'mm'), (0.0, 100.0, '%'))
    """
    unit = _unit(row)
    dimension = dimension_of(unit)
    for field in FIELDS.values():
        if _stands_for(field, row, dimension):
            return convert(field.low, field.unit, unit), convert(field.high, field.unit, unit), unit
    low, high = widest(row)
    most = 100.0 if dimension == "share" else 10.0 * max(abs(low), abs(high))
    return (-most if low < 0 else 0.0), most, unit


def _stands_for(field: Field, row: str, dimension: str) -> bool:
    """True where a row is a range of the field's own value."""
    default = field.default
    if default is None or default.row is None:
        return field.usual == row and field.dimension == dimension
    return default.row == row and not (default.follow or default.share_of or default.times_high)


def _unit(row: str) -> str:
    return GENERAL[row].unit if row in GENERAL else ROWS[row].unit


def widest(row: str) -> tuple[float, float]:
    """The lowest and the highest [row's unit] that the trade has for a row, over all uses."""
    if row in GENERAL:
        return GENERAL[row].low, GENERAL[row].high
    lows, highs, _ = zip(*filter(None, ROWS[row].by_use), strict=True)
    return min(lows), max(highs)


def _own_range(row: str, entry: Mapping[str, Any], table: Usual) -> Usual:
    dimension = dimension_of(table.unit)
    numbers = {}
    for key in ("low", "high", "typical"):
        if entry.get(key) is None:
            raise EntryError("empty", f"{key} is not entered")
        try:
            read = read_entry(str(entry[key]), dimension, table.unit)
            between(read, *row_limits(row))
        except EntryError as error:
            raise EntryError(error.code, f"{key}: {error.message}", error.readings) from error
        numbers[key] = convert(read.number, read.unit, table.unit)
    if not numbers["low"] <= numbers["typical"] <= numbers["high"]:
        raise EntryError("range", "low, typical and high must rise in this order")
    return Usual(**numbers, unit=table.unit, confidence=OWN, note="your own range")
