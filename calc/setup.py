"""A setup and what it will do: sags, frequency, end force, energy, each in its named case."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number
from calc.assembly import Assembly
from calc.end import End, ride_frequency
from calc.gas.chamber import SLOW, Pace
from calc.leg.air import Pumped
from calc.sag import Sag, settle


@dataclass(frozen=True, eq=False)
class Loads:
    """What the end carries: sprung loads [N] with the bike alone and with the rider aboard, and gravity [N/kg] used."""

    alone: Number
    aboard: Number
    gravity: float

    @property
    def sprung_mass(self) -> Number:
        """Sprung mass [kg] on the axle, rider aboard."""
        return self.aboard / self.gravity


@dataclass(frozen=True, eq=False)
class Setup:
    """Rate [N/mm], preload [mm], gap [mm] (0 where the strut has none); split [N/mm], what an unequal right leg is above it;
    air, how an air spring is set, None where there is none or it stays as it is.
    """

    rate: Number
    preload: Number
    gap: Number
    split: Number = 0.0
    air: Pumped | None = None

    @property
    def stepped(self) -> Number:
        """What candidates step through: an air spring's pressure [MPa, gauge], else the rate [N/mm]."""
        return self.rate if self.air is None else self.air.pressure

    def at(self, index: int) -> Setup:
        """One candidate of many."""
        shape = np.shape(self.stepped)
        rate, preload, gap, split = (
            float(np.broadcast_to(part, shape)[index]) for part in (self.rate, self.preload, self.gap, self.split)
        )
        return Setup(rate, preload, gap, split, None if self.air is None else self.air.at(index))


@dataclass(frozen=True, eq=False)
class Figures:
    """What a setup does. Sag: n = 1. Frequency, wheel rate, end force: working n about rider sag. Energy: from extension."""

    end: End
    pace: Pace
    free: Sag
    rider: Sag
    wheel_rate: Number
    frequency: Number
    end_force: Number
    end_multiple: Number
    energy: Number
    energy_per_mass: Number

    def at(self, index: int) -> Figures:
        """The figures of one candidate, as scalars; `end` stays that of all candidates."""

        def pick(value: Number | Flags) -> Number:
            array = np.asarray(value, dtype=float)
            return float(array if array.ndim == 0 else array[index])

        def sag(found: Sag) -> Sag:
            return Sag(pick(found.travel), pick(found.stroke), np.asarray(pick(found.topped_out) > 0), pick(found.friction))

        rest = (self.wheel_rate, self.frequency, self.end_force, self.end_multiple, self.energy, self.energy_per_mass)
        pace = Pace(pick(self.pace.exponent), pick(self.pace.settled))
        return Figures(self.end, pace, sag(self.free), sag(self.rider), *(pick(value) for value in rest))


def figures(end: End, loads: Loads, exponent: Number) -> Figures:
    """Work out what an end does under its loads.

    Parameters: end; loads; exponent n [-] of fast gas, 1 to 1.4.
    Returns: Figures; lengths [mm], forces [N], energy [N mm], frequency [Hz].
    Raises: Impossible when an end cannot carry its load, or its gas is used up before full travel.
    Formula: statics for the sags; K at rider sag; F and energy at full travel.
    Source: the cases of sag, frequency and end force named in DEVELOPERS.md, Conventions.
    Example: see `calc.sizing`.
    """
    both = settle(end, np.stack(np.broadcast_arrays(loads.alone, loads.aboard, end.wheel_force(0.0, SLOW))[:2]))
    free, rider = both[0], both[1]
    pace = Pace(exponent, rider.stroke)
    wheel_rate = end.wheel_rate(rider.travel, pace)
    end_force = end.wheel_force(end.travel, pace)
    energy = end.energy(end.travel, Pace(exponent))
    return Figures(
        end,
        pace,
        free,
        rider,
        wheel_rate,
        ride_frequency(wheel_rate, loads.sprung_mass),
        end_force,
        end_force / loads.aboard,
        energy,
        energy / loads.sprung_mass,
    )


def evaluate(assembly: Assembly, setup: Setup, loads: Loads, exponent: Number) -> Figures:
    """`figures` of an assembly built to a setup.

    Parameters: assembly; setup; loads; exponent n [-] of fast gas, 1 to 1.4.
    Returns: Figures.
    Raises: Impossible as `figures`.
    Formula: as `figures`.
    Source: as `figures`.
    Example: see `calc.sizing`.
    """
    return figures(end_of(assembly, setup), loads, exponent)


def end_of(assembly: Assembly, setup: Setup) -> End:
    """An assembly built to a setup.

    Parameters: assembly; setup.
    Returns: End.
    Raises: Impossible where nothing can be built so.
    Formula: none.
    Source: none.
    Example: see `calc.sizing`.
    """
    return assembly.paired(setup.split).pumped(setup.air).end(setup.rate, setup.preload, setup.gap)
