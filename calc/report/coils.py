"""A fork leg's springs as they are drawn: length at every stroke, wire and coils; what no reading tells is worked out and named."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from calc.array import Array
from calc.job import Job
from calc.model import fitted
from calc.springs.arrangement import Arrangement, Nested, Stacked
from calc.springs.steel import GRADES

CLEAR = 1.0  # mm between a spring of unknown width and its tube, either side; our own guess, only drawn


@dataclass(frozen=True, eq=False)
class Coil:
    """A spring at its strokes: top and bottom [mm under the rim]; wire, mean diameter [mm] and coils; what of it is assumed."""

    name: str
    top: Array
    bottom: Array
    wire: float
    mean: float
    coils: float
    assumed: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Springs:
    """The springs of one leg.

    Parameters: job; arrangement; rate [N/mm] of the main spring and its steel [mm3]; preload [mm]; bore [mm] around it; strokes
    [mm] at which it is drawn.
    """

    job: Job
    arrangement: Arrangement
    rate: float
    steel: float
    preload: float
    bore: float
    strokes: Array

    @cached_property
    def length(self) -> Array:
        """Length [mm] at every stroke, of a stacked second spring with it."""
        stacked = isinstance(self.arrangement, Stacked)
        return self._free + (self._second_free if stacked else 0.0) - self._shortened

    def coils(self, top: Array) -> tuple[Coil, ...]:
        """The main spring under a seat [mm under the rim], and a second one under it or in it."""
        wire, mean, count, guessed = self._wire()
        known = () if self.job.entered("front.free_length") else ("length",)
        length = self._free - np.asarray(self.arrangement.main_shortened(self.rate, self._shortened))
        bottom = top + np.maximum(length, 0.0)  # what has no length left is told among the stops
        main = Coil("spring", top, bottom, wire, mean, count, (*known, *guessed))
        if not isinstance(self.arrangement, Stacked | Nested):
            return (main,)
        nested = isinstance(self.arrangement, Nested)
        second = self._second_free - np.asarray(self.arrangement.second_shortened(self.rate, self._shortened))
        foot = bottom if nested else bottom + second
        turns = max(4.0, count * float(self._second_free) / self._free)
        wide = 0.7 * mean if nested else mean
        return main, Coil("second spring", foot - second, foot, wire, wide, turns, ("coils", "wire", "width"))

    @cached_property
    def _free(self) -> float:
        return self.job.number("front.free_length")

    @cached_property
    def _shortened(self) -> Array:
        return np.asarray(np.maximum(self.preload + self.strokes, 0.0))

    @cached_property
    def _second_free(self) -> float:
        if self.job.known("front.second_free"):
            return self.job.number("front.second_free")
        if isinstance(self.arrangement, Nested):
            return self._free - self.job.number("front.second_later")
        return 1.5 * self.job.number("front.second_room")

    def _wire(self) -> tuple[float, float, float, tuple[str, ...]]:
        """Wire, mean diameter [mm], coils: measured, or what a spring of this rate and steel in this bore must have."""
        if fitted.by_wire(self.job, "front"):
            ratio = self.rate / float(np.asarray(fitted.rate(self.job, "front")))
            mean = self.job.number("front.coil_diameter") - self.job.number("front.wire")
            wire = self.job.number("front.wire") * ratio**0.25
            return wire, mean, self.job.number("front.coils"), () if abs(ratio - 1.0) < 1e-6 else ("wire",)
        modulus, widest, wire = GRADES["oil-tempered"].shear_modulus, self.bore - 2.0 * CLEAR, 5.0
        for _ in range(4):
            # k = G d^4 / (8 D^3 N) and steel = (pi d / 2)^2 D N, with N taken out
            wire = (32.0 * self.steel * (widest - wire) ** 2 * self.rate / (modulus * np.pi**2)) ** (1.0 / 6.0)
        mean = widest - wire
        return float(wire), float(mean), float(4.0 * self.steel / (np.pi**2 * wire**2 * mean)), ("wire", "coils", "width")
