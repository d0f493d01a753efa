"""One end of one job, sized: the yardstick, the targets, the candidates, what is fitted, what is tried, the rider span."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, every
from calc.end.air_setting import AirSetting
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model import end_loads, fitted, limits
from calc.model.inputs import EndInputs, attempted, end_inputs, found, targets_of
from calc.practice import Axle
from calc.sizing.air import size_air
from calc.sizing.coil import Sized, size
from calc.sizing.criteria import Room
from calc.sizing.offers import offers, series

SPAN_STEPS = np.arange(-24, 25, dtype=float)  # kg either way of the rider
BIGGEST_CHANGE = 0.5  # of the rider's mass


@dataclass(frozen=True, eq=False)
class EndSizing:
    """Everything that the report says of one end. `found_problem` names why the fitted setup has no figures."""

    inputs: EndInputs
    limits: Limits
    sized: Sized
    found_setup: Setup
    found: Figures | None
    found_problem: Impossible | None


def size_end(job: Job, axle: Axle) -> EndSizing:
    """Size one end of a job.

    Parameters: job, with no refused entry that this end needs; axle, "front" or "rear".
    Returns: EndSizing.
    Raises: Impossible naming the cause and the way out.
    Formula: see `calc.sizing.coil.size`.
    Source: see `calc.sizing.coil`.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> done = size_end(load(jobs()["enduro"]), "front")
        >>> round(float(done.sized.setup.rate[int(done.sized.choice)]), 2)
        4.6
    """
    here, bounds = end_inputs(job, axle), limits(job, axle)
    if here.air is not None:
        return _air_spring(job, here, here.air, bounds)
    rates, split = _offers(job, axle)
    sized = size(here.assembly, rates, here.loads, here.exponent, here.targets, bounds, split)
    return EndSizing(here, bounds, sized, *found(job, axle, here))


def resized(here: EndInputs, done: EndSizing, some: slice = slice(None)) -> Sized:
    """The end sized again, its loads or readings along the second axis: over some of the candidates that `done` had, or, an air
    spring, at the one pressure nearest to what each wants.

    Parameters: here, another situation of the same end; done, its nominal sizing; some of its candidates.
    Returns: Sized.
    Raises: Impossible as `size_end`.
    Formula: see `calc.sizing.coil.size` and `calc.sizing.air.size_air`.
    Source: none.
    Example: see `calc.uncertainty.bands`.
    """
    if here.air is not None:
        setting, found_now = here.air, float(np.asarray(done.found_setup.stepped))
        return _air(here, lambda exact: setting.nearest(np.asarray(exact.stepped), found_now)[None], done.limits)
    was = done.sized.setup
    rates, split = (np.broadcast_to(part, np.shape(done.sized.key))[some, None] for part in (was.rate, was.split))
    return size(here.assembly, rates, here.loads, here.exponent, here.targets, done.limits, split)


def chosen_steps(sized: Sized) -> Array:
    """What each load or draw of a sizing chose: a rate [N/mm] or a pressure [MPa, gauge]; not a number where it chose none."""
    choice = sized.choice
    steps = np.broadcast_to(sized.setup.stepped, np.shape(sized.key))
    return np.where(choice < 0, np.nan, np.take_along_axis(steps, np.maximum(choice, 0)[None], axis=0)[0])


def _air_spring(job: Job, here: EndInputs, setting: AirSetting, bounds: Limits) -> EndSizing:
    """Where no pressure gives the sag, what is found is worked out all the same, and barred."""
    was = found(job, "front", here)
    try:
        return EndSizing(here, bounds, _air(here, lambda exact: _about(setting, exact), bounds), *was)
    except Impossible as problem:
        setup, done, wrong = was
        if problem.code != "air-pressure" or done is None:
            raise wrong or problem from problem
    one = replace(setup, air=None if setup.air is None else replace(setup.air, pressure=np.atleast_1d(setup.air.pressure)))
    worked = evaluate(here.assembly, one, here.loads, here.exponent)
    return EndSizing(here, bounds, Sized(one, one, worked, Room(), {"no pressure": np.ones(1, dtype=bool)}, np.zeros(1)), *was)


def _air(here: EndInputs, offered: Callable[[Setup], Array], bounds: Limits) -> Sized:
    assert here.air is not None
    assert isinstance(here.assembly, ForkAssembly)
    return size_air(here.assembly, here.air, offered, here.loads, here.exponent, here.targets, bounds)


def _about(setting: AirSetting, exact: Setup) -> Array:
    """The pressures [MPa, gauge] on offer about the exact one."""
    return setting.pressures(float(np.asarray(exact.stepped)), float(np.asarray(setting.base.stepped)))


def _offers(job: Job, axle: Axle) -> tuple[Array, Array]:
    """Rates on offer and the split of each, the fitted one among them."""
    now, split = float(fitted.rate(job, axle)), float(fitted.split(job, axle))
    kind, pairs, _ = job.choice(f"{axle}.buy").partition("-")
    if kind == "series":
        return offers(series(job.number(f"{axle}.step"), now), bool(pairs), now, split)
    stock = job.fields[f"{axle}.stock"].rates
    if not stock:
        raise Impossible("stock", "No rates on the shelf are entered.", "Enter them, or choose a stepped series.", f"{axle}.stock")
    return offers(np.array(stock), bool(pairs), now, split)


def tried(job: Job, axle: Axle, done: EndSizing, answer: Setup | None) -> tuple[Setup, Figures | None, Impossible | None] | None:
    """A setup that the user tries beside the answer; what is left empty is the answer's, or else what is fitted."""
    base = answer or done.found_setup
    paths = {
        part: f"{axle}.tried_{part}" for part in (("rate", "preload", "gap", "pressure") if axle == "front" else ("rate", "preload"))
    }
    named = {part: job.number(path) for part, path in paths.items() if job.fields[path].applies and job.known(path)}
    if not named:
        return None
    pressure = named.pop("pressure", None)
    air = base.air if pressure is None or base.air is None else replace(base.air, pressure=pressure)
    rate, preload, gap = (named.get(part, getattr(base, part)) for part in ("rate", "preload", "gap"))
    setup = Setup(rate, preload, gap, 0.0 if "rate" in named else base.split, air)
    return setup, *attempted(done.inputs, setup)


def rider_span(job: Job, axle: Axle, done: EndSizing) -> tuple[float | None, float | None] | None:
    """Rider masses [kg] between which the choice stays the same; None where it does not end within the search.

    Solved on a grid of whole kilograms about the rider, all else held; None altogether when no spring is chosen.
    """
    chosen = int(done.sized.choice)
    if chosen < 0:
        return None
    mass, here = job.number("rider.mass"), done.inputs
    masses = mass + SPAN_STEPS[np.abs(SPAN_STEPS) <= BIGGEST_CHANGE * mass]
    loads = end_loads(job, axle, masses)
    shift = np.asarray(here.loads.aboard) - np.asarray(end_loads(job, axle, mass).aboard)
    loads = Loads(loads.alone, loads.aboard + shift, loads.gravity)
    targets = targets_of(job, axle, here.standard, loads.aboard)
    steps = chosen_steps(resized(replace(here, loads=loads, targets=targets), done))
    same = np.isclose(steps, done.sized.setup.at(chosen).stepped, rtol=1e-9)
    middle = int(np.argmin(np.abs(masses - mass)))
    low = middle - int(np.argmin(same[middle::-1])) + 1 if not every(same[: middle + 1]) else None
    high = middle + int(np.argmin(same[middle:])) - 1 if not every(same[middle:]) else None
    return (None if low is None else float(masses[low]), None if high is None else float(masses[high]))
