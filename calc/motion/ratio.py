"""Motion: how a strut's stroke follows the wheel. Constant for a fork, a curve for a rear linkage."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Protocol

import numpy as np

from calc.array import Number, find_root, some
from calc.impossible import Impossible

_EXACT = 1e-9  # mm, of wheel travel


class Motion(Protocol):
    """What an end needs: stroke x [mm] of the strut at wheel travel z [mm], q = dx/dz and its slope, z of an x."""

    def stroke(self, travel: Number) -> Number: ...

    def ratio(self, travel: Number) -> Number: ...

    def slope(self, travel: Number) -> Number: ...

    def travel(self, stroke: Number) -> Number: ...


@dataclass(frozen=True, eq=False)
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


class LinearRatio:
    """A rear end whose q is linear in wheel travel: a straight line from `start` [-] with slope `bend` [1/mm].

    Parameters: none; what inherits from it gives start and bend.
    Formula: q = start + bend z; x = start z + bend z^2 / 2.
    Source: common practice, no source.
    """

    @property
    def start(self) -> Number:
        """q [-] hanging."""
        raise NotImplementedError

    @property
    def bend(self) -> Number:
        """dq/dz [1/mm]."""
        raise NotImplementedError

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]."""
        return self.bend + 0.0 * np.asarray(travel)

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-], shock over wheel."""
        return self.start + self.bend * travel

    def stroke(self, travel: Number) -> Number:
        """Shock stroke [mm] at a wheel travel."""
        return (self.start + 0.5 * self.bend * travel) * travel

    def travel(self, stroke: Number) -> Number:
        """Wheel travel [mm] at a shock stroke: the root of a quadratic in the form that stays exact at zero slope."""
        start = self.start
        return 2.0 * stroke / (start + np.sqrt(start**2 + 2.0 * self.bend * stroke))


@dataclass(frozen=True, eq=False)
class LeverageMotion(LinearRatio):
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
        if some(self.fall >= 1) or some(self.leverage <= 0):
            raise Impossible(
                "leverage",
                "The leverage would reach zero or below inside the travel.",
                "Enter a smaller fall.",
                "rear.leverage_fall",
            )

    @cached_property
    def start(self) -> Number:
        """q [-] hanging."""
        return 2.0 / (self.leverage * (1.0 + 1.0 / (1.0 - self.fall)))

    @cached_property
    def bend(self) -> Number:
        """dq/dz [1/mm]."""
        return self.start * (1.0 / (1.0 - self.fall) - 1.0) / self.full_travel


def travel_at(motion: Motion, full_travel: Number, stroke: Number) -> Number:
    """Find the wheel travel of a stroke where a motion has no closed form for it.

    Parameters: motion; full_travel [mm], vertical; stroke [mm], between 0 and that of full travel.
    Returns: wheel travel [mm].
    Raises: ValueError where the stroke lies outside.
    Formula: x(z) = stroke.
    Source: none.
    Example:
        >>> round(float(travel_at(LeverageMotion(2.5, 0.2, 300.0), 300.0, 60.0)), 3)
        158.308
    """
    low, full, asked = np.broadcast_arrays(0.0, full_travel, stroke)
    return find_root(lambda z: np.asarray(motion.stroke(z) - asked), low, full, _EXACT)
