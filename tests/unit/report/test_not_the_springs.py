"""What sags say that is no spring's doing: what sticks, a collar wound up, what fits only when taken as read."""

from __future__ import annotations

import pytest

from calc.job import load
from calc.report import report_of
from tests.support.documents import demo


def words(axle: str, alone: tuple[str, str], aboard: tuple[str, str]) -> str:
    keys = ("alone_sag", "alone_again_sag", "aboard_sag", "aboard_again_sag")
    entries = {f"{axle}.{key}": f"{mm} mm" for key, mm in zip(keys, (*alone, *aboard), strict=True)}
    (end,) = report_of(load(demo(entries))).sags.ends
    return " ".join(end.words)


@pytest.mark.parametrize(("axle", "look"), [("front", "bent tube (runout over 0.2 mm)"), ("rear", "a linkage that binds")])
def test_where_it_sticks_too_much_to_say_anything_what_to_look_at_is_told(axle, look):
    told = words(axle, ("45", "20"), ("110", "104"))
    assert "something sticks" in told
    assert look in told


def test_topped_out_and_high_with_the_rider_is_the_collar_before_anything_else():
    told = words("rear", ("0", "0"), ("76", "72"))
    assert "Look for preload more than entered, or something that holds it up: measure the collar." in told
    assert "Look for preload" not in words("rear", ("27", "23"), ("107", "103"))


def test_sags_of_which_one_fits_nothing_still_say_what_spring_they_would_be():
    """The step from one to the other is the spring's: what the demo's 48 N/mm would need to be for 105 mm of step, not 79."""
    told = words("rear", ("21", "17"), ("126", "122"))
    assert "is left out" in told
    assert "Both taken as read, gas taken off, the spring is" in told
    assert "not 48. Tired, or not what is marked" in told
