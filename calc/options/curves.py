"""Whether two setups push back alike: their force curves side by side, worked out and not read off what was entered."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.end.figures import Figures
from calc.gas.chamber import ISOTHERMAL

POINTS = 121
SAME = 0.02  # of the force: springs of one marking differ by 3 %; a judgement, common practice, no source


@dataclass(frozen=True)
class Apart:
    """The most that two force curves differ by [N, at the wheel], where [mm of wheel travel]; whether they count as the same."""

    force: float
    travel: float
    same: bool


def curves_apart(one: Figures, other: Figures, load: float) -> Apart:
    """Compare two setups of one end by their force over the travel.

    Parameters: one, other, figures of scalars; load [N], sprung, rider aboard.
    Returns: Apart.
    Raises: nothing.
    Formula: with F settled (n = 1) and ridden (working n about each one's rider sag), at 121 places from hanging to where the first
    is at full travel: the same where |F2 - F1| <= 2 % of F1, or of the rider load where that is more, at every place.
    Source: the limit is a judgement, common practice, no source.
    Example: see `tests/unit/options/test_option_curves.py`.
    """
    travel = np.linspace(0.0, float(min(one.end.travel, other.end.travel)), POINTS)
    gaps, limits = [], []
    for first, second in ((ISOTHERMAL, ISOTHERMAL), (one.process, other.process)):
        force = np.asarray(one.end.wheel_force(travel, first))
        gaps.append(np.abs(np.asarray(other.end.wheel_force(travel, second)) - force))
        limits.append(SAME * np.maximum(np.abs(force), load))
    apart, allowed = np.asarray(gaps), np.asarray(limits)
    most = int(np.argmax(apart.max(axis=0)))
    return Apart(float(apart.max()), float(travel[most]), bool(np.all(apart <= allowed)))
