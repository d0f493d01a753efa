"""Sizing: for every spring that can be had, the preload and gap that meet the targets; vetoes; one key; the choice."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Flags, Number
from calc.assembly import Assembly
from calc.gas.chamber import SLOW, Pace
from calc.leg.open import DEEPEST_GAP
from calc.roots import find_root
from calc.setup import Figures, Loads, Setup, evaluate
from calc.springs.fit import SAME, Fit
from calc.springs.helical import coil_bind_clearance

SERIES_FROM, SERIES_TO = 0.5, 1.8  # times the fitted rate: where a series is tried


@dataclass(frozen=True)
class Targets:
    """What is wanted.

    Parameters: sag [mm] of rider sag: along the leg at the front (`sag_is_stroke`), vertical at the rear; end_kind
    "force" [N], "energy" [N mm] or "none"; end_amount in that unit; frequency [Hz] that the front's key measures from,
    or free_sag [mm, vertical] that the rear's key measures from.
    """

    sag: Number
    sag_is_stroke: bool
    end_kind: str
    end_amount: Number
    frequency: Number | None = None
    free_sag: Number | None = None


@dataclass(frozen=True)
class Limits:
    """What can be built. Lengths in mm; `solid` None: coil bind is not checked. Free-sag window in the sag's own measure."""

    preload: tuple[float, float]
    gap: tuple[float, float] | None
    free_sag: tuple[float, float] | None
    free_length: Number | None = None
    solid_length: Number | None = None
    bind_margin: float = 0.0
    fit: Fit | None = None


@dataclass(frozen=True)
class Sized:
    """Candidates along the first axis: the exact roots, the rounded setup, its figures, vetoes by name, and the key."""

    exact: Setup
    setup: Setup
    figures: Figures
    bind: Number | None
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


def series(step: float, fitted: float) -> Array:
    """The rates of a stepped series that are worth trying.

    Parameters: step [N/mm], > 0; fitted rate [N/mm], > 0.
    Returns: rates [N/mm], ascending: multiples of the step around the fitted rate.
    Raises: nothing.
    Formula: multiples of the step from 0.5 to 1.8 times the fitted rate.
    Source: springs are sold in steps; common practice, no source.
    Example:
        >>> [float(r) for r in series(0.5, 2.0)]
        [1.0, 1.5, 2.0, 2.5, 3.0, 3.5]
    """
    first, last = np.ceil(SERIES_FROM * fitted / step), np.floor(SERIES_TO * fitted / step)
    return np.round(np.arange(first, last + 1) * step, 6)


def offers(rates: Array, pairs: bool, fitted: float, fitted_split: float = 0.0) -> tuple[Array, Array]:
    """The springs on offer, the fitted ones among them, so that "leave it" can be the answer.

    Parameters: rates [N/mm] that can be had; pairs, whether two neighbours may go one in each leg; fitted rate [N/mm], their
    mean where the legs differ; fitted_split [N/mm], half of what the fitted right one is above the left one.
    Returns: rates [N/mm], ascending, each the mean of its two legs; and the split [N/mm] of each.
    Raises: nothing.
    Formula: mean and half the difference of neighbours. What is fitted takes the place of an offer of the same mean.
    Source: none.
    Example:
        >>> [part.round(2).tolist() for part in offers(np.array([4.2, 4.6]), True, 4.5)]
        [[4.2, 4.4, 4.5, 4.6], [0.0, 0.2, 0.0, 0.0]]
    """
    means, splits = np.sort(rates), np.zeros(len(rates))
    if pairs:
        halves = 0.5 * np.diff(means)
        means, splits = np.append(means, means[:-1] + halves), np.append(splits, halves)
    other = ~np.isclose(means, fitted, rtol=1e-6)
    same = np.append(means[~other], fitted)[0]  # as it is offered, where it is
    means, splits = np.append(means[other], same), np.append(splits[other], fitted_split)
    order = np.argsort(means)
    return means[order], splits[order]


