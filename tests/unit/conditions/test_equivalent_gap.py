"""A change of condition told as millimetres of gap: there and back."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.conditions.equivalent_gap import gap_for_end_force
from calc.end.figures import evaluate
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.gas.warm import TUBE_EXPANSION, Warmth
from calc.impossible import Impossible
from tests.unit.end.test_end import fork

LOADS = Loads(380.0, 780.0, 9.80665)
BUILT = Setup(4.4, 4.0, 120.0)
HOT = Warmth(293.15, 293.15, 333.15, 560e3, TUBE_EXPANSION["aluminium"])


def end_force(assembly, gap=120.0):
    return evaluate(assembly, Setup(4.4, 4.0, gap), LOADS, 1.33).end_force


@settings(max_examples=10)
@given(gap=st.floats(80, 200))
def test_the_gap_of_a_legs_own_force_is_its_gap(gap):
    assert float(gap_for_end_force(fork(), BUILT, LOADS, 1.33, end_force(fork(), gap))) == pytest.approx(gap, abs=1e-4)


@settings(max_examples=10)
@given(now=st.floats(270, 360), ambient=st.floats(0.07, 0.1013))
def test_what_it_acts_like_and_what_restores_it(now, ambient):
    """The built leg at the gap that the change acts like has the changed leg's force; the changed leg at the restoring gap the built's."""
    built, changed = fork(), fork(ambient=ambient, warmth=Warmth(293.15, 293.15, now, 560e3, HOT.tube))
    like = float(gap_for_end_force(built, BUILT, LOADS, 1.33, end_force(changed)))
    assert end_force(built, like) == pytest.approx(end_force(changed), rel=1e-6)
    restoring = float(gap_for_end_force(changed, BUILT, LOADS, 1.33, end_force(built)))
    assert end_force(changed, restoring) == pytest.approx(end_force(built), rel=1e-6)
    assert (like < 120.0) == (end_force(changed) > end_force(built)) == (restoring > 120.0)


def test_hot_acts_like_less_gap():
    """Oil takes 14.1 ml and the tube gives 1.9 of a 16.7 cm2 tube: 7.3 mm. A gas hotter by 13.6 % presses at the end, where
    145 ml are left, as 1 - 1.136^(-1/1.33) = 9 % less volume would: 13 ml, 8 mm; what it adds at sag is a few more."""
    like = float(gap_for_end_force(fork(), BUILT, LOADS, 1.33, end_force(fork(warmth=HOT)))) - 120.0
    assert -20.0 < like < -7.3 - 8.0


def test_many_at_once():
    forces = np.array([end_force(fork(), gap) for gap in (90.0, 120.0, 150.0)])
    assert gap_for_end_force(fork(), BUILT, LOADS, 1.33, forces) == pytest.approx([90.0, 120.0, 150.0], abs=1e-4)


def test_a_force_that_no_gap_gives_names_what_can_be_had():
    with pytest.raises(Impossible, match=r"No gap gives an end force of 1\.00 kN: from \d\.\d\d to"):
        gap_for_end_force(fork(), BUILT, LOADS, 1.33, 1000.0)
