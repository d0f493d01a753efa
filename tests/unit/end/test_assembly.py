"""The gap by its whole convention: what is left for gas, in either way of reading it, and the oil that changes it."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from tests.unit.end.test_end import fork, open_leg

gaps, rates = st.floats(90, 220), st.floats(3, 9)


def test_gas_of_a_leg_by_hand():
    """32 mm of the outer tube, the rest below it, eight millimetres beyond the travel, steel by the root of the rates."""
    gas = 32 * 2010.9 + (120 - 32) * 1666.7 + math.pi / 4 * 48.0**2 * 308 - 28e3 - 51e3 * math.sqrt(4.6 / 4.2)
    assert float(open_leg().chamber(4.6, 120.0).volume0) == pytest.approx(gas, rel=1e-12)


def test_gas_of_a_leg_read_with_spring_and_spacer_in_by_hand():
    """Above the oil, 112 mm down: a spacer of 14 ml along the first 40 mm, below it 72 of the spring's 470 mm; none goes in after."""
    leg = open_leg(spring_in=True, spacer=14e3, spacer_length=40.0)
    gas = 32 * 2010.9 + (112 - 32) * 1666.7 + math.pi / 4 * 48.0**2 * 308 - 28e3 - 14e3 - 51e3 * math.sqrt(4.6 / 4.2) * 72 / 470
    assert float(leg.chamber(4.6, 112.0).volume0) == pytest.approx(gas, rel=1e-12)
    shallow = 30 * 2010.9 + math.pi / 4 * 48.0**2 * 308 - 28e3 - 14e3 * 30 / 40
    assert float(leg.chamber(4.6, 30.0).volume0) == pytest.approx(shallow, rel=1e-12)


@given(rate=rates, gap=gaps)
def test_a_leg_has_as_much_more_gas_as_its_gap_is_deeper(rate, gap):
    deeper = open_leg().chamber(rate, gap + 5.0).volume0 - open_leg().chamber(rate, gap).volume0
    assert float(deeper) == pytest.approx(5.0 * 1666.7)


@given(rate=rates, gap=gaps, spring_in=st.booleans(), spacer=st.sampled_from([(0.0, 0.0), (14e3, 40.0), (14e3, 300.0)]))
def test_a_gap_told_in_the_other_convention_is_the_same_leg(rate, gap, spring_in, spacer):
    leg = open_leg(spring_in=spring_in, spacer=spacer[0], spacer_length=spacer[1])
    other = float(leg.other_gap(rate, gap))
    swapped = open_leg(spring_in=not spring_in, spacer=spacer[0], spacer_length=spacer[1])
    assert float(swapped.chamber(rate, other).volume0) == pytest.approx(float(leg.chamber(rate, gap).volume0), rel=1e-6)
    assert (other > gap) == spring_in or math.isclose(other, gap, abs_tol=1e-6)


@given(rate=rates, found=rates, gap=gaps, found_gap=gaps, spring_in=st.booleans())
def test_oil_added_is_what_the_gas_and_the_steel_leave(rate, found, gap, found_gap, spring_in):
    """The leg's room is one: gas + steel + oil stay the same sum, collapsed."""
    leg = open_leg(spring_in=spring_in)
    steel = [51e3 * math.sqrt(r / 4.2) for r in (found, rate)]
    gas = [float(leg.chamber(r, g).volume0) for r, g in ((found, found_gap), (rate, gap))]
    assert float(leg.oil_to_add(found, found_gap, rate, gap)) == pytest.approx(gas[0] + steel[0] - gas[1] - steel[1], abs=1e-3)


@given(gap=gaps, found_gap=gaps)
def test_the_same_spring_needs_the_volume_between_the_two_gaps(gap, found_gap):
    assert float(open_leg().oil_to_add(4.2, found_gap, 4.2, gap)) == pytest.approx((found_gap - gap) * 1666.7, abs=1e-3)


def test_a_leg_without_a_spring_needs_the_volume_between_the_two_gaps_however_it_is_read():
    """A new spring in one leg changes nothing in the other: there only the gap counts."""
    for spring_in in (False, True):
        leg = open_leg(spring_in=spring_in)
        volumes = [float(leg.chamber(None, g).volume0) for g in (145.0, 120.0)]
        assert volumes[0] - volumes[1] == pytest.approx(25.0 * 1666.7)


def test_the_gap_of_lock_is_where_the_last_gas_goes_at_full_travel():
    leg, both = open_leg(others=150e3), fork(others=150e3)
    lock = float(both.lock_gap(Setup(4.4, 0.0, 0.0)))
    assert 0 < lock < 300
    assert float(leg.chamber(4.4, lock).volume0) == pytest.approx(float(leg.chamber(4.4, lock).area) * 300.0, rel=1e-9)
    free, locked = (both.end(Setup(4.4, 5.0, lock + step)) for step in (0.1, -0.1))
    assert np.isfinite(float(free.wheel_force(free.travel, ISOTHERMAL)))
    with pytest.raises(Impossible, match="oil-locked at 300 mm"):
        locked.wheel_force(locked.travel, ISOTHERMAL)


def test_a_fork_locks_where_its_first_leg_does():
    """With a spring in one leg only, that leg holds more and locks first."""
    one = fork(springs=1, others=150e3)
    assert float(one.lock_gap(Setup(4.4, 0.0, 0.0))) == pytest.approx(float(open_leg(others=150e3).lock_gap(4.4)))
    assert float(open_leg(others=150e3).lock_gap(None)) < float(one.lock_gap(Setup(4.4, 0.0, 0.0)))


def test_scalar_and_array_agree():
    legs, many = open_leg(), np.array([4.0, 4.4, 5.0])
    at = np.array([110.0, 120.0, 130.0])
    together = legs.chamber(many, at).volume0
    assert together == pytest.approx([float(legs.chamber(r, g).volume0) for r, g in zip(many, at, strict=True)], rel=1e-14)
    locks = open_leg(others=150e3).lock_gap(many)
    assert locks == pytest.approx([float(open_leg(others=150e3).lock_gap(r)) for r in many], abs=1e-6)
