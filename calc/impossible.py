"""The error for a bike, fork or shock that cannot be: it names the cause and the way out."""

from __future__ import annotations

from calc.array import Flags

_MOST_DECIMALS = 6


class Impossible(ValueError):
    """A physical impossibility.

    Parameters: code, a short name; message, the cause in words with its numbers and units; way_out, what to change;
    field, the path of the field to look at first, where one can be named; where it is so, of the elements that were asked for,
    None where the law did not say.
    """

    def __init__(self, code: str, message: str, way_out: str, field: str | None = None, where: Flags | None = None) -> None:
        super().__init__(f"{message} {way_out}")
        self.code = code
        self.message = message
        self.way_out = way_out
        self.field = field
        self.where = where


def decimals_apart(one: float, other: float, decimals: int) -> int:
    """Say how many decimals two numbers need to read differently, so that what is beyond a limit reads as beyond it.

    Parameters: one, other [any unit, the same]; decimals, what the practice shows.
    Returns: `decimals`, or more, at most 6, where those do not tell two unlike numbers apart.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> decimals_apart(4.7, 5.0, 0), decimals_apart(4.2, 5.0, 0)
        (1, 0)
    """
    while decimals < _MOST_DECIMALS and one != other and f"{one:.{decimals}f}" == f"{other:.{decimals}f}":
        decimals += 1
    return decimals
