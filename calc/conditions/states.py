"""One fork in each state that its sealed cartridge may be in, and what opening it takes away."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal, get_args

import numpy as np

from calc.array import Number
from calc.conditions.equivalent_gap import gap_for_end_force
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, circle
from calc.gas.pressures import pressures
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import OpenLeg
from calc.leg.sealed import SealedLeg
from calc.model import conditions, end_loads, fitted, fork, found_gaps
from calc.model.cartridge import state
from calc.model.conditions import Conditions
from calc.model.fork import leg_in_state, over_the_oil
from calc.model.gap import own_gap
from calc.model.gaps import fitted_rates
from calc.quantities.reading import Origin, Reading, Spread

State = Literal["as built", "charge lost", "seal leaking", "oil moved", "opened into one"]
MOVED = 20e3  # mm3 of oil out of the cartridge where nobody entered any; a case to look at, not a reading
_CHARGE = ("front.cartridge_charge", "front.charge_force")
_ROUNDS, _CLOSE = 40, 1e-7  # of preload and gap in turn; mm at which neither moves any more


@dataclass(frozen=True, eq=False)
class InState:
    """The fork in one state: its assembly, setup and figures; gap_now [mm], what its oil shows there, the mean of both legs; None
    where no gap can be read. Where oil has moved the setup's gap is the one from before.
    """

    state: State
    assembly: ForkAssembly
    setup: Setup
    figures: Figures
    gap_now: float | None

    @property
    def gas_share(self) -> float:
        """Share of the gas in the force at full travel [-]."""
        end = self.figures.end
        return float(end.gas_wheel_force(end.travel, self.figures.process) / self.figures.end_force)

    def behind(self, stroke: float, settled: bool) -> float:
        """Pressure behind the damper's oil [MPa, gauge] at a stroke [mm], in the left leg; else working n about rider sag."""
        strut: Strut = self.figures.end.struts[0][0]
        gas = self.assembly.gas
        vented = strut.ambient if isinstance(gas, SealedLeg) and np.any(np.asarray(gas.outer.inside) > 0) else None
        process = ISOTHERMAL if settled else self.figures.process
        return float([*pressures(strut.gases, stroke, process, vented)][-1] - strut.ambient)


@dataclass(frozen=True, eq=False)
class Lost:
    """What opening takes away at a stroke [mm]: backing [MPa] behind the damper's oil, and by it the push on the rod [N a leg]."""

    stroke: float
    backing: float
    rod_push: float


@dataclass(frozen=True, eq=False)
class Replaced:
    """The opened leg with the rider sag and the force at full travel that it had as built: what is set, and what that does; oil
    [mm3] into a leg, the mean of both. Its preload is as found where no leg has a coil.
    """

    setup: Setup
    figures: Figures
    oil: float


@dataclass(frozen=True, eq=False)
class States:
    """All of it. Strokes [mm]: rider sag of the first state that can be, half and full travel; `shut_gap` [mm], by which the oil
    is known; `moved` [mm3] of oil, `assumed` where nobody entered it; `unreplaced`, why nothing replaces what was lost.
    """

    told: Mapping[State, InState | Impossible]
    strokes: tuple[float, float, float]
    shut_gap: float
    moved: float
    assumed: bool
    lost: tuple[Lost, ...]
    replaced: Replaced | None
    unreplaced: Impossible | None


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
        >>> [round(lost.backing * 10, 1) for lost in states(load(jobs()["trail"])).lost]
        [1.9, 2.4, 3.3]
    """
    if job.choice("front.air") != "sealed cartridge":
        return None
    at, loads = conditions(job), end_loads(job, "front")
    assumed = not job.entered("front.oil_moved")
    moved = MOVED if assumed else job.number("front.oil_moved")
    rates, gaps = fitted_rates(job), _shut_gaps(_in(job, "oil moved", moved), at)
    told = {how: _attempted(_in(job, how, moved), at, how, rates, gaps, loads) for how in _states_of(job)}
    can = [one for one in told.values() if isinstance(one, InState)]
    if not can:
        raise next(one for one in told.values() if isinstance(one, Impossible))
    travel = job.number("front.travel")
    strokes = (float(can[0].figures.rider.stroke), 0.5 * travel, travel)
    built, opened = told["as built"], told["opened into one"]
    lost: tuple[Lost, ...] = ()
    replaced, unreplaced = None, None
    if isinstance(built, InState) and isinstance(opened, InState):
        rod = float(circle(job.value("front.damper_rod")))
        lost = tuple(_lost(built, opened, stroke, i == 0, rod) for i, stroke in enumerate(strokes))
        try:
            replaced = _replaced(job, built, opened, loads)
        except Impossible as error:
            unreplaced = error
    return States(told, strokes, float(np.mean(gaps)), moved, assumed, lost, replaced, unreplaced)


def _states_of(job: Job) -> tuple[State, ...]:
    """A charge is lost by itself from gas only: a spring-loaded piston keeps pressing as long as its oil is there."""
    gas = job.choice("front.cartridge_fill") == "gas"
    return tuple(how for how in get_args(State) if gas or how != "charge lost")


def _shut_gaps(job: Job, at: Conditions) -> tuple[float, float]:
    """Gap [mm] of each leg around the shut cartridge, in the user's convention; opened by now, what it was before, else as sold."""
    if state(job, as_sold=False) != "opened into one":
        left, right = found_gaps(job, at)
        return float(left), float(right)
    path = "front.push_gap" if job.entered("front.push_gap") else "standard.gap"
    before = float(own_gap(job, path, lambda: over_the_oil(job, at, "as built"), fitted_rates(job)[0]))
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
    return replace(job, fields={**job.fields, **said})


