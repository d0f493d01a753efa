"""The fitted spring from its wire and coil, its weight, or its marking."""

import math

import pytest

from calc import fitted
from calc.impossible import Impossible
from calc.job import load
from calc.steel import GRADES
from tests.core.documents import demo

WIRE = {"front.rate_from": "wire", "front.wire": "4.2 mm", "front.coil_diameter": "36.2 mm", "front.coils": "38", "front.spring_steel": None}


def test_rate_from_wire_and_coil_by_hand():
    """k = G d^4 / (8 D^3 Na), outside diameter less one wire, two dead coils of squared and ground ends, EN 10270-2 steel."""
    job = load(demo(WIRE))
    assert fitted.rate(job, "front") == pytest.approx(79500 * 4.2**4 / (8 * 32.0**3 * 36))
    assert fitted.solid(job, "front") == pytest.approx(38 * 4.2)
    assert fitted.steel(job) == pytest.approx(math.pi * 2.1**2 * math.pi * 32.0 * 38)


@pytest.mark.parametrize(("ends", "active", "solid"), [("plain", 38, 39), ("plain, ground", 37, 38), ("squared", 36, 39)])
def test_ends_of_the_coil(ends, active, solid):
    """Machinery's Handbook, 31st ed., Table 3."""
    job = load(demo(WIRE | {"front.coil_ends": ends}))
    assert fitted.rate(job, "front") == pytest.approx(79500 * 4.2**4 / (8 * 32.0**3 * active))
    assert fitted.solid(job, "front") == pytest.approx(solid * 4.2)


def test_grades_of_steel():
    """EN 10270-1 81.5 GPa (read), EN 10270-2 79.5 GPa (memory); Shigley Table 10-5: chrome-silicon 77.2, music wire 80.0-82.7 GPa."""
    assert GRADES["patented"].shear_modulus == 81500
    assert GRADES["oil-tempered"].shear_modulus == 79500
    assert GRADES["chrome-silicon"].shear_modulus == 77200
    music = GRADES["music"]
    assert (music.shear_modulus - music.plus_minus_95, music.shear_modulus + music.plus_minus_95) == (80000, 82700)
    rates = [fitted.rate(load(demo(WIRE | {"front.grade": grade})), "front") / GRADES[grade].shear_modulus for grade in GRADES]
    assert rates == pytest.approx([rates[0]] * len(rates))


def test_a_kitchen_scale_goes_before_a_volume():
    job = load(demo({"front.spring_mass": "0.4 kg"}))
    assert fitted.steel(job) == pytest.approx(0.4 / 7.85e-6)
    assert fitted.steel(load(demo())) == pytest.approx(51e3)


def test_a_marking_is_taken_as_it_is():
    job = load(demo({"front.wire": "4.2 mm"}))
    assert fitted.rate(job, "front") == 4.2
    assert fitted.solid(job, "front") is None
    assert fitted.solid(load(demo({"front.solid_length": "155 mm"})), "front") == 155.0


@pytest.mark.parametrize("part", ["wire", "coil_diameter", "coils"])
def test_a_dimension_that_is_missing_is_named(part):
    with pytest.raises(Impossible, match="is not entered") as caught:
        fitted.rate(load(demo(WIRE | {f"front.{part}": None})), "front")
    assert caught.value.field == f"front.{part}"
