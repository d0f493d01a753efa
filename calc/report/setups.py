"""One setup in the report: what is built and what it does, each figure with its case."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from calc.end.figures import Figures
from calc.end.sag import Sag
from calc.end.setup import Setup
from calc.job import Job
from calc.model.marking import renamed
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.quantity import quantity, spring_rate
from calc.report.types import Legs, Quantity, SetupReport

SAME_RATE = 1e-6  # N/mm, within which rates are the same


@dataclass(frozen=True, eq=False)
class Cases:
    """The words for the load cases of one end of one job, and what its springs are called."""

    sag: str
    free: str
    rider: str
    working: str
    landing: str
    along: bool
    gauge: int
    renamed: tuple[float, float] | None

    @classmethod
    def of(cls, job: Job, axle: Axle) -> Cases:
        """The cases of an end: where sag is read, the posture, the exponent."""
        along = axle == "front"
        where = "along the leg" if along else "vertical at the axle"
        exponent = f"gas exponent {job.number('place.exponent'):.2f}"
        return cls(
            sag=f"gas settled, {where}",
            free=f"bike alone, gas settled, {where}",
            rider=f"rider aboard, {job.posture}, gas settled, {where}",
            working=f"rider aboard, {job.posture}, riding, {exponent}",
            landing=f"landing from hanging, {exponent}",
            along=along,
            renamed=renamed(job, axle),
            gauge=_decimals(convert(job.number("front.air_step"), "MPa", "bar")) if along and job.known("front.air_step") else 1,
        )

    def called(self, rate: float) -> float:
        """A rate [N/mm] by its name: that of what is in by its marking, see `calc.model.marking`."""
        now, marked = self.renamed or (rate, rate)
        return marked if abs(rate - now) < SAME_RATE else rate


def _decimals(step: float) -> int:
    """Decimals that tell a gauge's steps apart."""
    return 1 if abs(step * 10 - round(step * 10)) < 1e-6 else 2


def setup_report(
    setup: Setup, done: Figures, cases: Cases, bind: float | None = None, second_bind: float | None = None
) -> SetupReport:
    """A built setup and its figures; `done` holds scalars. Rate, preload and gap are per strut, the rest per end."""
    per = "per leg" if cases.along else "per shock"
    air, gauge = setup.air, "gauge, cold, as the pump shows it"
    return SetupReport(
        rate=spring_rate(cases.called(float(np.asarray(setup.rate))), per),
        pressure=_if_set(None if air is None else air.pressure, "bar", gauge, cases.gauge, "MPa"),
        air_oil=_if_set(None if air is None else air.oil, "ml", "into the main chamber, against as found", 0, "mm3"),
        second_pressure=_if_set(None if air is None else air.second, "bar", f"second volume, {gauge}", cases.gauge, "MPa"),
        preload=quantity(setup.preload, "mm", f"{per}, at full extension", 0),
        gap=quantity(setup.gap, "mm", "per leg, as you read it", 0) if cases.along else None,
        free_sag=quantity(_sag(done.free, cases), "mm", cases.free, 0),
        free_sag_friction=quantity(_friction(done.free, done, cases), "mm", f"{cases.free}, friction either way", 0),
        topped_out=bool(done.free.topped_out),
        rider_sag=quantity(_sag(done.rider, cases), "mm", cases.rider, 0),
        rider_sag_friction=quantity(_friction(done.rider, done, cases), "mm", f"{cases.rider}, friction either way", 0),
        frequency=quantity(done.frequency, "Hz", cases.working, 2),
        wheel_rate=quantity(done.wheel_rate, "N/mm", cases.working, 1),
        end_force=quantity(done.end_force, "kN", f"full travel, {cases.working}", 2, "N"),
        end_multiple=quantity(done.end_multiple, "", f"end force over static rider load, {cases.working}", 1),
        landing_energy=quantity(done.energy, "J", cases.landing, 0, "N mm"),
        energy_per_mass=quantity(done.energy_per_mass / 1000.0, "J/kg", f"{cases.landing}, over sprung mass", 1),
        landing_energy_rubber=_with_rubber(done, cases),
        flat_drop=quantity(_flat_drop(done) / 10.0, "cm", f"{cases.landing}, damping left out", 0),
        pair=pair_of(setup) if setup.split else None,
        bind_clearance=None if bind is None or not math.isfinite(bind) else quantity(bind, "mm", "full travel", 0),
        second_bind_clearance=None if second_bind is None else quantity(second_bind, "mm", "second spring, full travel", 0),
    )


def _flat_drop(done: Figures) -> float:
    """Height [mm] of the drop, see `calc.end.landing.flat_drop`, from figures that are worked out already."""
    load = np.asarray(done.end_force) / np.asarray(done.end_multiple)
    return float(np.asarray(done.energy) / load - np.asarray(done.end.travel))


def _if_set(value: object, unit: str, case: str, decimals: int, internal: str) -> Quantity | None:
    """What an air spring is set to; None for what it has not, or what stays as found."""
    return None if value is None else quantity(value, unit, case, decimals, internal)


def _with_rubber(done: Figures, cases: Cases) -> Quantity | None:
    if not done.end.has_rubber:
        return None
    energy = done.energy + done.end.rubber_energy(done.end.travel)
    return quantity(energy, "J", f"{cases.landing}, with the bump rubber", 0, "N mm")


def pair_of(setup: Setup) -> Legs:
    """The rates of both legs."""
    return Legs(spring_rate(setup.rate - setup.split, "left leg"), spring_rate(setup.rate + setup.split, "right leg"))


def _sag(sag: Sag, cases: Cases) -> object:
    return sag.stroke if cases.along else sag.travel


def _friction(sag: Sag, done: Figures, cases: Cases) -> object:
    return sag.friction * done.end.motion.ratio(0.0) if cases.along else sag.friction
