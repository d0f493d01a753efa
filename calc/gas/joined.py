"""Two spaces that are one from some stroke on: a bridged or leaking seal."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from calc.array import Number
from calc.gas.chamber import Chamber, Process, compression_work


def one_space(chambers: tuple[Chamber, ...]) -> Chamber:
    """Chambers that stand open to each other all along.

    Parameters: chambers, as they were apart.
    Returns: Chamber, slow or after it has mixed.
    Raises: nothing.
    Formula: V = sum(V); P = sum(P V) / V; a = sum(a).
    Source: conservation of the gas (sum of P V / T, one temperature).
    Example:
        >>> round(float(one_space((Chamber(500e3, 0.1, 1700.0), Chamber(100e3, 0.4, 110.0))).pressure0), 3)
        0.15
    """
    volume: Number = sum(c.volume0 for c in chambers)
    kept: Number = sum(c.pressure0 * c.volume0 for c in chambers)
    return Chamber(volume, kept / volume, sum(c.area for c in chambers), "joined space")


@dataclass(frozen=True, eq=False)
class Joined:
    """Chambers that stand open to each other from a stroke on; before it each keeps the gas that it had there.

    Parameters: chambers, as they were apart; stroke [mm] from which they are one, 0 for always.
    Formula: one pressure at that stroke, P = sum(P V) / sum(V); beyond it one space that sweeps the sum of the areas. Where
    a fast move brings unlike pressures there, they mix at once: sum(P V) is kept.
    Source: conservation of the gas (sum of P V / T, one temperature); mixing of ideal gases in a closed, rigid volume keeps
    their inner energy P V / (n - 1).
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> both = Joined((Chamber(500e3, 0.1, 1700.0), Chamber(100e3, 0.4, 110.0)), 0.0)
        >>> round(float(both.pressures(0.0, ISOTHERMAL)[0]), 3)
        0.15
    """

    chambers: tuple[Chamber, ...]
    stroke: Number

    def pressures(self, stroke: Number, process: Process) -> tuple[Number, ...]:
        """Absolute pressure [MPa] in each space."""
        deep, one = np.asarray(stroke) >= self.stroke, self._one(stroke, process)
        return tuple(np.where(deep, one, p) for p in self._apart(stroke, process))

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]."""
        pressures = self.pressures(stroke, process)
        return sum(((p - ambient) * c.area for p, c in zip(pressures, self.chambers, strict=True)), 0.0 * np.asarray(stroke))

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Gas rate [N/mm]."""
        del ambient
        before = np.minimum(stroke, self.stroke)
        pairs = zip(self._apart(stroke, process), self.chambers, strict=True)
        apart = sum((process.exponent * p * c.area**2 / c.volume(before) for p, c in pairs), 0.0 * np.asarray(stroke))
        whole = self._whole
        deep = process.exponent * self._one(stroke, process) * whole.area**2 / whole.volume(np.maximum(stroke, self.stroke))
        return np.where(np.asarray(stroke) >= self.stroke, deep, apart)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm]."""
        before, after, n, whole = np.minimum(stroke, self.stroke), np.maximum(stroke, self.stroke), process.exponent, self._whole
        pairs = zip(self._apart(0.0, process), self.chambers, strict=True)
        apart = sum((compression_work(p, c.volume0, c.volume(before), n) for p, c in pairs), 0.0 * np.asarray(stroke))
        deep = compression_work(self._one(self.stroke, process), whole.volume(self.stroke), whole.volume(after), n)
        return apart + deep - ambient * whole.area * stroke

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which no gas is left in a space that is shut, or in the whole."""
        shut = np.min(np.stack(np.broadcast_arrays(*(c.lock_stroke() for c in self.chambers))), axis=0)
        return np.where(shut < self.stroke, shut, self._whole.lock_stroke())

    @cached_property
    def _whole(self) -> Chamber:
        return one_space(self.chambers)

    @cached_property
    def _shut(self) -> tuple[Chamber, ...]:
        """Each space by the gas that it keeps where they part, slow."""
        there = self._whole.pressure(self.stroke, Process(1.0))
        return tuple(replace(c, pressure0=there * c.volume(self.stroke) / c.volume0) for c in self.chambers)

    def _apart(self, stroke: Number, process: Process) -> tuple[Number, ...]:
        """Pressure of each space up to the stroke that joins them, that stroke's for a deeper one."""
        before, n = np.minimum(stroke, self.stroke), process.exponent
        settled = replace(process, settled=np.minimum(process.settled, self.stroke))
        deep = np.asarray(process.settled) >= self.stroke
        whole = self._whole
        parted = whole.pressure(self.stroke, replace(process, settled=np.maximum(process.settled, self.stroke)))
        slow_start = (c.pressure(before, settled) for c in self._shut)
        return tuple(
            np.where(deep, parted * (c.volume(self.stroke) / c.volume(before)) ** n, start)
            for c, start in zip(self.chambers, slow_start, strict=True)
        )

    def _one(self, stroke: Number, process: Process) -> Number:
        """Pressure of the whole beyond the stroke that joins them, that stroke's for a shallower one."""
        after, whole = np.maximum(stroke, self.stroke), self._whole
        settled_deep = np.asarray(process.settled) >= self.stroke
        from_deep = whole.pressure(after, replace(process, settled=np.maximum(process.settled, self.stroke)))
        met = sum(
            (p * c.volume(self.stroke) for p, c in zip(self._apart(self.stroke, process), self.chambers, strict=True)),
            0.0 * np.asarray(self.stroke),
        )
        there = whole.volume(self.stroke)
        return np.where(settled_deep, from_deep, met / there * (there / whole.volume(after)) ** process.exponent)


