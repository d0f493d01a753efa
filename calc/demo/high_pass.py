"""Demo job 3, invented: a travel bike, two up and loaded, on a high pass."""

from __future__ import annotations

from typing import Any

from calc.demo.entries import assumed, measured, stated

HIGH_PASS: dict[str, Any] = {
    "format": "stanchion-job",
    "version": 4,
    "name": "Fellgate 900 L",
    "owner": "",
    "date": "2026-07-18",
    "invented": True,
    "note": "Demo, invented: bike, riders and readings exist nowhere.",
    "bike": {
        "use": stated("two-up"),
        "front_axle": measured("112 kg", "0.5 kg"),
        "rear_axle": measured("118 kg", "0.5 kg"),
        "rake": stated("26.5°", "0.5°"),
        "wheelbase": stated("1545 mm", "5 mm"),
    },
    "rider": {
        "mass": measured("90 kg", "1 kg"),
        "passenger": measured("68 kg", "1 kg"),
        "luggage": measured("30 kg", "1 kg"),
    },
    "standard": {
        "rider": stated("85 kg", "5 kg"),
        "gap": stated("125 mm", "2 mm"),
        "fork_springs": stated("as sold"),
        "shock_spring": stated("as sold"),
    },
    "front": {
        "travel": stated("200 mm", "2 mm"),
        "rate": stated("6.8 N/mm"),
        "preload": measured("16 mm", "1 mm"),
        "target_sag": stated("56 mm"),
        "layout": stated("conventional"),
        "seal_diameter": measured("45 mm", "0.05 mm"),
        "gap_left": measured("125 mm", "2 mm"),
        "gap_right": measured("126 mm", "2 mm"),
        "oil_volume": measured("560 ml", "10 ml"),
        "alone_sag": measured("35 mm", "2 mm"),
        "alone_again_sag": measured("28 mm", "2 mm"),
        "aboard_sag": measured("59 mm", "2 mm"),
        "aboard_again_sag": measured("51 mm", "2 mm"),
    },
    "place": {
        "bled_altitude": measured("150 m", "50 m"),
        "ridden_altitude": measured("2400 m", "50 m"),
        "ridden_temperature": measured("35 °C", "3 °C"),
        "bled_temperature": measured("18 °C", "3 °C"),
        "exponent": assumed("1.33", "0.07"),
    },
    "rear": {
        "travel": stated("205 mm", "2 mm"),
        "motion_from": stated("pairs"),
        "pairs": measured("0 345; 40 328.6; 80 311.8; 120 294.6; 160 277.0; 205 256.6", "0.4 mm"),
        "rate": stated("130 N/mm"),
        "preload": measured("18 mm", "1 mm"),
        "pitch": stated("1.5 mm"),
        "aboard_sag": measured("66 mm", "2 mm"),
        "aboard_again_sag": measured("60 mm", "2 mm"),
    },
    "oil": {"viscosity_40": stated("16.2 mm²/s"), "viscosity_100": stated("3.95 mm²/s"), "density": stated("858 kg/m³")},
    "conditions": {"high_altitude": stated("2400 m"), "hot_temperature": stated("55 °C")},
}
