"""How the shock follows the wheel."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class MotionRow:
    """Shock stroke and leverage at one height of the wheel."""

    travel: Quantity
    stroke: Quantity
    leverage: Quantity


@dataclass(frozen=True, slots=True)
class Residual:
    """What a measured length is off its fit by."""

    travel: Quantity
    off: Quantity


@dataclass(frozen=True, slots=True)
class Fit:
    """The scatter of measured pairs about the curve fitted to them."""

    scatter: Quantity
    residuals: tuple[Residual, ...]


@dataclass(frozen=True, slots=True)
class LinkageView:
    """The linkage from the side: points in mm from the swingarm pivot, forward and up; bars join two of them."""

    at: str
    travel: Quantity
    shock_length: Quantity
    points: Mapping[str, tuple[float, float]]
    bars: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class MotionReport:
    """A table over travel; `fit` only for measured pairs, `views` (hanging, at rider sag, at full travel) only for points."""

    known_from: str
    words: str
    left_out: str
    rows: tuple[MotionRow, ...]
    average: Quantity
    fall: Quantity
    fit: Fit | None
    views: tuple[LinkageView, ...]
