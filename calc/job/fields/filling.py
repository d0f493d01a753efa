"""The gap as it is read while a leg is being filled. No answer rests on it: it is on its way to the gap wanted."""

from __future__ import annotations

from calc.job.field import Field, Kind, Part

_HOW = (
    "As you read every other gap: damper bled until smooth, rod down, the same spring and spacer out or in. "
    "Pour a little less than you think, wait five minutes, read."
)


def _leg(side: str) -> Field:
    return Field(
        f"front.filling_gap_{side}", f"Gap read now, {side}", Part.FILLING, Kind.QUANTITY, "length", "mm", 20, 500, 1, 0,
        plus_minus=1, end="neither", result=True, how=_HOW,
    )  # fmt: skip


FILLING = (_leg("left"), _leg("right"))
