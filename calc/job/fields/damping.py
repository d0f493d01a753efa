"""What is known of the dampers, and how their clickers and shims stand. No answer rests on it: springs and gas are sized without."""

from __future__ import annotations

from typing import Any

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY
_D = Part.DAMPING
_TRADE = "common practice, no source"
# Where oil was poured in to know the free area, the answer needs no rod, and the field that it has is out of use.
_POURED = {"front.air": ("open", "air leg"), "front.area_by": ("raised", "brim")}
_CLOSED = "Counted from fully closed (screwed in), gently: clicks, or turns."

DAMPS = {"both": "Both legs alike", "one": "One leg each way"}
# What is logged at an end, and how it is called.
CLICKERS: dict[Axle, dict[str, str]] = {
    "front": {
        "rebound_left": "Rebound, left",
        "rebound_right": "Rebound, right",
        "compression_left": "Compression, left",
        "compression_right": "Compression, right",
    },
    "rear": {"rebound": "Rebound", "compression": "Compression", "high": "High-speed compression"},
}

ROD_ALONE = Field(
    "front.damping_rod", "Damper rod diameter", _D, _Q, "length", "mm", 4, 25, 0.5, 1, usual="damper rod", end="neither", decision=True,
    default=Default(follow="front.damper_rod", reason=_TRADE), when=_POURED, how="By vernier.", typed="measured",
)  # fmt: skip


def _number(axle: Axle, key: str, label: str, how: str, typed: str = "stated", **more: Any) -> Field:
    plain: dict[str, Any] = {"kind": _Q, "end": "neither", "decision": True}
    return Field(f"{axle}.{key}", label, _D, how=how, typed=typed, **(plain | more))


def damping_fields(axle: Axle) -> tuple[Field, ...]:
    """Of one end; what differs is what its dampers are called, and how large they usually are."""
    front = axle == "front"
    one = "leg" if front else "shock"
    length: dict[str, Any] = {"dimension": "length", "unit": "mm"}
    bar: dict[str, Any] = {"dimension": "pressure", "unit": "bar"}
    return (
        *((_split(),) if front else ()),
        _number(axle, "damper_piston", "Damper piston diameter", "By vernier, or the bore of its tube.", "measured", low=12, high=80, step=0.5,
                decimals=1, usual=f"{'fork' if front else 'shock'} piston", default=Default(f"{'fork' if front else 'shock'} piston"), **length),
        _number(axle, "shaft_speed", "Shaft speed to look at", "Of the rod in its damper. Braking and corners stay below 0.3 m/s, sharp bumps reach 1 to 3 m/s at the fork; a shock's is the wheel's over the leverage. Common practice, no source.",
                dimension="speed", unit="m/s", low=0.01, high=15, step=0.1, decimals=2, default=Default(value=1.0 if front else 0.5, reason=f"a speed to compare at; {_TRADE}")),
        _number(axle, "base_drop", "Base valve holds", "Pressure that the base valve or the compression adjuster takes at that speed, from a damper tester. Leave empty for the least: none.",
                low=0, high=100, step=0.5, decimals=1, **bar),
        _number(axle, "vapour", "Vapour pressure of the oil", "Absolute. Warm oil with air in it: 0 to 0.3 bar.", low=0, high=1, step=0.05, decimals=2,
                default=Default(value=0.1, reason=f"0 to 0.3 bar, absolute; {_TRADE}"), **bar),
        _number(axle, "ports", "Compression ports in the piston", "How many holes lead through the piston on compression.", "measured", dimension="number", low=1, high=40, step=1),
        _number(axle, "port_diameter", "Port diameter", "Of one, where it is narrowest. An opening that is not round: 1.13 times the root of its area.", "measured", low=0.5, high=20, step=0.1, decimals=1, **length),
        _number(axle, "rebound_force", "Rebound force at that speed", f"Of one {one}, from the sheet of a damper tester, the gas's own push taken off.", dimension="force", unit="N", low=1, high=20000, step=10),
        _number(axle, "compression_force", "Compression force at that speed", f"Of one {one}, from the same sheet.", dimension="force", unit="N", low=1, high=20000, step=10),
        *_clickers(axle),
        *_shims(axle, length),
    )  # fmt: skip


def _split() -> Field:
    return Field(
        "front.damps", "Damping is in", _D, Kind.CHOICE, choices=DAMPS, default=Default(choice="both"), end="neither", typed="stated",
        how="One leg each way: compression in one and rebound in the other, or one damper that does both. That one must do all of it.",
    )  # fmt: skip


def _clickers(axle: Axle) -> tuple[Field, ...]:
    number: dict[str, Any] = {"dimension": "number", "low": 0, "high": 60, "step": 1, "decimals": 2}
    names = CLICKERS[axle].items()
    found = (_number(axle, f"click_{key}", f"{name}, as found", _CLOSED, "measured", **number) for key, name in names)
    built = (_number(axle, f"set_{key}", f"{name}, as built", _CLOSED, "measured", **number) for key, name in names)
    return (*found, *built)


def _shims(axle: Axle, length: dict[str, Any]) -> tuple[Field, ...]:
    how = "Groups of equal shims, in any order: how many, outside diameter, thickness, with a semicolon between groups: 3 24 0.15; 2 20 0.1."
    table: dict[str, Any] = {
        "kind": Kind.SHIMS, "low": 5, "high": 70, "second_dimension": "length", "second_unit": "mm", "second_low": 0.03, "second_high": 2, **length,
    }  # fmt: skip
    return (
        _number(axle, "shims", "Shims as found", how, "measured", **table),
        _number(axle, "set_shims", "Shims as built", how, "measured", **table),
        _number(axle, "shim_clamp", "Clamp washer diameter", "What holds the shims down: they bend about its edge.", "measured", low=3, high=50, step=0.5, decimals=1, **length),
    )  # fmt: skip
