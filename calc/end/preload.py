"""The preload that gives a sag: statics turned round."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number
from calc.end.assembly import Assembly
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL


def preload_for_sag(assembly: Assembly, setup: Setup, load: Number, travel: Number) -> Number:
    """Preload that puts an end at a sag.

    Parameters: assembly; setup, whose own preload is not asked; load [N], vertical; travel [mm], the sag at the wheel.
    Returns: preload [mm]; below 0 it cannot be built, and the line of a loose spring is followed on.
    Raises: nothing.
    Formula: wheel force (n = 1) at the sag = load, so p = (the springs' shortening under what gas does not carry) - s.
    Source: statics.
    Example: see `calc.sizing.coil.size`.
    """
    bare = assembly.end(replace(setup, preload=0.0 * np.asarray(setup.rate)))
    each = (load - bare.gas_wheel_force(travel, ISOTHERMAL)) / (assembly.springs * bare.motion.ratio(travel))
    return assembly.arrangement.shortened_by(setup.rate, each) - bare.motion.stroke(travel)
