"""A strut: a fork leg or a shock. Force against its stroke from springs and gas."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.gas.chamber import Gas, Process
from calc.springs.helical import Spring


@dataclass(frozen=True, eq=False)
class Strut:
    """A fork leg or a shock.

    Parameters: springs (a top-out spring among them) and gases, any number of each; ambient [MPa] where it is ridden;
    rubber, the bump rubber, which is in no force or energy but its own.
    Formula: F(s) = sum of the springs + sum of (P - ambient) a.
    Source: statics.
    """

    springs: tuple[Spring, ...]
    gases: tuple[Gas, ...]
    ambient: Number
    rubber: Spring | None = None

    def spring_force(self, stroke: Number) -> Number:
        """Force [N] of the springs alone at a stroke [mm]."""
        return sum((s.force(stroke) for s in self.springs), 0.0 * np.asarray(stroke))

    def gas_force(self, stroke: Number, process: Process) -> Number:
        """Force [N] of the gas alone at a stroke [mm]."""
        return sum((g.force(stroke, self.ambient, process) for g in self.gases), 0.0 * np.asarray(stroke))

    def force(self, stroke: Number, process: Process) -> Number:
        """Force [N] at a stroke [mm]."""
        return self.spring_force(stroke) + self.gas_force(stroke, process)

    def rate_at(self, stroke: Number, process: Process) -> Number:
        """Rate [N/mm] at a stroke [mm], springs and gas."""
        gas = sum((g.rate_at(stroke, self.ambient, process) for g in self.gases), 0.0 * np.asarray(stroke))
        return gas + sum((s.rate_at(stroke) for s in self.springs), 0.0 * np.asarray(stroke))

    def energy(self, stroke: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm], springs and gas."""
        gas = sum((g.energy(stroke, self.ambient, process) for g in self.gases), 0.0 * np.asarray(stroke))
        return gas + sum((s.energy(stroke) for s in self.springs), 0.0 * np.asarray(stroke))

    def rubber_force(self, stroke: Number) -> Number:
        """Force [N] of the bump rubber at a stroke [mm], left out of `force`."""
        return 0.0 * np.asarray(stroke) if self.rubber is None else self.rubber.force(stroke)

    def rubber_energy(self, stroke: Number) -> Number:
        """Energy [N mm] that the bump rubber takes up to a stroke [mm], left out of `energy`."""
        return 0.0 * np.asarray(stroke) if self.rubber is None else self.rubber.energy(stroke)
