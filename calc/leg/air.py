"""An air leg: a main chamber on a piston, a balance chamber, perhaps a second volume, and the outer air."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number
from calc.gas.chamber import Chamber, Gas
from calc.gas.staged import Staged
from calc.leg.open import OpenLeg


@dataclass(frozen=True)
class AirSpring:
    """The air spring of a leg, pumped at full extension.

    Parameters: piston area [mm2]; volume [mm3] of the main chamber and pressure [MPa, absolute] in it at full extension;
    balance_area [mm2] and balance_volume [mm3] of the chamber that grows as the leg shortens, at full extension, 0 area for
    none; port [mm], the stroke at which a port makes both alike; second volume [mm3], 0 for none, with its charge [MPa,
    absolute]; heat, absolute temperature in use over that when it was pumped [-].
    Formula: P_b(s_p) = P_m(s_p), each by its own P V from there.
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
        at_port = main.pressure0 * main.volume0 / main.volume(self.port)
        grown = (self.balance_volume + self.balance_area * self.port) / self.balance_volume
        return whole, Chamber(self.balance_volume, at_port * grown, -self.balance_area, "balance chamber")


@dataclass(frozen=True)
class AirLeg:
    """A leg with an air spring in it.

    Parameters: outer, the air over its oil, which sweeps what the air spring leaves of the seal area; spring.
    Formula: swept areas add up to the seal area.
    Source: geometry.
    """

    outer: OpenLeg
    spring: AirSpring

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
