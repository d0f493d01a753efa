"""The bike's attitude: front against rear, what it does to the rake, and how far the tubes go in the clamps to bring it back."""

from __future__ import annotations

import numpy as np

from calc.array import Number


def rake_change(front: Number, rear: Number, wheelbase: Number) -> Number:
    """How far the rake turns as the ends of a bike come up.

    Parameters: front, rear [mm], how much higher the frame stands over either axle; wheelbase [mm], > 0.
    Returns: angle [rad], above 0 slacker, below 0 steeper.
    Raises: nothing.
    Formula: atan((front - rear) / wheelbase).
    Source: geometry.
    Example:
        >>> round(float(np.degrees(rake_change(-2.0, -8.0, 1485.0))), 2)
        0.23
    """
    return np.arctan2(front - rear, wheelbase)


def clamp_shift(front: Number, rear: Number, rake: Number) -> Number:
    """How far up the tubes go through the clamps to bring the attitude back: the front to as much higher or lower as the rear.

    Parameters: front, rear [mm], how much higher the frame stands over either axle; rake [rad].
    Returns: shift [mm] along the tubes, up is above 0.
    Raises: nothing.
    Formula: (front - rear) / cos(rake).
    Source: geometry.
    Example:
        >>> round(float(clamp_shift(-2.0, -8.0, 0.4625)), 1)
        6.7
    """
    return (front - rear) / np.cos(rake)
