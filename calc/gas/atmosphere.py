"""Ambient pressure from altitude."""

from __future__ import annotations

import numpy as np

from calc.array import Number, some

SEA_LEVEL_PRESSURE = 0.101325  # MPa, exact, ISO 2533:1975
SEA_LEVEL_TEMPERATURE = 288.15  # K, exact, ISO 2533:1975
LAPSE_RATE = 6.5e-6  # K per mm of geopotential height, exact, ISO 2533:1975
GAS_CONSTANT = 287.05287  # J/(kg K), dry air, ISO 2533:1975
STANDARD_GRAVITY = 9.80665  # N/kg, exact, ISO 2533:1975 and the SI


def pressure_at(altitude: Number) -> Number:
    """Ambient pressure of the standard atmosphere.

    Parameters: altitude [mm], geopotential height, -2 000 000 to 11 000 000; any shape.
    Returns: pressure [MPa], absolute.
    Raises: ValueError outside the troposphere.
    Formula: p = p0 (1 - L h / T0)^(g / (R L)).
    Source: ISO 2533:1975, section 2.
    Example:
        >>> round(float(pressure_at(1_000_000.0)) * 1e6, 1)
        89874.6
    """
    if some((np.asarray(altitude) < -2e6) | (np.asarray(altitude) > 11e6)):
        raise ValueError("altitude must lie between -2000 and 11000 m")
    exponent = STANDARD_GRAVITY / (GAS_CONSTANT * LAPSE_RATE * 1e3)
    return SEA_LEVEL_PRESSURE * (1.0 - LAPSE_RATE * altitude / SEA_LEVEL_TEMPERATURE) ** exponent
