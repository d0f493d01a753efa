"""Where an end settles."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.end import End
from calc.end.figures import evaluate
from calc.end.loads import Loads
from calc.end.sag import settle
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from calc.motion.ratio import LeverageMotion
from calc.springs.helical import LinearSpring
from tests.unit.end.test_end import fork, shock

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
    ends = [
        fork().end(Setup(r, preload, 120.0)) if front else shock().end(Setup(r, preload, 0.0)) for r in (base, base * rate + 0.01)
    ]
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
    assert rates.travel == pytest.approx(
        [float(settle(fork().end(Setup(r, p, 120.0)), 790.0).travel) for r, p in ((4.2, 6.0), (4.6, 3.0))], abs=1e-7
    )


@pytest.mark.parametrize("load", [120.0, 405.0, 449.0, 451.0, 900.0])
def test_a_topped_out_sag_is_continued_below_zero_as_the_spring_s_line_goes_on(load):
    """By hand, a 90 N/mm shock at 10 mm preload and a leverage of 2: 450 N hold it at the top, 22.5 N/mm at the wheel."""
    rear = End(((Strut((LinearSpring(90.0, 10.0),), (), 0.1), 1.0),), LeverageMotion(2.0, 0.0, 130.0), 130.0)
    sag = settle(rear, load)
    assert float(sag.travel_unbounded) == pytest.approx((load - 450.0) / 22.5, abs=1e-6)
    assert float(sag.stroke_unbounded) == pytest.approx((load - 450.0) / 22.5 / 2.0, abs=1e-6)
    assert float(sag.travel) == pytest.approx(max((load - 450.0) / 22.5, 0.0), abs=1e-6)


def test_a_topped_out_fork_continues_along_the_leg():
    """5 N/mm and 10 mm a leg, 30 degrees: 100 N along the leg hold it, a wheel rate of 10 / cos^2."""
    rake = math.radians(30.0)
    front = fork(rake=rake, bleed=1e-9, ambient=1e-9).end(Setup(5.0, 10.0, 120.0))
    sag = settle(front, 90.0)
    assert sag.topped_out
    assert float(sag.travel_unbounded) == pytest.approx((90.0 - 100.0 / math.cos(rake)) / (10.0 / math.cos(rake) ** 2), abs=1e-3)
    assert float(sag.stroke_unbounded) == pytest.approx(90.0 * math.cos(rake) / 10.0 - 10.0, abs=1e-3)


@given(front=st.booleans(), load=st.floats(60, 300))
def test_the_continued_sag_goes_on_without_a_step_or_a_kink(front, load):
    """Loads either side of what holds the end at its top, with its gas and its linkage: one line, within what curves it."""
    end = fork().end(Setup(4.4, 12.0, 120.0)) if front else shock().end(Setup(48.0, 20.0, 0.0))
    held = float(end.wheel_force(0.0, ISOTHERMAL))
    under, over = (float(settle(end, held + step).travel_unbounded) for step in (-0.5, 0.5))
    assert under == pytest.approx(-over, rel=1e-3)
    assert float(settle(end, held - load).travel_unbounded) == pytest.approx(under * load / 0.5, rel=1e-9)


def test_one_of_many_candidates_keeps_its_continued_sag():
    loads = Loads(np.array([300.0]), np.array([900.0]), 9.80665)
    done = evaluate(shock(), Setup(np.array([48.0, 90.0]), np.array([9.0, 20.0]), 0.0), loads, 1.33)
    stiff = done.at(1).free
    assert stiff.topped_out
    assert stiff.travel_unbounded == pytest.approx(float(done.free.travel_unbounded[1]))
    assert stiff.travel_unbounded < -10 < 0 < done.at(0).free.travel_unbounded
    assert stiff.stroke_unbounded == pytest.approx(float(done.free.stroke_unbounded[1]))
