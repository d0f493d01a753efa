"""One fork in each state that its sealed cartridge may be in, what opening it takes away, and what replaces it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.report.types.figure import Quantity

CartridgeState = Literal["as built", "charge lost", "seal leaking", "oil moved", "opened into one"]


@dataclass(frozen=True, slots=True)
class StateFigures:
    """What the fork does in one state; `behind` its damper's oil [bar, gauge] at the report's three strokes; `gap_now`: what its
    oil shows, None where no gap can be read.
    """

    free_sag: Quantity
    rider_sag: Quantity
    end_force: Quantity
    end_multiple: Quantity
    gas_share: Quantity
    behind: tuple[Quantity, ...]
    gap_now: Quantity | None


@dataclass(frozen=True, slots=True)
class ForkState:
    """One state; `figures` None and a `problem` where it cannot be."""

    state: CartridgeState
    label: str
    figures: StateFigures | None
    words: str
    problem: str


@dataclass(frozen=True, slots=True)
class LostAt:
    """What opening takes away at a stroke: pressure behind the damper's oil, push on a leg's rod; below 0 where it brings some."""

    at: str
    stroke: Quantity
    backing: Quantity
    rod_push: Quantity


@dataclass(frozen=True, slots=True)
class ReplacedBy:
    """What gives rider sag and force at full travel back: `preload` and how much `more` that is, None with no coil; `gap`, read as
    in an open leg; `oil` into each leg.
    """

    preload: Quantity | None
    more: Quantity | None
    gap: Quantity
    oil: Quantity


@dataclass(frozen=True, slots=True)
class StatesReport:
    """All of it. `problem`: why nothing, or no replacement, is told; `strokes`: where the pressure is told."""

    problem: str
    strokes: tuple[Quantity, ...]
    rows: tuple[ForkState, ...]
    lost: tuple[LostAt, ...]
    replaced: ReplacedBy | None
    words: tuple[str, ...]
    note: str
