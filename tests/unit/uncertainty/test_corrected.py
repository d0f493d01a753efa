"""What sags found make of a job: against scipy on the same bike, by coverage over made-up truths, and by what a bench would say."""

from __future__ import annotations

import numpy as np
import pytest

from calc.job import load
from calc.model.draws import combined, drawn, half_width, stepped
from calc.model.observed import expected, sags_read, spring_rate_found
from calc.sizing.margins import moved_readings
from calc.uncertainty.by_sags import rate_by_sags
from calc.uncertainty.corrected import sags_found
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.sagging import LEVERAGE, SAGS, bike


def test_no_sags_change_nothing():
    job = bike()
    found = sags_found(job)
    assert found.compared == ()
    assert found.corrections == ()
    assert found.correct(job) is job


def test_a_leverage_not_read_narrows_to_a_third():
    # Tried on made-up truths: leverage that was not read narrows to about a quarter of its width. Common practice, no source.
    job = bike(LEVERAGE, **SAGS)
    found = {one.path: one for one in sags_found(job).corrections}
    one = found["rear.leverage"]
    assert one.after.plus_minus_95 < 0.35 * one.before.plus_minus_95


def test_what_was_read_well_hardly_moves():
    job = bike((), **SAGS)
    told = sags_found(job).fields
    for path in ("rear.leverage", "bike.rear_axle", "rider.rear_axle"):
        before, after = job.fields[path].reading, told[path].reading
        assert abs(after.value - before.value) < before.plus_minus_95
        assert after.plus_minus_95 > 0.6 * before.plus_minus_95


def test_typed_entries_stay_and_the_answer_follows():
    job = bike(LEVERAGE, **SAGS)
    corrected = sags_found(job).correct(job)
    for path, was in job.fields.items():
        now = corrected.fields[path]
        assert (now.text, now.number, now.plus_minus, now.origin) == (was.text, was.number, was.plus_minus, was.origin)
    expected_now = expected(corrected, "rear").sags
    assert expected_now == pytest.approx([6.0, 98.0], abs=1.0)


def test_compare_only_leaves_the_job():
    job = bike(LEVERAGE, **SAGS, bike_sags_correct="no")
    found = sags_found(job)
    assert found.corrections
    assert found.correct(job) is job


def test_lengths_say_what_sags_say():
    by_sags = sags_found(bike(LEVERAGE, **SAGS))
    lengths = {
        "rear_sags_read": "lengths",
        "rear_hanging_length": {"value": "600 mm", "plus_minus_95": "0.01 mm", "origin": "measured"},
    }
    lengths |= {name.replace("_sag", "_length"): str(600 - int(value)) for name, value in SAGS.items()}
    by_lengths = sags_found(bike(LEVERAGE, **lengths))
    one, other = ({c.path: c.after for c in found.corrections} for found in (by_sags, by_lengths))
    assert one["rear.leverage"].value == pytest.approx(other["rear.leverage"].value, abs=1e-3)
    assert one["rear.leverage"].plus_minus_95 == pytest.approx(other["rear.leverage"].plus_minus_95, rel=0.15)


def test_lengths_without_the_hanging_one_say_nothing():
    assert sags_found(bike((), rear_sags_read="lengths", rear_alone_length="590")).compared == ()


@pytest.mark.parametrize(
    ("sags", "word"),
    [
        ({"rear_aboard_sag": "90", "rear_aboard_again_sag": "106"}, "sticks"),
        ({"rear_alone_sag": "98", "rear_aboard_sag": "30"}, "which is which"),
        ({"rear_sags_read": "lengths", "rear_hanging_length": "600", "rear_alone_length": "630"}, "longer than hanging"),
    ],
)
def test_readings_that_cannot_be_say_so(sags, word):
    found = sags_found(bike((), **sags))
    assert word in found.refused["rear"]
    assert not found.fields


def test_a_spread_of_15_mm_is_still_believed():
    assert not sags_found(bike((), rear_aboard_sag="87", rear_aboard_again_sag="102")).refused


def test_an_end_that_cannot_be_worked_out_leaves_the_other():
    light = {"front_rate": "1", "front_preload": "0", "front_gap_left": "340", "front_gap_right": "340", "front_travel": "150"}
    found = sags_found(bike((), front_aboard_sag="70", **light, **SAGS))
    assert "can't be worked out" in found.refused["front"]
    assert {one.read.axle for one in found.compared} == {"rear"}


