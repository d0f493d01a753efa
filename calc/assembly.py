"""Putting an end together from rate, preload and gap: the fork's two legs, the rear's shock or shocks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.array import Array, Number
from calc.end import End
from calc.gas import Chamber, Gas, SteadyCharge, gas_above_oil, open_leg
from calc.impossible import Impossible
from calc.motion import ForkMotion, LeverageMotion
from calc.roots import find_root
from calc.springs import LinearSpring, steel_of_other_rate
from calc.strut import Strut

DEEPEST_GAP = 500.0  # mm, the search's end: deeper than any leg's tube


class Assembly(Protocol):
    """What sizing needs of either end. `springs` counts the struts that carry a spring."""

    @property
    def springs(self) -> int: ...

    def end(self, rate: Number, preload: Number, gap: Number) -> End: ...

    def lock_gap(self, rate: Number) -> Number: ...


@dataclass(frozen=True)
class ForkAssembly:
    """Two open legs.

    Parameters: pieces of free area (see `gas.gas_above_oil`); seal_diameter, collapsed_stroke, stroke (full travel along
    the leg) [mm]; steel [mm3] of the fitted spring and its fitted_rate [N/mm]; spacer, others [mm3] (washers, cap, rod
    above the rim); spring_in: the gap is read with the spring and the spacer in, then free_length and spacer_length [mm]
    count; bleed, ambient [MPa]; bled_stroke [mm]; rake [rad]; friction [N] per leg; springs: 2, or 1 for a spring in one leg.
    """

    pieces: Sequence[tuple[Number, Number]]
    seal_diameter: Number
    collapsed_stroke: Number
    stroke: Number
    steel: Number
    fitted_rate: Number
    spacer: Number
    others: Number
    spring_in: bool
    free_length: Number
    spacer_length: Number
    bleed: Number
    ambient: Number
    bled_stroke: Number
    rake: Number
    friction: Number
    springs: int = 2

    def _steel(self, rate: Number | None) -> Number:
        return 0.0 if rate is None else steel_of_other_rate(self.steel, self.fitted_rate, rate)

    def gas_above(self, gap: Number, rate: Number | None, spring_in: bool) -> Number:
        """Gas [mm3] above the oil, collapsed, for a gap read in either convention; `rate` None for a leg with no spring."""
        empty = gas_above_oil(gap, self.pieces)
        if not spring_in or rate is None:
            return empty
        spring_depth = np.maximum(gap - self.spacer_length, 0.0)
        deep = np.clip(gap / np.maximum(self.spacer_length, 1e-9), 0.0, 1.0)
        spacer = self.spacer * np.where(np.asarray(self.spacer_length) > 0, deep, 1.0)
        return empty - self._steel(rate) / self.free_length * spring_depth - spacer

    def goes_in(self, rate: Number | None, spring_in: bool) -> Number:
        """What goes in [mm3] after the gap is read."""
        afterwards = 0.0 if spring_in or rate is None else self._steel(rate) + self.spacer
        return self.others + afterwards

    def chamber(self, rate: Number | None, gap: Number) -> Chamber:
        """The leg's gas at full extension."""
        above = self.gas_above(gap, rate, self.spring_in)
        goes_in = self.goes_in(rate, self.spring_in)
        return open_leg(above, self.seal_diameter, self.collapsed_stroke, goes_in, self.bleed, self.bled_stroke)

    def leg(self, rate: Number | None, preload: Number, gap: Number) -> Strut:
        """One leg, with or without a spring."""
        springs = () if rate is None else (LinearSpring(rate, preload),)
        return Strut(springs, (self.chamber(rate, gap),), self.ambient)

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """Both legs at one gap."""
        return self.end_of_gaps(rate, preload, gap, gap)

    def end_of_gaps(self, rate: Number, preload: Number, gap_left: Number, gap_right: Number) -> End:
        """Both legs, each at its own gap; a single spring sits in the left leg."""
        motion = ForkMotion(self.rake)
        left = self.leg(rate, preload, gap_left)
        same = self.springs == 2 and gap_left is gap_right
        right = left if same else self.leg(rate if self.springs == 2 else None, preload, gap_right)
        struts = ((left, 2.0),) if same else ((left, 1.0), (right, 1.0))
        return End(struts, motion, motion.travel(self.stroke), 2.0 * self.friction * motion.ratio(0.0))

    def lock_gap(self, rate: Number) -> Array:
        """Gap [mm] at which the last gas is used up exactly at full travel."""

        def left_over(gap: Number) -> Array:
            above = self.gas_above(gap, rate, self.spring_in)
            room = self.collapsed_stroke - self.stroke
            area = np.pi / 4.0 * self.seal_diameter**2
            return np.asarray(above + area * room - self.goes_in(rate, self.spring_in))

        rate = np.asarray(rate, dtype=float)
        if np.all(left_over(0.0 * rate) > 0):
            return 0.0 * rate
        low = np.where(left_over(0.0 * rate) > 0, -DEEPEST_GAP, 0.0)
        return np.maximum(find_root(left_over, low, DEEPEST_GAP + 0.0 * rate), 0.0)

    def gap_in_other_convention(self, rate: Number, gap: Number) -> Array:
        """The same leg's gap [mm], read the other way: spring out for in, in for out.

        Raises Impossible where it cannot be read that way, the oil standing above the rim or below the tube.
        """
        volume = self.gas_above(gap, rate, self.spring_in) - self.goes_in(rate, self.spring_in)

        def surplus(other: Number) -> Array:
            above = self.gas_above(other, rate, not self.spring_in)
            return np.asarray(above - self.goes_in(rate, not self.spring_in) - volume)

        low, high = 0.0 * np.asarray(gap), DEEPEST_GAP + 0.0 * np.asarray(gap)
        if np.any(surplus(low) > 0) or np.any(surplus(high) < 0):
            raise Impossible("gap-convention", "The gap cannot be read in the other convention.", "Keep to your own.")
        return find_root(surplus, low, high)

    def oil_to_add(self, found_rate: Number | None, found_gap: Number, rate: Number | None, gap: Number) -> Number:
        """Oil [mm3] to add to one leg, below 0 to take out, from a found spring and gap to new ones; rates None: no spring."""
        found = self.chamber(found_rate, found_gap).volume0 + self._steel(found_rate)
        return found - self.chamber(rate, gap).volume0 - self._steel(rate)


@dataclass(frozen=True)
class ShockAssembly:
    """A rear end of one or two shocks.

    Parameters: motion; travel [mm], vertical; rod_diameter [mm]; charge [MPa, absolute] at full extension; gas_volume
    [mm3] at full extension, or None where it is not known (then the charge is taken as constant); ambient [MPa];
    friction [N] at the wheel; springs, the number of shocks.
    """

    motion: LeverageMotion
    travel: Number
    rod_diameter: Number
    charge: Number
    gas_volume: Number | None
    ambient: Number
    friction: Number
    springs: int = 1

    def gas(self) -> Gas:
        """The gas behind the rod."""
        area = np.pi / 4.0 * self.rod_diameter**2
        if self.gas_volume is None:
            return SteadyCharge(self.charge, area)
        return Chamber(self.gas_volume, self.charge, area)

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """The rear end; a shock has no gap to set."""
        del gap
        shock = Strut((LinearSpring(rate, preload),), (self.gas(),), self.ambient)
        return End(((shock, float(self.springs)),), self.motion, self.travel, self.friction)

    def lock_gap(self, rate: Number) -> Number:
        """No gap to set, so none that locks."""
        return -np.inf + 0.0 * np.asarray(rate)
