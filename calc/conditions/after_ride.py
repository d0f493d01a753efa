"""After the ride: what the mark and the rider say of the setup that was ridden, and the one thing to change first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from calc.array import Array
from calc.end.assembly import Assembly, ForkAssembly
from calc.end.end import End
from calc.end.figures import Figures, figures
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.gas.chamber import Process
from calc.impossible import Impossible
from calc.job import Job
from calc.model.axles import end_loads
from calc.model.draws import drawn, half_width
from calc.model.inputs import end_inputs
from calc.model.marks import ridden_end
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.sizing.air_pressure import pressure_for_sag
from calc.sizing.criteria import Criterion, Margins, criteria

USED, UNUSED = 0.97, 0.9  # of the travel: from there on all of it was used, and below it some is left; common practice, no source
GAP_STEP = 5.0  # mm, what a bench moves the oil by at a time; common practice, no source

Kind = Literal["preload", "pressure", "spring", "oil", "damping", "read", "look", "none"]


@dataclass(frozen=True)
class SagFound:
    """A rider sag as it was read: value and 95 % half-width [mm]; believed, False where it fits nothing else that was read."""

    value: float
    half: float
    believed: bool


@dataclass(frozen=True, eq=False)
class Ridden:
    """An end as it was ridden.

    Parameters: assembly, setup, end, loads; figures of these; stroke [mm] at full travel; targets; sag, the rider sag with
    the window of the wanted one; mark [mm], None where none was read; off [mm], the 95 % half-width of what is left beyond it.
    """

    assembly: Assembly
    setup: Setup
    end: End
    loads: Loads
    figures: Figures
    stroke: float
    targets: Targets
    sag: Criterion
    wanted: float
    mark: float | None
    off: float = 0.0

    @property
    def left(self) -> float:
        """Stroke [mm] that was not used; none where the mark stands beyond it by what that may be off."""
        return max(self.stroke - (self.mark or 0.0), 0.0)

    @property
    def all_used(self) -> bool:
        """Whether the mark stands at the end of the travel, or as near to it as is known."""
        return self.mark is not None and self.mark >= USED * self.stroke - self.off

    @property
    def unused(self) -> bool:
        """Whether more of the travel is left than should be, by more than is known of it."""
        return self.mark is not None and self.mark < UNUSED * self.stroke - self.off

    def missed(self, sag: SagFound) -> bool:
        """Whether a sag found lies outside the window of the wanted one by more than it may be misread."""
        return bool(replace(self.sag, value=np.asarray(sag.value), margin=sag.half).outside)

    def force_at_mark(self) -> float:
        """Wheel force [N] of springs and gas where the mark stands, working n about rider sag."""
        assert self.mark is not None
        travel = self.end.travel if self.mark >= self.stroke else self.travel_of(self.mark)
        process = Process(self.figures.process.exponent, self.figures.rider.stroke)
        return float(self.end.wheel_force(travel, process))

    def travel_of(self, stroke: float) -> float:
        """Wheel travel [mm] at a stroke."""
        return float(self.end.motion.travel(stroke))


@dataclass(frozen=True, eq=False)
class Change:
    """What to change first: the setup with it, and what that costs; nothing of that where it is not springs and oil.

    Parameters: kind; setup, None where it stays; figures of that; oil [mm3] to add to each leg, 0 where none.
    """

    kind: Kind
    setup: Setup | None = None
    figures: Figures | None = None
    oil: float = 0.0


def ridden(job: Job, axle: Axle) -> Ridden:
    """An end as it was ridden, at the place and warmth of the ride.

    Parameters: job, corrected by what was found where it says so; axle.
    Returns: Ridden.
    Raises: Impossible as `calc.model.marks.ridden_end` and `calc.model.inputs.end_inputs`.
    Formula: see `calc.end.figures`.
    Source: none.
    Example: see `tests/whole/test_ride.py`.
    """
    assembly, setup, end = ridden_end(job, axle)
    loads, targets = end_loads(job, axle), end_inputs(job, axle).targets
    done = figures(end, loads, job.value("place.exponent"))
    mark = job.number(f"{axle}.mark") if job.known(f"{axle}.mark") else None
    stroke = float(np.asarray(end.motion.stroke(end.travel)))
    off = 0.0 if mark is None else float(np.hypot(2.0 * _misread(job, f"{axle}.mark"), _stroke_off(job, axle)))
    if mark is not None and mark > stroke + off:
        raise Impossible(
            "mark",
            f"The mark stands at {mark:.0f} mm of a stroke of {stroke:.0f} mm.",
            "Read it again, or check the travel.",
            f"{axle}.mark",
        )
    sag = criteria(done, targets, Margins())["rider sag"]
    return Ridden(assembly, setup, end, loads, done, stroke, targets, sag, float(np.asarray(targets.sag)), mark, off)


def _misread(job: Job, path: str) -> float:
    reading = job.fields[path].reading
    return 0.0 if reading is None else reading.standard_uncertainty


def _stroke_off(job: Job, axle: Axle) -> float:
    """95 % half-width [mm] of the stroke at full travel: a travel or a leverage that nobody read may be off by far."""

    def full(some: Job) -> Array:
        end = ridden_end(some, axle)[2]
        return np.asarray(end.motion.stroke(end.travel))

    draws, left_out, whole = survivors(drawn(job), job.draws, full)
    if job.draws - left_out < 2:
        words = "Too little is known of this end to say how much travel was left."
        raise Impossible("mark", words, "Measure its travel.", f"{axle}.travel")
    return half_width(full(draws) if whole is None else whole)


def change_first(job: Job, axle: Axle, here: Ridden, sag: SagFound | None) -> Change:
    """The one thing to change first.

    Parameters: job; axle; here, what was ridden; sag, its rider sag as it was read, None where it was not: one that is only
    worked out asks for nothing.
    Returns: Change.
    Raises: nothing.
    Formula: sag first, by preload or pressure; then the travel, by a step of the gap; the rest is damping's.
    Source: common practice, no source.
    Example: see `tests/whole/test_ride.py`.
    """
    if sag is not None and here.missed(sag):
        return _sag(job, axle, here, sag.value)
    felt = felt_at(job, axle)
    if felt == "bottoms" and not here.all_used:
        return Change("look")
    if felt == "hard" and here.mark is None:
        return Change("look")
    if felt == "bottoms":
        return _oil(here, -GAP_STEP)
    if felt == "hard" and here.unused:
        return _oil(here, GAP_STEP)
    return Change("none" if felt in ("", "well") else "damping")


def felt_at(job: Job, axle: Axle) -> str:
    """What the rider felt.

    Parameters: job; axle.
    Returns: a key of the field's choices; empty where nobody asked.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/whole/test_ride.py`.
    """
    return job.choice(f"{axle}.felt") if job.entered(f"{axle}.felt") else ""


def _sag(job: Job, axle: Axle, here: Ridden, found: float) -> Change:
    """What brings the sag found to the one wanted: pressure or preload; the spring, where no adjuster or spacer does."""
    now, wanted = ((here.travel_of(sag) if axle == "front" else sag) for sag in (found, here.wanted))
    load, setup = here.loads.aboard, here.setup
    if setup.air is not None and isinstance(here.assembly, ForkAssembly):
        try:
            more = [float(np.asarray(pressure_for_sag(here.assembly, setup, load, at))) for at in (here.wanted, found)]
        except Impossible:
            return Change("look")
        step = job.number("front.air_step")
        pressure = round((float(np.asarray(setup.air.pressure)) + more[0] - more[1]) / step) * step
        return _tried(here, "pressure", replace(setup, air=replace(setup.air, pressure=pressure)))
    each = [float(np.asarray(preload_for_sag(here.assembly, setup, load, at))) for at in (wanted, now)]
    preload = float(np.round(float(np.asarray(setup.preload)) + each[0] - each[1]))
    low, high = job.number(f"{axle}.preload_min"), job.number(f"{axle}.preload_max")
    if not low <= preload <= high:
        return Change("spring")
    made = _tried(here, "preload", replace(setup, preload=preload))
    return Change("spring") if made.figures is not None and _free_sag_lost(here, made.figures, wanted < now) else made


def _free_sag_lost(here: Ridden, done: Figures, tighter: bool) -> bool:
    """Whether a change of preload takes the free sag beyond its window: under it where it was wound in, over it where out."""
    free = criteria(done, here.targets, Margins())["free sag"]
    return bool(np.asarray(free.value) < free.low) if tighter else bool(np.asarray(free.value) > free.high)


def _oil(here: Ridden, by: float) -> Change:
    """A step of the gap, where there is one and the leg does not lock; else damping has to do it."""
    if not isinstance(here.assembly, ForkAssembly) or float(np.asarray(here.setup.gap)) <= 0:
        return Change("damping")
    changed = replace(here.setup, gap=here.setup.gap + by)
    rate = here.setup.rate
    made = _tried(here, "oil", changed)
    oil = float(np.asarray(here.assembly.gas.oil_to_add(rate, here.setup.gap, rate, changed.gap)))
    return replace(made, oil=oil) if made.kind == "oil" else made


def _tried(here: Ridden, kind: Kind, setup: Setup) -> Change:
    try:
        return Change(kind, setup, figures(here.assembly.end(setup), here.loads, here.figures.process.exponent))
    except Impossible:
        return Change("damping")
