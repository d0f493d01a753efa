"""Sizing: for every spring that can be had, the preload and the gap that meet the targets, set to what can be built."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np

from calc.array import Array, Flags, Number, every, find_root, some
from calc.end.assembly import Assembly
from calc.end.end import End
from calc.end.figures import Figures, evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.gas.chamber import ISOTHERMAL, Process
from calc.leg.open import DEEPEST_GAP
from calc.sizing.criteria import Room, coil_bind, room_left, spread_over
from calc.springs.fit import SAME

_NEAR = 1e-4  # mm of gap; the last secant over so little leaves less than 1e-8

__all__ = ["Sized", "end_missed", "end_root", "size", "wheel_travel"]


@dataclass(frozen=True, eq=False)
class Sized:
    """Candidates along the first axis.

    Parameters: exact, the roots; setup, what can be built nearest to them; figures of that; room in its springs; hard, by name,
    what cannot be built whatever is wanted; short, by name, what was wanted and is not reached, or is beyond a limit that
    nobody measured.
    """

    exact: Setup
    setup: Setup
    figures: Figures
    room: Room
    hard: dict[str, Flags] = field(default_factory=dict)
    short: dict[str, Flags] = field(default_factory=dict)


def size(
    assembly: Assembly, rates: Array, loads: Loads, exponent: Number, targets: Targets, limits: Limits, split: Number = 0.0
) -> Sized:
    """Size an end for every rate on offer.

    Parameters: assembly; rates [N/mm], shape (candidates,) or (candidates, 1) against loads of shape (loads,); loads;
    exponent n [-]; targets; limits; split [N/mm] of unequal pairs, beside the rates, which are then their means.
    Returns: Sized. Preload and gap are solved together, then set to the nearest that can be built, rounded to 1 mm; all
    figures are those of what is built.
    Raises: Impossible when a load cannot be carried whatever the spring.
    Formula: preload from sag at n = 1, inside a root over the gap for the end-of-travel target.
    Source: statics.
    Example:
        >>> from calc.motion.ratio import LeverageMotion
        >>> from calc.springs.arrangement import SingleSpring
        >>> from calc.end.assembly import ShockAssembly
        >>> from calc.gas.chamber import SteadyCharge, circle
        >>> motion = LeverageMotion(2.5, 0.22, 305.0)
        >>> rear = ShockAssembly(SteadyCharge(1.1, circle(16.0)), SingleSpring(), motion, 305.0, 0.1, 35.0)
        >>> loads = Loads(380.0, 980.0, 9.80665)
        >>> sized = size(rear, np.array([46.0, 48.0, 50.0]), loads, 1.33, Targets(104.0, False, "none", 0.0),
        ...     Limits((2.0, 24.0), None))
        >>> [round(float(t)) for t in sized.figures.rider.travel]
        [104, 103, 103]
    """
    offer = Setup(rates, 0.0, DEEPEST_GAP, split)
    travel = wheel_travel(assembly, offer, targets)
    lock = assembly.lock_gap(offer)
    gap, unreachable = _gap(assembly, offer, loads, exponent, targets, travel, lock, limits)
    offer = replace(offer, gap=gap)
    exact = replace(offer, preload=preload_for_sag(assembly, offer, loads.aboard, travel))
    setup = replace(exact, preload=_buildable_preload(exact, limits), gap=_buildable_gap(gap, lock, limits))
    done = evaluate(assembly, setup, loads, exponent)
    room = room_left(assembly, setup, done, limits)
    hard = coil_bind(assembly, room, limits) | ({} if limits.fit is None else limits.fit.vetoes(rates))
    short = _preload_short(exact, setup, limits, _sag_off(done, targets)) | _gap_short(gap, setup, unreachable, limits)
    short["sag unreachable"] = _sag_missed(assembly, exact, loads.aboard, travel)
    return Sized(exact, setup, done, room, spread_over(done, hard), spread_over(done, short))


def _sag_missed(assembly: Assembly, exact: Setup, load: Number, travel: Number) -> Flags:
    """True where the wanted sag is not met even before rounding: within a top-out spring's reach preload moves nothing."""
    carried = assembly.end(exact).wheel_force(travel, ISOTHERMAL)
    return np.asarray((np.abs(carried - load) > 1e-6 * load) & (exact.preload >= 0))


def _buildable_preload(exact: Setup, limits: Limits) -> Array:
    """The nearest whole millimetre that can be built."""
    least, most = limits.preload_between(exact.rate)
    lowest, highest = np.ceil(least - SAME), np.floor(most + SAME)
    return np.asarray(np.maximum(np.minimum(np.round(exact.preload), highest), np.minimum(lowest, highest)) + 0.0)


