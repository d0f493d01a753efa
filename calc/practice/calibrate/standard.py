"""The standard rider on the standard setup of a kind of riding, all assumed: what the model makes of typical values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import numpy as np

from calc.array import Array, Number
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.job import Job, load
from calc.job.starter import start
from calc.model import conditions, fork, shock, standard_loads
from calc.practice.axle import AXLES, Axle
from calc.practice.calibrate.rows import INPUTS, judged
from calc.practice.judged import JUDGED
from calc.quantities.entry import convert, internal_unit


def standard_job(use: str) -> Job:
    """A new job of the standard rider, nothing else entered."""
    return load(start(use, f"{judged(('standard rider', use))[2]:g} kg"))


def worked_out(job: Job, rows: Mapping[str, Array]) -> dict[str, Array]:
    """The output rows, in their units, from values of the input rows; these may be arrays alike in shape."""
    samples: dict[str, Any] = {}
    for row, value in rows.items():
        paths = INPUTS[row][1]
        inside = internal_unit(job.fields[paths[0]].field.dimension)
        samples |= dict.fromkeys(paths, convert(value, JUDGED[row].unit, inside))  # type: ignore[arg-type]
    for strut, axle in (("fork", "front"), ("shock", "rear")):  # sold with the typical preload, as it came in
        samples.setdefault(f"standard.{strut}_preload", job.number(f"{axle}.preload"))
    beyond = job.number("front.collapsed_stroke") - job.number("front.travel")
    drawn = replace(job, samples=samples | {"front.collapsed_stroke": samples["front.travel"] + beyond})
    at = conditions(drawn)
    found: dict[str, Number] = {}
    for axle in AXLES:
        assembly = fork(drawn, at) if axle == "front" else shock(drawn, at)
        loads = standard_loads(drawn, axle)
        done = evaluate(assembly, _setup(drawn, axle), loads, at.exponent)
        found[f"rider sag {axle}"] = 100.0 * done.rider.travel / done.end.travel
        found[f"free sag {axle}"] = 100.0 * _free_sag(done, loads.alone) / done.end.travel
        found[f"ride frequency {axle}"] = done.frequency
        found[f"end multiple {axle}"] = done.end_multiple
    return {row: np.asarray(value) for row, value in found.items()}


def _setup(job: Job, axle: Axle) -> Setup:
    return Setup(job.value(f"{axle}.rate"), job.value(f"{axle}.preload"), job.value("front.gap_left") if axle == "front" else 0.0)


def _free_sag(done: Figures, alone: Number) -> Array:
    """Free sag [mm, vertical], followed on below 0 where the bike stays topped out: a search needs a slope there."""
    hanging, rate = done.end.wheel_force(0.0, ISOTHERMAL), done.end.wheel_rate(0.0, ISOTHERMAL)
    return np.where(done.free.topped_out, np.minimum(alone - hanging, 0.0) / rate, done.free.travel)
