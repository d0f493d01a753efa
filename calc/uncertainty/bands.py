"""How sure: the three questions asked of the same draws, and which reading to improve next.

Bands of what a setup does hold the recommended (rounded) setup fixed, built with its tolerance; the +/- of the recommended
preload and gap re-solve them with the spring held; the count of draws re-sizes every draw.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model import oil_to_add
from calc.model.braking import brake_dive, is_braked
from calc.model.draws import combined, drawn, half_width, own_reading, stepped, survivors
from calc.model.inputs import EndInputs, end_inputs, found
from calc.model.spread import drawn_uncertainty
from calc.practice import Axle
from calc.quantities.entry import convert_difference, internal_unit
from calc.sizing.choice import EndSizing, resized
from calc.sizing.margins import moved_readings
from calc.uncertainty.choices import Choices, choices, rate_wanted
from calc.uncertainty.tolerance import with_tolerance, with_workmanship

Halves = Mapping[str, float]


@dataclass(frozen=True, eq=False)
class Cause:
    """A reading's part in a result's variance, and the result's 95 % half-width now and after that reading is improved.

    Improved means measured with care where that is better than half of the present +/-, else halved.
    """

    path: str
    share: float
    now: float
    then: float


@dataclass(frozen=True, eq=False)
class Bands:
    """95 % half-widths in internal units, by name; what the draws choose; causes by result.

    `index` is the candidate they are of: the choice, or, where it is not settled, what is in.

    `setup` holds those of the recommended preload and gap, or of an air spring's pressure and control, `figures` of what
    the recommended setup does and of the loads, `found` of what the fitted one does and of the rise from it to the recommended
    one, `oil` [mm3] of what to add to each leg. `left_out` counts the draws that could not be built.
    """

    setup: Halves
    figures: Halves
    found: Halves
    oil: Halves
    choices: Choices
    index: int
    draws: int
    left_out: int
    causes: Mapping[str, tuple[Cause, ...]]


def bands(job: Job, axle: Axle, done: EndSizing) -> Bands | None:
    """Work out the bands of one end.

    Parameters: job; end; done, its nominal sizing.
    Returns: Bands, or None where no spring is chosen, by the readings or by any draw.
    Raises: nothing.
    Formula: quantiles of Latin-hypercube draws; causes by first-order sensitivities, u_i df/dx_i squared over their sum.
    Source: JCGM 101:2008 (propagation of distributions); JCGM 100:2008, 5.1.2 (first order).
    Example:
        >>> from calc.sizing.choice import size_end
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> sure = bands(job, "front", size_end(job, "front"))
        >>> max(sure.choices.counts, key=sure.choices.counts.get)
        4.6
    """
    if done.choice < 0:
        return None
    all_draws = with_tolerance(drawn(job))
    draws, left_out, whole = survivors(all_draws, all_draws.draws, lambda some: choices(end_inputs(some, axle), done))
    if left_out == all_draws.draws:
        return None
    try:  # all draws together may reach for springs that none of them reached for alone
        found_choices = whole or choices(end_inputs(draws, axle), done)
    except Impossible:
        return None
    if not found_choices.counts:
        return None
    index = told_index(done, found_choices.settled)
    setup = done.sized.setup.at(index)

    def built(some: Job) -> tuple[EndInputs, Figures, Mapping[str, Number]]:
        here = end_inputs(some, axle)
        return here, _figures(here, _as_built(some, here, done, index)), _oil(some, here, setup)

    good, more, together = survivors(draws, all_draws.draws - left_out, built)
    if left_out + more == all_draws.draws:
        return None
    if more:
        draws, left_out = good, left_out + more
        found_choices = choices(end_inputs(draws, axle), done)
    here, as_built, oil = together or built(draws)
    return Bands(
        setup={name: half_width(samples) for name, samples in _solved(here, found_choices, index).items()}
        | _rate_half(here, done, found_choices, index),
        figures=_figure_halves(as_built) | _beside_halves(draws, axle, as_built) | _load_halves(here),
        found=_found_halves(here, as_built),
        oil={leg: half_width(samples) for leg, samples in oil.items()},
        choices=found_choices,
        index=index,
        draws=all_draws.draws - left_out,
        left_out=left_out,
        causes=_causes(job, axle, done, index),
    )


def _rate_half(here: EndInputs, done: EndSizing, found: Choices, index: int) -> dict[str, float]:
    """Of the rate that would ride at the yardstick; none for an air spring."""
    if here.air is not None:
        return {}
    return {"rate": half_width(rate_wanted(done, found.sized, found.decision, index - found.first, index))}


def told_index(done: EndSizing, settled: bool) -> int:
    """The candidate that is told: the choice, or, where that is not settled, what is in, unless it cannot be built.

    Parameters: done; settled.
    Returns: index along the candidates.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `bands`.
    """
    if settled or done.fitted is None or any(flag[done.fitted] for flag in done.sized.hard.values()):
        return done.choice
    return done.fitted


def _as_built(draws: Job, here: EndInputs, done: EndSizing, index: int) -> Setup:
    """A candidate as the bench may build it; the spring that is in keeps the rate that each draw gives it."""
    setup = with_workmanship(draws, done.sized.setup.at(index))
    own = here.air is None and index == done.fitted
    return replace(setup, rate=here.as_found.rate, split=here.as_found.split) if own else setup


def _figures(here: EndInputs, setup: Setup) -> Figures:
    return evaluate(here.assembly, setup, here.loads, here.exponent)


def _solved(here: EndInputs, found_choices: Choices, index: int) -> dict[str, Array]:
    """What is recommended, solved again with the spring held; nothing for what some draws cannot find."""
    exact, unreachable = found_choices.sized.exact, found_choices.sized.short.get("end unreachable")
    if here.air is not None:
        assert exact.air is not None
        reached = {here.air.control: np.asarray(here.air.amount(exact))}
        return {"pressure": np.asarray(exact.air.pressure)} | ({} if np.any(unreachable) else reached)
    held = index - found_choices.first
    solved = {"preload": np.asarray(exact.preload)[held]}
    if unreachable is not None and not np.any(unreachable[held]):
        solved["gap"] = np.asarray(exact.gap)[held]
    return solved


def _results(done: Figures) -> dict[str, Number]:
    """The results that carry a band, by the report's names, in internal units."""
    return {
        "free_travel": done.free.travel,
        "free_stroke": done.free.stroke,
        "rider_travel": done.rider.travel,
        "rider_stroke": done.rider.stroke,
        "wheel_rate": done.wheel_rate,
        "frequency": done.frequency,
        "end_force": done.end_force,
        "end_multiple": done.end_multiple,
        "energy": done.energy,
        "energy_per_mass": done.energy_per_mass,
    }


