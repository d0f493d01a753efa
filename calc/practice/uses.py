"""The kinds of riding, and the posture in which each reads its sag."""

from __future__ import annotations

from collections.abc import Mapping

USES: Mapping[str, str] = {
    "motocross": "Motocross",
    "enduro": "Enduro",
    "dual-sport": "Dual-sport, road and trail",
    "adventure": "Adventure, solo",
    "two-up": "Two-up with luggage",
    "road": "Road",
    "supermoto": "Supermoto",
    "track": "Track",
    "trials": "Trials",
    "youth": "Youth, 65-85 cc",
}

POSTURE: Mapping[str, str] = {
    "motocross": "standing",
    "enduro": "standing",
    "dual-sport": "sitting",
    "adventure": "sitting",
    "two-up": "sitting",
    "road": "sitting",
    "supermoto": "sitting",
    "track": "sitting",
    "trials": "standing",
    "youth": "standing",
}

# Kinds of riding that nobody wrote a column for: judged from the two columns that they lie between.
BETWEEN: Mapping[str, tuple[str, str]] = {"dual-sport": ("enduro", "adventure"), "supermoto": ("motocross", "track")}

# Kinds of riding whose rows are read with passenger and luggage aboard, and whose bikes are sold sprung for them.
SOLD_LOADED = frozenset({"two-up"})
