"""How stiff groups of equal shims are against each other: thin rings clamped inside, free outside, under an even pressure."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.impossible import Impossible

MODULUS = 206000.0  # N/mm2, spring steel; it drops out of every comparison
POISSON = 0.3


@dataclass(frozen=True)
class Group:
    """Equal shims.

    Parameters: count [-], > 0; diameter [mm], outside; thickness [mm], > 0.
    Formula: n rings that bend together without friction are n times as stiff as one.
    Source: S. Timoshenko, Theory of Plates and Shells, chapter 3; from memory.
    Example:
        >>> Group(3, 24.0, 0.15).same_kind(Group(4, 24.0, 0.15))
        True
    """

    count: float
    diameter: float
    thickness: float

    @property
    def rigidity(self) -> float:
        """Bending stiffness n E t^3 / (12 (1 - nu^2)) [N mm] of all of them."""
        return self.count * MODULUS * self.thickness**3 / (12.0 * (1.0 - POISSON**2))

    def same_kind(self, other: Group) -> bool:
        """True for shims of one outside diameter."""
        return abs(self.diameter - other.diameter) < 1e-6


def stiffness(groups: Sequence[Group], clamp: float) -> float:
    """Pressure over deflection of the edge, for shims that bend together.

    Parameters: groups, any order; clamp [mm], diameter of the washer that holds them down, > 0.
    Returns: stiffness [MPa/mm] at the edge of the widest.
    Raises: Impossible where there is none, or one that is no wider than the clamp.
    Formula: slope and moment of a ring carried outwards from the clamp through each step, where rings leave off; rigidity of all
    that reach that far, D = sum of n E t^3 / (12 (1 - nu^2)); shear q (a^2 - r^2) / (2 r).
    Source: S. Timoshenko, Theory of Plates and Shells, chapter 3; one group is Roark's Formulas, Table 11.2, case 2l; from memory.
    Example:
        >>> three, four = (stiffness([Group(count, 24.0, 0.15)], 12.0) for count in (3, 4))
        >>> round(four / three, 6)
        1.333333
    """
    if not groups:
        raise Impossible("shims", "There is no shim.", "Enter at least one group.")
    narrow = [group.diameter for group in groups if group.diameter <= clamp]
    if narrow:
        words = f"A shim of {min(narrow):g} mm does not reach beyond the clamp of {clamp:g} mm."
        raise Impossible("shims", words, "Check both diameters.")
    edge = max(group.diameter for group in groups) / 2.0
    steps = sorted({group.diameter / 2.0 for group in groups})
    pieces = []
    inner = clamp / 2.0
    for outer in steps:
        pieces.append((inner, outer, sum(group.rigidity for group in groups if group.diameter / 2.0 >= outer)))
        inner = outer
    _, by_load, bent = _carried(pieces, edge, 1.0, 0.0)
    _, by_moment, lifted = _carried(pieces, edge, 0.0, 1.0)
    clamped = -by_load / by_moment  # the edge is free: no moment is left there
    return 1.0 / (bent + clamped * lifted)


def _carried(
    pieces: Sequence[tuple[float, float, float]], edge: float, pressure: float, moment: float
) -> tuple[float, float, float]:
    """Slope [rad], moment [N] and deflection [mm] at the edge, of a plate held level inside under a moment [N] there.

    Slope in a piece of rigidity D: A r + B / r, and what balances the shear, (s' + s / r)' = q (r - a^2 / r) / (2 D).
    """
    slope, bent = 0.0, 0.0
    for inner, outer, rigid in pieces:
        load = pressure / (2.0 * rigid)
        own, own_bend, _ = _particular(inner, edge, load)
        # A r + B / r, and its moment D ((1 + nu) A - (1 - nu) B / r^2), meet what comes from inside
        first = slope - own
        second = moment / rigid - own_bend - POISSON * own / inner
        share = (second + (1.0 - POISSON) * first / inner) / 2.0
        ring = (first - share * inner) * inner
        bent += share * (outer**2 - inner**2) / 2.0 + ring * math.log(outer / inner)
        own, own_bend, area = _particular(outer, edge, load)
        bent += area - _particular(inner, edge, load)[2]
        slope = share * outer + ring / outer + own
        moment = rigid * ((1.0 + POISSON) * share - (1.0 - POISSON) * ring / outer**2 + own_bend + POISSON * own / outer)
    return slope, moment, bent


def _particular(radius: float, edge: float, load: float) -> tuple[float, float, float]:
    """A slope that balances the shear, load (r^3 / 8 - a^2 r ln r / 2), what it changes by, and its area; load = q / (2 D)."""
    logarithm = math.log(radius)
    slope = load * (radius**3 / 8.0 - edge**2 * radius * logarithm / 2.0)
    bend = load * (3.0 * radius**2 / 8.0 - edge**2 * (logarithm + 1.0) / 2.0)
    area = load * (radius**4 / 32.0 - edge**2 * (radius**2 * logarithm / 4.0 - radius**2 / 8.0))
    return slope, bend, area
