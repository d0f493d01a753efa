"""What a customer is told of the springs from a tape, a scale and a helper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job import Problem
from calc.job.declared import FieldPath
from calc.practice import Axle
from calc.report.types.figure import Quantity, Window

Finding = Literal["soft", "suits", "stiff", "open", "sticks", "odd"]


@dataclass(frozen=True, slots=True)
class Chances:
    """Chances [-] that a bench with everything measured would fit a softer spring, keep what is in, fit a stiffer one."""

    softer: float
    keep: float
    stiffer: float


@dataclass(frozen=True, slots=True)
class OwnSag:
    """A sag as the customer read it: `mark` names its mark; the two readings; their mean; where it usually lies."""

    mark: Literal["free", "rider"]
    label: str
    first: Quantity
    second: Quantity
    middle: Quantity
    usual: Window


@dataclass(frozen=True, slots=True)
class Verdict:
    """The verdict: three lines of one sentence, and what follows from it.

    `finding`: too soft, suits, too stiff, cannot tell, something sticks, or readings that go together with no bike. `chance`: of
    what is claimed; None where nothing is. `times` of `out_of` chances is how it is told, 0 of 0 where nothing is. `travel`: of
    the wheel at the rear, along the leg at the front. `height`: what to do about it, and
    what that costs; `how` it is worked out; `others`: what else it could be.
    """

    axle: Axle
    finding: Finding
    opening: str
    claim: str
    rest: str
    chances: Chances | None
    chance: float | None
    times: int
    out_of: int
    travel: Quantity
    sags: tuple[OwnSag, ...]
    height: str
    do_not: str
    do_not_more: str
    narrows: str
    how: tuple[str, ...]
    others: tuple[str, ...]
    words: str


@dataclass(frozen=True, slots=True)
class MyBike:
    """What can be said of a customer's readings: what is missing, what is wrong, and the verdict once there is one; the same of the
    front, which can be left out.
    """

    missing: tuple[FieldPath, ...]
    problems: tuple[Problem, ...]
    verdict: Verdict | None
    missing_front: tuple[FieldPath, ...]
    front: Verdict | None
