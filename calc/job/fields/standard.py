"""The standard rider on the standard setup: the yardstick of the default end-of-travel target and of the front's key."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_WHO = "The rider weight that the bike is sprung for as sold: from the manual, or ask the dealer."
_AS_SOLD = "From the maker's manual, or from a fork or shock that has never been opened."

_CHANGED = {"as sold": "Those it was sold with", "changed": "Changed since", "unknown": "Not known"}
_ASK = "What the maker fitted for the rider the bike is sold for is what the choice measures from."

STANDARD = (
    Field(
        "standard.fork_springs", "Fork springs that are in", Part.SPRINGS, Kind.CHOICE, choices=_CHANGED, default=Default(choice="unknown"),
        end="front", how=_ASK, typed="stated", main=True,
    ),
    Field(
        "standard.shock_spring", "Shock spring that is in", Part.REAR, Kind.CHOICE, choices=_CHANGED, default=Default(choice="unknown"),
        end="rear", how=_ASK, typed="stated", main=True,
    ),
    Field(
        "standard.rider", "Bike set up for a rider of", Part.BIKE, _Q, "mass", "kg", 20, 200, 1, 0, plus_minus=5, main=True,
        usual="standard rider", default=Default("standard rider"), how=_WHO, typed="stated",
    ),
    Field(
        "standard.fork_rate", "Fork springs as sold", Part.SPRINGS, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2,
        plus_minus_relative=0.03, usual="fork rate", default=Default("fork rate", follow="front.rate", as_sold="standard.fork_springs"), when={"standard.fork_springs": ("changed", "unknown")}, end="front", how=_AS_SOLD, typed="stated",
    ),
    Field(
        "standard.fork_preload", "Fork preload as sold", Part.SPRINGS, _Q, "length", "mm", 0, 60, 1, 0, plus_minus=1,
        usual="preload fork", end="front", how=f"{_AS_SOLD} Empty: what gives the standard rider the rider sag wanted.", typed="stated",
    ),
    Field(
        "standard.gap", "Gap as sold", Part.OIL, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default("gap", reason="collapsed, spring and spacer out, told in your own convention; common practice, no source"), end="front", how="From the manual, measured the same way as your own reading.", typed="stated",
    ),
    Field(
        "standard.shock_rate", "Shock spring as sold", Part.REAR, _Q, "spring rate", "N/mm", 10, 400, 2, 0,
        plus_minus_relative=0.03, usual="shock rate", default=Default("shock rate", follow="rear.rate", as_sold="standard.shock_spring"), when={"standard.shock_spring": ("changed", "unknown")}, end="rear", how=_AS_SOLD, typed="stated",
    ),
    Field(
        "standard.shock_preload", "Shock preload as sold", Part.REAR, _Q, "length", "mm", 0, 60, 1, 0, plus_minus=1,
        usual="preload shock", end="rear", how=f"{_AS_SOLD} Empty: what gives the standard rider the rider sag wanted.", typed="stated",
    ),
)  # fmt: skip
