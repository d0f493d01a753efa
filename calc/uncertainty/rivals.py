"""Rival explanations of a bench push, each adjusted to it first: how likely each is, the gap that fits it, what to read next."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np

from calc.array import Array, Flags
from calc.job import Job, Ranges, Resolved
from calc.model.push_read import Push, as_pushed, moved_ranges, push_read, states_of
from calc.model.pushed import why_not
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.compared import DOUBTFUL
from calc.uncertainty.evidence import Evidence, most_misfit, weighed
from calc.uncertainty.pushing import OF_THE_LEG, Pushing

SURE = 0.95  # of the chances: then a state is told
OUT = 0.05  # of the chances: what has less is no longer in question
APART = 2.0  # standard uncertainties: what two states must differ by for one more reading to tell them apart
_STEP, _FIRST = 5.0, 30.0  # mm, of the curves, and where they begin; every other stroke is one that may be read next
_BESIDE = ("bike.use", "standard.gap")  # what a leg's fields may follow: an edit of all else asks nothing anew
CHARGE_GONE = ("seal leaking", "opened into one")


@dataclass(frozen=True)
class Banded:
    """A value with its 95 % half-width [its internal unit]."""

    value: float
    half: float


@dataclass(frozen=True, eq=False)
class Rival:
    """One state, adjusted to the push.

    Parameters: state, a key; chance [-], of all rivals together 1; fits, whether its misfit is one that happens; fitted [N], what
    it expects at each point, and surprise [-], what each point is off by over what that should scatter by; gap [mm], what the push
    alone makes of the gap last set; gap_now [mm], what the oil of the gap that was read shows by now; moved [mm3], below 0 into the
    cartridge; friction [N], where it is in the reading; None for each that does not fit. curve [N] at the strokes of `PushFound`,
    and off [N], its standard deviation; NaN where hardly any gas is left.
    """

    state: str
    chance: float
    fits: bool
    fitted: Array
    surprise: Array
    gap: Banded | None
    gap_now: Banded | None
    moved: Banded | None
    friction: Banded | None
    curve: Array
    off: Array


@dataclass(frozen=True, eq=False)
class Further:
    """The stroke [mm] at which one more reading tells most: what the two states expect [N] that it tells apart best, and half [N],
    the 95 % half-width of what their difference would scatter by.
    """

    stroke: float
    expected: tuple[tuple[str, float], tuple[str, float]]
    half: float

    @property
    def tells(self) -> bool:
        """Whether that reading would tell them apart."""
        (_, one), (_, other) = self.expected
        return abs(one - other) >= 0.5 * APART * self.half


@dataclass(frozen=True, eq=False)
class PushFound:
    """What a push says.

    Parameters: push; refused, why it says nothing; rivals, likeliest first; strokes [mm] of their curves; further, None where
    nothing is in question; without, the chances [-] of the states that fit once the points are left out that fit none in question,
    None where there is no such point.
    """

    push: Push
    refused: str
    rivals: tuple[Rival, ...] = ()
    strokes: Array = dataclasses.field(default_factory=lambda: np.zeros(0))
    further: Further | None = None
    without: Mapping[str, float] | None = None

    @property
    def states(self) -> tuple[str, ...]:
        """The state that it is, see `settled`; none where that hangs on a point that fits no state in question."""
        told = settled({rival.state: rival.chance for rival in self.rivals if rival.fits})
        return told if self.without is None or settled(self.without) == told else ()

    @property
    def doubtful(self) -> Flags:
        """The points that fit none of the states in question; where none is, the one that fits the likeliest least: it may have
        spoilt the others.
        """
        surprises = [np.abs(rival.surprise) for rival in self.open or self.rivals[:1]]
        if not surprises:
            return np.zeros(len(self.push.strokes), dtype=bool)
        beyond = np.logical_and.reduce([surprise > DOUBTFUL for surprise in surprises])
        return np.asarray(beyond if self.open else beyond & (surprises[0] == np.max(surprises[0])))

    @property
    def open(self) -> tuple[Rival, ...]:
        """The rivals that are still in question."""
        return tuple(rival for rival in self.rivals if rival.fits and rival.chance >= OUT)


@dataclass(frozen=True, eq=False)
class _Weighed:
    """One state in one of its ways, before all are compared."""

    asked: Pushing
    found: Adjusted
    evidence: Evidence

    @property
    def fits(self) -> bool:
        return self.evidence.misfit <= most_misfit(len(self.found.fitted))


def push_found(job: Job) -> PushFound | None:
    """What the bench push of a job says.

    Parameters: job, not drawn.
    Returns: PushFound; None where none is entered.
    Raises: nothing.
    Formula: chance = evidence / sum of evidences: all states equally likely before; oil that moved out or in is one, in two ways.
    Source: H. Jeffreys, Theory of Probability (Oxford 1961), 5.0 (comparing hypotheses by what they made probable).
    Example: see `tests/whole/test_push_verdicts.py`.
    """
    return _found(tuple(found for path, found in job.fields.items() if path.startswith(OF_THE_LEG) or path in _BESIDE), job.ranges)


@lru_cache(maxsize=4)
def _found(fields: tuple[Resolved, ...], ranges: Ranges) -> PushFound | None:
    job = Job({}, {found.field.path: found for found in fields}, ranges=ranges)
    push = push_read(job)
    if push is None:
        return None
    refused = why_not(job, push)
    if refused:
        return PushFound(push, refused)
    ways = weighed_states(job, push)
    if not ways:
        return PushFound(push, "None of the states that this leg may be in can give such a push. Check the strokes and the gap.")
    strokes = np.arange(_FIRST, job.number("front.travel") + 0.5 * _STEP, _STEP)
    rivals = tuple(
        sorted((_rival(state, chance, way, strokes) for state, (chance, way) in ways.items()), key=lambda one: -one.chance)
    )
    found = PushFound(push, "", rivals, strokes)
    without = _without(job, push, ~found.doubtful) if np.any(found.doubtful) else None
    return PushFound(push, "", rivals, strokes, _further(push, found.open, strokes), without)


def _without(job: Job, push: Push, kept: Flags) -> dict[str, float]:
    """The chances of the states that fit the other points alone; none where these are fewer than two."""
    if np.count_nonzero(kept) < 2:
        return {}
    fewer = dataclasses.replace(push, strokes=push.strokes[kept], forces=push.forces[kept])
    return {state: chance for state, (chance, way) in weighed_states(job, fewer).items() if way.fits}


def weighed_states(job: Job, push: Push) -> dict[str, tuple[float, _Weighed]]:
    """Every state that can give such a push: its chance [-], and the likeliest of its ways.

    Parameters: job, not drawn; push.
    Returns: by state.
    Raises: nothing.
    Formula: see `push_found`; a state of several ways has the mean of their evidences.
    Source: see there.
    Example: see `tests/whole/test_push_verdicts.py`.
    """
    likely: dict[str, tuple[float, _Weighed]] = {}
    for state in states_of(job):
        ranges = list(moved_ranges(job).values()) if state == "oil moved" else [None]
        asked = (_weighed(Pushing(as_pushed(job, push, moved), push, state)) for moved in ranges)
        ways = [way for way in asked if way is not None]
        if ways:
            best = max(ways, key=lambda way: way.evidence.log)
            share = sum(math.exp(way.evidence.log - best.evidence.log) for way in ways) / len(ranges)
            likely[state] = best.evidence.log + math.log(share), best
    most = max((log for log, _ in likely.values()), default=0.0)
    whole = sum(math.exp(log - most) for log, _ in likely.values())
    return {state: (math.exp(log - most) / whole, way) for state, (log, way) in likely.items()}


def settled(chances: Mapping[str, float]) -> tuple[str, ...]:
    """What may be told of states with these chances.

    Parameters: chances [-] of the states that fit, by state.
    Returns: the state that is sure, or the two that have lost the charge, which no push may tell apart; nothing where none is.
    Raises: nothing.
    Formula: at least `SURE`, alone or the two together.
    Source: none.
    Example:
        >>> settled({"as built": 0.96, "oil moved": 0.04}), settled({"as built": 0.7, "oil moved": 0.3})
        (('as built',), ())
        >>> settled({"seal leaking": 0.5, "opened into one": 0.49, "oil moved": 0.01})
        ('seal leaking', 'opened into one')
    """
    sure = tuple(state for state, chance in chances.items() if chance >= SURE)
    gone = tuple(state for state in CHARGE_GONE if state in chances)
    return sure or (gone if len(gone) == 2 and sum(chances[state] for state in gone) >= SURE else ())


def _rival(state: str, chance: float, way: _Weighed, strokes: Array) -> Rival:
    curve, off = weighed(way.asked.ahead(way.evidence.draws, strokes), way.evidence.weights)
    _, gap_now, moved, friction = _banded(way)
    if not way.asked.push.sign:
        friction = None  # in the middle of both there is none to be told
    gap, *_ = _banded(_weighed(Pushing(way.asked.job, way.asked.push, state, any_gap=True)))
    return Rival(state, chance, way.fits, way.found.fitted, way.found.surprise, gap, gap_now, moved, friction, curve, off)


def _weighed(asked: Pushing) -> _Weighed | None:
    done = asked.adjusted()
    return None if done is None else _Weighed(asked, *done)


def _banded(way: _Weighed | None) -> list[Banded | None]:
    """What `Pushing.figures` tells, each with its half-width; nothing of a state that does not fit."""
    if way is None or not way.fits:
        return [None] * 4
    middle, off = weighed(way.asked.figures(way.evidence.draws), way.evidence.weights)
    return [None if math.isnan(value) else Banded(float(value), 2.0 * float(half)) for value, half in zip(middle, off, strict=True)]


def _further(push: Push, rivals: tuple[Rival, ...], strokes: Array) -> Further | None:
    """Where those still in question differ most, over what one more reading would scatter by."""
    if len(rivals) < 2:
        return None
    pairs = list(combinations(range(len(rivals)), 2))
    curves = np.stack([rival.curve for rival in rivals])
    steep = np.gradient(curves, _STEP, axis=1)
    scatter = np.stack([rival.off for rival in rivals]) ** 2 + push.force_off**2 + (steep * push.stroke_off) ** 2
    worth = np.stack(
        [rivals[i].chance * rivals[j].chance * (curves[i] - curves[j]) ** 2 / (scatter[i] + scatter[j]) for i, j in pairs]
    )
    whole = np.sum(worth, axis=0)
    readable = (np.round(strokes / _STEP) % 2 == 0) & ~np.isnan(whole)
    if not np.any(readable):
        return None
    at = int(np.argmax(np.where(readable, whole, -1.0)))
    i, j = pairs[int(np.argmax(worth[:, at]))]
    half = 2.0 * float(scatter[i, at] + scatter[j, at]) ** 0.5
    one, other = ((rivals[k].state, float(curves[k, at])) for k in (i, j))
    return Further(float(strokes[at]), (one, other), half)