def preload_for_sag(assembly: Assembly, rate: Number, gap: Number, load: Number, travel: Number) -> Number:
    """Preload that puts an end at a sag.

    Parameters: assembly; rate [N/mm]; gap [mm]; load [N], vertical; travel [mm], the sag at the wheel.
    Returns: preload [mm]; below 0 it cannot be built, and the line of a loose spring is followed on.
    Raises: nothing.
    Formula: wheel force (n = 1) at the sag = load, so p = (the springs' shortening under what gas does not carry) - s.
    Source: statics.
    Example: see `size`.
    """
    bare = assembly.end(rate, 0.0 * np.asarray(rate), gap)
    each = (load - bare.gas_wheel_force(travel, SLOW)) / (assembly.springs * bare.motion.ratio(travel))
    return assembly.arrangement.shortened_by(rate, each) - bare.motion.stroke(travel)


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
        >>> from calc.arrangement import SingleSpring
        >>> from calc.assembly import ShockAssembly
        >>> from calc.gas.chamber import SteadyCharge, circle
        >>> motion = LeverageMotion(2.5, 0.22, 305.0)
        >>> rear = ShockAssembly(SteadyCharge(1.1, circle(16.0)), SingleSpring(), motion, 305.0, 0.1, 35.0)
        >>> loads = Loads(380.0, 980.0, 9.80665)
        >>> sized = size(rear, np.array([46.0, 48.0, 50.0]), loads, 1.33, Targets(104.0, False, "none", 0.0, free_sag=30.0),
        ...     Limits((2.0, 24.0), None, None))
        >>> [round(float(t)) for t in sized.figures.rider.travel]
        [104, 103, 103]
    """
    assembly = assembly.paired(split)
    travel = _wheel_travel(assembly, rates, targets)
    lock = assembly.lock_gap(rates)
    gap, unreachable = _gap(assembly, rates, loads, exponent, targets, travel, lock)
    exact = Setup(rates, preload_for_sag(assembly, rates, gap, loads.aboard, travel), gap, split)
    whole = np.round(gap)  # where rounding down would lock the leg, up
    setup = Setup(rates, np.round(exact.preload) + 0.0, np.where(whole > lock, whole, np.ceil(gap)), split)
    done = evaluate(assembly, setup, loads, exponent)
    stroke = done.end.motion.stroke(done.end.travel)
    bind = _bind(limits, rates, assembly.arrangement.main_shortened(rates, setup.preload + stroke))
    vetoes = _vetoes(setup, done, bind, unreachable, limits, targets.sag_is_stroke)
    if limits.fit is not None:
        shape = np.shape(done.frequency)
        vetoes |= {name: np.broadcast_to(veto, shape) for name, veto in limits.fit.vetoes(rates, setup.preload).items()}
    vetoes["sag unreachable"] = _sag_missed(assembly, exact, loads.aboard, travel) & ~vetoes["preload below"]
    return Sized(exact, setup, done, bind, vetoes, _key(done, targets))


def _bind(limits: Limits, rates: Array, shortened: Number) -> Number | None:
    """Room left before the coils touch; None (one spring among others: infinite) where a length is not known."""
    free, solid, fit = limits.free_length, limits.solid_length, limits.fit
    if fit is not None and fit.free is not None and fit.solid is not None:
        own = coil_bind_clearance(fit.free, fit.solid, shortened)
        unknown = free is None or solid is None
        fitted = np.inf if unknown else coil_bind_clearance(free, solid, shortened)  # type: ignore[arg-type]
        return np.where(fit.fitted(rates), fitted, own)
    return None if free is None or solid is None else coil_bind_clearance(free, solid, shortened)


def _sag_missed(assembly: Assembly, exact: Setup, load: Number, travel: Number) -> Flags:
    """True where the wanted sag is not met even before rounding: within a top-out spring's reach preload moves nothing."""
    carried = assembly.end(exact.rate, exact.preload, exact.gap).wheel_force(travel, SLOW)
    return np.asarray(np.abs(carried - load) > 1e-6 * load)


def _wheel_travel(assembly: Assembly, rates: Array, targets: Targets) -> Number:
    if not targets.sag_is_stroke:
        return targets.sag
    return assembly.end(rates, 0.0, DEEPEST_GAP).motion.travel(targets.sag)


def _gap(
    assembly: Assembly, rates: Array, loads: Loads, exponent: Number, targets: Targets, travel: Number, lock: Number
) -> tuple[Array, Flags]:
    """The gap that meets the end-of-travel target, and where none does."""
    shape = np.broadcast_shapes(np.shape(rates), np.shape(loads.aboard), np.shape(lock))
    if targets.end_kind == "none":
        return np.zeros(shape), np.zeros(shape, dtype=bool)

    def missing(gap: Array) -> Array:
        preload = preload_for_sag(assembly, rates, gap, loads.aboard, travel)
        end = assembly.end(rates, preload, gap)
        if targets.end_kind == "energy":
            measure = end.energy(end.travel, Pace(exponent))
        else:
            measure = end.wheel_force(end.travel, Pace(exponent, end.motion.stroke(travel)))
        return np.asarray(targets.end_amount / measure - 1.0)  # the reciprocal stays tame where the gas runs out

    low = np.broadcast_to(lock + 0.05, shape)
    high = np.full(shape, DEEPEST_GAP)
    too_soft, too_stiff = missing(low) > 0, missing(high) < 0
    out = too_soft | too_stiff
    root = find_root(lambda gap: np.where(out, gap - 0.5 * (low + high), missing(gap)), low, high, 1e-7)
    return np.where(too_soft, low, np.where(too_stiff, high, root)), out


def _vetoes(
    setup: Setup, done: Figures, bind: Number | None, unreachable: Flags, limits: Limits, sag_is_stroke: bool
) -> dict[str, Flags]:
    vetoes = {
        "preload below": np.asarray(setup.preload < limits.preload[0] - SAME),
        "preload above": np.asarray(setup.preload > limits.preload[1] + SAME),
    }
    if limits.gap is not None:
        vetoes["end unreachable"] = unreachable
        vetoes["gap below"] = ~unreachable & (np.asarray(setup.gap) < limits.gap[0] - SAME)
        vetoes["gap above"] = ~unreachable & (np.asarray(setup.gap) > limits.gap[1] + SAME)
    if bind is not None:
        vetoes["coil bind"] = np.asarray(bind < limits.bind_margin - SAME)
    if limits.free_sag is not None:
        free = np.asarray(done.free.stroke if sag_is_stroke else done.free.travel)
        vetoes["free sag below"] = free < limits.free_sag[0] - SAME
        vetoes["free sag above"] = free > limits.free_sag[1] + SAME
    return {name: np.broadcast_to(veto, np.shape(done.frequency)) for name, veto in vetoes.items()}


def _key(done: Figures, targets: Targets) -> Array:
    if targets.frequency is not None:
        return np.asarray(np.abs(done.frequency - targets.frequency))
    if targets.free_sag is not None:
        return np.asarray(np.abs(done.free.travel - targets.free_sag))
    raise ValueError("targets name neither a frequency nor a free sag")
