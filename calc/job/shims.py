"""Groups of equal shims as they are typed: how many, outside diameter, thickness."""

from __future__ import annotations

from calc.job.field import Field
from calc.job.lists import MOST, first_of, number_at, numbers, parted, second_of
from calc.quantities.entry import EntryError

Groups = tuple[tuple[float, float, float], ...]
_MOST_ALIKE = 60
_OF = ("how many", "outside diameter", "thickness")


def read_groups(field: Field, text: str) -> Groups:
    """Read groups of equal shims.

    Parameters: field, of Kind.SHIMS; text, groups between semicolons or line ends, three numbers each: "3 24 0.15; 2 20 0.1".
    Returns: count [-], outside diameter [mm], thickness [mm] of each, in the order typed.
    Raises: EntryError naming the group and what is wrong with it.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.job.fields import FIELDS
        >>> read_groups(FIELDS["front.shims"], "3 24 0.15; 2 20 0.1 mm")
        ((3.0, 24.0, 0.15), (2.0, 20.0, 0.1))
    """
    rows = parted(text)
    if not 1 <= len(rows) <= MOST:
        raise EntryError("empty" if not rows else "long", f"enter 1 to {MOST} groups, with a semicolon between groups")
    return tuple(_group(field, index, row) for index, row in enumerate(rows, 1))


def _group(field: Field, index: int, row: str) -> tuple[float, float, float]:
    parts = numbers(row)
    if len(parts) != len(_OF):
        raise EntryError("group", f"group {index}, {row[:40]!r}, is not three numbers with spaces between them: {', '.join(_OF)}")
    where = f"group {index}"
    count = number_at(where, parts[0], "number", "", 1.0, _MOST_ALIKE)
    if count != int(count):
        raise EntryError("count", f"group {index}, {parts[0][:40]!r}: how many must be a whole number")
    return count, first_of(field, where, parts[1]), second_of(field, where, parts[2])
