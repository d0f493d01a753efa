"""A setup in the report: what is built, what it does, what bars it, and its curve."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class Legs:
    """One figure for each leg."""

    left: Quantity
    right: Quantity


@dataclass(frozen=True, slots=True)
class SetupReport:
    """What is built and what it does. Rate, preload and gap are per leg or shock, the rest per end.

    `pressure` sets an air spring: by it candidates differ, not by the rate; `air_oil` and `second_pressure` are None where
    they stay as found. `gap`: None at the rear. `pair`: the rates of an unequal pair. `flat_drop`: the height of a flat landing
    that springs and gas take up at full travel.
    """

    rate: Quantity
    pressure: Quantity | None
    air_oil: Quantity | None
    second_pressure: Quantity | None
    preload: Quantity
    gap: Quantity | None
    free_sag: Quantity
    free_sag_friction: Quantity
    topped_out: bool
    rider_sag: Quantity
    rider_sag_friction: Quantity
    frequency: Quantity
    wheel_rate: Quantity
    end_force: Quantity
    end_multiple: Quantity
    landing_energy: Quantity
    energy_per_mass: Quantity
    landing_energy_rubber: Quantity | None
    flat_drop: Quantity
    pair: Legs | None
    bind_clearance: Quantity | None
    second_bind_clearance: Quantity | None


@dataclass(frozen=True, slots=True)
class FoundSetupReport(SetupReport):
    """The setup as found, with the gap of each leg; None at the rear."""

    gap_left: Quantity | None
    gap_right: Quantity | None


@dataclass(frozen=True, slots=True)
class Reason:
    """What stands against a candidate, with its numbers, and what would mend it."""

    code: str
    words: str
    way_out: str


@dataclass(frozen=True, slots=True)
class Criterion:
    """One result against its window; `at the edge`: the edge lies within what the readings leave open."""

    name: str
    state: Literal["inside", "at the edge", "outside"]
    words: str


@dataclass(frozen=True, slots=True)
class Candidate(SetupReport):
    """A setup on offer.

    `vetoes`: what cannot be built; `short`: what was wanted and is not reached, or is beyond a limit that nobody measured;
    `criteria`: its results against their windows; `key`: how far it rides from the yardstick; `fitted`: it is what is in.
    """

    vetoes: tuple[Reason, ...]
    short: tuple[Reason, ...]
    criteria: tuple[Criterion, ...]
    key: float
    relation: Literal["chosen", "one step softer", "one step stiffer", "other"]
    fitted: bool
    gap_other: Quantity | None
    oil: Legs | None


@dataclass(frozen=True, slots=True)
class Curve:
    """Wheel force of the whole end [kN] and wheel rate [N/mm] over the stroke; all of one length.

    `rubber` is the working line with the bump rubber; None where none is counted.
    """

    axis: str
    unit: str
    force_unit: str
    stroke: tuple[float, ...]
    springs: tuple[float, ...]
    slow: tuple[float, ...]
    working: tuple[float, ...]
    fast: tuple[float, ...]
    rubber: tuple[float, ...] | None
    wheel_rate: tuple[float, ...]
