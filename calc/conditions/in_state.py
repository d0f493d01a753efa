"""A fork in one state of its cartridge: what it does along its stroke, and what another state takes away there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from calc.array import Array, Number
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Chamber, Process
from calc.gas.pressures import pressures
from calc.leg.sealed import SealedLeg

Cartridge = Literal["as built", "charge lost", "seal leaking", "oil moved", "opened into one"]
Way = Literal["preload replaced", "gap replaced", "both replaced"]
State = Literal[Cartridge, Way]
CARTRIDGE: tuple[Cartridge, ...] = ("as built", "charge lost", "seal leaking", "oil moved", "opened into one")
WAYS: tuple[Way, ...] = ("preload replaced", "gap replaced", "both replaced")


@dataclass(frozen=True, eq=False)
class InState:
    """The fork in one state: its assembly, setup and figures; gap_now [mm], what its oil shows there, the mean of both legs; None
    where no gap can be read. Where oil has moved the setup's gap is the one from before.
    """

    state: State
    assembly: ForkAssembly
    setup: Setup
    figures: Figures
    gap_now: Number | None

    @property
    def gas_share(self) -> Number:
        """Share of the gas in the force at full travel [-]."""
        end = self.figures.end
        return end.gas_wheel_force(end.travel, self.figures.process) / self.figures.end_force

    def behind(self, stroke: float, settled: bool) -> Number:
        """Pressure behind the damper's oil [MPa, gauge] at a stroke [mm], in the left leg; else working n about rider sag."""
        return self.behind_along(stroke, ISOTHERMAL if settled else self.figures.process)

    def behind_along(self, strokes: Number, process: Process) -> Array:
        """The same at any strokes [mm], the gas moved as a process says."""
        return behind_oil(self.assembly, self.figures, strokes, process)

    def gas_volume(self, stroke: float) -> Number:
        """Gas over the oil [mm3] at a stroke [mm], in the left leg."""
        over = self._left.gases[0]
        assert isinstance(over, Chamber)  # as built and opened no leak joins it to another
        return over.volume(stroke)

    @property
    def _left(self) -> Strut:
        strut: Strut = self.figures.end.struts[0][0]
        return strut


def behind_oil(assembly: ForkAssembly, figures: Figures, strokes: Number, process: Process) -> Array:
    """Pressure behind the damper's oil of the left leg, of a fork with a sealed cartridge or one that was sealed.

    Parameters: assembly; figures, of a setup in it; strokes [mm]; process, how the gas moved there.
    Returns: pressure [MPa, gauge]; where the piston has no gas of its own behind it, that over the oil of the leg.
    Raises: Impossible where a space is used up.
    Formula: the innermost space's; outside air stands behind a vented piston.
    Source: statics.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    strut: Strut = figures.end.struts[0][0]
    gas = assembly.gas
    vented = strut.ambient if isinstance(gas, SealedLeg) and np.any(np.asarray(gas.outer.inside) > 0) else None
    *_, innermost = pressures(strut.gases, strokes, process, vented)
    return np.asarray(innermost - strut.ambient)


@dataclass(frozen=True, eq=False)
class Lost:
    """What opening takes away at a stroke [mm]: backing [MPa] behind the damper's oil, by it the push on the rod, and the whole
    force of the leg [N], below 0 where it brings some; room [mm3] that it adds to the gas over the oil.
    """

    stroke: float
    backing: Number
    rod_push: Number
    force: Number
    room: Number


def lost_at(built: InState, opened: InState, stroke: float, settled: bool, rod: Number) -> Lost:
    """What a fork loses when its cartridge is opened.

    Parameters: built, opened: the fork before and after; stroke [mm]; settled, whether the gas has had time there, else it moved
    fast from the rider sag of each; rod [mm2], area of the damper rod.
    Returns: Lost, of the left leg.
    Raises: Impossible where a space is used up.
    Formula: backing = P_built - P_opened behind the damper's oil; push = backing x A_rod; force = F_built - F_opened; room =
    V_opened - V_built over the oil.
    Source: statics.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    backing = built.behind(stroke, settled) - opened.behind(stroke, settled)
    force = _force(built, stroke, settled) - _force(opened, stroke, settled)
    room = opened.gas_volume(stroke) - built.gas_volume(stroke)
    return Lost(stroke, backing, backing * rod, force, room)


def _force(one: InState, stroke: float, settled: bool) -> Number:
    strut: Strut = one.figures.end.struts[0][0]
    return strut.force(stroke, ISOTHERMAL if settled else one.figures.process)
