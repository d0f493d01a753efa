"""The pressure in every gas space of a leg, and behind the oil of its damper."""

from __future__ import annotations

from collections.abc import Iterator

from calc.array import Number
from calc.gas.chamber import Chamber, Gas, Process, SteadyCharge
from calc.gas.joined import Joined, SmallLeak
from calc.gas.piston import LeakingPiston, SpringPiston
from calc.gas.staged import Staged


def pressures(gases: tuple[Gas, ...], stroke: Number, process: Process, vented: Number | None) -> Iterator[Number]:
    """The pressure of every space.

    Parameters: gases of a leg, over the oil first; stroke [mm]; process; vented [MPa], what stands behind a spring-loaded piston
    that does not have the leg's own air there, None where it has.
    Returns: pressures [MPa, absolute], a space each; of a cartridge pressed by a piston that of its oil.
    Raises: Impossible where a space is used up.
    Formula: P_back + F / A_rod for a piston, else the gas's own.
    Source: statics.
    Example:
        >>> from calc.gas.chamber import ISOTHERMAL
        >>> leg, press = Chamber(500e3, 0.1, 1700.0), SpringPiston(92.4, 2.0, 113.1, 615.8)
        >>> [round(float(p), 3) for p in pressures((leg, press), 0.0, ISOTHERMAL, None)]
        [0.1, 0.25]
    """
    outer: Number = 0.0
    for gas in gases:
        if isinstance(gas, Chamber | Staged):
            outer = gas.pressure(stroke, process)
            yield outer
        elif isinstance(gas, SteadyCharge):
            yield gas.pressure
        elif isinstance(gas, Joined | SmallLeak):
            yield from gas.pressures(stroke, process)
        elif isinstance(gas, SpringPiston):
            yield (outer if vented is None else vented) + gas.force(stroke, 0.0, process) / gas.rod
        elif isinstance(gas, LeakingPiston):
            yield outer + gas.force(stroke, 0.0, process) / gas.piston.rod
