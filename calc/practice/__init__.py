"""The trade's ranges: look-ups over `rows` (by use) and `general` (every use). Common practice, no source."""

from __future__ import annotations

from calc.practice.axle import AXLES, Axle
from calc.practice.general import GENERAL, MEASURING, MODIFIERS, Usual
from calc.practice.rows import POSTURE, ROWS, USES

__all__ = ["AXLES", "GENERAL", "MEASURING", "MODIFIERS", "POSTURE", "ROWS", "USES", "Axle", "Usual", "posture", "usual"]

_INDEX = {use: index for index, use in enumerate(USES)}


def usual(row: str, use: str) -> Usual | None:
    """Look up a range of the trade.

    Parameters: row, a key of ROWS or GENERAL; use, a key of USES.
    Returns: Usual in the row's unit, or None where the trade has no such value for that use.
    Raises: KeyError for an unknown row or use.
    Formula: look-up.
    Source: common practice, no source.
    Example:
        >>> usual("rake", "enduro").typical
        26.5
    """
    if row in GENERAL:
        return GENERAL[row]
    found = ROWS[row]
    triple = found.by_use[_INDEX[use]]
    if triple is None:
        return None
    low, high, typical = triple
    return Usual(low, high, typical, found.unit, found.confidence)


def posture(use: str) -> str:
    """Say in which posture the sag, frequency and end-force rows of a use are read.

    Parameters: use, a key of USES.
    Returns: "standing" or "sitting".
    Raises: KeyError for an unknown use.
    Formula: look-up.
    Source: common practice, no source.
    Example:
        >>> posture("road")
        'sitting'
    """
    return POSTURE[use]
