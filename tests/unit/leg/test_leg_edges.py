"""Edges of a leg's gas: areas from diameters, legs that lock and legs that never do side by side, the other convention's ends."""

import math
from dataclasses import replace

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, fork
from tests.support.documents import demo
from tests.unit.end.test_end import open_leg

BY_DIAMETERS = {"front.area_by": "diameters", "front.raised_volume": None, "front.raised_height": None, "front.wall": "1.7 mm"}


def disc(diameter: float) -> float:
    return math.pi / 4 * diameter**2


@pytest.mark.parametrize(("layout", "pieces"), [
    # upside-down: the bore of the outer tube at the top; below it what is between the tubes, and the inner tube's bore
    ("upside-down", ((32.0, disc(50.6)), (0.0, disc(50.6) - disc(48.0) + disc(48.0 - 2 * 1.7)))),
    ("conventional", ((0.0, disc(48.0 - 2 * 1.7)),)),
])  # fmt: skip
def test_free_areas_from_diameters(layout, pieces):
    job = load(demo(BY_DIAMETERS | {"front.layout": layout}))
    found = fork(job, conditions(job)).gas.pieces
    assert [(float(depth), float(area)) for depth, area in found] == [pytest.approx(piece) for piece in pieces]


def left_at_full_travel(leg, gap, rate=4.2):
    """Gas left of a leg in plain arithmetic: above the oil, what the strokes draw out, less what stands in it."""
    above = 2010.9 * np.minimum(gap, 32.0) + 1666.7 * np.maximum(gap - 32.0, 0.0)
    steel = 51e3 * math.sqrt(rate / 4.2)
    return above + disc(48.0) * (leg.collapsed_stroke - leg.stroke) - 28e3 - steel


def test_the_gap_that_locks_of_many_legs_at_once():
    """Some lock, and use up their gas there exactly; some hold gas enough with no gap at all."""
    strokes = np.array([300.0, 308.0, 330.0, 345.0, 360.0])
    leg = open_leg(collapsed_stroke=strokes)
    gap = leg.lock_gap(4.2)
    roomy = left_at_full_travel(leg, 0.0) > 0
    assert list(roomy) == [False, False, False, True, True]
    assert left_at_full_travel(leg, gap)[~roomy] == pytest.approx(0.0, abs=1e-3)
    assert list(gap[roomy]) == [0.0, 0.0]
    assert [float(open_leg(collapsed_stroke=float(s)).lock_gap(4.2)) for s in strokes] == pytest.approx(list(gap), abs=1e-6)


def test_a_gap_has_its_other_reading_where_the_tube_reaches_and_is_refused_where_not():
    leg = open_leg(spacer=14e3, spacer_length=40.0)
    inside = replace(leg, spring_in=True)
    for gap in (90.0, 140.0, 220.0):
        other = float(leg.other_gap(4.2, gap))
        assert other < gap, "with the spring in, the oil stands higher"
        assert float(inside.other_gap(4.2, other)) == pytest.approx(gap, abs=1e-6)
    # the oil over the rim once the spring is in: 65 ml go into 20 mm of gap
    with pytest.raises(Impossible, match="other convention"):
        leg.other_gap(4.2, 20.0)
    # read in, all but 10 mm of the spring is down in the oil: what is left of it raises the oil by 0.7 mm once it is out
    assert float(inside.other_gap(4.2, 499.0)) == pytest.approx(499.0 + 51e3 * (1 - 459.0 / 470.0) / 1666.7, abs=1e-6)
    with pytest.raises(Impossible, match="other convention"):
        inside.other_gap(4.2, 499.9)


def test_so_little_oil_that_no_tube_is_deep_enough_is_refused():
    leg = open_leg()
    at_the_end = 32.0 * 2010.9 + (500.0 - 32.0) * 1666.7
    assert float(leg.gap_of(at_the_end - 1.0, 4.2)) == pytest.approx(500.0, abs=1e-3)
    with pytest.raises(Impossible, match="deeper than 500 mm"):
        leg.gap_of(at_the_end + 1.0, 4.2)


def test_a_spring_and_spacer_read_in_take_their_part_of_the_gap_only():
    """The spacer stands at the top, the spring below it; each takes of the gap what of it reaches down."""
    leg = open_leg(spring_in=True, spacer=14e3, spacer_length=40.0)
    for gap, spacer, spring in ((20.0, 0.5, 0.0), (40.0, 1.0, 0.0), (110.0, 1.0, 70.0 / 470.0)):
        empty = 2010.9 * min(gap, 32.0) + 1666.7 * max(gap - 32.0, 0.0)
        assert float(leg.gas_above(gap, 4.2, True)) == pytest.approx(empty - 14e3 * spacer - 51e3 * spring)
        assert float(leg.gas_above(gap, 4.2, False)) == pytest.approx(empty)
    bare = open_leg(spring_in=True, spacer=14e3, spacer_length=0.0)
    assert float(bare.gas_above(100.0, 4.2, True)) == pytest.approx(2010.9 * 32 + 1666.7 * 68 - 14e3 - 51e3 * 100 / 470)


def test_a_leg_without_a_spring_has_no_steel_in_it():
    leg = open_leg()
    assert leg.steel_of(None) == 0.0
    (bare,), (sprung,) = leg.gases(None, 120.0), leg.gases(4.2, 120.0)
    assert float(bare.volume0 - sprung.volume0) == pytest.approx(51e3, abs=1e-6)
