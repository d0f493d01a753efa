"""Rear motion from pairs of wheel travel and shock length: measured pairs are fitted, an exact table is interpolated."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Number
from calc.impossible import Impossible
from calc.motion.ratio import LinearRatio, travel_at
from calc.quantities.few import widening

LEAST_PAIRS = 5  # two degrees of freedom are left for the scatter
LEAST_ROWS = 4  # of a table: what a cubic through its points needs
_PAIRS = "rear.pairs"
# What the lengths of a linkage usually depart from a quadratic by: the third Legendre term's standard uncertainty over the shock's
# stroke. Linkages of our own drawing have 0.02 to 0.33 %; common practice, no source.
SHAPE = 0.003


@dataclass(frozen=True, eq=False)
class Fit:
    """A quadratic of shock length on wheel travel.

    Parameters: start [-] and bend [1/mm], q hanging and its slope; scatter [mm], standard deviation of what the lengths
    are off the curve by; root (3 by 3): turns three independent standard normal numbers into what start, bend and the curve
    of q [1/mm2] may be off by, the first two for the scatter, widened so that twice its standard deviation holds 95 %, the
    third for what a quadratic cannot follow; residuals [mm], one a pair; shape [mm], the cubic part that the pairs show and
    that the quadratic leaves out, at hanging and at full travel.
    """

    start: float
    bend: float
    scatter: float
    root: Array
    residuals: Array
    shape: float


def fit_pairs(travel: Array, length: Array) -> Fit:
    """Fit measured pairs.

    Parameters: travel [mm], vertical at the wheel, and shock length [mm], one a pair; at least 5 heights.
    Returns: Fit.
    Raises: Impossible for fewer heights.
    Formula: least squares of length on 1, z, z^2 with free intercept; covariance s^2 (X'X)^-1, s^2 = sum of squared
    residuals / (n - 3); t for 95 % at n - 3 degrees of freedom in place of 2. A cubic part c is left out of the curve and
    counted in its +/-: c is found by least squares with u_c from n - 4 degrees of freedom, and expected within SHAPE of the
    stroke, so its mean square about none is m^2 + v, v = 1 / (1 / u_c^2 + 1 / u_s^2), m = c v / u_c^2.
    Source: JCGM 100:2008, H.3 (fit of a calibration curve) and G.3 (few degrees of freedom); mean of two normal statements
    of one quantity weighted by 1 / u^2.
    Example:
        >>> z = np.array([0.0, 50.0, 100.0, 150.0, 200.0])
        >>> done = fit_pairs(z, 480.0 - 0.4 * z - 2e-4 * z * z)
        >>> round(done.start, 6), round(done.bend, 9), round(done.scatter, 6)
        (0.4, 0.0004, 0.0)
    """
    if len(set(travel.tolist())) < LEAST_PAIRS:
        raise Impossible(
            "pairs",
            f"{len(set(travel.tolist()))} heights of the wheel are too few for a fit.",
            f"Measure at {LEAST_PAIRS} heights or more, spread over the travel.",
            _PAIRS,
        )
    middle, span = float(np.mean(travel)), float(np.ptp(travel))
    part = (travel - middle) / span  # about 0 and near 1: the normal equations stay exact
    design = np.stack([np.ones_like(part), part, part**2], axis=1)
    inverse = np.linalg.inv(design.T @ design)
    found = inverse @ design.T @ length
    residuals = length - design @ found
    freedom = len(part) - 3
    squares = float(np.sum(residuals**2))
    scatter = float(np.sqrt(squares / freedom))
    to_ratio = _to_ratio(middle, span)
    start, bend = (to_ratio[:2, :2] @ found[1:]).tolist()
    by_scatter = to_ratio[:2, :2] @ inverse[1:, 1:] @ to_ratio[:2, :2].T
    cubic = np.append(-inverse @ design.T @ part**3, 1.0) * _LEGENDRE  # what no quadratic through these heights takes part in
    shape, half = _shape(design @ cubic[:3] + cubic[3] * part**3, residuals, SHAPE * float(np.ptp(length)))
    root = np.zeros((3, 3))
    root[:2, :2] = scatter * widening(freedom) * np.linalg.cholesky(by_scatter)
    root[:, 2] = half * (to_ratio @ cubic[1:])
    return Fit(start, bend, scatter, root, residuals, shape)


_LEGENDRE = 20.0  # leading coefficient of the third Legendre polynomial over 0 to 1, which is 1 at either end


def _to_ratio(middle: float, span: float) -> Array:
    """From the coefficients of length on (z - middle) / span, its square and its cube to start, bend and curve of q."""
    off = middle / span
    rows = [[1.0, -2.0 * off, 3.0 * off**2], [0.0, 2.0 / span, -6.0 * off / span], [0.0, 0.0, 3.0 / span**2]]
    return -np.array(rows) / span


def _shape(cubic: Array, residuals: Array, usual: float) -> tuple[float, float]:
    """The cubic part [mm] that residuals show, and what it may be [mm], given what is usual: see `fit_pairs`."""
    along = float(cubic @ cubic)
    found = float(cubic @ residuals) / along
    freedom = len(residuals) - 4
    left = max(float(residuals @ residuals) - found**2 * along, 0.0)
    own = widening(freedom) * np.sqrt(left / freedom / along)
    weight = 1.0 if own == 0 else usual**2 / (usual**2 + own**2)
    return found, float(np.sqrt((weight * found) ** 2 + (1.0 - weight) * usual**2))


@dataclass(frozen=True, eq=False)
class FittedMotion(LinearRatio):
    """A rear end known by measured pairs.

    Parameters: fit; full_travel [mm], vertical at the axle; off, three numbers (or arrays of draws) that are standard
    normal where the fit's uncertainty is drawn, 0 where it is not.
    Raises: Impossible where q is not above 0 over all travel.
    Formula: q = start + bend z + curve z^2, the fit's (curve 0), moved by fit.root x off; x its integral.
    Source: JCGM 100:2008, H.3.
    """

    fit: Fit
    full_travel: Number
    off: tuple[Number, Number, Number] = (0.0, 0.0, 0.0)

    def __post_init__(self) -> None:
        curve = np.asarray(self.curve)
        lowest = np.clip(-self.bend / np.where(curve > 0, 2.0 * curve, np.inf), 0.0, self.full_travel)
        for travel in (0.0, lowest, self.full_travel):
            _rises(self.ratio(travel))

    @property
    def start(self) -> Number:
        """q [-] hanging."""
        return self.fit.start + self._moved(0)

    @property
    def bend(self) -> Number:
        """dq/dz [1/mm] hanging."""
        return self.fit.bend + self._moved(1)

    @property
    def curve(self) -> Number:
        """Half of the second slope of q [1/mm2]."""
        return self._moved(2)

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]."""
        return super().slope(travel) + 2.0 * self.curve * travel

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-], shock over wheel."""
        return super().ratio(travel) + self.curve * np.square(travel)

    def stroke(self, travel: Number) -> Number:
        """Shock stroke [mm] at a wheel travel."""
        return super().stroke(travel) + self.curve * np.power(travel, 3) / 3.0

    def travel(self, stroke: Number) -> Number:
        """Wheel travel [mm] at a shock stroke within full travel."""
        return travel_at(self, self.full_travel, stroke) if np.any(np.asarray(self.curve)) else super().travel(stroke)

    def _moved(self, row: int) -> Number:
        return sum((float(part) * off for part, off in zip(self.fit.root[row], self.off, strict=True)), 0.0)


@dataclass(frozen=True, eq=False)
class TableMotion:
    """A rear end known by an exact table.

    Parameters: knots [mm], wheel travels, rising; lengths [mm] of the shock there; full_travel [mm]. A draw of full travel
    may pass the last row by its own +/-: there q stays what it is at that row.
    Raises: Impossible for too few rows, a travel named twice, or where q is not above 0 over all travel.
    Formula: cubic spline through every row, third derivative continuous at the second row and the last but one.
    Source: C. de Boor, A Practical Guide to Splines, chapter IV ("not-a-knot"); from memory, checked against scipy.
    Example:
        >>> z = np.array([0.0, 40.0, 80.0, 120.0, 160.0])
        >>> m = TableMotion(z, 480.0 - 0.4 * z - 2e-4 * z * z, 160.0)
        >>> round(float(m.stroke(100.0)), 6), round(float(m.ratio(100.0)), 6), round(float(m.slope(100.0)), 9)
        (42.0, 0.44, 0.0004)
    """

    knots: Array
    lengths: Array
    full_travel: Number

    def __post_init__(self) -> None:
        if len(self.knots) < LEAST_ROWS:
            raise Impossible("table", f"{len(self.knots)} rows are too few.", f"Enter {LEAST_ROWS} rows or more.", _PAIRS)
        if np.any(np.diff(self.knots) <= 0):
            raise Impossible("table", "A wheel travel stands twice in the table.", "Keep one of the two rows.", _PAIRS)
        bends = self._bends
        turning = np.clip(bends[:-1] / np.where(bends[:-1] == bends[1:], np.inf, bends[:-1] - bends[1:]), 0.0, 1.0)
        _rises(self.ratio(np.concatenate([self.knots, self.knots[:-1] + turning * np.diff(self.knots)])))

    @cached_property
    def _bends(self) -> Array:
        return _second_derivatives(self.knots, self.lengths)

    def stroke(self, travel: Number) -> Number:
        """Shock stroke [mm] at a wheel travel."""
        inside = np.clip(travel, self.knots[0], self.knots[-1])
        return np.asarray(self.lengths[0] - self._length(inside) + self.ratio(inside) * (travel - inside))

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-], shock over wheel."""
        i, step, left, right = self._place(np.clip(travel, self.knots[0], self.knots[-1]))
        rise = (self.lengths[i + 1] - self.lengths[i]) / step
        bent = (1.0 - 3.0 * left**2) * self._bends[i] + (3.0 * right**2 - 1.0) * self._bends[i + 1]
        return np.asarray(-(rise + step / 6.0 * bent))

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]."""
        i, _, left, right = self._place(np.clip(travel, self.knots[0], self.knots[-1]))
        within = (self.knots[0] <= travel) & (np.asarray(travel) <= self.knots[-1])
        return np.where(within, -(left * self._bends[i] + right * self._bends[i + 1]), 0.0)

    def travel(self, stroke: Number) -> Number:
        """Wheel travel [mm] at a shock stroke within full travel."""
        return travel_at(self, self.full_travel, stroke)

    def _length(self, travel: Number) -> Number:
        i, step, left, right = self._place(travel)
        bent = (left**3 - left) * self._bends[i] + (right**3 - right) * self._bends[i + 1]
        return np.asarray(left * self.lengths[i] + right * self.lengths[i + 1] + step**2 / 6.0 * bent)

    def _place(self, travel: Number) -> tuple[NDArray[np.intp], Array, Array, Array]:
        """Row before a travel, the step to the next, and how near each of the two is, 0 to 1."""
        i = np.clip(np.searchsorted(self.knots, travel, side="right") - 1, 0, len(self.knots) - 2)
        step = self.knots[i + 1] - self.knots[i]
        right = (travel - self.knots[i]) / step
        return i, step, 1.0 - right, right


def _second_derivatives(knots: Array, values: Array) -> Array:
    """Of the cubic spline through the points, at the points."""
    step, rise = np.diff(knots), np.diff(values) / np.diff(knots)
    count = len(knots)
    system, right = np.zeros((count, count)), np.zeros(count)
    for i in range(1, count - 1):
        system[i, i - 1 : i + 2] = step[i - 1], 2.0 * (step[i - 1] + step[i]), step[i]
        right[i] = 6.0 * (rise[i] - rise[i - 1])
    system[0, :3] = step[1], -(step[0] + step[1]), step[0]
    system[-1, -3:] = step[-1], -(step[-2] + step[-1]), step[-2]
    return np.asarray(np.linalg.solve(system, right), dtype=float)


def covers(travel: Array, full_travel: float) -> None:
    """Refuse wheel travel that pairs do not cover.

    Parameters: travel [mm] of the pairs; full_travel [mm], vertical.
    Returns: nothing.
    Raises: Impossible naming both.
    Formula: none.
    Source: nothing is extrapolated.
    Example:
        >>> covers(np.array([0.0, 150.0, 300.0]), 300.0)
    """
    first, last = float(np.min(travel)), float(np.max(travel))
    if first > 0 or last < full_travel:
        raise Impossible(
            "pairs",
            f"The pairs run from {first:g} to {last:g} mm of wheel travel; the rear wheel travel is 0 to {full_travel:g} mm.",
            "Add pairs from hanging to full travel, or correct the travel.",
            _PAIRS,
        )


def _rises(ratio: Number) -> None:
    if np.any(np.asarray(ratio) <= 0):
        raise Impossible(
            "pairs",
            "By these pairs the shock does not shorten all the way as the wheel rises.",
            "Check them: wheel travel first, then shock length, eye to eye. A table that is not smooth is better fitted.",
            _PAIRS,
        )
