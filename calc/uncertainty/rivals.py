"""Rival explanations of a bench push, each adjusted to it first: how likely each is, what it makes of the gap, which stroke to try next."""

from __future__ import annotations

import dataclasses
import math

from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np

from calc.array import Array
from calc.job import Job, Ranges, Resolved
from calc.model.pushed import Push, as_pushed, moved_ranges, push_read, states_of, why_not
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.evidence import Evidence, most_misfit, weighed
from calc.uncertainty.pushing import Pushing

SURE = 0.95  # of the chances: then a state is told
OUT = 0.05  # of the chances: what has less is no longer in question
APART = 2.0  # standard uncertainties: what two states must differ by for one more reading to tell them apart
_STEP = 5.0  # mm, of the curves; every other stroke is one that may be read next
_CHARGE_GONE = {"seal leaking", "opened into one"}


@dataclass(frozen=True)
class Told:
    """A value with its 95 % half-width [its internal unit]."""

    value: float
    half: float


@dataclass(frozen=True, eq=False)
class Rival:
    """One state, adjusted to the push.

    Parameters: state, a key; chance [-], of all rivals together 1; fits, whether its misfit is one that happens; fitted [N], what
    it expects at each point, and surprise [-], what each point is off by over what that should scatter by; gap and gap_now [mm],
    which the push alone makes of the gap last set and what the same oil shows by now; moved [mm3], below 0 into the cartridge;
    friction [N]; curve, off [N] at the strokes of `PushFound`, standard deviation beside it, NaN where hardly any gas is left.
    """

    state: str
    chance: float
    fits: bool
    fitted: Array
    surprise: Array
    gap: Told | None
    gap_now: Told | None
    moved: Told | None
    friction: Told
    curve: Array
    off: Array


@dataclass(frozen=True, eq=False)
class Further:
    """The stroke [mm] at which one more reading tells most: what the two likeliest states that differ there expect [N], and apart
    [-], by how much over what such a reading scatters by.
    """

    stroke: float
    expected: tuple[tuple[str, float], ...]
    apart: float


@dataclass(frozen=True, eq=False)
class PushFound:
    """What a push says.

    Parameters: push; refused, why it says nothing; rivals, likeliest first; strokes [mm] of their curves; further, None where nothing
    is in question.
    """

    push: Push
    refused: str
    rivals: tuple[Rival, ...] = ()
    strokes: Array = dataclasses.field(default_factory=lambda: np.zeros(0))
    further: Further | None = None

    @property
    def told(self) -> tuple[str, ...]:
        """The state that it is, or those two that no push tells apart; empty where it cannot be told."""
        fitting = [rival for rival in self.rivals if rival.fits]
        if fitting and fitting[0] is self.rivals[0] and fitting[0].chance >= SURE:
            return (fitting[0].state,)
        gone = [rival for rival in fitting if rival.state in _CHARGE_GONE]
        return tuple(rival.state for rival in gone) if len(gone) > 1 and sum(rival.chance for rival in gone) >= SURE else ()

    @property
    def open(self) -> tuple[Rival, ...]:
        """The rivals that are still in question."""
        return tuple(rival for rival in self.rivals if rival.fits and rival.chance >= OUT)


@dataclass(frozen=True, eq=False)
class _Weighed:
    """One state in one of its ways, before all are compared."""

    asked: Pushing
    found: Adjusted
    told: Evidence


def push_found(job: Job) -> PushFound | None:
    """What the bench push of a job says.

    Parameters: job, not drawn.
    Returns: PushFound; None where none is entered.
    Raises: nothing.
    Formula: chance = evidence / sum of evidences: all states equally likely before; oil that moved out or in is one state in two ways.
    Source: H. Jeffreys, Theory of Probability (Oxford 1961), 5.0 (comparing hypotheses by what they made probable).
    Example: see `tests/whole/test_push_verdicts.py`.
    """
    return _found(tuple(job.fields.values()), job.ranges)


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
    strokes = np.arange(2.0 * _STEP, job.number("front.travel") + 0.5 * _STEP, _STEP)
    rivals = tuple(
        sorted((_rival(state, chance, way, strokes) for state, (chance, way) in ways.items()), key=lambda one: -one.chance)
    )
    found = PushFound(push, "", rivals, strokes)
    return PushFound(push, "", rivals, strokes, _further(push, found.open, strokes))


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
        asked = [Pushing(as_pushed(job, push, moved), push, state) for moved in ranges]
        ways = [_Weighed(one, *done) for one in asked if (done := one.adjusted()) is not None]
        if ways:
            best = max(ways, key=lambda way: way.told.log)
            share = sum(math.exp(way.told.log - best.told.log) for way in ways) / len(ranges)
            likely[state] = best.told.log + math.log(share), best
    most = max((log for log, _ in likely.values()), default=0.0)
    whole = sum(math.exp(log - most) for log, _ in likely.values())
    return {state: (math.exp(log - most) / whole, way) for state, (log, way) in likely.items()}


def _rival(state: str, chance: float, way: _Weighed, strokes: Array) -> Rival:
    curve, off = weighed(way.asked.ahead(way.told.draws, strokes), way.told.weights)
    _, _, moved, friction = _told(way.asked, way.told)
    alone = Pushing(way.asked.job, way.asked.push, state, any_gap=True)
    by_push = alone.adjusted()
    gap, gap_now, *_ = (None, None) if by_push is None else _told(alone, by_push[1])
    assert friction is not None
    fits = way.told.misfit <= most_misfit(len(way.found.fitted))
    return Rival(state, chance, fits, way.found.fitted, way.found.surprise, gap, gap_now, moved, friction, curve, off)


def _told(asked: Pushing, told: Evidence) -> list[Told | None]:
    middle, off = weighed(asked.told(told.draws), told.weights)
    return [
        None if math.isnan(value) else Told(float(value), 2.0 * float(half)) for value, half in zip(middle, off, strict=True)
    ]


def _further(push: Push, rivals: tuple[Rival, ...], strokes: Array) -> Further | None:
    """Where those still in question differ most, over what one more reading would scatter by."""
    if len(rivals) < 2:
        return None
    pairs = list(combinations(range(len(rivals)), 2))
    curves = np.stack([rival.curve for rival in rivals])
    with np.errstate(invalid="ignore"):
        steep = np.gradient(curves, _STEP, axis=1)
        scatter = np.stack([rival.off for rival in rivals]) ** 2 + push.force_off**2 + (steep * push.stroke_off) ** 2
        apart = np.stack([(curves[i] - curves[j]) ** 2 / (scatter[i] + scatter[j]) for i, j in pairs])
    worth = np.array([rivals[i].chance * rivals[j].chance for i, j in pairs]) @ apart
    worth[(np.round(strokes / _STEP) % 2 > 0) | np.isnan(worth)] = -1.0
    at = int(np.argmax(worth))
    if worth[at] < 0:
        return None
    i, j = pairs[int(np.argmax(apart[:, at] * np.array([rivals[i].chance * rivals[j].chance for i, j in pairs])))]
    expected = tuple((rivals[k].state, float(curves[k, at])) for k in (i, j))
    return Further(float(strokes[at]), expected, float(max(apart[:, at]) ** 0.5) if len(pairs) == 1 else float(apart[pairs.index((i, j)), at] ** 0.5))
