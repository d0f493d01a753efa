"""A change of condition told as a change of gap: which gap would give the same end force."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Array, Number, find_root
from calc.end.assembly import Assembly
from calc.end.end import End
from calc.end.loads import Loads
from calc.end.sag import settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL, Process
from calc.impossible import Impossible
from calc.leg.open import DEEPEST_GAP

_CLEAR = 0.05  # mm, how near to the gap that locks the leg the search goes
_STEPS, _SMALL, _CLOSE = 12, 1e-3, 1e-7  # of Newton's method: how many; mm to take a slope over; mm at which it has arrived


def gap_for_end_force(assembly: Assembly, setup: Setup, loads: Loads, exponent: Number, end_force: Number) -> Array:
    """The gap that gives an end force, springs and preload as they are.

    "Acts like x mm of gap": the built assembly with the end force of the changed one, less the built gap. "The gap that
    restores it": the changed assembly with the end force of the built one.

    Parameters: assembly; setup, whose rate and preload are kept; loads; exponent n [-]; end_force [N] to meet, vertical.
    Returns: gap [mm].
    Raises: Impossible where no gap gives that force, naming the forces that can be had.
    Formula: end force at full travel, n about the rider sag that the gap leaves = the force asked; Newton's method from the
    setup's gap, for gap and sag at once, and a bracketed root where that does not arrive.
    Source: none.
    Example: see `tests/unit/conditions/test_equivalent_gap.py`.
    """
    quick = _by_newton(assembly, setup, loads, exponent, end_force)
    return _bracketed(assembly, setup, loads, exponent, end_force) if quick is None else quick


def _by_newton(assembly: Assembly, setup: Setup, loads: Loads, exponent: Number, end_force: Number) -> Array | None:
    """The gap, some twenty times as fast for many at once; None where any step leads out of what can be, or none arrives."""
    shape = np.broadcast_shapes(*(np.shape(x) for x in (setup.rate, setup.preload, setup.gap, loads.aboard, end_force, exponent)))
    gap = np.array(np.broadcast_to(setup.gap, shape), dtype=float)
    try:
        start = assembly.end(replace(setup, gap=gap))
        sag = settle(start, loads.aboard).travel + 0.0 * gap
        for _ in range(_STEPS):
            move, shift = _newton_step(assembly, setup, loads.aboard, exponent, end_force, gap, sag)
            gap, sag = gap + move, np.maximum(sag + shift, 0.0)
            if not np.all(np.isfinite(move)) or np.any(gap > DEEPEST_GAP):
                return None
            if np.all(np.abs(move) < _CLOSE):
                return gap
    except Impossible:
        return None
    return None


def _newton_step(
    assembly: Assembly, setup: Setup, load: Number, exponent: Number, end_force: Number, gap: Array, sag: Array
) -> tuple[Array, Array]:
    """What to add to gap and sag [mm, at the wheel]: two equations, load held at the sag and end force met, by their slopes."""
    here, beside = (assembly.end(replace(setup, gap=trial)) for trial in (gap, gap + _SMALL))

    def over(end: End, settled: Array) -> Array:
        reached = end.wheel_force(end.travel, Process(exponent, end.motion.stroke(settled)))
        return np.asarray(1.0 - end_force / reached)  # tame where the gas runs out

    held, missed = here.wheel_force(sag, ISOTHERMAL), over(here, sag)
    topped = (sag <= 0.0) & (held >= load)
    by_gap = np.where(topped, 0.0, (beside.wheel_force(sag, ISOTHERMAL) - held) / _SMALL)
    short = np.where(topped, 0.0, held - load)
    by_sag = here.wheel_rate(sag, ISOTHERMAL)
    missed_by_gap, missed_by_sag = (over(beside, sag) - missed) / _SMALL, (over(here, sag + _SMALL) - missed) / _SMALL
    whole = by_gap * missed_by_sag - by_sag * missed_by_gap
    whole = np.where(whole == 0.0, np.nan, whole)
    return (by_sag * missed - short * missed_by_sag) / whole, (short * missed_by_gap - by_gap * missed) / whole


def _bracketed(assembly: Assembly, setup: Setup, loads: Loads, exponent: Number, end_force: Number) -> Array:
    def over(gap: Array) -> Array:
        end = assembly.end(replace(setup, gap=gap))
        reached = end.wheel_force(end.travel, Process(exponent, settle(end, loads.aboard).stroke))
        return np.asarray(1.0 - end_force / reached)  # tame where the gas runs out

    shape = np.broadcast_shapes(*(np.shape(x) for x in (setup.rate, setup.preload, loads.aboard, end_force, exponent)))
    low = np.broadcast_to(assembly.lock_gap(setup) + _CLEAR, shape)
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
