"""An air spring's pressure for a sag: what a coil's preload is to other forks."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Array, Number
from calc.assembly import ForkAssembly
from calc.gas.chamber import SLOW
from calc.impossible import Impossible
from calc.leg.air import AirLeg
from calc.roots import find_root
from calc.setup import Setup

LEAST, MOST = 0.1, 4.0  # MPa absolute: from flat to what no fork's pump reaches


def pressure_for_sag(assembly: ForkAssembly, setup: Setup, load: Number, stroke: Number) -> Array:
    """The main chamber's pressure that puts a fork at a sag, gap and coil as they are.

    Parameters: assembly with an AirLeg on the left, or on both sides; setup; load [N], vertical; stroke [mm], the sag along
    the leg.
    Returns: pressure [MPa, absolute], cold, hose off.
    Raises: Impossible where no pressure from 0.1 to 4 MPa carries the load there.
    Formula: wheel force (n = 1) at the sag = load.
    Source: statics.
    Example: see `tests/core/test_air.py`.
    """
    air = assembly.gas
    assert isinstance(air, AirLeg)

    def surplus(pressure: Array) -> Array:
        pumped = replace(assembly, gas=replace(air, spring=replace(air.spring, pressure=pressure)))
        end = pumped.end(setup.rate, setup.preload, setup.gap)
        return np.asarray(end.wheel_force(end.motion.travel(stroke), SLOW) - load)

    low = LEAST + 0.0 * surplus(np.asarray(1.0))
    if np.any(surplus(low) > 0) or np.any(surplus(0.0 * low + MOST) < 0):
        raise Impossible(
            "air-pressure",
            f"No pressure from {LEAST * 10:.0f} to {MOST * 10:.0f} bar holds {np.max(load):.0f} N at {np.max(stroke):.0f} mm.",
            "Check the air piston, the volumes and the weights.",
            "front.air_piston",
        )
    return find_root(surplus, low, 0.0 * low + MOST, 1e-9)
