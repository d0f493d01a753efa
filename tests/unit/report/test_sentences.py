"""Sentences that choose their words by the numbers beside them: each way that they can go, and the figures in refusals."""

import re
from dataclasses import fields, replace

import pytest

from calc.conditions.equivalent_gap import gap_for_end_force
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.report import report as typed_report
from calc.report.conditions import change_words
from calc.report.quantity import quantity, spring_rate
from calc.report.reasons import reason_words
from calc.report.setups import _decimals
from calc.report.springs import seat_words
from calc.report.sure import middle
from calc.report.text import report_text
from calc.report.types import Candidate, Change, ConditionBarred, Criterion, Legs, Window, YardstickReport
from calc.report.words import (
    answer_words,
    count_words,
    load_words,
    oil_words,
    open_words,
    rate_words,
    ride_words,
    sag_choice_words,
    span_words,
    yardstick_words,
)
from calc.sizing.choice import BIGGEST_CHANGE, SPAN_STEPS
from tests.support.documents import demo
from tests.support.plain import report
from tests.unit.end.test_end import fork


def ml(left: float, right: float) -> Legs:
    return Legs(quantity(left, "ml", "", 0), quantity(right, "ml", "", 0))


def setup(rate: float = 4.6, pair: tuple[float, float] | None = None, **more: object) -> Candidate:
    """A candidate of which only what these sentences name is known."""
    told = dict.fromkeys(field.name for field in fields(Candidate))
    told |= {"rate": spring_rate(rate, ""), "preload": quantity(3.0, "mm", "", 0), "gap": quantity(120.0, "mm", "", 0),
             "frequency": quantity(2.08, "Hz", "", 2), "free_sag": quantity(30.0, "mm", "", 0), "rider_sag": quantity(66.0, "mm", "", 0)}  # fmt: skip
    sides = None if pair is None else Legs(*(spring_rate(r, "") for r in pair))
    return Candidate(**(told | {"pair": sides, "topped_out": False} | more))


@pytest.mark.parametrize(("left", "right", "words"), [
    (42.0, 45.0, "add 42 ml left, 45 right"), (8.0, 8.2, "add 8 ml a leg"), (-8.0, -8.2, "take out 8 ml a leg"),
    (0.2, 0.4, "no oil to add"), (5.0, -6.0, "add 5 ml left, take out 6 ml right"), (-5.0, 6.0, "take out 5 ml left, add 6 ml right"),
    (-42.0, -45.0, "take out 42 ml left, 45 right"),
])  # fmt: skip
def test_oil_to_add_or_take_out(left, right, words):
    assert oil_words(ml(left, right)) == words


@pytest.mark.parametrize(("low", "high", "words"), [
    (None, None, "4.6 is right for every rider within half as much or 24 kg."), (None, 106.0, "4.6 is right for riders of up to 106 kg in kit."),
    (99.0, None, "4.6 is right for riders from 99 kg in kit up."), (99.0, 106.0, "4.6 is right for riders of 99 to 106 kg in kit."),
])  # fmt: skip
def test_between_which_riders_it_stays(low, high, words):
    assert span_words(low, high, "4.6") == words


def test_the_answer_in_each_of_its_forms():
    pair, oil = setup(4.5, (4.4, 4.6)), ml(42, 42)
    assert rate_words(setup()) == "4.6"
    assert rate_words(pair) == "4.4 left and 4.6 right (mean 4.5)"
    assert answer_words("front", "fit", setup(oil=oil)) == "Fit 4.6 N/mm, 3 mm preload, gap 120 mm: add 42 ml a leg."
    assert answer_words("front", "keep", setup(oil=oil)) == "Keep the 4.6 N/mm: 3 mm preload, gap 120 mm: add 42 ml a leg."
    assert answer_words("front", "fit", setup()) == "Fit 4.6 N/mm, 3 mm preload, gap 120 mm."
    assert answer_words("rear", "fit", setup(oil=oil)) == "Fit 4.6 N/mm, 3 mm preload."
    assert answer_words("rear", "open", setup(fitted=True), "the leverage is not measured") == (
        "Can't choose a rear spring yet: the leverage is not measured. Keep the 4.6 for now and set the sag: 3 mm preload."
    )


