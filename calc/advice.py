"""One end of one job, sized: the yardstick, the targets, the candidates, what is fitted, what is tried, the rider span."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc import fitted
from calc.air_pressure import pressure_for_sag
from calc.array import Array, Number, every
from calc.assembly import Assembly, ForkAssembly
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import AirLeg
from calc.model import conditions, end_loads, fork, fork_as_sold, found_gaps, limits, shock, standard_setup
from calc.offers import offers, series
from calc.quantity import convert
from calc.setup import Figures, Loads, Setup, evaluate, figures
from calc.sizing import Sized, Targets, size
from calc.vetoes import Limits, Room

SPAN_STEPS = np.arange(-24, 25, dtype=float)  # kg either way of the rider
BIGGEST_CHANGE = 0.5  # of the rider's mass


@dataclass(frozen=True)
class Situation:
    """One end as its readings describe it, before anything is chosen: what is loaded, by how much, against what yardstick."""

    assembly: Assembly
    loads: Loads
    exponent: Number
    standard_setup: Setup
    standard: Figures
    targets: Targets


@dataclass(frozen=True)
class EndSizing:
    """Everything that the report says of one end. `found_problem` names why the fitted setup has no figures; `air_pressure`
    [bar, gauge, cold] is what an air spring needs for the rider sag wanted.
    """

    situation: Situation
    limits: Limits
    sized: Sized
    found_setup: Setup
    found: Figures | None
    found_problem: Impossible | None
    air_pressure: float | None = None


def situation(job: Job, end: str) -> Situation:
    """Read one end of a job, drawn or not.

    Parameters: job; end, "front" or "rear".
    Returns: Situation.
    Raises: Impossible naming the cause and the way out.
    Formula: see `calc.model` and `calc.setup`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(situation(load(jobs()["enduro"]), "front").loads.aboard), 1)
        786.5
    """
    at = conditions(job)
    assembly: Assembly = fork(job, at) if end == "front" else shock(job, at)
    as_sold = fork_as_sold(job, at, assembly) if isinstance(assembly, ForkAssembly) else assembly
    loads, yardstick = end_loads(job, end), standard_setup(job, end)
    standard = _standard(job, end, as_sold, yardstick, at.exponent)
    return Situation(assembly, loads, at.exponent, yardstick, standard, _targets(job, end, standard, loads.aboard))


def _standard(job: Job, end: str, assembly: Assembly, yardstick: Setup, exponent: Number) -> Figures:
    try:
        return evaluate(assembly, yardstick, end_loads(job, end, job.value("standard.rider")), exponent)
    except Impossible as error:
        path = "standard.gap" if end == "front" else "standard.shock_rate"
        words = f"As sold, with the rider it is sold for: {error.message[0].lower()}{error.message[1:]}"
        raise Impossible(error.code, words, "Check the setup as sold, and the readings of the leg.", error.field or path) from error


def size_end(job: Job, end: str) -> EndSizing:
    """Size one end of a job.

    Parameters: job, with no refused entry that this end needs; end, "front" or "rear".
    Returns: EndSizing.
    Raises: Impossible naming the cause and the way out.
    Formula: see `calc.sizing.size`.
    Source: see `calc.sizing`.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> done = size_end(load(jobs()["enduro"]), "front")
        >>> round(float(done.sized.setup.rate[int(done.sized.choice)]), 2)
        4.6
    """
    here, bounds = situation(job, end), limits(job, end)
    if isinstance(here.assembly, ForkAssembly) and isinstance(here.assembly.gas, AirLeg):
        return _air_spring(job, here, here.assembly, bounds)
    rates, split = _offers(job, end)
    sized = size(here.assembly, rates, here.loads, here.exponent, here.targets, bounds, split)
    return EndSizing(here, bounds, sized, *found(job, end, here))


def _air_spring(job: Job, here: Situation, assembly: ForkAssembly, bounds: Limits) -> EndSizing:
    """An air spring has no rates to choose from: what is found is worked out, and the pressure for the sag wanted beside it."""
    setup, done, problem = found(job, "front", here)
    if problem is not None:
        raise problem
    one = Setup(*(np.atleast_1d(np.asarray(part, dtype=float)) for part in (setup.rate, setup.preload, setup.gap)))
    worked = evaluate(assembly, one, here.loads, here.exponent)
    try:
        pressure = pressure_for_sag(assembly, setup, here.loads.aboard, here.targets.sag) - conditions(job).charged
    except Impossible:
        gauge, why = None, "no pressure"
    else:
        gauge, why = convert(float(pressure + job.number("front.pump_loss")), "MPa", "bar"), "air spring"
    sized = Sized(one, one, worked, Room(), {why: np.ones(1, dtype=bool)}, np.zeros(1))
    return EndSizing(here, bounds, sized, setup, done, None, gauge)


def _offers(job: Job, end: str) -> tuple[Array, Array]:
    """Rates on offer and the split of each, the fitted one among them."""
    now, split = float(fitted.rate(job, end)), float(fitted.split(job, end))
    kind, pairs, _ = job.choice(f"{end}.buy").partition("-")
    if kind == "series":
        return offers(series(job.number(f"{end}.step"), now), bool(pairs), now, split)
    stock = job.fields[f"{end}.stock"].rates
    if not stock:
        raise Impossible("stock", "No rates on the shelf are entered.", "Enter them, or choose a stepped series.", f"{end}.stock")
    return offers(np.array(stock), bool(pairs), now, split)


def _targets(job: Job, end: str, standard: Figures, load: Number) -> Targets:
    sag = job.number(f"{end}.target_sag")
    if sag >= job.number(f"{end}.travel"):
        raise Impossible("sag", "The rider sag wanted is not below the travel.", "Enter a smaller sag.", f"{end}.target_sag")
    if end == "rear":
        return Targets(sag, False, "none", 0.0, free_sag=job.number("rear.target_free_sag"))
    kind = job.choice("front.end_target")
    if kind == "standard":
        return Targets(sag, True, "force", standard.end_multiple * load, frequency=standard.frequency)
    path = f"front.end_{kind}"
    if not job.known(path):
        label = job.fields[path].field.label
        raise Impossible("target", f"{label} is not entered.", "Enter it, or choose another target.", path)
    amount = job.number(path) * (load if kind == "multiple" else 1.0)
    return Targets(sag, True, "energy" if kind == "energy" else "force", amount, frequency=standard.frequency)


def found(job: Job, end: str, here: Situation) -> tuple[Setup, Figures | None, Impossible | None]:
    """What is fitted now; a setup that cannot carry the rider or locks has no figures, only its reason."""
    rate, preload = fitted.rate(job, end), fitted.preload(job, end)
    if isinstance(here.assembly, ForkAssembly) and here.assembly.springs == 0:
        rate, preload = 0.0, 0.0
    if not isinstance(here.assembly, ForkAssembly):
        setup = Setup(rate, preload, 0.0)
        return setup, *_tried(here, setup)
    left, right = found_gaps(job, conditions(job))
    setup = Setup(rate, preload, 0.5 * (left + right), fitted.split(job, end))
    built = here.assembly.paired(setup.split).end_of_gaps(rate, preload, left, right)
    try:
        return setup, figures(built, here.loads, here.exponent), None
    except Impossible as problem:
        return setup, None, problem


def _tried(here: Situation, setup: Setup) -> tuple[Figures | None, Impossible | None]:
    try:
        return evaluate(here.assembly, setup, here.loads, here.exponent), None
    except Impossible as problem:
        return None, problem


def tried(job: Job, end: str, done: EndSizing, answer: Setup | None) -> tuple[Setup, Figures | None, Impossible | None] | None:
    """A setup that the user tries beside the answer; what is left empty is the answer's, or else what is fitted."""
    base = answer or done.found_setup
    paths = {part: f"{end}.tried_{part}" for part in (("rate", "preload", "gap") if end == "front" else ("rate", "preload"))}
    named = {part: job.number(path) for part, path in paths.items() if job.known(path)}
    if not named:
        return None
    setup = replace(base, **named | ({"split": 0.0} if "rate" in named else {}))
    return setup, *_tried(done.situation, setup)


