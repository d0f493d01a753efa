"""Readings that cannot go together are named at once, and nothing is refused for them. Limits: common practice, no source."""

import pytest

from calc.demo import jobs
from calc.job import load
from calc.job.starter import start
from calc.model.contradictions import contradictions
from calc.practice import USES
from tests.support.documents import changed, demo
from tests.support.plain import report

ALONE = {"bike.front_axle": "54.5 kg", "bike.rear_axle": "59.3 kg"}  # the demo's: 113.8 kg


def told(changes, document=None):
    return contradictions(load(changed(document or demo(), changes)))


@pytest.mark.parametrize("name", sorted(jobs()))
def test_the_demos_agree_with_themselves(name):
    assert contradictions(load(jobs()[name])) == []


@pytest.mark.parametrize("use", sorted(USES))
@pytest.mark.parametrize("rider", ["48 kg", "60 kg", "75 kg", "95 kg", "110 kg", "125 kg"])
def test_ordinary_riders_are_not_doubted(use, rider):
    expected = 1 if use == "youth" and rider in ("95 kg", "110 kg", "125 kg") else 0  # a grown man on a child's bike
    assert len(contradictions(load(start(use, rider)))) <= expected


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"bike.mass": "135 kg"}, "bike.mass", ["113.8 kg", "135.0 kg"]),
        ({"rider.mass": "95 kg"}, "rider.mass", ["217.8 kg", "9.0 kg more", "208.8 kg"]),
        ({"rider.mass": "112 kg"}, "rider.mass", ["8.0 kg less"]),
        ({"front.target_sag": "180 mm"}, "front.target_sag", ["60 %", "18-26 %"]),
        ({"rear.target_sag": "40 mm"}, "rear.target_sag", ["13 %", "32-37 %"]),
        ({"rear.target_free_sag": "110 mm"}, "rear.target_free_sag", ["110 mm", "not below"]),
        ({"rear.leverage": "1.5"}, "rear.leverage", ["shock stroke", "which no shock has"]),
        ({"front.gap_left": "130 mm", "front.gap_right": "138 mm"}, "front.gap_right", ["8 mm", "130 left, 138 right"]),
        ({"rider.mass": "85 lb", "rider.front_axle": None, "rider.rear_axle": None}, "rider.mass", ["85 lb (38.6 kg)", "Did you mean 85 kg?"]),
        ({"front.seal_diameter": "22 mm"}, "front.seal_diameter", ["22 mm", "Check the reading and its unit."]),
        ({"rear.rate": "300", "standard.shock_rate": "48"}, "rear.rate", ["300 N/mm", "Did you mean 300 lb/in?"]),
        ({"front.unsprung": "36"}, "front.unsprung", ["Did you mean 36 lb?"]),
        ({"front.springs_in": "one", "front.buy": "series-pairs"}, "front.buy", ["a spring in each leg"]),
        ({"front.alone_sag": "29", "front.alone_again_sag": "35"}, "front.alone_again_sag", ["free sag", "6 mm more lifted", "swapped?"]),
        ({"rear.sags_read": "lengths", "rear.hanging_length": "625", "rear.aboard_length": "530", "rear.aboard_again_length": "519"},
         "rear.aboard_again_length", ["Rear", "rider sag", "11 mm more lifted"]),
    ],
)  # fmt: skip
def test_each_is_named_with_its_numbers(changes, path, words):
    (found,) = [words for where, words in told(changes) if where == path]
    assert all(part in found for part in words), found


@pytest.mark.parametrize(
    "changes",
    [
        {"bike.mass": "115 kg"},
        {"bike.mass": {"value": "120 kg", "plus_minus_95": "8 kg", "origin": "stated"}},
        {"rider.mass": "102 kg"},
        {"front.gap_left": "130 mm", "front.gap_right": "135 mm"},
        {"rear.shocks": "2", "rear.travel": "110 mm", "rear.target_sag": None, "rear.target_free_sag": None, "rear.leverage": "1.15", "rear.rate": "24 N/mm", "rear.charge": "4 bar", "rear.rod_diameter": "10 mm", "standard.shock_rate": "22 N/mm"},
        {"front.springs_in": "one", "front.rate": "9 N/mm", "standard.fork_rate": "8.8 N/mm"},
        {"front.alone_sag": "35", "front.alone_again_sag": "29", "front.aboard_sag": "68", "front.aboard_again_sag": "71"},
        {"rear.sags_read": "lengths", "rear.hanging_length": "625", "rear.aboard_length": "519", "rear.aboard_again_length": "530"},
    ],
)  # fmt: skip
def test_what_a_careful_bench_may_read_is_not_doubted(changes):
    assert told(changes) == []


def test_measured_motion_is_held_against_the_leverage_that_was_entered():
    """Pairs every 50 mm at a plain 2.5: 20 mm of shock for each."""
    pairs = "; ".join(f"{height} {480 - height / 2.5:.1f}" for height in range(0, 351, 50))
    changes = {"rear.motion_from": "pairs", "rear.pairs": pairs, "rear.leverage": "2.9"}
    assert (
        "rear.leverage",
        "The linkage as measured gives a leverage of 2.50; 2.90 is entered. The measured one is used.",
    ) in told(changes)
    assert told(changes | {"rear.leverage": "2.52"}) == []


def test_it_is_said_in_the_report_and_nothing_is_refused_for_it():
    """The axles' own weights are what is sized by; that these may be the wrong ones is said with the answer."""
    changes = {"bike.mass": "135 kg"}
    answered, plain = (report(demo(change), with_bands=False) for change in (changes, {}))
    assert [note for note in answered["notes"] if "135.0 kg" in note]
    for end in answered["ends"].values():
        assert end.pop("doubt")
        end["answer"] = end["answer"].split(" Don't")[0]
    for end in plain["ends"].values():
        assert not end.pop("doubt")
    assert answered["ends"] == plain["ends"]


def test_half_a_job_is_not_doubted():
    assert contradictions(load({"format": "stanchion-job", "version": 1})) == []
    assert told({"rider.mass": "heavy", "bike.mass": "x", "front.travel": "nan", "rear.travel": "-1", "rear.leverage": "2"}) == []
