"""What can be built: the limits of an end, the room left in its springs, and what they bar."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number
from calc.end.assembly import Assembly
from calc.end.figures import Figures
from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.springs.fit import SAME
from calc.springs.helical import coil_bind_clearance


@dataclass(frozen=True, eq=False)
class Room:
    """Length [mm] left before the coils touch at full travel, of the main and of a second spring; None: not known."""

    main: Number | None = None
    second: Number | None = None


def room_left(assembly: Assembly, setup: Setup, done: Figures, limits: Limits) -> Room:
    """The room left in the springs of a setup at full travel.

    Parameters: assembly; setup, lengths [mm]; done, its figures; limits.
    Returns: Room.
    Raises: nothing.
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
        unknown = free is None or solid is None
        fitted = np.inf if unknown else coil_bind_clearance(free, solid, shortened)  # type: ignore[arg-type]
        return np.where(fit.fitted(rates), fitted, own)
    return None if free is None or solid is None else coil_bind_clearance(free, solid, shortened)


def bars(done: Figures, *kinds: Mapping[str, Flags]) -> dict[str, Flags]:
    """Vetoes of several kinds together.

    Parameters: done, the figures, whose shape all take; kinds of vetoes, by name.
    Returns: vetoes by name.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `calc.sizing.coil.size`.
    """
    return {name: np.broadcast_to(veto, np.shape(done.frequency)) for kind in kinds for name, veto in kind.items()}


def preload_bars(setup: Setup, limits: Limits) -> dict[str, Flags]:
    """Where a preload cannot be built.

    Parameters: setup, lengths [mm]; limits.
    Returns: vetoes by name.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> {name: bool(veto) for name, veto in preload_bars(Setup(4.6, 16.0, 120.0), Limits((0.0, 15.0), None, None)).items()}
        {'preload below': False, 'preload above': True}
    """
    return {
        "preload below": np.asarray(setup.preload < limits.preload[0] - SAME),
        "preload above": np.asarray(setup.preload > limits.preload[1] + SAME),
    }


def gap_bars(setup: Setup, unreachable: Flags, limits: Limits) -> dict[str, Flags]:
    """Where no gap meets the end-of-travel target, or the one that does is outside its limits.

    Parameters: setup, lengths [mm]; unreachable, where none does; limits.
    Returns: vetoes by name; none where there is no gap to set.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `calc.sizing.coil.size`.
    """
    if limits.gap is None:
        return {}
    return {
        "end unreachable": unreachable,
        "gap below": ~unreachable & (np.asarray(setup.gap) < limits.gap[0] - SAME),
        "gap above": ~unreachable & (np.asarray(setup.gap) > limits.gap[1] + SAME),
    }


def spring_bars(assembly: Assembly, room: Room, limits: Limits) -> dict[str, Flags]:
    """Where coils touch before full travel. A stacked second spring closes by design: it bars only where it does so too early.

    Parameters: assembly; room left [mm]; limits.
    Returns: vetoes by name; none for a length that is not known.
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


def free_sag_bars(done: Figures, limits: Limits, along: bool) -> dict[str, Flags]:
    """Where free sag leaves its window.

    Parameters: done; limits; along, whether sag [mm] is read along the leg.
    Returns: vetoes by name; none where there is no window.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `calc.sizing.coil.size`.
    """
    if limits.free_sag is None:
        return {}
    free = np.asarray(done.free.stroke if along else done.free.travel)
    return {"free sag below": free < limits.free_sag[0] - SAME, "free sag above": free > limits.free_sag[1] + SAME}
