"""Sizing hits its own targets: the unrounded root tightly, what can be built within its step; what cannot be built is named."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.end.figures import evaluate
from calc.end.limits import Limits
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.gas.chamber import ISOTHERMAL, Process
from calc.job import load
from calc.job.starter import start
from calc.sizing.choice import size_end
from calc.sizing.coil import size
from calc.sizing.offers import offers, series
from calc.sizing.on_offer import step_of
from tests.support.documents import changed, demo
from tests.unit.end.test_end import fork, shock

RATES = np.array([4.2, 4.4, 4.6, 4.8])
WIDE = Limits((0.0, 99.0), (0.0, 499.0))
LOADS = Loads(380.0, 790.0, 9.80665)


def front_targets(**changes) -> Targets:
    return Targets(**(dict(sag=66.0, sag_is_stroke=True, end_kind="force", end_amount=5600.0, frequency=2.09) | changes))


@given(load=st.floats(700, 900), sag=st.floats(55, 80), multiple=st.floats(6.8, 8.5), n=st.floats(1.0, 1.4))
@settings(max_examples=25)
def test_front_hits_its_targets(load, sag, multiple, n):
    """Sag to 1e-6 mm and end force to 1e-6 before rounding; after it within what half a millimetre of preload and gap moves."""
    wanted = front_targets(sag=sag, end_amount=multiple * load)
    sized = size(fork(), RATES, Loads(380.0, load, 9.80665), n, wanted, WIDE)
    reached = ~sized.short["end unreachable"]
    exact = fork().end(Setup(RATES, sized.exact.preload, sized.exact.gap))
    travel = exact.motion.travel(sag)
    seated = reached & (np.asarray(sized.exact.preload) >= 0)  # no spring is built loose
    assert exact.wheel_force(travel, ISOTHERMAL)[seated] == pytest.approx(load, rel=1e-8)
    assert exact.wheel_force(exact.travel, Process(n, sag))[seated] == pytest.approx(wanted.end_amount, rel=1e-6)
    built = seated
    assert sized.setup.preload[built] == pytest.approx(np.asarray(sized.exact.preload)[built], abs=0.5)
    step_sag = 0.5 + 0.5  # a millimetre of preload moves sag by less than itself, one of gap by far less
    assert sized.figures.rider.stroke[built] == pytest.approx(sag, abs=step_sag)
    nearby = [np.asarray(fork().end(Setup(RATES, sized.exact.preload + p, sized.exact.gap + g)).wheel_force(exact.travel, Process(n, sag + s)))
              for p, g, s in ((0.5, -0.5, -1.0), (-0.5, 0.5, 1.0))]  # fmt: skip
    low, high = np.minimum(*nearby) - 1.0, np.maximum(*nearby) + 1.0
    assert np.all((low <= sized.figures.end_force)[built] & (sized.figures.end_force <= high)[built])


@given(load=st.floats(700, 900), joules=st.floats(420, 620))
@settings(max_examples=15)
def test_front_hits_an_energy(load, joules):
    wanted = front_targets(end_kind="energy", end_amount=joules * 1000.0)
    sized = size(fork(), RATES, Loads(380.0, load, 9.80665), 1.33, wanted, WIDE)
    end = fork().end(Setup(RATES, sized.exact.preload, sized.exact.gap))
    reached = ~sized.short["end unreachable"] & (np.asarray(sized.exact.preload) >= 0)
    assert end.energy(end.travel, Process(1.33))[reached] == pytest.approx(wanted.end_amount, rel=1e-6)


@given(load=st.floats(880, 1100))
@settings(max_examples=15)
def test_rear_hits_its_sag(load):
    rates, wanted = np.array([46.0, 50.0, 54.0]), Targets(104.0, False, "none", 0.0)
    sized = size(shock(), rates, Loads(380.0, load, 9.80665), 1.33, wanted, Limits((0.0, 99.0), None))
    exact = shock().end(Setup(rates, sized.exact.preload, 0.0))
    assert exact.wheel_force(104.0, ISOTHERMAL) == pytest.approx(load, rel=1e-12)
    ratio = float(exact.motion.ratio(104.0))
    assert sized.figures.rider.travel == pytest.approx(104.0, abs=0.5 / ratio + 0.2)  # half a millimetre at the collar


def test_every_shown_figure_is_that_of_the_rounded_setup():
    sized = size(fork(), RATES, LOADS, 1.33, front_targets(), WIDE)
    assert np.all(np.asarray(sized.setup.preload) == np.round(sized.setup.preload))
    assert np.all(np.asarray(sized.setup.gap) == np.round(sized.setup.gap))
    for index in range(4):
        again = evaluate(
            fork(), Setup(*(float(np.asarray(x)[index]) for x in (RATES, sized.setup.preload, sized.setup.gap))), LOADS, 1.33
        )
        one = sized.figures.at(index)
        for name in ("frequency", "wheel_rate", "end_force", "end_multiple", "energy", "energy_per_mass"):
            assert getattr(one, name) == pytest.approx(float(getattr(again, name)), rel=1e-6)
        assert one.free.stroke == pytest.approx(float(again.free.stroke), abs=1e-5)


def test_stiffer_springs_need_less_preload_and_less_gas_force():
    sized = size(fork(), RATES, LOADS, 1.33, front_targets(), WIDE)
    assert np.all(np.diff(sized.exact.preload) < 0)
    assert np.all(np.diff(sized.exact.gap) > 0)
    assert np.all(np.diff(sized.figures.frequency) > 0)


@given(rate=st.floats(3, 9), gap=st.floats(110, 200), travel=st.floats(20, 90))
def test_preload_for_sag_holds_the_load_there(rate, gap, travel):
    load = float(fork().end(Setup(rate, 5.0, gap)).wheel_force(travel, ISOTHERMAL))
    assert float(preload_for_sag(fork(), Setup(rate, 0.0, gap), load, travel)) == pytest.approx(5.0, abs=1e-9)


@pytest.mark.parametrize(
    ("limits", "name", "expected"),
    [
        (Limits((4.5, 99.0), None, preload_read=(True, False)), "preload below", lambda wanted, gap: wanted < 5),
        (Limits((0.0, 4.5), None, preload_read=(False, True)), "preload above", lambda wanted, gap: wanted > 4),
        (Limits((4.5, 99.0), None), "preload low", lambda wanted, gap: wanted < 4.5),
        (Limits((0.0, 4.5), None), "preload high", lambda wanted, gap: wanted > 4.5),
        (Limits((0.0, 99.0), (119.5, 499.0)), "gap below", lambda wanted, gap: gap < 119.5),
        (Limits((0.0, 99.0), (0.0, 119.5)), "gap above", lambda wanted, gap: gap > 119.5),
    ],
)
def test_what_is_wanted_and_not_built_is_named_and_set_to_the_nearest(limits, name, expected):
    """A limit that was measured binds; an assumed one of preload only warns; a gap is never set beyond its limits."""
    bounds = replace(limits, gap=limits.gap or (0.0, 499.0))
    free, sized = (size(fork(), RATES, LOADS, 1.33, front_targets(), each) for each in (WIDE, bounds))
    flags = np.asarray(expected(np.round(free.exact.preload), np.round(free.exact.gap)))
    assert 0 < np.count_nonzero(flags) < 4, "the limit must lie among the candidates, or this shows nothing"
    assert sized.short[name].tolist() == flags.tolist()
    assert not any(np.any(flag) for flag in sized.hard.values())
    low, high = limits.preload_between(RATES)
    assert np.all((sized.setup.preload >= low) & (sized.setup.preload <= high))
    if name in ("preload low", "preload high"):
        assert sized.setup.preload.tolist() == free.setup.preload.tolist()


def test_coils_that_touch_are_hard():
    bounds = replace(WIDE, free_length=460.0, solid_length=150.0, bind_margin=5.0)
    sized = size(fork(), RATES, LOADS, 1.33, front_targets(), bounds)
    expected = 460 - 150 - np.asarray(sized.setup.preload) - 300 < 5
    assert 0 < np.count_nonzero(expected) < 4
    assert sized.hard["coil bind"].tolist() == expected.tolist()


def test_no_spring_is_ever_loose():
    sized = size(fork(), np.array([4.2, 6.5]), LOADS, 1.33, front_targets(), WIDE)
    assert sized.exact.preload[1] < -1
    assert sized.setup.preload[1] == 0.0
    assert sized.short["preload below"].tolist() == [False, True]
    assert float(sized.figures.rider.stroke[1]) < 66.0 - 1.0, "it sags less than wanted, and the figure says so"


def test_an_end_target_out_of_reach_is_named_and_the_gap_set_to_its_limit():
    for amount, gap in ((500.0, 165.0), (90_000.0, 75.0)):
        sized = size(fork(), RATES, LOADS, 1.33, front_targets(end_amount=amount), Limits((0.0, 15.0), (75.0, 165.0)))
        assert sized.setup.gap.tolist() == [gap] * 4
        missed = sized.short["end unreachable"] | sized.short["gap below"] | sized.short["gap above"]
        assert np.all(missed)


def test_series_and_stock_hold_what_is_fitted_now():
    assert [float(r) for r in series(0.2, 4.2)][:3] == [2.2, 2.4, 2.6]
    assert 4.25 in offers(series(0.2, 4.25), False, 4.25)[0]
    assert np.all(np.diff(offers(series(0.2, 4.25), False, 4.25)[0]) > 0)
    assert offers(np.array([4.0, 5.0]), False, 4.4)[0].tolist() == [4.0, 4.4, 5.0]
    assert offers(np.array([4.0, 4.4, 5.0]), False, 4.4 * (1 + 1e-9))[0].tolist() == [4.0, 4.4, 5.0]


@pytest.mark.parametrize("rate", ["4.7", "4.9", "5.1", "0.49 kg/mm"])
def test_what_is_in_between_two_of_a_series_stays_where_these_would(rate):
    """As sold, so that the yardstick moves with it. 4.8 and 5.0 stay, one step from the best; so does what lies about them."""

    def keeps(fitted: str) -> bool:
        sold = {"standard.fork_springs": "as sold", "front.rate": fitted}
        ridden = {"bike.use": "motocross", "bike.mass": "107 kg", "rider.mass": "80 kg"}
        return bool(size_end(load(changed(start("motocross", "80 kg"), sold | ridden)), "front").decision.kept)

    assert keeps("4.8")
    assert keeps("5")
    assert keeps(rate)


def test_a_spring_beside_the_series_is_not_kept_for_ever():
    # From 4.9 the nearest of the series is 0.1 away: 0.3 is within its step, the next one, 0.5, is not.
    job = load(demo({"front.rate": "4.9"}))
    assert step_of(job, "front") == pytest.approx(0.3)
    assert step_of(load(demo({"front.rate": "4.8"})), "front") == pytest.approx(0.2)


def test_scalar_and_array_agree():
    """Many loads at once give what each gives alone."""
    loads = np.array([740.0, 790.0, 850.0])
    wanted = 7.1 * loads
    limits = Limits((0.0, 15.0), (75.0, 165.0))
    many = size(fork(), RATES[:, None], Loads(380.0, loads, 9.80665), 1.33, front_targets(end_amount=wanted), limits)
    for index, each in enumerate(loads):
        one = size(fork(), RATES, Loads(380.0, each, 9.80665), 1.33, front_targets(end_amount=wanted[index]), limits)
        assert np.asarray(many.exact.gap)[:, index] == pytest.approx(np.asarray(one.exact.gap), abs=1e-5)
        assert np.asarray(many.setup.preload)[:, index].tolist() == np.asarray(one.setup.preload).tolist()


def test_what_stands_at_a_limit_is_within_it():
    """5 mm left where 5 are asked for, whatever the last digits of lengths typed to a tenth."""
    for stroke in (299.1, 299.3, 299.7, 299.8):
        end = fork(stroke=stroke)
        whole = size(end, RATES, LOADS, 1.33, front_targets(), WIDE).setup.preload
        for solid in (100.1, 120.4, 165.3):
            bounds = replace(WIDE, free_length=np.round(whole + stroke + solid + 5.0, 1), solid_length=solid, bind_margin=5.0)
            assert not np.any(size(end, RATES, LOADS, 1.33, front_targets(), bounds).hard["coil bind"]), (stroke, solid)
            assert np.all(size(end, RATES, LOADS, 1.33, front_targets(), replace(bounds, bind_margin=5.001)).hard["coil bind"])


def test_one_leg_with_a_spring_is_offered_no_pairs():
    """Two rates go one in each leg; where one leg has a spring only equal ones can be had."""
    pairs, one = {"front.buy": "series-pairs"}, {"front.springs_in": "one"}
    both = size_end(load(changed(demo(), pairs)), "front").sized.setup
    alone = size_end(load(changed(demo(), pairs | one)), "front").sized.setup
    assert np.any(np.asarray(both.split) > 0)
    assert not np.any(np.asarray(alone.split) > 0)
