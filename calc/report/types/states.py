"""One fork in each state that its sealed cartridge may be in, what opening it takes away, and what replaces it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job.declared import FieldPath
from calc.report.types.figure import Quantity
from calc.report.types.section import Section
from calc.report.types.setup import Curve, SetupReport

CartridgeState = Literal[
    "as built",
    "charge lost",
    "seal leaking",
    "oil moved",
    "opened into one",
    "preload replaced",
    "gap replaced",
    "both replaced",
]


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
    """One state; `plain`: the same for a customer; `figures` None and a `problem` where it cannot be."""

    state: CartridgeState
    label: str
    figures: StateFigures | None
    words: str
    plain: str
    problem: str


@dataclass(frozen=True, slots=True)
class LostRow:
    """What opening takes away, at the report's strokes, below 0 where it brings some; `replaced`: what gives it back."""

    what: Literal["push", "room", "backing", "force"]
    label: str
    figures: tuple[Quantity, ...]
    replaced: str


@dataclass(frozen=True, slots=True)
class Replacement:
    """What is set anew in the opened fork; what stays is None. `entries` put it in as built; none where the fork is not entered as
    opened. `caution`: what speaks against it.
    """

    state: CartridgeState
    label: str
    preload: Quantity | None
    more: Quantity | None
    gap: Quantity | None
    oil: Quantity | None
    entries: tuple[tuple[FieldPath, str], ...]
    caution: str


@dataclass(frozen=True, slots=True)
class StatesReport:
    """All of it. `problem`: why nothing is told; `strokes`: where what is lost is told; `build`: what a tap on a replacement does,
    or why there is none.
    """

    problem: str
    strokes: tuple[Quantity, ...]
    rows: tuple[ForkState, ...]
    lost: tuple[LostRow, ...]
    replacements: tuple[Replacement, ...]
    build: str
    note: str


@dataclass(frozen=True, slots=True)
class StateLooked:
    """One state along its stroke. `gas_share` [%] of the force and the pressure `behind` its damper's oil [bar, gauge] at the
    strokes of the curve; no share where springs and gas do not both push.
    """

    state: CartridgeState
    label: str
    setup: SetupReport
    curve: Curve
    section: Section | None
    gas_share: tuple[float | None, ...]
    behind: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class StatesLooked:
    """Those states that can be; `problem`: why there are none."""

    problem: str
    states: tuple[StateLooked, ...]
