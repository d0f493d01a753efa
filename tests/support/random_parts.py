"""What in a random job must go together: scales, springs of a kind, a linkage, oil by volume. Numbers in the fields' units."""

from __future__ import annotations

import math
from random import Random
from typing import Any

from tests.unit.model.test_motion_job import coordinates, off_road
from tests.whole.test_springs_jobs import table

Numbers = dict[str, Any]
MODULUS = 79500.0  # N/mm2, spring steel


def together(rng: Random, chosen: dict[str, str], typical: dict[str, float], entered: Numbers) -> Numbers:
    """Entries that would make no bike when each is drawn alone; `entered` holds those that stand already."""
    found = _rates(rng, chosen, typical) | _scales(rng, chosen, typical, entered)
    found |= _motion(rng, chosen, typical, entered) | _volumes(rng, chosen, typical) | _rest(rng, typical)
    for end in ("front", "rear"):
        found |= _springs(rng, end, chosen, found.get(f"{end}.rate", typical[f"{end}.rate"]), typical)
    return found


def _rates(rng: Random, chosen: dict[str, str], typical: dict[str, float]) -> Numbers:
    """One leg carries what two would; twin shocks stand nearer to the wheel."""
    found: Numbers = {}
    if chosen["front.springs_in"] == "one" and chosen["front.spring_kind"] != "unequal":
        found["front.rate"] = min(2.0 * typical["front.rate"], 30.0)
    if chosen["rear.shocks"] == "2" and chosen["rear.motion_from"] == "leverage":
        found["rear.leverage"] = rng.uniform(1.05, 1.4)
        found["rear.rate"] = max(0.5 * typical["rear.rate"] * (found["rear.leverage"] / typical["rear.leverage"]) ** 2, 10.0)
    return found


def _scales(rng: Random, chosen: dict[str, str], typical: dict[str, float], entered: Numbers) -> Numbers:
    """Axle readings that agree with each other to a kilogram or so."""
    mass, rider = typical["bike.mass"], entered["rider.mass"]
    found: Numbers = {}
    front = mass * typical["bike.front_share"] / 100.0
    if rng.random() < 0.5:
        found |= {"bike.front_axle": front, "bike.rear_axle": mass - front} if rng.random() < 0.8 else {"bike.front_axle": front}
    if rng.random() < 0.4:
        share = typical[f"rider.front_share_{rng.choice(('standing', 'sitting'))}"] / 100.0
        aboard = [front + share * rider, mass - front + (1.0 - share) * rider]
        for what, carried in (("passenger", ("passenger", "both")), ("luggage", ("luggage", "both"))):
            if chosen["bike.carries"] in carried:
                part = typical[f"rider.{what}_front_share"] / 100.0
                found |= {f"rider.{what}": typical[f"rider.{what}"], f"rider.{what}_front_share": 100.0 * part}
                aboard = [aboard[0] + part * typical[f"rider.{what}"], aboard[1] + (1.0 - part) * typical[f"rider.{what}"]]
        found |= {"bike.front_axle": front, "bike.rear_axle": mass - front, "rider.front_axle": aboard[0] + rng.gauss(0, 1)}
        found |= {"rider.rear_axle": aboard[1] + rng.gauss(0, 2)} if rng.random() < 0.8 else {}
    return found


def _springs(rng: Random, end: str, chosen: dict[str, str], rate: float, typical: dict[str, float]) -> Numbers:
    """Everything that the kinds of spring and their stops ask for; only what applies is entered in the end."""
    front = end == "front"
    stroke = typical["front.travel"] if front else typical["rear.travel"] / typical["rear.leverage"]
    free = rng.uniform(440, 500) if front else rng.uniform(200, 270)
    found: Numbers = {
        f"{end}.second_rate": rate * (rng.uniform(1.5, 6) if chosen[f"{end}.spring_kind"] == "stacked" else rng.uniform(0.1, 0.5)),
        f"{end}.second_room": rng.uniform(0.03, 0.12) * stroke, f"{end}.second_later": rng.uniform(0.2, 0.8) * stroke,
        f"{end}.table": table(rate * rng.uniform(0.75, 0.95), rate * rng.uniform(0, 0.4) / stroke, math.ceil(stroke + 70)),
        f"{end}.topout_rate": rate * rng.uniform(2, 8), f"{end}.rubber_length": rng.uniform(0.05, 0.3) * stroke,
        f"{end}.rubber_rate": rate * rng.uniform(2, 12), f"{end}.rubber_table": table(min(rate * rng.uniform(2, 6), 400.0), rng.uniform(0, 0.8), 120),
        f"{end}.stock": " ".join(f"{max(rate * (0.8 + 0.08 * i + rng.uniform(0, 0.05)), 1.0 if front else 10.0):.2f}" for i in range(7)),
    }  # fmt: skip
    found |= _coil(rng, end, rate)
    if rng.random() < 0.5:
        found |= {f"{end}.free_length": free, f"{end}.solid_length": max(free - stroke - rng.uniform(15, 70), 25.0)}
    if chosen[f"{end}.preload_from"] == "lengths":
        spacers = rng.uniform(0, 60)
        found |= {f"{end}.free_length": free, "rear.installed_length": free - typical["rear.preload"]} if not front else {
            "front.free_length": free, "front.spacers": spacers, "front.space": free + spacers - typical["front.preload"]}  # fmt: skip
    width, thick = (rng.uniform(32, 38), 4.3) if front else (rng.uniform(62, 78), 11.5)
    sizes = {
        "new_free": free + rng.uniform(-12, 12),
        "new_solid": max(free - stroke - rng.uniform(15, 70), 25.0),
        "new_outside": width,
        "new_inside": width - 2 * thick,
        "spring_bore": width + rng.uniform(-0.3, 4),
        "spring_core": width - 2 * thick - rng.uniform(-0.3, 4),
        "thread_left": rng.uniform(0, 20),
    }
    found |= {f"{end}.{key}": size for key, size in sizes.items() if rng.random() < 0.7}
    found |= {f"{end}.pitch": rng.uniform(0.8, 2)} if rng.random() < 0.4 else {}
    tried = {"rate": rate * rng.uniform(0.8, 1.2), "preload": typical[f"{end}.preload"], "gap": rng.uniform(90, 160)}
    return found | {f"{end}.tried_{key}": value for key, value in tried.items() if rng.random() < 0.2}


