"""How sure: the three questions asked of the same draws, and which reading to improve next.

Bands of what a setup does hold the recommended (rounded) setup fixed, built with its tolerance; the +/- of the recommended
preload and gap re-solve them with the spring held; the count of draws re-sizes every draw.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import partial

from calc.array import Number
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model import oil_to_add
from calc.model.braking import brake_dive, is_braked
from calc.model.draws import drawn, half_width
from calc.model.inputs import EndInputs, end_inputs, found
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.sizing.choice import EndSizing
from calc.uncertainty.causes import Cause, causes
from calc.uncertainty.choices import Choices, choices, rate_wanted
from calc.uncertainty.damping import factors_between
from calc.uncertainty.results import results, solved
from calc.uncertainty.tolerance import with_tolerance, with_workmanship

Halves = Mapping[str, float]


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
    damping: Halves
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
    told = _told(with_tolerance(drawn(job)), axle, done)
    if told is None:
        return None
    draws, here, as_built, found_choices, index = told.draws, told.here, told.as_built, told.choices, told.index
    _, as_found, _ = found(here)
    return Bands(
        setup={name: half_width(samples) for name, samples in solved(here, found_choices, index).items()}
        | _rate_half(here, done, found_choices, index),
        figures=_figure_halves(as_built) | _beside_halves(draws, axle, as_built) | _load_halves(here),
        found=_found_halves(as_found, as_built),
        oil={leg: half_width(samples) for leg, samples in told.oil.items()},
        damping=_damping_halves(draws, axle, here, as_found, as_built),
        choices=found_choices,
        index=index,
        draws=draws.draws - told.left_out,
        left_out=told.left_out,
        causes=causes(job, axle, done, index),
    )


@dataclass(frozen=True, eq=False)
class _Told:
    """The draws that can be sized and built, how many were left out, and of them: the end, what they choose, the candidate that is
    told, what that does as built, and its oil.
    """

    draws: Job
    left_out: int
    here: EndInputs
    choices: Choices
    index: int
    as_built: Figures
    oil: Mapping[str, Number]


def _told(all_draws: Job, axle: Axle, done: EndSizing) -> _Told | None:
    """What is told on all draws that can be; None where none can, or where none finds a spring."""

    def chosen(some: Job) -> tuple[EndInputs, Choices]:
        here = end_inputs(some, axle)
        return here, choices(here, done)

    draws, left_out, whole = survivors(all_draws, all_draws.draws, chosen)
    while left_out < all_draws.draws:  # what is told may leave draws out, and fewer draws may settle on another
        try:  # all draws together may reach for springs that none of them reached for alone
            here, found_choices = whole or chosen(draws)
        except Impossible:
            return None
        if not found_choices.counts:
            return None
        index = told_index(done, found_choices.settled)

        works = partial(_built, axle=axle, done=done, index=index, known=(draws, here))
        good, more, together = survivors(draws, all_draws.draws - left_out, works)
        if not more:
            return _Told(draws, left_out, here, found_choices, index, *(together or works(draws)))
        draws, left_out, whole = good, left_out + more, None
    return None


def _built(
    some: Job, axle: Axle, done: EndSizing, index: int, known: tuple[Job, EndInputs]
) -> tuple[Figures, Mapping[str, Number]]:
    """What a candidate does as built, and its oil; `known`: a job whose end is worked out already."""
    here = known[1] if some is known[0] else end_inputs(some, axle)
    done_by = evaluate(here.assembly, _as_built(some, here, done, index), here.loads, here.exponent)
    return done_by, _oil(some, here, done.sized.setup.at(index))


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


def _figure_halves(done: Figures) -> dict[str, float]:
    return {name: half_width(samples) for name, samples in results(done).items()}


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


def _damping_halves(draws: Job, axle: Axle, here: EndInputs, as_found: Figures | None, as_built: Figures) -> Halves:
    """Of the factors by which damping must follow what is recommended; what they rest on is drawn already."""
    try:
        told = factors_between(draws, axle, here, as_found, as_built)
    except Impossible:
        return {}
    return {name: half_width(samples) for name, samples in told.items()}


def _found_halves(done: Figures | None, as_built: Figures) -> Halves:
    """Of what the fitted setup does, and of what the recommended one raises the bike by against it, rider aboard."""
    if done is None:
        return {}
    rises = {f"rise_{along}": getattr(done.rider, along) - getattr(as_built.rider, along) for along in ("travel", "stroke")}
    return _figure_halves(done) | {name: half_width(samples) for name, samples in rises.items()}


def _oil(draws: Job, here: EndInputs, setup: Setup) -> Mapping[str, Number]:
    """Oil [mm3] that brings each leg from the gap found to the recommended one."""
    if not isinstance(here.assembly, ForkAssembly):
        return {}
    return oil_to_add(draws, here.assembly, setup)
