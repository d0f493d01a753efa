"""Unit to internal unit as a straight line, internal = slope x unit + offset. Data only, held to pint by a test.

Written down because pint takes as long to load as the rest of the core: it is asked for a unit that has no line here.
Source: NIST SP 811, exact definitions; +/- 0 but for the last place of the two that are worked out.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

POUND = 0.45359237  # [kg]
STANDARD_GRAVITY = 9.80665  # [m/s²]
INCH = 25.4  # [mm]
_POUND_FORCE = POUND * STANDARD_GRAVITY  # [N]

LINES: Mapping[str, tuple[float, float]] = {
    "mm": (1.0, 0.0), "cm": (10.0, 0.0), "m": (1e3, 0.0), "km": (1e6, 0.0), "in": (INCH, 0.0), "ft": (12.0 * INCH, 0.0),
    "kg": (1.0, 0.0), "g": (1e-3, 0.0), "lb": (POUND, 0.0), "st": (14.0 * POUND, 0.0),
    "N/mm": (1.0, 0.0), "kgf/mm": (STANDARD_GRAVITY, 0.0), "lbf/in": (_POUND_FORCE / INCH, 0.0), "N/m": (1e-3, 0.0),
    "N/cm": (0.1, 0.0),
    "N": (1.0, 0.0), "kN": (1e3, 0.0), "kgf": (STANDARD_GRAVITY, 0.0), "lbf": (_POUND_FORCE, 0.0),
    "N mm": (1.0, 0.0), "J": (1e3, 0.0),
    "mm3": (1.0, 0.0), "ml": (1e3, 0.0), "l": (1e6, 0.0), "US fl oz": (29573.5295625, 0.0), "imp fl oz": (28413.0625, 0.0),
    "MPa": (1.0, 0.0), "bar": (0.1, 0.0), "psi": (_POUND_FORCE / INCH**2, 0.0), "hPa": (1e-4, 0.0), "kPa": (1e-3, 0.0),
    "Pa": (1e-6, 0.0), "atm": (0.101325, 0.0), "GPa": (1e3, 0.0),
    "rad": (1.0, 0.0), "°": (math.pi / 180.0, 0.0),
    "K": (1.0, 0.0), "°C": (1.0, 273.15), "°F": (5.0 / 9.0, 459.67 * 5.0 / 9.0),
    "1": (1.0, 0.0), "%": (0.01, 0.0), "": (1.0, 0.0),
    "mm²/s": (1.0, 0.0), "cSt": (1.0, 0.0), "kg/m³": (1.0, 0.0), "g/ml": (1e3, 0.0),
    "Hz": (1.0, 0.0), "m/s²": (1.0, 0.0), "G": (STANDARD_GRAVITY, 0.0), "m/s": (1e3, 0.0), "mm/s": (1.0, 0.0), "in/s": (INCH, 0.0),
    "s": (1.0, 0.0), "h": (3600.0, 0.0),
}  # fmt: skip
