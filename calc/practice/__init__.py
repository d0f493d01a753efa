"""The trade's ranges: look-ups over `rows` (by use) and `general` (every use). Common practice, no source."""

from __future__ import annotations

from calc.practice.axle import AXLES, Axle
from calc.practice.general import GENERAL, MEASURING, MODIFIERS, Usual
from calc.practice.loaded import JUDGED_BY_LOAD, WITHOUT_LOAD, with_load
from calc.practice.rows import ROWS, listed
from calc.practice.uses import POSTURE, SOLD_LOADED, USES

__all__ = [
    "AXLES",
    "GENERAL",
    "MEASURING",
    "MODIFIERS",
    "POSTURE",
    "ROWS",
    "SOLD_LOADED",
    "USES",
    "Axle",
    "Usual",
    "posture",
    "usual",
]


def usual(row: str, use: str, loaded: bool | None = None) -> Usual | None:
    """Look up a range of the trade.

    Parameters: row, a key of ROWS or GENERAL; use, a key of USES; loaded, whether a passenger or luggage is carried, None as
    the use has it. It changes what a loaded bike is judged by (see `calc.practice.loaded`), nothing else.
    Returns: Usual in the row's unit, or None where the trade has no such value for that use.
    Raises: KeyError for an unknown row or use.
    Formula: look-up.
    Source: common practice, no source.
    Example:
        >>> usual("rake", "enduro").typical
        26.5
        >>> [usual("free sag rear", "adventure", loaded).high for loaded in (False, True)]
        [15, 8]
    """
    if row in GENERAL:
        return GENERAL[row]
    if loaded is None or loaded == (use in SOLD_LOADED) or row not in JUDGED_BY_LOAD:
        return listed(row, use)
    return with_load(row, use) if loaded else listed(row, WITHOUT_LOAD[use])


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
