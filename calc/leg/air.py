"""An air leg: a main chamber on a piston, a balance chamber, perhaps a second volume, and the outer air."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.gas.chamber import Chamber, Gas
from calc.gas.staged import Staged
from calc.leg.open import OpenLeg


@dataclass(frozen=True, eq=False)
class Pumped:
    """How an air spring is set. Pressures are gauge, cold, as the pump shows them with its hose still on.

    Parameters: pressure [MPa] of the main chamber; oil [mm3] put into it against as found, below 0 taken out, spacers alike;
    second [MPa], the second volume's. None leaves it as found.
    """

    pressure: Number
    oil: Number | None = None
    second: Number | None = None

    def at(self, index: int) -> Pumped:
        """One candidate of many."""

        def pick(part: Number | None) -> float | None:
            return None if part is None else float(np.asarray(part)[index] if np.ndim(part) else part)

        pressure = pick(self.pressure)
        assert pressure is not None
        return Pumped(pressure, pick(self.oil), pick(self.second))


@dataclass(frozen=True, eq=False)
class AirSpring:
    """The air spring of a leg, pumped at full extension.

    Parameters: piston area [mm2]; volume [mm3] of the main chamber and pressure [MPa, absolute] in it at full extension;
    balance_area [mm2] and balance_volume [mm3] of the chamber that grows as the leg shortens, at full extension, 0 area for
    none; port [mm], the stroke at which a port makes both alike; second volume [mm3], 0 for none, with its charge [MPa,
    absolute]; heat, absolute temperature in use over that when it was pumped [-]; balance_pressure [MPa, absolute], that
    chamber's own charge at full extension where it has a valve and no port.
    Formula: with a port P_b(s_p) = P_m(s_p), each by its own P V from there.
    Source: Boyle's law; ideal gas.
    Example:
        >>> spring = AirSpring(615.8, 280e3, 1.1, 500.0, 20e3, 8.0)
        >>> main, balance = spring.gases()
        >>> round(float(balance.pressure0), 3)
        1.344
    """

    piston: Number
    volume: Number
    pressure: Number
    balance_area: Number = 0.0
    balance_volume: Number = 1.0
    port: Number = 0.0
    second: Number = 0.0
    charge: Number = 0.0
    heat: Number = 1.0
    balance_pressure: Number | None = None

    @property
    def swept(self) -> Number:
        """Area [mm2] swept by both chambers together."""
        return self.piston - self.balance_area

    def gases(self) -> tuple[Gas, ...]:
        """Main, with the second volume if any, and balance chamber."""
        main = Chamber(self.volume, self.pressure * self.heat, self.piston, "main chamber")
        whole: Gas = Staged(main, self.second, self.charge * self.heat) if np.any(np.asarray(self.second) > 0) else main
        if not np.any(np.asarray(self.balance_area) > 0):
            return (whole,)
        return whole, Chamber(self.balance_volume, self._balanced(main), -self.balance_area, "balance chamber")

    def _balanced(self, main: Chamber) -> Number:
        """Pressure [MPa, absolute] in the balance chamber at full extension, in use."""
        if self.balance_pressure is not None:
            return self.balance_pressure * self.heat
        at_port = main.pressure0 * main.volume0 / main.volume(self.port)
        return at_port * (self.balance_volume + self.balance_area * self.port) / self.balance_volume


@dataclass(frozen=True, eq=False)
class AirLeg:
    """A leg with an air spring in it.

    Parameters: outer, the air over its oil, which sweeps what the air spring leaves of the seal area; spring; charged [MPa],
    ambient pressure where it is pumped; lost [MPa], what the pump's hose takes with it.
    Formula: swept areas add up to the seal area.
    Source: geometry.
    """

    outer: OpenLeg
    spring: AirSpring
    charged: Number = 0.0
    lost: Number = 0.0

    def pumped(self, to: Pumped) -> AirLeg:
        """The same leg, set otherwise."""
        spring = replace(self.spring, pressure=to.pressure - self.lost + self.charged)
        if to.oil is not None:
            spring = replace(spring, volume=spring.volume - to.oil)
        if to.second is not None:
            spring = replace(spring, charge=to.second + self.charged)
        return replace(self, spring=spring)

    @property
    def oil_locks(self) -> Number:
        """Oil [mm3] more than as found that uses up the air spring's gas exactly at full travel, or its main chamber's."""
        over = self.spring.second - self.spring.piston * self.outer.stroke
        return self.spring.volume + np.minimum(over, 0.0)

    def gases(self, rate: Number | None, gap: Number) -> tuple[Gas, ...]:
        """Outer air and the air spring's chambers."""
        return (*self.outer.gases(rate, gap), *self.spring.gases())

    def lock_gap(self, rate: Number | None) -> Number:
        """Gap [mm] at which the outer air is used up exactly at full travel."""
        return self.outer.lock_gap(rate)

    def oil_to_add(self, found_rate: Number | None, found_gap: Number, rate: Number | None, gap: Number) -> Number:
        """Oil [mm3] to add, below 0 to take out."""
        return self.outer.oil_to_add(found_rate, found_gap, rate, gap)

    def other_gap(self, rate: Number, gap: Number) -> Array:
        """The same gap [mm] read in the other convention."""
        return self.outer.other_gap(rate, gap)
