"""A finished setup of an end, both legs: one value, taken whole by an assembly."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Number
from calc.leg.air import Pumped


@dataclass(frozen=True, eq=False)
class Setup:
    """A finished setup of an end.

    Parameters: rate [N/mm], the mean of both legs; preload [mm]; gap [mm], the mean of both legs, 0 where the strut has none;
    split [N/mm], how much the right leg's rate is above the mean, and the left one's below it; gap_split [mm], the same of
    the gaps; air, how an air spring is set, None where there is none or it stays as it is.
    """

    rate: Number
    preload: Number
    gap: Number
    split: Number = 0.0
    air: Pumped | None = None
    gap_split: Number = 0.0

    @property
    def stepped(self) -> Number:
        """What candidates step through: an air spring's pressure [MPa, gauge], else the rate [N/mm]."""
        return self.rate if self.air is None else self.air.pressure

    @property
    def rates(self) -> tuple[Number, Number]:
        """Rates [N/mm] of the left and the right leg."""
        return self.rate - self.split, self.rate + self.split

    @property
    def gaps(self) -> tuple[Number, Number]:
        """Gaps [mm] of the left and the right leg."""
        return self.gap - self.gap_split, self.gap + self.gap_split

    def at(self, index: int) -> Setup:
        """One candidate of many."""
        parts = (np.asarray(part) for part in (self.rate, self.preload, self.gap, self.split))
        rate, preload, gap, split = (float(part[index] if part.ndim else part) for part in parts)
        return replace(self, rate=rate, preload=preload, gap=gap, split=split, air=None if self.air is None else self.air.at(index))
