"""The standard rider on the standard setup: the yardstick of the default end-of-travel target and of the front's key."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_WHO = "The rider weight that the bike is sprung for as sold: from the manual, or ask the dealer."
_AS_SOLD = "From the maker's manual, or from a fork or shock that has never been opened."

STANDARD = (
    Field(
        "standard.rider", "Bike set up for a rider of", Part.BIKE, _Q, "mass", "kg", 20, 200, 1, 0, plus_minus=5, main=True,
        usual="standard rider", default=Default("standard rider"), how=_WHO, typed="stated",
    ),
    Field(
        "standard.fork_rate", "Fork springs as sold", Part.SPRINGS, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2,
        plus_minus_relative=0.03, usual="fork rate", default=Default(follow="front.rate"), end="front", how=_AS_SOLD, typed="stated",
    ),
    Field(
        "standard.fork_preload", "Fork preload as sold", Part.SPRINGS, _Q, "length", "mm", 0, 60, 1, 0, plus_minus=1,
        usual="preload fork", default=Default("preload fork"), end="front", how=_AS_SOLD, typed="stated",
    ),
    Field(
        "standard.gap", "Gap as sold", Part.OIL, _Q, "length", "mm", 20, 350, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default("gap"), end="front", how="From the manual, measured the same way as your own reading.", typed="stated",
    ),
    Field(
        "standard.shock_rate", "Shock spring as sold", Part.REAR, _Q, "spring rate", "N/mm", 10, 400, 2, 0,
        plus_minus_relative=0.03, usual="shock rate", default=Default(follow="rear.rate"), end="rear", how=_AS_SOLD, typed="stated",
    ),
    Field(
        "standard.shock_preload", "Shock preload as sold", Part.REAR, _Q, "length", "mm", 0, 60, 1, 0, plus_minus=1,
        usual="preload shock", default=Default("preload shock"), end="rear", how=_AS_SOLD, typed="stated",
    ),
)  # fmt: skip
