"""An oil's line and index against libraries of the desk."""

from itertools import pairwise

import CoolProp.CoolProp as CP
import numpy as np
import pytest
from chemicals.viscosity import VI_Hs, VI_Ls, VI_nus
from chemicals.viscosity import viscosity_index as other_index

from calc.oil.index import viscosity_index
from calc.oil.viscosity import line_through


def measured(fluid: str, kelvin: float) -> float:
    """Kinematic viscosity [mm2/s] by the reference equations that CoolProp holds, fitted to measurements."""
    viscosity, density = (CP.PropsSI(what, "T", kelvin, "P", 101325.0, fluid) for what in ("V", "D"))
    return float(viscosity / density * 1e6)


@pytest.mark.parametrize(("celsius", "within"), [(20.0, 0.01), (60.0, 0.005), (80.0, 0.005), (120.0, 0.006), (0.0, 0.02)])
def test_the_line_through_dodecane(celsius, within):
    """A pure oil, thin enough that the term for thin ones counts: 1.5 mm2/s at 40 C."""
    line = line_through(*(measured("n-Dodecane", 273.15 + at) for at in (40.0, 100.0)))
    kelvin = 273.15 + celsius
    assert float(line.at(kelvin)) == pytest.approx(measured("n-Dodecane", kelvin), rel=within)


@pytest.mark.parametrize(("y", "low", "high"), list(zip(VI_nus, VI_Ls, VI_Hs, strict=True))[:-1])
def test_the_reference_oils_are_those_of_the_standards_table(y, low, high):
    """ASTM D2270, Table 1, as the library chemicals holds it: L has the index 0, H 100. The table's digits and the equations' leave
    0.12 % of the viscosity, which an index of a narrow pair makes 0.4 of."""
    assert float(viscosity_index(low, y)) == pytest.approx(0.0, abs=0.4)
    assert float(viscosity_index(high, y)) == pytest.approx(100.0, abs=0.4)


@pytest.mark.parametrize(
    ("above", "up_to"), [*pairwise((1.99, 3.8, 4.4, 5.0, 6.4, 7.0, 9.0, 12.0, 15.0, 18.0, 22.0, 28.0, 40.0, 55.0, 70.0))]
)
def test_each_equation_goes_through_the_middle_of_its_part_of_the_table(above, up_to):
    """The standard's equations are fitted to its Table 1 range by range, so what is left over is as often above as below: 0.012 % on
    average, where one row may leave ten times that; the few rows of 7 to 7.7 are taken with those up to 9. L and H are read off two oils of an index below 100, a straight line."""
    y, low, high = (np.array(column) for column in zip(*_rows(above, up_to), strict=True))
    thin, thick = 10.0 * y**2, 20.0 * y**2
    one, other = viscosity_index(thin, y), viscosity_index(thick, y)
    slope = (other - one) / (thick - thin)
    for found, table in ((thin - one / slope, low), (thin + (100.0 - one) / slope, high)):
        assert float(np.mean(found / table)) == pytest.approx(1.0, abs=1.2e-4)


def _rows(above: float, up_to: float) -> list[tuple[float, float, float]]:
    return [row for row in zip(VI_nus, VI_Ls, VI_Hs, strict=True) if above < row[0] <= up_to + 1e-9]


@pytest.mark.parametrize("y", [70.2, 72.0, 75.0, 100.0])
def test_indices_above_the_end_of_the_table(y):
    """Beyond 70 mm2/s at 100 C the standard has one equation each for L and H; chemicals holds them to four figures."""
    for u in y * np.array([12.0, 18.0, 22.0, 40.0, 70.0]):
        assert float(viscosity_index(u, y)) == pytest.approx(other_index(u * 1e-6, y * 1e-6), abs=0.01)


def test_indices_of_a_grid_of_oils():
    """Chemicals interpolates in the table. Half a unit, or half a percent far from 100, is what its digits leave."""
    for y in np.linspace(2.0, 30.0, 57):
        for u in y * np.linspace(2.0, 9.0, 15):
            assert float(viscosity_index(u, y)) == pytest.approx(other_index(u * 1e-6, y * 1e-6), abs=0.5, rel=5e-3), (u, y)
