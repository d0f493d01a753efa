"""A change of shims in sentences, one a group, against ratios by hand."""

from __future__ import annotations

import pytest

from calc.job import load
from calc.report.damping_shims import shim_change
from tests.support.documents import demo


def told(found: str | None, built: str | None, clamp: str | None = "12"):
    return shim_change(load(demo({"front.shims": found, "front.set_shims": built, "front.shim_clamp": clamp})), "front")


def test_a_group_by_itself_goes_by_count_and_thickness_cubed():
    change = told("3 24 0.15; 2 20 0.1", "2 24 0.2; 2 20 0.1")
    ratio = 2 * 0.2**3 / (3 * 0.15**3)
    assert change.groups == (
        f"24 mm: 3 of 0.15 mm became 2 of 0.2 mm, by themselves {ratio:.2f} times as stiff.",
        "20 mm: 2 of 0.1 mm, as before.",
    )
    assert 1.0 < change.ratio.value < ratio, "what stays holds the change back"


def test_all_of_one_size_is_that_groups_ratio():
    change = told("3 24 0.15", "4 24 0.15")
    assert change.ratio.value == pytest.approx(4.0 / 3.0)
    assert f"are {change.ratio.text} times as stiff" in change.words
    assert "nothing of force" in change.words


def test_groups_that_came_and_went_are_told_without_a_ratio():
    change = told("3 24 0.15; 1 18 0.1", "3 24 0.15; 1 20 0.1")
    assert change.groups[1:] == ("20 mm: 1 of 0.1 mm, new.", "18 mm: 1 of 0.1 mm, taken out.")


def test_the_order_they_are_typed_in_is_none():
    assert told("3 24 0.15; 1 18 0.1", "1 16 0.1; 3 24 0.15") == told("1 18 0.1; 3 24 0.15", "3 24 0.15; 1 16 0.1")


@pytest.mark.parametrize(
    ("found", "built", "clamp", "said"),
    [
        ("3 24 0.15", None, "12", "both as found and as built"),
        ("3 24 0.15", "3 24 0.2", None, "the clamp washer"),
        ("3 24", "3 24 0.2", "12", "is not three numbers"),
        ("3 24 0.15", "3 24 0.2", "30", "does not reach beyond the clamp of 30 mm"),
    ],
)
def test_what_is_missing_is_said(found, built, clamp, said):
    change = told(found, built, clamp)
    assert said in change.problem
    assert (change.ratio, change.groups) == (None, ())


def test_without_shims_there_is_nothing_to_tell():
    assert told(None, None) is None
