"""A main air chamber behind which a second volume opens at a pressure."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.gas.chamber import Chamber, Process, compression_work


@dataclass(frozen=True, eq=False)
class Staged:
    """A main chamber with a second gas volume behind a floating piston, which moves once the main pressure is above its charge.

    Parameters: main chamber; second volume [mm3] and its charge [MPa, absolute].
    Formula: shut: the main chamber alone. Open: one pressure, volumes (C_i / P)^(1/n) that add up to what is left, so
    P = ((C1^(1/n) + C2^(1/n)) / (V1 + V2 - a s))^n, C_i = P V^n of each gas where it settled.
    Source: polytropic law for each gas, one pressure.
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> air = Staged(Chamber(280e3, 1.0, 615.0), 60e3, 2.0)
        >>> [round(float(air.pressure(s, ISOTHERMAL)), 3) for s in (0.0, 200.0, 300.0)]
        [1.0, 1.783, 2.572]
    """

    main: Chamber
    second: Number
    charge: Number

    def pressure(self, stroke: Number, process: Process) -> Number:
        """Absolute pressure [MPa] of the main chamber."""
        shut, opened, opens = self._pressures(stroke, process)
        return np.where(opened > opens, opened, shut)

    def second_left(self, stroke: Number, process: Process) -> Number:
        """Volume [mm3] of the second gas, all of it until it opens."""
        gas, pressure = self._gases(process)[1], self.pressure(stroke, process)
        return np.minimum((gas / pressure) ** (1.0 / process.exponent), self.second)

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]."""
        return (self.pressure(stroke, process) - ambient) * self.main.area

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Gas rate [N/mm]: n P a^2 over the volume that is open."""
        del ambient
        shut, opened, opens = self._pressures(stroke, process)
        area = self.main.area
        alone = shut / np.maximum(self.main.volume0 - area * stroke, self._least)
        return process.exponent * area**2 * np.where(opened > opens, opened / self._both.volume(stroke), alone)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm]."""
        n, both, area = process.exponent, self._both, self.main.area
        first, second = self._gases(process)
        opens = self._opens(second, n)
        start = np.maximum((self.main.volume0 - (first / opens) ** (1.0 / n)) / area, 0.0)  # stroke at which it opens
        before, after = np.minimum(stroke, start), np.maximum(stroke, start)
        alone = compression_work(self.pressure(0.0, process), self.main.volume0, self.main.volume0 - area * before, n)
        open_work = compression_work(self._opened(start, process), both.volume(start), both.volume(after), n)
        return alone + np.where(after > start, open_work, 0.0) - ambient * area * stroke

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which no gas is left in either."""
        return self._both.lock_stroke()

    @property
    def _both(self) -> Chamber:
        return Chamber(self.main.volume0 + self.second, self.main.pressure0, self.main.area, self.main.name)

    @property
    def _least(self) -> Number:
        """A main volume [mm3] below every one at which the second is still shut; keeps the idle branch finite."""
        return 1e-6 * self.main.volume0

    def _gases(self, process: Process) -> tuple[Number, Number]:
        """C = P V^n of the main and the second gas, where they settled."""
        kept, held = self.main.pressure0 * self.main.volume0, self.charge * self.second
        at_rest = (kept + held) / self._both.volume(process.settled)
        is_open = at_rest > self.charge
        alone = np.maximum(self.main.volume0 - self.main.area * process.settled, self._least)
        volume = np.where(is_open, kept / at_rest, alone)
        second = np.where(is_open, held / at_rest, self.second)
        return kept / volume * volume**process.exponent, held / second * second**process.exponent

    def _opens(self, second_gas: Number, exponent: Number) -> Number:
        """Pressure [MPa] above which the second gas is less than its whole volume."""
        return second_gas / self.second**exponent

    def _opened(self, stroke: Number, process: Process) -> Number:
        n = np.asarray(process.exponent)
        first, second = self._gases(process)
        both = np.asarray(first ** (1.0 / n) + second ** (1.0 / n))
        return np.asarray((both / self._both.volume(stroke)) ** n)

    def _pressures(self, stroke: Number, process: Process) -> tuple[Number, Number, Number]:
        first, second = self._gases(process)
        left = np.maximum(self.main.volume0 - self.main.area * stroke, self._least)
        return first / left**process.exponent, self._opened(stroke, process), self._opens(second, process.exponent)
