"""Density of a lubricating oil over its temperature."""

from __future__ import annotations

import numpy as np

from calc.array import Number, some
from calc.impossible import Impossible

STATED_AT = 288.15  # K: 15 deg C, at which a sheet states it
LIGHTEST, HEAVIEST = 800.0, 1164.0  # kg/m3 at 15 deg C, lubricants; ASTM D1250, table 53D, from memory
_K = 0.6278  # kg/m3 per K, lubricants


def density_at(density: Number, temperature: Number) -> Number:
    """Density of a lubricating oil that is warmer or colder than its sheet states it.

    Parameters: density [kg/m3] at 15 °C, 800 to 1164; temperature [K]; any shapes that broadcast.
    Returns: density [kg/m3].
    Raises: Impossible for a density outside the table for lubricants.
    Formula: rho = rho15 exp(-alpha dt (1 + 0.8 alpha dt)), alpha = 0.6278 / rho15, dt from 15 °C.
    Source: ASTM D1250, lubricating oils.
    Example:
        >>> round(float(density_at(870.0, 313.15)) / 870.0, 5)
        0.98187
    """
    if some(~((np.asarray(density) >= LIGHTEST) & (np.asarray(density) <= HEAVIEST))):
        raise Impossible(
            "no-lubricant",
            f"The density at 15 °C lies outside {LIGHTEST:.0f} to {HEAVIEST:.0f} kg/m³, which the law holds for.",
            "Check it on the tin's sheet.",
            "oil.density",
        )
    grown = _K / density * (temperature - STATED_AT)
    return density * np.exp(-grown * (1.0 + 0.8 * grown))
