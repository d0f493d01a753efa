"""How the shock follows the rear wheel: leverage, measured pairs, a table, or the linkage's points."""

from __future__ import annotations

from collections.abc import Mapping

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_R = Part.REAR
_POINTS = {"rear.motion_from": ("points",)}
_DIRECT = _POINTS | {"rear.linkage": ("direct",)}
_ROCKER = _POINTS | {"rear.linkage": ("rocker",)}
_WHERE = "from the swingarm pivot, bike level: forward and up are +, backward and down are -"


def _point(key: str, label: str, when: Mapping[str, tuple[str, ...]], what: str) -> tuple[Field, Field]:
    """A point of the side view: how far forward and how far up."""
    across, up = (
        Field(
            f"rear.{key}_{axis}", f"{label}, {way}", _R, _Q, "length", "mm", -1200, 1200, 1, 1, plus_minus=1, when=when, main=True,
            end="rear", how=f"{what}, in mm {_WHERE}.",
        )
        for axis, way in (("x", "forward"), ("z", "up"))
    )  # fmt: skip
    return across, up


LINKAGE = (
    Field(
        "rear.motion_from", "Linkage known from", _R, Kind.CHOICE, default=Default(choice="leverage"), end="rear", typed="stated",
        choices={
            "leverage": "Average leverage and its fall",
            "pairs": "Measured pairs, fitted",
            "table": "An exact table",
            "points": "Points of the linkage",
        },
        how="Pairs of wheel travel and shock length read by rule are fitted with a smooth curve. A table counts as exact to 0.01 mm: fit one that is rounded to whole or half millimetres.",
    ),
    Field(
        "rear.pairs", "Wheel travel and shock length", _R, Kind.PAIRS, "length", "mm", 0, 450, when={"rear.motion_from": ("pairs", "table")},
        second_dimension="length", second_unit="mm", second_low=100, second_high=900, fewest=4, main=True, end="rear",
        how="Spring off, wheel hanging, then raised in steps to full travel: vertical rise at the axle, then the shock eye to eye. Five heights or more, a semicolon between them.",
    ),
    Field(
        "rear.linkage", "Shock is worked", _R, Kind.CHOICE, default=Default(choice="direct"), when=_POINTS, end="rear", typed="stated", main=True,
        choices={"direct": "By the swingarm", "rocker": "Through a rod and a rocker"}, how="What the moving end of the shock is bolted to.",
    ),
    Field(
        "rear.points_at", "Wheel travel when measured", _R, _Q, "length", "mm", 0, 450, 5, 0, plus_minus=2, when=_POINTS, end="rear",
        default=Default(value=0.0, reason="taken with the wheel hanging"), how="How far the wheel was above hanging when the points were taken. Hanging is 0.", typed="stated",
    ),
    *_point("axle", "Axle", _POINTS, "The rear axle"),
    *_point("shock_top", "Shock on the frame", _POINTS, "The shock eye on the frame"),
    *_point("shock_foot", "Shock on the swingarm", _DIRECT, "The shock eye on the swingarm"),
    Field(
        "rear.rocker_on", "Rocker pivots on", _R, Kind.CHOICE, default=Default(choice="swingarm"), when=_ROCKER, end="rear", typed="stated", main=True,
        choices={"frame": "The frame", "swingarm": "The swingarm"}, how="The other end of the rod is then on the other of the two.",
    ),
    *_point("rocker", "Rocker pivot", _ROCKER, "The bolt that the rocker turns on"),
    *_point("rocker_rod", "Rod on the rocker", _ROCKER, "Where the rod meets the rocker"),
    *_point("rocker_shock", "Shock on the rocker", _ROCKER, "Where the shock meets the rocker"),
    *_point("rod", "Other end of the rod", _ROCKER, "The other end of the rod, on frame or swingarm"),
)  # fmt: skip

_PARTS = {"rear.unsprung_from": ("parts",)}

UNSPRUNG = (
    Field(
        "rear.unsprung_from", "Wheel and swingarm weighed", _R, Kind.CHOICE, default=Default(choice="whole"), end="rear", typed="stated",
        choices={"whole": "As one figure", "parts": "In parts"}, how="In parts, the swingarm counts by where its balance point is.",
    ),
    Field(
        "rear.wheel_mass", "Wheel, brake, sprocket", _R, _Q, "mass", "kg", 2, 60, 0.1, 1, plus_minus=0.5, when=_PARTS, main=True, end="rear",
        how="Wheel with tyre, disc, sprocket, caliper and axle, on a scale.",
    ),
    Field(
        "rear.swingarm_mass", "Swingarm", _R, _Q, "mass", "kg", 1, 40, 0.1, 1, plus_minus=0.5, when=_PARTS, main=True, end="rear",
        how="Bare swingarm with what is bolted to it, and half of what hangs between it and the frame.",
    ),
    Field(
        "rear.swingarm_length", "Swingarm, pivot to axle", _R, _Q, "length", "mm", 200, 900, 1, 0, plus_minus=2, when=_PARTS, main=True, end="rear",
        how="Centre of the pivot to centre of the axle.",
    ),
    Field(
        "rear.swingarm_balance", "Swingarm, pivot to balance point", _R, _Q, "length", "mm", 0, 900, 1, 0, plus_minus=5, when=_PARTS, main=True, end="rear",
        how="Where it balances across an edge, from the centre of the pivot.",
    ),
)  # fmt: skip
