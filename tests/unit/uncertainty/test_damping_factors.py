"""By how much damping must follow: closed forms of figures worked out elsewhere, and a +/- that shares what both setups have."""

from __future__ import annotations

import math

import pytest

from calc.end.setup import Setup
from calc.job import load
from calc.model.axles import standard_loads
from calc.model.draws import drawn, half_width
from calc.model.inputs import attempted, end_inputs
from calc.uncertainty.damping import factors, followed
from tests.support.documents import demo


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_the_factors_are_those_of_the_two_setups_figures(axle):
    """sqrt(k' m' / (k m)) and F' / F, of wheel rate, sprung mass and end force as the report tells them."""
    job = load(demo())
    here = end_inputs(job, axle)
    setup = Setup(5.0, 3.0, 118.0) if axle == "front" else Setup(54.0, 8.0, 0.0)
    told = followed(job, axle, here, setup, own=False).factors
    was, now, sold = attempted(here, here.as_found)[0], attempted(here, setup)[0], here.standard
    mass, mass_sold = (float(loads.aboard) / 9.80665 for loads in (here.loads, standard_loads(job, axle)))
    assert told["found"] == pytest.approx(math.sqrt(now.wheel_rate / was.wheel_rate))
    assert told["sold"] == pytest.approx(math.sqrt(now.wheel_rate * mass / (sold.wheel_rate * mass_sold)))
    assert told["found_full"] == pytest.approx(now.end_force / was.end_force)
    assert told["sold_full"] == pytest.approx(now.end_force / sold.end_force)


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_what_stays_as_it_is_wants_the_damping_that_it_has(axle):
    job = load(demo())
    here = end_inputs(job, axle)
    told = followed(job, axle, here, here.as_found, own=True)
    assert told.factors["found"] == pytest.approx(1.0, abs=1e-12)
    assert told.factors["found_full"] == pytest.approx(1.0, abs=1e-12)
    # built anew with the same spring only preload and gap scatter; of the readings nothing is left
    assert told.halves["found"] < 0.02


def test_the_half_width_is_narrower_than_if_both_were_drawn_apart():
    """Both setups share rider, travel, gas and leverage in a draw: by their own +/- alone the quotient would scatter by far more."""
    job = load(demo())
    here = end_inputs(job, "front")
    told = followed(job, "front", here, Setup(4.6, 3.0, 120.0), own=False)
    draws = drawn(job)
    there = end_inputs(draws, "front")
    now = attempted(there, Setup(4.6, 3.0, 120.0))[0]
    alone = half_width(now.end_force) / float(attempted(here, Setup(4.6, 3.0, 120.0))[0].end_force)
    assert 0.0 < told.halves["found_full"] < 0.7 * math.sqrt(2.0) * alone


def test_a_heavier_rider_wants_more_of_it():
    """Common practice, no source: whoever is heavier than the rider a bike is sold for, on stiffer springs, closes the rebound."""
    light, heavy = (
        load(demo({"rider.mass": f"{mass} kg", "rider.front_axle": None, "rider.rear_axle": None})) for mass in (87, 110)
    )
    setup = Setup(4.8, 4.0, 120.0)
    told = [
        factors(job, "front", here, attempted(here, setup)[0])["sold"]
        for job in (light, heavy)
        for here in [end_inputs(job, "front")]
    ]
    assert told[1] > told[0] > 1.0


def test_a_setup_that_cannot_be_is_compared_with_the_one_it_was_sold_with_alone():
    job = load(demo({"front.gap_left": "25", "front.gap_right": "25"}))
    here = end_inputs(job, "front")
    assert set(followed(job, "front", here, Setup(4.6, 3.0, 120.0), own=False).factors) == {"sold", "sold_full"}
