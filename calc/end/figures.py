"""What a setup will do: sags, frequency, end force, energy, each in its named case."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Flags, Number
from calc.end.assembly import Assembly
from calc.end.end import End, ride_frequency
from calc.end.loads import Loads
from calc.end.sag import Sag, settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL, Process


@dataclass(frozen=True, eq=False)
class Figures:
    """What a setup does. Sag: n = 1. Frequency, wheel rate, end force: working n about rider sag. Energy: from extension."""

    end: End
    process: Process
    free: Sag
    rider: Sag
    wheel_rate: Number
    frequency: Number
    end_force: Number
    end_multiple: Number
    energy: Number
    energy_per_mass: Number

    def at(self, index: int) -> Figures:
        """The figures of one candidate, as scalars; of `end` only where it hangs: springs and gas stay those of all candidates."""

        def pick(value: Number | Flags) -> Number:
            array = np.asarray(value, dtype=float)
            return float(array if array.ndim == 0 else array[index])

        def sag(found: Sag) -> Sag:
            away = pick(found.beyond), pick(found.beyond_stroke)
            return Sag(pick(found.travel), pick(found.stroke), np.asarray(pick(found.topped_out) > 0), pick(found.friction), *away)

        rest = (self.wheel_rate, self.frequency, self.end_force, self.end_multiple, self.energy, self.energy_per_mass)
        process = Process(pick(self.process.exponent), pick(self.process.settled))
        struts = tuple((replace(strut, start=pick(strut.start)), count) for strut, count in self.end.struts)
        end = replace(self.end, struts=struts, travel=pick(self.end.travel))
        return Figures(end, process, sag(self.free), sag(self.rider), *(pick(value) for value in rest))


def figures(end: End, loads: Loads, exponent: Number) -> Figures:
    """Work out what an end does under its loads.

    Parameters: end; loads; exponent n [-] of fast gas, 1 to 1.4.
    Returns: Figures; lengths [mm], forces [N], energy [N mm], frequency [Hz].
    Raises: Impossible when an end cannot carry its load, or its gas is used up before full travel.
    Formula: statics for the sags; K at rider sag; F and energy at full travel.
    Source: the cases of sag, frequency and end force named in DEVELOPERS.md, Conventions.
    Example: see `calc.sizing.coil`.
    """
    both = settle(end, np.stack(np.broadcast_arrays(loads.alone, loads.aboard, end.wheel_force(0.0, ISOTHERMAL))[:2]))
    free, rider = both[0], both[1]
    process = Process(exponent, rider.stroke)
    wheel_rate = end.wheel_rate(rider.travel, process)
    end_force = end.wheel_force(end.travel, process)
    energy = end.energy(end.travel, Process(exponent))
    return Figures(
        end,
        process,
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
    Example: see `calc.sizing.coil`.
    """
    return figures(assembly.end(setup), loads, exponent)
