"""Numbers of the report: a worked-out quantity with its text, and the ranges it is seen against."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Quantity:
    """A worked-out quantity.

    `case`: which load and process it holds for. `plus_minus_95`: None where no band was worked out. `text` and
    `plus_minus_text` are the two rounded as the trade reads them, without the unit; nobody rounds them again.
    """

    value: float
    unit: str
    case: str
    origin: Literal["worked out"]
    plus_minus_95: float | None
    decimals: int
    text: str
    plus_minus_text: str


@dataclass(frozen=True, slots=True)
class Window:
    """The usual range of a result; `confidence` of the practice row it is from, empty where it follows the travel."""

    low: float
    high: float
    unit: str
    confidence: str


@dataclass(frozen=True, slots=True)
class Windows:
    """The usual ranges of an end: sags [mm, as they are read], ride frequency [Hz], end force over rider load [-]."""

    free_sag: Window
    rider_sag: Window
    frequency: Window
    end_multiple: Window


@dataclass(frozen=True, slots=True)
class UsualRange:
    """The range of practice for an entry."""

    low: float
    high: float
    typical: float
    unit: str
    confidence: str
