"""Sentences at the edges of rounding: what is beyond a limit reads as beyond it, and nothing is taken out that rounds to nothing."""

import math
import re

import pytest

from calc.impossible import decimals_apart
from calc.report.quantity import quantity
from calc.report.reasons import WAY_OUT, WORDS, criterion_words, reason_words
from calc.report.types import Legs
from calc.report.words import oil_words
from tests.support.documents import demo
from tests.support.plain import report


@pytest.mark.parametrize(
    ("code", "numbers", "words"),
    [
        ("coil bind", {"bind": 4.7, "bind_margin": 5.0}, "leaves 4.7 mm before the coils touch at full travel; 5.0 mm are wanted"),
        ("coil bind", {"bind": 3.2, "bind_margin": 5.0}, "leaves 3 mm before the coils touch at full travel; 5 mm are wanted"),
        ("too wide", {"outside": 43.02, "bore": 43.0}, "does not fit: 43.02 mm wide with its coils closed, in a bore of 43.00 mm"),
        ("pressure above", {"pressure": 12.04, "pressure_max": 12.0}, "needs 12.04 bar, more than the 12.00 bar it takes"),
        ("oil out", {"oil_out": 31.0, "oil_in": 30.7}, "needs 31.0 ml out of the main chamber, and 30.7 ml are in"),
    ],
)
def test_what_is_beyond_a_limit_reads_as_beyond_it(code, numbers, words):
    assert reason_words(code, numbers) == words


@pytest.mark.parametrize(("name", "value", "low", "high", "words"), [
    ("rider sag", 65.7, 60.0, 72.0, "rider sag 65.7 mm, 66 wanted"), ("rider sag", 61.2, 60.0, 72.0, "rider sag 61 mm, 66 wanted"),
    ("free sag", 23.8, 24.0, 42.0, "free sag 23.8 mm, usual 24-42"), ("free sag", 0.0, 24.0, 42.0, "free sag none, topped out, usual 24-42"),
    ("free sag", 25.0, -math.inf, 12.0, "free sag 25 mm, usual up to 12"), ("free sag", 8.0, 12.0, math.inf, "free sag 8 mm, usual from 12"),
    ("end", 5.96, 6.0, 9.0, "force at full travel 5.96 × rider load, at least 6.00 wanted"),
])  # fmt: skip
def test_a_result_and_its_window_are_told_apart(name, value, low, high, words):
    assert criterion_words(name, value, low, high, 66.0) == words


def test_every_reason_has_words_and_a_way_out():
    assert set(WORDS) - {"energy unreachable"} == set(WAY_OUT), "an end that is not reached has one way out in either measure"


def test_numbers_that_are_the_same_stay_the_same():
    assert decimals_apart(5.0, 5.0, 0) == 0
    assert decimals_apart(1.0, 1.0 + 1e-12, 0) == 6


@pytest.mark.parametrize(
    ("left", "right", "words"),
    [
        (-0.3, 12.0, "add 12 ml right, left leg as it is"),
        (-0.3, 0.4, "no oil to add"),
        (-7.6, -0.2, "take out 8 ml left, right leg as it is"),
        (-7.6, -8.4, "take out 8 ml a leg"),
        (3.0, -4.0, "add 3 ml left, take out 4 ml right"),
    ],
)
def test_oil_that_rounds_to_nothing_is_not_taken_out(left, right, words):
    assert oil_words(Legs(quantity(left, "ml", "", 0), quantity(right, "ml", "", 0))) == words


@pytest.mark.parametrize("posture", ["standing", "sitting"])
def test_scales_that_contradict_each_other_are_told_in_any_posture(posture):
    """54.5 + 59.3 alone, 96.2 + 121.6 aboard: 104.0 kg of rider on the axles, whatever posture they were read in."""
    notes = report(demo({"rider.posture": posture, "rider.mass": "95 kg"}), with_bands=False)["notes"]
    assert any("9.0 kg more than bike, rider" in note for note in notes), notes


def test_a_table_that_is_a_trifle_too_short_says_so_in_numbers():
    changes = {
        "rear.spring_kind": "progressive",
        "rear.preload_max": "25.4 mm",
        "rear.table": "0 0; 60 2900; 147 7100",
        "rear.leverage": "2.5",
    }
    (problem,) = report(demo(changes), with_bands=False)["ends"]["rear"]["problems"]
    ends, needs = map(float, re.findall(r"(\d+\.?\d*) mm", problem["message"]))
    assert ends < needs


def test_draws_whose_gap_cannot_be_are_left_out_and_counted():
    """Oil known by volumes that may be 60 ml out: some draws stand deeper than any tube, and the others still tell how sure it is."""
    changes = {
        "front.gap_from": "volume filled", "front.filled_left": "367 ml",
        "front.brim_volume": {"value": "1200 ml", "plus_minus_95": "60 ml", "origin": "measured"},
    }  # fmt: skip
    front = report(demo(changes), with_bands=True)["ends"]["front"]
    assert front["state"] == "ok"
    assert 0 < front["sure"]["left_out"] < 200
    assert front["chosen"]["oil"]["left"]["plus_minus_95"] > 30
