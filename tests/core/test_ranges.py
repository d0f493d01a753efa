"""The user's own ranges: they stand in for the trade's, are saved with the job, and never overrule a reading."""

import pytest

from calc.job import JobError, load
from tests.core.documents import demo
from tests.core.plain import report


def with_ranges(**rows) -> dict:
    return demo({}) | {"practice": {name.replace("_", " "): row for name, row in rows.items()}}


def test_an_own_window_moves_the_choice_and_is_told():
    own = with_ranges(free_sag_front={"low": 5, "high": "9 %", "typical": 7})
    front = report(own, with_bands=False)["ends"]["front"]
    assert front["windows"]["free_sag"] == {"low": 15.0, "high": 27.0, "unit": "mm", "confidence": ""}
    assert front["chosen"]["free_sag"]["value"] <= 27.0
    assert front["chosen"]["rate"]["value"] < 4.6


def test_an_own_range_feeds_what_is_assumed_but_not_what_was_read():
    job = load(with_ranges(cap_in_tube={"low": 0, "high": 4, "typical": 2}, gap={"low": 60, "high": 70, "typical": 65}))
    assert job.fields["front.cap_volume"].number == 20  # entered in the demo
    assert job.number("front.gap_left") == 145.0
    bare = {"format": "stanchion-job", "version": 1, "bike": {"use": "enduro"}, "practice": {"gap": {"low": 60, "high": 70, "typical": 65}}}
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


def test_an_unknown_row_is_refused_with_the_nearest():
    with pytest.raises(JobError, match=r"practice\.free sag frnt is not a key of a job\. Did you mean practice\.free sag front"):
        load(with_ranges(free_sag_frnt={"low": 1, "high": 2, "typical": 1}))


@pytest.mark.parametrize("row", [{"low": 20, "high": 30, "typical": 30}, {"low": 20, "high": 30, "typical": 20}, {"low": 25, "high": 25, "typical": 25}])
def test_a_typical_value_may_stand_at_an_end_of_its_range(row):
    answered = report(with_ranges(free_sag_front=row), with_bands=False)
    assert answered["range_problems"] == []
