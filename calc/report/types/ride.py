"""After the ride: what held, what did not, and what to change first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job.declared import FieldPath
from calc.practice import Axle
from calc.report.types.figure import Quantity

SetupRidden = Literal["found", "built"]


@dataclass(frozen=True, slots=True)
class RideTarget:
    """What to ask for at full travel next time, in the measure that the job asks in: `ridden` has the setup ridden, `asked` the
    one with the change; `path`, where it is entered.
    """

    ridden: Quantity
    asked: Quantity
    path: FieldPath
    words: str


@dataclass(frozen=True, slots=True)
class RideChange:
    """The one thing to change first: preload, pressure or gap `by` so much, from `before` to `after` where what was in was read;
    `oil` into each leg with it; `brings`: what that moves, rider sag and force at full travel; `target`: of a changed gap.
    """

    kind: Literal["preload", "pressure", "spring", "oil", "damping", "read", "look", "none"]
    by: Quantity | None
    before: Quantity | None
    after: Quantity | None
    oil: Quantity | None
    turns: Quantity | None
    brings: tuple[Quantity, ...]
    target: RideTarget | None
    words: str


@dataclass(frozen=True, slots=True)
class RideOfEnd:
    """One end: `stroke` [mm] there is, the mark, what is left, the force where it stands over the rider load; `landing`: the most
    stroke that springs and gas allow in the drop, `believed` False where the mark lies beyond it; `problem`: why nothing is told.
    """

    axle: Axle
    of: SetupRidden
    stroke: float
    mark: Quantity | None
    left: Quantity | None
    multiple: Quantity | None
    landing: Quantity | None
    believed: bool
    held: tuple[str, ...]
    missed: tuple[str, ...]
    change: RideChange | None
    problem: str
