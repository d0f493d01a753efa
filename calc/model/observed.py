"""Sags that were read: what they say, and what the model expects of them."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.end.assembly import Assembly
from calc.end.end import End
from calc.end.sag import settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from calc.job import Job
from calc.model.axles import end_loads
from calc.model.conditions import conditions
from calc.model.fork import fork
from calc.model.inputs import found_setup
from calc.model.shock import shock
from calc.practice import Axle

CASES = ("alone", "aboard")
TOPPED = 0.5  # mm: a sag read as less is none
SETTLES = 0.25  # mm, standard deviation: what a bike that is pushed again settles within, whoever reads; common practice, no source
_NEARLY = 0.9999  # of the force at full travel: what is carried must be below it
STICKS = 15.0  # mm between two readings of one sag: no verdict then; common practice, no source


@dataclass(frozen=True)
class SagRead:
    """One sag as it was read.

    Parameters: axle; case, "alone" or "aboard"; readings [mm], one or two; uncertainty [mm], standard, of each; taped, whether they
    are lengths; hanging [mm], where they are.
    """

    axle: Axle
    case: str
    readings: tuple[float, ...]
    uncertainty: float
    taped: bool
    hanging: float = 0.0

    @property
    def middle(self) -> float:
        """What is compared [mm]: the mean; of lengths less than nothing, so that it grows with the sag."""
        mean = sum(self.readings) / len(self.readings)
        return -mean if self.taped else mean

    @property
    def sag(self) -> float:
        """The sag itself [mm]."""
        return self.hanging + self.middle

    @property
    def spread(self) -> float | None:
        """What two readings differ by [mm]; None for one."""
        return abs(self.readings[0] - self.readings[1]) if len(self.readings) == 2 else None

    @property
    def topped_out(self) -> bool:
        """Whether the end stands on its top."""
        return self.sag < TOPPED

    @property
    def bound(self) -> bool:
        """Whether the reading is only a limit: that of a bike which stands on its top."""
        return self.topped_out


def sags_read(job: Job, axle: Axle) -> tuple[SagRead, ...]:
    """The sags of an end that were read.

    Parameters: job; axle.
    Returns: SagRead, of the bike alone first.
    Raises: nothing; lengths without the hanging length tell no sag and are left out.
    Formula: u^2 = that of the reading + that of how well it settles.
    Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    taped = job.choice(f"{axle}.sags_read") == "lengths"
    if taped and not job.known(f"{axle}.hanging_length"):
        return ()
    hanging = job.number(f"{axle}.hanging_length") if taped else 0.0
    found = []
    for case in CASES:
        paths = [f"{axle}.{case}{again}_{'length' if taped else 'sag'}" for again in ("", "_again")]
        known = [reading for path in paths if (reading := job.fields[path].reading) is not None and job.fields[path].applies]
        if known:
            off = float(np.hypot(max(reading.standard_uncertainty for reading in known), SETTLES))
            found.append(SagRead(axle, case, tuple(reading.value for reading in known), off, taped, hanging))
    return tuple(found)


@dataclass(frozen=True, eq=False)
class Expected:
    """What the model expects of an end, alone and aboard along the first axis.

    Parameters: end; rate [N/mm] that is in, a mean of the legs; loads [N]; sags [mm] as they are read, continued below 0 where it
    is topped out; friction [mm], the half-band about each that it sticks in.
    """

    end: End
    rate: Number
    loads: Array
    sags: Array
    friction: Array


