"""The user's own ranges: they stand in for the trade's, are saved with the job, and never overrule a reading."""

import pytest

from calc.job import JobError, load
from calc.job.ranges import row_limits
from calc.practice import GENERAL, ROWS
from tests.support.documents import demo
from tests.support.plain import report


def with_ranges(**rows) -> dict:
    return demo({}) | {"practice": {name.replace("_", " "): row for name, row in rows.items()}}


def test_an_own_window_moves_the_choice_and_is_told():
    """The window bars by more than what the free sag may be off by: its own +/-, near enough that of the answer."""
    own = with_ranges(free_sag_front={"low": 5, "high": "9 %", "typical": 7})
    front = report(own)["ends"]["front"]
    assert front["windows"]["free_sag"] == {"low": 15.0, "high": 27.0, "unit": "mm", "confidence": ""}
    free = front["chosen"]["free_sag"]
    assert free["value"] <= 27.0 + 1.3 * free["plus_minus_95"]
    assert front["chosen"]["rate"]["value"] < 4.6
    (judged,) = (one for one in front["chosen"]["criteria"] if one["name"] == "free sag")
    assert judged["words"].endswith("usual 15-27")
    assert judged["state"] != "outside"


def test_an_own_range_feeds_what_is_assumed_but_not_what_was_read():
    job = load(with_ranges(cap_in_tube={"low": 0, "high": 4, "typical": 2}, gap={"low": 60, "high": 70, "typical": 65}))
    assert job.fields["front.cap_volume"].number == 20  # entered in the demo
    assert job.number("front.gap_left") == 145.0
    bare = {
        "format": "stanchion-job",
        "version": 1,
        "bike": {"use": "enduro"},
        "practice": {"gap": {"low": 60, "high": 70, "typical": 65}},
    }
    assumed = load(bare).fields["front.gap_left"]
    assert (assumed.number, assumed.plus_minus, assumed.origin) == (65.0, 5.0, "assumed")


@pytest.mark.parametrize(
    ("row", "message"),
    [
        ({"low": 5, "high": "nan", "typical": 7}, "high: "),
        ({"low": 5, "high": "nan", "typical": 7}, "not a number"),
        ({"low": 9, "high": 5, "typical": 7}, "must rise"),
        ({"low": 5, "typical": 7}, "high is not entered"),
        ({"low": 5, "high": "9 kg", "typical": 7}, "does not fit"),
    ],
)
def test_a_bad_range_is_named_and_the_trades_stands(row, message):
    answered = report(with_ranges(free_sag_front=row), with_bands=False)
    (problem,) = answered["range_problems"]
    assert problem["path"] == "practice.free sag front"
    assert message in problem["message"]
    assert answered["ends"]["front"]["chosen"] == report(demo({}), with_bands=False)["ends"]["front"]["chosen"]


@pytest.mark.parametrize(
    ("row", "numbers", "message"),
    [
        ("fork step", (0, 0.2, 0.2), "low: 0 N/mm is below the limit of 0.05 N/mm"),
        ("rider sag front", (-1e308, 20, 1e308), "low: -1e+308 % is below the limit of 0 %"),
        ("rider sag front", (10, 20, 1e308), "high: 1e+308 % is above the limit of 100 %"),
        ("ride frequency front", (1, 2, 1e9), "high: 1e+09 Hz is above the limit of 4 Hz"),
        ("gap", (0, 100, 120), "low: 0 mm is below the limit of 20 mm"),
    ],
)
def test_an_own_range_has_limits_and_says_which_was_passed(row, numbers, message):
    answered = report(with_ranges(**{row: dict(zip(("low", "typical", "high"), numbers, strict=True))}), with_bands=False)
    (problem,) = answered["range_problems"]
    assert message in problem["message"]
    assert problem["limit"].startswith("From ")


@pytest.mark.parametrize("row", [*ROWS, *GENERAL])
def test_what_the_trade_has_lies_within_the_limits_of_every_row(row):
    low, high, unit = row_limits(row)
    triples = [(GENERAL[row].low, GENERAL[row].high)] if row in GENERAL else [triple[:2] for triple in ROWS[row].by_use if triple]
    assert all(low <= first <= last <= high for first, last in triples), (row, unit)


def test_an_unknown_row_is_refused_with_the_nearest():
    with pytest.raises(JobError, match=r"practice\.free sag frnt is not a key of a job\. Did you mean practice\.free sag front"):
        load(with_ranges(free_sag_frnt={"low": 1, "high": 2, "typical": 1}))


@pytest.mark.parametrize(
    "row", [{"low": 20, "high": 30, "typical": 30}, {"low": 20, "high": 30, "typical": 20}, {"low": 25, "high": 25, "typical": 25}]
)
def test_a_typical_value_may_stand_at_an_end_of_its_range(row):
    answered = report(with_ranges(free_sag_front=row), with_bands=False)
    assert answered["range_problems"] == []
