"""How the strut follows the wheel."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.impossible import Impossible
from calc.motion.ratio import ForkMotion, LeverageMotion
from tests.support import motorcycle

leverages, falls, travels = st.floats(1.0, 4.0), st.floats(-0.2, 0.6), st.floats(100, 350)


def test_front_wheel_rate_of_the_published_motorcycle():
    """Derived 20 370 N/m: the fork's 17 000 N/m over cos2 of the rake (Cossalter, Motorcycle Dynamics, 2nd ed.; from memory)."""
    assert motorcycle.FORK_RATE * ForkMotion(motorcycle.RAKE).ratio(0.0) ** 2 == pytest.approx(
        motorcycle.FRONT_WHEEL_RATE, rel=1e-4
    )


@given(rake=st.floats(0, 0.7), travel=st.floats(0, 300))
def test_a_fork_moves_along_its_axis(rake, travel):
    motion = ForkMotion(rake)
    assert motion.stroke(travel) * math.cos(rake) == pytest.approx(travel)
    assert motion.travel(motion.stroke(travel)) == pytest.approx(travel)
    assert motion.slope(travel) == 0.0


@given(leverage=leverages, fall=falls, full=travels, part=st.floats(0.01, 0.99))
def test_ratio_is_the_slope_of_stroke_and_slope_that_of_ratio(leverage, fall, full, part):
    motion, z, step = LeverageMotion(leverage, fall, full), part * full, 1e-3
    assert (motion.stroke(z + step) - motion.stroke(z - step)) / (2 * step) == pytest.approx(motion.ratio(z), rel=1e-6)
    assert (motion.ratio(z + step) - motion.ratio(z - step)) / (2 * step) == pytest.approx(motion.slope(z), abs=1e-8)


@given(leverage=leverages, fall=falls, full=travels, part=st.floats(0, 1))
def test_travel_is_the_inverse_of_stroke(leverage, fall, full, part):
    motion = LeverageMotion(leverage, fall, full)
    assert motion.travel(motion.stroke(part * full)) == pytest.approx(part * full, abs=1e-8)


@given(leverage=leverages, fall=falls, full=travels)
def test_average_and_fall_are_what_was_asked_for(leverage, fall, full):
    motion = LeverageMotion(leverage, fall, full)
    assert full / motion.stroke(full) == pytest.approx(leverage)
    assert (1 / motion.ratio(full)) / (1 / motion.ratio(0.0)) == pytest.approx(1 - fall)


@pytest.mark.parametrize(("leverage", "fall"), [(2.5, 1.0), (2.5, 1.4), (0.0, 0.2), (-2.5, 0.2)])
def test_a_leverage_of_nothing_or_less_is_refused(leverage, fall):
    with pytest.raises(Impossible, match=r"zero or below.*smaller fall"):
        LeverageMotion(leverage, fall, 300.0)


def test_scalar_and_array_agree():
    motion, travel = LeverageMotion(2.5, 0.22, 305.0), np.linspace(0, 305, 7)
    for name in ("stroke", "ratio", "slope"):
        assert getattr(motion, name)(travel).tolist() == [float(getattr(motion, name)(z)) for z in travel]
