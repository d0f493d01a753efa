"""Demo job 2, invented: a trail fork whose sealed, spring-pressed cartridge is opened, so that its spaces share one air space."""

from __future__ import annotations

from typing import Any

from calc.demo.entries import assumed, measured, stated

TRAIL: dict[str, Any] = {
    "format": "stanchion-job",
    "version": 3,
    "name": "Saltmarsh 250 T",
    "owner": "",
    "date": "2026-06-03",
    "invented": True,
    "note": "Demo, invented: bike, rider and readings exist nowhere.",
    "bike": {
        "use": stated("enduro"),
        "front_axle": measured("51.5 kg", "0.5 kg"),
        "rear_axle": measured("56.0 kg", "0.5 kg"),
        "rake": stated("26.5°", "0.5°"),
    },
    "rider": {
        "mass": measured("88 kg", "1 kg"),
        "posture": stated("standing"),
        "front_axle": measured("87.5 kg", "1 kg"),
        "rear_axle": measured("108.0 kg", "1 kg"),
    },
    "standard": {
        "rider": stated("80 kg", "5 kg"),
        "fork_springs": stated("as sold"),
        "shock_spring": stated("as sold"),
        "fork_preload": stated("3 mm", "1 mm"),
        "gap": stated("190 mm", "2 mm"),
        "shock_preload": stated("9 mm", "1 mm"),
    },
    "front": {
        "travel": stated("290 mm", "2 mm"),
        "unsprung": measured("15.5 kg", "0.5 kg"),
        "rate": stated("4.0 N/mm"),
        "preload": measured("3 mm", "1 mm"),
        "target_sag": stated("64 mm"),
        "layout": stated("upside-down"),
        "seal_diameter": measured("48 mm", "0.05 mm"),
        "collapsed_stroke": measured("297 mm", "1 mm"),
        "area_by": stated("raised"),
        "raised_volume": measured("20 ml", "0 ml"),
        "raised_height": measured("12.5 mm", "0.4 mm"),
        "outer_bore": measured("50.5 mm", "0.1 mm"),
        "outer_depth": measured("30 mm", "1 mm"),
        "spring_steel": measured("50 ml", "1 ml"),
        "cap_volume": measured("22 ml", "3 ml"),
        "washers_volume": measured("6 ml", "1 ml"),
        "gap_left": measured("112 mm", "2 mm"),
        "gap_right": measured("112 mm", "2 mm"),
        "air": stated("sealed cartridge"),
        "cartridge_state": stated("opened into one"),
        "cartridge_fill": stated("spring"),
        "damper_rod": measured("12 mm", "0.05 mm"),
        "charge_by": stated("scale"),
        "charge_force": measured("17 N", "2 N", "Rod end pressed on a kitchen scale, before it was opened."),
        "push_points": measured("150 111; 200 194; 240 297; 260 375; 280 470", "", "Invented, and read before it was opened."),
        "push_read": stated("both"),
        "push_error": stated("4 N"),
        "push_gap": measured("190 mm", "2 mm"),
    },
    "place": {
        "bled_altitude": measured("250 m", "50 m"),
        "ridden_altitude": measured("250 m", "50 m"),
        "exponent": assumed("1.33", "0.07"),
    },
    "rear": {
        "travel": stated("300 mm", "2 mm"),
        "leverage": measured("2.5", "0.05"),
        "leverage_fall": assumed("22 %", "4 %"),
        "rate": stated("46 N/mm"),
        "preload": measured("10 mm", "1 mm"),
        "rod_diameter": measured("16 mm", "0.05 mm"),
        "charge": stated("10 bar", "1 bar"),
        "target_sag": stated("102 mm"),
    },
}
