"""Sizing an air spring: the pressure for the sag and what else is set for the end of the travel; pressures beside it."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from calc.array import Array, Flags, Number
from calc.end.air_setting import AMOUNT_STEPS, AirSetting
from calc.end.assembly import ForkAssembly
from calc.end.figures import evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.sizing.air_pressure import none_holds, pressure_within
from calc.sizing.coil import Sized, end_missed, end_root, gap_stays, wheel_travel
from calc.sizing.criteria import Room, coil_bind, room_left, spread_over
from calc.springs.fit import SAME


def solve_air(assembly: ForkAssembly, setting: AirSetting, loads: Loads, exponent: Number, targets: Targets) -> tuple[Setup, Flags]:
    """The exact setting that meets both targets.

    Parameters: assembly; setting; loads; exponent n [-]; targets.
    Returns: Setup; True where no amount of the control meets the end-of-travel target.
    Raises: Impossible where no pressure gives the sag.
    Formula: pressure from sag at n = 1, inside a root over the control for the end-of-travel target.
    Source: statics.
    Example: see `tests/unit/sizing/test_air_sizing.py`.
    """
    travel = wheel_travel(assembly, setting.base, targets)

    def pressed(amount: Number) -> tuple[Array, Flags]:
        return pressure_within(assembly, setting.set_to(0.1, amount), loads.aboard, targets.sag)

    def missing(amount: Array) -> Array:
        end = assembly.end(setting.set_to(pressed(amount)[0], amount))
        return end_missed(end, travel, exponent, targets)

    hard, soft = setting.hardest_softest(assembly)
    shape = np.shape(pressed(soft)[0])
    low, high = (np.array(np.broadcast_to(x, np.broadcast_shapes(shape, np.shape(x))), dtype=float) for x in (hard, soft))
    amount, unreachable = end_root(missing, low, high, 1e-7 * AMOUNT_STEPS.get(setting.control, setting.step))
    if setting.control == "gap" and targets.gap_found is not None:
        was = np.clip(np.broadcast_to(targets.gap_found, amount.shape), low, high)
        stays = (was == targets.gap_found) & gap_stays(missing(was), targets, loads.aboard)
        amount, unreachable = np.where(stays, was, amount), unreachable & ~stays
    pressure, out = pressed(amount)
    if np.any(out):
        raise none_holds(loads.aboard, targets.sag, out)
    return setting.set_to(pressure, amount), unreachable


def size_air(
    assembly: ForkAssembly,
    setting: AirSetting,
    offered: Callable[[Setup], Array],
    loads: Loads,
    exponent: Number,
    targets: Targets,
    limits: Limits,
) -> Sized:
    """Size an air spring.

    Parameters: assembly; setting; offered, the pressures [MPa, gauge] to look at about the exact setup, candidates along their
    first axis; loads; exponent n [-]; targets; limits.
    Returns: Sized. The control is the same for all pressures, solved and rounded; all figures are those of the rounded setup.
    Where the gap solved for cannot be set, the exact pressure is the one for the sag at the gap that can.
    Raises: Impossible where no pressure gives the sag, or a pressure on offer cannot carry the load.
    Formula: see `solve_air`.
    Source: statics.
    Example: see `tests/unit/sizing/test_air_sizing.py`.
    """
    exact, unreachable = solve_air(assembly, setting, loads, exponent, targets)
    wanted = np.asarray(setting.amount(exact))
    inside = np.clip(wanted, *limits.gap) if setting.control == "gap" and limits.gap is not None else wanted
    held, out = pressure_within(assembly, setting.set_to(0.1, inside), loads.aboard, targets.sag)  # at the gap that can be set
    exact = setting.set_to(np.where((inside == wanted) | out, exact.stepped, held), wanted)
    pressures = offered(exact)
    amount = setting.rounded(inside, setting.hardest_softest(assembly)[0])
    setup = setting.set_to(pressures, amount)
    done = evaluate(assembly, setup, loads, exponent)
    room = room_left(assembly, setup, done, limits) if assembly.springs else Room()
    hard = coil_bind(assembly, room, limits) if assembly.springs else {}
    short = {"end unreachable": unreachable, "pressure most": _most_built(setting, exact, setup, limits)}
    if setting.control == "gap":
        short["gap below"] = ~unreachable & np.asarray(np.round(wanted) < setup.gap - SAME)
        short["gap above"] = ~unreachable & np.asarray(np.round(wanted) > setup.gap + SAME)
    hard |= _not_built(setting, setup, unreachable, limits)
    return Sized(exact, setup, done, room, spread_over(done, hard), spread_over(done, short))


def _most_built(setting: AirSetting, exact: Setup, setup: Setup, limits: Limits) -> Flags:
    """The most the spring takes, where the sag asks for more."""
    if limits.pressure is None:
        return np.zeros(np.shape(setup.stepped), dtype=bool)
    highest = setting.nearest(np.asarray(limits.pressure), np.inf, limits.pressure)
    return np.asarray((exact.stepped > highest + 0.5 * setting.step) & (np.abs(setup.stepped - highest) < 1e-9))


def _not_built(setting: AirSetting, setup: Setup, unreachable: Flags, limits: Limits) -> dict[str, Flags]:
    """A pressure above what the spring takes, more oil than there is."""
    found = {}
    if limits.pressure is not None:
        found["pressure above"] = np.asarray(setup.stepped > limits.pressure + 1e-9)
    if setting.control == "oil":
        found["oil out"] = ~unreachable & np.asarray(-setting.amount(setup) > limits.oil + 1e-9)
    return found
