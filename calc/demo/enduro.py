"""Demo job 1, invented: an enduro bike, a rider heavier than the standard one, an open-leg fork."""

from __future__ import annotations

from typing import Any

from calc.demo.entries import assumed, measured, stated

ENDURO: dict[str, Any] = {
    "format": "stanchion-job",
    "version": 4,
    "name": "Brackwater 300 E",
    "owner": "",
    "date": "2026-05-12",
    "invented": True,
    "note": "Demo, invented: bike, rider and readings exist nowhere.",
    "bike": {
        "use": stated("enduro"),
        "front_axle": measured("54.5 kg", "0.5 kg"),
        "rear_axle": measured("59.3 kg", "0.5 kg"),
        "rake": stated("26.5°", "0.5°"),
        "wheelbase": stated("1485 mm", "5 mm"),
    },
    "rider": {
        "mass": measured("104 kg", "1 kg"),
        "posture": stated("standing"),
        "front_axle": measured("96.2 kg", "1 kg"),
        "rear_axle": measured("121.6 kg", "1 kg"),
    },
    "standard": {
        "rider": stated("87 kg", "5 kg"),
        "fork_springs": stated("as sold"),
        "shock_spring": stated("as sold"),
        "fork_preload": stated("4 mm", "1 mm"),
        "gap": stated("126 mm", "2 mm"),
        "shock_preload": stated("9 mm", "1 mm"),
    },
    "front": {
        "travel": stated("300 mm", "2 mm"),
        "unsprung": assumed("16 kg", "1.5 kg"),
        "rate": stated("4.2 N/mm"),
        "preload": measured("6 mm", "1 mm"),
        "target_sag": stated("66 mm"),
        "layout": stated("upside-down"),
        "seal_diameter": measured("48 mm", "0.05 mm"),
        "collapsed_stroke": measured("308 mm", "1 mm"),
        "area_by": stated("raised"),
        "raised_volume": measured("20 ml", "0 ml"),
        "raised_height": measured("12 mm", "0.4 mm", "From a gap of 140 mm up to 128 mm."),
        "outer_bore": measured("50.6 mm", "0.1 mm"),
        "outer_depth": measured("32 mm", "1 mm"),
        "spring_steel": measured("51 ml", "1 ml"),
        "washers_volume": measured("8 ml", "1 ml"),
        "cap_volume": assumed("20 ml", "10 ml"),
        "gap_left": measured("145 mm", "2 mm"),
        "gap_right": measured("147 mm", "2 mm"),
        "click_rebound_left": measured("12", ""),
        "click_rebound_right": measured("12", ""),
        "click_compression_left": measured("15", ""),
        "click_compression_right": measured("14", ""),
        "filling_gap_left": measured("123 mm", "1 mm", "First pour, five minutes after the last bubble."),
        "filling_gap_right": measured("119 mm", "1 mm"),
    },
    "place": {
        "bled_altitude": measured("400 m", "50 m"),
        "ridden_altitude": measured("400 m", "50 m"),
        "exponent": assumed("1.33", "0.07"),
    },
    "rear": {
        "travel": stated("305 mm", "2 mm"),
        "unsprung": assumed("21 kg", "1.5 kg"),
        "leverage": measured("2.5", "0.05"),
        "leverage_fall": assumed("22 %", "4 %"),
        "rate": stated("48 N/mm"),
        "preload": measured("15 mm", "1 mm"),
        "rod_diameter": measured("16 mm", "0.05 mm"),
        "charge": stated("10 bar", "1 bar"),
        "target_sag": stated("104 mm"),
        "click_rebound": measured("14", ""),
        "click_compression": measured("12", ""),
        "click_high": measured("1.5", ""),
    },
    "service": {
        "now_hours": stated("42 h"),
        "fork_last_hours": stated("42 h", note="Oil changed at this visit."),
        "shock_last_hours": stated("0 h"),
    },
}
