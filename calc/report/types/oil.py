"""What the sheet of an oil's tin tells: viscosity where the bike is started and where it is hot, growth, oil to order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.report.types.figure import Quantity

When = Literal["cold", "in use", "hot"]


@dataclass(frozen=True, slots=True)
class OilPoint:
    """One temperature: kinematic viscosity of the oil, of the second one and of their mix; density where the sheet states it."""

    when: When
    label: str
    temperature: Quantity
    first: Quantity | None
    second: Quantity | None
    mix: Quantity | None
    density: Quantity | None


@dataclass(frozen=True, slots=True)
class OilIndex:
    """Viscosity indices: of the oil, of the second one, of their mix; None for one that is not there or not defined."""

    first: Quantity | None
    second: Quantity | None
    mix: Quantity | None


@dataclass(frozen=True, slots=True)
class OilChange:
    """From cold to hot: how many times thinner what is in the leg gets, how much lighter, and what the oil of a leg grows by."""

    thinner: Quantity | None
    lighter: Quantity
    leg: Quantity
    growth: Quantity


@dataclass(frozen=True, slots=True)
class OilOrder:
    """One oil to order for both legs, in tins of a litre."""

    name: str
    volume: Quantity
    tins: Quantity
    left: Quantity


@dataclass(frozen=True, slots=True)
class OilReport:
    """All of it. `problem`: what stands in the way of some of it; `change`: None where hot is no warmer than cold; `legs`: oil
    a leg, as read, and `orders`, none where it was not read.
    """

    problem: str
    points: tuple[OilPoint, ...]
    index: OilIndex
    change: OilChange | None
    legs: tuple[Quantity, ...]
    orders: tuple[OilOrder, ...]
    words: tuple[str, ...]
    note: str
