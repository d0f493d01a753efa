"""Gas that is warmer or colder than when it was closed in: oil and tube grow, the pressure follows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.gas.chamber import Chamber
from calc.impossible import Impossible

OIL_EXPANSION = 7.0e-4  # 1/K by volume, mineral oil; M. G. Rabie, Fluid Power Engineering, 2009, p. 37
# 1/K by length; CRC Handbook of Chemistry and Physics, aluminium 23.1e-6 and iron 11.8e-6 at 25 deg C; from memory.
TUBE_EXPANSION: Mapping[str, float] = {"aluminium": 23.1e-6, "steel": 11.8e-6}


@dataclass(frozen=True, eq=False)
class Warmth:
    """Temperatures that a space has seen.

    Parameters: read [K], when its volume was read; closed [K], when its gas was closed in (bled or charged); now [K], in
    use; oil [mm3] that shares the tube with the gas, at `read`; tube, the metal's expansion [1/K] by length.
    """

    read: Number
    closed: Number
    now: Number
    oil: Number
    tube: Number

    def volume(self, volume: Number, temperature: Number) -> Number:
        """Gas volume [mm3] at a temperature [K] of a space that was read as `volume` [mm3].

        Raises Impossible where the oil has grown into all of it.
        """
        rise = temperature - self.read
        left = volume - (OIL_EXPANSION - 3.0 * self.tube) * self.oil * rise + 3.0 * self.tube * volume * rise
        if np.any(np.asarray(left) <= 0):
            raise Impossible(
                "no-gas",
                f"At {np.max(temperature) - 273.15:.0f} °C the oil has grown into all of the gas.",
                "Enter a larger gap, less oil, or check the temperatures.",
                "place.ridden_temperature",
            )
        return left

    def factor(self) -> Number:
        """Volume now over volume read [-] of a space without oil: the tube's growth."""
        return 1.0 + 3.0 * self.tube * (self.now - self.read)

    def oil_growth(self) -> Number:
        """What the oil takes from the gas [mm3], now against when it was read."""
        return (OIL_EXPANSION - 3.0 * self.tube) * self.oil * (self.now - self.read)


def warmed(cold: Chamber, warmth: Warmth, closed_in: Number, stroke: Number = 0.0) -> Chamber:
    """A chamber at its temperature in use.

    Parameters: cold, the chamber by its volume as read; warmth; closed_in [MPa], absolute pressure at which the gas was
    closed in, at a stroke [mm].
    Returns: Chamber of the same swept area.
    Raises: Impossible where no gas is left at either temperature, or at the stroke.
    Formula: V = V0 - (beta - 3 alpha) V_oil dT + 3 alpha V0 dT; P0' = P0 (T'/T) (V0/V), V0 and T as closed in.
    Source: ideal gas; volume expansion of oil and tube.
    Example:
        >>> leg = warmed(Chamber(700e3, 0.1, 1800.0), Warmth(293.15, 293.15, 333.15, 600e3, 23.1e-6), 0.1)
        >>> round(float(leg.volume0)), round(float(leg.pressure0), 5)
        (686804, 0.11583)
    """
    closed = Chamber(warmth.volume(cold.volume0, warmth.closed), closed_in, cold.area, cold.name)
    pressure0 = closed_in * closed.volume(stroke) / closed.volume0
    volume0 = warmth.volume(cold.volume0, warmth.now)
    return Chamber(volume0, pressure0 * warmth.now / warmth.closed * closed.volume0 / volume0, cold.area, cold.name)
