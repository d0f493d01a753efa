"""Trapped gas against the books, and the laws that hold for every chamber."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.gas.chamber import ISOTHERMAL, Chamber, Process, SteadyCharge, circle, gas_above_oil, open_leg
from calc.impossible import Impossible

KJ = 1e6  # N mm
ATMOSPHERE = 0.101325  # MPa, ISO 2533:1975

volumes = st.floats(200e3, 900e3)
pressures = st.floats(0.06, 1.2)
exponents = st.floats(1.0, 1.4)
parts = st.floats(0.0, 0.9)


@pytest.mark.parametrize(("exponent", "published", "digit"), [(1.5, 17.6, 0.05), (1.0, 20.79, 0.005), (0.0, 30.0, 0.05)])
def test_moran_shapiro_example_2_1(exponent, published, digit):
    """Moran & Shapiro, Fundamentals of Engineering Thermodynamics, Example 2.1: 3 bar, 0.1 to 0.2 m3; outputs from memory."""
    growing = Chamber(volume0=1e8, pressure0=0.3, area=-1e6)
    done_by_gas = -growing.energy(100.0, 0.0, Process(exponent)) / KJ
    assert done_by_gas == pytest.approx(published, abs=digit)


def test_cengel_boles_example_4_3():
    """Cengel & Boles, Thermodynamics, Example 4-3: 100 kPa, 0.4 to 0.1 m3, isothermal; output -55.5 kJ from memory."""
    shrinking = Chamber(volume0=4e8, pressure0=0.1, area=1e6)
    assert -shrinking.energy(300.0, 0.0, ISOTHERMAL) / KJ == pytest.approx(-55.5, abs=0.05)


def test_rod_force_of_a_charge():
    """Gauge pressure x rod area: 14 mm rod, 15 bar gives 230.91 N (computed, Dixon's law)."""
    charge = SteadyCharge(1.5 + ATMOSPHERE, circle(14.0))
    assert charge.force(0.0, ATMOSPHERE, ISOTHERMAL) == pytest.approx(230.91, abs=0.005)
    assert charge.energy(10.0, ATMOSPHERE, ISOTHERMAL) == pytest.approx(2309.1, abs=0.05)
    assert charge.rate_at(7.0, ATMOSPHERE, ISOTHERMAL) == 0.0


@given(volume=volumes, pressure=pressures, part=parts, settled=parts, n=exponents)
def test_force_is_the_slope_of_energy_and_rate_the_slope_of_force(volume, pressure, part, settled, n):
    chamber, full = Chamber(volume, pressure, 1800.0), volume / 1800.0
    stroke, step, process = part * full, 1e-3, Process(n, settled * full)
    energy = chamber.energy(stroke + step, 0.09, process) - chamber.energy(stroke - step, 0.09, process)
    force = chamber.force(stroke + step, 0.09, process) - chamber.force(stroke - step, 0.09, process)
    assert energy / (2 * step) == pytest.approx(chamber.force(stroke, 0.09, process), rel=1e-5, abs=1e-3)
    assert force / (2 * step) == pytest.approx(chamber.rate_at(stroke, 0.09, process), rel=1e-5)
    assert chamber.energy(0.0, 0.09, process) == pytest.approx(0.0, abs=1e-6)


@given(volume=volumes, pressure=pressures, settled=parts, n=exponents)
def test_the_gas_itself_is_kept(volume, pressure, settled, n):
    """P V is the same wherever the gas had time to settle; P V^n along the fast move about that place."""
    chamber = Chamber(volume, pressure, 1800.0)
    here, there = settled * volume / 1800.0, 0.5 * volume / 1800.0
    assert chamber.pressure(here, Process(n, here)) * chamber.volume(here) == pytest.approx(pressure * volume)
    fast = [chamber.pressure(s, Process(n, here)) * chamber.volume(s) ** n for s in (0.0, here, there)]
    assert fast == pytest.approx([fast[0]] * 3)


@given(area=st.floats(1200, 2000), rod=st.floats(0.02, 0.5), n=exponents, stroke=st.floats(0, 300))
def test_swept_areas_add_up(area, rod, n, stroke):
    """A leg cut into two spaces by its rod sweeps the seal area in all; alike in pressure it pushes as one space does."""
    process, whole = Process(n), Chamber(area * 400.0, 0.1, area)
    cut = [Chamber(area * part * 400.0, 0.1, area * part) for part in (rod, 1.0 - rod)]
    assert sum(c.area for c in cut) == pytest.approx(area)
    lost = sum(c.volume(0.0) - c.volume(stroke) for c in cut)
    assert lost == pytest.approx(area * stroke, abs=1e-6)
    assert sum(c.force(stroke, 0.1, process) for c in cut) == pytest.approx(whole.force(stroke, 0.1, process), abs=1e-9)


@given(seal=st.floats(35, 50), collapsed=st.floats(100, 320), gap=st.floats(60, 200), goes_in=st.floats(0, 90e3))
def test_an_open_leg_sweeps_its_seal_area(seal, collapsed, gap, goes_in):
    leg = open_leg(gas_above_oil(gap, ((0.0, 1600.0),)), circle(seal), collapsed, goes_in, ATMOSPHERE)
    assert leg.area == pytest.approx(np.pi / 4 * seal**2)
    assert leg.volume(collapsed) == pytest.approx(gap * 1600.0 - goes_in) if gap * 1600.0 > goes_in else True


@given(volume=volumes, n=exponents, first=parts, second=parts)
def test_force_rises_with_stroke(volume, n, first, second):
    chamber, full = Chamber(volume, 0.1, 1800.0), volume / 1800.0
    low, high = sorted((first * full, second * full))
    forces = chamber.force(np.array([low, high]), 0.1, Process(n, 0.2 * full))
    assert forces[1] >= forces[0]
    if high - low > 1e-6 * full:
        assert forces[1] > forces[0]


def test_fast_is_stiffer_than_slow_beyond_the_settled_stroke_and_softer_before():
    chamber = Chamber(700e3, 0.1, 1800.0)
    slow, fast = (chamber.force(np.array([30.0, 66.0, 250.0]), 0.1, p) for p in (Process(1.0, 66.0), Process(1.4, 66.0)))
    assert fast[0] < slow[0]
    assert fast[1] == pytest.approx(slow[1])
    assert fast[2] > slow[2]


def test_no_gas_left_is_an_error_that_names_the_stroke():
    chamber = Chamber(500e3, 0.1, 2000.0)
    assert chamber.lock_stroke() == 250.0
    assert np.isfinite(chamber.force(249.9, 0.1, Process(1.4)))
    for stroke in (250.0, 300.0, np.array([10.0, 260.0])):
        with pytest.raises(Impossible, match=r"oil-locked at 250 mm.*larger gap"):
            chamber.force(stroke, 0.1, Process(1.4))


def test_a_growing_space_never_locks():
    assert Chamber(10e3, 0.4, -300.0).lock_stroke() == np.inf
    assert Chamber(10e3, 0.4, -300.0).force(10.0, 0.1, ISOTHERMAL) == pytest.approx(-300.0 * (0.4 * 10 / 13 - 0.1))


def test_gas_above_oil_is_the_area_integrated_over_the_gap():
    two_pieces = ((30.0, 2000.0), (0.0, 1600.0))
    for gap, volume in ((0.0, 0.0), (20.0, 40e3), (30.0, 60e3), (130.0, 220e3)):
        assert float(gas_above_oil(gap, two_pieces)) == volume
    three = gas_above_oil(np.array([10.0, 25.0, 100.0]), ((20.0, 100.0), (10.0, 50.0), (0.0, 10.0)))
    assert three.tolist() == [1000.0, 2250.0, 3200.0]


def test_bled_part_way_in_the_leg_starts_below_ambient_and_reaches_it_there():
    """Boyle: the pressure at the stroke it was bled at is the place's own."""
    above = gas_above_oil(120.0, ((0.0, 1667.0),))
    leg = open_leg(above, circle(48.0), 308.0, 60e3, ATMOSPHERE, bled_stroke=80.0)
    assert leg.pressure0 < ATMOSPHERE
    assert leg.pressure(80.0, ISOTHERMAL) == pytest.approx(ATMOSPHERE)
    assert leg.force(80.0, ATMOSPHERE, ISOTHERMAL) == pytest.approx(0.0, abs=1e-9)


def test_bled_so_far_in_that_nothing_is_left_names_the_field():
    with pytest.raises(Impossible) as caught:
        open_leg(10e3, circle(48.0), 100.0, 50e3, ATMOSPHERE, bled_stroke=100.0)
    assert caught.value.field == "place.bled_stroke"


def test_scalar_and_array_agree():
    chamber, strokes = Chamber(700e3, 0.1, 1800.0), np.linspace(0.0, 380.0, 9)
    for name in ("force", "rate_at", "energy"):
        together = getattr(chamber, name)(strokes, 0.095, Process(1.33, 60.0))
        alone = [float(getattr(chamber, name)(s, 0.095, Process(1.33, 60.0))) for s in strokes]
        # Some processors take powers of many at once, and round the last digit otherwise.
        assert together.tolist() == pytest.approx(alone, rel=1e-12, abs=1e-9)
    together = chamber.energy(200.0, 0.1, Process(np.array([1.0, 1.2])))
    assert together.tolist() == pytest.approx([float(chamber.energy(200.0, 0.1, Process(n))) for n in (1.0, 1.2)], rel=1e-12)
