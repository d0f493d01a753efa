"""Where an end settles."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.sag import settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from tests.core.test_end import fork, shock

preloads = st.floats(0, 12)


@given(front=st.booleans(), preload=preloads, load=st.floats(200, 1100))
def test_springs_and_slow_gas_carry_the_load_at_sag(front, preload, load):
    end = fork().end(Setup(4.4, preload, 120.0)) if front else shock().end(Setup(48.0, preload, 0.0))
    sag = settle(end, load)
    if sag.topped_out:
        assert float(end.wheel_force(0.0, ISOTHERMAL)) >= load
        assert sag.travel == 0.0
    else:
        assert float(end.wheel_force(sag.travel, ISOTHERMAL)) == pytest.approx(load, rel=1e-7)
    assert float(sag.stroke) == pytest.approx(float(end.motion.stroke(sag.travel)))


@given(front=st.booleans(), preload=preloads, rate=st.floats(1.0, 1.5), load=st.floats(500, 1000))
def test_sag_falls_as_rate_rises(front, preload, rate, load):
    """At preload >= 0, all else held."""
    base = 4.2 if front else 46.0
    ends = [fork().end(Setup(r, preload, 120.0)) if front else shock().end(Setup(r, preload, 0.0)) for r in (base, base * rate + 0.01)]
    soft, stiff = (float(settle(end, load).travel) for end in ends)
    assert stiff < soft or (stiff == soft == 0.0)


@given(preload=preloads, more=st.floats(0.1, 10))
def test_sag_falls_as_preload_rises(preload, more):
    soft, stiff = (float(settle(fork().end(Setup(4.4, p, 120.0)), 790.0).travel) for p in (preload, preload + more))
    assert stiff < soft


def test_sag_of_a_bare_spring_by_hand():
    """No gas to speak of: (load cos r / two rates - preload) along the leg."""
    upright = fork(rake=0.0, bleed=1e-9, ambient=1e-9).end(Setup(5.0, 10.0, 120.0))
    sag = settle(upright, 600.0)
    assert float(sag.travel) == pytest.approx(600.0 / 10.0 - 10.0, abs=1e-3)
    assert float(sag.friction) == pytest.approx(2 * 30.0 / 10.0, abs=1e-3)


def test_friction_is_a_band_of_force_over_wheel_rate():
    end = shock().end(Setup(48.0, 9.0, 0.0))
    sag = settle(end, 990.0)
    assert float(sag.friction) == pytest.approx(35.0 / float(end.wheel_rate(sag.travel, ISOTHERMAL)))


def test_a_topped_out_end_has_a_bound_and_no_sag():
    end = shock().end(Setup(90.0, 20.0, 0.0))
    sag = settle(end, 200.0)
    assert sag.topped_out
    assert sag.travel == 0.0
    assert np.isfinite(sag.friction)


def test_no_equilibrium_before_full_travel_says_how_much_is_missing():
    end = fork().end(Setup(0.5, 0.0, 250.0))
    carried = float(end.wheel_force(end.travel, ISOTHERMAL))
    with pytest.raises(Impossible, match=rf"9000 N .*before full travel: .*{carried:.0f} N there") as caught:
        settle(end, np.array([500.0, 9000.0]))
    assert caught.value.code == "no-equilibrium"
    assert "stiffer springs, add preload" in caught.value.way_out


def test_scalar_and_array_agree():
    end, loads = fork().end(Setup(4.4, 5.0, 120.0)), np.array([40.0, 380.0, 790.0, 900.0])
    together = settle(end, loads)
    alone = [settle(end, load) for load in loads]
    assert together.travel == pytest.approx([float(s.travel) for s in alone], abs=1e-7)
    assert together.topped_out.tolist() == [bool(s.topped_out) for s in alone] == [True, False, False, False]
    rates = settle(fork().end(Setup(np.array([4.2, 4.6]), np.array([6.0, 3.0]), 120.0)), 790.0)
    assert rates.travel == pytest.approx([float(settle(fork().end(Setup(r, p, 120.0)), 790.0).travel) for r, p in ((4.2, 6.0), (4.6, 3.0))], abs=1e-7)
