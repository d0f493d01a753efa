"""A change of condition told as a change of gap: which gap would give the same end force."""

from __future__ import annotations

import numpy as np

from calc.array import Array, Number
from calc.assembly import Assembly
from calc.gas.chamber import Pace
from calc.impossible import Impossible
from calc.leg.open import DEEPEST_GAP
from calc.roots import find_root
from calc.sag import settle
from calc.setup import Loads, Setup

_CLEAR = 0.05  # mm, how near to the gap that locks the leg the search goes


def gap_for_end_force(assembly: Assembly, setup: Setup, loads: Loads, exponent: Number, end_force: Number) -> Array:
    """The gap that gives an end force, springs and preload as they are.

    "Acts like x mm of gap": the built assembly with the end force of the changed one, less the built gap. "The gap that
    restores it": the changed assembly with the end force of the built one.

    Parameters: assembly; setup, whose rate and preload are kept; loads; exponent n [-]; end_force [N] to meet, vertical.
    Returns: gap [mm].
    Raises: Impossible where no gap gives that force, naming the forces that can be had.
    Formula: end force at full travel, n about the rider sag that the gap leaves = the force asked.
    Source: none.
    Example: see `tests/core/test_alike.py`.
    """

    def over(gap: Array) -> Array:
        end = assembly.end(setup.rate, setup.preload, gap)
        reached = end.wheel_force(end.travel, Pace(exponent, settle(end, loads.aboard).stroke))
        return np.asarray(1.0 - end_force / reached)  # tame where the gas runs out

    shape = np.broadcast_shapes(*(np.shape(x) for x in (setup.rate, setup.preload, loads.aboard, end_force, exponent)))
    low = np.broadcast_to(assembly.lock_gap(setup.rate) + _CLEAR, shape)
    high = np.full(shape, DEEPEST_GAP)
    if np.any(over(low) < 0) or np.any(over(high) > 0):
        most, least = (end_force / (1.0 - over(gap)) for gap in (low, high))
        raise Impossible(
            "gap-like",
            f"No gap gives an end force of {np.max(end_force) / 1000:.2f} kN: "
            f"from {np.min(least) / 1000:.2f} to {np.max(most) / 1000:.2f} kN can be had.",
            "Springs or preload must change.",
        )
    return find_root(over, low, high, 1e-7)
