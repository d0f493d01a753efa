"""What is wanted of an end: rider sag, the end of the travel, the ride frequency to come near to, and the usual windows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number


@dataclass(frozen=True, eq=False)
class Windows:
    """Between what a result is no fault.

    Parameters: rider_sag [mm], the wanted one either way of which a bench is content; free_sag [mm], usual or the user's own;
    both in the sag's own measure; end_multiple [-], the least force at full travel over the static rider load; frequency
    [Hz], usual.
    """

    rider_sag: tuple[Number, Number] = (-np.inf, np.inf)
    free_sag: tuple[Number, Number] = (-np.inf, np.inf)
    end_multiple: Number = 0.0
    frequency: tuple[float, float] = (0.0, np.inf)


@dataclass(frozen=True, eq=False)
class Targets:
    """What is wanted.

    Parameters: sag [mm] of rider sag: along the leg at the front (`sag_is_stroke`), vertical at the rear; end_kind
    "force" [N], "energy" [N mm] or "none"; end_amount in that unit; frequency [Hz] of the standard rider on the standard
    setup; wish [Hz], a frequency of the user's own in its place, or free_sag [mm, in the sag's own measure], a free sag in
    its place; windows; gap_found [mm], the gap that is in, where it stays while the force at full travel falls short of what is
    wanted by no more than gap_within[0] of it, exceeds it by no more than gap_within[1] [-], and keeps the least multiple;
    gap_stays, where that is decided already, by candidate.
    """

    sag: Number
    sag_is_stroke: bool
    end_kind: str
    end_amount: Number
    frequency: Number = 1.0
    wish: Number | None = None
    free_sag: Number | None = None
    windows: Windows = Windows()
    gap_found: Number | None = None
    gap_within: tuple[float, float] = (0.0, 0.0)
    gap_stays: Flags | None = None
