"""A strut: a fork leg or a shock. Force against its stroke from springs and gas."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number, added
from calc.gas.chamber import Gas, Process
from calc.springs.helical import Spring


@dataclass(frozen=True, eq=False)
class Strut:
    """A fork leg or a shock.

    Parameters: springs (a top-out spring among them) and gases, any number of each; ambient [MPa] where it is ridden;
    rubber, the bump rubber, which is in no force or energy but its own; start [mm], how far from full extension it hangs: zero
    stroke is there, preloads are read there, but gas and rubber are told from full extension.
    Formula: F(s) = sum of the springs + sum of (P - ambient) a, gas at s + start.
    Source: statics.
    """

    springs: tuple[Spring, ...]
    gases: tuple[Gas, ...]
    ambient: Number
    rubber: Spring | None = None
    start: Number = 0.0

    def _deep(self, stroke: Number, process: Process) -> tuple[Number, Process]:
        """A stroke from hanging and a process as the gas sees them, from full extension."""
        return stroke + self.start, Process(process.exponent, process.settled + self.start, process.waits)

    def spring_force(self, stroke: Number) -> Number:
        """Force [N] of the springs alone at a stroke [mm]."""
        return added((s.force(stroke) for s in self.springs), stroke)

    def gas_force(self, stroke: Number, process: Process) -> Number:
        """Force [N] of the gas alone at a stroke [mm]."""
        deep, then = self._deep(stroke, process)
        return added((g.force(deep, self.ambient, then) for g in self.gases), stroke)

    def force(self, stroke: Number, process: Process) -> Number:
        """Force [N] at a stroke [mm]."""
        return self.spring_force(stroke) + self.gas_force(stroke, process)

    def rate_at(self, stroke: Number, process: Process) -> Number:
        """Rate [N/mm] at a stroke [mm], springs and gas."""
        deep, then = self._deep(stroke, process)
        gas = added((g.rate_at(deep, self.ambient, then) for g in self.gases), stroke)
        return gas + added((s.rate_at(stroke) for s in self.springs), stroke)

    def energy(self, stroke: Number, process: Process) -> Number:
        """Energy [N mm] from hanging to a stroke [mm], springs and gas."""
        deep, then = self._deep(stroke, process)
        start = self.start + 0.0 * np.asarray(deep)
        gas = added((g.energy(deep, self.ambient, then) - g.energy(start, self.ambient, then) for g in self.gases), stroke)
        return gas + added((s.energy(stroke) for s in self.springs), stroke)

    def rubber_force(self, stroke: Number) -> Number:
        """Force [N] of the bump rubber at a stroke [mm], left out of `force`."""
        return 0.0 * np.asarray(stroke) if self.rubber is None else self.rubber.force(stroke + self.start)

    def rubber_energy(self, stroke: Number) -> Number:
        """Energy [N mm] that the bump rubber takes up to a stroke [mm], left out of `energy`."""
        return 0.0 * np.asarray(stroke) if self.rubber is None else self.rubber.energy(stroke + self.start)
