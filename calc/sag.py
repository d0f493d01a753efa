"""Sag: where springs and slow gas carry the load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.end import End
from calc.gas import SLOW
from calc.impossible import Impossible
from calc.roots import find_root


@dataclass(frozen=True)
class Sag:
    """Where an end settles: wheel travel and strut stroke [mm], topped out or not, and friction's half-band [mm]."""

    travel: Number
    stroke: Number
    topped_out: Number
    friction: Number


def settle(end: End, load: Number, who: str = "rider") -> Sag:
    """Find the sag of an end under a load.

    Parameters: end; load [N], vertical and sprung, > 0, any shape; who is aboard, for the message.
    Returns: Sag; `topped_out` where preload alone holds the load (then the sag is 0, a bound and not a reading).
    Raises: Impossible when the load is not carried before full travel.
    Formula: wheel force (n = 1) = load; friction's half-band = friction at the wheel / wheel rate there.
    Source: statics.
    Example: see `calc.sizing`.
    """
    load = np.asarray(load, dtype=float)
    hanging = np.asarray(end.wheel_force(0.0, SLOW))
    bottomed = np.asarray(end.wheel_force(end.travel, SLOW))
    if np.any(bottomed <= load):
        carried, asked = float(np.min(bottomed)), float(np.max(load))
        raise Impossible(
            "no-equilibrium",
            f"With {'the rider aboard' if who == 'rider' else 'the bike alone'} nothing holds it up before full travel: "
            f"{carried:.0f} N there, the load is {asked:.0f} N.",
            "Stiffer springs, more preload, or check the weights.",
        )
    topped = hanging >= load
    lifted = np.where(topped, hanging, load)

    def surplus(travel: Number) -> Number:
        return end.wheel_force(travel, SLOW) - lifted

    travel = np.where(topped, 0.0, find_root(surplus, 0.0 * load + 0.0 * bottomed, end.travel + 0.0 * load + 0.0 * bottomed))
    rate = end.wheel_rate(travel, SLOW)
    return Sag(travel, end.motion.stroke(travel), topped, end.friction / rate)
