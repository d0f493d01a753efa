"""An end of the bike: struts, motion and the wheel. Written once for front and rear."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number, added
from calc.end.strut import Strut
from calc.gas.chamber import Process
from calc.motion.ratio import Motion

N_PER_M = 1000.0  # N/m in one N/mm: dynamics use the rate in N/m


@dataclass(frozen=True, eq=False)
class End:
    """Struts side by side on one wheel.

    Parameters: struts, each with how many alike there are; motion of the wheel; travel [mm], vertical at the wheel
    from hanging to the first solid stop; friction [N] at the wheel, the band either way within which it sticks; pulled_in,
    True where it hangs so deep in its travel that nothing can be told from there.
    Formula: virtual work: wheel force = F q, wheel rate = k q^2 + F dq/dz.
    Source: V. Cossalter, Motorcycle Dynamics, 2nd ed., chapter 5; from memory.
    """

    struts: tuple[tuple[Strut, float], ...]
    motion: Motion
    travel: Number
    friction: Number = 0.0
    pulled_in: Flags | bool = False

    def _sum(self, what: str, stroke: Number, *process: Process) -> Number:
        return added((count * getattr(strut, what)(stroke, *process) for strut, count in self.struts), stroke)

    def wheel_force(self, travel: Number, process: Process) -> Number:
        """Vertical force [N] at the wheel, whole end, at a wheel travel [mm]; friction left out."""
        return self._sum("force", self.motion.stroke(travel), process) * self.motion.ratio(travel)

    def spring_wheel_force(self, travel: Number) -> Number:
        """The springs' part [N] of the wheel force."""
        return self._sum("spring_force", self.motion.stroke(travel)) * self.motion.ratio(travel)

    def gas_wheel_force(self, travel: Number, process: Process) -> Number:
        """The gas's part [N] of the wheel force."""
        return self._sum("gas_force", self.motion.stroke(travel), process) * self.motion.ratio(travel)

    def rubber_wheel_force(self, travel: Number) -> Number:
        """Force [N] of the bump rubbers at the wheel; not part of the wheel force."""
        return self._sum("rubber_force", self.motion.stroke(travel)) * self.motion.ratio(travel)

    def wheel_rate(self, travel: Number, process: Process) -> Number:
        """Wheel rate [N/mm], whole end, at a wheel travel [mm]."""
        stroke, ratio = self.motion.stroke(travel), self.motion.ratio(travel)
        return self._sum("rate_at", stroke, process) * ratio**2 + self._sum("force", stroke, process) * self.motion.slope(travel)

    def energy(self, travel: Number, process: Process) -> Number:
        """Energy [N mm] from hanging to a wheel travel [mm], springs and gas."""
        return self._sum("energy", self.motion.stroke(travel), process)

    def rubber_energy(self, travel: Number) -> Number:
        """Energy [N mm] of the bump rubbers from hanging to a wheel travel [mm]; not part of `energy`."""
        return self._sum("rubber_energy", self.motion.stroke(travel))

    @property
    def has_rubber(self) -> bool:
        """True where a bump rubber is counted."""
        return any(strut.rubber is not None for strut, _ in self.struts)


def ride_frequency(wheel_rate: Number, sprung_mass: Number) -> Number:
    """Natural frequency of the sprung mass on an end, undamped and uncoupled.

    Parameters: wheel_rate [N/mm], > 0; sprung_mass [kg] at that axle, > 0.
    Returns: frequency [Hz].
    Raises: nothing.
    Formula: f = sqrt(K / m) / (2 pi), K in N/m.
    Source: single-mass oscillator.
    Example:
        >>> round(float(ride_frequency(19.320, 109.84)), 2)
        2.11
    """
    return np.sqrt(wheel_rate * N_PER_M / sprung_mass) / (2.0 * np.pi)
