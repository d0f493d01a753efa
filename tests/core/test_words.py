"""Sentences at the edges of rounding: what is beyond a limit reads as beyond it, and nothing is taken out that rounds to nothing."""

import re

import numpy as np
import pytest

from calc.impossible import decimals_apart
from calc.job import load
from calc.report.quantity import quantity
from calc.report.reasons import EndWanted, veto_words
from calc.report.types import Legs
from calc.report.words import oil_words, unsettled_words
from calc.sizing.choice import size_end
from tests.core.documents import demo
from tests.core.plain import report


@pytest.mark.parametrize(
    ("code", "numbers", "words"),
    [
        ("coil bind", {"bind": 4.7, "bind_margin": 5.0}, "leaves 4.7 mm before the coils touch at full travel, under the 5.0 mm margin"),
        ("coil bind", {"bind": 3.2, "bind_margin": 5.0}, "leaves 3 mm before the coils touch at full travel, under the 5 mm margin"),
        ("preload above", {"preload": 38.0, "preload_max": 37.52}, "needs 38.0 mm preload, above the 37.5 mm that can be built"),
        ("preload below", {"preload": 2.0, "preload_min": 2.04}, "needs 2.00 mm preload, below the 2.04 mm that can be built"),
        ("free sag below", {"free_sag": 19.8, "free_low": 20.1, "free_high": 41.0}, "free sag 19.8 mm, under the window of 20.1-41.0"),
        ("gap above", {"gap": 165.0, "gap_max": 164.6}, "needs gap 165.0 mm, above the largest of 164.6 mm"),
    ],
)
def test_what_is_beyond_a_limit_reads_as_beyond_it(code, numbers, words):
    assert veto_words(code, numbers).startswith(words)


@pytest.mark.parametrize(
    ("unit", "decimals", "wanted", "reached", "air", "words", "way_out"),
    [
        (" × load", 1, 4.2, 5.13, False, "comes no nearer than 5.1 × load to the 4.2 × load wanted at the end of the travel, at any gap",
         "Ask for 5.2 × load or more there, or offer softer springs."),
        (" kN", 2, 6.004, 6.001, False, "comes no nearer than 6.001 kN to the 6.004 kN wanted at the end of the travel, at any gap",
         "Ask for 6.00 kN or less there, or offer stiffer springs."),
        (" J", 0, 200.0, 231.0, True, "comes no nearer than 231 J to the 200 J wanted at the end of the travel, at any gap",
         "Ask for 231 J or more there, or set it another way."),
    ],
)  # fmt: skip
def test_an_unreachable_end_says_what_stops_it_and_what_can_be_asked_for(unit, decimals, wanted, reached, air, words, way_out):
    end = EndWanted(unit, decimals, wanted, reached)
    assert end.words("gap") == words
    assert end.way_out(air) == way_out


@pytest.mark.parametrize("wanted", [
    {"front.end_target": "force", "front.end_force": "0.3 kN"}, {"front.end_target": "multiple", "front.end_multiple": "2"},
    {"front.end_target": "energy", "front.end_energy": "120 J"},
])  # fmt: skip
def test_what_an_unreachable_end_says_can_be_asked_for_is_reached(wanted):
    """The way out, followed: asked for that much, no end of the travel is unreachable any more for the nearest spring."""
    (path, _), = [pair for pair in wanted.items() if pair[0] != "front.end_target"]
    front = report(demo(wanted), with_bands=False)["ends"]["front"]
    (problem,) = front["problems"]
    ask = re.search(r"Ask for (\S+)( ×| kN| J)", problem["way_out"])
    assert ask, problem
    nearest = float(re.search(r"Nearest is (\S+) N/mm", problem["message"])[1])
    again = size_end(load(demo(wanted | {path: f"{ask[1]}{'' if '×' in ask[2] else ask[2]}"})), "front").sized
    index = int(np.argmin(np.abs(again.setup.rate - nearest)))
    assert not again.vetoes["end unreachable"][index]
    # The gap is now among the deepest: what was told is the least that can be had.
    assert again.setup.gap[index] > 350


def test_numbers_that_are_the_same_stay_the_same():
    assert decimals_apart(5.0, 5.0, 0) == 0
    assert decimals_apart(1.0, 1.0 + 1e-12, 0) == 6


@pytest.mark.parametrize(
    ("left", "right", "words"),
    [
        (-0.3, 12.0, "add 0 ml left, 12 right"),
        (-0.3, 0.4, "no oil to add"),
        (-7.6, -0.2, "take out 8 ml left, add 0 ml right"),
        (-7.6, -8.4, "take out 8 ml a leg"),
        (3.0, -4.0, "add 3 ml left, take out 4 ml right"),
    ],
)
def test_oil_that_rounds_to_nothing_is_not_taken_out(left, right, words):
    assert oil_words(Legs(quantity(left, "ml", "", 0), quantity(right, "ml", "", 0))) == words


def test_draws_that_find_no_spring_are_not_counted_as_if_they_had():
    assert "in 8 of 10 draws of your readings." in unsettled_words(4.2, 5.0, 4.6, False)
    assert "in 8 of 10 draws of your readings that find a spring." in unsettled_words(4.2, 5.0, 4.6, True)


@pytest.mark.parametrize("posture", ["standing", "sitting"])
def test_scales_that_contradict_each_other_are_told_in_any_posture(posture):
    """54.5 + 59.3 alone, 96.2 + 121.6 aboard: 104.0 kg of rider on the axles, whatever posture they were read in."""
    notes = report(demo({"rider.posture": posture, "rider.mass": "95 kg"}), with_bands=False)["notes"]
    assert any("9.0 kg more than bike, rider" in note for note in notes), notes


def test_a_table_that_is_a_trifle_too_short_says_so_in_numbers():
    changes = {"rear.spring_kind": "progressive", "rear.preload_max": "25.4 mm", "rear.table": "0 0; 60 2900; 147 7100", "rear.leverage": "2.5"}
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
