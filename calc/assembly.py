"""Putting an end together from rate, preload and gap: the fork's two legs, the rear's shock or shocks."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np

from calc.arrangement import Arrangement
from calc.array import Number, some
from calc.end import End
from calc.gas.chamber import SLOW, Gas
from calc.leg.air import AirLeg, Pumped
from calc.leg.open import LegGas
from calc.motion.ratio import ForkMotion, Motion
from calc.springs.helical import Spring
from calc.springs.topout import TopOutSpring, held_by
from calc.strut import Strut


class Assembly(Protocol):
    """What sizing needs of either end. `springs` counts the struts that carry a spring."""

    @property
    def springs(self) -> int: ...

    @property
    def arrangement(self) -> Arrangement: ...

    def end(self, rate: Number, preload: Number, gap: Number) -> End: ...

    def lock_gap(self, rate: Number) -> Number: ...

    def paired(self, split: Number) -> Assembly: ...

    def pumped(self, air: Pumped | None) -> Assembly: ...


@dataclass(frozen=True, eq=False)
class Stops:
    """What works at either end of the stroke: top-out springs and bump rubbers, one in every strut.

    Parameters: topout [N/mm], the rate of a top-out spring, None for none; hanging [N], weight that hangs at the wheel in
    the air; rubber, the bump rubber, None for none.
    Formula: zero stroke is the balance, so all top-out springs hold what pushes the wheel out and hangs on it.
    Source: statics.
    """

    topout: Number | None = None
    hanging: Number = 0.0
    rubber: Spring | None = None

    def fit(self, end: End) -> End:
        """The same end with its stops."""
        struts = end.struts
        if self.topout is not None:
            pushing = sum((count * strut.force(0.0, SLOW) for strut, count in struts), 0.0)
            held = held_by(pushing, self.hanging / end.motion.ratio(0.0)) / sum(count for _, count in struts)
            struts = tuple((replace(s, springs=(*s.springs, TopOutSpring(self.topout, held))), count) for s, count in struts)
        if self.rubber is not None:
            struts = tuple((replace(strut, rubber=self.rubber), count) for strut, count in struts)
        return end if struts is end.struts else replace(end, struts=struts)


@dataclass(frozen=True, eq=False)
class ForkAssembly:
    """Two legs.

    Parameters: gas of a leg; arrangement of its springs; stroke [mm], full travel along the leg; ambient [MPa] where it
    is ridden; rake [rad]; friction [N] per leg; springs: 2, 1 for a spring in the left leg only, 0 for none; stops; split
    [N/mm], how much the right leg's rate is above, and the left one's below, the rate that is asked for, their mean;
    gas_right, the right leg's gas where it is of another kind.
    """

    gas: LegGas
    arrangement: Arrangement
    stroke: Number
    ambient: Number
    rake: Number
    friction: Number
    springs: int = 2
    stops: Stops = Stops()
    split: Number = 0.0
    gas_right: LegGas | None = None

    def paired(self, split: Number) -> ForkAssembly:
        """The same fork with unequal rates in its legs."""
        return self if split is self.split else replace(self, split=split)

    def pumped(self, air: Pumped | None) -> ForkAssembly:
        """The same fork with its air springs set otherwise; None leaves them as they are."""
        return self if air is None or not isinstance(self.gas, AirLeg) else replace(self, gas=self.gas.pumped(air))

    @property
    def alike(self) -> bool:
        """True where both legs carry the same spring and gas."""
        return self.springs != 1 and not some(self.split) and self.gas_right is None

    def leg(self, rate: Number | None, preload: Number, gap: Number, right: bool = False) -> Strut:
        """One leg; rate None for a leg with no spring."""
        springs = () if rate is None else self.arrangement.springs(rate, preload)
        return Strut(springs, self._gas(right).gases(rate, gap), self.ambient)

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """Both legs at one gap."""
        return self.end_of_gaps(rate, preload, gap, gap)

    def end_of_gaps(self, rate: Number, preload: Number, gap_left: Number, gap_right: Number) -> End:
        """Both legs, each at its own gap."""
        motion = ForkMotion(self.rake)
        rate_left, rate_right = self.rates(rate)
        left = self.leg(rate_left, preload, gap_left)
        same = self.alike and gap_left is gap_right
        right = left if same else self.leg(rate_right, preload, gap_right, right=True)
        struts = ((left, 2.0),) if same else ((left, 1.0), (right, 1.0))
        return self.stops.fit(End(struts, motion, motion.travel(self.stroke), 2.0 * self.friction * motion.ratio(0.0)))

    def lock_gap(self, rate: Number) -> Number:
        """Gap [mm] at which the first leg locks at full travel."""
        left, right = self.rates(rate)
        if self.alike:
            return self.gas.lock_gap(left)
        return np.maximum(self.gas.lock_gap(left), self._gas(right=True).lock_gap(right))

    def _gas(self, right: bool) -> LegGas:
        return self.gas_right if right and self.gas_right is not None else self.gas

    def rates(self, rate: Number) -> tuple[Number | None, Number | None]:
        """Rates [N/mm] of the left and the right leg's spring; None for none."""
        return (rate - self.split if self.springs > 0 else None), (rate + self.split if self.springs == 2 else None)


@dataclass(frozen=True, eq=False)
class ShockAssembly:
    """A rear end of one or two shocks.

    Parameters: gas behind the rod; arrangement of its springs; motion; travel [mm], vertical; ambient [MPa]; friction [N]
    at the wheel; springs, the number of shocks; stops.
    """

    gas: Gas
    arrangement: Arrangement
    motion: Motion
    travel: Number
    ambient: Number
    friction: Number
    springs: int = 1
    stops: Stops = Stops()

    def paired(self, split: Number) -> ShockAssembly:
        """Shocks are alike."""
        del split
        return self

    def pumped(self, air: Pumped | None) -> ShockAssembly:
        """Shocks are not pumped here."""
        del air
        return self

    def end(self, rate: Number, preload: Number, gap: Number) -> End:
        """The rear end; a shock has no gap to set."""
        del gap
        shock = Strut(self.arrangement.springs(rate, preload), (self.gas,), self.ambient)
        return self.stops.fit(End(((shock, float(self.springs)),), self.motion, self.travel, self.friction))

    def lock_gap(self, rate: Number) -> Number:
        """No gap to set, so none that locks."""
        return -np.inf + 0.0 * np.asarray(rate)
