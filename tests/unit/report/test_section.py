"""The drawn leg against the laws: volumes by slicing the drawing, the demo by hand, forces as the curve has them.

The hand calculation is geometry (circles and cylinders) and Boyle's law; the demo's readings stand in calc/demo/enduro.py.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from calc.demo import jobs
from calc.job import load
from calc.report.spaces import oil_level
from calc.report.tubes import Solid, Tubes
from tests.support.documents import demo
from tests.support.plain import part, text
from tests.support.sections import KINDS, UNCORRECTED, changed_demo, front, section, stated

SLICE = 0.02  # mm
ML = 1000.0  # mm3


def drawn_gas(leg: dict[str, Any], index: int, stroke: float, solid_over: float, depth: float) -> float:
    """Gas [ml] from the rim to the level by slicing the drawing: bores less what stands in them (`solid_over` [mm3] is told apart).

    A damper rod stands in the way from `depth` [mm] on, the depth of the outer bore alone that the gap's reading has without it.
    """
    level = leg["spaces"][0]["bottom"][index]
    parts = {part["name"]: part for part in leg["parts"]}
    inner, outer = parts["inner tube"], parts["outer tube"]
    at = (np.arange(round(level / SLICE)) + 0.5) * (level / round(level / SLICE))
    edge = inner["top"] - stroke if inner["moves"] else 0.0
    around = circle(outer["inside"]) - circle(inner["outside"]) if inner["moves"] else 0.0
    area = np.where(at < edge, circle(outer["inside"]), circle(inner["inside"]) + around)
    body = parts.get("cartridge")
    if body and not body["moves"]:
        area = area - np.where((at > body["top"]), circle(body["outside"]), 0.0)
    elif "rod" in parts and not parts["rod"]["moves"]:
        foot = parts["cartridge"]["top"] - stroke
        area = area - np.where((at > depth) & (at < foot), circle(parts["rod"]["outside"]), 0.0)
    return float((np.sum(area) * level / len(at) - solid_over) / ML)


def circle(diameter: float) -> float:
    return math.pi / 4.0 * diameter**2


def share_over(top: float, bottom: float, level: float) -> float:
    return min(max((level - top) / (bottom - top), 0.0), 1.0)


@pytest.mark.parametrize(
    ("document", "steel", "plug"),
    [
        (demo(), 51e3 * math.sqrt(4.6 / 4.2), 28e3),
        (jobs()["trail"], None, 28e3),
        (UNCORRECTED, None, None),
    ],
    ids=["demo", "opened cartridge", "conventional"],
)
def test_what_is_drawn_over_the_oil_is_the_law_s_gas(document, steel, plug):
    data = front(document)
    fields, leg = load(document), data["section"]["legs"][0]
    if steel is None:
        steel = fields.number("front.spring_steel") * math.sqrt(data["chosen"]["rate"]["value"] / fields.number("front.rate"))
    plug = plug or fields.number("front.cap_volume") + fields.number("front.washers_volume")
    spring, space = leg["springs"][0], leg["spaces"][0]
    for i in (0, 7, 30, 45, 60):
        stroke, level = data["section"]["stroke"][i], space["bottom"][i]
        solid = plug + steel * share_over(spring["top"][i], spring["bottom"][i], level)
        depth = 0.0 if fields.choice("front.area_by") == "diameters" else fields.number("front.outer_depth")
        assert drawn_gas(leg, i, stroke, solid, depth) == pytest.approx(space["volume"][i], abs=0.1)


def test_demo_leg_by_hand():
    """Seal 48, gap 120, collapsed stroke 308, outer bore 50.6 for 32 mm, 20 ml raised it 12 mm; 4.6 N/mm, 3 mm preload."""
    data = front(demo())
    found, setup = data["section"], data["chosen"]
    assert (setup["gap"]["value"], setup["preload"]["value"]) == (120.0, 3.0)
    outer, deep, seal = circle(50.6), 20e3 / 12.0, circle(48.0)
    steel, small = 51e3 * math.sqrt(setup["rate"]["value"] / 4.2), 28e3
    gas = outer * 32.0 + deep * 88.0 + seal * 308.0 - steel - small
    leg = found["legs"][0]
    space, spring, rod = leg["spaces"][0], leg["springs"][0], next(p for p in leg["parts"] if p["name"] == "rod")
    for i in (0, 20, 30, 60):
        s = found["stroke"][i]
        assert space["volume"][i] == pytest.approx((gas - seal * s) / ML, abs=0.001)
        assert spring["bottom"][i] - spring["top"][i] == pytest.approx(470.0 - 3.0 - s, abs=0.01)
        # Down to the level: room less spring, cap with washers, and the damper rod.
        level, edge = space["bottom"][i], 340.0 - s
        room = outer * min(level, edge) + deep * max(level - edge, 0.0)
        # The oil that was poured in met the rod under the inner tube's edge; over it, from 32 mm on, the rod takes room of its own.
        over = circle(rod["outside"]) * max(min(level, edge) - 32.0, 0.0)
        stands = small + steel * share_over(spring["top"][i], spring["bottom"][i], level) + over
        assert (room - stands) / ML == pytest.approx(space["volume"][i], abs=0.02)
    # About rider sag, by Boyle's law to there and the polytropic law from there.
    sag, ambient = setup["rider_sag"]["value"], 0.1013250 * (1 - 0.0065 * 400 / 288.15) ** 5.2559
    there = gas - seal * sag
    now = ambient * gas / there * (there / (gas - seal * 150.0)) ** 1.33 - ambient
    assert space["pressure"][30] == pytest.approx(10.0 * now, abs=0.003)


@pytest.mark.parametrize("name", KINDS)
def test_oil_is_kept_and_nothing_stands_where_it_cannot(name):
    found = section(KINDS[name])
    for leg in found["legs"]:
        parts = {part["name"]: part for part in leg["parts"]}
        foot = parts["axle lug"]["top"]
        for space in leg["spaces"]:
            top, bottom = np.array(space["top"]), np.array(space["bottom"])
            assert np.all(bottom >= top - 1e-6), space["name"]
            assert np.all(bottom <= foot - np.array(found["stroke"]) + 1e-6), space["name"]
            if space["volume"] is not None:
                assert np.all(np.array(space["volume"]) >= 0)
        assert np.all(np.diff(leg["spaces"][0]["bottom"]) < 0), "the oil rises as the leg goes in"
        for spring in leg["springs"]:
            length = np.array(spring["bottom"]) - np.array(spring["top"])
            assert np.all(length > 0)
            assert np.all(np.array(spring["bottom"]) <= foot - np.array(found["stroke"]) + 1e-6)
            assert np.all(np.array(spring["top"]) >= parts["cap"]["bottom"] - 1e-6)
        inner, outer = parts["inner tube"], parts["outer tube"]
        assert inner["outside"] <= outer["inside"]
        assert inner["inside"] < inner["outside"]


@pytest.mark.parametrize("name", KINDS)
def test_forces_of_the_legs_are_the_curve_s(name):
    data = front(KINDS[name])
    found, curve = data["section"], data["curve"]
    rake = load(KINDS[name]).number("bike.rake")
    each = 2.0 if len(found["legs"]) == 1 else 1.0
    along = each * sum(np.array(leg["spring_force"]) + np.array(leg["gas_force"]) for leg in found["legs"])
    assert found["stroke"] == pytest.approx(curve["stroke"], abs=0.011)
    assert along / math.cos(rake) / 1000.0 == pytest.approx(np.array(curve["working"]), abs=4e-5)


def test_pressure_times_swept_area_is_the_gas_force():
    for name, area in (
        ("open, upside-down", circle(48.0)),
        ("opened cartridge", circle(48.0)),
        ("sealed, spring-loaded piston", None),
    ):
        leg = section(KINDS[name])["legs"][0]
        pressures = [np.array(space["pressure"]) / 10.0 for space in leg["spaces"]]
        if area is not None:
            assert pressures[0] * area == pytest.approx(np.array(leg["gas_force"]), abs=0.05)
        else:  # the cartridge presses on its rod, the leg's air on the rest of the seal area
            rod = circle(12.0)
            assert pressures[0] * (circle(48.0) - rod) + pressures[1] * rod == pytest.approx(np.array(leg["gas_force"]), abs=0.2)


def test_a_leak_has_one_pressure_and_keeps_its_gas():
    leg = section(KINDS["sealed, leaking all along"])["legs"][0]
    around, within = leg["spaces"]
    assert around["pressure"] == within["pressure"]
    whole = np.array(around["volume"]) + np.array(within["volume"])
    swept = np.diff(whole) / np.diff(section(KINDS["sealed, leaking all along"])["stroke"])
    assert swept == pytest.approx(-circle(48.0) / ML, abs=5e-3)


def test_air_spring_chambers_by_hand():
    """Piston 34, rod 14, main chamber 400 ml, balance chamber 20 ml, both at full extension: lengths times areas are the volumes."""
    sizes = {"air_piston": "34 mm", "balance_rod": "14 mm", "air_volume": "400 ml", "balance_volume": "20 ml"}
    found = section(changed_demo(air="air leg", air_in="both", **sizes))
    hangs = 300.0 - found["travel"]
    leg, stroke = found["legs"][0], np.array(found["stroke"]) + hangs
    main, balance = leg["spaces"][1:]
    assert np.array(main["volume"]) == pytest.approx(400.0 - circle(34.0) * stroke / ML, abs=0.002)
    assert np.array(balance["volume"]) == pytest.approx(20.0 + (circle(34.0) - circle(14.0)) * stroke / ML, abs=0.002)
    assert (np.array(main["bottom"]) - np.array(main["top"])) * circle(34.0) / ML == pytest.approx(
        np.array(main["volume"]), abs=0.002
    )
    piston = next(part for part in leg["parts"] if part["name"] == "air piston")
    assert np.array(main["bottom"]) == pytest.approx(piston["top"] + hangs - stroke, abs=0.001)


def test_second_volume_gives_way_at_its_charge():
    leg = section(KINDS["air with a second volume and a coil"])["legs"][0]
    second, main = leg["spaces"][1], leg["spaces"][2]
    pressure, left = np.array(main["pressure"]), np.array(second["volume"])
    full = left >= left[0] - 1e-6
    assert full[0], "shut at first"
    assert not full[-1], "open at the end"
    assert np.array(second["pressure"])[~full] == pytest.approx(pressure[~full], abs=1e-3)
    assert np.all(np.array(second["pressure"])[full] >= pressure[full] - 1e-6)
    n = 1.33
    absolute = (np.array(second["pressure"]) + 0.966)[~full]
    assert absolute * left[~full] ** n == pytest.approx(absolute[0] * left[~full][0] ** n, rel=1e-3)


def test_coils_that_are_not_read_have_the_rate_and_the_steel():
    """k = G d^4 / (8 D^3 N), Shigley 10th ed., eq. 10-9; steel of N turns of a torus. Plain ends: every coil works."""
    data = front(demo())
    spring = data["section"]["legs"][0]["springs"][0]
    d, mean, n = spring["wire"], spring["mean"], spring["coils"]
    assert 79500.0 * d**4 / (8.0 * mean**3 * n) == pytest.approx(data["chosen"]["rate"]["value"], rel=1e-3)
    assert math.pi**2 / 4.0 * d**2 * mean * n == pytest.approx(51e3 * math.sqrt(4.6 / 4.2), rel=1e-3)
    assert {"wire", "coils", "width", "length"} == set(spring["assumed"])


def test_coils_that_are_read_are_drawn_as_read():
    data = front(KINDS["wire and coil"])
    spring = data["section"]["legs"][0]["springs"][0]
    assert (spring["mean"], spring["coils"]) == (38.0 - 4.6, 30.0)
    ratio = data["chosen"]["rate"]["value"] / data["as_found"]["setup"]["rate"]["value"]
    assert spring["wire"] == pytest.approx(4.6 * ratio**0.25)
    assert "length" not in spring["assumed"]


def words(data: dict[str, Any], kind: str) -> list[dict[str, Any]]:
    return [event for event in data["section"]["events"] if event["kind"] == kind]


def test_stops_are_told_where_the_model_has_them():
    """Free 470, solid 180, preload 6: the coils touch at 284. The gap for the lock by hand: V0 - a s = 0."""
    changes = {"front.tried_preload": stated("6 mm"), "front.tried_gap": stated("120 mm"), "front.solid_length": stated("180 mm")}
    changes |= {"front.rubber": stated("rate"), "front.rubber_length": stated("40 mm"), "front.rubber_rate": stated("60 N/mm")}
    tried = front(demo(changes))["tried"]
    (bind,) = words(tried, "coil bind")
    assert (bind["stroke"], bind["bad"]) == (pytest.approx(284.0), True)
    assert bind["words"] == "The coils touch at 284 mm, before full travel."
    (rubber,) = words(tried, "rubber")
    assert rubber["stroke"] == 260.0
    (lock,) = words(tried, "oil lock")
    assert lock["stroke"] == pytest.approx(tried["section"]["legs"][0]["spaces"][0]["volume"][0] * ML / circle(48.0), abs=0.01)
    assert not lock["bad"]


def test_a_try_that_locks_is_drawn_up_to_there():
    tried = front(demo({"front.tried_gap": stated("20 mm")}))["tried"]
    assert tried["setup"] is None
    (lock,) = words(tried, "oil lock")
    assert lock["bad"]
    assert lock["words"] == f"Oil-locked at {lock['stroke']:.0f} mm: no gas is left there."
    assert tried["problem"]["message"].split(":")[0].endswith(f"oil-locked at {lock['stroke']:.0f} mm")
    assert tried["section"]["stroke"][-1] == pytest.approx(lock["stroke"] - 1.0, abs=0.01)
    assert tried["section"]["process"] == "settled"


def test_the_rear_has_no_section_and_every_kind_has_one():
    assert part(demo(), "rear", False)["end"]["section"] is None
    for document in KINDS.values():
        assert section(document)["stroke"][0] == 0.0


def test_level_where_a_solid_fills_the_bore():
    level = oil_level(np.array([5e3]), np.zeros(1), Tubes(1000.0, 1000.0, 0.0, 35.0), (Solid(10e3, 0.0, 10.0),))
    assert level == pytest.approx([15.0])


def test_the_command_line_tells_the_same():
    leg = section(demo())["legs"][0]
    told = text(demo(), with_bands=False)
    lines = told[told.index("Each leg, gap 120 mm read collapsed, spring out") :].splitlines()
    last = next(line for line in lines if line.split()[:1] == ["300"])
    space = leg["spaces"][0]
    assert last.split() == ["300", f"{space['bottom'][-1]:.0f}", f"{space['volume'][-1]:.0f}", f"{space['pressure'][-1]:.1f}"]
    assert "Full travel at 300 mm." in told
