"""Axle loads: from scales, or from masses and shares; and what of them the springs carry."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number, some
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible, decimals_apart
from calc.practice import Axle


@dataclass(frozen=True, eq=False)
class Axles:
    """Masses [kg] on the front and the rear axle."""

    front: Number
    rear: Number

    def plus(self, mass: Number, front_share: Number) -> Axles:
        """The same with a mass [kg] added, `front_share` [-] of it on the front axle."""
        return Axles(self.front + mass * front_share, self.rear + mass * (1.0 - front_share))


def sprung_load(axle_mass: Number, unsprung: Number, axle: Axle, gravity: float = STANDARD_GRAVITY) -> Number:
    """Vertical load that an end's springs carry at rest.

    Parameters: axle_mass [kg]; unsprung [kg]; axle, "front" or "rear", for the message; gravity [N/kg].
    Returns: load [N].
    Raises: Impossible when the unsprung mass is not below the axle's load.
    Formula: (m_axle - m_unsprung) g.
    Source: statics.
    Example:
        >>> round(float(sprung_load(96.2, 16.0, "front")), 1)
        786.5
    """
    sprung: Array = np.asarray(axle_mass) - np.asarray(unsprung)
    if some(sprung <= 0):
        raise Impossible(
            "unsprung",
            f"The unsprung mass at the {axle}, {float(np.max(unsprung)):.1f} kg, is not below the axle's load of "
            f"{float(np.min(axle_mass)):.1f} kg.",
            "Check the axle reading and the unsprung mass.",
            f"{axle}.unsprung",
        )
    return sprung * gravity


def shared_swingarm(wheel: Number, swingarm: Number, balance: Number, length: Number) -> Number:
    """Unsprung mass of a rear wheel on a swingarm.

    Parameters: wheel [kg], with all that moves with it; swingarm [kg]; balance [mm], pivot to the swingarm's centre of mass;
    length [mm], pivot to axle.
    Returns: mass [kg] that stands on the tyre without loading the shock.
    Raises: Impossible when the balance point lies beyond the axle.
    Formula: wheel + swingarm x balance / length.
    Source: moments about the pivot.
    Example:
        >>> round(shared_swingarm(14.7, 8.0, 353.0, 549.0), 3)
        19.844
    """
    if some(balance > length):
        most, axle = float(np.max(balance)), float(np.min(length))
        places = decimals_apart(most, axle, 0)
        raise Impossible(
            "swingarm",
            f"The swingarm's balance point, {most:.{places}f} mm from the pivot, lies beyond the axle at {axle:.{places}f} mm.",
            "Measure both from the pivot again.",
            "rear.swingarm_balance",
        )
    return wheel + swingarm * balance / length


@dataclass(frozen=True, eq=False)
class Braked:
    """Loads while braking: N [N] on the front tyre and on the rear, X [N], the front tyre's braking force, a [m/s2]."""

    front: Number
    rear: Number
    force: Number
    deceleration: Number


def braked(
    axles: Axles, deceleration: Number, height: Number, wheelbase: Number, front_part: Number, gravity: float = STANDARD_GRAVITY
) -> Braked:
    """Tyre loads of a bike that slows down steadily on level ground.

    Parameters: axles, masses [kg] at rest, rider aboard; deceleration a [m/s2], > 0; height [mm] of the centre of mass of bike
    and rider; wheelbase [mm]; front_part [-], of the braking force, done by the front tyre; gravity [N/kg].
    Returns: Braked.
    Raises: Impossible when the rear wheel lifts.
    Formula: load moved = m a h / wheelbase; X = m a x front_part. Aerodynamic drag is left out.
    Source: statics; V. Cossalter, Motorcycle Dynamics, 2nd ed., chapter 6; from memory.
    Example:
        >>> done = braked(Axles(96.2, 121.6), 5.0, 650.0, 1485.0, 1.0)
        >>> round(float(done.front), 1), round(float(done.rear), 1), round(float(done.force), 1)
        (1420.1, 715.8, 1089.0)
    """
    mass = axles.front + axles.rear
    moved = mass * deceleration * height / wheelbase
    rear = np.asarray(axles.rear * gravity - moved)
    if some(rear <= 0):
        most = float(np.min(axles.rear * gravity * wheelbase / (mass * height)))
        raise Impossible(
            "stoppie",
            f"At {float(np.max(deceleration)):.1f} m/s² the rear wheel lifts: it carries nothing from {most:.1f} m/s².",
            "Look at a gentler braking.",
            "bike.braking",
        )
    return Braked(axles.front * gravity + moved, rear, mass * deceleration * front_part, deceleration)


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
    if some(added <= 0):
        raise Impossible("rider", "The rider's mass must be above 0 kg.", "Enter the mass in full kit.", "rider.mass")
    return (aboard - alone) / added


@dataclass(frozen=True, eq=False)
class Loads:
    """What the end carries: sprung loads [N] with the bike alone and with the rider aboard, and gravity [N/kg] used."""

    alone: Number
    aboard: Number
    gravity: float

    @property
    def sprung_mass(self) -> Number:
        """Sprung mass [kg] on the axle, rider aboard."""
        return self.aboard / self.gravity
