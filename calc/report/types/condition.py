"""A built setup under one of the job's other conditions."""

from __future__ import annotations

from dataclasses import dataclass

from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class Change:
    """Against as built, on the same draws."""

    rider_sag: Quantity
    end_multiple: Quantity


@dataclass(frozen=True, slots=True)
class ConditionBarred:
    """A condition under which the setup cannot be; `problem` says why."""

    key: str
    label: str
    problem: str
    words: str


@dataclass(frozen=True, slots=True)
class ConditionFigures:
    """What a setup does under one condition; `change` is None as built, `left_out` counts draws that cannot be so."""

    key: str
    label: str
    problem: None
    topped_out: bool
    free_sag: Quantity
    rider_sag: Quantity
    frequency: Quantity
    end_force: Quantity
    end_multiple: Quantity
    acts_like: Quantity | None
    restoring: Quantity | None
    change: Change | None
    draws: int
    left_out: int
    words: str


Condition = ConditionBarred | ConditionFigures
