"""What is told of the dampers: words against the figures beside them, and where nothing is told."""

from __future__ import annotations

import re
from dataclasses import replace
from random import Random

import pytest

from calc.boundary import to_json
from calc.conditions.states import states
from calc.demo import jobs
from calc.impossible import Impossible
from calc.job import load
from calc.job.field import Kind, Part
from calc.job.fields import FIELDS
from calc.model.damper import damper
from calc.report import part_of, report_of
from calc.report.compare import comparison
from calc.report.damping import _in_states
from calc.report.damping_text import damping_lines
from calc.report.damping_words import limit_words
from tests.support.dampers import FRONT, REAR, STANDING, WHOLE, figures_of, numbers, told
from tests.support.documents import changed, demo
from tests.support.random_jobs import random_job

DAMPING = [field for field in FIELDS.values() if field.part is Part.DAMPING]


def test_it_is_of_what_was_built_as_soon_as_that_is_whole():
    built = {"front.built_rate": "4.8", "front.built_preload": "2", "front.built_gap_left": "125"}
    assert told(demo(built), FRONT).of == "recommended"
    whole = told(demo(built | {"front.built_gap_right": "125"}), FRONT)
    assert (whole.of, whole.holds[0].label) == ("built", "As built")
    assert "what was built wants" in whole.words[0]
    assert whole.follows[0].ride.value != told(demo(), FRONT).follows[0].ride.value


def test_the_softest_on_offer_is_an_answer_like_any_other():
    """The spring that is in, with a much stiffer one alone on the shelf: it stays, set anew, and damping is told of that."""
    shelf = demo({"front.buy": "stock", "front.stock": "8", "front.rate": "4.6 N/mm"})
    chosen = report_of(load(shelf), with_bands=False).ends.front.chosen
    assert (chosen.fitted, chosen.rate.text) == (True, "4.6")
    damping = told(shelf, FRONT)
    assert damping.of == "recommended"
    assert damping.holds[0].label == "As recommended"
    assert [row.since for row in damping.follows] == ["as found", "as sold"]


def test_a_cartridge_is_told_sealed_and_opened_and_what_the_base_valve_must_hold():
    damping = told(jobs()["trail"], FRONT)
    assert [one.label for one in damping.holds] == ["As built", "Opened to the leg"]
    sealed, opened = (one.rows[1].drop.text for one in damping.holds)
    assert any(f"{sealed} bar while sealed and {opened} bar once opened" in words for words in damping.limits)


def test_a_state_that_cannot_be_says_why():
    """Which cannot be is decided in `calc.conditions.states`; here one is made so."""
    job = load(jobs()["trail"])
    barred = states(job)
    barred = replace(
        barred,
        told=barred.told | {"opened into one": Impossible("hydraulic-lock", "The leg is oil-locked at 270 mm.", "Less oil.")},
    )
    sealed, opened = _in_states(damper(job, "front"), 0.1, barred)
    assert len(sealed.rows) == 3
    assert (opened.rows, opened.problem) == ((), "Opened to the leg: The leg is oil-locked at 270 mm.")
    shown = replace(told(jobs()["trail"], FRONT), holds=(sealed, opened))
    assert opened.problem in limit_words(job, shown)
    assert not any("once opened" in words for words in limit_words(job, shown))


def test_an_end_without_an_answer_tells_why_and_the_oil_that_moves():
    damping = told(
        changed(
            jobs()["trail"],
            {
                "front.cartridge_fill": "gas",
                "front.cartridge_gas": "8 ml",
                "front.charge_by": "gauge",
                "front.cartridge_charge": "2",
            },
        ),
        FRONT,
    )
    assert "This end has no answer" in damping.problem
    assert "oil-locked" in damping.problem
    assert (damping.wheel, damping.holds) == (None, ())
    assert damping.moved is not None


