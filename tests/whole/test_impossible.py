"""Impossible bikes: each names the cause, where to look and the way out, and never a number that was not worked out."""

import json
import re

import pytest

from tests.support.documents import demo
from tests.support.plain import report


def ends(changes: dict) -> dict:
    answered = report(demo(changes), with_bands=False)
    json.dumps(answered, allow_nan=False)
    return answered["ends"]


@pytest.mark.parametrize(
    ("changes", "end", "path", "cause", "way_out"),
    [
        ({"front.travel": "0 mm"}, "front", "front.travel", "0 mm is below the limit of 20 mm", ""),
        ({"rear.travel": "0"}, "rear", "rear.travel", "0 mm is below the limit of 20 mm", ""),
        ({"front.unsprung": "54.5 kg"}, "front", "front.unsprung", r"unsprung mass at the front, 54\.5 kg, is not below .* 54\.5 kg", "Check the axle"),
        ({"rear.unsprung": "80 kg"}, "rear", "rear.unsprung", r"unsprung mass at the rear, 80\.0 kg", "Check the axle"),
        ({"front.collapsed_stroke": "290 mm"}, "front", "front.collapsed_stroke", "290 mm, is below the travel of 300 mm", "Measure"),
        ({"front.outer_bore": "47 mm"}, "front", "front.outer_bore", "bore is not above the seal diameter", "Measure both"),
        ({"front.raised_height": None}, "front", "front.raised_height", "not entered", "Pour and read"),
        ({"front.area_by": "diameters", "front.seal_diameter": "20 mm", "front.outer_bore": "25 mm",
          "front.cap_volume": "100 ml", "front.rod_volume": "60 ml", "front.washers_volume": "60 ml"}, "front", None, "no room|no gas|oil-locked", "readings of the leg|volume"),
        ({"front.target_sag": "200 mm", "front.travel": "190 mm"}, "front", "front.target_sag", "not below the travel", "smaller sag"),
        ({"front.preload_min": "20 mm", "front.preload_max": "10 mm"}, "front", "front.preload_max", "below the minimum", "measure again"),
        ({"front.gap_min": "200 mm"}, "front", "front.gap_max", "below the minimum", "measure again"),
        ({"front.buy": "stock"}, "front", "front.stock", "No rates on the shelf", "Enter them"),
        ({"front.end_target": "force"}, "front", "front.end_force", "not entered", "Enter it"),
        ({"bike.use": "track"}, "front", "rider.posture", "standing cannot be carried over to sitting", "Weigh again sitting"),
        ({"standard.gap": "20 mm"}, "front", "standard.gap", "[Aa]s sold.*oil-locked at 28", "setup as sold"),
        ({"rider.front_axle": "400 kg"}, "rear", "rider.front_axle", "gained more than the rider weighs", "[Ww]eigh|[Cc]heck"),
    ],
)  # fmt: skip
def test_an_impossible_bike_is_refused_in_words(changes, end, path, cause, way_out):
    refused = ends(changes)[end]
    assert refused["state"] == "refused"
    (problem,) = refused["problems"]
    assert path is None or problem["path"] == path
    assert re.search(cause, problem["message"]), problem["message"]
    assert re.search(way_out, problem["way_out"]), problem["way_out"]
    assert not re.search(r"nan|inf\b|[-−]\d+ mm", problem["message"])
    assert "chosen" not in refused


@pytest.mark.parametrize(
    ("changes", "end", "cause"),
    [
        ({"front.solid_length": "200 mm"}, "front", r"leaves −?\d+ mm before the coils touch at full travel; 5 mm are wanted"),
        ({"rear.free_length": "250 mm", "rear.solid_length": "150 mm"}, "rear", r"leaves −?\d+ mm before the coils touch at full travel; 3 mm are wanted"),
    ],
)  # fmt: skip
def test_where_no_spring_can_be_built_the_nearest_says_what_stops_it(changes, end, cause):
    none = ends(changes)[end]
    assert none["state"] == "none"
    (problem,) = none["problems"]
    assert problem["code"] == "nothing-fits"
    assert problem["message"].startswith("Nothing on offer can be built. The nearest, ")
    assert re.search(cause, problem["message"])
    assert problem["way_out"]
    for candidate in none["candidates"]:
        assert all(re.fullmatch(cause, veto["words"]) for veto in candidate["vetoes"])
        assert candidate["vetoes"]
    assert "chosen" not in none


