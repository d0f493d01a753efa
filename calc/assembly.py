"""Putting an end together from rate, preload and gap: the fork's two legs, the rear's shock or shocks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.arrangement import Arrangement
from calc.array import Number
from calc.end import End
from calc.gas import Gas
from calc.leg import LegGas
from calc.motion import ForkMotion, Motion
from calc.strut import Strut


class Assembly(Protocol):
    """What sizing needs of either end. `springs` counts the struts that carry a spring."""

    @property
    def springs(self) -> int: ...

    @property
    def arrangement(self) -> Arrangement: ...

    def end(self, rate: Number, preload: Number, gap: Number) -> End: ...

    def lock_gap(self, rate: Number) -> Number: ...


@dataclass(frozen=True)
class ForkAssembly:
    """Two legs.

    Parameters: gas of a leg; arrangement of its springs; stroke [mm], full travel along the leg; ambient [MPa] where it
    is ridden; rake [rad]; friction [N] per leg; springs: 2, or 1 for a spring in the left leg only.
    """

    gas: LegGas
    arrangement: Arrangement
    stroke: Number
    ambient: Number
    rake: Number
    friction: Number
    springs: int = 2

    def leg(self, rate: Number | None, preload: Number, gap: Number) -> Strut:
        """One leg; rate None for a leg with no spring."""
        springs = () if rate is None else self.arrangement.springs(rate, preload)
        return Strut(springs, self.gas.gases(rate, gap), self.ambient)

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """Both legs at one gap."""
        return self.end_of_gaps(rate, preload, gap, gap)

    def end_of_gaps(self, rate: Number, preload: Number, gap_left: Number, gap_right: Number) -> End:
        """Both legs, each at its own gap."""
        motion = ForkMotion(self.rake)
        left = self.leg(rate, preload, gap_left)
        same = self.springs == 2 and gap_left is gap_right
        right = left if same else self.leg(rate if self.springs == 2 else None, preload, gap_right)
        struts = ((left, 2.0),) if same else ((left, 1.0), (right, 1.0))
        return End(struts, motion, motion.travel(self.stroke), 2.0 * self.friction * motion.ratio(0.0))

    def lock_gap(self, rate: Number) -> Number:
        """Gap [mm] at which the first leg locks at full travel."""
        with_spring = self.gas.lock_gap(rate)
        return with_spring if self.springs == 2 else np.maximum(with_spring, self.gas.lock_gap(None))


@dataclass(frozen=True)
class ShockAssembly:
    """A rear end of one or two shocks.

    Parameters: gas behind the rod; arrangement of its springs; motion; travel [mm], vertical; ambient [MPa]; friction [N]
    at the wheel; springs, the number of shocks.
    """

    gas: Gas
    arrangement: Arrangement
    motion: Motion
    travel: Number
    ambient: Number
    friction: Number
    springs: int = 1

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """The rear end; a shock has no gap to set."""
        del gap
        shock = Strut(self.arrangement.springs(rate, preload), (self.gas,), self.ambient)
        return End(((shock, float(self.springs)),), self.motion, self.travel, self.friction)

    def lock_gap(self, rate: Number) -> Number:
        """No gap to set, so none that locks."""
        return -np.inf + 0.0 * np.asarray(rate)
