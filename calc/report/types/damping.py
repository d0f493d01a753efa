"""The dampers of an end: oil that moves, the most that they hold, damping at the wheel, what must follow, clickers, shims."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.practice import Axle
from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class OilMoved:
    """At the shaft speed: flow through base valve and piston, the base valve's part of the piston's area, oil a stroke of 10 mm
    pushes out; `ports`, what the piston's ports alone take where they are entered, with oil of that density; the vapour pressure.
    """

    speed: Quantity
    base: Quantity
    piston: Quantity
    share: Quantity
    pushed_out: Quantity
    ports: Quantity | None
    density: Quantity
    vapour: Quantity


@dataclass(frozen=True, slots=True)
class HoldsAt:
    """The most that one damper holds at a stroke before its oil tears: nothing from the base valve, and `stated` with what was
    entered of it; `refill`, what the check valve may take on rebound.
    """

    stroke: Quantity
    behind: Quantity
    drop: Quantity
    force: Quantity
    stated_drop: Quantity | None
    stated_force: Quantity | None
    refill: Quantity


@dataclass(frozen=True, slots=True)
class HoldsIn:
    """One state of the fork, or the shock; `problem` where nothing is told of it."""

    label: str
    rows: tuple[HoldsAt, ...]
    problem: str


@dataclass(frozen=True, slots=True)
class AtWheel:
    """Damping at the wheel at rider sag; `rod`, the force of one damper at the shaft speed where damping is critical; ratios only
    where a force was entered.
    """

    critical: Quantity
    rod: Quantity
    rebound_ratio: Quantity | None
    compression_ratio: Quantity | None


@dataclass(frozen=True, slots=True)
class Follows:
    """Factors on the damping from one setup to what was built, or else is recommended: about rider sag and, of rebound alone, from
    full travel.
    """

    since: Literal["as found", "as sold"]
    ride: Quantity
    full: Quantity


@dataclass(frozen=True, slots=True)
class Clicker:
    """One adjuster, counted from closed; empty where nobody did."""

    key: str
    label: str
    found: str
    built: str


@dataclass(frozen=True, slots=True)
class ShimChange:
    """The shims as built over those as found, all together; a sentence of that, and one a group."""

    ratio: Quantity | None
    words: str
    groups: tuple[str, ...]
    problem: str


@dataclass(frozen=True, slots=True)
class DampingOfEnd:
    """One end. `problem`: why the figures of springs and gas, or of the dampers, are missing; `of`, the setup that they are of;
    `words` of the factors, `limits` of what the dampers hold, `besides` of wheel and oil; `log`, the clickers in one line, empty
    where nobody counted any.
    """

    axle: Axle
    of: Literal["built", "recommended", "found"]
    problem: str
    moved: OilMoved | None
    holds: tuple[HoldsIn, ...]
    wheel: AtWheel | None
    follows: tuple[Follows, ...]
    clickers: tuple[Clicker, ...]
    log: str
    shims: ShimChange | None
    words: tuple[str, ...]
    limits: tuple[str, ...]
    besides: tuple[str, ...]
    left_out: str
