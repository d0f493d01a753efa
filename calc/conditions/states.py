"""One fork in each state that its sealed cartridge may be in, opened with what replaces its charge among them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Number
from calc.conditions.in_state import CARTRIDGE, WAYS, InState, Lost, State, lost_at
from calc.conditions.replaced import replaced
from calc.end.assembly import ForkAssembly
from calc.end.figures import evaluate
from calc.end.setup import Setup
from calc.gas.chamber import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import OpenLeg
from calc.model import conditions, end_loads, fitted, fork, found_gaps
from calc.model.cartridge import state
from calc.model.conditions import Conditions
from calc.model.fork import leak_gap, leg_in_state, over_the_oil
from calc.model.gap import by_volume, own_gap
from calc.model.gaps import fitted_rates
from calc.quantities.reading import Origin, Reading, Spread

MOVED = 20e3  # mm3 of oil out of the cartridge where nobody entered any; a case to look at, not a reading
_CHARGE = ("front.cartridge_charge", "front.charge_force")


@dataclass(frozen=True, eq=False)
class States:
    """All of it. Strokes [mm]: rider sag of the first state that can be, half and full travel; `shut_gap` [mm], by which the oil
    is known; `moved` [mm3] of oil, `assumed` where nobody entered it; `oil` [mm3] into a leg for the gap that replaces something.
    """

    told: Mapping[State, InState | Impossible]
    strokes: tuple[float, float, float]
    shut_gap: float
    moved: float
    assumed: bool
    lost: tuple[Lost, ...]
    oil: Mapping[State, float]


def states(job: Job) -> States | None:
    """A fork in each state, springs, preload and oil the same.

    Parameters: job, not drawn.
    Returns: States; None where the fork has no sealed cartridge.
    Raises: Impossible where the loads, the gap or the springs cannot be, or no state can, for the reason of the first.
    Formula: the gap around the shut cartridge fixes the oil; opened, all of it and the gas are one space, bled.
    Source: oil is conserved; statics; Boyle's law.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> [round(float(lost.backing) * 10, 1) for lost in states(load(jobs()["trail"])).lost]
        [1.9, 2.4, 3.3]
    """
    if job.choice("front.air") != "sealed cartridge":
        return None
    assumed = not job.entered("front.oil_moved")
    moved = MOVED if assumed else job.number("front.oil_moved")
    loads, rates, gaps = end_loads(job, "front"), fitted_rates(job), shut_gaps(job, moved)
    told: dict[State, InState | Impossible] = {how: _attempted(job, how, moved) for how in _states_of(job)}
    can = [one for one in told.values() if isinstance(one, InState)]
    if not can:
        raise next(one for one in told.values() if isinstance(one, Impossible))
    travel = job.number("front.travel")
    strokes = (float(can[0].figures.rider.stroke), 0.5 * travel, travel)
    built, opened = told["as built"], told["opened into one"]
    lost: tuple[Lost, ...] = ()
    oil: dict[State, float] = {}
    if isinstance(built, InState) and isinstance(opened, InState):
        lost = lost_along(job, built, opened, strokes)
        for way in WAYS:
            if way != "gap replaced" and not opened.assembly.springs:
                continue  # no coil, no preload
            told[way] = one = replaced(way, built, opened, loads)
            if isinstance(one, InState) and way != "preload replaced":
                oil[way] = _oil(opened, one, rates)
    return States(told, strokes, float(0.5 * (gaps[0] + gaps[1])), moved, assumed, lost, oil)


def _states_of(job: Job) -> tuple[State, ...]:
    """A charge is lost by itself from gas only: a spring-loaded piston keeps pressing as long as its oil is there."""
    gas = job.choice("front.cartridge_fill") == "gas"
    return tuple(how for how in CARTRIDGE if gas or how != "charge lost")


def lost_along(job: Job, built: InState, opened: InState, strokes: tuple[float, ...]) -> tuple[Lost, ...]:
    """What opening takes away at strokes [mm], the first settled, the others moved fast.

    Parameters: job, drawn or not; built, opened, of the same draws; strokes [mm].
    Returns: Lost at each.
    Raises: Impossible as `calc.conditions.in_state.lost_at`. Formula: see there. Source: see there.
    Example: see `states`.
    """
    rod = circle(job.value("front.damper_rod"))
    return tuple(lost_at(built, opened, stroke, i == 0, rod) for i, stroke in enumerate(strokes))


def shut_gaps(job: Job, moved: float) -> tuple[Number, Number]:
    """Gap of each leg around the shut cartridge, in the user's convention; opened by now, what it was before, else as sold.

    Parameters: job, drawn or not; moved [mm3] of oil.
    Returns: gaps [mm], left and right.
    Raises: Impossible where a gap cannot be. Formula: the oil is conserved. Source: none.
    Example: see `states`.
    """
    job = _in(job, "oil moved", moved)
    at, how = conditions(job), state(job, as_sold=False)
    if how != "opened into one":
        pairs = tuple(zip(fitted_rates(job), found_gaps(job, at), strict=True))
        leaks = how == "seal leaking" and not by_volume(job)  # what was poured in was poured around a shut one
        left, right = (leak_gap(job, at, rate, gap, shut=True) if leaks else gap for rate, gap in pairs)
        return left, right
    path = "front.push_gap" if job.entered("front.push_gap") else "standard.gap"
    before = own_gap(job, path, lambda: over_the_oil(job, at, "as built"), fitted_rates(job)[0])
    return before, before


def _in(job: Job, how: State, moved: float) -> Job:
    """The job with what a state needs said."""
    if how == "charge lost":
        known = [path for path in _CHARGE if job.known(path)]
        return _saying(job, dict.fromkeys(known, 0.0))
    return _saying(job, {"front.oil_moved": moved}) if how == "oil moved" else job


def _saying(job: Job, numbers: Mapping[str, float]) -> Job:
    said = {
        path: replace(job.fields[path], applies=True, reading=Reading(number, 0.0, Origin.ASSUMED, Spread.NORMAL))
        for path, number in numbers.items()
    }
    return replace(
        job, fields={**job.fields, **said}, samples={path: drawn for path, drawn in job.samples.items() if path not in numbers}
    )


def _attempted(job: Job, how: State, moved: float) -> InState | Impossible:
    try:
        return in_state(job, how, moved)
    except Impossible as error:
        return error


def in_state(job: Job, how: State, moved: float) -> InState:
    """The fork in one state of its cartridge, springs, preload and oil as found.

    Parameters: job, drawn or not; how; moved [mm3] of oil, where that is the state.
    Returns: InState.
    Raises: Impossible as `states`. Formula: see there. Source: see there.
    Example: see `states`.
    """
    gaps, job = shut_gaps(job, moved), _in(job, how, moved)
    at, rates = conditions(job), fitted_rates(job)
    assembly = assembly_in(job, "as built" if how == "charge lost" else how)
    gas = assembly.gas
    if how == "opened into one":
        assert isinstance(gas, OpenLeg)
        left, right = (_shown_opened(job, at, gas, rate, gap) for rate, gap in zip(rates, gaps, strict=True))
    else:
        left, right = gaps
    coil = assembly.springs > 0
    rate, preload = (fitted.rate(job, "front"), fitted.preload(job, "front")) if coil else (0.0, 0.0)
    setup = Setup(rate, preload, 0.5 * (left + right), fitted.split(job, "front"), None, 0.5 * (right - left))
    figures = evaluate(assembly, setup, end_loads(job, "front"), at.exponent)
    return InState(how, assembly, setup, figures, _shown(job, at, how, setup, rates))


def assembly_in(job: Job, how: State) -> ForkAssembly:
    """A fork with a sealed cartridge, that one in a state.

    Parameters: job, drawn or not; how.
    Returns: ForkAssembly, its gap told as from before the cartridge was opened or leaked, but of an opened one as it is read then.
    Raises: Impossible as `calc.model.fork.leg_in_state`.
    Formula: see there.
    Source: none.
    Example: see `tests/unit/options/test_option_cartridge.py`.
    """
    at = conditions(job)
    return replace(fork(job, at, as_sold=True), gas=leg_in_state(job, at, how, set_shut=True))


def _shown(job: Job, at: Conditions, how: State, setup: Setup, rates: tuple[Number | None, Number | None]) -> Number | None:
    """The mean gap [mm] that its oil shows in a state."""
    if how not in ("oil moved", "seal leaking"):
        return setup.gap
    around, pairs = over_the_oil(job, at, "as built"), tuple(zip(rates, setup.gaps, strict=True))
    try:
        if how == "seal leaking":
            left, right = (leak_gap(job, at, rate, gap, shut=False) for rate, gap in pairs)
        else:
            moved = job.value("front.oil_moved")
            left, right = (around.gap_of_gas(around.hanging(rate, gap) - moved, rate) for rate, gap in pairs)
    except Impossible:  # the oil stands over the rim: no gap is left to be read
        return None
    return 0.5 * (left + right)


def _shown_opened(job: Job, at: Conditions, opened: OpenLeg, rate: Number | None, gap: Number) -> Number:
    """Gap [mm] that the same oil shows, read as in an open leg."""
    around = over_the_oil(job, at, "as built")
    if job.choice("front.cartridge_fill") == "gas":
        hanging = around.hanging(rate, gap) - circle(job.value("front.damper_rod")) * around.drawn_out
        return opened.gap_of_gas(hanging + job.value("front.cartridge_gas"), rate)
    # its piston has gone to its stop, as where the seal leaks wide: bled, that is the same
    wide = replace(job, fields={**job.fields, "front.leak": replace(job.fields["front.leak"], choice="wide")})
    leaking = leg_in_state(wide, at, "seal leaking", set_shut=True)
    assert isinstance(leaking, OpenLeg)
    return opened.gap_of_gas(leaking.hanging(rate, gap), rate)


def _oil(opened: InState, now: InState, rates: tuple[Number | None, Number | None]) -> float:
    """Oil [mm3] into a leg for its new gap, the mean of both."""
    legs = zip(rates, opened.setup.gaps, now.setup.gaps, strict=True)
    return float(np.mean([opened.assembly.gas.oil_to_add(rate, was, rate, gap) for rate, was, gap in legs]))
