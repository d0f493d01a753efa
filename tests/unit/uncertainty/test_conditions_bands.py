"""How sure: hot, high, elsewhere, against every draw worked out by itself and against an independent hand model."""

from dataclasses import replace

import numpy as np
import pytest

from calc.conditions.changes import under_conditions
from calc.end.setup import Setup
from calc.job import load
from calc.model.draws import drawn
from calc.model.inputs import end_inputs, found
from calc.sizing.choice import size_end
from calc.uncertainty.bands import bands
from calc.uncertainty.conditions import condition_bands
from calc.uncertainty.tolerance import TOLERANCES, with_tolerance, with_workmanship
from tests.support.documents import demo
from tests.support.plain import report
from tests.unit.uncertainty.test_bands import half, hand_drawn

BUILT = Setup(4.6, 3.0, 120.0)
MORE = {"conditions.rider": "80 kg", "conditions.luggage": "20 kg"}


def one_by_one(job, end, setup, count=200):
    """Rows of every draw as a job of its own, scalars only: no draw shares an array with another."""
    draws = with_tolerance(drawn(job, count))
    for i in range(count):
        alone = replace(
            draws, samples={path: float(np.broadcast_to(values, (count,))[i]) for path, values in draws.samples.items()}
        )
        yield {row.key: row for row in under_conditions(alone, end, with_workmanship(alone, setup))}


@pytest.fixture(scope="module")
def each():
    return list(one_by_one(load(demo(MORE)), "front", BUILT))


@pytest.fixture(scope="module")
def sure():
    return condition_bands(load(demo(MORE)), "front", BUILT)


KEYS = ["as built", "hot", "high", "high, bled there", "hot and high", "other rider", "luggage"]


@pytest.mark.parametrize("key", KEYS)
def test_all_at_once_is_what_every_draw_says_by_itself(key, each, sure):
    def of(pick):
        return half(np.array([pick(rows) for rows in each]))

    halves = sure[key].halves
    assert halves["rider_sag"] == pytest.approx(of(lambda r: float(r[key].figures.rider.stroke)), rel=1e-4)
    assert halves["free_sag"] == pytest.approx(of(lambda r: float(r[key].figures.free.stroke)), rel=1e-4)
    assert halves["end_force"] == pytest.approx(of(lambda r: float(r[key].figures.end_force)), rel=1e-6)
    if key == "as built":
        assert "acts_like" not in halves
        return
    assert halves["acts_like"] == pytest.approx(of(lambda r: r[key].acts_like), rel=1e-4)
    assert halves["restoring"] == pytest.approx(of(lambda r: r[key].restoring), rel=1e-4)
    change = of(lambda r: float(r[key].figures.end_multiple - r["as built"].figures.end_multiple))
    assert halves["change_end_multiple"] == pytest.approx(change, rel=1e-6, abs=1e-9)
    assert sure[key].left_out == 0


def test_as_built_is_as_sure_as_the_answer():
    job = load(demo({}))
    done = size_end(job, "front")
    answer, here = bands(job, "front", done), condition_bands(job, "front", done.sized.setup.at(done.choice))["as built"]
    assert here.halves["rider_sag"] == pytest.approx(answer.figures["rider_stroke"], rel=1e-4)
    assert here.halves["end_multiple"] == pytest.approx(answer.figures["end_multiple"], rel=1e-6)


def test_as_built_against_the_hand_model(sure):
    rng, fork = np.random.default_rng(11), hand_drawn()
    rate, preload, gap = (value + pm / 2 * rng.standard_normal(4000) for value, pm in ((4.6, 0.138), (3.0, 1.0), (120.0, 1.0)))
    assert sure["as built"].halves["rider_sag"] == pytest.approx(half(fork.sag(rate, preload, gap, fork.load)), rel=0.15)
    assert sure["as built"].halves["end_force"] == pytest.approx(half(fork.end_force(rate, preload, gap, fork.load)), rel=0.15)