def test_a_rate_that_nobody_read_is_not_named():
    """What is in stays; how stiff it is was assumed, and would be read as known."""
    assert answer_words("rear", "keep", setup(48.0), in_known=False) == "Keep what is in: 3 mm preload."
    assert answer_words("front", "open", setup(fitted=True), in_known=False).startswith(
        "Can't choose a fork spring yet. Keep what is in for now"
    )


def test_a_pressure_that_nobody_read_is_pumped_to():
    bar = quantity(10.0, "bar", "", 1)
    air = replace(
        setup(fitted=True), pressure=bar, gap=None, oil=None, criteria=(Criterion("rider sag", "outside", "rider sag 61 mm"),)
    )
    assert answer_words("front", "keep", air) == "Keep 10.0 bar."
    assert answer_words("front", "keep", air, in_known=False) == "Pump to 10.0 bar."
    assert answer_words("front", "nearest", air) == "No pressure fits. What is in, 10.0 bar, is the nearest; rider sag 61 mm."
    assert answer_words("front", "nearest", air, in_known=False) == "No pressure fits. The nearest is 10.0 bar; rider sag 61 mm."


def test_what_is_in_and_cannot_stay_is_not_kept():
    told = answer_words(
        "rear", "open", setup(fitted=False), "the leverage is not measured", barred="leaves 1 mm before the coils touch"
    )
    assert (
        told
        == "Can't choose a rear spring yet: the leverage is not measured. What is in can't stay: it leaves 1 mm before the coils touch."
    )


def test_the_nearest_says_what_it_misses():
    criteria = (
        Criterion("rider sag", "outside", "rider sag 61 mm, 66 wanted"),
        Criterion("free sag", "inside", "free sag 30 mm, usual 24-42"),
    )
    told = answer_words("rear", "nearest", setup(criteria=criteria))
    assert told == "Nothing on offer fits. The nearest is 4.6 N/mm with 3 mm preload; rider sag 61 mm, 66 wanted."


def test_runs_counted_in_words():
    assert count_words({4.4: 1, 4.6: 7, 4.8: 2, 5.0: 0}, 4.6, 10) == "4.6 in 7 of 10 runs with your ± varied, 4.8 in 2, 4.4 in 1."
    assert count_words({4.6: 10}, 4.6, 10) == "4.6 in 10 of 10 runs with your ± varied."
    assert (
        count_words({4.4: 3, 4.6: 4, 4.8: 3}, 4.6, 9)
        == "4.6 or a step from it in 9 of 10 runs with your ± varied: 4.6 in 4, 4.4 in 3, 4.8 in 3."
    )
    assert open_words(4.2, 4.8, False) == "From 4.2 to 4.8 N/mm in 8 of 10 runs with your ± varied."
    assert open_words(4.2, 4.8, True) == "From 4.2 to 4.8 N/mm in 8 of 10 runs with your ± varied that find a spring."


@pytest.mark.parametrize(("axle", "extra", "words"), [
    ("front", 0.093, "Your load on the fork is 9 % more than the standard rider's."),
    ("rear", -0.093, "Your load on the rear is 9 % less than the standard rider's."),
    ("front", 0.004, "Your load on the fork is the standard rider's."), ("front", 0.9, "Your load on the fork is 90 % more than the standard rider's."),
])  # fmt: skip
def test_the_load_against_the_standard_rider_s(axle, extra, words):
    assert load_words(axle, extra) == words


def test_why_this_spring():
    usual = Window(1.9, 2.3, "Hz", "")
    yardstick = YardstickReport(quantity(2.07, "Hz", "", 2), "standard", yardstick_words("standard", "2.07 Hz", "2.07 Hz"))
    other = setup(4.2, frequency=quantity(1.97, "Hz", "", 2))
    plain = "4.6 rides at 2.08 Hz; the standard rider on the standard setup at 2.07 Hz"
    assert (
        ride_words(setup(), yardstick, other, usual)
        == f"{plain}; the 4.2 as it came in at 1.97 Hz. Usual for this riding: 1.9-2.3 Hz."
    )
    assert (
        ride_words(setup(), yardstick, setup(4.6), usual)
        == ride_words(setup(), yardstick, None, usual)
        == f"{plain}. Usual for this riding: 1.9-2.3 Hz."
    )


