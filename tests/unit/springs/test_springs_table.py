"""A progressive spring from its table: the pairs themselves, the slopes of energy and force, and what is refused."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.impossible import Impossible
from calc.springs.table import ForceTable, TableSpring

PAIRS = ((0.0, 0.0), (50.0, 210.0), (100.0, 440.0), (180.0, 900.0), (300.0, 1900.0))


@st.composite
def tables(draw) -> ForceTable:
    """Any table that rises."""
    steps = draw(st.lists(st.tuples(st.floats(2.0, 60.0), st.floats(5.0, 400.0)), min_size=1, max_size=8))
    return ForceTable(tuple((float(x), float(f)) for x, f in np.cumsum(np.array(steps), axis=0)))


@given(tables(), st.floats(0.0, 1.0))
def test_it_goes_through_every_pair_and_never_falls(table, part):
    for length, force in table.pairs:
        assert float(table.force(length)) == pytest.approx(force, rel=1e-9)
    line = np.linspace(0.0, table.reach, 400)
    assert np.all(np.diff(table.force(line)) >= -1e-9)
    assert float(table.rate_at(part * table.reach)) >= -1e-9


@given(tables(), st.floats(0.01, 1.3), st.floats(-20.0, 30.0), st.floats(0.5, 2.0))
def test_force_is_the_slope_of_energy_and_rate_the_slope_of_force(table, part, preload, scale):
    spring, stroke, step = TableSpring(table, scale * table.mean_rate, preload), part * table.reach, 1e-4
    edges = [0.0, *(x for x, _ in table.pairs)]
    if any(abs(preload + stroke - x) < 2 * step for x in edges):
        return
    energy = float(spring.energy(stroke + step) - spring.energy(stroke - step)) / (2 * step)
    force = float(spring.force(stroke + step) - spring.force(stroke - step)) / (2 * step)
    assert energy == pytest.approx(float(spring.force(stroke)), rel=1e-6, abs=1e-4)
    assert force == pytest.approx(float(spring.rate_at(stroke)), rel=1e-5, abs=1e-4)
    assert float(spring.energy(0.0)) == 0.0


@given(tables(), st.floats(0.0, 1.0), st.floats(0.5, 2.0))
def test_shortening_is_the_inverse_of_force(table, part, scale):
    spring = TableSpring(table, scale * table.mean_rate, 0.0)
    force = float(spring.force(part * table.reach))
    assert float(spring.force(spring.shortened_by(force))) == pytest.approx(force, rel=1e-7, abs=1e-6)


def test_a_straight_table_is_a_linear_spring():
    spring = TableSpring(ForceTable(((50.0, 220.0), (100.0, 440.0), (300.0, 1320.0))), 4.4, 5.0)
    for stroke in (0.0, 12.5, 77.0, 295.0, 310.0):  # the last lies past the table, where the last slope goes on
        assert float(spring.force(stroke)) == pytest.approx(4.4 * (5.0 + stroke))
        assert float(spring.rate_at(stroke)) == pytest.approx(4.4)
        assert float(spring.energy(stroke)) == pytest.approx(2.2 * ((5.0 + stroke) ** 2 - 25.0))
    assert float(spring.shortened_by(-44.0)) == pytest.approx(-10.0)
    assert float(spring.shortened_by(1408.0)) == pytest.approx(320.0)


def test_another_mean_rate_scales_every_force():
    table = ForceTable(PAIRS)
    assert (table.mean_rate, table.reach) == (pytest.approx(1900 / 300), 300.0)
    line = np.linspace(0.0, 290.0, 30)
    one, other = TableSpring(table, table.mean_rate, 3.0), TableSpring(table, 1.2 * table.mean_rate, 3.0)
    for name in ("force", "rate_at", "energy"):
        assert getattr(other, name)(line) == pytest.approx(1.2 * getattr(one, name)(line))


def test_arrays_give_what_scalars_give():
    table = ForceTable(PAIRS)
    rates, strokes = np.array([[5.0], [7.0]]), np.array([5.0, 145.0, 250.0])
    many = TableSpring(table, rates, 4.0)
    for row, rate in enumerate(rates[:, 0]):
        one = TableSpring(table, float(rate), 4.0)
        for name in ("force", "rate_at", "energy"):
            assert np.asarray(getattr(many, name)(strokes))[row] == pytest.approx(
                [float(getattr(one, name)(float(s))) for s in strokes]
            )


@pytest.mark.parametrize(
    ("pairs", "words"),
    [
        (((0.0, 20.0), (50.0, 210.0)), r"starts with 20 N at 0 mm\. At its free length a spring gives 0 N"),
        (((0.0, 0.0), (50.0, 210.0), (60.0, 200.0)), r"does not rise from 50 mm \(210 N\) to 60 mm \(200 N\)"),
        (((50.0, 210.0), (60.0, 210.0)), "does not rise"),
        (((50.0, 0.0), (60.0, 210.0)), r"does not rise from 0 mm \(0 N\) to 50 mm \(0 N\)"),
    ],
)
def test_a_table_that_no_spring_has_is_refused(pairs, words):
    with pytest.raises(Impossible, match=words):
        ForceTable(pairs).force(1.0)


def test_a_force_past_the_last_pair_is_found_whatever_rounds():
    """The cubic at its last knot may round to less than the pair."""
    draw, rounded = np.random.default_rng(5), 0
    for _ in range(300):
        length = np.cumsum(np.concatenate([[0.0], draw.uniform(3.0, 60.0, 3)]))
        force = np.cumsum(np.concatenate([[0.0], draw.uniform(20.0, 900.0, 3)]))
        table = ForceTable(tuple(zip(length.tolist(), force.tolist(), strict=True)))
        rounded += float(table.force(length[-1])) < force[-1]
        assert float(table.shortened_by(force[-1] * 1.5)) > length[-1] - 1e-6
        assert float(table.shortened_by(force[-1])) == pytest.approx(length[-1], abs=1e-6)
    assert rounded > 5, "no table of these rounds: the test shows nothing"
