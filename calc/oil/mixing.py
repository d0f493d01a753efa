"""Two oils in one tin."""

from __future__ import annotations

import numpy as np

from calc.array import Number, some
from calc.impossible import Impossible
from calc.oil.viscosity import ViscosityLine


def mixed(one: ViscosityLine, other: ViscosityLine, share: Number) -> ViscosityLine:
    """The line of a mix, an estimate.

    Parameters: one, other, the oils; share [-], of the other by volume, 0 to 1; any shape.
    Returns: ViscosityLine.
    Raises: Impossible for a share outside 0 to 1.
    Formula: W = (1 - x) W1 + x W2 at each temperature, W = log10 log10 Z; both being straight over log T, so is the mix.
    Source: ASTM D7152-11, the ASTM blending method, by volume. The standard calls it an estimate, and says that it may not apply
    to oils with viscosity index improvers, which suspension oils often have.
    Example:
        >>> from calc.oil.viscosity import line_through
        >>> thin, thick = line_through(15.0, 3.6), line_through(46.0, 8.0)
        >>> round(float(mixed(thin, thick, 0.5).at(313.15)), 1)
        25.2
    """
    if some(~((np.asarray(share) >= 0) & (np.asarray(share) <= 1))):
        raise Impossible("no-mix", "The second oil's share lies outside 0 to 100 % of the mix.", "Enter its part of the whole.")
    return ViscosityLine(
        (1.0 - share) * one.level + share * other.level,
        (1.0 - share) * one.slope + share * other.slope,
    )
