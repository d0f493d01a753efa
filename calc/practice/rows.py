"""Ranges of the trade by kind of riding, as data. Common practice, no source: an experienced bench's ranges.

Each entry is (low, high, typical) in the row's unit. They give defaults and judge plausibility; they never overrule a
measurement. "As solo" rows of two-up riding repeat the adventure row.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

USES: Mapping[str, str] = {
    "motocross": "Motocross",
    "enduro": "Enduro",
    "adventure": "Adventure, solo",
    "two-up": "Two-up with luggage",
    "road": "Road",
    "track": "Track",
    "trials": "Trials",
    "youth": "Youth, 65-85 cc",
}

POSTURE: Mapping[str, str] = {
    "motocross": "standing",
    "enduro": "standing",
    "adventure": "sitting",
    "two-up": "sitting",
    "road": "sitting",
    "track": "sitting",
    "trials": "standing",
    "youth": "standing",
}

Triple = tuple[float, float, float]


@dataclass(frozen=True)
class Row:
    """One quantity of the table: unit, confidence (H, M, L) and low, high, typical per use (None: not practised)."""

    unit: str
    confidence: str
    by_use: tuple[Triple | None, ...]  # in the order of USES


def _row(unit: str, confidence: str, *by_use: Triple | None) -> Row:
    return Row(unit, confidence, by_use)


_ADVENTURE_SHOCK_FALL = (0, 12, 6)
_OFF_ROAD_FALL = (15, 30, 22)

ROWS: Mapping[str, Row] = {
    "standard rider": _row(
        "kg", "M", (78, 92, 85), (78, 92, 85), (82, 98, 90), (82, 98, 90), (78, 95, 86), (72, 88, 80), (70, 88, 78), (38, 60, 50)
    ),
    "passenger": _row("kg", "M", None, None, None, (60, 85, 72), None, None, None, None),
    "luggage": _row("kg", "H", None, None, None, (20, 50, 35), None, None, None, None),
    "passenger front share": _row("%", "M", None, None, None, (5, 12, 8), None, None, None, None),
    "luggage front share": _row("%", "M", None, None, None, (0, 10, 5), None, None, None, None),
    "rake": _row(
        "°",
        "M",
        (26, 28, 27),
        (26, 27.5, 26.5),
        (25, 28, 26.5),
        (25, 28, 26.5),
        (23.5, 26, 24.5),
        (22.5, 24.5, 23.5),
        (22, 24, 23),
        (25, 27, 26),
    ),
    "travel front": _row(
        "mm",
        "H",
        (295, 310, 305),
        (270, 310, 300),
        (170, 240, 210),
        (170, 240, 210),
        (110, 140, 125),
        (110, 130, 120),
        (160, 185, 170),
        (215, 275, 250),
    ),
    "travel rear": _row(
        "mm",
        "H",
        (295, 320, 310),
        (290, 330, 305),
        (170, 240, 210),
        (170, 240, 210),
        (110, 145, 130),
        (115, 140, 125),
        (160, 185, 170),
        (230, 290, 270),
    ),
    "rider sag front": _row(
        "%", "M", (18, 25, 21), (18, 26, 22), (22, 32, 27), (22, 32, 27), (25, 33, 30), (20, 30, 25), (25, 35, 30), (18, 25, 21)
    ),
    "rider sag rear": _row(
        "%", "H", (30, 36, 33), (32, 37, 34), (28, 35, 30), (28, 35, 30), (25, 32, 28), (18, 28, 23), (30, 38, 33), (29, 35, 32)
    ),
    "free sag front": _row(
        "%", "M", (8, 15, 11), (8, 14, 10), (10, 20, 14), (10, 20, 14), (12, 20, 17), (10, 20, 16), (10, 18, 13), (8, 14, 11)
    ),
    "free sag rear": _row(
        "%", "M", (8, 14, 11), (7, 14, 10), (5, 15, 10), (0, 8, 3), (3, 10, 6), (2, 8, 4), (5, 12, 8), (7, 13, 10)
    ),
    "unsprung front": _row(
        "kg",
        "M",
        (14, 17, 15.5),
        (14.5, 18, 16),
        (18, 25, 21),
        (18, 25, 21),
        (15, 20, 17),
        (13, 17, 15),
        (9, 12, 10.5),
        (8, 12, 10),
    ),
    "unsprung rear": _row(
        "kg",
        "L",
        (18, 23, 20.5),
        (19, 24, 21),
        (24, 34, 28),
        (24, 34, 28),
        (18, 26, 22),
        (17, 22, 19),
        (11, 15, 13),
        (10, 14, 12),
    ),
    "bike mass": _row(
        "kg",
        "H",
        (100, 114, 108),
        (105, 122, 113),
        (180, 270, 225),
        (180, 270, 225),
        (165, 225, 195),
        (160, 190, 172),
        (66, 78, 70),
        (55, 78, 68),
    ),
    "bike front share": _row(
        "%", "M", (47, 50, 49), (46, 50, 48), (47, 51, 49), (47, 51, 49), (48, 53, 50), (50, 54, 52), (47, 51, 49), (46, 50, 48)
    ),
    "rider front share sitting": _row(
        "%", "L", (22, 33, 28), (22, 33, 28), (28, 38, 33), (28, 38, 33), (38, 48, 43), (42, 52, 47), None, (25, 35, 30)
    ),
    "rider front share standing": _row(
        "%", "L", (36, 46, 41), (36, 46, 41), (38, 48, 43), (38, 48, 43), None, None, (42, 50, 46), (36, 46, 41)
    ),
    "fork rate": _row(
        "N/mm",
        "H",
        (4.2, 5.2, 4.7),
        (3.9, 4.9, 4.3),
        (5, 8, 6.5),
        (6, 9, 7.2),
        (7, 10, 8.8),
        (9, 11.5, 10),
        (3, 5, 4),
        (2.6, 3.8, 3.2),
    ),
    "shock rate": _row(
        "N/mm",
        "M",
        (46, 62, 54),
        (40, 58, 48),
        (70, 150, 100),
        (100, 180, 140),
        (70, 120, 90),
        (85, 120, 100),
        (55, 90, 70),
        (35, 55, 45),
    ),
    "leverage": _row(
        "",
        "M",
        (2.2, 2.7, 2.4),
        (2.3, 2.8, 2.5),
        (2.2, 3, 2.6),
        (2.2, 3, 2.6),
        (1.7, 2.6, 2.1),
        (1.7, 2.2, 1.95),
        (2.3, 3, 2.6),
        (2.1, 2.8, 2.4),
    ),
    "leverage fall": _row(
        "%",
        "M",
        _OFF_ROAD_FALL,
        _OFF_ROAD_FALL,
        _ADVENTURE_SHOCK_FALL,
        _ADVENTURE_SHOCK_FALL,
        _ADVENTURE_SHOCK_FALL,
        _ADVENTURE_SHOCK_FALL,
        _OFF_ROAD_FALL,
        _OFF_ROAD_FALL,
    ),
    "gap": _row(
        "mm",
        "M",
        (95, 135, 115),
        (100, 140, 120),
        (100, 160, 130),
        (90, 150, 120),
        (90, 170, 130),
        (90, 150, 115),
        (100, 200, 140),
        (70, 130, 100),
    ),
    "preload fork": _row(
        "mm", "M", (0, 8, 4), (0, 10, 4), (5, 25, 12), (10, 30, 18), (5, 20, 12), (2, 15, 8), (3, 20, 8), (0, 10, 4)
    ),
    "preload shock": _row(
        "mm", "M", (5, 16, 10), (5, 16, 9), (8, 20, 12), (14, 30, 20), (5, 18, 10), (4, 14, 8), (5, 15, 8), (4, 12, 7)
    ),
    "ride frequency front": _row(
        "Hz",
        "M",
        (1.9, 2.3, 2.1),
        (1.8, 2.2, 2.05),
        (1.6, 2.1, 1.9),
        (1.6, 2.0, 1.8),
        (2, 2.5, 2.25),
        (2.3, 2.8, 2.5),
        (1.8, 2.4, 2.1),
        (2, 2.6, 2.3),
    ),
    "ride frequency rear": _row(
        "Hz",
        "M",
        (1.35, 1.65, 1.5),
        (1.3, 1.6, 1.45),
        (1.5, 1.9, 1.75),
        (1.3, 1.7, 1.5),
        (1.9, 2.4, 2.1),
        (2.2, 2.8, 2.4),
        (1.7, 2.2, 1.9),
        (1.5, 1.9, 1.7),
    ),
    "end multiple front": _row(
        "", "L", (7, 10, 8.5), (6.5, 9, 8), (3.5, 5.5, 4.3), (3, 5, 3.8), (2.8, 4, 3.2), (3, 4.3, 3.6), (4, 6, 5), (6, 9, 7.5)
    ),
    "end multiple rear": _row(
        "",
        "L",
        (3, 4.5, 3.5),
        (2.8, 4, 3.1),
        (2.5, 3.5, 3),
        (2.2, 3.2, 2.7),
        (2.3, 3.2, 2.7),
        (2.5, 3.5, 3),
        (2.5, 3.5, 3),
        (3, 4, 3.4),
    ),
    "stanchion": _row(
        "mm", "H", (47, 49, 48), (46, 49, 48), (41, 49, 45), (41, 49, 45), (41, 48, 43), (43, 43, 43), (38, 41, 39), (35, 43, 36)
    ),
    "spring steel": _row(
        "ml", "M", (45, 60, 51), (45, 60, 51), (30, 45, 38), (30, 45, 38), (30, 45, 38), (30, 45, 38), (45, 60, 51), (45, 60, 51)
    ),
    "fork step": _row("N/mm", "H", *((0.2, 0.2, 0.2),) * 4, (0.2, 0.5, 0.2), (0.2, 0.5, 0.2), *((0.2, 0.2, 0.2),) * 2),
    "shock step": _row("N/mm", "H", *((2, 2, 2),) * 4, (2, 5, 5), (2, 5, 5), *((2, 2, 2),) * 2),
}
