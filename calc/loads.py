"""Axle loads: from scales, or from masses and shares; and what of them the springs carry."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number
from calc.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible


@dataclass(frozen=True)
class Axles:
    """Masses [kg] on the front and the rear axle."""

    front: Number
    rear: Number

    def plus(self, mass: Number, front_share: Number) -> Axles:
        """The same with a mass [kg] added, `front_share` [-] of it on the front axle."""
        return Axles(self.front + mass * front_share, self.rear + mass * (1.0 - front_share))


def sprung_load(axle_mass: Number, unsprung: Number, end: str, gravity: float = STANDARD_GRAVITY) -> Number:
    """Vertical load that an end's springs carry at rest.

    Parameters: axle_mass [kg]; unsprung [kg]; end, "front" or "rear", for the message; gravity [N/kg].
    Returns: load [N].
    Raises: Impossible when the unsprung mass is not below the axle's load.
    Formula: (m_axle - m_unsprung) g.
    Source: statics.
    Example:
        >>> round(float(sprung_load(96.2, 16.0, "front")), 1)
        786.5
    """
    sprung: Array = np.asarray(axle_mass) - np.asarray(unsprung)
    if np.any(sprung <= 0):
        raise Impossible(
            "unsprung",
            f"The unsprung mass at the {end}, {float(np.max(unsprung)):.1f} kg, is not below the axle's load of "
            f"{float(np.min(axle_mass)):.1f} kg.",
            "Check the axle reading and the unsprung mass.",
            f"{end}.unsprung",
        )
    return sprung * gravity


def fork_axis_load(
    wheel_load: Number, unsprung: Number, rake: Number, braking: Number = 0.0, deceleration: Number = 0.0,
    gravity: float = STANDARD_GRAVITY,
) -> Number:  # fmt: skip
    """Load along the fork's axis, both legs.

    Parameters: wheel_load N [N], vertical, of the front tyre; unsprung [kg]; rake [rad]; braking [N], the tyre's force
    towards the rear; deceleration [m/s2], > 0 while slowing; gravity [N/kg].
    Returns: force [N] along the steering axis.
    Raises: nothing.
    Formula: (N - m_u g) cos r + (X - m_u a) sin r.
    Source: statics of the leaning fork; V. Cossalter, Motorcycle Dynamics, 2nd ed., chapter 6; from memory.
    Example:
        >>> round(float(fork_axis_load(1172.57, 18.4, 0.4189, gravity=9.81)), 2)
        906.29
    """
    return (wheel_load - unsprung * gravity) * np.cos(rake) + (braking - unsprung * deceleration) * np.sin(rake)


def share_aboard(alone: Number, aboard: Number, added: Number) -> Number:
    """The part of an added mass that an axle takes, from two scale readings.

    Parameters: alone [kg]; aboard [kg]; added [kg], > 0.
    Returns: share [-].
    Raises: Impossible when the added mass is not above 0.
    Formula: (aboard - alone) / added.
    Source: statics.
    Example:
        >>> round(share_aboard(54.5, 96.2, 104.0), 3)
        0.401
    """
    if np.any(np.asarray(added) <= 0):
        raise Impossible("rider", "The rider's mass must be above 0 kg.", "Enter the kitted mass.", "rider.mass")
    return (aboard - alone) / added
