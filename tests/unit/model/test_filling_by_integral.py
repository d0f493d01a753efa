"""Oil to the gap wanted: against a volume integrated numerically over the leg's own sizes, and by hand."""

import math

import pytest
from scipy.integrate import quad

from calc.job import load
from calc.model.filling import oil_to_gap
from tests.support.documents import demo


def circle(diameter):
    return math.pi / 4 * diameter**2


def by_hand(areas, read, wanted):
    """The oil between two gaps [mm3], with scipy's quad; `areas` gives what the oil stands in [mm2] at a depth [mm]."""
    total, _ = quad(areas, wanted, read, points=[32.0] if min(read, wanted) < 32.0 < max(read, wanted) else None)
    return total


@pytest.mark.parametrize(("read", "wanted"), [(123, 120), (119, 120), (145, 120), (60, 25), (25, 60), (120, 120)])
def test_oil_poured_in_gives_the_area(read, wanted):
    # 20 ml raised it by 12 mm: below the outer bore of 50.6 mm, which is 32 mm deep
    def area(depth):
        return circle(50.6) if depth < 32.0 else 20e3 / 12

    assert oil_to_gap(load(demo()), "left", 4.6, read, wanted) == pytest.approx(by_hand(area, read, wanted), abs=1e-6)


def test_three_millimetres_are_five_millilitres():
    # By hand: 20 ml / 12 mm = 1.667 ml a millimetre; 3 mm of it are 5.0 ml
    assert oil_to_gap(load(demo()), "right", 4.6, 123, 120) == pytest.approx(5000.0)


def test_from_diameters_the_rod_stands_in_the_oil():
    job = load(demo({"front.area_by": "diameters", "front.wall": "2.4 mm", "front.damper_rod": "12 mm"}))

    def area(depth):
        return (circle(50.6) if depth < 32.0 else circle(48 - 4.8) + circle(50.6) - circle(48)) - circle(12)

    assert oil_to_gap(job, "left", 4.6, 130, 20) == pytest.approx(by_hand(area, 130, 20), rel=1e-9)


def test_read_with_the_spring_in_its_steel_stands_in_the_oil():
    spring_in = {
        "front.gap_read": "in",
        "front.free_length": "470 mm",
        "front.spacer_length": "40 mm",
        "front.spacer_volume": "14 ml",
    }
    job = load(demo(spring_in))
    # 51 ml of steel in the 4.2; a spring of another rate has the steel of the square root of their ratio; common practice, no source
    steel = 51e3 * math.sqrt(4.6 / 4.2) / 470

    def area(depth):
        around = circle(50.6) if depth < 32.0 else 20e3 / 12
        return around - (14e3 / 40 if depth < 40.0 else steel)

    integral, _ = quad(area, 35.0, 112.0, points=[40.0])
    assert oil_to_gap(job, "left", 4.6, 112, 35) == pytest.approx(integral, rel=1e-6)
    assert oil_to_gap(job, "left", 4.6, 112, 105) < oil_to_gap(load(demo()), "left", 4.6, 112, 105)


def test_around_a_shut_cartridge_there_is_less_room():
    more = {"front.air": "sealed cartridge", "front.area_by": "diameters", "front.wall": "2.4 mm", "front.cartridge_body": "30 mm"}
    shut = oil_to_gap(load(demo(more)), "left", 4.6, 110, 100)
    assert shut == pytest.approx(10 * (circle(48 - 4.8) + circle(50.6) - circle(48) - circle(30)), rel=1e-9)


def test_there_and_back_is_nothing():
    job = load(demo())
    assert oil_to_gap(job, "left", 4.6, 131, 117) == pytest.approx(-oil_to_gap(job, "left", 4.6, 117, 131))
