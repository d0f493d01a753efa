"""A damper at work along its stroke: what backs its oil there, and the most that it may hold before that oil tears."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from calc.array import Number
from calc.conditions.in_state import InState
from calc.damping.cavitation import compression_force, largest_drop, largest_refill
from calc.end.end import End
from calc.end.figures import Figures
from calc.gas.chamber import ISOTHERMAL
from calc.gas.pressures import pressures
from calc.model.damper import Damper


@dataclass(frozen=True, eq=False)
class Behind:
    """Pressure [MPa, gauge] that backs the damper's oil at a stroke [mm]."""

    stroke: float
    pressure: float


@dataclass(frozen=True, eq=False)
class Limit:
    """The most at a stroke before the oil tears: piston drops [MPa] and forces on one rod [N] with no base valve and with the one
    that was stated, None where none was; refill [MPa], what the check valve may take on rebound.
    """

    behind: Behind
    drop: float
    force: float
    stated_drop: float | None
    stated_force: float | None
    refill: float


def behind_oil(figures: Figures) -> tuple[Behind, ...]:
    """What backs the oil of an open damper, or of a shock: at rider sag with time to settle, at half and full travel moved fast.

    Parameters: figures of a setup, scalars.
    Returns: Behind at each of the three strokes.
    Raises: Impossible where the gas is used up.
    Formula: the gas's own pressure - ambient.
    Source: see `calc.gas.pressures`.
    Example: see `tests/unit/conditions/test_damping_limits.py`.
    """
    end = figures.end
    full = float(end.motion.stroke(end.travel))
    rider = float(figures.rider.stroke)
    strokes = ((rider, True), (0.5 * full, False), (full, False))
    return tuple(Behind(stroke, _gauge(end, figures, stroke, settled)) for stroke, settled in strokes)


def _gauge(end: End, figures: Figures, stroke: float, settled: bool) -> float:
    strut = end.struts[0][0]
    process = ISOTHERMAL if settled else figures.process
    deep = stroke + np.asarray(strut.start)
    return float([*pressures(strut.gases, deep, process, strut.ambient)][-1] - strut.ambient)


def behind_in_state(state: InState, strokes: Sequence[float]) -> tuple[Behind, ...]:
    """What backs the oil of a cartridge in one of its states; rider sag first.

    Parameters: state; strokes [mm].
    Returns: Behind at each.
    Raises: nothing. Formula: see `InState.behind`. Source: see there.
    Example: see `tests/unit/conditions/test_damping_limits.py`.
    """
    return tuple(Behind(stroke, float(state.behind(stroke, i == 0))) for i, stroke in enumerate(strokes))


def limit_at(damper: Damper, behind: Behind, ambient: Number) -> Limit:
    """The most that a damper may hold at a stroke.

    Parameters: damper; behind; ambient [MPa, absolute], where it is ridden.
    Returns: Limit.
    Raises: nothing.
    Formula: see `calc.damping.cavitation`.
    Source: see there.
    Example: see `tests/unit/conditions/test_damping_limits.py`.
    """

    def most(base: Number) -> tuple[float, float]:
        drop = largest_drop(behind.pressure, ambient, base, damper.vapour)
        return float(drop), float(compression_force(damper.sizes, base, drop))

    stated = (None, None) if damper.base_drop is None else most(damper.base_drop)
    return Limit(behind, *most(0.0), stated[0], stated[1], float(largest_refill(behind.pressure, ambient, damper.vapour)))
