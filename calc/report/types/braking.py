"""Brake dive of the front."""

from __future__ import annotations

from dataclasses import dataclass

from calc.job import Problem
from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class BrakingBarred:
    """A braking that cannot be worked out, or that bottoms."""

    problem: Problem
    words: str


@dataclass(frozen=True, slots=True)
class BrakingFigures:
    """Stroke at a braking, what is added to rider sag and left to full travel, and what fork and tyres carry."""

    problem: None
    deceleration: Quantity
    stroke: Quantity
    added: Quantity
    left: Quantity
    load: Quantity
    front_tyre: Quantity
    rear_tyre: Quantity
    words: str
    left_out: str


Braking = BrakingBarred | BrakingFigures
