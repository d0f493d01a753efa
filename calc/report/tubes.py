"""The tubes of a fork leg, the room in them, and the parts and solids that a leg is drawn from. Depths are mm under the rim."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number
from calc.gas.chamber import circle
from calc.job import Job
from calc.leg.air import AirLeg
from calc.leg.open import LegGas, OpenLeg
from calc.leg.sealed import SealedLeg
from calc.report.coils import Coil
from calc.report.types import LegPart


@dataclass(frozen=True, eq=False)
class Solid:
    """What takes room in the open space: a volume [mm3] spread evenly from top to bottom [mm under the rim]."""

    volume: Number
    top: Number
    bottom: Number


@dataclass(frozen=True, eq=False)
class Tubes:
    """The open space: outer bore [mm2] down to the inner tube's edge, which stands at `edge` [mm] hanging, the free area [mm2]
    under it; a leg with one bore all down has its edge at 0. `bore` [mm] is the inner tube's, as it is drawn.
    """

    outer: float
    deep: float
    edge: float
    bore: float

    def edge_at(self, stroke: Number) -> Array:
        """Where the inner tube's edge stands [mm under the rim]."""
        return np.maximum(self.edge - np.asarray(stroke, dtype=float), 0.0) if self.edge else 0.0 * np.asarray(stroke, dtype=float)

    def above(self, depth: Number, stroke: Number) -> Array:
        """Room [mm3] from the rim to a depth [mm] with the leg at a stroke [mm], whatever stands in it."""
        edge = self.edge_at(stroke)
        return np.asarray(self.outer * np.minimum(depth, edge) + self.deep * np.maximum(depth - edge, 0.0))


@dataclass(frozen=True, eq=False)
class Leg:
    """One leg as it is built: parts; springs; solids in the open space; its tubes; `body` [mm under the rim], where the closed
    space starts that hangs from the cap, and its `area` [mm2]; None for none.
    """

    parts: tuple[LegPart, ...]
    coils: tuple[Coil, ...]
    solids: tuple[Solid, ...]
    tubes: Tubes
    body: float = 0.0
    area: float | None = None

    def named(self, name: str) -> LegPart:
        """The part of a name."""
        return next(part for part in self.parts if part.name == name)


def tubes(job: Job, leg: OpenLeg) -> Tubes:
    """The open space of a leg, by the areas that its gap is read with."""
    seal, body = float(circle(job.number("front.seal_diameter"))), shut_body(job) or _rod_met(job)
    deep = float(np.asarray(leg.pieces[-1][1]))
    if job.choice("front.layout") == "conventional":
        return Tubes(deep, deep, 0.0, _bore(deep + body, seal))
    outer = float(np.asarray(leg.pieces[0][1]))
    edge = job.number("front.outer_depth") + job.number("front.collapsed_stroke")
    return Tubes(outer, deep, edge, _bore(deep + body - (outer - seal), seal))


def shut_body(job: Job) -> float:
    """Area [mm2] of a closed cartridge, which the free area leaves out."""
    shut = job.choice("front.air") == "sealed cartridge" and job.choice("front.cartridge_state") != "opened into one"
    return float(circle(job.number("front.cartridge_body"))) if shut else 0.0


def _rod_met(job: Job) -> float:
    """Area [mm2] of a damper rod that oil poured in has met, and so left out of the free area."""
    if job.choice("front.area_by") == "diameters" or job.choice("front.air") == "sealed cartridge":
        return 0.0
    return float(circle(job.number("front.damper_rod")))


def _bore(area: float, seal: float) -> float:
    """The bore [mm] that an area stands for; one that no tube of this seal can have is drawn as the nearest that it can."""
    return float(np.sqrt(4.0 / np.pi * np.clip(area, 0.2 * seal, 0.96 * seal)))


def open_of(gas: LegGas) -> OpenLeg:
    """The space over the oil of a leg of any kind."""
    if isinstance(gas, AirLeg | SealedLeg):
        return gas.outer
    assert isinstance(gas, OpenLeg)
    return gas
