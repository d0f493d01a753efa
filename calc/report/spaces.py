"""The gas spaces of a leg along its stroke: where each is, how much, at what pressure; and where the oil stands."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from calc.array import Array, Number
from calc.gas.chamber import Chamber, Gas, Process
from calc.gas.piston import LeakingPiston, SpringPiston
from calc.gas.pressures import pressures
from calc.gas.staged import Staged
from calc.leg.air import AirLeg
from calc.leg.sealed import SealedLeg
from calc.report.anatomy import Build
from calc.report.tubes import Leg, Solid, Tubes
from calc.report.types import LegSpace

DEEPEST, THINNEST = 3000.0, 1e-6  # mm: deeper than any leg, thinner than any part
BAR = 10.0  # bar in one MPa


def spaces(build: Build, leg: Leg, gases: tuple[Gas, ...], process: Process) -> Iterator[LegSpace]:
    """The space over the oil, then what is closed."""
    strokes, gas = build.strokes, build.gas
    vented = build.fork.ambient if isinstance(gas, SealedLeg) and np.any(np.asarray(gas.outer.inside) > 0) else None
    gauge = [BAR * (np.asarray(p) - build.fork.ambient) + 0.0 * strokes for p in pressures(gases, strokes, process, vented)]
    if isinstance(gas, SealedLeg) and isinstance(gas.cartridge, Chamber):
        yield from _beside(build, gas, leg, gauge)
        return
    over = gases[0]
    assert isinstance(over, Chamber)
    yield _over_oil(leg, over.volume(strokes), strokes, gauge[0])
    if isinstance(gas, AirLeg):
        yield from _pumped(build, gas, leg, gases[1], gauge[1:], process)
    elif len(gases) > 1:
        piston = np.asarray(leg.body + 50.0 - _lifted(gases[1], strokes))
        yield LegSpace("cartridge's oil", listed(piston), listed(piston), None, listed(gauge[1]))


def _over_oil(leg: Leg, volume: Number, strokes: Array, gauge: Array) -> LegSpace:
    level = oil_level(np.asarray(volume, dtype=float) + 0.0 * strokes, strokes, leg.tubes, leg.solids)
    return LegSpace("over the oil", listed(0.0 * strokes), listed(level), listed(np.asarray(volume) / 1000.0), listed(gauge, 4))


def oil_level(volume: Array, strokes: Array, tubes: Tubes, solids: tuple[Solid, ...]) -> Array:
    """Where the oil stands in an open space that holds so much gas.

    Parameters: volume [mm3] of the gas at each stroke, shape (n,), > 0; strokes [mm], shape (n,); tubes; solids that stand in it.
    Returns: level [mm under the rim], shape (n,).
    Raises: nothing.
    Formula: gas = integral of the free area from the rim to the level, less the part of each solid over the level; piece by piece
    straight, so it is inverted piece by piece.
    Source: geometry; the integral is that of `calc.gas.chamber.gas_above_oil`.
    Example:
        >>> at = np.array([0.0, 300.0])
        >>> oil_level(np.array([700e3, 144e3]), at, Tubes(2000.0, 1600.0, 340.0, 44.0), ()).tolist()
        [352.5, 80.0]
    """
    ends = [part for one in solids for part in (one.top, one.bottom)]
    places = (0.0, tubes.edge_at(strokes), *ends, DEEPEST)
    knots = np.sort(np.stack([np.clip(at + 0.0 * strokes, 0.0, DEEPEST) for at in places]), axis=0)
    free = tubes.above(knots, strokes)
    for one in solids:
        free = free - one.volume * np.clip((knots - one.top) / np.maximum(one.bottom - np.asarray(one.top), THINNEST), 0.0, 1.0)
    least, room = free[:-1], np.maximum(np.diff(free, axis=0), 1e-9)
    return np.asarray(np.sum(np.diff(knots, axis=0) * np.clip((volume - least) / room, 0.0, 1.0), axis=0))


def _beside(build: Build, gas: SealedLeg, leg: Leg, gauge: list[Array]) -> Iterator[LegSpace]:
    """Around a cartridge that holds gas, and in it; where they are joined, what it cannot hold any more is around it."""
    strokes, around, cartridge = build.strokes, gas.chamber(build.rate, build.gap), gas.cartridge
    assert isinstance(cartridge, Chamber)
    assert leg.area is not None
    within = np.maximum(cartridge.volume0 - cartridge.area * strokes, 0.0)
    whole = around.volume0 + cartridge.volume0 - (around.area + cartridge.area) * strokes
    yield _over_oil(leg, whole - within, strokes, gauge[0])
    top = leg.body + 0.0 * strokes
    yield LegSpace("cartridge", listed(top), listed(top + within / leg.area), listed(within / 1000.0), listed(gauge[-1], 4))


def _pumped(build: Build, gas: AirLeg, leg: Leg, main: Gas, gauge: list[Array], process: Process) -> Iterator[LegSpace]:
    """An air spring's chambers, the second volume over the main one."""
    spring, strokes, piston = gas.spring, build.strokes, leg.named("air piston")
    top = leg.named("air cylinder").top + 0.0 * strokes
    foot = piston.top - strokes
    whole = (foot - top) * spring.piston
    second = 0.0 * strokes
    if isinstance(main, Staged):
        second = np.asarray(main.second_left(strokes, process), dtype=float)
        charge = np.maximum(BAR * (np.asarray(main.charge) - build.fork.ambient), gauge[0])
        rest = listed(top + second / spring.piston)
        yield LegSpace("second volume", listed(top), rest, listed(second / 1000.0), listed(charge, 4))
    start, volume = top + second / spring.piston, (whole - second) / 1000.0
    yield LegSpace("main chamber", listed(start), listed(foot), listed(volume), listed(gauge[0], 4))
    if len(gauge) > 1:
        bottom = leg.named("air cylinder").bottom + 0.0 * strokes
        under = piston.bottom - strokes
        volume = (bottom - under) * spring.balance_area / 1000.0
        yield LegSpace("balance chamber", listed(under), listed(bottom), listed(volume), listed(gauge[1], 4))


def _lifted(gas: Gas, strokes: Array) -> Array:
    """How far [mm] a spring-loaded piston has been pushed back."""
    piston = gas.piston if isinstance(gas, LeakingPiston) else gas
    assert isinstance(piston, SpringPiston)
    return np.asarray(piston.rod / piston.piston * strokes)


def listed(values: Number, decimals: int = 3) -> tuple[float, ...]:
    """Numbers along the stroke as data; ArithmeticError where one is not finite."""
    array = np.asarray(values, dtype=float)
    if not np.all(np.isfinite(array)):
        raise ArithmeticError("a section is not finite")
    return tuple((np.round(array, decimals) + 0.0).tolist())
