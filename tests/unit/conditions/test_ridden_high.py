"""A bike that is ridden at the high place is as built there: nothing is told twice."""

from __future__ import annotations

import pytest

from calc.conditions.changes import conditions_of
from calc.job import load
from tests.support.documents import demo

PLACES = ["as built", "hot", "high", "high, bled there", "hot and high"]


@pytest.mark.parametrize(
    ("ridden", "keys"), [(None, PLACES), ("300 m", PLACES), ("2400 m", ["as built", "hot", "high, bled there"])]
)
def test_the_high_place_that_is_home_is_not_told_twice(ridden, keys):
    job = load(demo({"place.ridden_altitude": ridden, "conditions.high_altitude": "2400 m"}))
    assert [place.key for place in conditions_of(job, "front") if place.key in PLACES] == keys
