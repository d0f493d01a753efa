"""A spring on a tester: its rate by a straight line through the points, and whether a straight line is what they are."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.quantities.few import widening

LEAST_POINTS = 3
CURVED = 3.0  # standard uncertainties that the points must be bent by, and
STIFFER = 0.05  # of the rate, over the points: then they are told as those of a progressive spring


@dataclass(frozen=True, eq=False)
class Tested:
    """A tested spring.

    Parameters: rate [N/mm]; plus_minus_95 [N/mm], by the points' scatter alone; scatter [N], standard deviation off the line;
    stiffer [-], by what part the rate rises from the first point to the last; bent, whether that is more than scatter.
    """

    rate: float
    plus_minus_95: float
    scatter: float
    stiffer: float
    bent: bool


def line_through(compression: Array, force: Array, field: str = "") -> Tested:
    """Fit a straight line to a tester's points.

    Parameters: compression [mm], rising, and force [N], one a point, 3 or more; field, for the message.
    Returns: Tested. The line need not pass through 0: where the tester's zero lies does not matter.
    Raises: Impossible where the line does not rise.
    Formula: k = sum (x - mean x) F / sum (x - mean x)^2; s^2 = sum of squared residuals / (n - 2); u(k) = s / sqrt(sum (x - mean
    x)^2); t for 95 % at n - 2 degrees of freedom. Bent: a square term, orthogonal to the line, at n - 3 degrees.
    Source: JCGM 100:2008, H.3 (straight-line fit) and G.3 (few degrees of freedom).
    Example:
        >>> done = line_through(np.array([0.0, 50.0, 100.0]), np.array([10.0, 220.0, 430.0]))
        >>> round(done.rate, 6), round(done.plus_minus_95, 6), done.bent
        (4.2, 0.0, False)
    """
    off = compression - compression.mean()
    along = float(off @ off)
    rate = float(off @ force) / along
    if rate <= 0:
        raise Impossible("tester", "The tester's forces do not rise with compression.", "Check the points' order and signs.", field)
    residuals = force - force.mean() - rate * off
    freedom = len(off) - 2
    scatter = float(np.sqrt(residuals @ residuals / freedom))
    half = 2.0 * widening(freedom) * scatter / along**0.5
    stiffer, bent = _bent(off, residuals, rate)
    return Tested(rate, half, scatter, stiffer, bent)


def _bent(off: Array, residuals: Array, rate: float) -> tuple[float, bool]:
    """By what part the rate rises over the points, and whether that is more than they scatter by."""
    if len(off) < LEAST_POINTS + 1:
        return 0.0, False
    square = off**2 - (off**2).mean() - float(off @ off**2) / float(off @ off) * off
    along = float(square @ square)
    found = float(square @ residuals) / along
    left = residuals - found * square
    freedom = len(off) - 3
    unsure = widening(freedom) * float(np.sqrt(left @ left / freedom / along))
    stiffer = 2.0 * found * float(np.ptp(off)) / rate
    return stiffer, abs(found) > CURVED * unsure and abs(stiffer) > STIFFER
