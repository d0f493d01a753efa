"""Damping at the wheel: critical damping, damping ratio, and by how much damping must follow a change of springs and load."""

from __future__ import annotations

import numpy as np

from calc.array import Number

_N_PER_M = 1000.0  # N/m in one N/mm


def critical(wheel_rate: Number, sprung_mass: Number) -> Number:
    """Critical damping of an end at the wheel.

    Parameters: wheel_rate K [N/mm], > 0, springs and gas; sprung_mass m [kg] at that axle, > 0.
    Returns: damping [N s/m].
    Raises: nothing.
    Formula: 2 sqrt(K m), K in N/m.
    Source: single-mass oscillator; W. T. Thomson, Theory of Vibration; from memory.
    Example:
        >>> round(float(critical(14.5, 80.0)))
        2154
    """
    return np.asarray(2.0 * np.sqrt(np.asarray(wheel_rate) * _N_PER_M * sprung_mass))


def at_wheel(force: Number, speed: Number, ratio: Number, dampers: Number) -> Number:
    """Damping at the wheel of dampers known by their force at one speed.

    Parameters: force [N] of one damper; speed [mm/s] of its shaft, > 0; ratio q [-], shaft over wheel; dampers [-], how many.
    Returns: damping [N s/m], as if force rose in a straight line with speed.
    Raises: nothing.
    Formula: c = n (F / v) q^2.
    Source: virtual work; V. Cossalter, Motorcycle Dynamics, 2nd ed.: c / cos^2(rake) of a fork; from memory.
    Example:
        >>> round(float(at_wheel(400.0, 500.0, 0.4, 1)), 6)
        128.0
    """
    return np.asarray(dampers * np.asarray(force) / (np.asarray(speed) / 1000.0) * np.asarray(ratio) ** 2)


def rod_force(damping: Number, speed: Number, ratio: Number, dampers: Number) -> Number:
    """The force that each damper must give at a speed for a damping at the wheel: the inverse of `at_wheel`.

    Parameters: damping [N s/m] at the wheel; speed [mm/s] of the shaft; ratio q [-], > 0; dampers [-], > 0.
    Returns: force [N] of one damper.
    Raises: nothing.
    Formula: F = c v / (n q^2).
    Source: as `at_wheel`.
    Example:
        >>> round(float(rod_force(128.0, 500.0, 0.4, 1)), 6)
        400.0
    """
    return np.asarray(np.asarray(damping) * (np.asarray(speed) / 1000.0) / (dampers * np.asarray(ratio) ** 2))


def follow(rate: Number, mass: Number, rate_before: Number, mass_before: Number) -> Number:
    """By how much damping must change to keep its ratio.

    Parameters: rate, rate_before [N/mm] at the wheel, springs and gas; mass, mass_before [kg] on the springs.
    Returns: factor [-] on the damping, rebound and compression alike.
    Raises: nothing.
    Formula: c' / c = sqrt(k' m' / (k m)).
    Source: damping ratio c / (2 sqrt(k m)) the same; single-mass oscillator.
    Example:
        >>> round(float(follow(16.0, 90.0, 14.0, 80.0)), 3)
        1.134
    """
    return np.sqrt(np.asarray(rate) * mass / (np.asarray(rate_before) * mass_before))


def follow_at_full(force: Number, force_before: Number) -> Number:
    """By how much rebound must change so that the wheel comes back from full travel as fast as before.

    Parameters: force, force_before [N] that push it back there, springs and gas.
    Returns: factor [-] on the damping.
    Raises: nothing.
    Formula: c' / c = F' / F.
    Source: where the wheel comes back slowly, its inertia small beside both forces, c v = F.
    Example:
        >>> follow_at_full(6000.0, 5000.0)
        1.2
    """
    return force / force_before
