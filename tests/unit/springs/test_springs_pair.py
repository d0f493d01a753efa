"""Stacked and nested springs: by hand, by the energy of both springs, and by the laws that hold for every spring."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.springs.helical import LinearSpring
from calc.springs.pair import NestedSprings, StackedSprings

RATE, ROOM = st.floats(1.0, 100.0), st.floats(2.0, 80.0)
PRELOAD, STROKE = st.floats(-20.0, 40.0), st.floats(0.5, 300.0)


def slopes_hold(spring, stroke: float, edges: list[float]) -> None:
    """Force is the slope of energy and rate that of force, away from the edges where the rate steps."""
    step = 1e-3
    if any(abs(spring.preload + stroke - edge) < 2 * step for edge in edges):
        return
    energy = float(spring.energy(stroke + step) - spring.energy(stroke - step)) / (2 * step)
    force = float(spring.force(stroke + step) - spring.force(stroke - step)) / (2 * step)
    assert energy == pytest.approx(float(spring.force(stroke)), rel=1e-6, abs=1e-5)
    assert force == pytest.approx(float(spring.rate_at(stroke)), rel=1e-6, abs=1e-5)
    assert float(spring.energy(0.0)) == 0.0


@given(rate=RATE, second=RATE, room=ROOM, preload=PRELOAD, stroke=STROKE)
def test_stacked_slopes(rate, second, room, preload, stroke):
    spring = StackedSprings(rate, second, room, preload)
    slopes_hold(spring, stroke, [0.0, float(spring.closing)])


@given(rate=RATE, second=RATE, later=ROOM, preload=PRELOAD, stroke=STROKE)
def test_nested_slopes(rate, second, later, preload, stroke):
    slopes_hold(NestedSprings(rate, second, later, preload), stroke, [0.0, later])


@given(rate=RATE, second=RATE, room=ROOM, stroke=STROKE)
def test_a_stack_is_two_springs_under_one_force(rate, second, room, stroke):
    """Second method: under the stack's own force each spring is shortened by F / k, the second no further than its room."""
    force = float(StackedSprings(rate, second, room, 0.0).force(stroke))
    assert force / rate + min(force / second, room) == pytest.approx(stroke, rel=1e-9)


@given(rate=RATE, second=RATE, room=ROOM, stroke=STROKE)
def test_a_stack_stores_what_both_springs_store(rate, second, room, stroke):
    spring = StackedSprings(rate, second, room, 0.0)
    force = float(spring.force(stroke))
    closed = min(force / second, room)
    assert float(spring.energy(stroke)) == pytest.approx(0.5 * force**2 / rate + 0.5 * second * closed**2, rel=1e-9)


@given(rate=RATE, second=RATE, later=ROOM, preload=PRELOAD, stroke=STROKE)
def test_nested_is_two_plain_springs(rate, second, later, preload, stroke):
    both = LinearSpring(rate, preload), LinearSpring(second, preload - later)
    nested = NestedSprings(rate, second, later, preload)
    assert float(nested.force(stroke)) == pytest.approx(float(sum(s.force(stroke) for s in both)))
    assert float(nested.energy(stroke)) == pytest.approx(float(sum(s.energy(stroke) for s in both)))


@given(rate=RATE, second=RATE, room=ROOM, shortened=STROKE, stacked=st.booleans())
def test_shortening_is_the_inverse_of_force(rate, second, room, shortened, stacked):
    spring = (StackedSprings if stacked else NestedSprings)(rate, second, room, 0.0)
    assert float(spring.shortened_by(spring.force(shortened))) == pytest.approx(shortened, rel=1e-9)


def test_by_hand():
    """6 on 3 N/mm is 2 N/mm; the second, 20 mm of room, closes at 60 N after 30 mm; then 6 N/mm."""
    stack = StackedSprings(6.0, 3.0, 20.0, 10.0)
    assert (float(stack.soft_rate), float(stack.closing)) == (2.0, 30.0)
    assert [float(stack.force(s)) for s in (0.0, 20.0, 25.0)] == [20.0, 60.0, 90.0]
    assert [float(stack.rate_at(s)) for s in (19.9, 20.0)] == [2.0, 6.0]
    assert float(StackedSprings(6.0, 3.0, 20.0, -5.0).rate_at(4.9)) == 0.0
    nested = NestedSprings(4.0, 2.0, 50.0, 10.0)
    assert [float(nested.force(s)) for s in (0.0, 40.0, 60.0)] == [40.0, 200.0, 320.0]
    assert [float(nested.rate_at(s)) for s in (39.9, 40.0)] == [4.0, 6.0]
    assert float(NestedSprings(4.0, 2.0, 50.0, -5.0).rate_at(4.9)) == 0.0


def test_below_no_force_the_first_line_goes_on():
    assert float(StackedSprings(6.0, 3.0, 20.0, 0.0).shortened_by(-20.0)) == -10.0
    assert float(NestedSprings(4.0, 2.0, 50.0, 0.0).shortened_by(-20.0)) == -5.0


@pytest.mark.parametrize("kind", [StackedSprings, NestedSprings])
def test_arrays_give_what_scalars_give(kind):
    rates, strokes = np.array([[4.0], [6.0]]), np.array([5.0, 45.0, 120.0])
    many = kind(rates, 3.0, 20.0, 4.0)
    for row, rate in enumerate(rates[:, 0]):
        one = kind(float(rate), 3.0, 20.0, 4.0)
        for name in ("force", "rate_at", "energy", "shortened_by"):
            assert np.asarray(getattr(many, name)(strokes))[row].tolist() == [float(getattr(one, name)(float(s))) for s in strokes]
