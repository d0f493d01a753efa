"""What is told of dampers: every sentence against the figures beside it, factors against draws made apart, a bench's use of them."""

from __future__ import annotations

from math import pi

import pytest

from calc.demo import jobs
from calc.end.setup import Setup
from calc.job import load
from calc.job.starter import start
from calc.model.inputs import end_inputs
from calc.report import damping as damping_report
from calc.report import report_of
from calc.report.sized import fields_of
from calc.uncertainty.damping import Followed, followed
from tests.support.dampers import FRONT, REAR, STANDING, WHOLE, figures_of, numbers, told
from tests.support.documents import demo


@pytest.mark.parametrize(
    "document", [demo(), demo(WHOLE), demo(WHOLE | {"front.damps": "one"}), jobs()["trail"], jobs()["high pass"]]
)
@pytest.mark.parametrize("end", [FRONT, REAR])
def test_every_number_in_the_words_is_one_of_the_figures(document, end):
    damping = told(document, end)
    known = figures_of((damping.moved, damping.holds, damping.wheel, damping.follows)) | STANDING
    for words in (*damping.words, *damping.limits, *damping.besides):
        assert set(numbers(words)) <= known, words


def test_each_sentence_tells_its_own_row():
    damping = told(demo(WHOLE), FRONT)
    for row, words in zip(damping.follows, damping.words, strict=True):
        assert numbers(words) == [row.ride.text, row.ride.plus_minus_text[1:], row.full.text, row.full.plus_minus_text[1:]]
        assert ("how it came in" in words) == (row.since == "as found")
    rows = damping.holds[0].rows
    assert numbers(damping.limits[0]) == [*(row.force.text for row in rows), *(row.stated_force.text for row in rows)]
    assert numbers(damping.besides[1]) == [
        damping.wheel.rebound_ratio.text,
        damping.wheel.compression_ratio.text,
        damping.moved.speed.text,
    ]


def test_the_oil_that_moves_is_the_rods_and_the_rings_by_hand():
    """Volumes of circles: what a rod of 12 mm pushes out in 10 mm of stroke, and what it and the ring move at the speed, in l/min."""
    moved = told(
        demo(WHOLE | {"front.damping_rod": "12 mm", "front.damper_piston": "28 mm", "front.shaft_speed": "0.5 m/s"}), FRONT
    ).moved
    rod, bore = (pi / 4 * size**2 for size in (1.2, 2.8))  # cm2
    assert moved.pushed_out.value == pytest.approx(rod * 1.0)  # 1 cm of it, ml
    assert moved.pushed_out.text == f"{rod:.1f}", "a syringe is read to a tenth"
    assert moved.base.value == pytest.approx(rod * 50.0 * 60.0 / 1000.0)  # cm/s, s/min, cm3/l
    assert moved.piston.value == pytest.approx((bore - rod) * 50.0 * 60.0 / 1000.0)
    assert moved.share.value == pytest.approx(100.0 * rod / bore)


def test_a_factor_is_told_no_finer_than_its_band():
    """As figures with an uncertainty are told (GUM, 7.2.6): both end in the same decimal."""
    rows = [row for document in (demo(), jobs()["trail"]) for end in (FRONT, REAR) for row in told(document, end).follows]
    factors = [factor for row in rows for factor in (row.ride, row.full)]
    assert factors
    for factor in factors:
        assert len(factor.text.partition(".")[2]) == len(factor.plus_minus_text.partition(".")[2]) == 2


def test_the_band_of_a_factor_is_what_draws_of_both_setups_leave():
    """Drawn here by itself, apart from the report's bands; told to the hundredth, upwards."""
    job = load(demo())
    chosen = report_of(job, with_bands=False).ends.front.chosen
    setup = Setup(chosen.rate.value, chosen.preload.value, chosen.gap.value)
    halves = followed(job, "front", end_inputs(job, "front"), setup, own=False).halves
    for row, name in zip(told(demo(), FRONT).follows, ("found", "sold"), strict=True):
        for factor, half in ((row.ride, halves[name]), (row.full, halves[f"{name}_full"])):
            assert 0.9 * half <= factor.plus_minus_95 <= 1.1 * half + 0.01


