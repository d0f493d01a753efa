"""A top-out spring: it pushes the leg together near full extension."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number


@dataclass(frozen=True, eq=False)
class TopOutSpring:
    """A spring that pulls the strut in, over the first millimetres from full extension.

    Parameters: rate [N/mm], > 0; held [N], >= 0, what it pushes back with while the strut hangs balanced on it. Zero
    stroke is that balance, so `held` follows from what else is in the strut (`held_by`).
    Formula: F = -(held - k s), and 0 from s = held / k on.
    Source: statics.
    Example:
        >>> [float(TopOutSpring(15.0, 90.0).force(s)) for s in (0.0, 4.0, 10.0)]
        [-90.0, -30.0, 0.0]
    """

    rate: Number
    held: Number

    def force(self, stroke: Number) -> Number:
        """Force [N] at a stroke [mm], below 0: it pulls."""
        return -np.maximum(self.held - self.rate * stroke, 0.0) + 0.0

    def rate_at(self, stroke: Number) -> Number:
        """Rate [N/mm] at a stroke [mm]; 0 once it is out of touch."""
        return np.where(self.held - self.rate * np.asarray(stroke) > 0.0, self.rate, 0.0)

    def energy(self, stroke: Number) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm], below 0: it gives back what extension stored."""
        left = np.maximum(self.held - self.rate * stroke, 0.0)
        return (left**2 - self.held**2) / (2.0 * self.rate)


def held_by(pushing: Number, pulling: Number) -> Number:
    """What a top-out spring holds while the strut hangs balanced on it.

    Parameters: pushing [N], force of springs and gas at full extension; pulling [N], weight that hangs on the strut.
    Returns: force [N], >= 0.
    Raises: nothing.
    Formula: held = pushing + pulling.
    Source: statics.
    Example:
        >>> float(held_by(20.0, 70.0))
        90.0
    """
    return np.maximum(pushing + pulling, 0.0)
