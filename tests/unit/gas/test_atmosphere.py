"""The standard atmosphere."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.gas.atmosphere import pressure_at


@pytest.mark.parametrize(("metres", "published"), [(0, 101325.0), (1000, 89874.6), (2000, 79495.2)])
def test_iso_2533(metres, published):
    """ISO 2533:1975, table by geopotential height: tolerance 1 Pa."""
    assert pressure_at(metres * 1e3) * 1e6 == pytest.approx(published, abs=1.0)


@given(low=st.floats(-2000, 10_000), step=st.floats(1, 1000))
def test_pressure_falls_with_height(low, step):
    assert pressure_at((low + step) * 1e3) < pressure_at(low * 1e3)


@pytest.mark.parametrize("metres", [-2001.0, 11_001.0])
def test_outside_the_troposphere_is_refused_with_limits_and_unit(metres):
    with pytest.raises(ValueError, match=r"between -2000 and 11000 m"):
        pressure_at(metres * 1e3)


def test_scalar_and_array_agree():
    heights = np.array([[0.0, 4e5], [1e6, 2e6]])
    # Some processors take powers of many at once, and round the last digit otherwise.
    assert pressure_at(heights) == pytest.approx(np.array([[pressure_at(h) for h in row] for row in heights]), rel=1e-12)