def rider_span(job: Job, end: str, done: EndSizing) -> tuple[float | None, float | None] | None:
    """Rider masses [kg] between which the choice stays the same; None where it does not end within the search.

    Solved on a grid of whole kilograms about the rider, all else held; None altogether when no spring is chosen.
    """
    chosen = int(done.sized.choice)
    if chosen < 0:
        return None
    mass, here = job.number("rider.mass"), done.situation
    masses = mass + SPAN_STEPS[np.abs(SPAN_STEPS) <= BIGGEST_CHANGE * mass]
    loads = end_loads(job, end, masses)
    shift = np.asarray(here.loads.aboard) - np.asarray(end_loads(job, end, mass).aboard)
    loads = Loads(loads.alone, loads.aboard + shift, loads.gravity)
    targets = _targets(job, end, here.standard, loads.aboard)
    rates, split = (np.asarray(part)[:, None] for part in (done.sized.setup.rate, done.sized.setup.split))
    sized = size(here.assembly, rates, loads, here.exponent, targets, done.limits, split)
    same = sized.choice == chosen
    middle = int(np.argmin(np.abs(masses - mass)))
    low = middle - int(np.argmin(same[middle::-1])) + 1 if not every(same[: middle + 1]) else None
    high = middle + int(np.argmin(same[middle:])) - 1 if not every(same[middle:]) else None
    return (None if low is None else float(masses[low]), None if high is None else float(masses[high]))
