"""The gap while filling, read back: each sentence against the figures beside it and against the leg's own geometry."""

import math
import re

import pytest

from calc.job import load
from calc.model.draws import half_width
from tests.support.documents import demo
from tests.support.plain import report

READ = {"front.filling_gap_left": "123 mm", "front.filling_gap_right": "119 mm"}
AIR = {"front.air": "air leg", "front.air_pressure": "10 bar", "front.air_end": "oil"}
LEG = re.compile(r"^(Left|Right): (\d+) read, (\d+) wanted: (leave it|add|take out)")
OIL = re.compile(r"(add|take out) (\d+) ml \((±[\d.]+)\) (in|from) this leg")


def filling(changes=None, bands=False):
    return report(demo(READ | (changes or {})), with_bands=bands)["filling"]


def test_what_is_read_and_wanted_makes_the_oil():
    found = filling()
    assert found["of"] == "answer"
    assert found["words"] == [
        "Left: 123 read, 120 wanted: add 5 ml (±0.2) in this leg, wait, and read it again.",
        "Right: 119 read, 120 wanted: take out 2 ml (±0.05) from this leg, and read it again.",
        "The legs differ by 4 mm: match them to 1 mm.",
    ]


@pytest.mark.parametrize(("left", "right"), [(123, 119), (120, 121), (150, 90), (131, 131), (60, 118)])
def test_words_and_numbers_agree(left, right):
    found = filling({"front.filling_gap_left": left, "front.filling_gap_right": right})
    for leg, read in zip(found["legs"], (left, right), strict=True):
        name, was, wanted, do = LEG.match(leg["words"]).groups()
        assert (name.lower(), int(was), int(wanted)) == (leg["leg"], read, round(leg["wanted"]["value"]))
        assert do == ("leave it" if read == int(wanted) else "add" if read > int(wanted) else "take out")
        if do != "leave it":
            ml = OIL.search(leg["words"])
            assert int(ml[2]) == round(abs(leg["oil"]["value"]))
            assert ml[3] == leg["oil"]["plus_minus_text"]
            # by hand, where the oil stays below the outer bore: 20 ml raised it by 12 mm
            assert leg["oil"]["value"] == pytest.approx((read - int(wanted)) * 20 / 12, rel=1e-9)
    apart = found["words"][2]
    assert apart == (
        "The legs match to 1 mm." if abs(left - right) <= 1 else f"The legs differ by {abs(left - right)} mm: match them to 1 mm."
    )
    assert found["apart"]["value"] == abs(left - right)


def test_the_band_is_that_of_the_area():
    # 12 mm of rise read to 0.4 mm: to first order 3.3 % of 5 ml. A second computation, from as many numbers of its own.
    import numpy as np

    rise = np.random.default_rng(4).normal(12.0, 0.2, 4000)
    own = 3.0 * 20.0 / rise
    told = filling()["legs"][0]["oil"]["plus_minus_95"]
    assert told == pytest.approx(5.0 * 0.4 / 12, rel=0.1)
    assert told == pytest.approx(half_width(own), rel=0.1)


def test_as_built_is_wanted_where_it_was_entered_each_leg_its_own():
    found = filling(
        {"front.built_gap_left": "118 mm", "front.built_gap_right": "122 mm", "front.built_rate": "4.6", "front.built_preload": "3"}
    )
    assert found["of"] == "built"
    assert [leg["wanted"]["text"] for leg in found["legs"]] == ["118", "122"]
    assert found["words"][-1] == "The gaps wanted are not alike, 118 left and 122 right: is that meant?"


def test_read_with_the_spring_in_each_leg_is_filled_around_what_stands_in_it():
    """By hand: 20 ml raised the oil by 12 mm; a leg with a coil has less room, by that coil's steel over its length. 51 ml are in the
    4.2; the 4.6 has the square root of their ratio more; common practice, no source. The leg without one has all of it."""
    found = filling({
        "front.gap_read": "in",
        "front.free_length": "470 mm",
        "front.spacer_length": "40 mm",
        "front.spacer_volume": "14 ml",
        "front.springs_in": "one",
        "front.built_rate": "4.6",
        "front.built_preload": "3",
        "front.built_gap_left": "117 mm",
        "front.built_gap_right": "117 mm",
    })  # fmt: skip
    left, right = (leg["oil"]["value"] for leg in found["legs"])
    steel = 51.0 * math.sqrt(4.6 / 4.2) / 470.0
    assert left == pytest.approx(6.0 * (20.0 / 12.0 - steel), rel=1e-6)
    assert right == pytest.approx(2.0 * 20.0 / 12.0, rel=1e-6)


def test_one_leg_alone_is_told_alone():
    found = filling({"front.filling_gap_right": None})
    assert [leg["leg"] for leg in found["legs"]] == ["left"]
    assert found["apart"] is None
    assert len(found["words"]) == 1
    assert filling({"front.filling_gap_left": None, "front.filling_gap_right": None}) is None


@pytest.mark.parametrize(
    ("entry", "limit"), [("600 mm", "20 to 500 mm"), ("12 mm", "20 to 500 mm"), ("-3", "20 to 500 mm"), ("nan", "20 to 500 mm")]
)
def test_a_refused_gap_is_named_and_stops_no_answer(entry, limit):
    whole = report(demo(READ | {"front.filling_gap_left": entry}), with_bands=False)
    assert whole["ends"]["front"]["state"] == "ok"
    assert whole["filling"]["problem"].startswith("Gap read now, left:")
    assert limit in whole["filling"]["problem"]
    assert whole["filling"]["legs"] == []


def test_no_answer_rests_on_it():
    with_, without = (report(demo(changes), with_bands=False)["ends"] for changes in (READ, {}))
    assert with_ == without


def test_a_refused_front_wants_no_gap():
    assert "no gap is wanted yet" in filling({"front.rate": "9**9**9"})["problem"]


def test_how_the_gap_is_read_is_said():
    assert filling()["note"] == "Read as every gap of this job: spring and spacer out, collapsed."
    volumes = {"front.gap_from": "volume filled", "front.filled_left": "600 ml", "front.brim_volume": "900 ml"}
    assert "known only by its volume" in filling(volumes)["note"]
    assert "around the shut cartridge" in filling({"front.air": "sealed cartridge"})["note"]


def test_an_air_fork_set_by_its_pressure_wants_the_gap_as_found():
    found = filling(AIR)
    assert [leg["wanted"]["text"] for leg in found["legs"]] == ["145", "147"]
    assert "set by its air pressure" in found["note"]
    unread = filling(AIR | {"front.gap_left": None, "front.gap_right": None})
    assert unread["legs"] == []
    assert "Fill it as the maker's manual says" in unread["problem"]


def test_the_step_reads_back():
    step = report(demo(), with_bands=False)["ends"]["front"]["gap_step"]
    said = re.match(
        r"5 mm of gap is (\d+) ml in each leg\. That much less gap gives (\d+) % more force at full travel and "
        r"the same rider sag to the millimetre; the gas then carries (\d+) % of that force, now (\d+) %\.",
        step["words"],
    )
    assert [int(one) for one in said.groups()] == [round(step[key]["value"]) for key in ("oil", "force", "gas_after", "gas_before")]
    assert abs(step["rider_sag"]["value"]) < 0.5
    assert step["oil"]["value"] == pytest.approx(5 * 20 / 12)
    assert load(demo()).fields["front.filling_gap_left"].field.end == "neither"
