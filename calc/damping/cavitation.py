"""How hard a damper may be worked before its oil tears: pressures behind the piston, absolute, and what that is on the rod."""

from __future__ import annotations

import numpy as np

from calc.array import Number
from calc.damping.flow import Sizes


def largest_drop(behind: Number, ambient: Number, base_drop: Number, vapour: Number) -> Number:
    """The most that the piston may take on compression before the space behind it reaches the vapour pressure.

    Parameters: behind [MPa, gauge], pressure that backs the damper's oil; ambient [MPa, absolute]; base_drop [MPa], what the base
    valve takes, >= 0; vapour [MPa, absolute].
    Returns: pressure drop [MPa], none below 0.
    Raises: nothing.
    Formula: P_behind + P_ambient + dP_base - P_vapour; with dP_base = 0 the floor.
    Source: J. C. Dixon, The Shock Absorber Handbook, 2nd ed. (the space behind the piston); from memory.
    Example:
        >>> round(float(largest_drop(0.05, 0.1, 0.0, 0.01)), 3)
        0.14
    """
    return np.maximum(behind + ambient + base_drop - vapour, 0.0)


def compression_force(sizes: Sizes, base_drop: Number, piston_drop: Number) -> Number:
    """What a damper holds against compression, its gas left out.

    Parameters: sizes; base_drop [MPa]; piston_drop [MPa].
    Returns: force on the rod [N]. The pressure behind the oil pushes on the rod too: that is the gas's force, and counted there.
    Raises: nothing.
    Formula: dP_base A_rod + dP_piston (A_piston - A_rod).
    Source: statics: the compression side is at P_behind + dP_base, the other side lower by dP_piston.
    Example:
        >>> round(float(compression_force(Sizes.of(12.0, 28.0), 0.5, 0.64)), 1)
        378.2
    """
    return base_drop * sizes.rod + piston_drop * sizes.ring


def largest_refill(behind: Number, ambient: Number, vapour: Number) -> Number:
    """The most that the check valve may take on rebound, as oil follows the rod.

    Parameters: behind [MPa, gauge]; ambient [MPa, absolute]; vapour [MPa, absolute].
    Returns: pressure drop [MPa], none below 0.
    Raises: nothing.
    Formula: P_behind + P_ambient - P_vapour.
    Source: as `largest_drop`.
    Example:
        >>> round(float(largest_refill(0.05, 0.1, 0.01)), 3)
        0.14
    """
    return largest_drop(behind, ambient, 0.0, vapour)
