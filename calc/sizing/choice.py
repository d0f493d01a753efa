"""One end of one job, sized: the candidates, the choice among them, what is fitted, what is tried, the rider span."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Flags, Number, every
from calc.end.air_setting import AirSetting
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model import end_loads, limits, rated_load
from calc.model.inputs import EndInputs, end_inputs, found, targets_of
from calc.practice import Axle
from calc.sizing.air import size_air
from calc.sizing.coil import Sized, size
from calc.sizing.criteria import Margins, Room
from calc.sizing.margins import margins
from calc.sizing.on_offer import on_offer, step_of
from calc.sizing.rule import WITHIN, Decision, decide, decide_pressure

SPAN_STEPS = np.arange(-24, 25, dtype=float)  # kg either way of the rider
BIGGEST_CHANGE = 0.5  # of the rider's mass
UNREAD_PRESSURE = 0.03  # of a pressure that nobody read: what ten kelvin alone make of it; common practice, no source
SAG_OFF = 5.0  # mm: by how much another wish for rider sag is looked at


@dataclass(frozen=True, eq=False)
class EndSizing:
    """Everything that the report says of one end.

    `fitted` is the index of what is in among the candidates, None for a pressure that is not among them; `step` [N/mm or MPa]
    what it may be off and stay; `found_problem` names why the fitted setup has no figures; `problem` why nothing could be sized;
    `marked`, whether steps are counted by the marking in every draw too: that a spring may be a little off what it is sold as is
    no reason to change it for another that may be so too.
    """

    inputs: EndInputs
    limits: Limits
    sized: Sized
    decision: Decision
    margins: Margins
    fitted: int | None
    step: float
    found_setup: Setup
    found: Figures | None
    found_problem: Impossible | None
    problem: Impossible | None = None
    marked: bool = False

    @property
    def choice(self) -> int:
        """Index of the choice, -1 where nothing can be built."""
        return int(self.decision.choice)


def size_end(job: Job, axle: Axle) -> EndSizing:
    """Size one end of a job.

    Parameters: job, with no refused entry that this end needs; axle, "front" or "rear".
    Returns: EndSizing.
    Raises: Impossible naming the cause and the way out.
    Formula: see `calc.sizing.coil.size` and `calc.sizing.rule.decide`.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> done = size_end(load(jobs()["enduro"]), "front")
        >>> round(float(done.sized.setup.rate[done.choice]), 2)
        4.6
    """
    here, bounds = end_inputs(job, axle), limits(job, axle)
    if here.air is not None:
        return _air_spring(job, here, here.air, bounds)
    rates, split = on_offer(job, axle, here.assembly.springs)
    sized = size(here.assembly, rates, here.loads, here.exponent, here.targets, bounds, split)
    own, step = int(np.argmin(np.abs(rates - here.as_found.rate))), step_of(job, axle)
    first = decide(sized, here.targets, Margins(), own, step)
    nearest = int(np.argmin(first.key))
    held = margins(job, axle, sized.setup.at(nearest), nearest == own)
    decision = decide(sized, here.targets, held, own, step)
    marked = job.entered(f"{axle}.rate")
    return EndSizing(here, bounds, sized, decision, held, own, step, *found(here), marked=marked)


def resized(here: EndInputs, done: EndSizing, some: slice = slice(None), decided: bool = True) -> tuple[Sized, Decision]:
    """The end sized and judged again, its loads or readings along the second axis: over some of the candidates that `done` had, or,
    an air spring, at the pressure nearest to what each wants, and at the one found where that is within a step of it. The spring
    that is in has the rate that each draw gives it.

    Parameters: here, other inputs of the same end; done, its nominal sizing; some of its candidates; decided, whether the oil that
    is in stays where it stays nominally.
    Returns: Sized; Decision, by the margins of `done`.
    Raises: Impossible as `size_end`.
    Formula: see `calc.sizing.coil.size` and `calc.sizing.air.size_air`.
    Source: none.
    Example: see `calc.uncertainty.bands`.
    """
    if decided:
        here = replace(here, targets=replace(here.targets, gap_stays=_stays(done, some)))
    if here.air is not None:
        setting = here.air
        sized = _air(here, lambda exact: _near_each(setting, exact, done), done.limits)
        return sized, decide_pressure(sized, here.targets, done.margins, 1, done.step)
    was, shape = done.sized.setup, np.shape(done.decision.key)
    assert done.fitted is not None
    within = range(*some.indices(len(np.asarray(was.rate))))
    own = done.fitted in within
    rates, split = (
        _columns(part, shape, within, done.fitted, fitted_now)
        for part, fitted_now in ((was.rate, here.as_found.rate), (was.split, here.as_found.split))
    )
    sized = size(here.assembly, rates, here.loads, here.exponent, here.targets, done.limits, split)
    index = done.fitted - within.start if own else None
    source = done.decision.yardstick.source
    called = np.broadcast_to(was.rate, shape)[some, None] if done.marked else None
    return sized, decide(sized, here.targets, done.margins, index, done.step, source, called)


def _stays(done: EndSizing, some: slice) -> Flags | None:
    """For which candidates the gap that is in stays, down the first axis; an air spring's is one for all."""
    was, gap = done.inputs.targets.gap_found, done.sized.exact.gap
    if was is None:
        return None
    stays = np.isclose(gap, was, rtol=0.0, atol=1e-9)
    return stays if done.inputs.air is not None else np.broadcast_to(stays, np.shape(done.decision.key))[some, None]


