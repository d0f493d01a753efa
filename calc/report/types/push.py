"""A bench push: the states that a sealed cartridge may be in, compared by what was read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.report.types.figure import Quantity

PushState = Literal["open", "as built", "seal leaking", "oil moved", "opened into one"]


@dataclass(frozen=True, slots=True)
class PushPoint:
    """One point as it was read; the force with what it may be off by, its stroke being off too."""

    stroke: Quantity
    force: Quantity


@dataclass(frozen=True, slots=True)
class PushRival:
    """One state, adjusted to the push.

    `chance`: in 100, all states equally likely beforehand. `fits`: what it misses the points by happens. `open`: still in question.
    `gap`: the gap last set as the push alone has it; `gap_now`: what the oil of the gap that was read shows by now. `moved`: oil,
    below 0 into the cartridge. None for each that does not fit. `curve` [N]: what scales show at the report's strokes, as far as
    gas is left. `residuals` [N]: read less expected, a point each; `doubtful`: which of them happens in no such leg. `without`: its
    chance without the points that fit no state in question, None where there are none or it does not fit the others.
    """

    state: PushState
    label: str
    chance: Quantity
    fits: bool
    open: bool
    gap: Quantity | None
    gap_now: Quantity | None
    moved: Quantity | None
    friction: Quantity | None
    curve: tuple[float, ...]
    residuals: tuple[Quantity, ...]
    doubtful: tuple[bool, ...]
    without: Quantity | None


@dataclass(frozen=True, slots=True)
class PushExpected:
    """What one state lets scales show."""

    state: PushState
    label: str
    force: Quantity


@dataclass(frozen=True, slots=True)
class PushFurther:
    """The stroke at which one more reading tells most; `apart`: what the two differ by there, with what that would scatter by."""

    stroke: Quantity
    expected: tuple[PushExpected, PushExpected]
    apart: Quantity
    tells: bool


@dataclass(frozen=True, slots=True)
class PushReport:
    """What a bench push says: likeliest state first; `states`, those that it is, none where that cannot be told; `doubtful`: which
    points, from 0, fit no state in question; `corrects`: what its points do to readings of the leg.
    """

    refused: str
    verdict: str
    states: tuple[PushState, ...]
    read: Literal["in", "out", "both"]
    points: tuple[PushPoint, ...]
    doubtful: tuple[int, ...]
    rivals: tuple[PushRival, ...]
    strokes: tuple[float, ...]
    further: PushFurther | None
    words: tuple[str, ...]
    note: str
    corrects: tuple[str, ...]
