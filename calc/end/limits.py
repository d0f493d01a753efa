"""What can be built at an end: preload, gap, room in the springs, what an air spring takes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.springs.fit import Fit


@dataclass(frozen=True, eq=False)
class Limits:
    """What can be built. Lengths in mm; one that is None is not known, and what rests on it not checked.

    Parameters: preload, least and most; preload_read, which of the two the user measured: only those bind, an assumed one
    warns; gap, least and most; gap_read, as for preload; free_length, solid_length of the fitted spring; bind_margin; fit;
    second_room, what a second spring can be shortened by until its coils touch; pressure [MPa, gauge], the most an air
    spring takes; oil [mm3], the most that can come out of its chamber.
    """

    preload: tuple[float, float]
    gap: tuple[float, float] | None
    free_length: Number | None = None
    solid_length: Number | None = None
    bind_margin: float = 0.0
    fit: Fit | None = None
    second_room: Number | None = None
    pressure: float | None = None
    oil: float = 0.0
    preload_read: tuple[bool, bool] = (False, False)
    gap_read: tuple[bool, bool] = (False, False)

    def preload_between(self, rates: Number) -> tuple[Number, Number]:
        """The least and the most preload [mm] that can be built with springs of these rates: no spring is loose, and only
        limits that were measured bind; thread and spacers too, where they are known."""
        least = max(self.preload[0], 0.0) if self.preload_read[0] else 0.0
        most = self.preload[1] if self.preload_read[1] else np.inf
        if self.fit is None:
            return least, most
        low, high = self.fit.preload_between(rates)
        return np.maximum(least, low), np.minimum(most, high)
