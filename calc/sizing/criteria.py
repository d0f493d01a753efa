"""What a candidate is judged by: results against their windows, each with its own margin; and what cannot be built at all."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calc.array import Array, Flags, Number
from calc.end.assembly import Assembly
from calc.end.figures import Figures
from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.springs.fit import SAME
from calc.springs.helical import coil_bind_clearance

SOFT_END = 0.1  # of the least force at full travel: how far below it counts as much as a whole window's half elsewhere


@dataclass(frozen=True, eq=False)
class Margins:
    """95 % half-widths of the results that are judged, the setup held: sags [mm, in their own measure], end multiple [-], ride
    frequency of the standard setup [Hz]. Nothing is barred by less.
    """

    rider_sag: float = 0.0
    free_sag: float = 0.0
    end_multiple: float = 0.0
    frequency: float = 0.0


@dataclass(frozen=True, eq=False)
class Criterion:
    """One result against its window, all in one unit: inside, at the edge (the edge lies within the margin), or outside."""

    value: Array
    low: Number
    high: Number
    margin: float
    scale: Number

    @property
    def beyond(self) -> Array:
        """How far the value lies beyond the window, 0 within it."""
        return np.maximum(np.maximum(self.low - self.value, self.value - self.high), 0.0)

    @property
    def outside(self) -> Flags:
        """True where the value is beyond the window by more than the margin."""
        return np.asarray(self.beyond > self.margin + SAME)

    @property
    def at_edge(self) -> Flags:
        """True where an edge of the window lies within the margin about the value."""
        near = np.minimum(np.abs(self.value - self.low), np.abs(self.value - self.high))
        return np.asarray(~self.outside & (near <= self.margin))

    @property
    def excess(self) -> Array:
        """How far outside, in half-windows; 0 where it is not outside."""
        return np.where(self.outside, (self.beyond - self.margin) / self.scale, 0.0)


@dataclass(frozen=True, eq=False)
class Room:
    """Length [mm] left before the coils touch at full travel, of the main and of a second spring; None: not known."""

    main: Number | None = None
    second: Number | None = None


def criteria(done: Figures, targets: Targets, margins: Margins) -> dict[str, Criterion]:
    """The results of candidates against their windows.

    Parameters: done, candidates' figures; targets, whose windows are asked; margins.
    Returns: a Criterion for rider sag, free sag [mm, in their own measure] and the end multiple [-], by name.
    Raises: nothing.
    Formula: a free sag of 0 is a bound, and followed on below it (see `calc.end.sag`).
    Source: common practice, no source.
    Example: see `calc.sizing.rule.decide`.
    """
    windows, along = targets.windows, targets.sag_is_stroke
    rider = np.asarray(done.rider.stroke if along else done.rider.travel)
    multiple = np.asarray(done.end_multiple)
    return {
        "rider sag": _between(rider, windows.rider_sag, margins.rider_sag),
        "free sag": _between(np.asarray(free_sag_unbounded(done, along)), windows.free_sag, margins.free_sag),
        "end of travel": Criterion(
            multiple, windows.end_multiple, np.inf, margins.end_multiple, np.maximum(SOFT_END * windows.end_multiple, SAME)
        ),
    }


def free_sag_unbounded(done: Figures, along: bool) -> Number:
    """Free sag in its own measure, followed on below 0.

    Parameters: done, figures; along, whether sags are read along the leg.
    Returns: free sag [mm].
    Raises: nothing.
    Formula: see `calc.end.sag`.
    Source: none.
    Example: see `calc.sizing.rule.decide`.
    """
    return done.free.stroke_unbounded if along else done.free.travel_unbounded


def _between(value: Array, window: tuple[Number, Number], margin: float) -> Criterion:
    low, high = window
    return Criterion(value, low, high, margin, np.maximum(0.5 * (np.asarray(high) - low), SAME))


def room_left(assembly: Assembly, setup: Setup, done: Figures, limits: Limits) -> Room:
    """The room left in the springs of a setup at full travel.

    Parameters: assembly; setup, lengths [mm]; done, its figures; limits.
    Returns: Room.
    Raises: Impossible as the end's motion.
    Formula: free length - solid length - what the spring is shortened by, each spring for itself.
    Source: geometry.
    Example: see `calc.sizing.coil.size`.
    """
    shortened = setup.preload + done.end.motion.stroke(done.end.travel)
    springs = assembly.arrangement
    second = springs.second_shortened(setup.rate, shortened)
    return Room(
        _main_left(limits, setup.rate, springs.main_shortened(setup.rate, shortened)),
        None if second is None or limits.second_room is None else limits.second_room - second,
    )


def _main_left(limits: Limits, rates: Number, shortened: Number) -> Number | None:
    """None (one spring among others: infinite) where a length is not known."""
    free, solid, fit = limits.free_length, limits.solid_length, limits.fit
    if fit is not None and fit.free is not None and fit.solid is not None:
        own = coil_bind_clearance(fit.free, fit.solid, shortened)
        fitted = np.inf if free is None or solid is None else coil_bind_clearance(free, solid, shortened)
        return np.where(fit.fitted(rates), fitted, own)
    return None if free is None or solid is None else coil_bind_clearance(free, solid, shortened)


def spread_over(done: Figures, *kinds: Mapping[str, Flags]) -> dict[str, Flags]:
    """Flags of several kinds together, each in the shape of the figures.

    Parameters: done; kinds of flags, by name.
    Returns: flags by name.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `calc.sizing.coil.size`.
    """
    return {name: np.broadcast_to(flag, np.shape(done.frequency)) for kind in kinds for name, flag in kind.items()}


def coil_bind(assembly: Assembly, room: Room, limits: Limits) -> dict[str, Flags]:
    """Where coils touch before full travel. A stacked second spring closes by design: it bars only where it does so too early.

    Parameters: assembly; room left [mm]; limits.
    Returns: flags by name; none for a length that is not known.
    Raises: nothing.
    Formula: room < margin; of a stacked second spring, room < 0.
    Source: none.
    Example: see `calc.sizing.coil.size`.
    """
    found = {} if room.main is None else {"coil bind": np.asarray(room.main < limits.bind_margin - SAME)}
    if room.second is None:
        return found
    if assembly.arrangement.second_closes:
        return found | {"second closes early": np.asarray(room.second < -1e-6)}
    return found | {"second coil bind": np.asarray(room.second < limits.bind_margin - SAME)}
