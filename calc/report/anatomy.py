"""Where everything in a fork leg stands, in mm under its rim: what is known as it is, what no reading tells assumed and named."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from calc.array import Array
from calc.end.assembly import ForkAssembly
from calc.gas.chamber import Chamber, circle
from calc.job import Job
from calc.leg.air import AirLeg
from calc.leg.open import LegGas
from calc.leg.sealed import SealedLeg
from calc.model import fitted
from calc.report.coils import Coil, Springs
from calc.report.tubes import Leg, Solid, Tubes, open_of, shut_body, tubes
from calc.report.types import LegPart

# Lengths and walls that no field asks for, in mm. Our own guesses, drawn and in no force: common practice, no source.
OVERLAP = {"upside-down": 250.0, "conventional": 150.0}  # tube in tube, hanging
CLAMPED = 220.0  # of a conventional inner tube above the outer one, collapsed
LEFT_OVER = 10.0  # of chrome, collapsed
OUTER_WALL, BODY_WALL = 3.0, 1.5
ADJUSTER, LEAST_PLUG, FOOT, LUG = 12.0, 8.0, 15.0, 45.0
PISTON, GUIDE = 10.0, 25.0
UNDER = 80.0  # of tube under the oil where it stands deepest
DAMPER_ROD = 60e3  # mm3, more than a rod over the oil has

Inside = tuple[tuple[LegPart, ...], tuple[Coil, ...], tuple[Solid, ...]]


@dataclass(frozen=True, eq=False)
class Build:
    """What one leg is built from, and where that puts it.

    Parameters: job; fork; preload [mm]; gas of this leg; rate [N/mm] of its spring, None for none; gap [mm]; strokes [mm] to be
    drawn, from full extension; start [mm], where in them it hangs.
    """

    job: Job
    fork: ForkAssembly
    preload: float
    gas: LegGas
    rate: float | None
    gap: float
    strokes: Array
    start: float = 0.0

    def leg(self, length: float) -> Leg:
        """The leg, its axle lug [mm] under the rim."""
        kind = self._air if isinstance(self.gas, AirLeg) else self._hung if self._is_hung else self._standing
        parts, coils, solids = kind(length)
        cap = LegPart("cap", -FOOT, self._plug, self._top_bore, 0.0, False, ("length",))
        plug = Solid(self._plug_volume, 0.0, self._plug)
        steel = (Solid(open_of(self.gas).steel_of(self.rate), coils[0].top, coils[0].bottom),) if coils else ()
        spacer = (Solid(self._number("spacer_volume"), self._plug, self._plug + self._spacer),) if self._spacer else ()
        body, area = (self._body_top, self._body_area) if self._is_hung and not isinstance(self.gas, AirLeg) else (0.0, None)
        standing = (plug, *spacer, *steel, *self._rod_counted(length), *solids)
        return Leg((*self._tubes(length), cap, *parts), coils, standing, self.tubes, body, area)

    def _rod_counted(self, length: float) -> tuple[Solid, ...]:
        """The damper rod that the gap's law has in a free area known from diameters: from the rim down."""
        area, foot = float(np.asarray(open_of(self.gas).rod)), length - self.strokes
        return (Solid(area * foot, 0.0, foot),) if area else ()

    def needed(self) -> float:
        """Least length [mm] from the rim to the axle lug that holds all of it."""
        closed, spring = self._number("collapsed_stroke"), self._spring_length
        over = self._number("outer_depth") + LEFT_OVER if self.tubes.edge else CLAMPED
        usual = 2.0 * closed + OVERLAP[self.job.choice("front.layout")] + over
        oil = self._deepest + UNDER + (0.0 if self.tubes.edge else closed)
        if isinstance(self.gas, AirLeg):
            within = self._cylinder[2] + max(closed, spring) + 2.0 * FOOT
        elif self._is_hung:
            within = self._body_top + closed + self._charge_length + 2.0 * GUIDE + spring + FOOT
        else:
            within = self._seat + spring + closed + 2.0 * GUIDE + FOOT
        return max(usual, oil, within)

    @cached_property
    def tubes(self) -> Tubes:
        """The open space."""
        return tubes(self.job, open_of(self.gas))

    def _number(self, key: str) -> float:
        return self.job.number(f"front.{key}")

    @cached_property
    def _is_hung(self) -> bool:
        return self.job.choice("front.air") == "sealed cartridge"

    @cached_property
    def _springs(self) -> Springs | None:
        if self.rate is None:
            return None
        steel = float(np.asarray(open_of(self.gas).steel_of(self.rate)))
        return Springs(self.job, self.fork.arrangement, self.rate, steel, self.preload, self.tubes.bore, self.strokes - self.start)

    @cached_property
    def _spring_length(self) -> float:
        return float(self._springs.length[0]) if self._springs else 0.0

    @cached_property
    def _deepest(self) -> float:
        """Where the oil stands hanging [mm under the rim], at most: all that stands in the leg over it."""
        chamber, space = next(iter(self.gas.gases(self.rate, self.gap))), self.tubes
        gas = float(np.asarray(chamber.volume0)) if isinstance(chamber, Chamber) else 0.0
        body = shut_body(self.job) * space.edge + DAMPER_ROD
        stands = (
            body
            + float(np.asarray(open_of(self.gas).steel_of(self.rate)))
            + max(self._plug_volume, 0.0)
            + self._number("spacer_volume")
        )
        return space.edge + max(gas + stands - space.outer * space.edge, 0.0) / space.deep

    @cached_property
    def _top_bore(self) -> float:
        return float(np.sqrt(4.0 / np.pi * self.tubes.outer)) if self.tubes.edge else self.tubes.bore

    @cached_property
    def _plug_volume(self) -> float:
        return self._number("cap_volume") + self._number("washers_volume") + self._number("rod_volume")

    @cached_property
    def _plug(self) -> float:
        """How deep [mm] the cap reaches, with the small parts that go in with it."""
        return max(LEAST_PLUG, self._plug_volume / (0.9 * self.tubes.outer))

    @cached_property
    def _spacer(self) -> float:
        """Length [mm] of what stands between cap and spring: entered, or what its volume must have."""
        least = self._number("spacer_volume") / (0.4 * self.tubes.outer)
        if self.job.choice("front.preload_from") == "lengths":
            return max(self._number("spacers"), least)
        return max(self._number("spacer_length") if self.job.choice("front.gap_read") == "in" else 0.0, least)

    def _tubes(self, length: float) -> tuple[LegPart, ...]:
        """Both tubes and the axle lug. Where a tube ends is assumed; how far its edge stands in the other is not."""
        closed, seal, end = self._number("collapsed_stroke"), self._number("seal_diameter"), ("length",)
        lug, edge = LegPart("axle lug", length, length + LUG, seal + 10.0, 0.0, True, end), length - closed - LEFT_OVER
        if self.tubes.edge:
            wide = self._top_bore + 2.0 * OUTER_WALL
            outer = LegPart("outer tube", 0.0, edge, wide, self._top_bore, False, (*end, "wall"))
            return outer, LegPart("inner tube", self.tubes.edge, length, seal, self.tubes.bore, True, end), lug
        bore = seal + 2.6
        top, wide = edge - OVERLAP["conventional"], bore + 2.0 * OUTER_WALL
        lower = LegPart("outer tube", top, length, wide, bore, True, (*end, "bore", "wall"))
        return lower, LegPart("inner tube", 0.0, edge, seal, self.tubes.bore, False, end), lug

    # A damper that stands on the foot, its rod hung from the cap; the spring stands on it.

    @cached_property
    def _seat(self) -> float:
        """Top [mm under the rim] of the spring: preload that is added pushes it down from the cap."""
        added = 0.0
        if self.rate is not None:
            added = self.preload - float(np.asarray(fitted.preload(self.job, "front")))
        return max(self._plug + self._spacer + ADJUSTER + added, self._plug + self._spacer)

    def _standing(self, length: float) -> Inside:
        rod, body, guess = self._rod, 0.72 * self.tubes.bore, ("length", "width")
        foot = self._seat + self._spring_length
        if self.rate is None:
            foot = length - self._number("collapsed_stroke") - 2.0 * GUIDE - FOOT
        parts = [
            LegPart("cartridge", foot, length, body, body - 2.0 * BODY_WALL, True, guess),
            LegPart("rod", self._plug, foot + GUIDE, rod, 0.0, False, guess),
            LegPart("piston", foot + GUIDE, foot + GUIDE + PISTON, body - 2.0 * BODY_WALL, 0.0, False, guess),
        ]
        if self._spacer:
            wide = 0.6 * self.tubes.bore
            parts.append(LegPart("spacer", self._seat - self._spacer, self._seat, wide, wide - 4.0, False, ("width",)))
        coils = self._springs.coils(self._seat + 0.0 * self.strokes) if self._springs else ()
        return tuple(parts), coils, self._rod_met()

    def _rod_met(self) -> tuple[Solid, ...]:
        """The rod over the inner tube's edge, where oil poured in did not meet it: under it the free area leaves it out."""
        if self.job.choice("front.area_by") == "diameters" or not self.tubes.edge:
            return ()
        top = self._number("outer_depth")
        edge = np.maximum(self.tubes.edge_at(self.strokes), top + 1e-6)
        return (Solid(float(circle(self._rod)) * (edge - top), top, edge),)

    @cached_property
    def _rod(self) -> float:
        return self._number("damper_rod")

    # A cartridge or an air spring hung from the cap, its rod standing on the foot; a spring stands round the rod.

    @cached_property
    def _body_top(self) -> float:
        return max(self._plug, self._number("outer_depth")) if self.tubes.edge else self._plug

    @cached_property
    def _body_area(self) -> float:
        return float(circle(self._number("cartridge_body") - 2.0 * BODY_WALL))

    @cached_property
    def _charge_length(self) -> float:
        """Length [mm] of the gas in a cartridge that holds any."""
        cartridge = self.gas.cartridge if isinstance(self.gas, SealedLeg) else None
        return float(np.asarray(cartridge.volume0)) / self._body_area if isinstance(cartridge, Chamber) else 60.0

    def _round_rod(self, length: float) -> tuple[Coil, ...]:
        return self._springs.coils(length - FOOT - self.strokes - self._springs.length) if self._springs else ()

    def _hung(self, length: float) -> Inside:
        start, body, guess = self._body_top, self._number("cartridge_body"), ("length",)
        end = length - FOOT - (self._spring_length or self._number("collapsed_stroke"))
        shut = shut_body(self.job)
        width = () if self.job.entered("front.cartridge_body") else ("width",)
        parts = (
            LegPart("cartridge" if shut else "opened cartridge", start, end, body, body - 2.0 * BODY_WALL, False, (*guess, *width)),
            LegPart("rod", end - GUIDE, length, self._rod, 0.0, True, guess),
            LegPart("piston", end - GUIDE - PISTON, end - GUIDE, body - 2.0 * BODY_WALL, 0.0, True, guess),
        )
        # Under the inner tube's edge the free area leaves the closed body out already; over it the body is in the way.
        clear = np.maximum(self.tubes.edge_at(self.strokes), start + 1e-6)
        in_way = (Solid(shut * (clear - start), start, clear),) if shut and self.tubes.edge else ()
        return parts, self._round_rod(length), in_way

    @cached_property
    def _cylinder(self) -> tuple[float, float, float]:
        """Of an air spring: its top, its piston hanging, its bottom [mm under the rim]."""
        assert isinstance(self.gas, AirLeg)
        spring, top = self.gas.spring, self._plug + 6.0
        piston = top + float(np.asarray((spring.volume + spring.second) / spring.piston))
        balanced = self.job.choice("front.balance") == "yes"
        under = float(np.asarray(spring.balance_volume / spring.balance_area)) if balanced else 20.0
        return top, piston, piston + PISTON + under

    def _air(self, length: float) -> Inside:
        top, piston, bottom = self._cylinder
        bore, balanced = self._number("air_piston"), self.job.choice("front.balance") == "yes"
        rod = self._number("balance_rod") if balanced else self._rod
        parts = (
            LegPart("air cylinder", top, bottom, bore + 2.0 * BODY_WALL, bore, False, ("wall",)),
            LegPart("rod", piston + PISTON, length, rod, 0.0, True, ("length",) if balanced else ("length", "width")),
            LegPart("air piston", piston, piston + PISTON, bore, 0.0, True),
        )
        return parts, self._round_rod(length), ()
