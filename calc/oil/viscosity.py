"""Viscosity of an oil over its temperature: the straight line through the two points of a tin's sheet.

Ours because the library that has it brings 70 MB of substances along, and the page has to be small.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number, some
from calc.impossible import Impossible

COLD, HOT = 313.15, 373.15  # K: 40 and 100 deg C, at which a sheet states it
THINNEST, THICKEST = 0.21, 2e7  # mm2/s, as far as the equations and charts of ASTM D341-09 go, from memory
COLDEST, HOTTEST = 203.15, 643.15  # K: -70 to 370 deg C, its charts, from memory


@dataclass(frozen=True, eq=False)
class ViscosityLine:
    """An oil's line of log log Z over log T.

    Parameters: level [-], log10 log10 Z at 1 K; slope [-], how steeply it falls.
    """

    level: Number
    slope: Number

    def at(self, temperature: Number) -> Number:
        """Kinematic viscosity [mm2/s] at a temperature [K].

        Raises Impossible outside the charts, and where the oil would be thinner or thicker than they go.
        """
        if some(~((np.asarray(temperature) >= COLDEST) & (np.asarray(temperature) <= HOTTEST))):
            raise Impossible(
                "beyond-charts",
                f"An oil's line goes from {COLDEST - 273.15:.0f} to {HOTTEST - 273.15:.0f} °C.",
                "Check the temperature.",
            )
        w = self.level - self.slope * np.log10(temperature)
        return _viscosity(w)


def line_through(at_40: Number, at_100: Number) -> ViscosityLine:
    """The line through the two points of a sheet.

    Parameters: at_40, at_100 [mm2/s], kinematic viscosity at 40 and at 100 °C, 0.21 to 20 000 000; any shape.
    Returns: ViscosityLine.
    Raises: Impossible outside these limits, and where the oil is not thinner at 100 °C.
    Formula: log10 log10 Z = A - B log10 T, Z = nu + 0.7 + exp(-1.47 - 1.84 nu - 0.51 nu²).
    Source: ASTM D341-09, equations 1 and 2. It holds where the oil is all liquid: above the cloud point.
    Example:
        >>> round(float(line_through(32.0, 5.4).at(353.15)), 2)
        8.53
    """
    for name, nu in (("40", at_40), ("100", at_100)):
        if some(~((np.asarray(nu) >= THINNEST) & (np.asarray(nu) <= THICKEST))):
            raise Impossible(
                "beyond-charts",
                f"The viscosity at {name} °C lies outside {THINNEST} to {THICKEST / 1e6:.0f} million mm²/s, where the law ends.",
                "Check it on the tin's sheet.",
            )
    if some(np.asarray(at_100) >= np.asarray(at_40)):
        raise Impossible(
            "thicker-hot",
            "The oil is stated to be no thinner at 100 °C than at 40 °C: no oil is.",
            "Check that the two are not changed round.",
        )
    w_40, w_100 = double_log(at_40), double_log(at_100)
    slope = (w_40 - w_100) / np.log10(HOT / COLD)
    return ViscosityLine(w_40 + slope * np.log10(COLD), slope)


def double_log(viscosity: Number) -> Number:
    """The scale on which oils are straight over temperature and add up by volume.

    Parameters: viscosity [mm2/s], kinematic, 0.21 or more; any shape.
    Returns: log10 log10 Z [-].
    Raises: nothing.
    Formula: Z = nu + 0.7 + exp(-1.47 - 1.84 nu - 0.51 nu²).
    Source: ASTM D341-09, equation 2.
    Example:
        >>> round(float(double_log(32.0)), 5)
        0.18028
    """
    z = viscosity + 0.7 + np.exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity**2)
    return np.log10(np.log10(z))


def _viscosity(w: Number) -> Number:
    """The way back [mm2/s], equation 3 of the same; its fit is good to 0.1 %."""
    most = double_log(THICKEST)
    above = 10.0 ** (10.0 ** np.minimum(w, most + 0.01)) - 0.7
    # The cubic is a fit for thin oils and takes nothing off the others.
    thin = np.minimum(above, 10.0)
    nu = above - np.exp(-0.7487 - 3.295 * thin + 0.6119 * thin**2 - 0.3193 * thin**3)
    if some(~((nu >= THINNEST) & (nu <= THICKEST))):
        thick = some(nu > THICKEST)
        raise Impossible(
            "beyond-charts",
            f"There the oil would be {'thicker' if thick else 'thinner'} than the law goes: "
            f"{f'{THICKEST / 1e6:.0f} million' if thick else THINNEST} mm²/s.",
            "Check both viscosities on the tin's sheet.",
        )
    return nu
