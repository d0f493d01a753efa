"""The work at the bench in the report: the gap while filling, checks and their ticks, hours and what is due."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class GapStepReport:
    """What a smaller gap does to a setup, both legs alike; what it changes is None where the smaller gap cannot be.

    `oil` into each leg; `force` at full travel and `rider_sag` are changes, `gas_before` and `gas_after` the gas's share of the
    force at full travel.
    """

    step: Quantity
    oil: Quantity
    gas_before: Quantity
    force: Quantity | None
    rider_sag: Quantity | None
    gas_after: Quantity | None
    words: str


@dataclass(frozen=True, slots=True)
class LegFilled:
    """A leg while it is filled: the gap read now, the one wanted, and the oil that makes one of the other, below 0 to take out."""

    leg: Literal["left", "right"]
    read: Quantity
    wanted: Quantity
    oil: Quantity
    words: str


@dataclass(frozen=True, slots=True)
class Filling:
    """The gap while filling. `of`: whether what was built is wanted, or the answer; `problem`: why nothing can be told."""

    of: Literal["built", "answer"]
    problem: str
    legs: tuple[LegFilled, ...]
    apart: Quantity | None
    words: tuple[str, ...]
    note: str


@dataclass(frozen=True, slots=True)
class Check:
    """A check to make; `made` is the date on which it was, empty where it was not yet."""

    key: str
    words: str
    made: str


@dataclass(frozen=True, slots=True)
class Due:
    """The next service of an end: when it is due, what is left until then, below 0 where it is overdue; None where not known."""

    end: Literal["front", "rear"]
    due: Quantity | None
    left: Quantity | None
    words: str


@dataclass(frozen=True, slots=True)
class Service:
    """What the meter shows and what is due; `now` is None where nobody read it."""

    now: Quantity | None
    ends: tuple[Due, ...]
    note: str
