"""Continuity of the oil in a damper, and what the trade says of small rods."""

import pytest

from calc.damping.flow import Sizes, base_flow, orifice_drop, piston_flow
from calc.impossible import Impossible


@pytest.mark.parametrize(("rod", "piston"), [(8.0, 28.0), (12.0, 28.0), (16.0, 46.0)])
def test_what_goes_through_both_is_what_the_whole_piston_moves(rod, piston):
    """Continuity: the compression side loses the piston's bore times the stroke; that leaves by base valve and piston together."""
    sizes, speed = Sizes.of(rod, piston), 1234.0
    bore = 3.141592653589793 / 4.0 * piston**2 * speed
    assert base_flow(sizes, speed) + piston_flow(sizes, speed) == pytest.approx(bore, rel=1e-12)


def test_a_thin_rod_sends_less_than_half_of_the_oil_through_the_base_valve():
    """Common practice, no source: an 8 mm rod sends (8/12)^2 = 44 % of the oil of a 12 mm one through the base valve, and its base
    valve acts on 8 % of the area of a 28-29 mm piston."""
    thin, usual = Sizes.of(8.0, 28.5), Sizes.of(12.0, 28.5)
    assert base_flow(thin, 500.0) / base_flow(usual, 500.0) == pytest.approx(0.44, abs=0.005)
    assert thin.share == pytest.approx(0.08, abs=0.005)


@pytest.mark.parametrize(("rod", "piston"), [(0.0, 28.0), (28.0, 28.0), (30.0, 28.0)])
def test_a_rod_that_leaves_no_ring_is_refused(rod, piston):
    with pytest.raises(Impossible, match="must be thinner than its piston of 28"):
        Sizes.of(rod, piston)


def test_the_openings_of_a_sharp_edge_by_hand():
    """M. G. Rabie, Fluid Power Engineering, 2009, p. 27: contraction 0.611. In SI: 0.5 l/s through 50 mm2 of oil of 870 kg/m3."""
    jet = 0.5e-3 / (0.611 * 50e-6)
    assert orifice_drop(0.5e6, 50.0, 870.0) == pytest.approx(0.5 * 870.0 * jet**2 * 1e-6, rel=2e-4)
    assert orifice_drop(1e6, 50.0, 870.0) == pytest.approx(4.0 * orifice_drop(0.5e6, 50.0, 870.0))
