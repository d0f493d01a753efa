"""Landing from a height: against the closed form of a spring, and against the motion itself, worked out in time by scipy."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from calc.demo import jobs
from calc.end.end import End
from calc.end.landing import flat_drop, landing_travel
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import Process
from calc.job import load
from calc.model.inputs import end_inputs
from calc.motion.ratio import LeverageMotion
from calc.springs.helical import LinearSpring
from tests.support.plain import report

LOAD, RATE, LEVERAGE, TRAVEL = 600.0, 80.0, 2.0, 250.0


def sprung(preload: float) -> End:
    return End(((Strut((LinearSpring(RATE, preload),), (), 0.1), 1.0),), LeverageMotion(LEVERAGE, 0.0, TRAVEL), TRAVEL)


@pytest.mark.parametrize("drop", [20.0, 100.0, 300.0])
@pytest.mark.parametrize("preload", [0.0, 8.0])
def test_of_a_spring_it_is_the_root_of_a_quadratic(drop, preload):
    """k q^2 z^2 / 2 + k p q z = W (h + z): Halliday, Resnick, Walker, Fundamentals of Physics, block dropped on a spring."""
    k, force = RATE / LEVERAGE**2, RATE * preload / LEVERAGE
    slope = force - LOAD
    closed = (-slope + np.sqrt(slope**2 + 2.0 * k * LOAD * drop)) / k
    assert closed < TRAVEL
    assert float(landing_travel(sprung(preload), LOAD, drop, 1.33)) == pytest.approx(closed, abs=1e-5)


@pytest.mark.parametrize("key", ["enduro", "trail", "high pass"])
@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_mass_that_falls_turns_where_the_energies_meet(key, axle):
    """Newton's second law in time, the wheel on the ground and the mass coming down at the speed of the fall; undamped."""
    here = end_inputs(load(jobs()[key]), axle)
    end, weight, n = here.assembly.end(here.as_found), float(here.loads.aboard), float(here.exponent)
    drop = 0.3 * float(flat_drop(end, weight, n))
    mass = weight / 9.80665  # kg; speeds in m/s, lengths in m

    def fall(_, state):
        force = float(end.wheel_force(1000.0 * state[0], Process(n)))
        return [state[1], 9.80665 - force / mass]

    def turned(_, state):
        return state[1]

    turned.terminal, turned.direction = True, -1
    run = solve_ivp(fall, (0.0, 2.0), [0.0, (2.0 * 9.80665 * drop / 1000.0) ** 0.5], events=turned, rtol=1e-9, atol=1e-9)
    assert 1000.0 * run.y[0, -1] == pytest.approx(float(landing_travel(end, weight, drop, n)), abs=0.01)


def test_the_drop_to_full_travel_is_the_one_from_which_all_of_it_is_used():
    here = end_inputs(load(jobs()["enduro"]), "front")
    end, weight = here.assembly.end(here.as_found), here.loads.aboard
    drop = float(flat_drop(end, weight, 1.33))
    found = brentq(lambda h: float(landing_travel(end, weight, h, 1.33)) - 0.999 * float(end.travel), 0.1 * drop, drop)
    assert found < drop
    assert float(landing_travel(end, weight, 1.001 * drop, 1.33)) == float(end.travel)
    assert float(landing_travel(end, weight, 0.999 * drop, 1.33)) < float(end.travel)


def test_arrays_are_what_scalars_are():
    drops, end = np.array([50.0, 200.0, 5000.0]), sprung(5.0)
    one_by_one = [float(landing_travel(end, LOAD, drop, 1.33)) for drop in drops]
    assert landing_travel(end, LOAD, drops, 1.33) == pytest.approx(one_by_one, abs=1e-6)


def test_the_report_tells_the_drop_that_the_law_does():
    chosen = report(jobs()["enduro"])["ends"]["front"]["chosen"]
    here = end_inputs(load(jobs()["enduro"]), "front")
    setup = Setup(chosen["rate"]["value"], chosen["preload"]["value"], chosen["gap"]["value"])
    drop = float(flat_drop(here.assembly.end(setup), here.loads.aboard, here.exponent)) / 10.0
    assert chosen["flat_drop"]["value"] == pytest.approx(drop, abs=1e-6)
    said = f"a flat drop of {chosen['flat_drop']['text']} {chosen['flat_drop']['plus_minus_text']} cm."
    assert said in " ".join(report(jobs()["enduro"])["ends"]["front"]["why"])