def _columns(part: Number, shape: tuple[int, ...], within: range, own: int, now: Number) -> Array:
    """Candidates' rates or splits down the first axis, the fitted one's as each draw has it."""
    nominal = np.broadcast_to(part, shape)[within.start : within.stop, None]
    return np.where(np.arange(within.start, within.stop)[:, None] == own, now, nominal)


def _air_spring(job: Job, here: EndInputs, setting: AirSetting, bounds: Limits) -> EndSizing:
    """Where no pressure gives the sag, what is found is worked out all the same, and barred."""
    was = found(here)
    try:
        sized, wrong = _pressures(here, setting, bounds), None
    except Impossible as problem:
        setup, done, why = was
        if problem.code != "air-pressure" or done is None:
            raise why or problem from problem
        sized, wrong = _as_found(here, setup), problem
    among = np.flatnonzero(np.isclose(sized.setup.stepped, here.as_found.stepped, rtol=1e-6))
    own = int(among[0]) if len(among) else None
    read = job.entered("front.air_pressure")
    step = setting.step if read else max(setting.step, UNREAD_PRESSURE * float(np.asarray(here.as_found.stepped)))
    first = decide_pressure(sized, here.targets, Margins(), own, step)
    held = margins(job, "front", sized.setup.at(int(np.argmin(first.key))))
    decision = decide_pressure(sized, here.targets, held, own, step)
    return EndSizing(here, bounds, sized, decision, held, own, step, *was, wrong)


def _pressures(here: EndInputs, setting: AirSetting, bounds: Limits) -> Sized:
    """About the exact pressure; where all of these are too much for the spring, about the most it takes, if that holds the load."""
    about_exact = _air(here, lambda exact: _about(setting, float(np.asarray(exact.stepped))), bounds)
    if bounds.pressure is None or not np.all(about_exact.hard.get("pressure above", np.False_)):
        return about_exact
    most = float(setting.nearest(np.asarray(bounds.pressure), np.inf, bounds.pressure))
    try:
        return _air(here, lambda _: _about(setting, most), bounds)
    except Impossible:
        return about_exact


def _as_found(here: EndInputs, setup: Setup) -> Sized:
    """What is found alone, where no pressure gives the sag."""
    one = replace(setup, air=None if setup.air is None else replace(setup.air, pressure=np.atleast_1d(setup.air.pressure)))
    worked = evaluate(here.assembly, one, here.loads, here.exponent)
    return Sized(one, one, worked, Room(), {"no pressure": np.ones(1, dtype=bool)})


def _air(here: EndInputs, offered: Callable[[Setup], Array], bounds: Limits) -> Sized:
    assert here.air is not None
    assert isinstance(here.assembly, ForkAssembly)
    return size_air(here.assembly, here.air, offered, here.loads, here.exponent, here.targets, bounds)


def _near_each(setting: AirSetting, exact: Setup, done: EndSizing) -> Array:
    """For each exact pressure, the nearest on offer, and beside it the one found where that is within a step of it."""
    most, found_now = done.limits.pressure, float(np.asarray(done.found_setup.stepped))
    nearest = setting.nearest(np.asarray(exact.stepped), found_now, np.inf if most is None else most)
    near = np.abs(found_now - nearest) <= done.step * (1.0 + WITHIN)
    return np.stack([nearest, np.where(near, found_now, nearest)])


def _about(setting: AirSetting, pressure: float) -> Array:
    """The pressures [MPa, gauge] on offer about one."""
    return setting.pressures(pressure, float(np.asarray(setting.base.stepped)))


