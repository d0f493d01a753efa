"""Viscosity index: how little an oil thins as it warms, on the standard's own scale."""

from __future__ import annotations

import numpy as np

from calc.array import Number, some
from calc.impossible import Impossible

LEAST = 2.0  # mm2/s at 100 deg C: below it the index is not defined; ASTM D2270-10, 1.2

# Viscosity at 40 deg C of the two reference oils that match at 100 deg C (Y): up to Y, L = a Y² + b Y + c, H = d Y² + e Y + f.
# ASTM D2270-10, Appendix X2, from memory: they give its Table 1 to 0.12 %, which a test holds row by row.
_REFERENCES = np.array([
    (3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077),
    (4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183),
    (5.0, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119),
    (6.4, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557),
    (7.0, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656),
    (7.7, 0.01191, 21.475, -72.870, 0.79762, -0.7321, 14.61),
    (9.0, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240),
    (12.0, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81),
    (15.0, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49),
    (18.0, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93),
    (22.0, 0.97256, 5.25, -0.98, 0.24504, 7.4160, -16.73),
    (28.0, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23),
    (40.0, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75),
    (55.0, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62),
    (70.0, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94),
    (np.inf, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947),
])  # fmt: skip


def viscosity_index(at_40: Number, at_100: Number) -> Number:
    """Viscosity index of an oil.

    Parameters: at_40, at_100 [mm2/s], kinematic viscosity at 40 and at 100 °C; at_100 2 or more, and below at_40; any shape.
    Returns: index [-]; below 0 where the oil thins more than the lower reference oil.
    Raises: Impossible where it is not defined: thinner than 2 mm2/s at 100 °C, or no thinner there than at 40 °C.
    Formula: up to 100 (procedure A) 100 (L - U) / (L - H); above (procedure B) 100 + (10^N - 1) / 0.00715,
    N = log10(H / U) / log10(Y); U at 40 °C, Y at 100 °C, L and H of the reference oils.
    Source: ASTM D2270-10.
    Example:
        >>> round(float(viscosity_index(73.30, 8.86))), round(float(viscosity_index(22.83, 5.05)))
        (92, 156)
    """
    u, y = np.asarray(at_40, dtype=float), np.asarray(at_100, dtype=float)
    if some(~(y >= LEAST)):
        raise Impossible(
            "no-index",
            f"A viscosity index is defined from {LEAST:.0f} mm²/s at 100 °C on, and this oil has less.",
            "Compare such oils by their viscosity at two temperatures.",
        )
    if some(~(y < u)):
        raise Impossible(
            "thicker-hot",
            "The oil is stated to be no thinner at 100 °C than at 40 °C: no oil is.",
            "Check that the two are not changed round.",
        )
    a, b, c, d, e, f = _REFERENCES[np.searchsorted(_REFERENCES[:, 0], y)][..., 1:].T
    low, high = a * y**2 + b * y + c, d * y**2 + e * y + f
    steep = 100.0 * (low - u) / (low - high)
    flat = 100.0 + (10.0 ** (np.log10(high / u) / np.log10(y)) - 1.0) / 0.00715
    index: Number = np.where(u >= high, steep, flat)[()]
    return index
