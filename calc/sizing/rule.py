"""The choice a bench would make: keep what is in where it is near enough, else the spring that rides nearest to the yardstick."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Flags, Number
from calc.end.targets import Targets
from calc.sizing.coil import Sized
from calc.sizing.criteria import Criterion, Margins, criteria, free_sag_unbounded

WITHIN = 1e-6  # of a step: what is one step away is within one step, whatever its last digits
BARRING_PRESSURE = ("rider sag",)  # of the criteria, what a pressure decides; volumes and oil decide the others


@dataclass(frozen=True, eq=False)
class Yardstick:
    """What a ride is measured by: a frequency [Hz] and where it is from.

    `source` is "standard" (the standard rider on the standard setup), "softest usual" or "stiffest usual" (the edge of the
    usual range, where the standard setup rides outside it by more than its margin), "frequency" or "free sag" (the user's wish).
    """

    frequency: Number
    source: str


@dataclass(frozen=True, eq=False)
class Decision:
    """Candidates judged.

    Parameters: yardstick; key [-] of each candidate, its distance from the yardstick; criteria by name; idle, those that only
    hide a fault (see `_idle`); choice, the index along
    the first axis, -1 where nothing can be built; best, the nearest to the yardstick among those outside nothing, -1 where all are
    outside something; kept, where the choice is what is in; criteria_met, where the choice is outside nothing.
    """

    yardstick: Yardstick
    key: Array
    criteria: Mapping[str, Criterion]
    idle: Flags
    choice: NDArray[np.intp]
    best: NDArray[np.intp]
    kept: Flags
    criteria_met: Flags

    def at_edge(self, index: int) -> list[str]:
        """The criteria whose edge lies within the margin of one candidate."""
        return [name for name, one in self.criteria.items() if one.at_edge[index]]

    def outside(self, index: int) -> list[str]:
        """The criteria that one candidate is outside of."""
        return [name for name, one in self.criteria.items() if one.outside[index]]


def yardstick(sized: Sized, targets: Targets, margins: Margins, source: str | None = None) -> Yardstick:
    """The ride frequency to come near to.

    Parameters: sized, the candidates; targets; margins, of which the standard frequency's is asked; source, where it
    is known which kind of yardstick it is (the same for every draw as for the readings).
    Returns: Yardstick.
    Raises: nothing.
    Formula: the wish; else the standard setup's frequency; else, where that lies outside the usual range by more than its margin,
    the nearest edge of the range.
    Source: common practice, no source.
    Example: see `decide`.
    """
    if targets.wish is not None:
        return Yardstick(targets.wish, "frequency")
    if targets.free_sag is not None:
        return Yardstick(_frequency_of_free_sag(sized, targets), "free sag")
    low, high = targets.windows.frequency
    if source is None:
        standard = float(np.asarray(targets.frequency))
        too_soft, too_stiff = standard + margins.frequency < low, standard - margins.frequency > high
        source = "softest usual" if too_soft else "stiffest usual" if too_stiff else "standard"
    edges: dict[str, Number] = {"softest usual": low, "stiffest usual": high}
    return Yardstick(edges.get(source, targets.frequency), source)


def _frequency_of_free_sag(sized: Sized, targets: Targets) -> Array:
    """The frequency [Hz] of the spring, between those on offer, that leaves the free sag wanted; the nearest one's beyond them.
    Springs so stiff that no preload is left do not count: from there on free sag falls with the rider's.
    """
    free = np.asarray(free_sag_unbounded(sized.figures, targets.sag_is_stroke))
    frequency = np.broadcast_to(sized.figures.frequency, free.shape)
    counts = np.broadcast_to(sized.exact.preload >= 0, free.shape) | (np.arange(len(free)) == 0).reshape(
        -1, *(1,) * (free.ndim - 1)
    )
    columns = [part.reshape(len(free), -1).T for part in (free, frequency, counts)]
    wanted = float(np.asarray(targets.free_sag))
    found = [
        np.interp(wanted, *(part[used][np.argsort(f[used])] for part in (f, rate))) for f, rate, used in zip(*columns, strict=True)
    ]
    return np.asarray(found).reshape(free.shape[1:])


def decide(
    sized: Sized,
    targets: Targets,
    margins: Margins,
    fitted: int | None,
    step: float,
    source: str | None = None,
    called: Array | None = None,
) -> Decision:
    """Judge candidates and choose.

    Parameters: sized, candidates along the first axis; targets; margins; fitted, the index of what is in, None where
    it is not among them; step [N/mm or MPa], within which what is in stays: less than springs sold alike differ by; source, as
    `yardstick`; called [as step], what each candidate is sold as where steps are counted by that, None: as stiff as it is.
    Returns: Decision.
    Raises: nothing.
    Formula: key = |ln(f / f_yardstick)|; hard limits bar, a criterion that is outside, and a spring that rides stiffer than the
    yardstick and leaves no preload (it would cure too much free sag by holding the bike up); what is in stays where it is
    outside nothing and within one step of the smallest key among those outside nothing; else that one; else, where all are outside
    something, the one least outside.
    Source: common practice, no source.
    Example:
        >>> from calc.end.assembly import ShockAssembly
        >>> from calc.end.limits import Limits
        >>> from calc.end.loads import Loads
        >>> from calc.gas.chamber import SteadyCharge, circle
        >>> from calc.motion.ratio import LeverageMotion
        >>> from calc.sizing.coil import size
        >>> from calc.springs.arrangement import SingleSpring
        >>> motion = LeverageMotion(2.5, 0.22, 305.0)
        >>> rear = ShockAssembly(SteadyCharge(1.1, circle(16.0)), SingleSpring(), motion, 305.0, 0.1, 35.0)
        >>> loads, targets = Loads(380.0, 980.0, 9.80665), Targets(104.0, False, "none", 0.0, frequency=1.45)
        >>> sized = size(rear, np.array([46.0, 48.0, 50.0, 52.0]), loads, 1.33, targets, Limits((2.0, 24.0), None))
        >>> [int(decide(sized, targets, Margins(), fitted, 2.0).choice) for fitted in (0, 1, 3)]
        [2, 1, 3]
    """
    measure = yardstick(sized, targets, margins, source)
    judged = criteria(sized.figures, targets, margins)
    key = np.asarray(np.abs(np.log(sized.figures.frequency / measure.frequency)))
    return _decided(measure, key, judged, sized, fitted, step, called=called)


def decide_pressure(sized: Sized, targets: Targets, margins: Margins, fitted: int | None, step: float) -> Decision:
    """`decide` for an air spring, whose pressure is to it what preload is to a coil: the sag decides, not the frequency.
    The end of travel is judged, and bars no pressure: no other one would mend it and keep the sag.

    Parameters: as `decide`; step [MPa], the gauge's; fitted None where the pressure found is not among those on offer.
    Returns: Decision.
    Raises: nothing.
    Formula: key = |ln(p / p_exact)|, p_exact the pressure that gives the rider sag wanted.
    Source: common practice, no source.
    Example: see `tests/unit/sizing/test_air_sizing.py`.
    """
    exact = np.asarray(sized.exact.stepped)
    key = np.asarray(np.abs(np.log(sized.setup.stepped / exact)))
    judged = criteria(sized.figures, targets, margins)
    judged.pop("free sag")  # nothing that is set at an air spring moves it while rider sag is kept: it is told, not judged
    return _decided(Yardstick(targets.frequency, "rider sag"), key, judged, sized, fitted, step, BARRING_PRESSURE)


def _decided(
    measure: Yardstick,
    key: Array,
    judged: Mapping[str, Criterion],
    sized: Sized,
    fitted: int | None,
    step: float,
    barring: Collection[str] | None = None,
    called: Array | None = None,
) -> Decision:
    """`barring`: names of the criteria that bar; None: all. `called` as `decide`."""
    hard, outside, excess = (np.zeros(np.shape(key), dtype=kind) for kind in (bool, bool, float))
    for flag in sized.hard.values():
        hard = hard | flag
    for one in (one for name, one in judged.items() if barring is None or name in barring):
        outside, excess = outside | one.outside, excess + one.excess
    idle = _idle(sized, measure, key, hard, fitted)
    fits = ~hard & ~idle & ~outside & ~_preload_bars(sized, judged["rider sag"])
    best = np.where(np.any(fits, axis=0), np.argmin(np.where(fits, key, np.inf), axis=0), -1)
    nearest = np.argmin(np.where(hard | idle, np.inf, excess + WITHIN * key), axis=0)
    choice = np.where(best >= 0, best, np.where(np.all(hard, axis=0), -1, nearest))
    kept = np.zeros(np.shape(choice), dtype=bool)
    if fitted is not None:
        stepped = np.broadcast_to(sized.setup.stepped if called is None else called, np.shape(key))
        best_step = np.take_along_axis(stepped, np.maximum(best, 0)[None], axis=0)[0]
        near = np.abs(stepped[fitted] - best_step) <= step * (1.0 + WITHIN)
        kept = (fits[fitted] & near) | (choice == fitted)
        choice = np.where(kept, fitted, choice)
    return Decision(measure, key, judged, idle, choice, best, kept, best >= 0)


def _idle(sized: Sized, measure: Yardstick, key: Array, hard: Flags, fitted: int | None) -> Flags:
    """Springs to change to that ride stiffer than the yardstick and ask for less preload than there is, or softer and ask for more;
    not the first one beyond the yardstick on either side, which may lie between it and the one before.
    """
    idle, ride = np.zeros(np.shape(key), dtype=bool), sized.figures.frequency
    for short, beyond in (("preload below", ride > measure.frequency), ("preload above", ride < measure.frequency)):
        side = ~hard & beyond
        idle |= sized.short.get(short, np.False_) & side & (key > np.min(np.where(side, key, np.inf), axis=0))
    if fitted is not None:
        idle[fitted] = False
    return idle


def _preload_bars(sized: Sized, sag: Criterion) -> Flags:
    """A preload that cannot be built bars only where the sag leaves its window for it."""
    missed = sized.short.get("preload below", np.False_) | sized.short.get("preload above", np.False_)
    return np.asarray(missed & sag.outside)
