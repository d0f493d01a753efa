"""A pushed leg by plain arithmetic of its own, and made-up legs whose readings are as good as a bench's: all invented."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from random import Random
from typing import Any

from calc.demo import jobs
from tests.support.documents import changed

OUTSIDE = 0.101325  # MPa
GAS, PISTON = "gas", "spring"
STATES = ("as built", "seal leaking", "oil moved", "opened into one")


@dataclass
class Leg:
    """What a leg truly is: lengths mm, volumes mm3, charge and pressures MPa, rate N/mm."""

    fill: str
    gap: float
    free: float
    seal: float
    collapsed: float
    goes_in: float
    rod: float
    gas: float
    charge: float
    piston: float
    spring: float
    main: float = 0.0
    preload: float = 0.0
    steel: float = 0.0


def slow_force(leg: Leg, state: str, s: float, moved: float = 0.0, bled: bool = True, main_in: bool = False) -> float:
    """Force [N] at a stroke [mm], without friction: Boyle's law in each space and the statics of the piston, number by number."""
    whole, rod, head = (pi / 4 * d * d for d in (leg.seal, leg.rod, leg.piston))
    went_in = leg.goes_in + (leg.steel if main_in else 0.0)
    force = leg.main * (leg.preload + s) if main_in else 0.0
    if leg.fill == PISTON:
        room = leg.free * leg.gap + whole * leg.collapsed - went_in
        force += OUTSIDE * (room / (room - whole * s) - 1.0) * whole
        if state in ("as built", "oil moved"):
            at_rest = leg.charge * head - leg.spring * (moved / head if state == "oil moved" else 0.0)
            force += (at_rest + leg.spring * rod * s / head) * rod / head
        return force
    outer = leg.free * leg.gap + (whole - rod) * leg.collapsed - went_in
    held = OUTSIDE + leg.charge
    if state == "as built" or state == "oil moved":
        oil = moved if state == "oil moved" else 0.0
        around, inside = outer - oil, leg.gas + oil
        start = OUTSIDE if bled else OUTSIDE * outer / around
        force += (start * around / (around - (whole - rod) * s) - OUTSIDE) * (whole - rod)
        return force + (held * leg.gas / (inside - rod * s) - OUTSIDE) * rod
    room = outer + leg.gas
    start = (OUTSIDE * outer + held * leg.gas) / room if state == "seal leaking" and not bled else OUTSIDE
    return force + (start * room / (room - whole * s) - OUTSIDE) * whole


def made_up(rng: Random, fill: str, well_read: bool, exact: bool = False) -> tuple[Leg, dict[str, Any]]:
    """A leg, and the job of somebody who has read it with the +/- that the job says; exact: who read it without any error."""
    leg = Leg(
        fill, rng.uniform(95, 150), rng.uniform(1150, 1500), rng.choice([46.0, 48.0, 49.0]), rng.uniform(296, 304), 0.0, rng.choice([10.0, 12.0, 12.5]),
        rng.uniform(70e3, 120e3), rng.uniform(0.15, 0.45) if fill == GAS else rng.uniform(0.08, 0.22), rng.uniform(26, 30), rng.uniform(1.2, 2.6),
        rng.uniform(4.0, 5.0), rng.uniform(2, 8), 50e3,
    )  # fmt: skip
    leg.goes_in = rng.uniform(20e3, 32e3)

    def read(true: float, half: float, unit: str, scale: float = 1.0) -> dict[str, str]:
        return {
            "value": f"{(true + (0.0 if exact else rng.gauss(0, half / 2))) * scale:.6f} {unit}",
            "plus_minus_95": f"{half * scale:.4f} {unit}",
        }

    entries: dict[str, Any] = {
        "front.air": "sealed cartridge", "front.cartridge_state": "as built", "front.cartridge_fill": fill, "front.layout": "conventional",
        "front.area_by": "raised", "front.raised_volume": "20 ml", "front.raised_height": read(20e3 / leg.free, 0.3, "mm"),
        "front.gap_left": read(leg.gap, 2, "mm"), "front.gap_right": None, "front.seal_diameter": read(leg.seal, 0.05, "mm"),
        "front.collapsed_stroke": read(leg.collapsed, 1, "mm"), "front.travel": "290 mm", "front.cap_volume": read(leg.goes_in, 3e3, "ml", 1e-3),
        "front.washers_volume": "0 ml", "front.spring_steel": read(leg.steel, 1e3, "ml", 1e-3), "front.damper_rod": read(leg.rod, 0.05, "mm"),
        "front.rate": read(leg.main, 0.05, "N/mm"), "front.preload": read(leg.preload, 1, "mm"), "place.bled_altitude": {"value": "0 m", "plus_minus_95": "0 m"},
        "place.ridden_altitude": None,
    }  # fmt: skip
    half = 0.03 if well_read else 0.1 if fill == GAS else 0.05
    entries["front.cartridge_charge"] = read(leg.charge, half, "bar", 10.0)
    if fill == GAS:
        entries["front.cartridge_gas"] = read(leg.gas, 5e3 if well_read else 30e3, "ml", 1e-3)
    else:
        entries["front.cartridge_piston"] = read(leg.piston, 0.05, "mm")
        entries["front.piston_spring"] = read(leg.spring, 0.1, "N/mm")
    return leg, changed(jobs()["enduro"], entries)


@dataclass
class Case:
    """A leg pushed in a state, as somebody wrote it down: what it truly was beside the job that says so."""

    leg: Leg
    state: str
    moved: float
    friction: float
    how: str
    error: float
    document: dict[str, Any]


def moved_truly(rng: Random, leg: Leg) -> float:
    """Oil [mm3] that has crossed the seal one way or the other, no more than leaves the cartridge one."""
    head, rod = pi / 4 * leg.piston**2, pi / 4 * leg.rod**2
    out = min(0.8 * leg.charge * head**2 / leg.spring, 60e3) if leg.fill == PISTON else 60e3
    into = 0.5 * (leg.gas - rod * 290) if leg.fill == GAS else 60e3
    return rng.uniform(5e3, out) if rng.random() < 0.5 else -rng.uniform(5e3, into)


def made_up_push(seed: str, fill: str, state: str) -> Case:
    """Swept over friction of 10 to 40 N, reading error, how it was read, spring in or out, bled or not; a scale within 2 %, strokes
    within 1 mm, readings careful or not."""
    rng = Random(seed)
    how, error, spring_in = rng.choice(("in", "out", "both")), rng.choice((2.0, 10.0, 20.0)), rng.random() < 0.3
    leg, document = made_up(rng, fill, rng.random() < 0.6)
    moved = moved_truly(rng, leg) if state == "oil moved" else 0.0
    bled = not spring_in or rng.random() < 0.5
    sign, friction, gain = {"in": 1, "out": -1, "both": 0}[how], rng.uniform(10, 40), 1.0 + rng.gauss(0, 0.01)
    points = []
    for stroke in (150, 200, 240, 262, 278):
        force = slow_force(leg, state, stroke + rng.gauss(0, 0.5), moved, bled, spring_in)
        points.append(f"{stroke} {max((force + sign * friction) * gain + rng.gauss(0, error / 2), 0.0):.1f}")
    entries = {
        "front.push_points": "; ".join(points), "front.push_read": how, "front.push_error": f"{error} N", "front.push_spring": "in" if spring_in else "out",
        "front.push_bled": "yes" if bled else "no",
    }  # fmt: skip
    return Case(leg, state, moved, friction, how, error, changed(document, entries))
