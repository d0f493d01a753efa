"""Brake dive: where the fork stands while the bike slows down steadily."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number, find_root
from calc.end.end import End
from calc.gas.chamber import Process
from calc.impossible import Impossible, decimals_apart

_SAME = 1e-12  # a force worked out for one place and for many may differ in its last digits


@dataclass(frozen=True, eq=False)
class Dive:
    """Stroke along the leg [mm] at a braking, what of it the braking added to rider sag, and the load along the fork [N]."""

    stroke: Number
    added: Number
    load: Number


def dive(end: End, load: Number, process: Process) -> Dive:
    """Find where a fork stands under a load along its axis.

    Parameters: end, the fork; load [N] along its axis, both legs; process, working exponent about rider sag.
    Returns: Dive.
    Raises: Impossible when the load is not held before full travel, or does not reach what holds the fork extended.
    Formula: springs and gas, along the axis = load; friction, damping and dive-reducing linkages are left out.
    Source: statics of the leaning fork; V. Cossalter, Motorcycle Dynamics, 2nd ed., chapter 6; from memory.
    Example:
        >>> from calc.motion.ratio import ForkMotion
        >>> from calc.springs.helical import LinearSpring
        >>> from calc.end.strut import Strut
        >>> fork = End(((Strut((LinearSpring(9.0, 10.0),), (), 0.1), 2.0),), ForkMotion(0.42), 120.0)
        >>> round(float(dive(fork, 1260.0, Process(1.33, 30.0)).stroke), 6)
        60.0
    """
    along = end.motion.ratio(0.0)  # a fork's is constant: force along the axis = wheel force / q
    asked, bottomed, hanging = np.broadcast_arrays(load, *(end.wheel_force(z, process) / along for z in (end.travel, 0.0)))
    if np.any(bottomed <= asked * (1.0 + _SAME)):
        most, held = float(np.max(asked)), float(np.min(bottomed))
        places = decimals_apart(most, held, 0)
        raise Impossible(
            "brake-bottoms",
            f"Braking so hard loads the fork with {most:.{places}f} N along its axis: springs and gas hold "
            f"{held:.{places}f} N at full travel, so it bottoms.",
            "Fit stiffer springs, add oil, or look at a gentler braking.",
            "bike.braking",
        )
    topped = hanging >= asked * (1.0 - _SAME)  # at rest against its top: no stroke
    full = np.broadcast_to(end.travel, np.shape(asked))
    travel = find_root(lambda z: np.where(topped, z, end.wheel_force(z, process) / along - asked), 0.0 * full, full, 1e-6)
    stroke = end.motion.stroke(travel)
    return Dive(stroke, stroke - process.settled, load)
