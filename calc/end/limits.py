"""What can be built at an end: preload, gap, room in the springs, what an air spring takes."""

from __future__ import annotations

from dataclasses import dataclass

from calc.array import Number
from calc.springs.fit import Fit


@dataclass(frozen=True, eq=False)
class Limits:
    """What can be built. Lengths in mm; one that is None is not known, and what rests on it not checked. Free-sag window in
    the sag's own measure. `second_room` is what a second spring can be shortened by until its coils touch; `pressure` [MPa,
    gauge] the most an air spring takes; `oil` [mm3] the most that can come out of its chamber.
    """

    preload: tuple[float, float]
    gap: tuple[float, float] | None
    free_sag: tuple[float, float] | None
    free_length: Number | None = None
    solid_length: Number | None = None
    bind_margin: float = 0.0
    fit: Fit | None = None
    second_room: Number | None = None
    pressure: float | None = None
    oil: float = 0.0