def _buildable_gap(gap: Array, lock: Number, limits: Limits) -> Array:
    """The nearest whole millimetre inside the limits; where rounding down would lock the leg, up."""
    if limits.gap is None:
        return np.zeros(np.shape(gap))
    whole = np.round(np.clip(gap, *limits.gap))
    return np.where(whole > lock, whole, np.ceil(np.maximum(gap, lock + SAME)))


def _sag_off(done: Figures, targets: Targets) -> Array:
    """Rider sag above the one wanted [mm], in its own measure."""
    return np.asarray((done.rider.stroke if targets.sag_is_stroke else done.rider.travel) - targets.sag)


def _preload_short(exact: Setup, setup: Setup, limits: Limits, off: Array) -> dict[str, Flags]:
    """Where the preload wanted is not the one that can be built and the sag is missed (`off` [mm]) for it, or where what is built
    lies beyond a limit that nobody measured. A gap that is limited too may move the sag the other way.
    """
    wanted = np.round(exact.preload)
    return {
        "preload below": np.asarray((wanted < setup.preload - SAME) & (off < 0)),
        "preload above": np.asarray((wanted > setup.preload + SAME) & (off > 0)),
        "preload low": np.asarray(setup.preload < limits.preload[0] - SAME),
        "preload high": np.asarray(setup.preload > limits.preload[1] + SAME),
    }


def _gap_short(gap: Array, setup: Setup, unreachable: Flags, limits: Limits) -> dict[str, Flags]:
    """Where no gap meets the end-of-travel target, or the one that does is beyond the limits."""
    if limits.gap is None:
        return {}
    return {
        "end unreachable": unreachable,
        "gap below": ~unreachable & np.asarray(np.round(gap) < setup.gap - SAME),
        "gap above": ~unreachable & np.asarray(np.round(gap) > setup.gap + SAME),
    }


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


def end_root(missing: Callable[[Array], Array], hardest: Array, softest: Array, tolerance: float = _NEAR) -> tuple[Array, Flags]:
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
    assembly: Assembly, offer: Setup, loads: Loads, exponent: Number, targets: Targets, travel: Number, lock: Number, limits: Limits
) -> tuple[Array, Flags]:
    """The gap that meets the end-of-travel target with the preload that can be built, or the one that is in where that is near
    enough; and where none does.
    """
    least, most = limits.preload_between(offer.rate)
    shape = np.broadcast_shapes(np.shape(offer.rate), np.shape(loads.aboard), np.shape(lock))
    if targets.end_kind == "none":
        return np.zeros(shape), np.zeros(shape, dtype=bool)

    def missing(gap: Array) -> Array:
        trial = replace(offer, gap=gap)
        preload = preload_for_sag(assembly, trial, loads.aboard, travel)
        trial = replace(trial, preload=np.maximum(np.minimum(preload, most), least))
        return end_missed(assembly.end(trial), travel, exponent, targets)

    was, can = _may_stay(targets, limits, lock, shape)
    decided = targets.gap_stays is not None
    if decided and every(can):  # nothing is left to be solved for
        return was, np.zeros(shape, dtype=bool)
    root, out = end_root(missing, np.array(np.broadcast_to(lock + 0.05, shape)), np.full(shape, DEEPEST_GAP))
    if not some(can):
        return root, out
    stays = can if decided else can & gap_stays(missing(np.where(can, was, DEEPEST_GAP)), targets, loads.aboard)
    return np.where(stays, was, root), out & ~stays


def _may_stay(targets: Targets, limits: Limits, lock: Number, shape: tuple[int, ...]) -> tuple[Array, Flags]:
    """The gap that is in, and where it can be built again, or was decided to stay."""
    if targets.gap_found is None or limits.gap is None:
        return np.zeros(shape), np.zeros(shape, dtype=bool)
    was = np.broadcast_to(targets.gap_found, shape)
    can = (was > lock + SAME) & (np.round(was) >= limits.gap[0]) & (np.round(was) <= limits.gap[1])
    return was, can if targets.gap_stays is None else can & targets.gap_stays


def gap_stays(off: Array, targets: Targets, load: Number) -> Flags:
    """Tell where the gap that is in is near enough to stay, or was decided to.

    Parameters: off [-], by how much the end of travel misses its target there, see `end_missed`; targets, a force; load [N], rider
    aboard.
    Returns: True where it stays.
    Raises: nothing.
    Formula: F / F_wanted - 1 between -gap_within[0] and gap_within[1], and F over the load no less than the least.
    Source: common practice, no source.
    Example: see `tests/unit/sizing/test_gap_stays.py`.
    """
    if targets.gap_stays is not None:
        return targets.gap_stays
    (short, over), force = targets.gap_within, targets.end_amount / (1.0 + off)
    ratio = force / targets.end_amount - 1.0
    return np.asarray((ratio >= -short) & (ratio <= over) & (force >= targets.windows.end_multiple * load))
