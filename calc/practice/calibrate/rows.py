"""Which rows take part, where their typical values may go, and how they are rounded."""

from __future__ import annotations

from collections.abc import Mapping

from calc.array import Array
from calc.practice.judged import JUDGED, Triple
from calc.practice.uses import USES

WEIGHT = {"H": 4.0, "M": 2.0, "L": 1.0}  # on a move of one half-range
EDGE = 0.1  # of a range, either side, where no typical value goes that was not judged there

# Rows that go into the model: the grid to which each is rounded, in the order of rounding, and the fields that it fills.
INPUTS: Mapping[str, tuple[float, tuple[str, ...]]] = {
    "shock rate": (0.0, ("rear.rate",)),  # 0: the step that springs are sold in
    "fork rate": (0.0, ("front.rate",)),
    "travel rear": (5.0, ("rear.travel",)),
    "travel front": (5.0, ("front.travel",)),
    "rake": (0.5, ("bike.rake",)),
    "standard rider": (1.0, ("rider.mass", "standard.rider")),
    "passenger": (1.0, ("rider.passenger",)),
    "luggage": (1.0, ("rider.luggage",)),
    "bike mass": (1.0, ("bike.mass",)),
    "bike front share": (0.5, ("bike.front_share",)),
    "passenger front share": (1.0, ("rider.passenger_front_share",)),
    "luggage front share": (1.0, ("rider.luggage_front_share",)),
    "rider front share sitting": (0.5, ("rider.front_share_sitting",)),
    "rider front share standing": (0.5, ("rider.front_share_standing",)),
    "leverage": (0.05, ("rear.leverage",)),
    "leverage fall": (1.0, ("rear.leverage_fall",)),
    "preload shock": (1.0, ("rear.preload",)),
    "preload fork": (1.0, ("front.preload",)),
    "gap": (5.0, ("front.gap_left",)),
    "unsprung rear": (0.1, ("rear.unsprung",)),
    "unsprung front": (0.1, ("front.unsprung",)),
}
# Rows that come out of the model, front and rear, and the grid to which each is rounded.
OUTPUTS = {"rider sag": 0.5, "free sag": 0.5, "ride frequency": 0.05, "end multiple": 0.1}

TOGETHER = (("adventure", "two-up"),)
# "As solo": one value in both.
AS_SOLO = {
    "standard rider", "rake", "travel front", "travel rear", "unsprung front", "unsprung rear", "bike mass", "bike front share",
    "rider front share sitting", "leverage", "leverage fall",
}  # fmt: skip

Key = tuple[str, str]  # a row and a use


def practised(key: Key) -> bool:
    """True where the row has a range for the use."""
    row, use = key
    return JUDGED[row].by_use[list(USES).index(use)] is not None


def judged(key: Key) -> Triple:
    """Low, high, typical of a row as it was judged."""
    row, use = key
    found = JUDGED[row].by_use[list(USES).index(use)]
    if found is None:
        raise KeyError(key)
    return found


def half_range(key: Key) -> float:
    """Half of a row's range; 0 where it is one value."""
    low, high, _ = judged(key)
    return 0.5 * (high - low)


def inside(key: Key) -> tuple[float, float]:
    """Where a typical value may go."""
    low, high, typical = judged(key)
    edge = EDGE * (high - low)
    return min(low + edge, typical), max(high - edge, typical)


def moved(key: Key, value: Array) -> Array:
    """A move from what was judged, in half-ranges, weighted by confidence."""
    half = half_range(key)
    return 0.0 * value if half == 0 else WEIGHT[JUDGED[key[0]].confidence] * (value - judged(key)[2]) / half


def grid(key: Key) -> float:
    """What a row is rounded to: springs to the step that they are sold in."""
    row, use = key
    if row not in INPUTS:
        return OUTPUTS[row.rsplit(" ", 1)[0]]
    return INPUTS[row][0] or judged((row.replace("rate", "step"), use))[2]


def rounded(key: Key, value: float) -> float:
    """A value on its row's grid."""
    return round(round(value / grid(key)) * grid(key), 6)


def beside(key: Key, value: float) -> list[float]:
    """The grid's values either side that a row may take."""
    (low, high), step = inside(key), grid(key)
    near = {round(whole * step, 6) for whole in (value // step, -(-value // step))}
    return sorted(x for x in near if low - 1e-9 <= x <= high + 1e-9) or [value]