def test_a_change_is_surer_than_two_figures_apart(sure):
    """What both share falls out: a change taken from unshared draws would be the root of two squares wide."""
    hot, home = sure["hot"].halves, sure["as built"].halves
    apart = np.hypot(hot["rider_sag"], home["rider_sag"])
    assert hot["change_rider_sag"] < 0.25 * apart
    assert sure["as built"].halves["change_rider_sag"] == 0.0


def test_the_rear_has_no_gap_and_the_found_setup_is_drawn_as_it_was_read():
    job = load(demo({"conditions.luggage": "20 kg"}))
    rear = condition_bands(job, "rear", Setup(56.0, 4.0, 0.0))
    assert list(rear) == ["as built", "luggage"]
    assert "acts_like" not in rear["luggage"].halves
    draws = with_tolerance(drawn(job))
    setup, figures, _ = found(end_inputs(draws, "front"))
    as_found = condition_bands(job, "front", None)["as built"]
    assert as_found.halves["end_force"] == pytest.approx(half(figures.end_force), rel=1e-3)
    assert np.size(setup.rate) == 200


def test_draws_that_cannot_be_so_are_left_out_and_counted():
    """Wide open: a rider so heavy that the springs hold him in some draws only; every draw by itself says which."""
    changes = {"conditions.rider": "190 kg", "front.rate": {"value": "3 N/mm", "origin": "stated"}, "front.unsprung": {"value": "16 kg", "plus_minus_95": "8 kg", "origin": "stated"}}  # fmt: skip
    job, setup = load(demo(changes)), Setup(3.0, 3.0, 150.0)
    held = [rows["other rider"].figures is not None for rows in one_by_one(job, "front", setup)]
    sure = condition_bands(job, "front", setup)
    left_out = sure["other rider"].left_out if "other rider" in sure else 200
    assert left_out == 200 - sum(held)
    assert sure["as built"].left_out == 0


def test_the_report_shows_the_half_widths_in_its_units_and_says_what_it_shows():
    front = report(demo(MORE))["ends"]["front"]
    rows, expected = {row["key"]: row for row in front["conditions"]}, condition_bands(load(demo(MORE)), "front", BUILT)
    assert (front["chosen"]["preload"]["value"], front["chosen"]["gap"]["value"]) == (BUILT.preload, BUILT.gap)
    hot = rows["hot"]
    assert hot["end_force"]["plus_minus_95"] == pytest.approx(expected["hot"].halves["end_force"] / 1000, rel=0.01)
    assert hot["acts_like"]["plus_minus_95"] == pytest.approx(expected["hot"].halves["acts_like"], rel=0.01)
    assert (
        f"as if the gap were {-hot['acts_like']['value']:.0f} ±{hot['acts_like']['plus_minus_95']:.0f} mm smaller" in hot["words"]
    )
    change = hot["change"]["rider_sag"]
    assert change["value"] == pytest.approx(hot["rider_sag"]["value"] - rows["as built"]["rider_sag"]["value"])
    assert 0 < change["plus_minus_95"] < hot["rider_sag"]["plus_minus_95"]
    assert rows["as built"]["change"] is None
    rear = {row["key"]: row for row in report(demo(MORE))["ends"]["rear"]["conditions"]}
    assert rear["luggage"]["words"].startswith("Compared with as built: rider sag ")


def test_every_tolerance_of_the_bench_is_drawn():
    draws = with_tolerance(drawn(load(demo({}))))
    assert all(np.size(draws.samples[name]) == 200 for name in TOLERANCES)
    as_built = with_workmanship(draws, BUILT)
    assert half(as_built.gap) == pytest.approx(0.98, abs=0.03)
    assert half(as_built.rate) / 4.6 == pytest.approx(0.0294, rel=0.03)
    assert with_workmanship(draws, Setup(56.0, 4.0, 0.0)).gap == 0.0
