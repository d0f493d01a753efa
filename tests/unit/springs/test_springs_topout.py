"""Top-out springs and bump rubbers: balance at zero, slopes, and what stays out of the end force."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.assembly import Stops
from calc.end.sag import settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL, Process
from calc.springs.helical import LinearSpring
from calc.springs.topout import TopOutSpring, held_by
from tests.unit.end.test_end import fork, shock

HANGING = 16.0 * 9.80665


@given(rate=st.floats(2, 200), held=st.floats(0, 1500), stroke=st.floats(0.01, 60))
def test_slopes(rate, held, stroke):
    spring, step = TopOutSpring(rate, held), 1e-4
    if abs(held / rate - stroke) < 2 * step:
        return
    energy = float(spring.energy(stroke + step) - spring.energy(stroke - step)) / (2 * step)
    force = float(spring.force(stroke + step) - spring.force(stroke - step)) / (2 * step)
    assert energy == pytest.approx(float(spring.force(stroke)), rel=1e-6, abs=1e-4)
    assert force == pytest.approx(float(spring.rate_at(stroke)), rel=1e-6, abs=1e-4)
    assert float(spring.energy(0.0)) == 0.0


def test_it_never_pushes_out():
    assert float(held_by(20.0, 70.0)) == 90.0
    assert float(held_by(-90.0, 70.0)) == 0.0
    assert float(TopOutSpring(10.0, 50.0).force(5.0)) == 0.0


@given(rate=st.floats(3, 7), preload=st.floats(0, 20), topout=st.floats(5, 60))
def test_hanging_is_balanced_by_the_weight_below(rate, preload, topout):
    """At zero stroke the wheel force is the weight that hangs there, upside down, whatever the preload: fork and shock."""
    for assembly, gap in ((fork(), 120.0), (fork(springs=1), 120.0), (shock(), 0.0)):
        end = replace(assembly, stops=Stops(topout, HANGING)).end(Setup(rate * (10 if gap == 0 else 1), preload, gap))
        assert float(end.wheel_force(0.0, ISOTHERMAL)) == pytest.approx(-HANGING, rel=1e-9)


def test_beyond_its_reach_nothing_changes():
    plain, stopped = fork(), replace(fork(), stops=Stops(15.0, HANGING))
    one, other = (a.end(Setup(4.6, 3.0, 120.0)) for a in (plain, stopped))
    reach = float(other.struts[0][0].springs[-1].held) / 15.0
    assert 3.0 < reach < 30.0
    travel = one.motion.travel(np.array([reach + 0.01, 66.0, 300.0]))
    assert other.wheel_force(travel, Process(1.33)) == pytest.approx(one.wheel_force(travel, Process(1.33)))
    assert float(settle(other, 300.0).stroke) == pytest.approx(float(settle(one, 300.0).stroke))
    assert (
        float(other.wheel_rate(one.motion.travel(1.0), ISOTHERMAL))
        > float(one.wheel_rate(one.motion.travel(1.0), ISOTHERMAL)) + 30.0
    )


def test_with_a_top_out_spring_a_light_load_still_sags():
    """Preload alone holds 60 N without one; balanced on one, any load moves the leg."""
    assert bool(settle(fork().end(Setup(4.6, 15.0, 120.0)), 60.0).topped_out)
    assert float(settle(replace(fork(), stops=Stops(15.0, HANGING)).end(Setup(4.6, 15.0, 120.0)), 60.0).stroke) > 1.0


def test_a_rubber_is_in_no_force_and_no_energy_but_its_own():
    rubber = LinearSpring(40.0, 30.0 - 300.0)
    plain, end = fork().end(Setup(4.6, 3.0, 120.0)), replace(fork(), stops=Stops(rubber=rubber)).end(Setup(4.6, 3.0, 120.0))
    full, process = end.travel, Process(1.33, 66.0)
    for name in ("wheel_force", "wheel_rate", "energy"):
        assert float(getattr(end, name)(full, process)) == float(getattr(plain, name)(full, process))
    assert float(end.rubber_wheel_force(full)) == pytest.approx(2 * 40.0 * 30.0 * float(end.motion.ratio(full)))
    assert float(end.rubber_energy(full)) == pytest.approx(2 * 0.5 * 40.0 * 30.0**2)
    assert float(end.rubber_energy(end.motion.travel(269.0))) == 0.0
    assert (end.has_rubber, plain.has_rubber) == (True, False)
    assert float(plain.rubber_wheel_force(full)) == float(plain.rubber_energy(full)) == 0.0
