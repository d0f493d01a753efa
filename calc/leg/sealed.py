"""The gas of a leg with a sealed, pressurised cartridge: two spaces, apart or joined."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.gas.chamber import Chamber, Gas, hydraulic_lock
from calc.gas.joined import Joined, SmallLeak, one_space
from calc.leg.open import OpenLeg


@dataclass(frozen=True, eq=False)
class SealedLeg:
    """A leg whose cartridge is a space of its own. The gap is read in the outer chamber, around the cartridge.

    Parameters: outer, the space around the cartridge; cartridge, what presses on its rod; joined [mm], the stroke from
    which a gas-charged cartridge stands open to the outer chamber, None for never; small_leak: only given time; moved
    [mm3], oil that came into the outer chamber through a worn seal, with bled_since telling whether its pressure was let
    off afterwards.
    Formula: see `calc.gas.chamber`, `calc.gas.piston`, `calc.gas.joined`.
    Source: geometry.
    """

    outer: OpenLeg
    cartridge: Gas
    joined: Number | None = None
    small_leak: bool = False
    moved: Number = 0.0
    bled_since: bool = True

    def chamber(self, rate: Number | None, gap: Number) -> Chamber:
        """The outer chamber's gas at full extension."""
        if self.bled_since:
            return self._filled().chamber(rate, gap)
        before = self.outer.chamber(rate, gap)
        left = before.volume0 - self.moved
        if np.any(np.asarray(left) <= 0):
            raise hydraulic_lock(0.0, "front.oil_moved", self.outer.name)
        return replace(before, volume0=left, pressure0=before.pressure0 * before.volume0 / left)

    def gases(self, rate: Number | None, gap: Number) -> tuple[Gas, ...]:
        """Both spaces."""
        outer = self.chamber(rate, gap)
        if not isinstance(self.cartridge, Chamber) or (self.joined is None and not self.small_leak):
            return outer, self.cartridge
        if self.small_leak:
            return (SmallLeak((outer, self.cartridge)),)
        assert self.joined is not None
        if not np.any(np.asarray(self.joined) > 0):
            return (one_space((outer, self.cartridge)),)
        return (Joined((outer, self.cartridge), self.joined),)

    def lock_gap(self, rate: Number | None) -> Number:
        """Gap [mm] at which the outer chamber, or the joined space, is used up exactly at full travel."""
        shut = self._filled()
        if self.joined is None or not isinstance(self.cartridge, Chamber):
            return shut.lock_gap(rate)
        grows = 1.0 if shut.warmth is None else shut.warmth.factor()
        whole = replace(shut, inside=0.0, others=shut.others - self.cartridge.volume0 / grows)
        # the whole leg gives no more than it swept with the leg collapsed: what the rod sweeps was not in the gap's reading
        whole = replace(whole, others=whole.others + self.outer.inside * shut.drawn_out)
        until = replace(shut, stroke=np.minimum(self.joined, shut.stroke))
        return np.maximum(whole.lock_gap(rate), until.lock_gap(rate))

    def oil_to_add(self, found_rate: Number | None, found_gap: Number, rate: Number | None, gap: Number) -> Number:
        """Oil [mm3] to add around the cartridge, below 0 to take out."""
        return self.outer.oil_to_add(found_rate, found_gap, rate, gap)

    def other_gap(self, rate: Number, gap: Number) -> Array:
        """The same gap [mm] read in the other convention."""
        return self.outer.other_gap(rate, gap)

    def _filled(self) -> OpenLeg:
        """The outer chamber with the oil that came in."""
        return replace(self.outer, others=self.outer.others + self.moved)
