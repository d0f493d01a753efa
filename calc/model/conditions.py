"""Where and how warm the legs were bled, where and how warm the bike is ridden, and how fast gas behaves."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calc.array import Number
from calc.gas.atmosphere import pressure_at
from calc.job import Job


@dataclass(frozen=True, eq=False)
class Conditions:
    """Ambient pressure [MPa] where the legs were bled and where the bike is ridden; gas exponent [-] of fast moves; leg
    temperature [K] when the gap was read and closed spaces were charged, when the legs were bled, and in use; ambient
    pressure [MPa] where they were charged.
    """

    bleed: Number
    ambient: Number
    exponent: Number
    read_temperature: Number
    bled_temperature: Number
    temperature: Number
    charged: Number

    @property
    def one_temperature(self) -> bool:
        """True where nothing has grown: read, bled and ridden at the same temperature."""
        return self.bled_temperature is self.read_temperature and self.temperature is self.read_temperature

    def ridden(self, ambient: Number | None = None, temperature: Number | None = None) -> Conditions:
        """The same legs ridden elsewhere [MPa] or at another leg temperature [K]; None leaves one as it is."""
        return replace(
            self,
            ambient=self.ambient if ambient is None else ambient,
            temperature=self.temperature if temperature is None else temperature,
        )

    def bled_there(self) -> Conditions:
        """The legs bled again where they are ridden, as warm as they are there."""
        return replace(self, bleed=self.ambient, bled_temperature=self.temperature)


def conditions(job: Job) -> Conditions:
    """The two places; a place of riding that is not named is the place of bleeding, a temperature likewise.

    Parameters: job.
    Returns: Conditions: pressures [MPa], temperatures [K], exponent [-].
    Raises: ValueError as `calc.gas.atmosphere.pressure_at`.
    Formula: a pressure as read; else from the altitude, see `calc.gas.atmosphere.pressure_at`.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(conditions(load(jobs()["enduro"])).ambient), 4)
        0.0966
    """
    bleed = _pressure(job, "bled")
    named = job.known("place.ridden_pressure") or job.entered("place.ridden_altitude")
    cold = job.value("place.bled_temperature")
    warm = job.value("place.ridden_temperature") if job.entered("place.ridden_temperature") else cold
    return Conditions(bleed, _pressure(job, "ridden") if named else bleed, job.value("place.exponent"), cold, cold, warm, bleed)


def _pressure(job: Job, where: str) -> Number:
    if job.known(f"place.{where}_pressure"):
        return job.value(f"place.{where}_pressure")
    return pressure_at(job.value(f"place.{where}_altitude"))