def _figure_halves(done: Figures) -> dict[str, float]:
    return {name: half_width(samples) for name, samples in _results(done).items()}


def _beside_halves(draws: Job, axle: Axle, done: Figures) -> dict[str, float]:
    """Of the rear's leverage and its fall [-]; of brake dive, where it is asked for and no draw bottoms."""
    if axle == "rear":
        motion, full = done.end.motion, done.end.travel
        leverages = {"leverage": full / motion.stroke(full), "leverage_fall": 1.0 - motion.ratio(0.0) / motion.ratio(full)}
        return {name: half_width(samples) for name, samples in leverages.items()}
    if not is_braked(draws):
        return {}
    try:
        return {"dive": half_width(brake_dive(draws, done).stroke)}
    except Impossible:
        return {}


def _load_halves(here: EndInputs) -> dict[str, float]:
    loads = {"alone": here.loads.alone, "aboard": here.loads.aboard, "sprung_mass": here.loads.sprung_mass}
    return {name: half_width(samples) for name, samples in loads.items()}


def _found_halves(here: EndInputs, as_built: Figures) -> Halves:
    """Of what the fitted setup does, and of what the recommended one raises the bike by against it, rider aboard."""
    _, done, _ = found(here)
    if done is None:
        return {}
    rises = {f"rise_{along}": getattr(done.rider, along) - getattr(as_built.rider, along) for along in ("travel", "stroke")}
    return _figure_halves(done) | {name: half_width(samples) for name, samples in rises.items()}


def _oil(draws: Job, here: EndInputs, setup: Setup) -> Mapping[str, Number]:
    """Oil [mm3] that brings each leg from the gap found to the recommended one."""
    if not isinstance(here.assembly, ForkAssembly):
        return {}
    return oil_to_add(draws, here.assembly, setup)


def _causes(job: Job, axle: Axle, done: EndSizing, index: int) -> Mapping[str, tuple[Cause, ...]]:
    """First-order sensitivities: every reading moved by its standard uncertainty, all in one run."""
    paths = moved_readings(job)
    count = len(done.decision.key)
    some = slice(0, 1) if done.inputs.air is not None else slice(max(index - 1, 0), min(index + 2, count))
    moved = stepped(job, paths)
    try:
        here = end_inputs(moved, axle)
        setup = done.sized.setup.at(index)
        if here.air is None and index == done.fitted:
            setup = replace(setup, rate=here.as_found.rate, split=here.as_found.split)
        fixed = _figures(here, setup)
        sized, decision = resized(here, done, some)
    except Impossible:
        return {}
    along = "stroke" if axle == "front" else "travel"
    results = {name: _results(fixed)[name] for name in (f"free_{along}", f"rider_{along}", "end_multiple")}
    row = 0 if here.air is not None else index - some.start
    results |= _solved(here, Choices(sized, decision, index - row, {}, True), index)
    if here.air is None:
        results["rate"] = rate_wanted(done, sized, decision, row, index)
    return {name: _ranked(job, paths, np.asarray(values)) for name, values in results.items()}


def _ranked(job: Job, paths: list[str], values: Array) -> tuple[Cause, ...]:
    moves = np.broadcast_to(values, (2 * len(paths),))
    variance, parts = combined(job, paths, (moves[: len(paths)] - moves[len(paths) :]) / 2.0)
    total = float(variance)
    by_field: dict[str, float] = {}
    for path, effect in zip(paths, parts, strict=True):  # what a fit may be off by has two parts and one field
        field = path.split()[0]
        by_field[field] = by_field.get(field, 0.0) + float(effect)
    worth = sorted((p for p, effect in by_field.items() if effect > 0.01 * total), key=lambda p: -by_field[p])
    return tuple(_cause(job, path, by_field[path], total) for path in worth)


def _cause(job: Job, path: str, effect: float, total: float) -> Cause:
    field, kept = job.fields[path].field, 0.5
    if job.known(path):
        careful = convert_difference(field.plus_minus, field.unit, internal_unit(field.dimension))
        careful += field.plus_minus_relative * abs(job.number(path))
        own, _ = own_reading(job, path)
        kept = min(0.5, careful / 2.0 / drawn_uncertainty(path, own)) if careful > 0 else 0.5
    return Cause(path, effect / total, 2.0 * total**0.5, 2.0 * (total - effect * (1.0 - kept**2)) ** 0.5)
