"""Sizing an air spring: the pressure for the sag and what else is set for the end of the travel; pressures beside it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from calc.air_pressure import none_holds, pressure_within
from calc.array import Array, Flags, Number
from calc.assembly import ForkAssembly
from calc.leg.air import AirLeg, Pumped
from calc.leg.open import DEEPEST_GAP
from calc.setup import Loads, Setup, end_of, evaluate
from calc.sizing import Sized, Targets, end_missed, end_root, wheel_travel
from calc.vetoes import Limits, Room, bars, gap_bars, room_left, spring_bars

SERIES_FROM, SERIES_TO = 0.8, 1.2  # times the pressure for the sag: what is shown of other pressures
STEPS_OFF = 1.5  # of the gauge, from the exact pressure: farther off a pressure leaves another sag than the one wanted
_CLEAR_GAP, _CLEAR_OIL = 0.05, 50.0  # mm, mm3: how near to a lock the search goes
_STEPS = {"gap": 1.0, "oil": 1000.0}  # mm, mm3: what they are read to
_SECOND_LEAST, _SECOND_MOST = 0.1, 3.0  # MPa gauge, a pump's range


@dataclass(frozen=True, eq=False)
class AirSetting:
    """What is set at an air spring, and in which steps.

    Parameters: base, the setup as found, of which all else is kept; dial, what meets the end-of-travel target: "gap", "oil"
    (or spacers in the main chamber) or "second" (the second volume's pressure); step [MPa], what a gauge shows.
    """

    base: Setup
    dial: str
    step: float

    def set_to(self, pressure: Number, amount: Number) -> Setup:
        """The base at a pressure [MPa, gauge] and an amount of the dial."""
        if self.dial == "gap":
            return replace(self.base, gap=amount, air=Pumped(pressure))
        return replace(self.base, air=replace(Pumped(pressure), **{self.dial: amount}))

    def amount(self, setup: Setup) -> Number:
        """The dial's amount in a setup."""
        amount = setup.gap if self.dial == "gap" else getattr(setup.air, self.dial)
        assert amount is not None
        return amount

    def pressures(self, about: float, found: float) -> Array:
        """Pressures [MPa] on offer about one: the gauge's steps, and the one found where it is among them."""
        steps = np.arange(np.ceil(SERIES_FROM * about / self.step), np.floor(SERIES_TO * about / self.step) + 1)
        series = np.round(steps * self.step, 9)
        inside = SERIES_FROM * about <= found <= SERIES_TO * about
        return np.unique(np.append(series[np.abs(series - found) > 1e-9], found)) if inside else series

    def nearest(self, pressure: Array, found: float) -> Array:
        """Each pressure [MPa] as the gauge's step nearest to it, or the one found where that is nearer."""
        step = np.round(np.round(pressure / self.step) * self.step, 9)
        return np.where(np.abs(pressure - found) <= np.abs(pressure - step), found, step)

    def hardest_softest(self, assembly: ForkAssembly) -> tuple[Number, Number]:
        """Amounts between which an end force is looked for."""
        if self.dial == "gap":
            return assembly.lock_gap(self.base.rate) + _CLEAR_GAP, DEEPEST_GAP
        if self.dial == "oil":
            assert isinstance(assembly.gas, AirLeg)
            return assembly.gas.oil_locks - _CLEAR_OIL, -assembly.gas.spring.volume  # a chamber twice as large
        return _SECOND_MOST, _SECOND_LEAST

    def rounded(self, amount: Array, hardest: Number) -> Array:
        """To 1 mm, 1 ml or the gauge's step; where that would lock the leg, to the softer side."""
        step = _STEPS.get(self.dial, self.step)
        nearest, softer = np.round(amount / step), np.ceil(amount / step) if self.dial == "gap" else np.floor(amount / step)
        past = nearest * step < hardest if self.dial == "gap" else nearest * step > hardest
        return np.round(np.where(past, softer, nearest) * step, 9)


def solve_air(assembly: ForkAssembly, setting: AirSetting, loads: Loads, exponent: Number, targets: Targets) -> tuple[Setup, Flags]:
    """The exact setting that meets both targets.

    Parameters: assembly; setting; loads; exponent n [-]; targets.
    Returns: Setup; True where no amount of the dial meets the end-of-travel target.
    Raises: Impossible where no pressure gives the sag.
    Formula: pressure from sag at n = 1, inside a root over the dial for the end-of-travel target.
    Source: statics.
    Example: see `tests/core/test_air_sizing.py`.
    """
    travel = wheel_travel(assembly, setting.base.rate, targets)

    def pressed(amount: Number) -> tuple[Array, Flags]:
        return pressure_within(assembly, setting.set_to(0.1, amount), loads.aboard, targets.sag)

    def missing(amount: Array) -> Array:
        end = end_of(assembly, setting.set_to(pressed(amount)[0], amount))
        return end_missed(end, travel, exponent, targets)

    hard, soft = setting.hardest_softest(assembly)
    shape = np.shape(pressed(soft)[0])
    low, high = (np.array(np.broadcast_to(x, np.broadcast_shapes(shape, np.shape(x))), dtype=float) for x in (hard, soft))
    amount, unreachable = end_root(missing, low, high, 1e-7 * _STEPS.get(setting.dial, setting.step))
    pressure, out = pressed(amount)
    if np.any(out):
        raise none_holds(loads.aboard, targets.sag)
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
    Returns: Sized. The dial is the same for all pressures, solved and rounded; all figures are those of the rounded setup.
    Raises: Impossible where no pressure gives the sag, or a pressure on offer cannot carry the load.
    Formula: see `solve_air`; the key is the distance of rider sag from the one wanted.
    Source: statics.
    Example: see `tests/core/test_air_sizing.py`.
    """
    exact, unreachable = solve_air(assembly, setting, loads, exponent, targets)
    pressures = offered(exact)
    amount = setting.rounded(np.asarray(setting.amount(exact)), setting.hardest_softest(assembly)[0])
    setup = setting.set_to(pressures, amount)
    done = evaluate(assembly, setup, loads, exponent)
    room = room_left(assembly, setup, done, limits) if assembly.springs else Room()
    vetoes = bars(
        done,
        gap_bars(setup, unreachable, limits) if setting.dial == "gap" else {"end unreachable": unreachable},
        _air_bars(setting, exact, setup, unreachable, limits),
        spring_bars(assembly, room, limits) if assembly.springs else {},
    )
    return Sized(exact, setup, done, room, vetoes, np.asarray(np.abs(done.rider.stroke - targets.sag)))


def _air_bars(setting: AirSetting, exact: Setup, setup: Setup, unreachable: Flags, limits: Limits) -> dict[str, Flags]:
    """Free sag bars no pressure: nothing that is set here moves it while rider sag is kept."""
    found = {"sag off": np.asarray(np.abs(setup.stepped - exact.stepped) > STEPS_OFF * setting.step + 1e-9)}
    if limits.pressure is not None:
        found["pressure above"] = np.asarray(setup.stepped > limits.pressure + 1e-9)
    if setting.dial == "oil":
        found["oil out"] = ~unreachable & np.asarray(-setting.amount(setup) > limits.oil + 1e-9)
    return found
