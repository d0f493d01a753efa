"""Continuity in a damper: the oil that rod and piston move, and what ports alone take of it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number, some
from calc.gas.chamber import circle
from calc.impossible import Impossible

CONTRACTION = np.pi / (np.pi + 2.0)  # of a jet behind a sharp edge [-]
_PA_PER_MPA = 1e6


@dataclass(frozen=True, eq=False)
class Sizes:
    """Areas of a damper.

    Parameters: rod [mm2], > 0; piston [mm2], its whole bore, more than the rod.
    Formula: the base valve gets what the rod pushes out, the piston what is beside the rod.
    Source: continuity; J. C. Dixon, The Shock Absorber Handbook, 2nd ed.; from memory.
    Example:
        >>> round(Sizes.of(12.0, 28.0).share, 3)
        0.184
    """

    rod: Number
    piston: Number

    @classmethod
    def of(cls, rod: Number, piston: Number) -> Sizes:
        """From diameters [mm]; Impossible where there is no rod, or none of the piston is left beside it."""
        if some(np.asarray(rod) <= 0) or some(np.asarray(rod) >= piston):
            words = (
                f"The damper rod, {float(np.max(rod)):.1f} mm, must be thinner than its piston of {float(np.min(piston)):.1f} mm"
            )
            raise Impossible("damper", f"{words}, and more than 0.", "Measure both again.")
        return cls(circle(rod), circle(piston))

    @property
    def ring(self) -> Number:
        """Area [mm2] of the piston beside the rod."""
        return self.piston - self.rod

    @property
    def share(self) -> Number:
        """Part of the piston's bore that the base valve acts on [-]."""
        return self.rod / self.piston


def base_flow(sizes: Sizes, speed: Number) -> Number:
    """Oil through the base valve on compression.

    Parameters: sizes; speed [mm/s] of the shaft, >= 0.
    Returns: flow [mm3/s].
    Raises: nothing.
    Formula: rod area x speed.
    Source: continuity; J. C. Dixon, The Shock Absorber Handbook, 2nd ed.; from memory.
    Example:
        >>> round(float(base_flow(Sizes.of(12.0, 28.0), 1000.0)) / 1e6 * 60, 2)
        6.79
    """
    return sizes.rod * speed


def piston_flow(sizes: Sizes, speed: Number) -> Number:
    """Oil through the piston, on compression and on rebound.

    Parameters: sizes; speed [mm/s] of the shaft, >= 0.
    Returns: flow [mm3/s].
    Raises: nothing.
    Formula: (piston area - rod area) x speed.
    Source: as `base_flow`.
    Example:
        >>> round(float(piston_flow(Sizes.of(12.0, 28.0), 1000.0)) / 1e6 * 60, 2)
        30.16
    """
    return sizes.ring * speed


def orifice_drop(flow: Number, area: Number, density: Number, contraction: float = CONTRACTION) -> Number:
    """Pressure that a sharp-edged opening takes.

    Parameters: flow [mm3/s], >= 0; area [mm2] of all openings, > 0; density [kg/m3]; contraction [-] of the jet.
    Returns: pressure drop [MPa].
    Raises: nothing.
    Formula: dp = rho / 2 (Q / (Cd A))^2.
    Source: M. G. Rabie, Fluid Power Engineering, 2009, p. 27: pi / (pi + 2) = 0.611 for a sharp edge.
    Example:
        >>> round(float(orifice_drop(502655.0, 4 * 12.566, 870.0)) * 10, 2)
        1.17
    """
    jet = np.asarray(flow) / (contraction * np.asarray(area)) / 1000.0  # m/s
    return 0.5 * density * jet**2 / _PA_PER_MPA
