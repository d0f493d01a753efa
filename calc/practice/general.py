"""Ranges that hold for every use, and how well people measure. Common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Usual:
    """A range of the trade: low, high and typical in `unit`, confidence H, M or L, and what it is about."""

    low: float
    high: float
    typical: float
    unit: str
    confidence: str
    note: str = "common practice, no source"


GENERAL: Mapping[str, Usual] = {
    "stanchion wall": Usual(2, 3, 2.4, "mm", "M"),
    "fork spring free length": Usual(380, 520, 470, "mm", "M"),
    "cap in tube": Usual(10, 30, 20, "ml", "M"),
    "collapsed over travel": Usual(0, 15, 8, "mm", "M"),
    "coil bind margin fork": Usual(5, 5, 5, "mm", "M", "at least this at full travel; common practice, no source"),
    "coil bind margin shock": Usual(3, 3, 3, "mm", "M", "at least this at full travel; common practice, no source"),
    "smallest gap": Usual(60, 90, 75, "mm", "L"),
    "largest gap": Usual(150, 190, 165, "mm", "L", "less where the damper must stay covered; common practice, no source"),
    "fork adjuster": Usual(0, 15, 15, "mm", "M", "where there is one; common practice, no source"),
    "shock collar": Usual(2, 25, 25, "mm", "M"),
    "outer bore over stanchion": Usual(2, 3.5, 2.6, "mm", "L", "a bench's habit, from memory; no source"),
    "outer bore depth": Usual(20, 50, 32, "mm", "L"),
    "closed cartridge outer oil": Usual(290, 400, 340, "ml", "M"),
    "damper rod": Usual(10, 12.5, 12, "mm", "H"),
    "fork piston": Usual(20, 32, 28, "mm", "M"),
    "shock rod": Usual(12.5, 18, 16, "mm", "H"),
    "shock piston": Usual(36, 50, 46, "mm", "M"),
    "shock charge": Usual(7, 12, 10, "bar", "H", "gauge; common practice, no source"),
    "cartridge charge, spring-backed": Usual(0.5, 3, 1.5, "bar", "L", "gauge; common practice, no source"),
    "cartridge charge, gas": Usual(1, 8, 3, "bar", "L", "gauge; common practice, no source"),
    "air fork, small piston": Usual(6, 12, 10, "bar", "M", "gauge; common practice, no source"),
    "air fork, full bore": Usual(1.5, 3.5, 2.5, "bar", "M", "gauge; common practice, no source"),
    "friction per leg, bench": Usual(8, 20, 12, "N", "M"),
    "friction per leg, ridden": Usual(20, 50, 30, "N", "M"),
    "friction rear at the wheel": Usual(20, 60, 35, "N", "M"),
    "sold spring rate": Usual(-3, 3, 0, "%", "M", "5 % at worst; common practice, no source"),
    "spring set in use": Usual(1, 2, 1.5, "%", "M"),
    "gas exponent, riding": Usual(
        1.26, 1.40, 1.33, "", "M", "working value with its 95 % band 1.0-1.4 drawn; no published fork value found"
    ),
}

# 95 % half-widths of a reading taken with care, in the unit named.
MEASURING: Mapping[str, tuple[float, str]] = {
    "kitted rider": (1, "kg"),
    "axle scale, bike alone": (0.5, "kg"),
    "axle scale, ridden": (1, "kg"),
    "sag by tape": (2, "mm"),
    "o-ring stroke": (1, "mm"),
    "unsprung weighed": (0.5, "kg"),
    "unsprung guessed": (1.5, "kg"),
    "spring tester": (1, "%"),
    "drill press on a scale": (3, "%"),
    "free length": (1, "mm"),
    "wire by vernier": (0.05, "mm"),
    "charge by scale": (2, "N"),
    "gap by syringe": (2, "mm"),
    "gap by rule": (4, "mm"),
    "legs matched": (1, "mm"),
    "area by 20 ml": (3, "%"),
    "spring volume by scale": (0.5, "ml"),
    "cap by jug": (3, "ml"),
    "syringe": (1, "ml"),
    "leg temperature": (3, "K"),
    "barometer": (2, "hPa"),
    "altitude by map": (50, "m"),
    "damper rod and piston": (0.05, "mm"),
    "shims": (0.01, "mm"),
    "rake by gauge": (0.5, "°"),
    "stroke by rule": (1, "mm"),
    "preload by rule": (1, "mm"),
}

MODIFIERS: Mapping[str, str] = {
    "deep sand": "Front gap 5-10 mm less, rear sag 3-5 mm more, rebound slower.",
    "jumps": "Gap 10 mm less, or one spring step up.",
    "rocks and roots": "Gap 5-10 mm more.",
    "luggage": "Preload first, then a spring.",
    "always": "One change at a time.",
}
