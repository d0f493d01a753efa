"""A leg at another temperature: oil and tube grow, the pressure follows; legs bled elsewhere, ridden hot and high."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.gas.chamber import ISOTHERMAL, Chamber
from calc.gas.warm import OIL_EXPANSION, TUBE_EXPANSION, Warmth, warmed
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, fork
from tests.support.documents import demo
from tests.unit.end.test_end import open_leg

ALUMINIUM = TUBE_EXPANSION["aluminium"]
temperatures = st.floats(250, 380)


def test_oil_grows_as_the_lubricant_tables_say():
    """ASTM D1250, lubricants, rho15 870: 0.98187 at 40 C: within a tenth of Rabie's 7.0e-4/K."""
    by_table = (1 / 0.98187 - 1) / 25.0
    assert pytest.approx(by_table, rel=0.1) == OIL_EXPANSION


def test_by_hand():
    """700 ml of gas over 600 ml of oil in an aluminium tube, 20 to 60 deg C."""
    beta, alpha, rise = 7.0e-4, 23.1e-6, 40.0
    volume = 700.0 - (beta - 3 * alpha) * 600.0 * rise + 3 * alpha * 700.0 * rise
    leg = warmed(Chamber(700e3, 0.1, 1800.0), Warmth(293.15, 293.15, 333.15, 600e3, ALUMINIUM), 0.1)
    assert leg.volume0 == pytest.approx(volume * 1000)
    assert leg.pressure0 == pytest.approx(0.1 * 333.15 / 293.15 * 700.0 / volume)


@given(read=temperatures, closed=temperatures, now=temperatures, stroke=st.floats(0, 150), oil=st.floats(0, 700e3))
def test_the_gas_is_kept_and_the_tube_holds_both(read, closed, now, stroke, oil):
    """P V / T is the same whenever; the tube's own volume, grown by 3 alpha, is the oil's, grown by beta, and the gas's."""
    warmth = Warmth(read, closed, now, oil, ALUMINIUM)
    at_bleed = warmth.volume(700e3, closed) - 1800.0 * stroke
    leg = warmed(Chamber(700e3, 0.1, 1800.0), warmth, 0.095, stroke)
    assert leg.pressure0 * leg.volume0 / now == pytest.approx(0.095 * at_bleed / closed)
    tube = (700e3 + oil) * (1 + 3 * ALUMINIUM * (now - read))
    assert leg.volume0 + oil * (1 + OIL_EXPANSION * (now - read)) == pytest.approx(tube)


@given(temperature=temperatures)
def test_one_temperature_throughout_changes_nothing(temperature):
    cold = open_leg()
    warm = open_leg(warmth=Warmth(temperature, temperature, temperature, 600e3, ALUMINIUM))
    for name in ("volume0", "pressure0"):
        assert getattr(warm.chamber(4.4, 120.0), name) == pytest.approx(getattr(cold.chamber(4.4, 120.0), name), rel=1e-12)


def test_bled_again_when_warm_it_hangs_at_ambient():
    hot = open_leg(warmth=Warmth(293.15, 333.15, 333.15, 600e3, ALUMINIUM), bleed=0.08)
    assert hot.chamber(4.4, 120.0).pressure0 == pytest.approx(0.08)
    assert hot.chamber(4.4, 120.0).volume0 < open_leg().chamber(4.4, 120.0).volume0


def test_the_gap_that_locks_a_hot_leg_is_larger_and_locks_it():
    cold, hot = (open_leg(others=150e3, warmth=w) for w in (None, Warmth(293.15, 293.15, 353.15, 700e3, ALUMINIUM)))
    gap = float(hot.lock_gap(4.4))
    assert gap > float(cold.lock_gap(4.4)) + 5
    assert hot.chamber(4.4, gap).lock_stroke() == pytest.approx(300.0, abs=1e-6)


def test_the_oil_to_add_is_measured_at_the_bench():
    hot = open_leg(warmth=Warmth(293.15, 293.15, 353.15, 700e3, ALUMINIUM))
    assert hot.oil_to_add(4.2, 140.0, 4.6, 120.0) == open_leg().oil_to_add(4.2, 140.0, 4.6, 120.0)


def test_oil_that_leaves_no_gas_names_the_temperature():
    with pytest.raises(Impossible, match="80 °C the oil has grown into all of the gas") as caught:
        warmed(Chamber(20e3, 0.1, 1800.0), Warmth(293.15, 293.15, 353.15, 700e3, ALUMINIUM), 0.1)
    assert caught.value.field == "place.ridden_temperature"


def test_a_job_hot_and_high():
    job = load(demo({"place.ridden_temperature": "60 °C", "place.bled_temperature": "15 °C", "front.oil_volume": "560 ml"}))
    at = conditions(job)
    assert not at.one_temperature
    hot = fork(job, at).gas.chamber(4.6, 120.0)
    cold = fork(load(demo()), conditions(load(demo()))).gas.chamber(4.6, 120.0)
    assert hot.pressure0 * hot.volume0 / 333.15 == pytest.approx(cold.pressure0 * cold.volume0 / 288.15)
    assert cold.volume0 - hot.volume0 == pytest.approx(
        (OIL_EXPANSION - 3 * ALUMINIUM) * 560e3 * 45 - 3 * ALUMINIUM * cold.volume0 * 45, rel=1e-9
    )
    again = fork(job, at.ridden(ambient=0.08).bled_there())
    assert again.gas.chamber(4.6, 120.0).force(0.0, again.ambient, ISOTHERMAL) == pytest.approx(0.0, abs=1e-9)
    assert fork(job, at.ridden(temperature=288.15)).gas.chamber(4.6, 120.0).volume0 == pytest.approx(cold.volume0)


def test_a_temperature_that_is_not_named_is_one_temperature():
    for changes in ({}, {"place.bled_temperature": "3 °C"}):
        assert conditions(load(demo(changes))).one_temperature


def test_scalar_and_array_agree():
    now = np.array([280.0, 300.0, 350.0])
    many = warmed(Chamber(700e3, 0.1, 1800.0), Warmth(293.15, 293.15, now, 600e3, ALUMINIUM), 0.1, 20.0)
    one = [warmed(Chamber(700e3, 0.1, 1800.0), Warmth(293.15, 293.15, t, 600e3, ALUMINIUM), 0.1, 20.0) for t in now]
    assert many.pressure0.tolist() == [chamber.pressure0 for chamber in one]
    leg = replace(open_leg(others=150e3), warmth=Warmth(293.15, 293.15, now, 600e3, ALUMINIUM))
    assert leg.lock_gap(4.4) == pytest.approx(
        [float(replace(leg, warmth=replace(leg.warmth, now=t)).lock_gap(4.4)) for t in now], abs=1e-6
    )
