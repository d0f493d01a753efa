"""Where the legs were bled, where the bike is ridden, and how fast gas behaves."""

from __future__ import annotations

from dataclasses import dataclass

from calc.array import Number
from calc.atmosphere import pressure_at
from calc.job import Job


@dataclass(frozen=True)
class Conditions:
    """Ambient pressure [MPa] where the legs were bled and where the bike is ridden; gas exponent [-] of fast moves."""

    bleed: Number
    ambient: Number
    exponent: Number


def conditions(job: Job) -> Conditions:
    """Pressures of the two places; a place of riding that is not named is the place of bleeding."""
    bleed = _pressure(job, "bled")
    named = job.known("place.ridden_pressure") or job.entered("place.ridden_altitude")
    return Conditions(bleed, _pressure(job, "ridden") if named else bleed, job.value("place.exponent"))


def _pressure(job: Job, where: str) -> Number:
    if job.known(f"place.{where}_pressure"):
        return job.value(f"place.{where}_pressure")
    return pressure_at(job.value(f"place.{where}_altitude"))
