"""Coil springs: rate from wire and coil, lengths, steel, force against stroke."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.array import Array, Number, some
from calc.impossible import Impossible
from calc.springs.steel import END_TYPES, STEEL_DENSITY


class Spring(Protocol):
    """What a strut needs of a spring of any kind, over the stroke s [mm] from full extension."""

    def force(self, stroke: Number) -> Number: ...

    def rate_at(self, stroke: Number) -> Number: ...

    def energy(self, stroke: Number) -> Number: ...


@dataclass(frozen=True, eq=False)
class LinearSpring:
    """A spring of constant rate, preloaded at full extension.

    Parameters: rate [N/mm], > 0; preload [mm], by which it is shortened at full extension (below 0 it is loose).
    Formula: F = k (p + s), and 0 while p + s < 0.
    Source: Hooke's law.
    Example:
        >>> float(LinearSpring(4.6, 3.0).force(66.0))
        317.4
    """

    rate: Number
    preload: Number

    def force(self, stroke: Number) -> Number:
        """Force [N] at a stroke [mm]."""
        return self.rate * np.maximum(self.preload + stroke, 0.0)

    def rate_at(self, stroke: Number) -> Number:
        """Rate [N/mm] at a stroke [mm]: 0 while loose."""
        return np.where(self.preload + np.asarray(stroke) >= 0.0, self.rate, 0.0)

    def energy(self, stroke: Number) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm]."""
        start: Array = np.maximum(self.preload, 0.0)
        end: Array = np.maximum(self.preload + stroke, 0.0)
        return 0.5 * self.rate * (end**2 - start**2)


def active_coils(total: Number, ends: str) -> Number:
    """Active coils of a spring.

    Parameters: total coils [-], > 0; ends, a key of END_TYPES.
    Returns: active coils [-].
    Raises: Impossible when no coil is left active; KeyError for an unknown end type.
    Formula: Na = Nt - dead coils of the ends.
    Source: Machinery's Handbook, 31st ed., Table 3 of the springs section.
    Example:
        >>> active_coils(12.5, "squared")
        10.5
    """
    active = total - END_TYPES[ends][0]
    if some(active <= 0):
        raise Impossible("no-active-coil", f"{total:g} coils with {ends} ends leave none active.", "Count the coils again.")
    return active


def solid_length(wire: Number, total: Number, ends: str) -> Number:
    """Length with all coils touching.

    Parameters: wire diameter [mm], > 0; total coils [-]; ends, a key of END_TYPES.
    Returns: length [mm].
    Raises: KeyError for an unknown end type.
    Formula: plain, squared: (Nt + 1) d; ground: Nt d.
    Source: Machinery's Handbook, 31st ed., Table 3 of the springs section.
    Example:
        >>> solid_length(5.0, 10.0, "squared, ground")
        50.0
    """
    return (total + END_TYPES[ends][1]) * wire


def rate_from_wire(shear_modulus: Number, wire: Number, mean_diameter: Number, active: Number) -> Number:
    """Rate of a helical spring from its dimensions.

    Parameters: shear_modulus [MPa]; wire diameter [mm]; mean_diameter of the coil [mm], above the wire's; active coils [-].
    Returns: rate [N/mm].
    Raises: Impossible for a coil no wider than its wire.
    Formula: k = G d^4 / (8 D^3 Na).
    Source: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed., eq. 10-9.
    Example:
        >>> round(rate_from_wire(81370.0, 5.0, 40.0, 5.0), 4)
        19.8657
    """
    if some(mean_diameter <= np.asarray(wire)):
        raise Impossible("coil", "The coil is no wider than its wire.", "Enter the mean diameter: outside less one wire.")
    return shear_modulus * wire**4 / (8.0 * mean_diameter**3 * active)


def steel_volume(wire: Number, mean_diameter: Number, total: Number) -> Number:
    """Steel of a spring from its dimensions.

    Parameters: wire [mm]; mean_diameter [mm]; total coils [-].
    Returns: volume [mm3].
    Raises: nothing.
    Formula: V = (pi d^2 / 4) (pi D Nt), the pitch angle left out (below 1 % at fork pitches).
    Source: geometry of a torus of Nt turns.
    Example:
        >>> round(steel_volume(4.0, 30.0, 40.0) / 1000, 1)
        47.4
    """
    return np.pi**2 / 4.0 * wire**2 * mean_diameter * total


def steel_from_mass(mass: Number) -> Number:
    """Steel of a spring from a kitchen scale.

    Parameters: mass [kg], > 0.
    Returns: volume [mm3].
    Raises: nothing.
    Formula: V = m / density.
    Source: density of spring steel, handbook value from memory.
    Example:
        >>> round(float(steel_from_mass(0.4)) / 1000, 1)
        51.0
    """
    return mass / STEEL_DENSITY


def steel_of_other_rate(steel: Number, rate: Number, other_rate: Number) -> Number:
    """Steel of an unknown spring of the same kind and another rate; an assumption.

    Parameters: steel [mm3] of the known spring; rate [N/mm] of it; other_rate [N/mm].
    Returns: volume [mm3].
    Raises: nothing.
    Formula: V' = V sqrt(k' / k): same length and coils, thicker wire, since k goes with d^4 and steel with d^2.
    Source: the rate law of `rate_from_wire`.
    Example:
        >>> round(float(steel_of_other_rate(51.0, 4.2, 4.6)), 1)
        53.4
    """
    thicker: Array = np.sqrt(np.asarray(other_rate) / np.asarray(rate))
    return steel * thicker


def coil_bind_clearance(free: Number, solid: Number, shortened: Number) -> Number:
    """Length left before the coils touch at full stroke.

    Parameters: free length [mm]; solid length [mm]; shortened [mm], preload and full stroke together.
    Returns: clearance [mm]; below 0 the coils touch before full travel.
    Raises: nothing.
    Formula: c = free - solid - shortened.
    Source: geometry.
    Example:
        >>> coil_bind_clearance(470.0, 150.0, 305.0)
        15.0
    """
    return free - solid - shortened
