"""Coil springs against the books, and the laws that hold for every spring."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.impossible import Impossible
from calc.quantities.entry import convert
from calc.springs.helical import (
    LinearSpring,
    active_coils,
    coil_bind_clearance,
    rate_from_wire,
    solid_length,
    steel_from_mass,
    steel_of_other_rate,
    steel_volume,
)

INCH = 25.4  # mm, exact
PSI = 6894.757293168e-6  # MPa, NIST SP 811
LBF = 4.4482216152605  # N, NIST SP 811


def per_coil(force_lbf: float, outside: float, wire: float, modulus_psi: float = 11.2e6) -> float:
    """Deflection of one coil [in]."""
    rate = rate_from_wire(modulus_psi * PSI, wire * INCH, (outside - wire) * INCH, 1.0)
    return force_lbf * LBF / rate / INCH


def test_shigley_example_10_1():
    """Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed., Example 10-1: tolerance 0.3 %."""
    active = active_coils(12.5, "squared")
    rate = rate_from_wire(11.85e6 * PSI, 0.037 * INCH, 0.400 * INCH, active)
    assert active == 10.5
    assert convert(rate, "N/mm", "lbf/in") == pytest.approx(4.13, rel=0.003)
    assert solid_length(0.037 * INCH, 12.5, "squared") / INCH == pytest.approx(0.500, rel=0.003)


def test_machinerys_handbook_worked_example():
    """Machinery's Handbook, 31st ed., p. 318-319: 0.1375 in per coil, 9.1 active (0.3 %); solid about 1 in (1 %)."""
    each = per_coil(36.0, 13 / 16, 0.0915)
    assert each == pytest.approx(0.1375, rel=0.003)
    active = 1.25 / each
    assert active == pytest.approx(9.1, rel=0.003)
    assert active_coils(active + 2.0, "squared, ground") == pytest.approx(active)
    assert solid_length(0.0915, 11.0, "squared, ground") == pytest.approx(1.0, rel=0.01)


@pytest.mark.parametrize(("force", "wire", "published"), [(87.6, 0.125, 0.1718), (439.0, 0.207, 0.0852)])
def test_machinerys_handbook_table_5(force, wire, published):
    """Machinery's Handbook, 31st ed., Table 5, outside diameter 1 in: tolerance 0.2 %."""
    assert per_coil(force, 1.0, wire) == pytest.approx(published, rel=0.002)


def test_bhandari_example_10_7():
    """Bhandari, Design of Machine Elements, Example 10.7 (worked companion): tolerance 1e-5."""
    assert rate_from_wire(81370.0, 5.0, 40.0, 5.0) == pytest.approx(19.8657, rel=1e-5)


@pytest.mark.parametrize(
    ("ends", "dead", "solid"),
    [("plain", 0, 11), ("plain, ground", 1, 10), ("squared", 2, 11), ("squared, ground", 2, 10)],
)
def test_end_types(ends, dead, solid):
    """Machinery's Handbook, 31st ed., Table 3, for ten coils of 1 mm wire."""
    assert active_coils(10.0, ends) == 10 - dead
    assert solid_length(1.0, 10.0, ends) == solid


def test_a_spring_without_active_coils_is_refused():
    with pytest.raises(Impossible, match=r"2 coils with squared ends leave none active\. Count the coils again"):
        active_coils(2.0, "squared")


def test_a_coil_no_wider_than_its_wire_is_refused():
    with pytest.raises(Impossible, match="no wider than its wire"):
        rate_from_wire(80e3, 5.0, 5.0, 8.0)


def test_steel_of_one_turn_is_a_torus():
    """Pappus: the wire's section times the length of its centre line."""
    assert steel_volume(4.0, 30.0, 1.0) == pytest.approx(np.pi * 2.0**2 * np.pi * 30.0)


def test_steel_from_a_kitchen_scale():
    """Density 7.85 g/cm3, handbook value: 785 g are 100 ml."""
    assert convert(steel_from_mass(0.785), "mm3", "ml") == pytest.approx(100.0)


@given(d=st.floats(3, 6), ratio=st.floats(0.7, 1.4))
def test_steel_follows_the_rate_law_of_thicker_wire(d, ratio):
    """Same coil and count, other wire: k goes with d^4 and steel with d^2."""
    other = d * ratio**0.25
    k, k_other = (rate_from_wire(79.5e3, x, 30.0, 40.0) for x in (d, other))
    expected = steel_volume(other, 30.0, 42.0)
    assert steel_of_other_rate(steel_volume(d, 30.0, 42.0), k, k_other) == pytest.approx(expected, rel=1e-9)


@given(rate=st.floats(1, 200), preload=st.floats(-20, 40), stroke=st.floats(0.1, 300))
def test_force_is_the_slope_of_energy_and_rate_the_slope_of_force(rate, preload, stroke):
    spring, step = LinearSpring(rate, preload), 1e-3
    if abs(preload + stroke) < 2 * step:
        return  # the very point where a loose spring seats has no slope
    energy = spring.energy(stroke + step) - spring.energy(stroke - step)
    force = spring.force(stroke + step) - spring.force(stroke - step)
    assert energy / (2 * step) == pytest.approx(spring.force(stroke), rel=1e-6, abs=1e-6)
    assert force / (2 * step) == pytest.approx(spring.rate_at(stroke), rel=1e-6, abs=1e-6)
    assert spring.energy(0.0) == 0.0


def test_a_loose_spring_gives_nothing_until_it_seats():
    spring = LinearSpring(5.0, -10.0)
    assert spring.force(np.array([0.0, 9.0, 10.0, 12.0])).tolist() == [0.0, 0.0, 0.0, 10.0]
    assert float(spring.energy(9.0)) == 0.0
    assert float(spring.energy(12.0)) == pytest.approx(10.0)


def test_coil_bind_clearance_is_what_is_left():
    assert coil_bind_clearance(470.0, 165.0, 305.0) == 0.0
    assert coil_bind_clearance(470.0, 160.0, 308.0) == 2.0