def other_riders(job: Job, axle: Axle, done: EndSizing, masses: Array) -> Array:
    """What other riders would choose, all else held.

    Parameters: job; axle; done, its nominal sizing; masses [kg], kitted.
    Returns: rate [N/mm] or pressure [MPa, gauge] for each; not a number where nothing can be built.
    Raises: Impossible where one of them cannot be carried.
    Formula: see `size_end`; the load is moved by what the rider's mass moves it by.
    Source: none.
    Example: see `rider_span`.
    """
    return chosen_steps(*other_choices(job, axle, done, masses))


def other_choices(job: Job, axle: Axle, done: EndSizing, masses: Array) -> tuple[Sized, Decision]:
    """What other riders would choose and by what, all else held.

    Parameters: job; axle; done, its nominal sizing; masses [kg], kitted.
    Returns: Sized, candidates down, riders along; Decision.
    Raises: Impossible where one of them cannot be carried.
    Formula: see `size_end`; the load is moved by what the rider's mass moves it by.
    Source: none.
    Example: see `tests/support/heavier.py`.
    """
    here, mass = done.inputs, job.number("rider.mass")
    loads = end_loads(job, axle, masses)
    shift = np.asarray(here.loads.aboard) - np.asarray(end_loads(job, axle, mass).aboard)
    loads = Loads(loads.alone, loads.aboard + shift, loads.gravity)
    targets = targets_of(job, axle, here.standard, loads.aboard, rated_load(job, axle, masses) + shift)
    return resized(replace(here, loads=loads, targets=targets), done, decided=False)


def other_sags(done: EndSizing, off: float = SAG_OFF) -> tuple[float, float]:
    """What a rider sag a little less and a little more than wanted would choose.

    Parameters: done; off [mm], in the sag's own measure.
    Returns: rate [N/mm] for less and for more.
    Raises: Impossible as `size_end`.
    Formula: see `size_end`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> other_sags(size_end(load(jobs()["enduro"]), "front"))
        (4.6, 4.6)
    """
    targets, steps = done.inputs.targets, np.array([-off, off])
    low, high = targets.windows.rider_sag
    moved = replace(targets, sag=targets.sag + steps, windows=replace(targets.windows, rider_sag=(low + steps, high + steps)))
    less, more = chosen_steps(*resized(replace(done.inputs, targets=moved), done, decided=False))
    return float(less), float(more)


def chosen_steps(sized: Sized, decision: Decision) -> Array:
    """What each load or draw of a sizing chose.

    Parameters: sized; decision.
    Returns: rate [N/mm] or pressure [MPa, gauge] for each; not a number where it chose none.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `other_sags`.
    """
    steps = np.broadcast_to(sized.setup.stepped, np.shape(decision.key))
    chosen = np.take_along_axis(steps, np.maximum(decision.choice, 0)[None], axis=0)[0]
    return np.where(decision.choice < 0, np.nan, chosen)


def rider_span(job: Job, axle: Axle, done: EndSizing) -> tuple[float | None, float | None] | None:
    """Rider masses [kg] between which the choice stays the same and fits.

    Parameters: job; axle; done, its nominal sizing.
    Returns: least and most mass [kg], whole ones, None where it does not end within the search; None altogether where no spring is
    chosen, or one that does not meet its criteria.
    Raises: Impossible as `other_choices`.
    Formula: solved on a grid of whole kilograms about the rider, and for the rider, all else held.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> rider_span(job, "front", size_end(job, "front"))
        (99.0, 106.0)
    """
    chosen = done.choice
    if chosen < 0:
        return None
    mass = job.number("rider.mass")
    steps = SPAN_STEPS[np.abs(SPAN_STEPS) <= BIGGEST_CHANGE * mass]
    masses = np.where(steps == 0, mass, np.round(mass) + steps)
    sized, decision = other_choices(job, axle, done, masses)
    same = np.isclose(chosen_steps(sized, decision), done.sized.setup.at(chosen).stepped, rtol=1e-9) & decision.criteria_met
    middle = int(np.argmin(np.abs(steps)))
    if not same[middle]:  # what is told does not fit even this rider: it is right for none
        return None
    low = middle - int(np.argmin(same[middle::-1])) + 1 if not every(same[: middle + 1]) else None
    high = middle + int(np.argmin(same[middle:])) - 1 if not every(same[middle:]) else None
    return (None if low is None else float(np.floor(masses[low])), None if high is None else float(np.ceil(masses[high])))
