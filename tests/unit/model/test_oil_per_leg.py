"""Oil of legs that are not alike: a spring in one leg only, or air in one. Gas, oil and steel counted by hand, leg by leg.

No outside source: a leg's inside holds oil, steel, the small parts and gas, and nothing else; their sum stays when oil goes in.
"""

import math

import pytest

from calc.end.setup import Setup
from calc.job import load
from calc.model import oil_to_add
from calc.model.draws import drawn, half_width
from calc.sizing.choice import end_inputs
from tests.support.documents import demo
from tests.support.plain import report

AREA = 20000.0 / 12.0  # mm2: 20 ml raised it by 12 mm
FREE, STEEL, FITTED = 470.0, 51000.0, 8.6  # mm, mm3, N/mm
SMALL = 28000.0  # mm3, cap and washers
ONE_LEG = {
    "front.springs_in": "one", "front.rate": "8.6 N/mm", "standard.fork_rate": "8.4 N/mm", "front.layout": "conventional",
    "front.free_length": "470 mm", "front.gap_left": "150 mm", "front.gap_right": "138 mm",
}  # fmt: skip
SPRING_IN = ONE_LEG | {"front.gap_read": "in", "front.gap_left": "122 mm", "standard.gap": "100 mm", "front.gap_min": "60 mm"}


def front_of(changes: dict, bands: bool = False) -> dict:
    front = report(demo(changes), bands)["ends"]["front"]
    assert front["state"] == "ok", front["problems"]
    return front


def steel_of(rate: float) -> float:
    """Steel [mm3] of another rate: the root of the rate ratio, as the field's help says."""
    return STEEL * math.sqrt(rate / FITTED)


def oil_in(gap: float, steel: float, spring_in: bool) -> float:
    """Oil [mm3] in a collapsed leg, less the empty leg's own volume: what lies below the rim is oil, or gas, or steel."""
    if not spring_in:
        return -AREA * gap
    above = AREA * gap - steel / FREE * gap
    return -above - steel


def test_with_the_spring_out_both_legs_take_their_own_difference_of_gap():
    front = front_of(ONE_LEG)
    gap = front["chosen"]["gap"]["value"]
    for side, found in (("left", 150.0), ("right", 138.0)):
        assert front["chosen"]["oil"][side]["value"] * 1000.0 == pytest.approx(AREA * (found - gap), rel=1e-9)


def test_with_the_spring_in_only_its_own_leg_counts_the_steel():
    front = front_of(SPRING_IN)
    chosen = front["chosen"]
    gap, new = chosen["gap"]["value"], steel_of(chosen["rate"]["value"])
    assert new != pytest.approx(STEEL, rel=1e-3)
    sprung = oil_in(gap, new, True) - oil_in(122.0, STEEL, True)
    bare = oil_in(gap, 0.0, True) - oil_in(138.0, 0.0, True)
    assert chosen["oil"]["left"]["value"] * 1000.0 == pytest.approx(sprung, rel=1e-9)
    assert chosen["oil"]["right"]["value"] * 1000.0 == pytest.approx(bare, rel=1e-9)
    assert abs(sprung - (oil_in(gap, 0.0, True) - oil_in(122.0, 0.0, True))) > 500.0  # the steel is no small matter here


def test_the_bare_leg_is_as_sure_as_its_own_readings():
    """Its oil is area x (gap found - gap): u by first order, JCGM 100:2008, 5.1.2. The spring's steel has no part in it."""
    sure, unsure = (
        front_of(
            SPRING_IN | {"front.spring_steel": {"value": "51 ml", "plus_minus_95": f"{half} ml", "origin": "measured"}}, bands=True
        )
        for half in (1, 12)
    )
    oil = [front["chosen"]["oil"] for front in (sure, unsure)]
    assert sure["chosen"]["gap"]["value"] == unsure["chosen"]["gap"]["value"]
    assert sure["sure"]["left_out"] == unsure["sure"]["left_out"] == 0
    assert oil[1]["right"]["plus_minus_95"] == oil[0]["right"]["plus_minus_95"]
    gap = sure["chosen"]["gap"]["value"]
    by_hand = 1.96 * math.hypot(AREA * 1.0, AREA * (138.0 - gap) * 0.2 / 12.0) / 1000.0  # u: gap 1 mm, rise 0.2 of 12 mm
    assert oil[0]["right"]["plus_minus_95"] == pytest.approx(by_hand, rel=0.1)  # 200 draws
    job = drawn(load(demo(SPRING_IN)), 4000)
    many = oil_to_add(job, end_inputs(job, "front").assembly, Setup(sure["chosen"]["rate"]["value"], 4.0, gap))
    assert half_width(many["right"]) / 1000.0 == pytest.approx(by_hand, rel=0.03)


@pytest.mark.parametrize("rate", [8.0, 8.6, 9.4])
def test_gas_oil_and_steel_of_each_leg_add_up(rate):
    """Hanging, at the bleed: left gas + steel = right gas, at one gap read with the spring out."""
    here = end_inputs(load(demo(ONE_LEG)), "front")
    left, right = (here.assembly.end(Setup(rate, 4.0, 120.0)).struts[i][0].gases[0].volume0 for i in (0, 1))
    swept = math.pi / 4.0 * 48.0**2 * 308.0
    assert float(right) == pytest.approx(AREA * 120.0 + swept - SMALL, rel=1e-9)
    assert float(left) == pytest.approx(float(right) - steel_of(rate), rel=1e-9)


@pytest.mark.parametrize(("coil", "steel"), [("none", 0.0), ("yes", STEEL)])
def test_beside_an_air_spring_steel_counts_only_where_a_coil_stands(coil, steel):
    """Air in the left leg, nothing but the damper in the right: read with the spring in, from each gap as found to the new one."""
    changes = ONE_LEG | {"front.air": "air leg", "front.air_coil": coil, "front.gap_read": "in", "front.rate": "8.6 N/mm"}
    front = report(demo(changes), with_bands=False)["ends"]["front"]
    assert front["candidates"]
    for candidate in front["candidates"]:
        gap = candidate["gap"]["value"]
        left = oil_in(gap, steel, True) - oil_in(150.0, steel, True)
        right = oil_in(gap, 0.0, True) - oil_in(138.0, 0.0, True)
        assert candidate["oil"]["left"]["value"] * 1000.0 == pytest.approx(left, rel=1e-9)
        assert candidate["oil"]["right"]["value"] * 1000.0 == pytest.approx(right, rel=1e-9)
