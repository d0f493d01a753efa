"""Two coil springs in one strut: stacked (in series until one closes) or nested (a shorter one joins later)."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number


@dataclass(frozen=True, eq=False)
class StackedSprings:
    """Two springs in series until the second one's coils touch; from there the main one works alone.

    Parameters: rate [N/mm] of the main spring; second_rate [N/mm]; second_room [mm] by which the second can be shortened;
    preload [mm], by which the stack is shortened at full extension (below 0 it is loose).
    Formula: k = k1 k2 / (k1 + k2) until F = k2 room, then k1.
    Source: springs in series, statics.
    Example:
        >>> stack = StackedSprings(6.0, 3.0, 20.0, 0.0)
        >>> [float(stack.force(s)) for s in (30.0, 40.0)]
        [60.0, 120.0]
    """

    rate: Number
    second_rate: Number
    second_room: Number
    preload: Number

    @property
    def soft_rate(self) -> Number:
        """Rate [N/mm] while both give way."""
        return self.rate * self.second_rate / (self.rate + self.second_rate)

    @property
    def closing(self) -> Number:
        """Shortening [mm] of the stack at which the second spring closes."""
        return self.second_rate * self.second_room / self.soft_rate

    def _parts(self, stroke: Number) -> tuple[Array, Array]:
        """Shortening [mm] before and after the second spring closes."""
        shortened = np.maximum(self.preload + stroke, 0.0)
        before = np.minimum(shortened, self.closing)
        return before, np.asarray(shortened - before)

    def force(self, stroke: Number) -> Number:
        """Force [N] at a stroke [mm]."""
        before, after = self._parts(stroke)
        return self.soft_rate * before + self.rate * after

    def rate_at(self, stroke: Number) -> Number:
        """Rate [N/mm] at a stroke [mm]: 0 while loose."""
        shortened = self.preload + np.asarray(stroke)
        return np.where(shortened < 0.0, 0.0, np.where(shortened < self.closing, self.soft_rate, self.rate))

    def energy(self, stroke: Number) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm]."""
        return self._stored(stroke) - self._stored(0.0 * np.asarray(stroke))

    def _stored(self, stroke: Number) -> Number:
        before, after = self._parts(stroke)
        return 0.5 * self.soft_rate * before**2 + (self.soft_rate * before + 0.5 * self.rate * after) * after

    def shortened_by(self, force: Number) -> Number:
        """Shortening [mm] of the stack under a force [N]; below 0 along the first line."""
        closes_at = self.second_rate * self.second_room
        return np.minimum(force, closes_at) / self.soft_rate + np.maximum(force - closes_at, 0.0) / self.rate


@dataclass(frozen=True, eq=False)
class NestedSprings:
    """Two springs side by side, the second one shorter, so that it joins later.

    Parameters: rate [N/mm] of the main spring; second_rate [N/mm]; later [mm], how much the main spring is shortened when
    the second one is reached, >= 0; preload [mm] of the main spring at full extension (below 0 it is loose).
    Formula: F = k1 x + k2 (x - later), each only while above 0, x = preload + stroke.
    Source: springs in parallel, statics.
    Example:
        >>> float(NestedSprings(4.0, 2.0, 50.0, 10.0).force(60.0))
        320.0
    """

    rate: Number
    second_rate: Number
    later: Number
    preload: Number

    def force(self, stroke: Number) -> Number:
        """Force [N] at a stroke [mm]."""
        shortened = self.preload + np.asarray(stroke)
        return self.rate * np.maximum(shortened, 0.0) + self.second_rate * np.maximum(shortened - self.later, 0.0)

    def rate_at(self, stroke: Number) -> Number:
        """Rate [N/mm] at a stroke [mm]: 0 while loose."""
        shortened = self.preload + np.asarray(stroke)
        return np.where(shortened >= 0.0, self.rate, 0.0) + np.where(shortened >= self.later, self.second_rate, 0.0)

    def energy(self, stroke: Number) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm]."""
        return self._stored(stroke) - self._stored(0.0 * np.asarray(stroke))

    def _stored(self, stroke: Number) -> Number:
        shortened = self.preload + np.asarray(stroke)
        both = np.maximum(shortened - self.later, 0.0)
        return 0.5 * (self.rate * np.maximum(shortened, 0.0) ** 2 + self.second_rate * both**2)

    def shortened_by(self, force: Number) -> Number:
        """Shortening [mm] of the main spring under a force [N]; below 0 along the first line."""
        joins_at = self.rate * self.later
        return np.minimum(force, joins_at) / self.rate + np.maximum(force - joins_at, 0.0) / (self.rate + self.second_rate)
