"""The end target that a ride asks for: entered as told, it leads to the gap that was told; and visits stand side by side.

What a ride is taken to say: common practice, no source.
"""

import re

import pytest

from calc.job import load
from calc.job.visit import next_visit
from calc.report.compare import comparison, comparison_text
from tests.support.documents import changed, demo
from tests.support.plain import report
from tests.whole.test_ride import BUILT, ride_of

BOTTOMS = {"front.felt": "bottoms", "front.mark": "299 mm"}
HARD = {"front.felt": "hard", "front.mark": "200 mm"}
KINDS = {
    "standard": {},
    "multiple": {"front.end_multiple": "10"},
    "force": {"front.end_force": "7.6 kN"},
    "energy": {"front.end_energy": "640 J"},
}


@pytest.mark.parametrize("ridden", [BOTTOMS, HARD], ids=["bottoms", "hard"])
@pytest.mark.parametrize("kind", KINDS)
def test_what_is_asked_for_next_leads_to_the_gap_that_is_told(kind, ridden):
    """The target goes in as told; the spring built gets, by what sizes every fork, the gap of the change. Told to a tenth of the
    load, 10 N, or a joule, which is 1 mm of gap and the rounding of another."""
    change = ride_of(ridden | KINDS[kind] | {"front.end_target": kind})["change"]
    target, measure = change["target"], "multiple" if kind == "standard" else kind
    assert target["path"] == f"front.end_{measure}"
    more = ridden is BOTTOMS
    assert (target["asked"]["value"] > target["ridden"]["value"]) == more
    asked = {
        "front.end_target": measure,
        target["path"]: f"{target['asked']['text']} {'' if measure == 'multiple' else target['asked']['unit']}".strip(),
    }
    stock = {"front.buy": "stock", "front.stock": "4.6"}
    rows = report(demo(asked | stock), with_bands=False)["ends"]["front"]["candidates"]
    (built,) = [row for row in rows if row["rate"]["value"] == 4.6]
    assert built["gap"]["value"] == pytest.approx(change["after"]["value"], abs=2.0)


@pytest.mark.parametrize("drop", [None, "60 cm"])
@pytest.mark.parametrize("ridden", [BOTTOMS, HARD], ids=["bottoms", "hard"])
def test_its_words_are_made_of_its_figures(ridden, drop):
    end = ride_of(ridden | ({"ride.drop": drop} if drop else {}))
    target = end["change"]["target"]
    said = re.findall(r"\d+(?:\.\d+)?", target["words"])
    left = [] if ridden is BOTTOMS else [end["left"]["text"]]
    assert said == [*left, *(["60"] if drop else []), target["asked"]["text"], target["ridden"]["text"]]
    assert target["words"].startswith(
        "All of the travel was used" if ridden is BOTTOMS else f"{left[0]} mm of the travel were left"
    )


def test_a_target_is_that_of_the_place_asked_for_not_of_the_ride():
    here, high = (
        ride_of(BOTTOMS | changes)["change"]["target"] for changes in ({}, {"ride.altitude": "2500 m", "ride.temperature": "60 °C"})
    )
    assert here["asked"]["value"] == high["asked"]["value"]


@pytest.mark.parametrize(
    "changes", [{"front.felt": "well", "front.mark": "285 mm"}, {"front.felt": "harsh"}, {"front.felt": "bottoms"}]
)
def test_no_target_without_a_change_of_the_gap(changes):
    assert ride_of(changes)["change"]["target"] is None


def test_a_visit_stands_beside_the_last():
    first = demo(BUILT | BOTTOMS)
    second = next_visit(first, "2026-09-01")
    second = changed(
        second, {"front.mark": "288 mm", "front.felt": "well", "front.gap_left": "115 mm", "front.gap_right": "115 mm"}
    )
    rows = {row.label: (row.before, row.after) for row in comparison(load(first), load(second)).rides}
    assert rows["Front: stroke not used"] == ("1 mm", "12 mm")
    before, after = rows["Front: after the ride"]
    assert before.startswith("First: add ")
    assert after.startswith("Nothing to change")
    text = comparison_text(load(first), load(second))
    assert "Ridden:" in text
    assert "Front: stroke not used: 1 mm -> 12 mm" in text
    unridden = comparison(load(first), load(next_visit(first, "2026-09-01"))).rides
    assert {row.after for row in unridden} == {""}