def _coil(rng: Random, end: str, rate: float) -> Numbers:
    """Wire and coil of about this rate: k = G d^4 / (8 D^3 n)."""
    wire, outside = (rng.uniform(4.2, 5), rng.uniform(33, 38)) if end == "front" else (rng.uniform(10.5, 13), rng.uniform(66, 80))
    active = MODULUS * wire**4 / (8.0 * (outside - wire) ** 3 * rate)
    return {f"{end}.wire": wire, f"{end}.coil_diameter": outside, f"{end}.coils": min(active + 2.0, 115.0)}


def _motion(rng: Random, chosen: dict[str, str], typical: dict[str, float], entered: Numbers) -> Numbers:
    """Pairs of a quadratic, read with a millimetre's tenths off, or a linkage with its bolts moved a little."""
    travel, known = float(entered["rear.travel"]), chosen["rear.motion_from"]
    if known in ("pairs", "table"):
        start, fall = 1.0 / typical["rear.leverage"], max(typical["rear.leverage_fall"], -10.0) / 100.0
        heights = [travel * i / 6 for i in range(6)] + [math.ceil(travel + 1.0)]
        off = 0.3 if known == "pairs" else 0.0
        lengths = [480.0 - start * z * (1.0 - fall / 2 + fall * z / 2 / travel) + off * rng.uniform(-1, 1) for z in heights]
        return {"rear.pairs": "; ".join(f"{z:.2f} {length:.2f}" for z, length in zip(heights, lengths, strict=True))}
    if known != "points":
        return {}
    if chosen["rear.linkage"] == "direct":
        points = coordinates({"axle": (-550, -60), "shock_top": (-180, 330), "shock_foot": (-260, -20)})
    elif chosen["rear.rocker_on"] == "frame":
        points = coordinates(
            {
                "axle": (-570, -100),
                "shock_top": (-150, 300),
                "rocker": (-60, -90),
                "rocker_rod": (-130, -150),
                "rocker_shock": (-150, -60),
                "rod": (-230, -40),
            }
        )
    else:
        points = {path: xz for path, xz in off_road().items() if path.endswith(("_x", "_z"))}
    return {path: float(text.split()[0]) + rng.uniform(-4, 4) for path, text in points.items()}


def _volumes(rng: Random, chosen: dict[str, str], typical: dict[str, float]) -> Numbers:
    """Pours and fills that agree with the fork's own diameters."""
    deep = math.pi / 4.0 * (typical["front.seal_diameter"] - 2.0 * typical["front.wall"]) ** 2 / 1000.0  # ml a millimetre
    outer = 0.0
    if chosen["front.layout"] == "upside-down":
        outer = math.pi / 4.0 * typical["front.outer_bore"] ** 2 / 1000.0
        deep += outer - math.pi / 4.0 * typical["front.seal_diameter"] ** 2 / 1000.0
    depth = typical["front.outer_depth"] if outer else 0.0
    gap, poured = rng.uniform(90, 160), 20.0
    brim = outer * depth + deep * (gap - depth) * rng.uniform(0.95, 1.05)
    holds = rng.uniform(500, 900)
    filled = holds - typical["front.filled_kept"] - brim
    found: Numbers = {
        "front.raised_height": poured / deep * rng.uniform(0.95, 1.05),
        "front.brim_gap": gap,
        "front.brim_poured": brim,
    }
    found |= {"front.raised_volume": poured, "front.charge_force": rng.uniform(8, 60), "front.oil_moved": rng.uniform(-10, 25)}
    if rng.random() < 0.8:
        found |= {"front.brim_volume": holds, "front.filled_left": filled, "front.filled_right": filled + rng.gauss(0, 3)}
    return found | (
        {"front.piston_stop": rng.uniform(40, 120), "front.piston_bleed": rng.uniform(30, 60)} if rng.random() < 0.3 else {}
    )


def _rest(rng: Random, typical: dict[str, float]) -> Numbers:
    """What nothing stands in for and nothing else hangs on."""
    arm = rng.uniform(550, 620)
    found: Numbers = {
        "rear.wheel_mass": 0.6 * typical["rear.unsprung"], "rear.swingarm_mass": 0.5 * typical["rear.unsprung"],
        "rear.swingarm_length": arm, "rear.swingarm_balance": 0.4 * arm, "front.end_force": rng.uniform(4, 9), "front.end_energy": rng.uniform(150, 700),
    }  # fmt: skip
    some = {
        "bike.wheelbase": rng.uniform(1250, 1580), "bike.braking": rng.uniform(0.1, 0.9), "place.bled_pressure": rng.uniform(850, 1030),
        "place.ridden_pressure": rng.uniform(750, 1030), "place.bled_altitude": rng.uniform(0, 1500), "place.ridden_altitude": rng.uniform(0, 2500),
        "rear.gas_volume": rng.uniform(80, 250), "front.spring_mass": rng.uniform(300, 450), "place.bled_stroke": rng.uniform(0, 40),
        "conditions.rider": rng.uniform(50, 110), "conditions.luggage": rng.uniform(0, 40),
    }  # fmt: skip
    return found | {path: value for path, value in some.items() if rng.random() < 0.25}