@pytest.mark.parametrize(("source", "words"), [
    ("frequency", "2.10 Hz is wanted"), ("free sag", "the free sag wanted asks for 2.10 Hz"),
    ("softest usual", "the standard setup at 1.70 Hz is softer than usual, so the choice goes by 2.10 Hz"),
    ("stiffest usual", "the standard setup at 1.70 Hz is stiffer than usual, so the choice goes by 2.10 Hz"),
])  # fmt: skip
def test_what_the_choice_is_measured_by(source, words):
    assert yardstick_words(source, "2.10 Hz", "1.70 Hz") == words


def test_what_another_rider_sag_would_choose():
    assert sag_choice_words(4.6, 4.6, 4.6, 5.0) == "With 5 mm less or more rider sag it would be the same spring."
    assert sag_choice_words(4.8, 4.6, 4.6, 5.0) == "With 5 mm less rider sag it would be 4.8, with 5 mm more 4.6."


def test_a_condition_that_cannot_be_does_not_hide_the_next():
    told = typed_report(demo())
    front = told.ends.front
    barred = ConditionBarred(front.conditions[1].key, front.conditions[1].label, "It bottoms there.", "")
    rows = (front.conditions[0], barred, *front.conditions[2:])
    assert len(rows) > 2
    text = report_text(replace(told, ends=replace(told.ends, front=replace(front, conditions=rows))))
    assert f"{barred.label}: It bottoms there." in text
    assert rows[2].label in text


def test_the_middle_eight_of_ten_draws():
    assert middle({4.4: 21, 4.6: 60, 4.8: 120}) == (4.4, 4.8)
    assert middle({4.4: 10, 4.6: 181, 4.8: 10}) == (4.6, 4.6)
    assert middle({4.4: 19, 4.6: 182}) == (4.6, 4.6)


@pytest.mark.parametrize(
    ("sag", "force", "words"),
    [(-3.0, 0.4, ("3 mm less", "0.4 × rider load more")), (0.6, -0.2, ("1 mm more", "0.2 × rider load less"))],
)
def test_a_change_says_which_way_it_goes(sag, force, words):
    told = change_words(Change(quantity(sag, "mm", "", 0), quantity(force, "", "", 1)))
    assert all(part in told for part in words)


@pytest.mark.parametrize(("step", "decimals"), [(0.1, 1), (0.2, 1), (0.05, 2), (0.07, 2), (1.0, 1)])
def test_a_gauge_is_told_to_what_its_steps_need(step, decimals):
    assert _decimals(step) == decimals


def test_widths_are_told_in_tenths_and_lengths_in_millimetres():
    numbers = {"outside": 44.04, "bore": 43.0, "bind": 2.6, "bind_margin": 3.0, "gap": None}
    assert reason_words("too wide", numbers) == "does not fit: 44.0 mm wide with its coils closed, in a bore of 43.0 mm"
    assert reason_words("coil bind", numbers) == "leaves 2.6 mm before the coils touch at full travel; 3.0 mm are wanted"


@pytest.mark.parametrize(("end", "move", "turns", "words"), [
    ("front", 0.2, None, "Spacers stay"), ("rear", -0.3, None, "Collar stays"), ("front", 4.0, None, "Add 4 mm of spacer"),
    ("front", -4.0, None, "Cut 4 mm off the spacer"), ("front", 4.0, 4.0, "Add 4 mm of spacer, or turn the adjuster 4.0 turns in"),
    ("front", -4.0, -2.7, "Cut 4 mm off the spacer, or turn the adjuster 2.7 turns out"), ("rear", 3.0, None, "Collar 3 mm in"),
    ("rear", -3.0, -2.0, "Collar 3 mm, 2.0 turns out"), ("rear", 0.6, 0.4, "Collar 1 mm, 0.4 turns in"),
])  # fmt: skip
def test_what_to_do_to_spacer_or_collar(end, move, turns, words):
    assert seat_words(end, move, turns, as_long=False) == f"{words}."
    assert seat_words(end, move, turns, as_long=True) == f"{words}, for a spring as long as the fitted one."