def _attempted(
    job: Job, at: Conditions, how: State, rates: tuple[Number | None, Number | None], gaps: tuple[float, float], loads: Loads
) -> InState | Impossible:
    try:
        gas = leg_in_state(job, at, "as built" if how == "charge lost" else how, set_shut=True)
        assembly = replace(fork(job, at, as_sold=True), gas=gas)
        if how == "opened into one":
            assert isinstance(gas, OpenLeg)
            left, right = (float(_shown_opened(job, at, gas, rate, gap)) for rate, gap in zip(rates, gaps, strict=True))
        else:
            left, right = gaps
        coil = assembly.springs > 0
        rate, preload = (fitted.rate(job, "front"), fitted.preload(job, "front")) if coil else (0.0, 0.0)
        setup = Setup(rate, preload, 0.5 * (left + right), fitted.split(job, "front"), None, 0.5 * (right - left))
        moved = job.number("front.oil_moved") if how == "oil moved" else 0.0
        return InState(how, assembly, setup, evaluate(assembly, setup, loads, at.exponent), _shown(job, at, setup, rates, moved))
    except Impossible as error:
        return error


def _shown(job: Job, at: Conditions, setup: Setup, rates: tuple[Number | None, Number | None], moved: float) -> float | None:
    """The mean gap [mm] with so much oil [mm3] more around the cartridge."""
    if not moved:
        return float(setup.gap)
    around = over_the_oil(job, at, "as built")
    try:
        pairs = zip(rates, setup.gaps, strict=True)
        return float(np.mean([around.gap_of_gas(around.hanging(rate, gap) - moved, rate) for rate, gap in pairs]))
    except Impossible:  # the oil stands over the rim: no gap is left to be read
        return None


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


def _lost(built: InState, opened: InState, stroke: float, settled: bool, rod: float) -> Lost:
    backing = built.behind(stroke, settled) - opened.behind(stroke, settled)
    return Lost(stroke, backing, backing * rod)


def _replaced(job: Job, built: InState, opened: InState, loads: Loads) -> Replaced:
    """Preload and gap of the opened leg in turn, until rider sag and force at full travel are both those as built."""
    assembly, want, n = opened.assembly, built.figures, built.figures.process.exponent
    setup = replace(opened.setup, gap_split=0.0)  # oil is set anew, so in both legs alike
    for _ in range(_ROUNDS):
        before = setup
        if assembly.springs > 0:
            setup = replace(setup, preload=preload_for_sag(assembly, setup, loads.aboard, want.rider.travel))
        setup = replace(setup, gap=gap_for_end_force(assembly, setup, loads, n, want.end_force))
        if max(abs(float(setup.preload - before.preload)), abs(float(setup.gap - before.gap))) < _CLOSE:
            break
    else:
        raise Impossible("replace", "No preload and gap together give both back.", "Change the springs.", None)
    if float(setup.preload) < 0:
        raise Impossible(
            "replace", f"The sag would need a preload of {float(setup.preload):.1f} mm.", "Softer springs would replace it.", None
        )
    legs = zip(fitted_rates(job), opened.setup.gaps, strict=True)
    oil = float(np.mean([assembly.gas.oil_to_add(rate, gap, rate, setup.gap) for rate, gap in legs]))
    return Replaced(setup, evaluate(assembly, setup, loads, n), oil)
