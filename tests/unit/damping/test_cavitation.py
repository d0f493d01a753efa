"""When a damper's oil tears, with the pressures on the absolute and on the gauge scale kept apart."""

import pytest

from calc.damping.cavitation import compression_force, largest_drop, largest_refill
from calc.damping.flow import Sizes

AMBIENT, VAPOUR = 0.101325, 0.01  # MPa, absolute


@pytest.mark.parametrize("behind", [0.0, 0.05, 1.0])
@pytest.mark.parametrize("base", [0.0, 0.8])
def test_at_the_limit_the_space_behind_the_piston_is_at_its_vapour_pressure(behind, base):
    """By its own absolute pressure: reservoir + ambient, up by the base valve, down by the piston."""
    absolute = behind + AMBIENT + base - largest_drop(behind, AMBIENT, base, VAPOUR)
    assert absolute == pytest.approx(VAPOUR, abs=1e-15)


def test_with_nothing_behind_it_there_is_an_atmosphere_less_the_vapour():
    """Gauge 0 is not absolute 0: an open damper at rest holds 0.091 MPa, not nothing; in vacuum it holds nothing."""
    assert largest_drop(0.0, AMBIENT, 0.0, VAPOUR) == pytest.approx(0.091325)
    assert largest_drop(0.0, 0.0, 0.0, VAPOUR) == 0.0
    assert largest_refill(0.2, AMBIENT, VAPOUR) == pytest.approx(largest_drop(0.2, AMBIENT, 0.0, VAPOUR))


def test_higher_up_it_tears_sooner_by_the_air_that_is_missing():
    """ISO 2533: 79495 Pa at 2000 m."""
    lost = largest_drop(0.05, AMBIENT, 0.3, VAPOUR) - largest_drop(0.05, 0.0794952, 0.3, VAPOUR)
    assert lost == pytest.approx(0.101325 - 0.0794952)


def test_the_force_is_the_balance_of_the_piston_less_what_the_gas_does_already():
    """Statics on rod and piston, all pressures gauge: bore x pressure below - ring x pressure above, less P_behind on the rod."""
    sizes, behind, base, piston = Sizes.of(12.0, 28.0), 0.15, 0.6, 0.4
    below = behind + base
    above = below - piston
    whole = below * sizes.piston - above * sizes.ring
    assert compression_force(sizes, base, piston) == pytest.approx(whole - behind * sizes.rod, rel=1e-12)


def test_it_does_not_matter_which_atmosphere_the_scales_begin_at():
    """The same damper told in absolute pressures, the air outside pushing on the rod's end."""
    sizes, behind, base, piston = Sizes.of(16.0, 46.0), 1.0, 0.0, 0.7
    below = behind + AMBIENT + base
    whole = below * sizes.piston - (below - piston) * sizes.ring - AMBIENT * sizes.rod
    assert compression_force(sizes, base, piston) == pytest.approx(whole - behind * sizes.rod, rel=1e-12)
