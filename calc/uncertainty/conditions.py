"""How sure: hot, high, elsewhere. Every condition on the same draws, so that a change from as built has a +/- of its own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from calc.array import Array
from calc.conditions.changes import Condition, Several, conditions_of
from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import drawn, half_widths
from calc.model.inputs import end_inputs
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.uncertainty.tolerance import TOLERANCES, with_tolerance, with_workmanship


@dataclass(frozen=True, eq=False)
class Sure:
    """One condition: 95 % half-widths in internal units, by name, `change_...` against as built; how many draws were left out.

    A figure that not every draw has (a gap that none gives) has no half-width.
    """

    halves: Mapping[str, float]
    left_out: int


def condition_bands(job: Job, axle: Axle, setup: Setup | None) -> dict[str, Sure]:
    """The +/- of every figure of `calc.conditions.changes.seen`.

    Parameters: job; end; setup as recommended, scalars, drawn with the bench's tolerance; None: as found, drawn as it was read.
    Returns: a Sure by the condition's key; none where the job names no other condition, or for one that no draw can be at.
    Raises: nothing.
    Formula: quantiles of Latin-hypercube draws; a change is taken draw by draw.
    Source: JCGM 101:2008 (propagation of distributions).
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> sure = condition_bands(load(jobs()["enduro"]), "front", Setup(4.6, 3.0, 120.0))
        >>> sure["hot"].halves["change_end_force"] < sure["hot"].halves["end_force"]
        True
    """
    keys = [place.key for place in conditions_of(job, axle)]
    if len(keys) < 2:
        return {}
    draws = with_tolerance(drawn(job))
    try:
        return _sure(_Built.at(draws, axle, setup, keys), axle, 0)
    except Impossible:  # what cannot be built at home cannot be elsewhere; what is left is looked at condition by condition
        good, left_out, _ = survivors(draws, draws.draws, lambda some: _Built.at(some, axle, setup, keys[:1]))
        return {key: sure for key in keys for sure in _alone(good, axle, setup, key, left_out)} if left_out < draws.draws else {}


def _alone(draws: Job, axle: Axle, setup: Setup | None, key: str, left_out: int) -> list[Sure]:
    """One condition by itself, on the draws that can be at it; `left_out` before."""
    good, more, whole = survivors(draws, draws.draws - left_out, lambda some: _Built.at(some, axle, setup, [key]))
    if left_out + more == draws.draws:
        return []
    return [_sure(whole or _Built.at(good, axle, setup, [key]), axle, left_out + more)[key]]


@dataclass(frozen=True, eq=False)
class _Built:
    """A setup on all draws of a job, as built and then under conditions of some keys, along the first axis."""

    draws: Job
    setup: Setup
    those: Sequence[Condition]
    done: Figures
    keys: Sequence[str]

    @classmethod
    def at(cls, draws: Job, axle: Axle, setup: Setup | None, keys: Sequence[str]) -> _Built:
        """Under the conditions of these keys; Impossible where any draw cannot be."""
        count = np.size(draws.samples[TOLERANCES[0]])
        home, *others = (_spread(place, count) for place in conditions_of(draws, axle))
        those = [home, *(place for place in others if place.key in keys)]
        as_set = end_inputs(draws, axle).as_found if setup is None else with_workmanship(draws, setup)
        return cls(draws, as_set, those, Several(those).figures(draws, axle, as_set), keys)


def _sure(here: _Built, axle: Axle, left_out: int) -> dict[str, Sure]:
    """The half-widths of every figure and of its change from as built."""
    done = here.done
    along = "stroke" if axle == "front" else "travel"
    results = {
        "free_sag": getattr(done.free, along), "rider_sag": getattr(done.rider, along), "frequency": done.frequency,
        "end_force": done.end_force, "end_multiple": done.end_multiple,
    }  # fmt: skip
    results |= {f"change_{name}": values - values[:1] for name, values in results.items()}
    if axle == "front" and len(here.those) > 1 and here.setup.air is None:
        results |= _gaps(here.draws, here.setup, here.those, results)
    halves = {name: half_widths(values) for name, values in results.items()}
    return {
        place.key: Sure({name: float(half[i]) for name, half in halves.items() if np.isfinite(half[i])}, left_out)
        for i, place in enumerate(here.those)
        if place.key in here.keys
    }


def _gaps(draws: Job, as_set: Setup, those: Sequence[Condition], results: Mapping[str, Array]) -> dict[str, Array]:
    """Change of gap at home that acts like each condition, and gap there that restores as built."""
    acting, away = [replace(those[0], key=place.key) for place in those[1:]], those[1:]
    restored = Several(away).loads.aboard * results["end_multiple"][:1]
    wanted = np.concatenate([results["end_force"][1:], restored])
    try:
        gaps = Several([*acting, *away]).gaps(draws, as_set, wanted)
    except Impossible:
        return {}
    none = np.full_like(gaps[:1], np.nan)  # as built
    like, restoring = (np.concatenate([none, part]) for part in np.split(gaps, 2))
    return {"acts_like": like - as_set.gap, "restoring": restoring}


def _spread(place: Condition, count: int) -> Condition:
    """A place whose every number is an array of draws."""

    def spread(part: object) -> Array:
        return np.broadcast_to(np.asarray(part), (count,))

    at = replace(place.at, **{name.name: spread(getattr(place.at, name.name)) for name in fields(place.at)})
    return Condition(place.key, at, replace(place.loads, alone=spread(place.loads.alone), aboard=spread(place.loads.aboard)))
