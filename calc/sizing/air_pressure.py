"""An air spring's pressure for a sag: what a coil's preload is to other forks."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Array, Flags, Number, find_root
from calc.end.assembly import Assembly
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from calc.leg.air import Pumped

LEAST, MOST = 0.02, 4.0  # MPa gauge: from nearly flat to what no fork's pump reaches
SEARCHED = f"{LEAST * 10:.1f} to {MOST * 10:.0f} bar at the gauge"

_HELD = 1e-9  # of the load, within which it is held


def pressure_for_sag(assembly: Assembly, setup: Setup, load: Number, stroke: Number) -> Array:
    """The main chamber's pressure that puts a fork at a sag, all else as the setup has it.

    Parameters: assembly with an AirLeg on the left, or on both sides; setup; load [N], vertical; stroke [mm], the sag along
    the leg.
    Returns: pressure [MPa, gauge], cold, as the pump shows it.
    Raises: Impossible where no pressure from 0.2 to 40 bar carries the load there.
    Formula: wheel force (n = 1) at the sag = load.
    Source: statics.
    Example: see `tests/whole/test_air.py`.
    """
    pressure, out = pressure_within(assembly, setup, load, stroke)
    if np.any(out):
        raise none_holds(load, stroke, out)
    return pressure


def none_holds(load: Number, stroke: Number, where: Flags | None = None) -> Impossible:
    """The error where no pressure gives a sag.

    Parameters: load [N], vertical; stroke [mm], the sag along the leg; where, as `Impossible`.
    Returns: Impossible, to be raised.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> none_holds(786.5, 66.0).code
        'air-pressure'
    """
    return Impossible(
        "air-pressure",
        f"No pressure from {SEARCHED} holds {np.max(load):.0f} N at {np.max(stroke):.0f} mm.",
        "Check the air piston, the volumes, the coil and the weights.",
        "front.air_piston",
        where,
    )


def pressure_within(assembly: Assembly, setup: Setup, load: Number, stroke: Number) -> tuple[Array, Flags]:
    """`pressure_for_sag` for a search: the end of the range, and a flag, where no pressure holds the load.

    Parameters: as `pressure_for_sag`: load [N], stroke [mm].
    Returns: pressure [MPa, gauge]; True where it is an end of the range.
    Raises: Impossible where the leg locks at the sag.
    Formula: as `pressure_for_sag`.
    Source: statics.
    Example: see `tests/whole/test_air.py`.
    """

    def surplus(pressure: Number) -> Array:
        air = Pumped(pressure) if setup.air is None else replace(setup.air, pressure=pressure)
        end = assembly.end(replace(setup, air=air))
        return np.asarray(end.wheel_force(end.motion.travel(stroke), ISOTHERMAL) - load)

    at_least = surplus(LEAST)
    low, high = np.full_like(at_least, LEAST), np.full_like(at_least, MOST)
    at_most = surplus(high)
    above, below = at_least > 0, at_most < 0
    out = above | below
    ends = np.where(above, low, high)
    straight = np.where(out, ends, low - at_least * (high - low) / np.where(out, 1.0, at_most - at_least))
    if np.all(out | (np.abs(surplus(straight)) < _HELD * np.asarray(load))):  # slow gas pushes in proportion to its charge
        return straight, out
    root = find_root(lambda p: np.where(out, p - 0.5 * (low + high), surplus(p)), low, high, 1e-9)
    return np.where(out, ends, root), out
