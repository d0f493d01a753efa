"""The ranges of the trade as one job sees them: the tables of practice, with the job's own ranges in their place."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.job.problem import Problem
from calc.practice import GENERAL, ROWS, Usual, usual
from calc.quantities.entry import EntryError, convert, dimension_of, read_entry

OWN = "own"  # confidence of a range that the user set


@dataclass(frozen=True)
class Ranges:
    """Ranges for one kind of riding.

    Parameters: use, a key of practice.USES or empty; own, pairs of row name and Usual that stand in for the table's.
    """

    use: str
    own: tuple[tuple[str, Usual], ...] = ()

    def usual(self, row: str) -> Usual | None:
        """The range of a row; None where the trade has none for this use, or no use is named and the row depends on it."""
        for name, found in self.own:
            if name == row:
                return found
        if row not in GENERAL and not self.use:
            return None
        return usual(row, self.use)


NO_RANGES = Ranges("")


def read_ranges(document: Mapping[str, Any], use: str) -> tuple[Ranges, tuple[Problem, ...]]:
    """Read a job's own ranges.

    Parameters: document, a checked job document: its `practice` object holds {"low", "high", "typical"} by row, each a
    number in the row's unit or text with a unit; use, a key of practice.USES or empty.
    Returns: Ranges, and a Problem for each that was refused (the table's range then stands).
    Raises: nothing.
    Formula: low <= typical <= high.
    Source: none.
    Example:
        >>> ranges, problems = read_ranges({"practice": {"gap": {"low": 90, "high": 130, "typical": "110 mm"}}}, "enduro")
        >>> ranges.usual("gap").typical, problems
        (110.0, ())
    """
    table, own, problems = Ranges(use), [], []
    for row, entry in document.get("practice", {}).items():
        if row == "note":
            continue
        try:
            own.append((row, _own_range(entry, table.usual(row) or _any_use(row))))
        except EntryError as error:
            problems.append(Problem(f"practice.{row}", error.code, f"Usual {row}: {error.message}.", readings=error.readings))
    return Ranges(use, tuple(own)), tuple(problems)


def _any_use(row: str) -> Usual:
    """Unit and confidence of a row that this use has no range for."""
    return Usual(math.nan, math.nan, math.nan, ROWS[row].unit, ROWS[row].confidence)


def _own_range(entry: Mapping[str, Any], table: Usual) -> Usual:
    dimension = dimension_of(table.unit)
    numbers = {}
    for key in ("low", "high", "typical"):
        if entry.get(key) is None:
            raise EntryError("empty", f"{key} is not entered")
        try:
            read = read_entry(str(entry[key]), dimension, table.unit)
        except EntryError as error:
            raise EntryError(error.code, f"{key}: {error.message}", error.readings) from error
        numbers[key] = convert(read.number, read.unit, table.unit)
    if not numbers["low"] <= numbers["typical"] <= numbers["high"]:
        raise EntryError("range", "low, typical and high must rise in this order")
    return Usual(**numbers, unit=table.unit, confidence=OWN, note="your own range")
