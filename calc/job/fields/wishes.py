"""What a user may wish in place of the standard setup's ride, and how far rider sag may miss: decisions, not readings."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY


def wishes(axle: Axle, part: Part, where: str) -> tuple[Field, ...]:
    """The decisions of an end beside rider sag; `where` says how sag is read."""
    high = 150 if axle == "front" else 200
    return (
        Field(
            f"{axle}.sag_within", "Rider sag may miss by", part, _Q, "share", "%", 0.2, 10, 0.5, 1, end=axle, typed="stated", decision=True,
            default=Default(value=2.0), how="Of the travel, either way. A spring that can't reach the sag within this doesn't fit.",
        ),
        Field(
            f"{axle}.target_frequency", "Ride frequency wanted", part, _Q, "frequency", "Hz", 0.8, 4, 0.05, 2, usual=f"ride frequency {axle}",
            end=axle, typed="stated", decision=True, how="If left empty, what the standard rider has on the standard setup.",
        ),
        Field(
            f"{axle}.target_free_sag", "Free sag wanted", part, _Q, "length", "mm", 0, high, 1, 0, usual=f"free sag {axle}",
            end=axle, typed="stated", decision=True, percent_of=f"{axle}.travel",
            how=f"{where}, bike alone, or in % of travel. Chooses the spring that leaves it. If left empty, the ride frequency chooses.",
        ),
    )  # fmt: skip
