"""Trapped gas: chambers, the open leg's gap convention, slow and fast compression, hydraulic lock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.array import Flags, Number, some
from calc.impossible import Impossible


@dataclass(frozen=True, eq=False)
class Process:
    """How fast the gas is compressed.

    Parameters: exponent n [-], 1.0 (slow, isothermal) to 1.4 (fast, adiabatic); settled, the stroke [mm] from full
    extension at which the gas had time to settle to leg temperature before the fast move; waits (n = 1): at every stroke there is
    time enough for gas to pass even a small leak.
    Formula: P = P0 (V0 / Ve) (Ve / V)^n with Ve the volume at `settled`.
    Source: polytropic law, Moran & Shapiro, Fundamentals of Engineering Thermodynamics, section 3.15.
    """

    exponent: Number
    settled: Number = 0.0
    waits: bool = False


ISOTHERMAL = Process(1.0, waits=True)


class Gas(Protocol):
    """What a strut needs of a gas space of any kind, over the stroke s [mm] from full extension."""

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number: ...

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number: ...

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number: ...

    def lock_stroke(self) -> Number: ...


@dataclass(frozen=True, eq=False)
class Chamber:
    """A closed gas space that loses `area` of volume per mm of stroke.

    Parameters: volume0 [mm3] and pressure0 [MPa, absolute], both at full extension; area [mm2] swept, below 0 for a
    space that grows as the strut shortens; name, what the space is called when it locks.
    Formula: V = V0 - a s; force on the strut (P - ambient) a.
    Source: conservation of the gas; virtual work.
    Example:
        >>> round(float(Chamber(700e3, 0.1, 1800.0).force(300.0, 0.1, ISOTHERMAL)), 1)
        607.5
    """

    volume0: Number
    pressure0: Number
    area: Number
    name: str = "leg"

    def volume(self, stroke: Number) -> Number:
        """Volume [mm3] at a stroke [mm]; Impossible where the oil has filled the space."""
        left = self.volume0 - self.area * stroke
        if some(left <= 0):
            raise hydraulic_lock(float(np.min(self.lock_stroke())), name=self.name, where=np.asarray(left <= 0))
        return left

    def pressure(self, stroke: Number, process: Process) -> Number:
        """Absolute pressure [MPa] at a stroke [mm]; slow gas is the same wherever it settled before."""
        if process.waits:
            return self.pressure0 * self.volume0 / self.volume(stroke)
        settled = self.volume(process.settled)
        return self.pressure0 * self.volume0 / settled * (settled / self.volume(stroke)) ** process.exponent

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N]: (P - ambient) a, ambient [MPa]."""
        return (self.pressure(stroke, process) - ambient) * self.area

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Gas rate [N/mm]: n P a^2 / V; the ambient pressure does not enter."""
        del ambient
        return process.exponent * self.pressure(stroke, process) * self.area**2 / self.volume(stroke)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] taken up along `process` from full extension to a stroke [mm], the ambient's share taken off."""
        work = compression_work(self.pressure(0.0, process), self.volume0, self.volume(stroke), process.exponent)
        return work - ambient * self.area * stroke

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which no gas is left; infinite for a space that does not shrink."""
        area = np.asarray(self.area, dtype=float)
        return np.where(area > 0, self.volume0 / np.where(area > 0, area, 1.0), np.inf)


@dataclass(frozen=True, eq=False)
class SteadyCharge:
    """A gas charge so large that its pressure is taken as constant; used where the reservoir's volume is not known.

    Parameters: pressure [MPa, absolute]; area [mm2] of the rod that it pushes on.
    Formula: F = (P - ambient) a.
    Source: monotube rod force, gauge pressure x rod area; Dixon, The Shock Absorber Handbook, 2nd ed.
    Example:
        >>> round(float(SteadyCharge(1.6, np.pi / 4 * 14.0**2).force(0.0, 0.1, ISOTHERMAL)), 2)
        230.91
    """

    pressure: Number
    area: Number

    def force(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Force on the strut [N], the same at every stroke."""
        del process
        return (self.pressure - ambient) * self.area + 0.0 * np.asarray(stroke)

    def rate_at(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Gas rate [N/mm]: none."""
        del ambient, process
        return 0.0 * np.asarray(stroke)

    def energy(self, stroke: Number, ambient: Number, process: Process) -> Number:
        """Energy [N mm] taken up from full extension to a stroke [mm]."""
        return self.force(0.0, ambient, process) * stroke

    def lock_stroke(self) -> Number:
        """Stroke [mm] at which no gas is left: never."""
        return np.inf


def compression_work(pressure: Number, start: Number, end: Number, exponent: Number) -> Number:
    """Work done on a gas from one volume to another.

    Parameters: pressure [MPa, absolute] at the start; start, end volumes [mm3], > 0; exponent n [-].
    Returns: work [N mm], above 0 when it is compressed.
    Raises: nothing.
    Formula: P1 V1^n (V1^(1-n) - V2^(1-n)) / (1 - n); n = 1: P1 V1 ln(V1 / V2).
    Source: Moran & Shapiro, Fundamentals of Engineering Thermodynamics, section 2.2.5.
    Example:
        >>> round(float(compression_work(0.3, 2e8, 1e8, 1.0)) / 1e6, 2)
        41.59
    """
    power = 1.0 - np.asarray(exponent)
    flat = np.abs(power) < 1e-9
    safe = np.where(flat, 1.0, power)
    return pressure * start**exponent * np.where(flat, np.log(start / end), (start**safe - end**safe) / safe)


# What to look at when a space of that name locks: the way out, and the field.
_LOCKED = {
    "leg": ("Enter a larger gap, or check the volumes that go in after the gap is read.", None),
    "outer chamber": ("Enter a larger gap, or check the oil and the volumes that go in.", None),
    "joined space": ("Enter a larger gap, or check the cartridge's gas volume.", None),
    "cartridge": ("Check the cartridge's gas volume, the oil moved and its rod.", "front.cartridge_gas"),
    "main chamber": ("Check the main chamber's volume and its piston.", "front.air_volume"),
}


def hydraulic_lock(stroke: float, field: str | None = None, name: str = "leg", where: Flags | None = None) -> Impossible:
    """The error for a space whose gas is used up before full stroke.

    Parameters: stroke [mm] at which no gas is left; field, the path to look at first; name of the space; where, as `Impossible`.
    Returns: Impossible, to be raised.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> hydraulic_lock(287.2).message
        'The leg is oil-locked at 287 mm: no gas is left there.'
    """
    way_out, usual_field = _LOCKED[name]
    words = f"The {name} is oil-locked at {stroke:.0f} mm: no gas is left there."
    return Impossible("hydraulic-lock", words, way_out, field or usual_field, where)


def circle(diameter: Number) -> Number:
    """Area of a circle.

    Parameters: diameter [mm].
    Returns: area [mm2].
    Raises: nothing.
    Formula: pi d^2 / 4.
    Source: geometry.
    Example:
        >>> round(float(circle(48.0)), 1)
        1809.6
    """
    return np.pi / 4.0 * diameter**2


def gas_above_oil(gap: Number, pieces: Sequence[tuple[Number, Number]]) -> Number:
    """Gas above the oil of a collapsed leg: the free area integrated over the gap.

    Parameters: gap [mm], >= 0; pieces of (length [mm], free area [mm2]) from the tube's top downwards; the last piece
    reaches as deep as the gap does.
    Returns: volume [mm3].
    Raises: nothing.
    Formula: V = integral of A(x) dx from 0 to the gap, A constant in each piece.
    Source: geometry.
    Example:
        >>> float(gas_above_oil(120.0, ((32.0, 2011.0), (0.0, 1667.0))))
        211048.0
    """
    total: Number = 0.0
    start: Number = 0.0
    for length, area in pieces[:-1]:
        total = total + area * np.minimum(np.maximum(gap - start, 0.0), length)
        start = start + length
    return total + pieces[-1][1] * np.maximum(gap - start, 0.0)


def open_leg(
    above_oil: Number,
    area: Number,
    collapsed_stroke: Number,
    goes_in: Number,
    bleed: Number,
    bled_stroke: Number = 0.0,
    name: str = "leg",
) -> Chamber:
    """The space over a leg's oil, from the gap convention.

    Parameters: above_oil [mm3], gas above the oil with the leg collapsed; area [mm2] swept, the seal's where all spaces
    are one; collapsed_stroke [mm], exposed chrome extended less exposed chrome when the gap was read; goes_in [mm3], what
    goes in after the gap is read; bleed [MPa], ambient pressure where the leg was bled; bled_stroke [mm], the stroke it
    was bled at; name of the space.
    Returns: Chamber, at full extension.
    Raises: Impossible when nothing is left for gas hanging, or at the bled stroke.
    Formula: V0 = above_oil + a s_m - goes_in; P0 = P_bleed V(s_b) / V0.
    Source: geometry; Boyle's law.
    Example:
        >>> round(float(open_leg(211048.0, circle(48.0), 308.0, 81400.0, 0.101325).volume0) / 1000)
        687
    """
    volume0 = above_oil + area * collapsed_stroke - goes_in
    if some(volume0 <= 0):
        raise Impossible(
            "no-gas",
            "What goes in after the gap is read leaves no room for gas, even hanging.",
            "Check the gap, the free area and the volumes of spring, spacer, washers and cap.",
            "front.gap_left",
        )
    at_bleed = volume0 - area * bled_stroke
    if some(at_bleed <= 0):
        raise hydraulic_lock(float(np.min(volume0 / area)), "place.bled_stroke", name)
    return Chamber(volume0, bleed * at_bleed / volume0, area, name)
