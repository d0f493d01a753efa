"""A progressive spring from a measured table of force against length."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from calc.array import Array, Number, find_root
from calc.impossible import Impossible


@dataclass(frozen=True, eq=False)
class ForceTable:
    """Force against shortening through measured pairs.

    Parameters: pairs of shortening [mm] and force [N], both rising; a first pair of 0 and 0 is added where it is missing.
    Raises: Impossible where the force does not rise, or does not start at 0.
    Formula: a cubic in each interval, its end slopes the harmonic means of the neighbouring secants; past the last pair the
    last slope goes on, which only a search visits (`reach` says where the table ends).
    Source: F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; from memory, checked against scipy.
    Example:
        >>> table = ForceTable(((50.0, 210.0), (100.0, 440.0)))
        >>> round(float(table.force(50.0))), table.mean_rate, table.reach
        (210, 4.4, 100.0)
    """

    pairs: Sequence[tuple[float, float]]

    @cached_property
    def _knots(self) -> tuple[Array, Array, Array]:
        rows = tuple(self.pairs) if self.pairs[0][0] == 0.0 else ((0.0, 0.0), *self.pairs)
        length, force = np.array(rows, dtype=float).T
        if force[0] != 0.0:
            raise Impossible("table", f"The table starts with {force[0]:g} N at 0 mm.", "At its free length a spring gives 0 N.")
        falls = np.flatnonzero(np.diff(force) <= 0)
        if len(falls):
            a, b = falls[0], falls[0] + 1
            raise Impossible(
                "table",
                f"The force does not rise from {length[a]:g} mm ({force[a]:g} N) to {length[b]:g} mm ({force[b]:g} N).",
                "Measure these again: a spring pushes harder the shorter it gets.",
            )
        return length, force, _slopes(length, force)

    @property
    def reach(self) -> float:
        """Shortening [mm] at which the table ends."""
        return float(self._knots[0][-1])

    @property
    def mean_rate(self) -> float:
        """Mean rate [N/mm] over the whole table."""
        return float(self._knots[1][-1]) / self.reach

    def _piece(self, shortened: Number) -> tuple[Array, Array, Array, Array, Array, Array, Array]:
        """Of the interval: start force, width, rise, end slopes, fraction along it [-]; what lies past the table [mm]."""
        length, force, slope = self._knots
        inside = np.clip(shortened, 0.0, length[-1])
        i = np.clip(np.searchsorted(length, inside, side="right") - 1, 0, len(length) - 2)
        width = length[i + 1] - length[i]
        past = np.maximum(np.asarray(shortened) - length[-1], 0.0)
        return force[i], width, force[i + 1] - force[i], slope[i], slope[i + 1], (inside - length[i]) / width, past

    def force(self, shortened: Number) -> Array:
        """Force [N] at a shortening [mm]; 0 below 0."""
        start, width, rise, m0, m1, t, past = self._piece(shortened)
        c2, c3 = 3.0 * rise - width * (2.0 * m0 + m1), width * (m0 + m1) - 2.0 * rise
        return np.asarray(start + t * (width * m0 + t * (c2 + t * c3)) + self._knots[2][-1] * past)

    def rate_at(self, shortened: Number) -> Array:
        """Rate [N/mm] at a shortening [mm]; 0 below 0."""
        _, width, rise, m0, m1, t, past = self._piece(shortened)
        c2, c3 = 3.0 * rise - width * (2.0 * m0 + m1), width * (m0 + m1) - 2.0 * rise
        rate = np.where(past > 0, self._knots[2][-1], m0 + t * (2.0 * c2 + 3.0 * t * c3) / width)
        return np.where(np.asarray(shortened) < 0.0, 0.0, rate)

    def energy(self, shortened: Number) -> Array:
        """Energy [N mm] from the free length to a shortening [mm]."""
        length, force, slope = self._knots
        widths = np.diff(length)
        whole = widths * (force[:-1] + force[1:]) / 2.0 + widths**2 * (slope[:-1] - slope[1:]) / 12.0
        before = np.concatenate([[0.0], np.cumsum(whole)])
        start, width, rise, m0, m1, t, past = self._piece(shortened)
        c2, c3 = 3.0 * rise - width * (2.0 * m0 + m1), width * (m0 + m1) - 2.0 * rise
        here = width * t * (start + t * (width * m0 / 2.0 + t * (c2 / 3.0 + t * c3 / 4.0)))
        i = np.clip(np.searchsorted(length, np.clip(shortened, 0.0, length[-1]), side="right") - 1, 0, len(length) - 2)
        return np.asarray(before[i] + here + past * (force[-1] + 0.5 * slope[-1] * past))

    def shortened_by(self, force: Number) -> Array:
        """Shortening [mm] under a force [N]; below 0 along the first secant."""
        length, known, slope = self._knots
        # the cubic may round to just below the last pair, where nothing would bracket the pair itself
        within = np.clip(force, 0.0, min(known[-1], float(self.force(length[-1]))))
        i = np.clip(np.searchsorted(known, within, side="right") - 1, 0, len(known) - 2)
        root = find_root(lambda x: self.force(x) - within, length[i], length[i + 1], 1e-9)
        loose = np.minimum(np.asarray(force), 0.0) * length[1] / known[1]
        return np.asarray(root + loose + np.maximum(np.asarray(force) - known[-1], 0.0) / max(slope[-1], 1e-9))


def _slopes(length: Array, force: Array) -> Array:
    """Rate [N/mm] at each pair: weighted harmonic means inside, three-point formulas at both ends."""
    width, secant = np.diff(length), np.diff(force) / np.diff(length)
    if len(secant) == 1:
        return np.array([secant[0], secant[0]])
    first, second = 2.0 * width[1:] + width[:-1], width[1:] + 2.0 * width[:-1]
    inner = (first + second) / (first / secant[:-1] + second / secant[1:])

    def at_end(w0: float, w1: float, s0: float, s1: float) -> float:
        return max(((2.0 * w0 + w1) * s0 - w0 * s1) / (w0 + w1), 0.0)

    ends = at_end(width[0], width[1], secant[0], secant[1]), at_end(width[-1], width[-2], secant[-1], secant[-2])
    return np.concatenate([[ends[0]], inner, [ends[1]]])


@dataclass(frozen=True, eq=False)
class TableSpring:
    """A spring of a table's shape and another mean rate, preloaded at full extension.

    Parameters: table; rate [N/mm], its mean over the table's length; preload [mm] (below 0 it is loose).
    Formula: F = rate / mean rate of the table x its force at preload + stroke.
    Source: scaling in shape, an assumption where the spring is not the measured one.
    Example:
        >>> table = ForceTable(((0.0, 0.0), (50.0, 210.0), (100.0, 440.0)))
        >>> round(float(TableSpring(table, 8.8, 10.0).force(90.0)))
        880
    """

    table: ForceTable
    rate: Number
    preload: Number

    @property
    def scale(self) -> Number:
        """Times the table's force [-]."""
        return self.rate / self.table.mean_rate

    def force(self, stroke: Number) -> Number:
        """Force [N] at a stroke [mm]."""
        return self.scale * self.table.force(self.preload + stroke)

    def rate_at(self, stroke: Number) -> Number:
        """Rate [N/mm] at a stroke [mm]: 0 while loose."""
        return self.scale * self.table.rate_at(self.preload + stroke)

    def energy(self, stroke: Number) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm]."""
        return self.scale * (self.table.energy(self.preload + stroke) - self.table.energy(self.preload))

    def shortened_by(self, force: Number) -> Number:
        """Shortening [mm] under a force [N]."""
        return self.table.shortened_by(force / self.scale)
