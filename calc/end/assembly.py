"""Putting an end together from rate, preload and gap: the fork's two legs, the rear's shock or shocks."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np

from calc.array import Array, Number, find_root, some
from calc.end.end import End
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Gas
from calc.leg.air import AirLeg
from calc.leg.open import LegGas
from calc.motion.ratio import ForkMotion, Motion
from calc.springs.arrangement import Arrangement
from calc.springs.helical import Spring
from calc.springs.topout import TopOutSpring, held_by

MOST_PULLED_IN = 0.5  # of the stroke: a fork that hangs deeper is not pumped as any is ridden


class Assembly(Protocol):
    """What sizing needs of either end. `springs` counts the struts that carry a spring."""

    @property
    def springs(self) -> int: ...

    @property
    def arrangement(self) -> Arrangement: ...

    def end(self, setup: Setup) -> End: ...

    def lock_gap(self, setup: Setup) -> Number: ...


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
            pushing = sum((count * strut.force(0.0, ISOTHERMAL) for strut, count in struts), 0.0)
            held = held_by(pushing, self.hanging / end.motion.ratio(0.0)) / sum(count for _, count in struts)
            struts = tuple((replace(s, springs=(*s.springs, TopOutSpring(self.topout, held))), count) for s, count in struts)
        if self.rubber is not None:
            struts = tuple((replace(strut, rubber=self.rubber), count) for strut, count in struts)
        return end if struts is end.struts else replace(end, struts=struts)


@dataclass(frozen=True, eq=False)
class ForkAssembly:
    """Two legs.

    Parameters: gas of a leg; arrangement of its springs; stroke [mm], from full extension to the first solid stop along the
    leg; ambient [MPa] where it is ridden; rake [rad]; friction [N] per leg; springs: 2, 1 for a spring in the left leg only, 0
    for none; stops; gas_right, the right leg's gas where it is of another kind.
    """

    gas: LegGas
    arrangement: Arrangement
    stroke: Number
    ambient: Number
    rake: Number
    friction: Number
    springs: int = 2
    stops: Stops = Stops()
    gas_right: LegGas | None = None

    def end(self, setup: Setup) -> End:
        """Both legs, built to a setup."""
        motion = ForkMotion(self.rake)
        same = self._symmetric(setup) and not some(setup.gap_split)
        left = self._leg(setup, right=False)
        struts = ((left, 2.0),) if same else ((left, 1.0), (self._leg(setup, right=True), 1.0))
        end = End(struts, motion, motion.travel(self.stroke), 2.0 * self.friction * motion.ratio(0.0))
        return self.stops.fit(self._hung(end) if isinstance(self.gas, AirLeg) else end)

    def _hung(self, end: End) -> End:
        """The same end, its zero where it hangs: a balance chamber may pull it in from full extension."""
        weight = self.stops.hanging / end.motion.ratio(0.0)

        def out(start: Number) -> Array:
            forces = (n * (s.spring_force(0.0) + s.gas_force(start, ISOTHERMAL)) for s, n in end.struts)
            return np.asarray(sum(forces, 0.0) + weight)

        at_top = out(0.0)
        if not some(at_top < 0):
            return end
        deepest = MOST_PULLED_IN * self.stroke + 0.0 * at_top
        at_deepest = out(deepest)
        hangs = (at_top < 0) & (at_deepest > 0)
        known = np.where(hangs, at_top, -1.0), np.where(hangs, at_deepest, 1.0)
        found = find_root(lambda start: np.where(hangs, out(start), start - 0.5 * deepest), 0.0 * at_top, deepest, 1e-7, known)
        start = np.where(hangs, found, np.where(at_top < 0, deepest, 0.0))
        struts = tuple((replace(strut, start=start), count) for strut, count in end.struts)
        return replace(
            end, struts=struts, travel=end.motion.travel(self.stroke - start), pulled_in=(at_top < 0) & (at_deepest <= 0)
        )

    def lock_gap(self, setup: Setup) -> Number:
        """Gap [mm] at which the first leg locks at full travel; the setup's own gap is not asked."""
        left, right = self.rates(setup)
        if self._symmetric(setup):
            return self.gas.lock_gap(left)
        return np.maximum(self.gas.lock_gap(left), self._gas(right=True).lock_gap(right))

    def rates(self, setup: Setup) -> tuple[Number | None, Number | None]:
        """Rates [N/mm] of the left and the right leg's spring; None for none."""
        left, right = setup.rates
        return (left if self.springs > 0 else None), (right if self.springs == 2 else None)

    def _leg(self, setup: Setup, right: bool) -> Strut:
        rate, gap = self.rates(setup)[right], setup.gaps[right]
        springs = () if rate is None else self.arrangement.springs(rate, setup.preload)
        gas = self._gas(right)
        if setup.air is not None and isinstance(gas, AirLeg):
            gas = gas.pumped(setup.air)
        return Strut(springs, gas.gases(rate, gap), self.ambient)

    def _symmetric(self, setup: Setup) -> bool:
        """True where both legs carry the same spring and gas."""
        return self.springs != 1 and not some(setup.split) and self.gas_right is None

    def _gas(self, right: bool) -> LegGas:
        return self.gas_right if right and self.gas_right is not None else self.gas


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

    def end(self, setup: Setup) -> End:
        """The rear end; a shock has no gap to set, and shocks are alike."""
        shock = Strut(self.arrangement.springs(setup.rate, setup.preload), (self.gas,), self.ambient)
        return self.stops.fit(End(((shock, float(self.springs)),), self.motion, self.travel, self.friction))

    def lock_gap(self, setup: Setup) -> Number:
        """No gap to set, so none that locks."""
        return -np.inf + 0.0 * np.asarray(setup.rate)
