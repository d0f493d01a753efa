"""The spring-loaded piston that presses on a sealed cartridge's oil."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number
from calc.gas.chamber import Process
from calc.impossible import Impossible


@dataclass(frozen=True, eq=False)
class SpringPiston:
    """A piston that the damper rod's oil pushes back against a spring.

    The space behind it presses on the rod through it and is counted by itself: nothing where it is vented; where it is the
    outer chamber, that chamber sweeps the whole seal area.

    Parameters: preload [N], the spring's force at full extension; rate [N/mm]; rod, piston areas [mm2]; stop, bleed
    [mm of piston travel], where it stands solid, and where its oil finds a way past it; infinite where there is none.
    Formula: P = P_back + (F_s0 + k x) / A_piston, x = A_rod s / A_piston; force on the strut (P - P_back) A_rod.
    Source: statics; the oil is taken as incompressible.
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> round(float(SpringPiston(92.4, 2.0, 113.1, 615.8).force(300.0, 0.1, ISOTHERMAL)), 2)
        37.21
    """

    preload: Number
    rate: Number
    rod: Number
    piston: Number
    stop: Number = np.inf
    bleed: Number = np.inf

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]; Impossible beyond the stop."""
        del ambient, process
        return (self.preload + self.rate * np.minimum(self._moved(stroke), self.bleed)) * self._ratio

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Rate [N/mm]: k (A_rod / A_piston)^2, none once its oil is bled past."""
        del ambient, process
        return np.where(self._moved(stroke) < self.bleed, self.rate * self._ratio**2, 0.0)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm], what is bled past the piston included."""
        del ambient, process
        moved = self._moved(stroke)
        sprung = np.minimum(moved, self.bleed)
        most = self.preload + self.rate * sprung
        return 0.5 * (self.preload + most) * sprung + most * (moved - sprung)

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which the piston stands at its stop."""
        return np.where(np.asarray(self.stop) < self.bleed, self.stop / self._ratio, np.inf)

    @property
    def _ratio(self) -> Number:
        return self.rod / self.piston

    def _moved(self, stroke: Number) -> Number:
        moved = self._ratio * np.asarray(stroke)
        if np.any(moved > np.where(np.asarray(self.stop) < self.bleed, self.stop, np.inf)):
            raise Impossible(
                "hydraulic-lock",
                f"The cartridge is oil-locked at {float(np.min(self.lock_stroke())):.0f} mm: its piston stands at its stop there.",
                "Check the piston's travel to its stop, its diameter and the rod.",
                "front.piston_stop",
            )
        return moved


@dataclass(frozen=True, eq=False)
class LeakingPiston:
    """A spring-loaded piston behind a small leak: given time it has gone to its front stop, moved fast it is shut in again.

    Parameters: piston, as it stands at its front stop, with the spring's force there as its preload.
    Formula: settled, nothing over the leg's own pressure; from there the rod's oil lifts the piston, as in `SpringPiston`.
    On the way out the leak and the piston's stop let it follow: nothing.
    Source: statics.
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> leak = LeakingPiston(SpringPiston(92.4, 2.0, 113.1, 615.8))
        >>> float(leak.force(300.0, 0.1, ISOTHERMAL)), round(float(leak.force(300.0, 0.1, Process(1.33, 60.0))), 2)
        (0.0, 33.16)
    """

    piston: SpringPiston

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]."""
        further, shut = self._since(stroke, process)
        return np.where(shut, self.piston.force(further, ambient, process), 0.0)

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Rate [N/mm]."""
        further, shut = self._since(stroke, process)
        return np.where(shut, self.piston.rate_at(further, ambient, process), 0.0)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm]."""
        return self.piston.energy(self._since(stroke, process)[0], ambient, process)

    def lock_stroke(self) -> Number:
        """Stroke [mm], moved fast from full extension, at which the piston stands at its stop."""
        return self.piston.lock_stroke()

    def _since(self, stroke: Number, process: Process) -> tuple[Number, Flags]:
        """Stroke [mm] beyond where it settled, and whether there is any."""
        further = 0.0 * np.asarray(stroke) if process.waits else np.asarray(stroke) - process.settled
        return np.maximum(further, 0.0), np.asarray(further > 0)
