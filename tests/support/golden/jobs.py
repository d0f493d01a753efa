"""Ten jobs that between them reach every branch of the core. What they answer is computed by the desk's core at test time.

The browser computes the same jobs with the shipped archives; `worst_difference` says how far two reports are apart.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from calc.demo import jobs
from calc.job.starter import start

Document = dict[str, Any]


def golden_jobs() -> dict[str, Document]:
    """The jobs by name, each a fresh copy."""
    demo = jobs()["enduro"]
    return {
        "demo": demo,
        "started from two answers": start("motocross", "78 kg"),
        "stock list, imperial units": _with(demo, IMPERIAL),
        "spring in one leg": _with(demo, {"front.springs_in": "one", "front.rate": "8.6 N/mm", "standard.fork_rate": "8.4 N/mm"}),
        "gap read with spring in": _with(demo, SPRING_IN),
        "two-up with luggage": _with(start("two-up", "92 kg"), TWO_UP),
        "barometers, bled part way in": _with(demo, BAROMETERS),
        "energy wanted": _with(start("track", "76 kg"), {"front.end_target": "energy", "front.end_energy": "205 J"}),
        "twin shocks with gas volume, conventional leg": _with(start("road", "95 kg"), TWIN_SHOCKS),
        "no spring fits, one entry refused": _with(
            demo, {"front.free_length": "470 mm", "front.solid_length": "400 mm", "rear.leverage": "9**9**9"}
        ),
    }


IMPERIAL = {
    "front.buy": "stock", "front.stock": "23lb/in; 24lb/in; 25lb/in; 26lb/in; 0.48kg/mm", "front.rate": "24 lb/in", "rider.mass": "16 st 5 lb",
    "rider.front_axle": "212 lb", "front.travel": "11.8 in", "front.collapsed_stroke": "12.1 in", "front.cap_volume": "0.7 US fl oz",
    "rear.charge": "145 psi", "place.bled_altitude": "1312 ft", "rear.buy": "stock", "rear.stock": "290lb/in 300lb/in 310lb/in 320lb/in",
}  # fmt: skip
SPRING_IN = {
    "front.gap_read": "in", "front.spacer_volume": "14 ml", "front.spacer_length": "40 mm", "front.gap_left": "112 mm",
    "front.gap_right": "113 mm", "standard.gap": "98 mm", "front.free_length": "470 mm", "front.solid_length": "150 mm",
}  # fmt: skip
TWO_UP = {
    "rider.passenger": "68 kg", "rider.luggage": "31 kg", "bike.mass": "231 kg", "place.bled_altitude": "300 m",
    "place.ridden_altitude": "2400 m", "rear.leverage_fall": "9 %", "bike.wheelbase": "1560 mm",
}  # fmt: skip
BAROMETERS = {
    "place.bled_pressure": "1013 hPa", "place.ridden_pressure": "0.78 bar", "place.bled_stroke": "40 mm", "place.exponent": "1.28",
    "front.tried_rate": "4.5 N/mm", "front.tried_gap": "118 mm", "rear.tried_preload": "8 mm",
}  # fmt: skip
TWIN_SHOCKS = {
    "rear.shocks": "2", "rear.leverage": "1.2", "rear.leverage_fall": "3 %", "rear.rate": "24 N/mm", "rear.step": "1 N/mm",
    "rear.gas_volume": "45 ml", "rear.rod_diameter": "12.5 mm", "rear.charge": "4 bar", "standard.shock_rate": "22 N/mm",
    "front.layout": "conventional", "front.seal_diameter": "41 mm", "front.wall": "2 mm", "rear.free_length": "260 mm",
    "rear.solid_length": "110 mm", "rear.preload_min": "0 mm", "rear.preload_max": "40 mm",
}  # fmt: skip


def _with(document: Document, changes: Mapping[str, Any]) -> Document:
    """A copy with entries replaced by path, all of them stated."""
    copied = {key: dict(part) if isinstance(part, dict) else part for key, part in document.items()}
    for path, value in changes.items():
        group, key = path.split(".")
        copied.setdefault(group, {})[key] = {"value": value, "origin": "stated"}
    return copied


def worst_difference(a: Any, b: Any) -> float:
    """How far two reports are apart: numbers relative to the larger or to 1, infinite where anything else differs."""
    if isinstance(a, bool) or isinstance(b, bool) or not (isinstance(a, int | float) and isinstance(b, int | float)):
        return _of_the_rest(a, b)
    if not (math.isfinite(a) and math.isfinite(b)):
        return math.inf
    return abs(a - b) / max(abs(a), abs(b), 1.0)


def _of_the_rest(a: Any, b: Any) -> float:
    if isinstance(a, dict) and isinstance(b, dict):
        return max((worst_difference(a[k], b[k]) for k in a), default=0.0) if a.keys() == b.keys() else math.inf
    if isinstance(a, list) and isinstance(b, list):
        return max(map(worst_difference, a, b), default=0.0) if len(a) == len(b) else math.inf
    return 0.0 if type(a) is type(b) and a == b else math.inf
