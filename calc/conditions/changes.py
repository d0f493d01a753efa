"""Hot, high and others: what a built setup does under other conditions, and which gap would restore it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from calc.array import Array, Number
from calc.conditions.equivalent_gap import gap_for_end_force
from calc.end.assembly import Assembly
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.gas.atmosphere import STANDARD_GRAVITY, pressure_at
from calc.impossible import Impossible
from calc.job import Job
from calc.model import aboard, alone, conditions, end_loads, fork, shock
from calc.model.conditions import Conditions
from calc.practice import Axle

HOME = "as built"
SAME_HEIGHT = 25e3  # mm: within 25 m the air presses alike to 0.3 %


@dataclass(frozen=True, eq=False)
class Condition:
    """One condition: a key, the conditions of the legs, and the end's loads."""

    key: str
    at: Conditions
    loads: Loads


@dataclass(frozen=True, eq=False)
class UnderCondition:
    """A built setup under one condition.

    `acts_like` [mm] is the change of gap that would raise the end force as much at home, below 0 for less gap;
    `restoring` [mm] the gap that brings the end force over the load back here. None where there is no gap, or none does it.
    """

    key: str
    figures: Figures | None
    problem: Impossible | None
    acts_like: float | None
    restoring: float | None


def conditions_of(job: Job, axle: Axle) -> list[Condition]:
    """The conditions of a job: as built; a fork hot, high, bled there, hot and high, where that is elsewhere; another rider;
    luggage.

    A shock's gas is sealed, and its few newtons of ambient pressure show nowhere: the rear has no hot and high rows.

    Parameters: job; axle, "front" or "rear".
    Returns: a Condition per condition, "as built" first.
    Raises: Impossible where the loads cannot be.
    Formula: none.
    Source: ISO 2533 for the high place's pressure.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> [place.key for place in conditions_of(load(jobs()["enduro"]), "rear")]
        ['as built']
    """
    at, loads = conditions(job), end_loads(job, axle)
    found = [Condition(HOME, at, loads)]
    if axle == "front":
        high, hot = pressure_at(job.value("conditions.high_altitude")), job.value("conditions.hot_temperature")
        bled_there = Condition("high, bled there", at.ridden(ambient=high).bled_there(), loads)
        found.append(Condition("hot", at.ridden(temperature=hot), loads))
        if _ridden_high(job):
            found.append(bled_there)
        else:
            hot_there = Condition("hot and high", at.ridden(ambient=high, temperature=hot), loads)
            found += [Condition("high", at.ridden(ambient=high), loads), bled_there, hot_there]
    if job.known("conditions.rider"):
        found.append(Condition("other rider", at, end_loads(job, axle, job.value("conditions.rider"))))
    if job.known("conditions.luggage"):
        found.append(Condition("luggage", at, _with_luggage(job, axle, loads)))
    return found


def _ridden_high(job: Job) -> bool:
    """Whether the bike is ridden as high as the high place: then "as built" and "hot" are there already."""
    named = job.entered("place.ridden_altitude") and not job.known("place.ridden_pressure")
    return named and abs(job.number("place.ridden_altitude") - job.number("conditions.high_altitude")) < SAME_HEIGHT


def _with_luggage(job: Job, axle: Axle, loads: Loads) -> Loads:
    """The loads with luggage put on: it is there with the bike alone too."""
    mass, share = job.value("conditions.luggage"), job.value("conditions.luggage_front_share")
    added = [getattr(axles(job).plus(mass, share), axle) - getattr(axles(job), axle) for axles in (alone, aboard)]
    return Loads(loads.alone + added[0] * STANDARD_GRAVITY, loads.aboard + added[1] * STANDARD_GRAVITY, loads.gravity)


def under_conditions(job: Job, axle: Axle, setup: Setup) -> list[UnderCondition]:
    """Look at a built setup under every condition of the job.

    Parameters: job; end; setup as built, scalars.
    Returns: a UnderCondition per condition, "as built" first; none where the job names no other.
    Raises: nothing: a condition that cannot be has its problem.
    Formula: `acts_like` and `restoring` are roots over the gap of the end force over the static rider load.
    Source: gas law and oil expansion of `calc.gas.warm`; ISO 2533 for altitude.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> rows = under_conditions(load(jobs()["enduro"]), "front", Setup(4.6, 3.0, 120.0))
        >>> [row.key for row in rows][:2]
        ['as built', 'hot']
    """
    every = conditions_of(job, axle)
    return _seen(job, axle, setup, every[0], every) if len(every) > 1 else []


def _seen(job: Job, axle: Axle, setup: Setup, home: Condition, those: Sequence[Condition]) -> list[UnderCondition]:
    """All at once, one place a column; one by one where some cannot be."""
    try:
        done = Several(those).figures(job, axle, setup)
        built = Several([home]).figures(job, axle, setup).end_multiple
    except Impossible as problem:
        if len(those) == 1:
            return [UnderCondition(those[0].key, None, problem, None, None)]
        return [row for place in those for row in _seen(job, axle, setup, home, [place])]
    none: list[float | None] = [None] * len(those)
    like = restoring = none
    if axle == "front" and setup.air is None:  # an air spring is pumped, not opened
        at_home = [replace(home, key=place.key) for place in those]
        like = _gaps(job, setup, at_home, done.end_force)
        restoring = _gaps(job, setup, those, built * Several(those).loads.aboard)
    rows = []
    for i, place in enumerate(those):
        gap = like[i]
        change = None if gap is None or place.key == home.key else gap - float(setup.gap)
        rows.append(UnderCondition(place.key, done.at(i), None, change, None if place.key == home.key else restoring[i]))
    return rows


def _gaps(job: Job, setup: Setup, those: Sequence[Condition], forces: Number) -> list[float | None]:
    """The gap [mm] at each place at which the setup's end force is that place's of `forces` [N]; None where no gap gives it."""
    try:
        return [float(gap) for gap in np.atleast_1d(Several(those).gaps(job, setup, forces))]
    except Impossible:
        if len(those) == 1:
            return [None]
        one_by_one = np.broadcast_to(forces, len(those))
        return [gap for place, force in zip(those, one_by_one, strict=True) for gap in _gaps(job, setup, [place], force)]


@dataclass(frozen=True, eq=False)
class Several:
    """Several places at once: along the first axis of everything, draws along the next."""

    places: Sequence[Condition]

    @property
    def at(self) -> Conditions:
        """The conditions of all."""
        return Conditions(
            **{part.name: _stacked([getattr(place.at, part.name) for place in self.places]) for part in fields(Conditions)}
        )

    @property
    def loads(self) -> Loads:
        """The loads of all."""
        alone_, aboard_ = (_stacked([getattr(place.loads, part) for place in self.places]) for part in ("alone", "aboard"))
        return Loads(alone_, aboard_, self.places[0].loads.gravity)

    def figures(self, job: Job, axle: Axle, setup: Setup) -> Figures:
        """What a setup does at all of them."""
        at = self.at
        assembly: Assembly = fork(job, at) if axle == "front" else shock(job, at)
        return evaluate(assembly, setup, self.loads, at.exponent)

    def gaps(self, job: Job, setup: Setup, forces: Number) -> Array:
        """The gap [mm] at each at which the setup's end force is one of `forces` [N]; Impossible where any has none."""
        at = self.at
        return gap_for_end_force(fork(job, at), setup, self.loads, at.exponent, forces)


def _stacked(values: Sequence[Number]) -> Array:
    return np.stack(np.broadcast_arrays(*values))
