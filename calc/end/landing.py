"""Landing from a height: how deep springs and gas let the wheel go, and from how high they just reach full travel."""

from __future__ import annotations

import numpy as np

from calc.array import Array, Number, find_root
from calc.end.end import End
from calc.gas.chamber import Process


def landing_travel(end: End, load: Number, drop: Number, exponent: Number) -> Array:
    """Wheel travel at which springs and gas have taken up a landing on flat ground, the wheel hanging before.

    Parameters: end; load [N], sprung, at that wheel, > 0; drop [mm], > 0, that the wheel falls; exponent n [-], 1 to 1.4.
    Returns: travel [mm], full travel where they do not stop it before. Damping, friction, the bump rubber, tyres and the rider's
    legs each take their share of a real landing: this is the most that it can be.
    Raises: Impossible where the gas is used up before full travel.
    Formula: E(z) = W (h + z), W the load, E from hanging, n from extension.
    Source: conservation of energy.
    Example:
        >>> from calc.end.strut import Strut
        >>> from calc.motion.ratio import LeverageMotion
        >>> from calc.springs.helical import LinearSpring
        >>> rear = End(((Strut((LinearSpring(90.0, 10.0),), (), 0.1), 1.0),), LeverageMotion(2.0, 0.0, 130.0), 130.0)
        >>> landing_travel(rear, 588.4, np.array([100.0, 2000.0]), 1.33).round(1).tolist()
        [78.7, 130.0]
    """
    process = Process(exponent)

    def left(travel: Number) -> Array:
        return np.asarray(end.energy(travel, process) - load * (drop + travel))

    at_full = left(end.travel)
    deep = at_full <= 0
    full = np.broadcast_to(np.asarray(end.travel, dtype=float), np.shape(at_full))
    ends = np.where(deep, -1.0, left(0.0 * full)), np.where(deep, 1.0, at_full)
    found = find_root(lambda z: np.where(deep, z - 0.5 * full, left(z)), 0.0 * full, full, 1e-6, ends)
    return np.where(deep, full, found)


def flat_drop(end: End, load: Number, exponent: Number) -> Number:
    """Height of a flat landing that springs and gas just take up at full travel.

    Parameters: end; load [N], sprung, at that wheel, > 0; exponent n [-] of fast gas, 1 to 1.4.
    Returns: height [mm] that the hanging wheel falls; below 0 where even setting the bike down would go through.
    Raises: Impossible as `landing_travel`.
    Formula: h = E(full) / W - full travel.
    Source: conservation of energy; damping, friction, tyres and legs left out, so that a rider lands from higher.
    Example: see `tests/unit/end/test_landing.py`.
    """
    return end.energy(end.travel, Process(exponent)) / load - end.travel