def test_an_air_spring_does_not_back_the_damper():
    damping = told(demo({"front.air": "air leg"}), FRONT)
    assert damping.holds[0].rows == ()
    assert "does not back the damper" in damping.limits[0]
    assert damping.moved is not None


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        ({"front.damper_piston": "90"}, "90 mm is above the limit of 80 mm"),
        ({"front.damping_rod": "20", "front.damper_piston": "20"}, "must be thinner than its piston"),
        ({"front.ports": "4"}, "Port diameter is not entered. The ports need both"),
        ({"front.travel": "300 kg"}, "This end has no answer, so little is told of its damping. Fork travel:"),
    ],
)
def test_what_stands_in_the_way_is_said_and_the_clickers_stay(entry, said):
    report = report_of(load(demo(entry | {"front.click_rebound_left": "11"})))
    damping = report.damping[FRONT]
    assert said in damping.problem
    assert "rebound left 11" in damping.log
    if "front.travel" not in entry:
        assert report.ends.front.state == "ok", "no answer rests on a damper"


def test_no_answer_rests_on_any_of_it():
    plain, whole = (
        report_of(load(document), with_bands=False)
        for document in (demo(), demo(WHOLE | {"front.shims": "3 24 0.15", "rear.vapour": "0.3"}))
    )
    assert to_json(plain.ends) == to_json(whole.ends)


def test_the_log_names_every_clicker_that_was_counted():
    found = {"rear.click_rebound": "14", "rear.click_high": "1.5"}
    assert (
        told(demo(found | {"rear.click_compression": None}), REAR).log
        == "Rear clickers from closed, as found: rebound 14, high-speed compression 1.5."
    )
    both = told(demo(found | {"rear.click_compression": None, "rear.set_compression": "9"}), REAR)
    assert both.log.endswith("as found → as built: rebound 14 → –, compression – → 9, high-speed compression 1.5 → –.")
    empty = {f"rear.click_{key}": None for key in ("rebound", "compression", "high")}
    assert told(demo(empty), REAR).log == ""


def test_it_comes_with_the_bands_of_the_end_that_was_asked_for():
    job = load(demo())
    assert report_of(job, with_bands=False).damping == ()
    assert [one.axle for one in part_of(job, "rear").damping] == ["rear"]
    assert "NaN" not in to_json(report_of(job).damping)


def test_the_command_line_tells_all_of_it():
    damping = report_of(load(jobs()["trail"])).damping
    text = " ".join(" ".join(damping_lines(damping)).split())
    for end in damping:
        for words in (*end.words, *end.limits, *end.besides, end.left_out, *(end.shims.groups if end.shims else ())):
            assert words in text
    assert "Rebound, left 12 10" in text


def entry(rng: Random, field) -> str:
    if field.kind is Kind.CHOICE:
        return rng.choice(list(field.choices))
    if field.kind is Kind.SHIMS:
        return "; ".join(
            f"{rng.randint(1, 9)} {rng.uniform(6, 40):.2f} {rng.uniform(0.05, 0.4):.2f}" for _ in range(rng.randint(1, 6))
        )
    return f"{rng.uniform(field.low, field.high):.{field.decimals}f}"


@pytest.mark.parametrize("seed", range(16))
def test_random_dampers_on_random_bikes_are_told_or_refused(seed):
    rng = Random(f"damping {seed}")
    entries = {field.path: entry(rng, field) for field in DAMPING if rng.random() < 0.7}
    document = changed(random_job(f"damping {seed}", f"damping f{seed}", f"damping r{seed}"), entries)
    for damping in report_of(load(document, 20)).damping:
        known = figures_of((damping.moved, damping.holds, damping.wheel, damping.follows)) | STANDING
        if not damping.problem:
            assert damping.moved is not None
            assert damping.wheel is not None
        for words in (*damping.words, *damping.besides):
            assert set(numbers(words)) <= known, words
        assert re.search(r"\b(nan|inf)\b", to_json(damping).lower()) is None


def test_two_visits_compare_what_was_logged_with_its_end():
    one, other = (
        load(demo({"front.set_rebound_left": clicks, "rear.set_rebound": clicks, "oil.density": clicks + "0"}))
        for clicks in ("80", "90")
    )
    rows = {row.path: row.label for row in comparison(one, other).entries}
    assert rows == {
        "front.set_rebound_left": "Front: rebound, left, as built",
        "rear.set_rebound": "Rear: rebound, as built",
        "oil.density": "Density at 15 °C",
    }