def expected(job: Job, axle: Axle, all_held: bool = True) -> Expected:
    """Settle an end as it was when its sags were read, under the bike alone and with the rider.

    Parameters: job, drawn or not; axle; all_held, whether a load that springs and gas do not carry is refused.
    Returns: Expected; else such a load has a sag of NaN.
    Raises: Impossible as `calc.model.fork.fork`, `calc.model.shock.shock`, `found_setup`, `built_setup` and `calc.end.sag.settle`.
    Formula: see `calc.end.sag.settle`; friction along the leg = at the wheel x ratio.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> expected(load(jobs()["enduro"]), "front").sags.round().tolist()
        [31.0, 69.0]
    """
    at = conditions(job)
    assembly: Assembly = fork(job, at) if axle == "front" else shock(job, at)
    setup = built_setup(job, axle) if job.choice("bike.sags_of") == "built" else found_setup(job, axle, assembly)
    loads, end = end_loads(job, axle), assembly.end(setup)
    wide = end.wheel_force(0.0, ISOTHERMAL)
    load = np.stack(np.broadcast_arrays(loads.alone, loads.aboard, wide)[:2])
    carried = np.inf if all_held else np.asarray(end.wheel_force(end.travel, ISOTHERMAL))
    both = settle(end, np.minimum(load, _NEARLY * carried))
    along = axle == "front"
    friction = both.friction * (end.motion.ratio(both.travel) if along else 1.0)
    sags = np.asarray(both.stroke_unbounded if along else both.travel_unbounded)
    return Expected(end, setup.rate, load, np.where(load < _NEARLY * carried, sags, np.nan), np.broadcast_to(friction, sags.shape))


def built_setup(job: Job, axle: Axle) -> Setup:
    """What was built, as it was read back.

    Parameters: job, drawn or not; axle.
    Returns: Setup: rate [N/mm], preload and gap [mm], half of what the legs differ by.
    Raises: Impossible where a figure is not entered, or the end is an air spring whose chamber or second volume was set: what these
    are as built no field holds.
    Formula: as `calc.model.inputs.found_setup`.
    Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    front = axle == "front"
    if front and job.choice("front.air") == "air leg":
        return _built_air(job)
    one, preload = (_built(job, f"{axle}.built_{part}") for part in ("rate", "preload"))
    if not front:
        return Setup(one, preload, 0.0)
    other = job.value("front.built_rate_right") if job.known("front.built_rate_right") else one
    left, right = (_built(job, f"front.built_gap_{leg}") for leg in ("left", "right"))
    return Setup(0.5 * (one + other), preload, 0.5 * (left + right), 0.5 * (other - one), None, 0.5 * (right - left))


def _built_air(job: Job) -> Setup:
    """An air spring as built: its pressure and both gaps; all else stays as it was found."""
    if job.choice("front.air_end") != "gap":
        words = "Of an air spring as built only pressure and gaps are known, not what was set in its chambers."
        raise Impossible("air", words, "Read its sags at the next visit.", "bike.sags_of")
    base = found_setup(job, "front", fork(job, conditions(job)))
    assert base.air is not None
    left, right = (_built(job, f"front.built_gap_{leg}") for leg in ("left", "right"))
    air = replace(base.air, pressure=_built(job, "front.built_pressure"))
    return replace(base, air=air, gap=0.5 * (left + right), gap_split=0.5 * (right - left))


def _built(job: Job, path: str) -> Number:
    if not job.known(path):
        label = job.fields[path].field.label
        raise Impossible("missing", f"{label} is not entered.", "Build it first, or say that the sags are as it came in.", path)
    return job.value(path)


def spring_rate_found(job: Job, axle: Axle, sags: Array) -> Number:
    """The spring rate at which the two sags read differ by what they do.

    Parameters: job, drawn or not; axle; sags [mm], alone and aboard along the first axis, both above 0 and the second larger.
    Returns: rate [N/mm] as it is fitted, a mean of the legs; preload does not matter.
    Raises: Impossible as `expected`.
    Formula: rate fitted x (difference of the loads - of the settled gas) / difference of the springs' forces, at the wheel.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> round(float(spring_rate_found(job, "front", expected(job, "front").sags)), 6)
        4.2
    """
    here = expected(job, axle)
    end = here.end
    travel = end.motion.travel(sags) if axle == "front" else sags
    springs, gas = np.asarray(end.spring_wheel_force(travel)), np.asarray(end.gas_wheel_force(travel, ISOTHERMAL))
    moved = here.loads[1] - here.loads[0] - (gas[1] - gas[0])
    return np.asarray(here.rate * moved / (springs[1] - springs[0]))
