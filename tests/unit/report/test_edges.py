"""Edges that a change could slip over: states of a leak, empty lists, what a refusal says of its limits."""

import math
from dataclasses import replace

import numpy as np
import pytest

from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL, Process
from calc.impossible import Impossible
from calc.job import load
from calc.job.fields import FIELDS
from calc.report.conditions import _words
from calc.report.quantity import quantity
from tests.support.documents import demo
from tests.support.hand_model import Fork
from tests.support.plain import report
from tests.unit.end.test_end import fork, open_leg
from tests.unit.leg.test_leg_edges import disc
from tests.unit.model.test_cartridge import GAS, SEA, leg_of
from tests.unit.uncertainty.test_bands import half, hand_drawn
from tests.whole.test_air import AIR

HAND = Fork()

LEAKING = GAS | {"front.cartridge_state": "seal leaking"}


def test_a_small_leak_of_a_gas_cartridge_is_the_wide_one_slow_and_the_sound_one_fast():
    """And it is asked of a leaking seal alone: named with a sound one, it changes nothing."""
    (small,), (wide,) = leg_of(LEAKING | {"front.leak": "small"}).gases(4.2, 126.0), leg_of(LEAKING).gases(4.2, 126.0)
    sound, named = leg_of(GAS).gases(4.2, 126.0), leg_of(GAS | {"front.leak": "small"}).gases(4.2, 126.0)
    for stroke in (0.0, 66.0, 250.0):
        assert float(small.force(stroke, SEA, ISOTHERMAL)) == pytest.approx(float(wide.force(stroke, SEA, ISOTHERMAL)), rel=1e-9)
    fast = Process(1.33, 66.0)
    kept = sum(float(g.pressure0 * g.volume0) for g in sound)
    settled = kept / sum(float(g.volume(66.0)) for g in sound)
    apart = sum((settled * (g.volume(66.0) / g.volume(250.0)) ** 1.33 - SEA) * g.area for g in sound)
    assert float(small.force(250.0, SEA, fast)) == pytest.approx(float(apart), rel=1e-9)
    assert len(named) == len(sound) == 2
    for one, other in zip(named, sound, strict=True):
        assert float(one.force(250.0, SEA, fast)) == pytest.approx(float(other.force(250.0, SEA, fast)))


@pytest.mark.parametrize("text", [";", " ; ; ", ""])
def test_a_list_of_no_rates_is_refused(text):
    problem = load(demo({"front.buy": "stock", "front.stock": text})).fields["front.stock"].problem
    assert problem is not None
    assert problem.code == "empty"


@pytest.mark.parametrize("path", ["front.gap_left", "front.travel", "bike.rake"])
def test_a_plus_minus_out_of_range_is_told_how_wide_it_may_be(path):
    field = FIELDS[path]
    entry = {"value": f"{field.low} {field.unit}", "plus_minus_95": f"{2 * field.high} {field.unit}"}
    problem = load(demo({path: entry})).fields[path].problem
    assert f"its +/- must lie between 0 and {(field.high - field.low) / 2:g} {field.unit}" in problem.message


def test_a_choice_that_is_none_names_those_there_are():
    problem = load(demo({"front.layout": "x" * 60})).fields["front.layout"].problem
    assert f"'{'x' * 40}' is not one of {', '.join(FIELDS['front.layout'].choices)}" in problem.message


SOLD_SOFTER = {"standard.fork_springs": "changed", "standard.fork_rate": "4.2 N/mm"}


def test_the_softest_spring_on_offer_can_be_the_answer_and_has_its_bands():
    """The first of the list is a choice like any other."""
    front = report(demo({"front.buy": "stock", "front.stock": "4.6; 4.8; 5.0", "front.rate": "4.6 N/mm"} | SOLD_SOFTER))["ends"][
        "front"
    ]
    assert front["chosen"]["rate"]["value"] == pytest.approx(4.6)
    assert front["sure"] is not None
    assert front["holds_for"]["words"].startswith("4.6 is right for riders of ")
    assert front["chosen"]["preload"]["plus_minus_95"] > 0


def test_an_air_spring_with_no_coil_is_sold_with_none():
    standard = report(demo(AIR), with_bands=False)["ends"]["front"]["standard"]
    assert (standard["rate"]["value"], standard["preload"]["value"]) == (0.0, 0.0)


