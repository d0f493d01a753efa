"""A section of the fork: what stands where, and along the stroke the oil, the gas and the forces of each leg."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from calc.end.assembly import Assembly, ForkAssembly
from calc.end.figures import Figures
from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Process
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import AirLeg
from calc.leg.open import LegGas
from calc.report.anatomy import Build
from calc.report.spaces import listed, spaces
from calc.report.stops import events
from calc.report.types import DrawnLeg, LegSpring, Section

POINTS = 61  # as many as the curve has, at the same strokes
BEFORE_LOCK = 1.0  # mm before the gas is used up, where a leg that locks is last drawn


def section(job: Job, fork: Assembly, limits: Limits, setup: Setup, figures: Figures | None) -> Section | None:
    """The section of a fork built to a setup; None at the rear, or where a leg holds no gas to be drawn.

    The job says which parts there are to draw; `limits` where its coils touch.

    `figures` tell how the gas has settled; without them (a leg that locks before full travel) it is drawn settled, up to there.
    """
    if not isinstance(fork, ForkAssembly):
        return None
    try:
        return _section(job, fork, limits, setup, figures)
    except Impossible:  # there is no leg to draw, and the answer says why
        return None


@dataclass(frozen=True, eq=False)
class _Side:
    """What one leg is built to; rate [N/mm] None for no spring, gap [mm]."""

    name: str
    gas: LegGas
    strut: Strut
    rate: float | None
    gap: float

    @property
    def start(self) -> float:
        """How far from full extension it hangs [mm]: an air spring's balance chamber may pull it in."""
        return float(np.asarray(self.strut.start))

    @property
    def locks(self) -> float:
        """Stroke [mm] from hanging at which its first gas is used up."""
        return float(np.min([np.min(gas.lock_stroke()) for gas in self.strut.gases])) - self.start


def _section(job: Job, fork: ForkAssembly, limits: Limits, setup: Setup, figures: Figures | None) -> Section:
    process, sides = ISOTHERMAL if figures is None else figures.process, tuple(_sides(fork, setup))
    start = max(side.start for side in sides)
    travel, first = job.number("front.travel") - start, min(side.locks for side in sides)
    strokes = np.linspace(0.0, travel if first > travel else max(first - BEFORE_LOCK, 0.0), POINTS)
    preload = float(np.asarray(setup.preload))
    builds = [Build(job, fork, preload, side.gas, side.rate, side.gap, strokes + start, start) for side in sides]
    length = max(build.needed() for build in builds)
    settled = f"settled at rider sag, then moved fast, exponent {job.number('place.exponent'):.2f}"
    return Section(
        kind=_kind(job),
        layout=job.choice("front.layout"),
        travel=travel,
        stroke=listed(strokes, 2),
        gap_words=f"read {job.choice('front.gap_state')}, spring {job.choice('front.gap_read')}",
        process="settled" if figures is None else settled,
        legs=tuple(_leg(side, build, length, process) for side, build in zip(sides, builds, strict=True)),
        events=events(job, limits, fork, setup, figures, start, {side.name: side.locks for side in sides}),
    )


def _kind(job: Job) -> str:
    kind = job.choice("front.air")
    return "opened cartridge" if kind == "sealed cartridge" and job.choice("front.cartridge_state") == "opened into one" else kind


def _sides(fork: ForkAssembly, setup: Setup) -> Iterator[_Side]:
    """Each leg that differs."""
    struts = [strut for strut, _ in fork.end(setup).struts]
    gases = (fork.gas, fork.gas_right or fork.gas)
    names = ("each leg",) if len(struts) == 1 else ("left leg", "right leg")
    for name, strut, gas, rate, gap in zip(names, struts, gases, fork.rates(setup), setup.gaps, strict=False):
        pumped = gas.pumped(setup.air) if setup.air is not None and isinstance(gas, AirLeg) else gas
        yield _Side(name, pumped, strut, None if rate is None else float(np.asarray(rate)), float(np.asarray(gap)))


def _leg(side: _Side, build: Build, length: float, process: Process) -> DrawnLeg:
    leg, strokes, start = build.leg(length), build.strokes - build.start, build.start
    settled = replace(process, settled=process.settled + start)
    return DrawnLeg(
        side=side.name,
        gap=side.gap,
        parts=tuple(replace(p, top=p.top - start, bottom=p.bottom - start) if p.moves and start else p for p in leg.parts),
        spaces=tuple(spaces(build, leg, side.strut.gases, settled)),
        springs=tuple(
            LegSpring(coil.name, listed(coil.top), listed(coil.bottom), coil.wire, coil.mean, coil.coils, coil.assumed)
            for coil in leg.coils
        ),
        spring_force=listed(side.strut.spring_force(strokes), 2),
        gas_force=listed(side.strut.gas_force(strokes, process), 2),
    )
