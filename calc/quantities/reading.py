"""A reading: a number in internal units, how sure it is, and where it came from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Origin(StrEnum):
    """Where a number came from."""

    MEASURED = "measured"
    STATED = "stated"
    ASSUMED = "assumed"


class Spread(StrEnum):
    """The shape that a +/- is drawn from."""

    NORMAL = "normal"
    RECTANGULAR = "rectangular"


@dataclass(frozen=True)
class Reading:
    """One input of the model.

    Parameters: value [internal unit]; plus_minus_95 [internal unit], 95 % half-width, >= 0; origin; spread, the shape
    drawn (a practice range is rectangular: its half-width is the whole range's half).
    Raises: ValueError for a negative +/-.
    Formula: u = half of the 95 % half-width; rectangular: u = half-width / sqrt(3).
    Source: JCGM 100:2008, 4.3.7 (rectangular) and 6.3 (expanded uncertainty, k = 2).
    Example:
        >>> Reading(96.2, 1.0, Origin.MEASURED).standard_uncertainty
        0.5
    """

    value: float
    plus_minus_95: float
    origin: Origin
    spread: Spread = Spread.NORMAL

    def __post_init__(self) -> None:
        if not self.plus_minus_95 >= 0:
            raise ValueError("a +/- cannot be negative")

    @property
    def standard_uncertainty(self) -> float:
        """Standard uncertainty in the value's own unit."""
        if self.spread is Spread.RECTANGULAR:
            return float(self.plus_minus_95 / 3**0.5)
        return self.plus_minus_95 / 2.0
