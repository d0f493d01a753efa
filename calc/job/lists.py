"""Fields that hold several numbers: rates on a shelf, and tables of pairs."""

from __future__ import annotations

import re
from itertools import pairwise

from calc.job.field import Field
from calc.job.limits import between
from calc.quantities.entry import EntryError, convert, internal_unit, read_entry

MOST = 40  # entries of a list or table: more is a slip, and a page cannot show it

Pairs = tuple[tuple[float, float], ...]


_POINTED = re.compile(r"[0-9]\.[0-9]")


def listed(text: str) -> list[str]:
    """A list's items: between semicolons or commas, or else each number with the unit that may follow it."""
    parts = parted(text)
    return parts if ";" in text or ("," in text and len(parts) > 1) else numbers(text)


def parted(text: str) -> list[str]:
    """What stands between semicolons or line ends; between commas where they can be nothing else: a space follows each, or
    every part has a decimal point.
    """
    marks = r"[;\n]"
    if not re.search(marks, text):
        between_commas = text.split(",")
        marks = "," if len(between_commas) > 1 and all(map(_POINTED.search, between_commas)) else r",\s+"
    return [part.strip() for part in re.split(marks, text) if part.strip()]


def numbers(text: str) -> list[str]:
    """Each number with the unit that may follow it."""
    return re.findall(r"\S+(?:\s+[A-Za-z]\S*)?", text)


def read_pairs(field: Field, text: str) -> Pairs:
    """Read a table of pairs in internal units.

    Parameters: field, of Kind.PAIRS; text, pairs between semicolons or line ends, two numbers each: "0 0; 50 210".
    Returns: pairs [internal units], the first of each rising.
    Raises: EntryError naming the pair and what is wrong with it.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.job.fields import FIELDS
        >>> read_pairs(FIELDS["front.table"], "0 0; 50 210; 100 440 N")
        ((0.0, 0.0), (50.0, 210.0), (100.0, 440.0))
    """
    rows = parted(text)
    if not field.fewest <= len(rows) <= MOST:
        raise EntryError("empty" if not rows else "long", f"enter {field.fewest} to {MOST} pairs, with a semicolon between pairs")
    pairs = tuple(_pair(field, index, row) for index, row in enumerate(rows, 1))
    for index, (one, other) in enumerate(pairwise(pairs), 2):
        if not other[0] > one[0]:
            raise EntryError("order", f"pair {index}: its first number must be larger than the one before")
    return pairs


def _pair(field: Field, index: int, row: str) -> tuple[float, float]:
    parts = numbers(row)
    if len(parts) != 2:
        raise EntryError("pair", f"pair {index}, {row[:40]!r}, is not two numbers with a space between them")
    return first_of(field, f"pair {index}", parts[0]), second_of(field, f"pair {index}", parts[1])


def first_of(field: Field, where: str, text: str) -> float:
    """The field's own number in a row of its table [internal units]."""
    return number_at(where, text, field.dimension, field.unit, field.low, field.high)


def second_of(field: Field, where: str, text: str) -> float:
    """The second one."""
    return number_at(where, text, field.second_dimension, field.second_unit, field.second_low, field.second_high)


def number_at(where: str, text: str, dimension: str, unit: str, low: float, high: float) -> float:
    """A number of a row within its limits; what is refused names the row."""
    try:
        entry = read_entry(text, dimension, unit)
        between(entry, low, high, unit)
    except EntryError as error:
        raise EntryError(error.code, f"{where}, {text[:40]!r}: {error.message}") from error
    return convert(entry.number, entry.unit, internal_unit(dimension))
