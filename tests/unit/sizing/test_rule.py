"""The choice a bench would make, on candidates made up for it: yardstick, key, criteria, keep what is in, the least bad.

Common practice, no source: the rule is the trade's habit, written down. The numbers below are worked out by hand.
"""

from types import SimpleNamespace

import numpy as np
import pytest

from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.end.targets import Targets, Windows
from calc.sizing.coil import Sized, size
from calc.sizing.criteria import Criterion, Margins, Room
from calc.sizing.rule import decide, yardstick
from tests.unit.end.test_end import shock

LOADS = Loads(380.0, 980.0, 9.80665)


def candidates(rates, frequency, rider=104.0, free=30.0, multiple=3.1, hard=None, short=None) -> Sized:
    """Candidates whose figures are given, not worked out."""
    shape = np.shape(frequency)
    figures = SimpleNamespace(
        frequency=np.asarray(frequency, dtype=float),
        rider=SimpleNamespace(travel=np.broadcast_to(rider, shape)),
        free=SimpleNamespace(travel_unbounded=np.broadcast_to(free, shape)),
        end_multiple=np.broadcast_to(multiple, shape),
    )
    setup = Setup(np.asarray(rates, dtype=float), np.zeros(shape), 0.0)
    flags = {name: np.asarray(flag) for name, flag in (hard or {}).items()}
    return Sized(setup, setup, figures, Room(), flags, {name: np.asarray(flag) for name, flag in (short or {}).items()})


WINDOWS = Windows(rider_sag=(98.0, 110.0), free_sag=(20.0, 40.0), end_multiple=3.0, frequency=(1.3, 1.6))


def targets(standard=1.45, **changes) -> Targets:
    return Targets(104.0, False, "none", 0.0, frequency=standard, windows=WINDOWS, **changes)


RATES, RIDES = [46.0, 48.0, 50.0, 52.0, 54.0], [1.41, 1.43, 1.45, 1.47, 1.49]


@pytest.mark.parametrize(("fitted", "expected"), [(0, 2), (1, 1), (2, 2), (3, 3), (4, 2)])
def test_what_is_in_stays_within_one_step_and_the_nearest_ride_is_taken_else(fitted, expected):
    done = decide(candidates(RATES, RIDES), targets(), Margins(), fitted, 2.0)
    assert int(done.choice) == expected
    assert int(done.best) == 2
    assert bool(done.kept) == (fitted == expected)


def test_steps_are_counted_by_what_springs_are_sold_as():
    # What is in is a little softer than its marking, which alone would put it beyond one step of the best.
    real = candidates([46.0, 47.7, 50.0, 52.0, 54.0], RIDES)
    assert int(decide(real, targets(), Margins(), 1, 2.0).choice) == 2
    assert int(decide(real, targets(), Margins(), 1, 2.0, called=np.asarray(RATES)).choice) == 1


def test_the_key_is_the_distance_in_the_logarithm_of_frequency_front_and_rear_alike():
    done = decide(candidates(RATES, RIDES), targets(), Margins(), 2, 2.0)
    assert done.key == pytest.approx(np.abs(np.log(np.asarray(RIDES) / 1.45)))


def test_what_is_in_goes_where_it_is_outside_something():
    multiple = [3.1, 2.9, 3.1, 3.1, 3.1]
    assert int(decide(candidates(RATES, RIDES, multiple=multiple), targets(), Margins(), 1, 2.0).choice) == 2
    # an edge never bars by less than the margin
    kept = decide(candidates(RATES, RIDES, multiple=multiple), targets(), Margins(end_multiple=0.15), 1, 2.0)
    assert int(kept.choice) == 1
    assert kept.at_edge(1) == ["end of travel"]


def test_hard_bars_whatever_the_margin():
    hard = {"coil bind": [False, False, True, False, False]}
    wide = Margins(50.0, 50.0, 5.0, 0.5)
    done = decide(candidates(RATES, [1.40, 1.42, 1.45, 1.46, 1.49], hard=hard), targets(), wide, 4, 1.0)
    assert int(done.choice) == 3
    assert int(decide(candidates(RATES, RIDES, hard={"coil bind": [True] * 5}), targets(), wide, 1, 2.0).choice) == -1


def test_a_preload_that_cannot_be_built_bars_only_where_the_sag_leaves_its_window_for_it():
    short = {"preload below": [False, False, True, True, True]}
    sagging = [104.0, 104.0, 99.0, 97.0, 90.0]
    done = decide(candidates(RATES, RIDES, rider=sagging, short=short), targets(1.49), Margins(), 0, 0.1)
    assert int(done.choice) == 2
    assert done.outside(3) == ["rider sag"]


