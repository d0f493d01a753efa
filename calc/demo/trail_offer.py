"""The offer of demo job 2, invented: the opened cartridge set up as an open one, or another cartridge in its place."""

from __future__ import annotations

from typing import Any

_FRONT = {"rate": "4.0 N/mm", "preload": "5 mm", "gap_left": "103 mm", "gap_right": "103 mm"}
_REAR = {"rate": "46 N/mm", "preload": "7 mm"}
_OIL = {"what": "Fork oil, litre", "count": "2", "price": "19.50"}
_SEALS = {"what": "Seals and wipers, both legs", "count": "1", "price": "48"}

TRAIL_OFFER: dict[str, Any] = {
    "currency": "EUR",
    "tax": "20 %",
    "tax_in_prices": True,
    "hourly": "68",
    "note": "Valid for 30 days.",
    "complaints": [
        "Kicks off roots and stones",
        "Bottoms on jumps since the winter",
        "Fades on long descents",
        "No click makes a difference",
    ],
    "options": [
        {
            "name": "Keep the opened cartridge",
            "note": "Springs stay. Oil and preload are set for the fork as it now is, and the valves are shimmed anew: "
            "the base valve to hold what the charge held.",
            "setup": {"front": _FRONT, "rear": _REAR},
            "parts": [_OIL, _SEALS, {"what": "Shims and o-rings", "count": "1", "price": "36.50"}],
            "hours": "4.5",
            "answers": [1, 2, 3],
            "adjusters": "14 clicks of compression, 16 of rebound",
            "valving": "worked out from what is lost, to be ridden and changed once more",
            "service_hours": "30",
            "service_price": "165",
            "unknown": "how tight its worn piston stays when hot",
        },
        {
            "name": "Another cartridge, open, without charge",
            "note": "Springs stay. The same oil height and preload; its valves need no charge. The old cartridge is handed back.",
            "setup": {"front": dict(_FRONT), "rear": dict(_REAR)},
            "parts": [{"what": "Cartridge pair, open (invented)", "count": "1", "price": "640"}, dict(_OIL), dict(_SEALS)],
            "hours": "3",
            "answers": [1, 2, 3, 4],
            "adjusters": "26 clicks of compression, 30 of rebound",
            "valving": "known, its shim lists come with it",
            "service_hours": "60",
            "service_price": "165",
            "unknown": "how its first setting suits this rider",
        },
    ],
}
