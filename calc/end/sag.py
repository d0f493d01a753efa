"""Sag: where springs and slow gas carry the load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number, find_root, some
from calc.end.end import End
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible, decimals_apart

_SAME = 1e-12  # a force worked out for one place and for many may differ in its last digits


@dataclass(frozen=True, eq=False)
class Sag:
    """Where an end settles: wheel travel and strut stroke [mm], topped out or not, and friction's half-band [mm]."""

    travel: Number
    stroke: Number
    topped_out: Flags
    friction: Number

    def __getitem__(self, index: int) -> Sag:
        """One of several loads along the first axis."""
        return Sag(*(np.asarray(part)[index] for part in (self.travel, self.stroke, self.topped_out, self.friction)))


def settle(end: End, load: Number) -> Sag:
    """Find the sag of an end under a load.

    Parameters: end; load [N], vertical and sprung, > 0, any shape.
    Returns: Sag; `topped_out` where preload alone holds the load (then the sag is 0, a bound and not a reading).
    Raises: Impossible when the load is not carried before full travel, or the wheel rate there is not above 0.
    Formula: wheel force (n = 1) = load; friction's half-band = friction at the wheel / wheel rate there.
    Source: statics.
    Example: see `calc.sizing.coil`.
    """
    load = np.asarray(load, dtype=float)
    hanging = np.asarray(end.wheel_force(0.0, ISOTHERMAL))
    bottomed = np.asarray(end.wheel_force(end.travel, ISOTHERMAL))
    if some(bottomed <= load * (1.0 + _SAME)):
        carried, asked = float(np.min(bottomed)), float(np.max(load))
        places = decimals_apart(asked, carried, 0)
        raise Impossible(
            "no-equilibrium",
            f"The load of {asked:.{places}f} N is not held before full travel: springs and gas carry {carried:.{places}f} N there.",
            "Fit stiffer springs, add preload, or check the weights.",
        )
    topped = hanging >= load * (1.0 - _SAME)
    full = np.broadcast_to(end.travel, np.broadcast_shapes(np.shape(load), np.shape(bottomed), np.shape(end.travel)))
    ends = np.where(topped, 0.0, hanging - load), np.where(topped, full, bottomed - load)
    short = find_root(lambda z: np.where(topped, z, end.wheel_force(z, ISOTHERMAL) - load), 0.0 * full, full, 1e-7, ends)
    travel = np.where(topped, 0.0, short)
    return Sag(travel, end.motion.stroke(travel), topped, end.friction / _steady(end.wheel_rate(travel, ISOTHERMAL), travel))


def _steady(rate: Number, travel: Number) -> Number:
    """A wheel rate above 0: below it the end has nowhere to settle."""
    if some(rate <= 0):
        rates, at = np.broadcast_arrays(rate, travel)
        worst = int(np.argmin(rates))
        raise Impossible(
            "unsteady",
            f"At {at.flat[worst]:.0f} mm of wheel travel the wheel pushes back less the further it rises "
            f"({rates.flat[worst]:.1f} N/mm): it has nowhere to settle.",
            "Check how the shock follows the wheel; a table that is not smooth is better fitted as measured pairs.",
        )
    return rate