def test_a_sag_that_fits_nothing_is_named_and_left_out():
    found = sags_found(bike(LEVERAGE, **(SAGS | {"rear_aboard_sag": "150", "rear_aboard_again_sag": "148"})))
    alone, aboard = found.compared
    assert alone.believed
    assert not aboard.believed
    single = sags_found(bike((), rear_aboard_sag="160"))
    assert not single.compared[0].believed
    assert not single.fields


def test_topped_out_is_a_bound():
    """Free sag 0 says that preload holds the bike, not by how much: preload grows, and stays wide."""
    job = bike(("rear.preload",), rear_alone_sag="0", rear_aboard_sag="80")
    found = sags_found(job)
    assert found.compared[0].read.topped_out
    after = sags_found(job).correct(job)
    assert float(expected(after, "rear").sags[0]) < 3.0


def test_ties_give_the_variance_that_the_draws_have():
    """First order with the ties of the corrected readings, against their draws."""
    job = sags_found(load(dict(bike(LEVERAGE, **SAGS).header), 20)).correct(bike(LEVERAGE, **SAGS))
    paths = moved_readings(job)
    both = stepped(job, paths)
    sag = np.asarray(expected(both, "rear").sags[1])
    variance, parts = combined(job, paths, (sag[: len(paths)] - sag[len(paths) :]) / 2.0)
    by_draws = half_width(expected(drawn(job), "rear").sags[1])
    assert 2.0 * float(variance) ** 0.5 == pytest.approx(by_draws, rel=0.25)
    assert np.all(parts <= variance * (1 + 1e-9))


def test_sags_alone_tell_the_rate_that_is_in():
    job = bike((), front_alone_sag="31", front_aboard_sag="69")
    rate, half = rate_by_sags(job, "front", sags_read(job, "front"))
    assert abs(rate - 4.2) < half < 1.5
    assert float(spring_rate_found(job, "rear", expected(job, "rear").sags)) == pytest.approx(job.number("rear.rate"), rel=1e-6)


BUILT = {"front_built_rate": "4.6", "front_built_preload": "3", "front_built_gap_left": "120", "front_built_gap_right": "120"}


def test_sags_as_built_are_those_of_what_was_built():
    """As built the fork rides on 4.6 and 3 mm: what is expected is what the report tells of it, not of the 4.2 that came in."""
    built = bike((), bike_sags_of="built", front_aboard_sag="66", **BUILT)
    here = expected(built, "front")
    assert here.rate == pytest.approx(4.6)
    assert here.sags == pytest.approx([30.0, 66.0], abs=1.0)
    assert sags_found(built).compared[0].expected == pytest.approx(float(here.sags[1]))
    assert expected(bike((), **BUILT), "front").rate == pytest.approx(4.2)


def test_sags_as_built_need_what_was_built():
    found = sags_found(bike((), bike_sags_of="built", front_aboard_sag="66"))
    assert "Springs built is not entered" in found.refused["front"]
    assert "as it came in" in found.refused["front"]


def test_a_sag_read_exactly_is_still_no_better_than_the_bike_settles():
    sag = {"value": "98 mm", "plus_minus_95": "0 mm", "origin": "measured"}
    found = sags_found(bike(LEVERAGE, rear_aboard_sag=sag, rear_aboard_again_sag=sag))
    assert found.compared[0].read.uncertainty == pytest.approx(0.25)
    assert all(np.isfinite(one.after.value) for one in found.corrections)


def test_a_spring_keeps_its_marking_whatever_the_sags_make_of_its_rate():
    """Common practice, no source: nobody sells a 46.6; the 48 that is in stays the 48, and stands once among those on offer."""
    read = {"rear.rate": {"value": "48 N/mm", "plus_minus_95": "5 N/mm", "origin": "stated"}}
    sags = {
        "rear.alone_sag": "31 mm",
        "rear.alone_again_sag": "27 mm",
        "rear.aboard_sag": "103 mm",
        "rear.aboard_again_sag": "99 mm",
    }
    found, plain = report(demo(read | sags)), report(demo(read))
    after = {one["path"]: one["after"]["value"] for one in found["sags"]["corrections"]}
    assert after["rear.rate"] < 47.0
    rear = found["ends"]["rear"]
    assert [one["rate"]["text"] for one in rear["candidates"]].count("48") == 1
    (own,) = (one for one in rear["candidates"] if one["fitted"])
    assert (own["rate"]["text"], own["rate"]["value"]) == ("48", 48.0)
    assert all(float(one["text"]) % 2 == 0 for one in rear["sure"]["counts"]), "by markings, of which a series has one every 2 N/mm"
    sag = [one["ends"]["rear"]["as_found"]["setup"]["rider_sag"]["value"] for one in (plain, found)]
    assert sag[1] > sag[0] + 2.0, "what it does is what the sags make of it"
