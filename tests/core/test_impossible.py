"""Impossible bikes: each names the cause, where to look and the way out, and never a number that was not worked out."""

import json
import re

import pytest

from tests.core.documents import demo
from tests.core.plain import report


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
        ({"front.preload_min": "20 mm", "front.preload_max": "10 mm"}, "front", "front.preload_max", "below the least", "measure again"),
        ({"front.gap_min": "200 mm"}, "front", "front.gap_max", "below the least", "measure again"),
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
    ("changes", "end", "code", "cause"),
    [
        ({"front.target_sag": "110 mm"}, "front", "preload below", r"needs −\d+ mm preload, below the 0 mm that can be built"),
        ({"front.target_sag": "10 mm"}, "front", "preload above", r"needs \d+ mm preload, above the 15 mm that can be built"),
        ({"front.solid_length": "200 mm"}, "front", "coil bind", r"leaves −?\d+ mm before the coils touch at full travel, under the 5 mm margin"),
        ({"rear.free_length": "250 mm", "rear.solid_length": "150 mm"}, "rear", "coil bind", "under the 3 mm margin"),
        ({"front.end_target": "force", "front.end_force": "0.3 kN"}, "front", "end unreachable", r"comes no nearer than \d\.\d\d kN to the 0\.30 kN wanted at the end of the travel, at any gap"),
        ({"front.gap_min": "160 mm", "front.gap_max": "165 mm"}, "front", "gap below", r"needs gap \d+ mm, below the smallest of 160 mm"),
        ({"front.gap_max": "80 mm"}, "front", "gap above", r"needs gap \d+ mm, above the largest of 80 mm"),
        ({"rear.preload_min": "30 mm", "rear.preload_max": "31 mm"}, "rear", "preload below", "below the 30 mm"),
    ],
)
def test_where_no_spring_fits_the_nearest_says_what_stops_it(changes, end, code, cause):
    none = ends(changes)[end]
    assert none["state"] == "none"
    (problem,) = none["problems"]
    assert problem["code"] == "nothing-fits"
    assert problem["way_out"]
    stopped = [veto["words"] for c in none["candidates"] for veto in c["vetoes"] if veto["code"] == code]
    assert stopped
    assert any(re.search(cause, words) for words in stopped), stopped
    assert all(c["vetoes"] for c in none["candidates"])
    assert "chosen" not in none


@pytest.mark.parametrize("sag", ["10 mm", "30 mm", "110 mm", "200 mm"])
def test_advice_does_not_pull_both_ways(sag):
    (problem,) = ends({"front.target_sag": sag})["front"]["problems"]
    advice = problem["way_out"].lower()
    assert not ("want less rider sag" in advice and "want more rider sag" in advice), advice
    assert not ("softer" in advice and "stiffer" in advice), advice


def test_what_is_fitted_may_be_impossible_while_the_answer_is_not():
    """The fork as found locks on its oil, the shock as found sinks to the stop: each says so beside the answer."""
    locked = ends({"front.gap_left": "20 mm", "front.gap_right": "20 mm"})["front"]
    assert locked["state"] == "ok"
    assert locked["as_found"]["setup"] is None
    assert locked["as_found"]["problem"]["code"] == "hydraulic-lock"
    assert "oil-locked at 2" in locked["as_found"]["problem"]["message"]
    sunk = ends({"rear.rate": "10 N/mm", "rear.preload": "0 mm", "standard.shock_rate": "48 N/mm",
                 "rear.buy": "stock", "rear.stock": "52 54 56 58"})["rear"]  # fmt: skip
    assert sunk["as_found"]["setup"] is None
    assert sunk["as_found"]["problem"]["code"] == "no-equilibrium"
    assert "before full travel" in sunk["as_found"]["problem"]["message"]


def test_a_tried_setup_that_cannot_be_says_so_and_leaves_the_answer():
    base, tried = ends({})["front"], ends({"front.tried_gap": "20 mm"})["front"]
    assert tried["chosen"] == base["chosen"]
    assert tried["tried"]["setup"] is None
    assert tried["tried"]["problem"]["code"] == "hydraulic-lock"
