"""Sag: where springs and slow gas carry the load."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from calc.array import Flags, Number, find_root, some
from calc.end.end import End
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible, decimals_apart

_NEAR = 1e-4  # mm of wheel travel; the last secant over so little leaves less than 1e-9
_SAME = 1e-12  # a force worked out for one place and for many may differ in its last digits


@dataclass(frozen=True, eq=False)
class Sag:
    """Where an end settles.

    Parameters: travel [mm] of the wheel and stroke [mm] of the strut; topped_out or not: then both are 0, a bound and not a
    reading; friction's half-band [mm, at the wheel]; beyond [mm, at the wheel] and beyond_stroke [mm], what the end is away
    from leaving its top, 0 where it has left it.
    Formula: beyond = (load - hanging force) / wheel rate hanging, where that is below 0; beyond_stroke = q beyond.
    Source: statics, the springs' line followed on beyond full extension.
    """

    travel: Number
    stroke: Number
    topped_out: Flags
    friction: Number
    beyond: Number = 0.0
    beyond_stroke: Number = 0.0

    @property
    def travel_unbounded(self) -> Number:
        """Wheel travel [mm], continued below 0 where the end is topped out: for comparing, never to be told as a sag."""
        return self.travel + self.beyond

    @property
    def stroke_unbounded(self) -> Number:
        """Stroke [mm] of the strut, continued below 0 where the end is topped out: for comparing, never to be told as a sag."""
        return self.stroke + self.beyond_stroke

    def __getitem__(self, index: int) -> Sag:
        """One of several loads along the first axis."""
        return Sag(*(np.asarray(getattr(self, part.name))[index] for part in fields(self)))


def settle(end: End, load: Number) -> Sag:
    """Find the sag of an end under a load.

    Parameters: end; load [N], vertical and sprung, > 0, any shape.
    Returns: Sag; `topped_out` where preload alone holds the load.
    Raises: Impossible when the load is not carried before full travel, the wheel rate there is not above 0, or the end hangs
    deep in its travel with no load at all.
    Formula: wheel force (n = 1) = load; friction's half-band = friction at the wheel / wheel rate there; see `Sag`.
    Source: statics.
    Example:
        >>> from calc.end.strut import Strut
        >>> from calc.motion.ratio import LeverageMotion
        >>> from calc.springs.helical import LinearSpring
        >>> rear = End(((Strut((LinearSpring(90.0, 10.0),), (), 0.1), 1.0),), LeverageMotion(2.0, 0.0, 130.0), 130.0)
        >>> found = settle(rear, np.array([405.0, 900.0]))
        >>> found.travel.tolist(), found.travel_unbounded.tolist()
        ([0.0, 20.0], [-2.0, 20.0])
    """
    load = np.asarray(load, dtype=float)
    if some(end.pulled_in):
        raise Impossible(
            "pulled-in",
            "With the wheel off the ground the balance chamber pulls the fork in by half of its travel or more.",
            "Pump the main chamber first; check both pressures and both volumes.",
            "front.air_pressure",
        )
    hanging = np.asarray(end.wheel_force(0.0, ISOTHERMAL))
    bottomed = np.asarray(end.wheel_force(end.travel, ISOTHERMAL))
    deeper = np.asarray(bottomed <= load * (1.0 + _SAME))
    if some(deeper):
        carried, asked = float(np.min(bottomed)), float(np.max(load))
        places = decimals_apart(asked, carried, 0)
        raise Impossible(
            "no-equilibrium",
            f"The load of {asked:.{places}f} N is not held before full travel: springs and gas carry {carried:.{places}f} N there.",
            "Fit stiffer springs, add preload, or check the weights.",
            where=deeper,
        )
    topped = hanging >= load * (1.0 - _SAME)
    full = np.broadcast_to(end.travel, np.broadcast_shapes(np.shape(load), np.shape(bottomed), np.shape(end.travel)))
    ends = np.where(topped, 0.0, hanging - load), np.where(topped, full, bottomed - load)
    short = find_root(lambda z: np.where(topped, z, end.wheel_force(z, ISOTHERMAL) - load), 0.0 * full, full, _NEAR, ends)
    travel = np.where(topped, 0.0, short)
    rate = _steady(end.wheel_rate(travel, ISOTHERMAL), travel)
    beyond = np.where(topped, np.minimum(load - hanging, 0.0) / rate, 0.0)
    return Sag(travel, end.motion.stroke(travel), topped, end.friction / rate, beyond, beyond * end.motion.ratio(0.0))


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
