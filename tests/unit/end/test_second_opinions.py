"""Second opinions from well-kept libraries: CoolProp, fluids, ambiance, scipy. Desk only."""

import ambiance
import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize

from calc.array import find_root
from calc.gas.atmosphere import pressure_at
from calc.gas.chamber import Chamber, Process, circle
from calc.leg.sealed import SealedLeg
from calc.quantities.units import DIMENSIONS
from tests.unit.end.test_end import open_leg
from tests.unit.gas.test_gas_warm import ALUMINIUM, Warmth
from tests.unit.model.test_cartridge import ROD

EARTH = 6356766.0  # m, radius that ISO 2533:1975 names for geopotential height


@pytest.mark.parametrize("ratio", [1.5, 2.0, 3.0, 5.0, 7.0])
def test_real_air_pressed_together_without_losing_heat(ratio):
    """CoolProp, fluid "Air", isentropic from 101 325 Pa and 293.15 K: an ideal gas of n = 1.4 agrees within 1 %."""
    density, entropy = (PropsSI(what, "P", 101325.0, "T", 293.15, "Air") for what in ("D", "S"))
    real = PropsSI("P", "D", density * ratio, "S", entropy, "Air")
    chamber = Chamber(volume0=700.0, pressure0=0.101325, area=1.0)
    ours = chamber.pressure(700.0 * (1 - 1 / ratio), Process(1.4)) * 1e6
    assert ours == pytest.approx(real, rel=0.01)


@pytest.mark.parametrize("geometric", [0.0, 400.0, 1000.0, 2000.0, 4500.0, 9000.0])
def test_standard_atmosphere(geometric):
    """fluids and ambiance take geometric height; 1 Pa."""
    geopotential = EARTH * geometric / (EARTH + geometric) * 1e3
    ours = pressure_at(geopotential) * 1e6
    assert ours == pytest.approx(ATMOSPHERE_1976(geometric).P, abs=1.0)
    assert ours == pytest.approx(float(ambiance.Atmosphere(geometric).pressure[0]), abs=1.0)


@given(volume=st.floats(3e5, 9e5), part=st.floats(0.05, 0.9), settled=st.floats(0, 0.5), n=st.floats(1.0, 1.4))
def test_energy_is_the_integral_of_force(volume, part, settled, n):
    chamber, process = Chamber(volume, 0.11, 1800.0), Process(n, settled * volume / 1800.0)
    stroke = part * volume / 1800.0
    work, error = integrate.quad(lambda s: float(chamber.force(s, 0.095, process)), 0.0, stroke)
    assert chamber.energy(stroke, 0.095, process) == pytest.approx(work, rel=1e-8, abs=10 * error + 1e-6)


@given(a=st.floats(0.1, 5), b=st.floats(-3, 3), level=st.floats(-10, 10))
def test_roots_against_brentq(a, b, level):
    def function(x):
        return a * x**3 + np.exp(0.3 * b * x) * np.sign(b) + x - level

    if function(-8.0) * function(8.0) > 0:
        return
    ours = float(find_root(function, -8.0, 8.0))
    theirs = optimize.brentq(function, -8.0, 8.0, xtol=1e-13)
    assert function(ours) == pytest.approx(function(theirs), abs=1e-6)


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_units_against_the_full_registry_of_pint(dimension):
    """The small registry and pint's own large one agree wherever both know the unit."""
    import pint

    from calc.quantities.entry import convert

    large = pint.UnitRegistry()
    spelled = {"kgf/mm": "kgf/mm", "lbf/in": "lbf/in", "°C": "degC", "°F": "degF", "°": "deg", "US fl oz": "US_fluid_ounce",
               "imp fl oz": "UK_fluid_ounce", "st": "stone", "mm3": "mm**3", "N mm": "N*mm", "%": "percent", "1": "", "l": "liter",
               "h": "hour", "G": "standard_gravity"}  # fmt: skip
    details = DIMENSIONS[dimension]
    for unit in details.units:
        theirs = large.Quantity(37.5, spelled.get(unit, unit)).to(spelled.get(details.internal, details.internal)).magnitude
        assert convert(37.5, unit, details.internal) == pytest.approx(theirs, rel=1e-9)


@pytest.mark.parametrize("now", [293.15, 343.15])
def test_a_hot_joined_leg_locks_where_its_whole_gas_is_used_up(now):
    """By a search over gaps, hot and as read: the space that both make together has nothing left at full travel."""
    warmth = Warmth(293.15, 293.15, now, 500e3, ALUMINIUM)
    cold = Chamber(60e3, 0.4, ROD, "cartridge")
    outer = open_leg(others=150e3, inside=ROD, name="outer chamber", warmth=warmth)
    hot = Chamber(cold.volume0 * warmth.factor(), 0.4, ROD, "cartridge")
    leg = SealedLeg(outer, hot, joined=0.0)

    def left(gap: float) -> float:
        (whole,) = leg.gases(4.4, gap)
        return float(whole.volume0) - circle(48.0) * 300.0

    assert float(leg.lock_gap(4.4)) == pytest.approx(optimize.brentq(left, 80.0, 300.0), abs=0.02)
