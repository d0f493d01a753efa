"""Sizing: for every spring that can be had, the preload and gap that meet the targets; vetoes; one key; the choice."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Flags, Number, find_root
from calc.end.assembly import Assembly
from calc.end.end import End
from calc.end.figures import Figures, evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.gas.chamber import ISOTHERMAL, Process
from calc.leg.open import DEEPEST_GAP
from calc.sizing.criteria import Room, bars, free_sag_bars, gap_bars, preload_bars, room_left, spring_bars

__all__ = ["Limits", "Sized", "Targets", "end_missed", "end_root", "preload_for_sag", "size", "wheel_travel"]


@dataclass(frozen=True, eq=False)
class Sized:
    """Candidates along the first axis: the exact roots, the rounded setup, its figures, vetoes by name, and the key."""

    exact: Setup
    setup: Setup
    figures: Figures
    room: Room
    vetoes: dict[str, Flags] = field(default_factory=dict)
    key: Array = field(default_factory=lambda: np.zeros(0))

    @property
    def allowed(self) -> Flags:
        """True where no veto holds."""
        barred = np.zeros(np.shape(self.key), dtype=bool)
        for veto in self.vetoes.values():
            barred = barred | veto
        return ~barred

    @property
    def choice(self) -> NDArray[np.intp]:
        """Index of the best candidate along the first axis, -1 where all are barred."""
        ranked = np.where(self.allowed, self.key, np.inf)
        return np.where(np.any(self.allowed, axis=0), np.argmin(ranked, axis=0), -1)


def preload_for_sag(assembly: Assembly, setup: Setup, load: Number, travel: Number) -> Number:
    """Preload that puts an end at a sag.

    Parameters: assembly; setup, whose own preload is not asked; load [N], vertical; travel [mm], the sag at the wheel.
    Returns: preload [mm]; below 0 it cannot be built, and the line of a loose spring is followed on.
    Raises: nothing.
    Formula: wheel force (n = 1) at the sag = load, so p = (the springs' shortening under what gas does not carry) - s.
    Source: statics.
    Example: see `size`.
    """
    bare = assembly.end(replace(setup, preload=0.0 * np.asarray(setup.rate)))
    each = (load - bare.gas_wheel_force(travel, ISOTHERMAL)) / (assembly.springs * bare.motion.ratio(travel))
    return assembly.arrangement.shortened_by(setup.rate, each) - bare.motion.stroke(travel)


def size(
    assembly: Assembly, rates: Array, loads: Loads, exponent: Number, targets: Targets, limits: Limits, split: Number = 0.0
) -> Sized:
    """Size an end for every rate on offer.

    Parameters: assembly; rates [N/mm], shape (candidates,) or (candidates, 1) against loads of shape (loads,); loads;
    exponent n [-]; targets; limits; split [N/mm] of unequal pairs, beside the rates, which are then their means.
    Returns: Sized. Preload and gap are solved together, rounded to 1 mm; all figures are those of the rounded setup.
    Raises: Impossible when a load cannot be carried whatever the spring.
    Formula: preload from sag at n = 1, inside a root over the gap for the end-of-travel target.
    Source: statics; the key is the ride frequency's distance (front) or the free sag's (rear).
    Example:
        >>> from calc.motion.ratio import LeverageMotion
        >>> from calc.springs.arrangement import SingleSpring
        >>> from calc.end.assembly import ShockAssembly
        >>> from calc.gas.chamber import SteadyCharge, circle
        >>> motion = LeverageMotion(2.5, 0.22, 305.0)
        >>> rear = ShockAssembly(SteadyCharge(1.1, circle(16.0)), SingleSpring(), motion, 305.0, 0.1, 35.0)
        >>> loads = Loads(380.0, 980.0, 9.80665)
        >>> sized = size(rear, np.array([46.0, 48.0, 50.0]), loads, 1.33, Targets(104.0, False, "none", 0.0, free_sag=30.0),
        ...     Limits((2.0, 24.0), None, None))
        >>> [round(float(t)) for t in sized.figures.rider.travel]
        [104, 103, 103]
    """
    offer = Setup(rates, 0.0, DEEPEST_GAP, split)
    travel = wheel_travel(assembly, offer, targets)
    lock = assembly.lock_gap(offer)
    gap, unreachable = _gap(assembly, offer, loads, exponent, targets, travel, lock)
    offer = replace(offer, gap=gap)
    exact = replace(offer, preload=preload_for_sag(assembly, offer, loads.aboard, travel))
    whole = np.round(gap)  # where rounding down would lock the leg, up
    setup = replace(exact, preload=np.round(exact.preload) + 0.0, gap=np.where(whole > lock, whole, np.ceil(gap)))
    done = evaluate(assembly, setup, loads, exponent)
    room = room_left(assembly, setup, done, limits)
    missed = _sag_missed(assembly, exact, loads.aboard, travel)
    preload = preload_bars(setup, limits)
    vetoes = bars(
        done,
        preload,
        gap_bars(setup, unreachable, limits),
        spring_bars(assembly, room, limits),
        free_sag_bars(done, limits, targets.sag_is_stroke),
        {} if limits.fit is None else limits.fit.vetoes(rates, setup.preload),
        {"sag unreachable": missed & ~preload["preload below"]},
    )
    return Sized(exact, setup, done, room, vetoes, _key(done, targets))


def _sag_missed(assembly: Assembly, exact: Setup, load: Number, travel: Number) -> Flags:
    """True where the wanted sag is not met even before rounding: within a top-out spring's reach preload moves nothing."""
    carried = assembly.end(exact).wheel_force(travel, ISOTHERMAL)
    return np.asarray(np.abs(carried - load) > 1e-6 * load)


def wheel_travel(assembly: Assembly, setup: Setup, targets: Targets) -> Number:
    """The wheel travel at the rider sag wanted.

    Parameters: assembly; setup, of whose end the motion is asked; targets, whose sag [mm] may be along the leg.
    Returns: travel [mm], vertical.
    Raises: nothing.
    Formula: the end's motion.
    Source: geometry.
    Example: see `size`.
    """
    if not targets.sag_is_stroke:
        return targets.sag
    return assembly.end(setup).motion.travel(targets.sag)


def end_missed(end: End, travel: Number, exponent: Number, targets: Targets) -> Array:
    """By how much an end misses its end-of-travel target; above 0 where it is too soft.

    Parameters: end; travel [mm], the rider sag at the wheel; exponent n [-]; targets.
    Returns: a ratio [-].
    Raises: nothing.
    Formula: target / measure - 1: the reciprocal stays tame where the gas runs out.
    Source: none.
    Example: see `size`.
    """
    if targets.end_kind == "energy":
        measure = end.energy(end.travel, Process(exponent))
    else:
        measure = end.wheel_force(end.travel, Process(exponent, end.motion.stroke(travel)))
    return np.asarray(targets.end_amount / measure - 1.0)


def end_root(missing: Callable[[Array], Array], hardest: Array, softest: Array, tolerance: float = 1e-7) -> tuple[Array, Flags]:
    """The amount of what is set for the end of the travel at which nothing is missing, and where none does it.

    Parameters: missing, of `end_missed`, over an amount; hardest, softest amounts and tolerance [all in its unit].
    Returns: amounts, the nearer end where none does it; True there.
    Raises: nothing.
    Formula: a bracketed root.
    Source: none.
    Example: see `size`.
    """
    ends = missing(hardest), missing(softest)
    too_soft, too_stiff = ends[0] > 0, ends[1] < 0
    out = too_soft | too_stiff
    middle = 0.5 * (hardest + softest)
    known = np.where(out, hardest - middle, ends[0]), np.where(out, softest - middle, ends[1])
    root = find_root(lambda amount: np.where(out, amount - middle, missing(amount)), hardest, softest, tolerance, known)
    return np.where(too_soft, hardest, np.where(too_stiff, softest, root)), out


def _gap(
    assembly: Assembly, offer: Setup, loads: Loads, exponent: Number, targets: Targets, travel: Number, lock: Number
) -> tuple[Array, Flags]:
    """The gap that meets the end-of-travel target, and where none does."""
    shape = np.broadcast_shapes(np.shape(offer.rate), np.shape(loads.aboard), np.shape(lock))
    if targets.end_kind == "none":
        return np.zeros(shape), np.zeros(shape, dtype=bool)

    def missing(gap: Array) -> Array:
        trial = replace(offer, gap=gap)
        trial = replace(trial, preload=preload_for_sag(assembly, trial, loads.aboard, travel))
        return end_missed(assembly.end(trial), travel, exponent, targets)

    return end_root(missing, np.array(np.broadcast_to(lock + 0.05, shape)), np.full(shape, DEEPEST_GAP))


def _key(done: Figures, targets: Targets) -> Array:
    if targets.frequency is not None:
        return np.asarray(np.abs(done.frequency - targets.frequency))
    if targets.free_sag is not None:
        return np.asarray(np.abs(done.free.travel - targets.free_sag))
    raise ValueError("targets name neither a frequency nor a free sag")