@pytest.mark.parametrize(("half", "shown"), [(0.0401, "±0.05"), (0.04, "±0.04"), (0.0312, "±0.04"), (0.0021, "±0.01")])
def test_a_band_is_never_told_narrower_than_it_is(monkeypatch, half, shown):
    """Rounded up where it is rounded (GUM, 7.2.6)."""
    monkeypatch.setattr(
        damping_report, "_factors", lambda *_: Followed({"sold": 1.2, "sold_full": 1.3}, {"sold": half, "sold_full": half})
    )
    job = load(demo())
    (row,) = damping_report._follows.__wrapped__("front", fields_of(job, "front"), job.ranges, job.draws, True)
    assert (row.ride.plus_minus_text, row.full.plus_minus_text) == (shown, shown)


def test_what_is_too_little_is_left_and_what_is_not_is_told():
    """Common practice, no source: a bench makes no use of a factor within 5 %."""
    for document in (demo(), jobs()["trail"], jobs()["high pass"]):
        for damping in (told(document, end) for end in (FRONT, REAR)):
            for row, words in zip(damping.follows, damping.words, strict=True):
                small = max(abs(row.ride.value - 1), abs(row.full.value - 1)) < 0.05
                assert words.endswith("too little to act on.") == small


def test_what_the_plus_minus_covers_is_said_by_each_rows_own_figures():
    """A factor known to half of itself tells nothing; one whose +/- reaches 1 may be none."""
    seen = set()
    for use, rider, rates in (
        ("youth", "45 kg", ("3.4", "40")),
        ("road", "95 kg", ("9.0", "95")),
        ("motocross", "70 kg", ("4.6", "50")),
    ):
        sold = {"fork_springs": "as sold", "shock_spring": "as sold"}
        job = {**start(use, rider), "standard": sold, "front": {"rate": rates[0]}, "rear": {"rate": rates[1]}}
        for end in (FRONT, REAR):
            damping = told(job, end)
            for row, words in zip(damping.follows, damping.words, strict=True):
                halves = [factor.plus_minus_95 or 0.0 for factor in (row.ride, row.full)]
                off = [abs(factor.value - 1.0) for factor in (row.ride, row.full)]
                loose, little = max(halves) >= 0.5, max(off) < 0.05
                covered = all(apart <= half for apart, half in zip(off, halves, strict=True))
                assert ("tells nothing yet" in words) == loose, words
                assert ("too little to act on" in words) == (little and not loose), words
                assert ("may be no change" in words) == (covered and not little and not loose), words
                seen.add("loose" if loose else "little" if little else "covered" if covered else "told")
    assert seen == {"loose", "covered", "little", "told"}


def test_the_ratio_is_what_was_tested_over_what_would_be_critical():
    damping = told(demo(WHOLE), FRONT)
    assert damping.wheel.rebound_ratio.value == pytest.approx(300.0 / damping.wheel.rod.value)
    alone = told(demo(WHOLE | {"front.damps": "one"}), FRONT)
    assert alone.wheel.rod.value == pytest.approx(2.0 * damping.wheel.rod.value)
    assert alone.wheel.rebound_ratio.value == pytest.approx(0.5 * damping.wheel.rebound_ratio.value)


@pytest.mark.parametrize("end", [FRONT, REAR])
def test_critical_damping_is_that_of_the_frequency_told(end):
    """c = 2 m w = 4 pi f m (any vibration textbook): from the front page's frequency and load, to the whole N s/m."""
    report = report_of(load(demo()), with_bands=False).ends
    axle = (report.front, report.rear)[end]
    by_hand = 4.0 * pi * axle.chosen.frequency.value * axle.load.aboard.value / 9.80665
    critical = told(demo(), end).wheel.critical
    assert critical.value == pytest.approx(by_hand, rel=1e-6)
    assert critical.text == f"{by_hand:.0f}"
