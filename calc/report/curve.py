"""The force-against-stroke curves of a setup, for the chart and its table."""

from __future__ import annotations

import numpy as np

from calc.array import Number
from calc.end.end import End
from calc.end.figures import Figures
from calc.gas.chamber import ISOTHERMAL, Process
from calc.report.types import Curve

POINTS = 61
FAST = 1.4  # adiabatic air, Moran & Shapiro, ideal-gas table at 300 K


def force_curve(end: End, done: Figures, along: bool) -> Curve:
    """Wheel force [kN] of a built end over its stroke: springs alone, with gas slow, working and fast about rider sag.

    Stroke is along the leg at the front, wheel travel at the rear; `done` holds scalars.
    """
    travel = np.linspace(0.0, float(end.travel), POINTS)
    settled = done.process.settled
    measure = end.motion.stroke(travel) if along else travel
    return Curve(
        axis="stroke along the leg" if along else "wheel travel, vertical",
        unit="mm",
        force_unit="kN",
        stroke=_rounded(measure, 2),
        springs=_kilo(end.spring_wheel_force(travel)),
        slow=_kilo(end.wheel_force(travel, ISOTHERMAL)),
        working=_kilo(end.wheel_force(travel, done.process)),
        fast=_kilo(end.wheel_force(travel, Process(FAST, settled))),
        rubber=_kilo(end.wheel_force(travel, done.process) + end.rubber_wheel_force(travel)) if end.has_rubber else None,
        wheel_rate=_rounded(end.wheel_rate(travel, done.process), 3),
    )


def _kilo(force: Number) -> tuple[float, ...]:
    return _rounded(np.asarray(force) / 1000.0, 5)


def _rounded(values: Number, decimals: int) -> tuple[float, ...]:
    array = np.asarray(values, dtype=float)
    if not np.all(np.isfinite(array)):
        raise ArithmeticError("a curve is not finite")
    return tuple((np.round(array, decimals) + 0.0).tolist())
