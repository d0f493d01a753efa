"""What a whole job is told, to the last word and digit: seats, refusals, counts of draws, cautions."""

import pytest

from calc.job import JobError, load
from calc.practice import usual
from calc.report.sure import middle, of_ten
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.plain import text as text_of
from tests.whole.test_air import AIR, OIL


def front_of(changes=None, **how):
    return report(demo(changes), **how)["ends"]["front"]


def test_the_fitted_spring_is_told_though_nothing_fits_and_others_are_nearer():
    front = front_of({"front.target_sag": "10 mm", "front.rate": "3.2 N/mm"}, with_bands=False)
    assert front["verdict"] == "nearest"
    assert [c["rate"]["value"] for c in front["candidates"] if c["fitted"]] == [3.2]


def test_an_air_spring_s_seat_moves_nothing():
    seat = front_of(OIL, with_bands=False)["seat"]
    assert (seat["move"]["value"], seat["turns"]) == (0.0, None)


@pytest.mark.parametrize(("changes", "side"), [
    ({"front.balance_volume": "35 ml"}, "under"),
    ({"front.balance_fill": "valve", "front.balance_pressure": "24 bar", "front.target_sag": "95 mm"}, "over"),
])  # fmt: skip
def test_free_sag_of_an_air_spring_is_told_on_its_side_of_the_window(changes, side):
    front = front_of(AIR | changes | {"front.gap_min": "30 mm", "front.air_pressure": "8 bar"}, with_bands=False)
    free, window = front["chosen"]["free_sag"]["value"], front["windows"]["free_sag"]
    assert (free < window["low"], free > window["high"]) == (side == "under", side == "over")
    assert any(f"is {side} the usual" in line for line in front["why"])


@pytest.mark.parametrize(("reading", "path"), [("front_axle", "bike.front_axle"), ("rear_axle", "bike.rear_axle")])
def test_an_axle_that_carries_the_whole_bike_is_refused_and_one_that_does_not_is_taken(reading, path):
    one = {
        "bike.front_axle": None,
        "bike.rear_axle": None,
        "bike.mass": "110 kg",
        "rider.front_axle": None,
        "rider.rear_axle": None,
    }
    (problem,) = front_of(one | {f"bike.{reading}": "110 kg"}, with_bands=False)["problems"]
    assert (problem["path"], problem["message"]) == (path, "One axle carries as much as the whole bike of 110 kg.")
    assert front_of(one | {f"bike.{reading}": "56 kg"}, with_bands=False)["state"] != "refused"


def test_a_note_of_the_greatest_length_is_kept_and_a_longer_one_refused():
    assert report({**demo(), "note": "x" * 2000}, with_bands=False)["header"]["note"] == "x" * 2000
    with pytest.raises(JobError, match="at most 2000 characters"):
        report({**demo(), "note": "x" * 2001}, with_bands=False)


def test_braking_is_told_to_a_tenth_of_its_deceleration():
    front = front_of({"bike.braking": "5 m/s²", "bike.centre_height": "650 mm", "bike.wheelbase": "1485 mm"}, with_bands=False)
    if front["braking"] is None:
        pytest.fail("the job asks for no brake dive")
    assert front["braking"]["deceleration"]["decimals"] == 1


def test_every_caution_and_what_is_left_out_is_printed_with_the_report():
    told = report(demo(AIR), with_bands=False)
    text = " ".join(text_of(demo(AIR), with_bands=False).split())
    for caution in told["cautions"]:
        assert " ".join(f"{caution['title']} {caution['words']}".split()) in text
    assert "Let all air off" in text
    assert " ".join(told["left_out"].split()) in text


def test_what_is_tried_is_not_among_what_the_answer_rests_on():
    text = text_of(demo({"front.tried_rate": "4.4 N/mm"}), with_bands=False)
    assert "Try springs" not in text
    assert "tried" in text


def test_a_range_of_the_user_s_own_holds_text_or_numbers():
    for key in ("low", "high", "typical"):
        for value in ([4], {"a": 1}, True):
            with pytest.raises(JobError, match=rf"practice\.gap\.{key} must be a string or a number"):
                report({**demo(), "practice": {"gap": {"low": 90, "high": 130, "typical": 110} | {key: value}}})


@pytest.mark.parametrize(("changes", "end", "path"), [
    ({"front.preload_min": "20 mm", "front.preload_max": "10 mm"}, "front", "front.preload_max"),
    ({"front.gap_min": "150 mm", "front.gap_max": "140 mm"}, "front", "front.gap_max"),
    ({"rear.preload_min": "20 mm", "rear.preload_max": "10 mm"}, "rear", "rear.preload_max"),
])  # fmt: skip
def test_a_most_below_its_least_is_refused_at_its_field(changes, end, path):
    (problem,) = report(demo(changes), with_bands=False)["ends"][end]["problems"]
    assert (problem["code"], problem["path"]) == ("limits", path)
    assert "is below the minimum" in problem["message"]


