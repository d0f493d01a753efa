"""Motion: how a strut's stroke follows the wheel. Constant for a fork, a curve for a rear linkage."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.array import Number
from calc.impossible import Impossible


class Motion(Protocol):
    """What an end needs: stroke x [mm] of the strut at wheel travel z [mm], q = dx/dz and its slope, z of an x."""

    def stroke(self, travel: Number) -> Number: ...

    def ratio(self, travel: Number) -> Number: ...

    def slope(self, travel: Number) -> Number: ...

    def travel(self, stroke: Number) -> Number: ...


@dataclass(frozen=True)
class ForkMotion:
    """A fork leg leaning by the rake.

    Parameters: rake [rad], 0 to 0.7, between the steering axis and the vertical.
    Formula: vertical wheel travel z = x cos(rake); q = 1 / cos(rake).
    Source: V. Cossalter, Motorcycle Dynamics, 2nd ed.: reduced stiffness k / cos^2(rake); from memory.
    Example:
        >>> round(float(ForkMotion(0.4189).ratio(0.0)) ** 2 * 17000)
        20370
    """

    rake: Number

    def stroke(self, travel: Number) -> Number:
        """Stroke along the leg [mm]."""
        return travel / np.cos(self.rake)

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-]."""
        return 1.0 / np.cos(self.rake) + 0.0 * np.asarray(travel)

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]: none."""
        return 0.0 * np.asarray(travel)

    def travel(self, stroke: Number) -> Number:
        """Vertical wheel travel [mm] at a stroke along the leg."""
        return stroke * np.cos(self.rake)


@dataclass(frozen=True)
class LeverageMotion:
    """A rear end known by its average leverage (wheel / shock) and how far it falls over the travel.

    Parameters: leverage [-], wheel travel over shock stroke; fall [-], the part of the leverage lost from hanging to
    full travel, -0.2 to 0.6; full_travel [mm], vertical at the axle.
    Formula: q linear in z; mean q = 1 / leverage; q(full) = q(0) / (1 - fall).
    Source: virtual work; the linear shape is common practice, no source.
    Example:
        >>> m = LeverageMotion(2.5, 0.2, 300.0)
        >>> float(m.stroke(300.0)), round(float(1 / m.ratio(0.0)), 4), round(float(1 / m.ratio(300.0)), 4)
        (120.0, 2.8125, 2.25)
    """

    leverage: Number
    fall: Number
    full_travel: Number

    def __post_init__(self) -> None:
        if np.any(np.asarray(self.fall) >= 1) or np.any(np.asarray(self.leverage) <= 0):
            raise Impossible(
                "leverage",
                "The leverage would reach zero or below inside the travel.",
                "Enter a smaller fall.",
                "rear.leverage_fall",
            )

    @property
    def _start(self) -> Number:
        return 2.0 / (self.leverage * (1.0 + 1.0 / (1.0 - self.fall)))

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]."""
        start = self._start
        return start * (1.0 / (1.0 - self.fall) - 1.0) / self.full_travel + 0.0 * np.asarray(travel)

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-], shock over wheel."""
        return self._start + self.slope(travel) * travel

    def stroke(self, travel: Number) -> Number:
        """Shock stroke [mm] at a wheel travel."""
        return (self._start + 0.5 * self.slope(travel) * travel) * travel

    def travel(self, stroke: Number) -> Number:
        """Wheel travel [mm] at a shock stroke: the root of a quadratic in the form that stays exact at zero slope."""
        start, slope = self._start, self.slope(0.0)
        return 2.0 * stroke / (start + np.sqrt(start**2 + 2.0 * slope * stroke))
