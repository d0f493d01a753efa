"""The mark of a landing: what is read of it, of which setup, and what it tells of the gas."""

import numpy as np
import pytest

from calc.end.landing import landing_travel
from calc.impossible import Impossible
from calc.job import load
from calc.job.starter import start
from calc.model.axles import end_loads
from calc.model.draws import drawn
from calc.model.marks import landing_stroke, mark_read, ridden_conditions, ridden_end
from calc.model.observed import expected
from calc.model.survivors import picked, survivors
from calc.uncertainty.corrected import sags_found
from tests.support.documents import demo
from tests.support.plain import report

BUILT = {
    "front.built_rate": "4.6 N/mm",
    "front.built_preload": "3 mm",
    "front.built_gap_left": "120 mm",
    "front.built_gap_right": "118 mm",
}
DROP = {"ride.drop": "25 cm"}


def test_it_is_of_what_was_built_where_anything_was():
    _, found, _ = ridden_end(load(demo()), "front")
    _, built, _ = ridden_end(load(demo(BUILT)), "front")
    assert (float(found.rate), float(built.rate), float(built.gap), float(built.gap_split)) == (4.2, 4.6, 119.0, -1.0)
    with pytest.raises(Impossible, match="Preload built is not entered"):
        ridden_end(load(demo({"front.built_rate": "4.6"})), "front")


def test_the_ride_has_its_own_place_and_warmth():
    here, there = (
        ridden_conditions(load(demo(changes))) for changes in ({}, {"ride.altitude": "2000 m", "ride.temperature": "50 °C"})
    )
    assert float(there.temperature) == pytest.approx(323.15)
    assert float(there.ambient) == pytest.approx(0.0795, abs=1e-4), "ISO 2533: 79 495 Pa at 2000 m"
    assert float(here.ambient) > float(there.ambient)
    assert float(here.bleed) == float(there.bleed)


def test_its_uncertainty_is_that_of_the_tape_and_of_the_height():
    job = load(demo(DROP | {"front.mark": "240 mm"}))
    read = mark_read(job, "front")
    _, _, end = ridden_end(job, "front")
    strokes = [
        float(end.motion.stroke(landing_travel(end, end_loads(job, "front").aboard, 250.0 * (1.0 + part), 1.33)))
        for part in (-0.075, 0.075)  # the height's +/- of 15 % is 2 u
    ]
    assert read.uncertainty == pytest.approx(np.hypot(1.0, (strokes[1] - strokes[0]) / 2.0), rel=0.01)
    assert mark_read(load(demo(DROP)), "front") is None
    assert mark_read(load(demo({"front.mark": "240 mm"})), "front") is None


def test_a_mark_deeper_than_expected_says_that_the_gas_is_softer_and_one_above_says_nothing():
    """A bound: damping may take any share of a landing, so that a small mark is no evidence."""
    job = start("enduro", "86 kg")
    job["ride"] = {"drop": "30 cm"}
    most = float(landing_stroke(load(job), "front", 300.0))
    found = {}
    for name, mark in (("small", 0.8 * most), ("deep", most + 10.0)):
        job["front"] = {"mark": f"{mark:.0f} mm"}
        found[name] = sags_found(load(job))
    assert found["small"].corrections == ()
    (deep,) = found["deep"].landed
    assert deep.believed
    moved = {one.path: one.after.value - one.before.value for one in found["deep"].corrections}
    corrected = found["deep"].correct(load(job))
    assert float(landing_stroke(corrected, "front", corrected.value("ride.drop"))) > most
    assert corrected.number("place.exponent") < 1.33
    assert all(path != "place.exponent" or change < 0 for path, change in moved.items())


def test_one_that_no_reading_allows_is_left_out_and_named():
    (found,) = sags_found(load(demo(DROP | {"front.mark": "299 mm"}))).landed
    assert not found.believed
    assert sags_found(load(demo(DROP | {"front.mark": "299 mm"}))).fields == {}


def test_draws_that_the_bound_leaves_are_those_that_reach_the_mark():
    """Against every draw asked by itself: among those kept by rejection the exponent's mean is what the adjustment's draws have."""
    job = start("enduro", "86 kg") | {"ride": {"drop": {"value": "30 cm", "plus_minus_95": "0 cm", "origin": "stated"}}}
    most = float(landing_stroke(load(job), "front", 300.0))
    job["front"] = {"mark": {"value": f"{most:.1f} mm", "plus_minus_95": "1 mm", "origin": "measured"}}
    asked = load(job, 4000)
    corrected = sags_found(load(job, 1000)).correct(load(job, 1000))
    draws, _, _ = survivors(drawn(asked), 4000, lambda some: landing_stroke(some, "front", 300.0))
    strokes = np.asarray(landing_stroke(draws, "front", 300.0))
    kept = picked(draws, np.flatnonzero(strokes >= most))
    want, have = np.asarray(kept.samples["place.exponent"]), np.asarray(corrected.fields["place.exponent"].samples)
    assert len(want) > 400
    assert float(np.mean(have)) == pytest.approx(float(np.mean(want)), abs=0.012)
    assert float(np.std(have)) == pytest.approx(float(np.std(want)), rel=0.2)


def test_of_an_air_spring_as_built_pressure_and_gaps_are_taken_all_else_as_found():
    """What the report says of the same setup once built is what its sags are expected to be."""
    built = {"front.built_pressure": "10.4 bar", "front.built_gap_left": "112 mm", "front.built_gap_right": "114 mm"}
    air = {"front.air": "air leg", "bike.sags_of": "built"}
    document = demo(air | built)
    told = report(document, with_bands=False)["ends"]["front"]["built"]["setup"]
    sags = expected(load(document), "front").sags
    assert told["pressure"]["value"] == 10.4
    assert [float(sag) for sag in sags] == pytest.approx([told["free_sag"]["value"], told["rider_sag"]["value"]], abs=1e-6)
    with pytest.raises(Impossible, match="not entered"):
        expected(load(demo(air | {"front.built_pressure": "10.4 bar", "front.built_gap_left": "112 mm"})), "front")
    with pytest.raises(Impossible, match="not what was set in its chambers"):
        expected(load(demo(air | built | {"front.air_end": "oil"})), "front")