def test_a_sag_of_the_whole_travel_is_refused():
    (problem,) = front_of(
        {"front.travel": "200 mm", "front.target_sag": "200 mm", "front.collapsed_stroke": "205 mm"}, with_bands=False
    )["problems"]
    assert (problem["code"], problem["path"]) == ("sag", "front.target_sag")


def test_the_most_preload_that_is_assumed_is_taken_as_exact():
    found = load(demo({"front.preload_max": None})).fields["front.preload_max"]
    assert found.number == 1.5 * usual("preload fork", "enduro").high
    assert (found.plus_minus, found.reading.plus_minus_95) == (0.0, 0.0)


def test_draws_are_counted_and_those_left_out_are_not():
    """A leg near its lock: some draws cannot be built."""
    sure = front_of({"front.seal_diameter": {"value": "48 mm", "plus_minus_95": "6 mm", "origin": "measured"}})["sure"]
    assert sure["left_out"] > 0
    assert sure["draws"] + sure["left_out"] == 200
    assert sum(one["count"] for one in sure["counts"]) + sure["undecided"] == sure["draws"]


@pytest.mark.parametrize(("counts", "parts", "span"), [
    ({4.4: 21, 4.6: 158, 4.8: 21}, {4.4: 1, 4.6: 8, 4.8: 1}, (4.4, 4.8)),
    ({4.4: 19, 4.6: 162, 4.8: 19}, {4.4: 1, 4.6: 8, 4.8: 1}, (4.6, 4.6)),
    ({4.2: 50, 4.4: 50, 4.6: 50, 4.8: 50}, {4.2: 3, 4.4: 3, 4.6: 2, 4.8: 2}, (4.2, 4.8)),
    ({4.6: 180, 4.8: 20}, {4.6: 9, 4.8: 1}, (4.6, 4.6)), ({4.6: 130, 4.8: 70}, {4.6: 7, 4.8: 3}, (4.6, 4.8)),
    ({4.6: 200}, {4.6: 10}, (4.6, 4.6)), ({4.0: 30, 4.6: 90, 5.2: 80}, {4.0: 2, 4.6: 4, 5.2: 4}, (4.0, 5.2)),
])  # fmt: skip
def test_ten_parts_and_the_middle_eight_of_ten(counts, parts, span):
    assert sum(of_ten(counts, 200).values()) == 10
    assert of_ten(counts, 200) == parts
    assert middle(counts) == span


def test_the_band_of_a_leverage_s_fall_is_that_of_its_reading():
    """The rear's two figures of motion, entered directly: what they may be off by is what was entered, give or take the draws' noise."""
    motion = report(demo({"rear.leverage_fall": {"value": "22 %", "plus_minus_95": "4 %", "origin": "measured"}}))["ends"]["rear"][
        "motion"
    ]
    assert motion["fall"]["plus_minus_95"] == pytest.approx(4.0, rel=0.1)
    assert motion["average"]["plus_minus_95"] == pytest.approx(0.05, rel=0.1)


def test_coil_bind_of_a_new_spring_is_its_own_and_of_the_fitted_one_the_fitted_s():
    own = {
        "front.new_spring": "own",
        "front.new_free": "460 mm",
        "front.new_solid": "120 mm",
        "front.free_length": "470 mm",
        "front.solid_length": "100 mm",
    }
    told = {c["fitted"]: c for c in front_of(own, with_bands=False)["candidates"]}
    for fitted, free, solid in ((False, 460.0, 120.0), (True, 470.0, 100.0)):
        one = told[fitted]
        assert one["bind_clearance"]["value"] == pytest.approx(free - solid - 300.0 - one["preload"]["value"], abs=1e-6)
    unknown = {c["fitted"]: c for c in front_of(own | {"front.solid_length": None}, with_bands=False)["candidates"]}
    assert unknown[True]["bind_clearance"] is None
    assert unknown[False]["bind_clearance"] is not None


@pytest.mark.parametrize("end", ["front", "rear"])
def test_where_nothing_can_be_built_the_field_to_look_at_is_what_is_on_offer(end):
    closed = {
        f"{end}.free_length": "470 mm" if end == "front" else "260 mm",
        f"{end}.solid_length": "400 mm" if end == "front" else "220 mm",
    }
    (problem,) = report(demo(closed), with_bands=False)["ends"][end]["problems"]
    assert (problem["code"], problem["path"]) == ("nothing-fits", f"{end}.buy")