def test_where_all_are_outside_something_the_one_least_outside_is_taken_and_that_is_known():
    done = decide(candidates(RATES, RIDES, free=[50.0, 48.0, 46.0, 44.0, 43.0]), targets(), Margins(), 0, 2.0)
    assert int(done.choice) == 4
    assert not bool(done.criteria_met)
    assert int(done.best) == -1


@pytest.mark.parametrize(
    ("standard", "margin", "source", "measured_by"),
    [
        (1.45, 0.0, "standard", 1.45),
        (1.2, 0.05, "softest usual", 1.3),
        (1.2, 0.15, "standard", 1.2),
        (1.8, 0.1, "stiffest usual", 1.6),
    ],
)
def test_a_standard_setup_outside_the_usual_range_by_more_than_its_margin_gives_way_to_the_edge(
    standard, margin, source, measured_by
):
    found = yardstick(candidates(RATES, RIDES), targets(standard), Margins(frequency=margin))
    assert (found.source, found.frequency) == (source, measured_by)


def test_a_wish_takes_the_standard_s_place():
    assert yardstick(candidates(RATES, RIDES), targets(wish=1.5), Margins()).frequency == 1.5
    by_free = yardstick(candidates(RATES, RIDES, free=[24.0, 26.0, 28.0, 30.0, 32.0]), targets(free_sag=27.0), Margins())
    assert by_free.source == "free sag"
    assert float(by_free.frequency) == pytest.approx(1.44)


def test_inside_at_the_edge_outside():
    one = Criterion(np.array([90.0, 97.0, 99.0, 104.0, 112.0]), 98.0, 110.0, 1.5, 6.0)
    assert one.outside.tolist() == [True, False, False, False, True]
    assert one.at_edge.tolist() == [False, True, True, False, False]
    assert one.excess == pytest.approx([(8 - 1.5) / 6, 0, 0, 0, (2 - 1.5) / 6])


def test_many_loads_at_once_choose_as_each_alone():
    loads = np.array([900.0, 980.0, 1060.0])
    rates, limits = np.array([44.0, 48.0, 52.0, 56.0]), Limits((2.0, 24.0), None)
    many = size(shock(), rates[:, None], Loads(380.0, loads, 9.80665), 1.33, targets(), limits)
    together = decide(many, targets(), Margins(5.0, 5.0, 0.5), 1, 2.0)
    for index, load in enumerate(loads):
        own = Loads(380.0, load, 9.80665)
        one = size(shock(), rates, own, 1.33, targets(), limits)
        assert int(together.choice[index]) == int(decide(one, targets(), Margins(5.0, 5.0, 0.5), 1, 2.0).choice)


def test_a_softer_spring_that_no_preload_holds_up_cures_no_free_sag():
    """At 46 the bike hangs low enough to have some free sag: that hides what 50 shows. What is in may stay so all the same."""
    short, free = {"preload above": [True, True, False, False, False]}, [21.0, 19.0, 18.0, 17.0, 16.0]
    heavy = candidates(RATES, RIDES, free=free, short=short)
    done = decide(heavy, targets(), Margins(), 4, 2.0)
    assert done.idle.tolist() == [True, False, False, False, False], "the first beyond the yardstick may be short"
    assert not done.criteria_met
    assert int(done.choice) == 1, "the least outside of the others"
    assert int(decide(heavy, targets(), Margins(), 0, 2.0).choice) == 0


def test_a_stiffer_spring_without_preload_cures_no_free_sag():
    """At 54 the bike stands too high for the free sag to be much: that hides what 50 shows. What is in may stay so all the same."""
    short, free = {"preload below": [False, False, False, True, True]}, [48.0, 46.0, 44.0, 42.0, 39.0]
    light = candidates(RATES, RIDES, free=free, short=short)
    done = decide(light, targets(), Margins(), 0, 2.0)
    assert done.idle.tolist() == [False, False, False, False, True], "the first beyond the yardstick may leave none"
    assert not done.criteria_met
    assert int(done.choice) == 3, "the least outside of the others"
    assert int(decide(light, targets(), Margins(), 4, 2.0).choice) == 4
    # the nearest to the yardstick itself may leave none too
    assert (
        int(
            decide(
                candidates(RATES, RIDES, short={"preload below": [False, False, True, True, True]}), targets(), Margins(), 0, 2.0
            ).choice
        )
        == 2
    )
