"""After the ride: how far an o-ring was pushed, from what height, how warm and where it was, and what the rider felt."""

from __future__ import annotations

from calc.job.field import Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY
_R = Part.RIDE

FELT = {
    "well": "Works well", "harsh": "Harsh on small bumps", "deep": "Dives, or sits deep", "bottoms": "Bottoms hard",
    "hard": "Goes hard deep in the travel", "kicks": "Kicks back",
}  # fmt: skip

RIDE = (
    Field(
        "ride.drop", "Flat drop landed", _R, _Q, "length", "cm", 5, 400, 10, 0, plus_minus_relative=0.15, result=True,
        how="How far the wheels fell onto flat ground, both together, on the hardest landing. Leave empty if that was not a drop.",
    ),
    Field(
        "ride.temperature", "Leg temperature after it", _R, _Q, "temperature", "°C", -30, 120, 5, 0, plus_minus=3, result=True, end="front",
        how="By a stick-on or infrared thermometer on the outer tube, as the bike comes in.",
    ),
    Field(
        "ride.altitude", "Ridden at, this time", _R, _Q, "length", "m", -400, 5000, 50, 0, plus_minus=50, result=True, end="front",
        how="Altitude from a map. Leave empty if it is where the setup was worked out for.",
    ),
)  # fmt: skip


def ride_fields(axle: Axle, deepest: float, where: str) -> tuple[Field, ...]:
    """An end's own; `where` the o-ring stands, and its highest mark, `deepest` [mm] at the most."""
    return (
        Field(
            f"{axle}.mark", f"{axle.capitalize()} o-ring, highest mark", _R, _Q, "length", "mm", 1, deepest, 1, 0, plus_minus=2, end=axle, result=True,
            how=f"Push the o-ring (or a cable tie) to the seal before the ride; after it, from the seal to the ring {where}.",
        ),
        Field(
            f"{axle}.felt", f"{axle.capitalize()}, as the rider felt it", _R, Kind.CHOICE, choices=FELT, end=axle, typed="stated", result=True,
            how="What the rider says of this end, once asked for one thing.",
        ),
    )  # fmt: skip
