"""Springs against libraries of the desk: scipy's monotone interpolant, the `uncertainties` library."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator
from uncertainties import ufloat

from calc.job import load
from calc.model import fitted
from calc.model.draws import drawn, half_width
from calc.model.spread import standard_normal
from calc.springs.helical import rate_from_wire
from calc.springs.pair import NestedSprings, StackedSprings
from calc.springs.table import ForceTable
from tests.support.documents import demo

# The law asks whether the coil is wider than its wire; the library is about to drop comparisons of its numbers.
pytestmark = pytest.mark.filterwarnings("ignore:AffineScalarFunc:FutureWarning")

PUBLISHED = 0.02478  # relative standard uncertainty of the spring below, by JCGM 100:2008, 5.1.2, worked out by hand
SPRING = {"shear_modulus": (79300.0, 800.0), "wire": (5.0, 0.02), "mean_diameter": (30.0, 0.1), "active": (8.0, 0.1)}


@given(st.lists(st.tuples(st.floats(2.0, 60.0), st.floats(5.0, 400.0)), min_size=2, max_size=8), st.floats(0.0, 1.0))
def test_the_table_is_scipys_monotone_interpolant(steps, part):
    """scipy's PchipInterpolator, values, slopes and integral."""
    length, force = np.vstack([[0.0, 0.0], np.cumsum(np.array(steps), axis=0)]).T
    table, other = ForceTable(tuple(zip(length, force, strict=True))), PchipInterpolator(length, force)
    x = part * length[-1]
    assert float(table.force(x)) == pytest.approx(float(other(x)), rel=1e-9, abs=1e-9)
    assert float(table.rate_at(min(x, 0.999 * length[-1]))) == pytest.approx(
        float(other(min(x, 0.999 * length[-1]), 1)), rel=1e-7, abs=1e-7
    )
    assert float(table.energy(x)) == pytest.approx(float(other.integrate(0.0, x)), rel=1e-9, abs=1e-7)


@pytest.mark.parametrize("spring", [StackedSprings(6.0, 3.0, 20.0, 4.0), NestedSprings(4.0, 2.0, 50.0, 4.0)])
def test_energy_is_the_integral_of_force(spring):
    area, _ = quad(lambda s: float(spring.force(s)), 0.0, 120.0, points=[26.0, 46.0], epsabs=1e-9)
    assert float(spring.energy(120.0)) == pytest.approx(area, rel=1e-9)


def test_jcgm_spring_by_the_uncertainties_library():
    """d 5 +/- 0.02, D 30 +/- 0.1, G 79.3 +/- 0.8, N 8 +/- 0.1 (standard uncertainties): 0.02478."""
    told = rate_from_wire(*(ufloat(*SPRING[name]) for name in ("shear_modulus", "wire", "mean_diameter", "active")))
    assert told.std_dev / told.nominal_value == pytest.approx(PUBLISHED, abs=5e-6)


def test_jcgm_spring_by_draws():
    """JCGM 101: 2000 Latin-hypercube draws come to the same within 2 %, the law being near linear."""
    drawn_ = {name: value + sigma * standard_normal(name, 2000) for name, (value, sigma) in SPRING.items()}
    rates = np.asarray(rate_from_wire(**drawn_))
    assert np.std(rates) / np.mean(rates) == pytest.approx(PUBLISHED, rel=0.02)


def test_the_drawn_rate_of_a_job_against_the_library():
    """Outside diameter and wire are read; the mean diameter is their difference, which ties it to the wire."""
    wire, outside, coils, modulus = ufloat(4.2, 0.025), ufloat(36.2, 0.05), ufloat(38, 0.05), ufloat(79500, 1000)
    told = rate_from_wire(modulus, wire, outside - wire, coils - 2)
    job = load(demo({"front.rate_from": "wire", "front.wire": "4.2 mm", "front.coil_diameter": "36.2 mm", "front.coils": "38"}))
    assert fitted.rate(job, "front") == pytest.approx(told.nominal_value)
    assert half_width(fitted.rate(drawn(job, 2000), "front")) == pytest.approx(1.96 * told.std_dev, rel=0.03)