@pytest.mark.parametrize(
    ("changes", "end", "code", "words"),
    [
        ({"front.target_sag": "200 mm"}, "front", "preload below", r"even with 0 mm preload it sags only 1\d\d of the 200 mm wanted"),
        ({"front.target_sag": "10 mm"}, "front", "preload high", r"\d+ mm preload is more than the 15 mm assumed to be the most"),
        ({"rear.target_sag": "135 mm"}, "rear", "preload low", r"0 mm preload is less than the 2 mm assumed to be the least"),
        ({"front.target_sag": "10 mm", "front.preload_max": "15 mm"}, "front", "preload above", r"even with 15 mm preload it sags \d+ mm, where 10 are wanted"),
        ({"front.end_target": "force", "front.end_force": "0.3 kN"}, "front", "end unreachable", r"reaches \d\.\d × rider load at full travel, whatever is set for it; 0\.4 is wanted"),
        ({"front.gap_min": "160 mm", "front.gap_max": "165 mm"}, "front", "gap below", r"would need a gap of \d+ mm; 160 is the smallest allowed"),
        ({"front.gap_max": "80 mm"}, "front", "gap above", r"would need a gap of \d+ mm; 80 is the largest allowed"),
        ({"rear.preload_min": "30 mm", "rear.preload_max": "31 mm"}, "rear", "preload below", r"even with 30 mm preload it sags only \d+ of the 104 mm wanted"),
    ],
)  # fmt: skip
def test_what_is_wanted_and_not_reached_is_told_as_a_figure_of_what_is_built(changes, end, code, words):
    """It bars nothing by itself: the answer says what it comes to, and in which criterion it falls short."""
    told = ends(changes)[end]
    assert told["state"] == "ok"
    chosen = told["chosen"]
    (short,) = (one for one in chosen["short"] if one["code"] == code)
    assert re.fullmatch(words, short["words"]), short["words"]
    assert f"{short['words'][0].upper()}{short['words'][1:]}." in told["why"]
    assert short["way_out"]
    outside = [one["words"] for one in chosen["criteria"] if one["state"] == "outside"]
    assert (told["verdict"] == "nearest") == bool(outside)
    assert all(one in told["answer"] for one in outside)
    assert told["answer"].startswith("Nothing on offer fits. The nearest is ") == bool(outside)


@pytest.mark.parametrize("sag", ["10 mm", "30 mm", "110 mm", "200 mm"])
def test_advice_does_not_pull_both_ways(sag):
    for candidate in ends({"front.target_sag": sag})["front"]["candidates"]:
        advice = " ".join(one["way_out"] for one in candidate["short"]).lower()
        assert not ("want less rider sag" in advice and "want more rider sag" in advice), advice
        assert not ("softer" in advice and "stiffer" in advice), advice


def test_what_is_fitted_may_be_impossible_while_the_answer_is_not():
    """The fork as found locks on its oil, the shock as found sinks to the stop: each says so beside the answer."""
    locked = ends({"front.gap_left": "20 mm", "front.gap_right": "20 mm"})["front"]
    assert locked["state"] == "ok"
    assert locked["as_found"]["setup"] is None
    assert locked["as_found"]["problem"]["code"] == "hydraulic-lock"
    assert "oil-locked at 2" in locked["as_found"]["problem"]["message"]
    sunk = ends({"rear.rate": "10 N/mm", "rear.preload": "0 mm", "standard.shock_spring": "changed",
                 "standard.shock_rate": "48 N/mm", "rear.buy": "stock", "rear.stock": "52 54 56 58"})["rear"]  # fmt: skip
    assert sunk["as_found"]["setup"] is None
    assert sunk["as_found"]["problem"]["code"] == "no-equilibrium"
    assert "before full travel" in sunk["as_found"]["problem"]["message"]


def test_a_tried_setup_that_cannot_be_says_so_and_leaves_the_answer():
    base, tried = ends({})["front"], ends({"front.tried_gap": "20 mm"})["front"]
    assert tried["chosen"] == base["chosen"]
    assert tried["tried"]["setup"] is None
    assert tried["tried"]["problem"]["code"] == "hydraulic-lock"
