"""What a bike is judged by when a passenger or luggage is carried in a kind of riding whose rows are read without.

Adventure takes the two-up rows, which are the same bike loaded. For the others nobody wrote rows down. They are made from
their own by what two-up is to adventure, widened to where a light load leaves them: rider sag stays, aboard being everyone;
free sag, read unloaded, may go down to nothing at the rear, since the preload that carries the load tops the bike out; ride
frequency and end force over load may be as much lower. Confidence L.
"""

from __future__ import annotations

from dataclasses import replace

from calc.practice.general import Usual
from calc.practice.rows import listed
from calc.practice.uses import SOLD_LOADED

WITHOUT_LOAD = {"two-up": "adventure"}  # the same bike with nothing carried
_SOLO, _TWO_UP = "adventure", "two-up"
_LOWERED = frozenset(f"{row} {axle}" for row in ("ride frequency", "end multiple") for axle in ("front", "rear"))
JUDGED_BY_LOAD = _LOWERED | {f"{row} sag {axle}" for row in ("rider", "free") for axle in ("front", "rear")}


def with_load(row: str, use: str) -> Usual | None:
    """A row of JUDGED_BY_LOAD with a passenger or luggage carried.

    Parameters: row; use, not one of SOLD_LOADED.
    Returns: Usual in the row's unit.
    Raises: KeyError for an unknown row or use.
    Formula: low and typical x two-up / adventure, high stays; rear free sag from 0.
    Source: common practice, no source.
    Example:
        >>> found = with_load("ride frequency rear", "road")
        >>> round(found.low, 2), found.high
        (1.65, 2.4)
    """
    assert use not in SOLD_LOADED
    if use == _SOLO:
        return listed(row, _TWO_UP)
    own, solo, two_up = listed(row, use), listed(row, _SOLO), listed(row, _TWO_UP)
    if own is None or solo is None or two_up is None:
        return own
    if row in _LOWERED:
        own = replace(own, low=own.low * two_up.low / solo.low, typical=own.typical * min(two_up.typical / solo.typical, 1.0))
    elif row == "free sag rear":
        own = replace(own, low=two_up.low, typical=min(own.typical, two_up.typical))
    else:
        return own
    return replace(own, confidence="L", note="loaded, made from the solo range; common practice, no source")
