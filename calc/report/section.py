"""A section of the fork as data: what stands where, and along the stroke the oil, the gas and the forces of each leg."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from calc.advice import EndSizing
from calc.assembly import ForkAssembly
from calc.gas.chamber import SLOW, Pace
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import LegGas
from calc.model import conditions, found_gaps
from calc.report.anatomy import Build
from calc.report.data import Data
from calc.report.spaces import Space, listed, spaces
from calc.report.stops import Event, events
from calc.report.tubes import Leg, Part
from calc.setup import Figures, Setup

POINTS = 61  # as many as the curve has, at the same strokes
BEFORE_LOCK = 1.0  # mm before the gas is used up, where a leg that locks is last drawn


@dataclass(frozen=True)
class DrawnSpring:
    """A spring along the stroke: top and bottom [mm under the rim]; wire and mean diameter [mm], coils; what is assumed of it."""

    name: str
    top: list[float]
    bottom: list[float]
    wire: float
    mean: float
    coils: float
    assumed: tuple[str, ...]


@dataclass(frozen=True)
class DrawnLeg:
    """One leg: the gap [mm] that it is set to, its parts as they stand hanging, gas spaces (over the oil first), springs; force
    along the leg [N] of both.
    """

    side: str
    gap: float
    parts: tuple[Part, ...]
    spaces: tuple[Space, ...]
    springs: tuple[DrawnSpring, ...]
    spring_force: list[float]
    gas_force: list[float]


@dataclass(frozen=True)
class Section:
    """The fork in section, along the stroke [mm]. Depths are under the rim; a part that moves stands higher by the stroke.
    `gap_words` say how the gap is read, `pace` what the pressures hold for.
    """

    kind: str
    layout: str
    travel: float
    stroke: list[float]
    gap_words: str
    pace: str
    legs: tuple[DrawnLeg, ...]
    events: tuple[Event, ...]


def section_data(job: Job, done: EndSizing, setup: Setup, figures: Figures | None) -> Data | None:
    """The section of a fork built to a setup; None at the rear, or where a leg holds no gas to be drawn.

    `figures` tell how the gas has settled; without them (a leg that locks before full travel) it is drawn settled, up to there.
    """
    fork = done.situation.assembly
    if not isinstance(fork, ForkAssembly):
        return None
    try:
        drawn = _section(job, done, fork.paired(setup.split).pumped(setup.air), setup, figures)
    except Impossible:  # there is no leg to draw, and the answer says why
        return None
    data: Data = _plain(drawn)
    return data


@dataclass(frozen=True, eq=False)
class _Side:
    """What one leg is built to; rate [N/mm] None for no spring."""

    name: str
    gas: LegGas
    rate: float | None
    setup: Setup

    @property
    def locks(self) -> float:
        """Stroke [mm] at which its first gas is used up."""
        return float(np.min([np.min(gas.lock_stroke()) for gas in self.gas.gases(self.rate, self.setup.gap)]))


def _section(job: Job, done: EndSizing, fork: ForkAssembly, setup: Setup, figures: Figures | None) -> Section:
    pace, travel = SLOW if figures is None else figures.pace, job.number("front.travel")
    gaps = found_gaps(job, conditions(job)) if setup is done.found_setup else (setup.gap, setup.gap)
    sides = tuple(_sides(fork, setup, *(float(np.asarray(gap)) for gap in gaps)))
    first = min(side.locks for side in sides)
    strokes = np.linspace(0.0, travel if first > travel else max(first - BEFORE_LOCK, 0.0), POINTS)
    builds = [Build(job, fork, side.setup, side.gas, side.rate, strokes) for side in sides]
    length = max(build.needed() for build in builds)
    settled = f"settled at rider sag, then moved fast, exponent {job.number('place.exponent'):.2f}"
    return Section(
        kind=_kind(job),
        layout=job.choice("front.layout"),
        travel=travel,
        stroke=listed(strokes, 2),
        gap_words=f"read {job.choice('front.gap_state')}, spring {job.choice('front.gap_read')}",
        pace="settled" if figures is None else settled,
        legs=tuple(_leg(side.name, build, build.leg(length), pace) for side, build in zip(sides, builds, strict=True)),
        events=events(job, done, fork, setup, figures, {side.name: side.locks for side in sides}),
    )


def _kind(job: Job) -> str:
    kind = job.choice("front.air")
    return "opened cartridge" if kind == "sealed cartridge" and job.choice("front.cartridge_state") == "opened into one" else kind


def _sides(fork: ForkAssembly, setup: Setup, gap_left: float, gap_right: float) -> Iterator[_Side]:
    """Each leg that differs."""
    left, right = (None if rate is None else float(np.asarray(rate)) for rate in fork.rates(setup.rate))
    both = fork.alike and gap_left == gap_right
    yield _Side("each leg" if both else "left leg", fork.gas, left, replace(setup, gap=gap_left))
    if not both:
        yield _Side("right leg", fork.gas_right or fork.gas, right, replace(setup, gap=gap_right))


def _leg(side: str, build: Build, leg: Leg, pace: Pace) -> DrawnLeg:
    strokes, fork, setup = build.strokes, build.fork, build.setup
    strut = fork.leg(build.rate, setup.preload, setup.gap, right=side == "right leg")
    coils = ((c, listed(c.top), listed(c.bottom)) for c in leg.coils)
    return DrawnLeg(
        side=side,
        gap=float(np.asarray(setup.gap)),
        parts=leg.parts,
        spaces=tuple(spaces(build, leg, strut.gases, pace)),
        springs=tuple(DrawnSpring(c.name, top, bottom, c.wire, c.mean, c.coils, c.assumed) for c, top, bottom in coils),
        spring_force=listed(strut.spring_force(strokes), 2),
        gas_force=listed(strut.gas_force(strokes, pace), 2),
    )


def _plain(value: Any) -> Any:
    """As plain data: a class as its fields by name, a tuple as a list. What is plain already, numbers along the stroke among it,
    is not looked into (asdict would copy each number, and take longer than all the rest).
    """
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    return {name: _plain(one) for name, one in vars(value).items()} if hasattr(value, "__dataclass_fields__") else value
