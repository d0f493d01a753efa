"""Axle loads and what of them the springs carry."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.loads import Axles, fork_axis_load, share_aboard, sprung_load
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible
from tests.support import motorcycle


def test_fork_load_of_the_published_motorcycle():
    """Published 906.30 N along the fork, tolerance 0.01 %; the steering axis leans 0.4189 rad."""
    m = motorcycle
    load = fork_axis_load(m.FRONT_LOAD, m.FRONT_UNSPRUNG, m.RAKE, gravity=m.GRAVITY)
    assert load == pytest.approx(m.FORK_SPRING_LOAD, rel=1e-4)


def test_rear_sprung_mass_of_the_published_motorcycle():
    """Derived 109.84 kg, the swingarm shared by its centre of mass."""
    m = motorcycle
    load = sprung_load(m.REAR_LOAD / m.GRAVITY, m.REAR_UNSPRUNG, "rear", m.GRAVITY)
    assert load / m.GRAVITY == pytest.approx(109.84, abs=0.005)


@given(axle=st.floats(30, 300), unsprung=st.floats(5, 25), rake=st.floats(0, 0.7))
def test_at_rest_the_fork_carries_the_sprung_load_along_its_axis(axle, unsprung, rake):
    along = fork_axis_load(axle * STANDARD_GRAVITY, unsprung, rake)
    assert along == pytest.approx(sprung_load(axle, unsprung, "front") * math.cos(rake))


def test_braking_presses_on_a_leaning_fork_and_not_on_an_upright_one():
    still = fork_axis_load(1000.0, 16.0, 0.45)
    braked = fork_axis_load(1000.0, 16.0, 0.45, braking=800.0, deceleration=6.0)
    assert braked - still == pytest.approx((800.0 - 16.0 * 6.0) * math.sin(0.45))
    assert fork_axis_load(1000.0, 16.0, 0.0, 800.0, 6.0) == pytest.approx(fork_axis_load(1000.0, 16.0, 0.0))


@given(front=st.floats(30, 200), rear=st.floats(30, 200), mass=st.floats(20, 150), share=st.floats(-0.2, 0.8))
def test_an_added_mass_is_shared_and_read_back(front, rear, mass, share):
    bike = Axles(front, rear)
    ridden = bike.plus(mass, share)
    assert ridden.front + ridden.rear == pytest.approx(front + rear + mass)
    assert share_aboard(front, ridden.front, mass) == pytest.approx(share, abs=1e-9)


def test_unsprung_at_or_above_the_axle_load_is_refused_in_words():
    for unsprung in (54.5, 60.0, np.array([16.0, 60.0])):
        with pytest.raises(Impossible, match=r"unsprung mass at the front.*54\.5 kg\. Check the axle reading") as caught:
            sprung_load(54.5, unsprung, "front")
        assert caught.value.field == "front.unsprung"


def test_a_rider_of_no_mass_has_no_share():
    with pytest.raises(Impossible, match="above 0 kg"):
        share_aboard(54.5, 96.2, 0.0)


def test_scalar_and_array_agree():
    masses = np.array([80.0, 96.2, 120.0])
    together = sprung_load(masses, 16.0, "front")
    assert together.tolist() == [float(sprung_load(m, 16.0, "front")) for m in masses]