@dataclass(frozen=True, eq=False)
class SmallLeak:
    """Chambers that a small leak makes equal given time, and that stand shut while they move fast.

    Parameters: chambers, as they were before the leak.
    Formula: settled, P = sum(P V) / sum(V); from there each by itself, P_i (V_ie / V_i)^n.
    Source: conservation of the gas (sum of P V / T, one temperature).
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> leak = SmallLeak((Chamber(500e3, 0.1, 1700.0), Chamber(100e3, 0.4, 110.0)))
        >>> round(float(leak.force(0.0, 0.1, ISOTHERMAL)), 1)
        90.5
    """

    chambers: tuple[Chamber, ...]

    def pressures(self, stroke: Number, process: Process) -> tuple[Number, ...]:
        """Absolute pressure [MPa] in each space."""
        if process.waits:
            return tuple(self._whole.pressure(stroke, process) for _ in self.chambers)
        return tuple(c.pressure(stroke, process) for c in self._settled(process))

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]."""
        if process.waits:
            return self._whole.force(stroke, ambient, process)
        return sum((c.force(stroke, ambient, process) for c in self._settled(process)), 0.0 * np.asarray(stroke))

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Gas rate [N/mm]."""
        if process.waits:
            return self._whole.rate_at(stroke, ambient, process)
        return sum((c.rate_at(stroke, ambient, process) for c in self._settled(process)), 0.0 * np.asarray(stroke))

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] from full extension to a stroke [mm]."""
        if process.waits:
            return self._whole.energy(stroke, ambient, process)
        return sum((c.energy(stroke, ambient, process) for c in self._settled(process)), 0.0 * np.asarray(stroke))

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which the first space is used up."""
        return np.asarray(np.min(np.stack(np.broadcast_arrays(*(c.lock_stroke() for c in self.chambers))), axis=0))

    @cached_property
    def _whole(self) -> Chamber:
        return one_space(self.chambers)

    def _settled(self, process: Process) -> tuple[Chamber, ...]:
        """Each space by the gas that it holds where they settled."""
        there = self._whole.pressure(process.settled, Process(1.0))
        return tuple(replace(c, pressure0=there * c.volume(process.settled) / c.volume0) for c in self.chambers)
