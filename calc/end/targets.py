"""What is wanted of an end: rider sag, the end of the travel, and what the choice measures from."""

from __future__ import annotations

from dataclasses import dataclass

from calc.array import Number


@dataclass(frozen=True, eq=False)
class Targets:
    """What is wanted.

    Parameters: sag [mm] of rider sag: along the leg at the front (`sag_is_stroke`), vertical at the rear; end_kind
    "force" [N], "energy" [N mm] or "none"; end_amount in that unit; frequency [Hz] that the front's key measures from,
    or free_sag [mm, vertical] that the rear's key measures from.
    """

    sag: Number
    sag_is_stroke: bool
    end_kind: str
    end_amount: Number
    frequency: Number | None = None
    free_sag: Number | None = None