def test_oil_to_add_with_the_gap_read_spring_in_counts_the_steel_that_changes():
    """Read with the spring in, what of it stands over the oil is gas's loss: old steel at the old gap, new at the new one."""
    job = demo(
        {"front.gap_read": "in", "front.free_length": "470 mm", "front.spacer_length": "0 mm", "front.spacer_volume": "0 ml"}
    )
    front = report(job, with_bands=False)["ends"]["front"]
    rate, gap = front["chosen"]["rate"]["value"], front["chosen"]["gap"]["value"]
    assert rate != 4.2

    def oil_above(gap_read, steel):
        """Oil missing to the rim, in a leg with its spring out [ml]: what the gap holds with steel through it, less all the steel."""
        return (HAND.below * (gap_read - 32.0) + disc(50.6) * 32.0 - steel / 470.0 * gap_read + steel) / 1000

    for leg, found in (("left", 145.0), ("right", 147.0)):
        expected = oil_above(found, 51e3) - oil_above(gap, 51e3 * math.sqrt(rate / 4.2))
        assert front["chosen"]["oil"][leg]["value"] == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize(("like", "restoring", "words"), [
    (None, None, ""), (0.3, 119.7, "Rides as built."), (-6.2, 127.0, "Rides as if the gap were 6 mm smaller. Set 127 mm to get the force at full travel back: not 126, since a millimetre of gap counts for less there."),
    (3.8, 116.0, "Rides as if the gap were 4 mm larger. Set 116 mm to get the force at full travel back."), (-6.2, None, "Rides as if the gap were 6 mm smaller; no gap brings the force at full travel back."),
])  # fmt: skip
def test_what_another_place_acts_like_in_words(like, restoring, words):
    acts_like, back = (None if value is None else quantity(value, "mm", "", 0) for value in (like, restoring))
    assert _words(acts_like, back, None, Setup(4.6, 3.0, 120.0), 0, 200) == words


def test_a_fork_of_unlike_legs_locks_where_its_first_leg_does():
    """Each leg's own gap that uses up its gas; more stands in one of them than in the other."""
    plain, fuller = open_leg(), open_leg(others=60e3)
    alone = float(plain.lock_gap(4.2)), float(fuller.lock_gap(4.2))
    assert alone[0] < alone[1]
    for gas, other in ((plain, fuller), (fuller, plain)):
        both = replace(fork(), gas=gas, gas_right=other)
        assert float(both.lock_gap(Setup(4.2, 0.0, 0.0))) == pytest.approx(alone[1])
    assert float(fork().lock_gap(Setup(4.2, 0.0, 0.0, 0.4))) == pytest.approx(float(plain.lock_gap(4.6))), (
        "the stiffer spring is the thicker one"
    )


def test_bands_of_landing_energy_by_the_hand_model():
    """The recommended setup as it may come out on the bench, every reading drawn; trapezoids over the stroke."""
    chosen = report(demo())["ends"]["front"]["chosen"]
    drawn, rng = hand_drawn(), np.random.default_rng(11)
    rate, preload, gap = (v + pm / 2 * rng.standard_normal(4000) for v, pm in ((4.6, 0.138), (3.0, 1.0), (120.0, 1.0)))
    parts = np.linspace(0.0, 1.0, 401)
    forces = np.array([2 * drawn.leg(rate, preload, gap, part * drawn.travel, drawn.n) for part in parts])
    joules = np.sum((forces[1:] + forces[:-1]) / 2, axis=0) * drawn.travel / 400 / 1000
    assert chosen["landing_energy"]["plus_minus_95"] == pytest.approx(half(joules), rel=0.15)
    per_mass = joules / (drawn.load / 9.80665)
    assert chosen["energy_per_mass"]["plus_minus_95"] == pytest.approx(half(per_mass), rel=0.15)
    sag = drawn.sag(rate, preload, gap, drawn.load)
    above, below = (drawn.wheel(rate, preload, gap, sag + step, drawn.n, sag) for step in (0.01, -0.01))
    assert chosen["wheel_rate"]["plus_minus_95"] == pytest.approx(half((above - below) / 0.02 / drawn.cos), rel=0.15)


def test_another_rider_who_cannot_be_carried_takes_no_answer_away(monkeypatch):
    def refuse(*_):
        raise Impossible("no-equilibrium", "Not held.", "")

    monkeypatch.setattr("calc.report.end.rider_span", refuse)
    front = report(demo({"rider.mass": "103.7 kg"}))["ends"]["front"]
    assert (front["state"], front["holds_for"]) == ("ok", None)
    assert front["sure"] is not None
