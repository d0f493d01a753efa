"""The golden jobs: each sized, stable, whole, and together reaching what they are meant to reach."""

import json
import math
from functools import cache

import pytest

from calc.boundary import answer
from tests.support.golden.jobs import golden_jobs, worst_difference
from tests.support.plain import report

NAMES = list(golden_jobs())


@cache
def answered(name: str) -> dict:
    return report(golden_jobs()[name])


def test_there_are_ten():
    assert len(NAMES) == 10


@pytest.mark.parametrize("name", NAMES)
def test_the_same_job_gives_the_same_report_through_the_door(name):
    text = json.dumps({"kind": "size", "job": golden_jobs()[name]})
    through_the_door = json.loads(answer(text))["report"]
    assert worst_difference(json.loads(json.dumps(answered(name), allow_nan=False)), through_the_door) == 0.0


@pytest.mark.parametrize("name", NAMES[:-1])
def test_both_ends_are_sized(name):
    assert {end: answered(name)["ends"][end]["state"] for end in ("front", "rear")} == {"front": "ok", "rear": "ok"}


def test_the_last_has_no_answer_at_either_end():
    ends = answered(NAMES[-1])["ends"]
    assert (ends["front"]["state"], ends["rear"]["state"]) == ("none", "refused")


def test_they_differ_in_what_they_are_meant_to_differ_in():
    fields = {name: answered(name)["fields"] for name in NAMES}
    uses = {report_["bike.use"]["value"] for report_ in fields.values()}
    assert {"enduro", "motocross", "two-up", "track", "road"} <= uses
    for path, value in (
        ("front.springs_in", "one"), ("front.gap_read", "in"), ("front.buy", "stock"), ("front.layout", "conventional"),
        ("front.area_by", "diameters"), ("front.end_target", "energy"), ("rear.shocks", "2"),
    ):  # fmt: skip
        assert any(path in f and f[path]["value"] == value for f in fields.values()), path
    assert fields["stock list, imperial units"]["front.rate"]["unit"] == "lbf/in"
    assert fields["barometers, bled part way in"]["place.bled_pressure"]["applies"]
    assert answered("barometers, bled part way in")["ends"]["front"]["tried"]["setup"]
    assert answered("two-up with luggage")["fields"]["rider.passenger"]["applies"]


def test_the_comparison_sees_what_differs():
    a = {"x": [1.0, {"y": 2.0}], "z": "word", "flag": True, "none": None}
    assert worst_difference(a, json.loads(json.dumps(a))) == 0.0
    assert worst_difference(a, a | {"x": [1.0, {"y": 2.0 + 1e-8}]}) == pytest.approx(5e-9, rel=1e-6)
    assert worst_difference([1e6], [1e6 + 1]) == pytest.approx(1e-6, rel=1e-3)
    for b in (
        a | {"z": "other"}, a | {"flag": 1.0}, a | {"none": 0.0}, a | {"x": [1.0]}, a | {"more": 1}, {k: v for k, v in a.items() if k != "z"},
        a | {"x": [math.nan, {"y": 2.0}]}, a | {"x": [math.inf, {"y": 2.0}]}, a | {"x": 1.0},
    ):  # fmt: skip
        assert worst_difference(a, b) == math.inf
