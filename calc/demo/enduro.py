"""Demo job 1, invented: an enduro bike, a rider heavier than the standard one, an open-leg fork."""

from __future__ import annotations

from typing import Any


def _measured(value: str, plus_minus: str, note: str = "") -> dict[str, str]:
    entry = {"value": value, "plus_minus_95": plus_minus, "origin": "measured"}
    return entry | {"note": note} if note else entry


def _stated(value: str, plus_minus: str | None = None) -> dict[str, str]:
    entry = {"value": value, "origin": "stated"}
    return entry if plus_minus is None else entry | {"plus_minus_95": plus_minus}


def _assumed(value: str, plus_minus: str) -> dict[str, str]:
    return {"value": value, "plus_minus_95": plus_minus, "origin": "assumed"}


ENDURO: dict[str, Any] = {
    "format": "stanchion-job",
    "version": 1,
    "name": "Brackwater 300 E",
    "date": "2026-05-12",
    "invented": True,
    "note": "Demo, invented: bike, rider and readings exist nowhere.",
    "bike": {
        "use": _stated("enduro"),
        "front_axle": _measured("54.5 kg", "0.5 kg"),
        "rear_axle": _measured("59.3 kg", "0.5 kg"),
        "rake": _stated("26.5°", "0.5°"),
        "wheelbase": _stated("1485 mm", "5 mm"),
    },
    "rider": {
        "mass": _measured("104 kg", "1 kg"),
        "posture": _stated("standing"),
        "front_axle": _measured("96.2 kg", "1 kg"),
        "rear_axle": _measured("121.6 kg", "1 kg"),
    },
    "standard": {
        "rider": _stated("87 kg", "5 kg"),
        "fork_rate": _stated("4.2 N/mm"),
        "fork_preload": _stated("4 mm", "1 mm"),
        "gap": _stated("126 mm", "2 mm"),
        "shock_rate": _stated("48 N/mm"),
        "shock_preload": _stated("9 mm", "1 mm"),
    },
    "front": {
        "travel": _stated("300 mm", "2 mm"),
        "unsprung": _assumed("16 kg", "1.5 kg"),
        "rate": _stated("4.2 N/mm"),
        "preload": _measured("6 mm", "1 mm"),
        "target_sag": _stated("66 mm"),
        "layout": _stated("upside-down"),
        "seal_diameter": _measured("48 mm", "0.05 mm"),
        "collapsed_stroke": _measured("308 mm", "1 mm"),
        "area_by": _stated("raised"),
        "raised_volume": _measured("20 ml", "0 ml"),
        "raised_height": _measured("12 mm", "0.4 mm", "From a gap of 140 mm up to 128 mm."),
        "outer_bore": _measured("50.6 mm", "0.1 mm"),
        "outer_depth": _measured("32 mm", "1 mm"),
        "spring_steel": _measured("51 ml", "1 ml"),
        "washers_volume": _measured("8 ml", "1 ml"),
        "cap_volume": _assumed("20 ml", "10 ml"),
        "gap_left": _measured("145 mm", "2 mm"),
        "gap_right": _measured("147 mm", "2 mm"),
    },
    "place": {
        "bled_altitude": _measured("400 m", "50 m"),
        "ridden_altitude": _measured("400 m", "50 m"),
        "exponent": _assumed("1.33", "0.07"),
    },
    "rear": {
        "travel": _stated("305 mm", "2 mm"),
        "unsprung": _assumed("21 kg", "1.5 kg"),
        "leverage": _measured("2.5", "0.05"),
        "leverage_fall": _assumed("22 %", "4 %"),
        "rate": _stated("48 N/mm"),
        "preload": _measured("15 mm", "1 mm"),
        "rod_diameter": _measured("16 mm", "0.05 mm"),
        "charge": _stated("10 bar", "1 bar"),
        "target_sag": _stated("104 mm"),
        "target_free_sag": _stated("30 mm"),
    },
}
