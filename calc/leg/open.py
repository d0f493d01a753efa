"""The gas of an open fork leg from its gap, by the whole convention: what is read, in which state, and what goes in after."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np

from calc.array import Array, Number, every, find_root, some
from calc.gas.chamber import Chamber, Gas, circle, gas_above_oil, open_leg
from calc.gas.warm import Warmth, warmed
from calc.impossible import Impossible
from calc.springs.helical import steel_of_other_rate

DEEPEST_GAP = 500.0  # mm, the search's end: deeper than any leg's tube


class LegGas(Protocol):
    """What a fork needs of a leg's gas of any kind. `rate` [N/mm] tells the steel of the spring in the leg; None for no spring."""

    def gases(self, rate: Number | None, gap: Number) -> tuple[Gas, ...]: ...

    def lock_gap(self, rate: Number | None) -> Number: ...

    def oil_to_add(self, found_rate: Number | None, found_gap: Number, rate: Number | None, gap: Number) -> Number: ...

    def other_gap(self, rate: Number, gap: Number) -> Number: ...


@dataclass(frozen=True, eq=False)
class OpenLeg:
    """The space over a leg's oil: all of a leg whose spaces share one air space, or what lies around a cartridge in one.

    Parameters: pieces of free area (see `gas.gas_above_oil`); seal_diameter, collapsed_stroke, stroke (full travel along
    the leg) [mm]; steel [mm3] of the fitted spring and its fitted_rate [N/mm]; spacer, others [mm3] (washers, cap, rod
    above the rim); spring_in: the gap is read with the spring and the spacer in, then free_length and spacer_length [mm]
    count; bleed [MPa], ambient pressure where it was bled; bled_stroke [mm]; warmth where it is not ridden at the
    temperature it was bled at; inside [mm2], the part of the seal area that other spaces sweep; name of the space; rod
    [mm2], a damper rod that stands in the free area, its end level with the rim while the leg is collapsed and the rod down;
    extended: the gap is read with the leg extended, the rod still down.
    Formula: see `gas.open_leg`.
    Source: geometry.
    """

    pieces: Sequence[tuple[Number, Number]]
    seal_diameter: Number
    collapsed_stroke: Number
    stroke: Number
    steel: Number
    fitted_rate: Number
    spacer: Number
    others: Number
    spring_in: bool
    free_length: Number
    spacer_length: Number
    bleed: Number
    bled_stroke: Number
    warmth: Warmth | None = None
    inside: Number = 0.0
    name: str = "leg"
    rod: Number = 0.0
    extended: bool = False

    @property
    def area(self) -> Number:
        """Swept area [mm2]."""
        return circle(self.seal_diameter) - self.inside

    @property
    def free_area(self) -> tuple[tuple[Number, Number], ...]:
        """Pieces of free area as the gap is read. Extended, the top of the tube is drawn up from the rod's end and the rest."""
        around = tuple((length, area - self.rod) for length, area in self.pieces)
        return ((self.collapsed_stroke, self.pieces[0][1]), *around) if self.extended else around

    @property
    def drawn_out(self) -> Number:
        """Stroke [mm] by which the leg is still to be drawn out once its gap is read."""
        return 0.0 if self.extended else self.collapsed_stroke

    def steel_of(self, rate: Number | None) -> Number:
        """Steel [mm3] of a spring of this rate, 0 for none."""
        return 0.0 if rate is None else steel_of_other_rate(self.steel, self.fitted_rate, rate)

    def gas_above(self, gap: Number, rate: Number | None, spring_in: bool) -> Number:
        """Gas [mm3] above the oil as the gap is read, with the spring in or out."""
        empty = gas_above_oil(gap, self.free_area)
        if not spring_in or rate is None:
            return empty
        spring_depth = np.maximum(gap - self.spacer_length, 0.0)
        deep = np.clip(gap / np.maximum(self.spacer_length, 1e-9), 0.0, 1.0)
        spacer = self.spacer * np.where(np.asarray(self.spacer_length) > 0, deep, 1.0)
        return empty - self.steel_of(rate) / self.free_length * spring_depth - spacer

    def goes_in(self, rate: Number | None, spring_in: bool) -> Number:
        """What goes in [mm3] after the gap is read."""
        return self.others + (0.0 if spring_in or rate is None else self.steel_of(rate) + self.spacer)

    def as_read(self, rate: Number | None, gap: Number) -> Chamber:
        """The gas at full extension, at the temperature at which the gap was read."""
        above, goes_in = self.gas_above(gap, rate, self.spring_in), self.goes_in(rate, self.spring_in)
        return open_leg(above, self.area, self.drawn_out, goes_in, self.bleed, self.bled_stroke, self.name)

    def chamber(self, rate: Number | None, gap: Number) -> Chamber:
        """The gas at full extension, in use."""
        read = self.as_read(rate, gap)
        return read if self.warmth is None else warmed(read, self.warmth, self.bleed, self.bled_stroke)

    def gases(self, rate: Number | None, gap: Number) -> tuple[Gas, ...]:
        """The one chamber."""
        return (self.chamber(rate, gap),)

    def lock_gap(self, rate: Number | None) -> Number:
        """Gap [mm] at which the last gas is used up exactly at full travel; 0 where none is needed.

        Raises Impossible where no gap leaves any.
        """
        grows, oil = (1.0, 0.0) if self.warmth is None else (self.warmth.factor(), self.warmth.oil_growth())
        swept = self.area * self.stroke
        room = grows * (self.area * self.drawn_out - self.goes_in(rate, self.spring_in)) - oil - swept

        def left_over(gap: Number) -> Array:
            return np.asarray(grows * self.gas_above(gap, rate, self.spring_in) + room)

        none = 0.0 * left_over(0.0)
        roomy = left_over(none) > 0
        if every(roomy):
            return none
        if np.any(left_over(none + DEEPEST_GAP) <= 0):
            raise Impossible(
                "hydraulic-lock",
                f"The {self.name} is oil-locked before full travel at any gap up to {DEEPEST_GAP:.0f} mm.",
                "Check the travel, the seal diameter, the free area and what goes in after the gap is read.",
                "front.seal_diameter",
            )
        root = find_root(lambda gap: np.where(roomy, gap - DEEPEST_GAP / 2, left_over(gap)), none, none + DEEPEST_GAP, 1e-6)
        return np.where(roomy, 0.0, root)

    def other_gap(self, rate: Number | None, gap: Number) -> Array:
        """The same leg's gap [mm], read the other way: spring out for in, in for out. Raises as `gap_as`."""
        return self.gap_as(replace(self, spring_in=not self.spring_in), rate, gap)

    def gap_as(self, other: OpenLeg, rate: Number | None, gap: Number) -> Array:
        """The gap [mm] that `other`, the same leg in another convention, reads where this one reads `gap`.

        Raises Impossible where it cannot be read that way, the oil standing above the rim or below the tube.
        """
        return other.gap_of_gas(self.hanging(rate, gap), rate)

    def hanging(self, rate: Number | None, gap: Number) -> Number:
        """Gas [mm3] at full extension of a gap as read, whatever its sign."""
        return self.gas_above(gap, rate, self.spring_in) + self.area * self.drawn_out - self.goes_in(rate, self.spring_in)

    def gap_of_gas(self, volume: Number, rate: Number | None) -> Array:
        """Gap [mm] that leaves a volume of gas [mm3] at full extension. Raises Impossible where none does."""

        def surplus(trial: Number) -> Array:
            return np.asarray(self.hanging(rate, trial) - volume)

        low = 0.0 * surplus(0.0)
        if some(surplus(low) > 0) or some(surplus(low + DEEPEST_GAP) < 0):
            raise Impossible("gap-convention", "The gap cannot be read in the other convention.", "Keep to your own.")
        return find_root(surplus, low, low + DEEPEST_GAP)

    def gap_of(self, above_oil: Number, rate: Number | None) -> Number:
        """Gap [mm], in the leg's own convention, of a volume [mm3] over the oil, leg collapsed, spring and spacer out.

        Raises Impossible where it lies deeper than any tube.
        """
        bare = replace(self, spring_in=False)
        volume = above_oil + self.area * self.collapsed_stroke - self.goes_in(rate, False)
        if some(bare.hanging(rate, DEEPEST_GAP) < volume):
            raise Impossible("filled", f"That little oil stands deeper than {DEEPEST_GAP:.0f} mm.", "Check the volumes.")
        gap = bare.gap_of_gas(volume, rate)
        return bare.other_gap(rate, gap) if self.spring_in else gap

    def oil_to_add(self, found_rate: Number | None, found_gap: Number, rate: Number | None, gap: Number) -> Number:
        """Oil [mm3] to add, below 0 to take out, from a found spring and gap to new ones."""
        found = self.as_read(found_rate, found_gap).volume0 + self.steel_of(found_rate)
        return found - self.as_read(rate, gap).volume0 - self.steel_of(rate)
