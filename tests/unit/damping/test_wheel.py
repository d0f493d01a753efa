"""Damping at the wheel and how it must follow, against closed forms written out here."""

import math

import pytest

from calc.damping.wheel import at_wheel, critical, follow, follow_at_full, rod_force


def test_critical_damping_is_where_the_roots_meet():
    """m s^2 + c s + k = 0 has one double root there."""
    rate, mass = 14.5, 80.0
    c = float(critical(rate, mass))
    assert c**2 - 4.0 * mass * rate * 1000.0 == pytest.approx(0.0, abs=1e-6)


def test_a_fork_is_reduced_by_the_cosine_of_its_rake_squared():
    """Cossalter, Motorcycle Dynamics, 2nd ed. (memory): c / cos^2(rake), both legs added."""
    rake = 0.4189
    leg = 300.0 / 0.5  # N s/m
    assert at_wheel(300.0, 500.0, 1.0 / math.cos(rake), 2) == pytest.approx(2.0 * leg / math.cos(rake) ** 2)


def test_a_shock_does_the_same_work_as_its_damping_at_the_wheel():
    """Power by virtual work: c_wheel v_wheel^2 = F v_shaft."""
    leverage, force, speed = 2.5, 900.0, 400.0
    wheel_speed = speed * leverage / 1000.0
    assert at_wheel(force, speed, 1.0 / leverage, 1) * wheel_speed**2 == pytest.approx(force * speed / 1000.0)


def test_the_rods_force_is_the_inverse():
    assert rod_force(at_wheel(420.0, 700.0, 0.38, 2), 700.0, 0.38, 2) == pytest.approx(420.0)


def test_the_damping_ratio_stays_in_closed_form():
    c, factor = 900.0, float(follow(16.0, 92.0, 13.5, 80.0))
    before = c / (2.0 * math.sqrt(13.5e3 * 80.0))
    assert factor * c / (2.0 * math.sqrt(16.0e3 * 92.0)) == pytest.approx(before, rel=1e-12)
    assert float(follow(14.0, 80.0, 14.0, 80.0)) == 1.0


def test_from_full_travel_the_same_way_back_in_the_same_time():
    """c v = F: the speed stays where c follows F."""
    factor = follow_at_full(6600.0, 5500.0)
    assert 6600.0 / (1000.0 * factor) == pytest.approx(5500.0 / 1000.0)