def refusal(changes: dict, end: str = "front") -> str:
    data = report(demo(changes), with_bands=False)["ends"][end]
    assert data["state"] == "refused"
    return data["problems"][0]["message"]


@pytest.mark.parametrize(("changes", "words"), [
    # 60 ml poured from 40 mm: the bore of 50.6 mm takes 64 ml in its 32 mm
    ({"front.area_by": "brim", "front.brim_gap": "40 mm", "front.brim_poured": "60 ml"}, "60 ml from a gap of 40 mm leaves nothing"),
    # 590 and 15 ml in a leg of 600 ml, 17.5 ml kept: 8 ml too much on the left
    ({"front.gap_from": "volume filled", "front.brim_volume": "600 ml", "front.filled_left": "590 ml", "front.filled_kept": "17.5 ml"},
     "is 8 ml more than the collapsed leg holds"),
])  # fmt: skip
def test_refusals_carry_the_figures_they_refuse(changes, words):
    assert words in refusal(changes)


def test_a_force_out_of_reach_tells_what_can_be_had_in_kilonewtons():
    """What is left of the range: the force at the gap that all but locks the leg, and with the tube all but empty."""
    loads, built, leg = Loads(380.0, 780.0, 9.80665), Setup(4.4, 4.0, 120.0), fork()
    with pytest.raises(Impossible) as caught:
        gap_for_end_force(leg, built, loads, 1.33, 1234.0)
    told, least, most = (float(word) for word in caught.value.message.replace(":", "").split() if word[0].isdigit())
    assert told == 1.23
    for force, beyond in ((least, 0.98), (most, 1.02)):
        assert 0.0 < float(gap_for_end_force(leg, built, loads, 1.33, force * 1000 / beyond)) < 500.0
        with pytest.raises(Impossible):
            gap_for_end_force(leg, built, loads, 1.33, force * 1000 * beyond)


def test_the_search_for_riders_is_as_wide_as_the_sentence_says():
    assert list(SPAN_STEPS) == list(range(-24, 25))
    assert BIGGEST_CHANGE == 0.5
    assert span_words(None, None, "4.6").endswith("for every rider within half as much or 24 kg.")


def test_what_a_reading_would_gain_is_told_in_as_many_places_as_it_takes_to_see_it():
    """Millimetres where whole ones differ, else tenths."""
    asked = [m for end in report(demo())["ends"].values() for m in end["measure_next"] if m["unit"] == "mm"]
    assert asked
    for one in asked:
        now, then = re.search(r"from ±(\S+) to ±(\S+) mm\)\.$", one["words"]).groups()
        places = 0 if f"{one['now']:.0f}" != f"{one['then']:.0f}" else 1
        assert [len(text.partition(".")[2]) for text in (now, then)] == [places, places], one["words"]
        for text, exact in ((now, one["now"]), (then, one["then"])):  # the report's own numbers have three figures
            assert abs(float(text) - exact) <= 0.5 * 10.0**-places + 0.005 * exact, one["words"]


def test_the_seat_is_told_per_leg_at_the_front_and_per_shock_at_the_rear():
    ends = report(demo({"front.pitch": "1 mm", "rear.pitch": "1.5 mm"}), with_bands=False)["ends"]
    for end, what, found, pitch in (("front", "spacer, per leg", 6.0, 1.0), ("rear", "collar, per shock", 15.0, 1.5)):
        seat, preload = ends[end]["seat"], ends[end]["chosen"]["preload"]["value"]
        assert seat["move"]["case"].startswith(what)
        assert seat["move"]["value"] == pytest.approx(preload - found)
        assert seat["turns"]["value"] == pytest.approx((preload - found) / pitch)
        assert (seat["move"]["decimals"], seat["turns"]["decimals"]) == (0, 1)
