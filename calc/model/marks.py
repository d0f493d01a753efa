"""The mark that a ride left: what it says, and how deep springs and gas alone would have let the wheel go."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array, Number
from calc.end.assembly import Assembly
from calc.end.end import End
from calc.end.landing import landing_travel
from calc.end.setup import Setup
from calc.gas.atmosphere import pressure_at
from calc.job import Job
from calc.model.axles import end_loads
from calc.model.conditions import Conditions, conditions
from calc.model.fork import fork
from calc.model.inputs import found_setup
from calc.model.observed import built_setup
from calc.model.shock import shock
from calc.practice import Axle


@dataclass(frozen=True)
class MarkRead:
    """The mark of a landing of known height: a bound, since whatever springs and gas do not take up makes it smaller.

    Parameters: axle; mark [mm], stroke; uncertainty [mm], standard, of the mark and of what the height's makes of it.
    """

    axle: Axle
    mark: float
    uncertainty: float
    bound: bool = True

    @property
    def case(self) -> str:
        """What it is of."""
        return "landing"

    @property
    def middle(self) -> float:
        """What is compared [mm]: less than nothing, so that what is predicted is at most that."""
        return -self.mark


def was_built(job: Job, axle: Axle) -> bool:
    """Tell whether what was built at an end is entered, in part or whole.

    Parameters: job; axle.
    Returns: True where any of it is.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/unit/model/test_marks.py`.
    """
    return any(job.entered(path) for path in job.fields if path.startswith(f"{axle}.built_"))


def ridden_end(job: Job, axle: Axle) -> tuple[Assembly, Setup, End]:
    """An end as it was ridden: as built, or as it came in where nothing is built; as warm and as high as the ride was.

    Parameters: job, drawn or not; axle.
    Returns: Assembly, Setup and the End of both.
    Raises: Impossible as `calc.model.fork.fork`, `calc.model.observed.built_setup` and `calc.model.inputs.found_setup`.
    Formula: see `calc.model.conditions`.
    Source: none.
    Example: see `tests/unit/model/test_marks.py`.
    """
    at = ridden_conditions(job)
    assembly: Assembly = fork(job, at) if axle == "front" else shock(job, at)
    setup = built_setup(job, axle) if was_built(job, axle) else found_setup(job, axle, assembly)
    return assembly, setup, assembly.end(setup)


def ridden_conditions(job: Job) -> Conditions:
    """The job's conditions, at the place and the leg temperature of the ride where these are entered.

    Parameters: job.
    Returns: Conditions.
    Raises: ValueError as `calc.gas.atmosphere.pressure_at`.
    Formula: see `calc.model.conditions`.
    Source: see there.
    Example: see `tests/unit/model/test_marks.py`.
    """
    height, warm = (job.value(path) if job.known(path) else None for path in ("ride.altitude", "ride.temperature"))
    return conditions(job).ridden(None if height is None else pressure_at(height), warm)


def landing_stroke(job: Job, axle: Axle, drop: Number) -> Array:
    """Stroke to which springs and gas alone take up a flat landing.

    Parameters: job, drawn or not; axle; drop [mm], > 0.
    Returns: stroke [mm] of the leg or shock.
    Raises: Impossible as `ridden_end` and `calc.end.landing.landing_travel`.
    Formula: see `calc.end.landing`.
    Source: see there.
    Example: see `tests/unit/model/test_marks.py`.
    """
    _, _, end = ridden_end(job, axle)
    travel = landing_travel(end, end_loads(job, axle).aboard, drop, job.value("place.exponent"))
    return np.asarray(end.motion.stroke(travel))


def mark_read(job: Job, axle: Axle) -> MarkRead | None:
    """The mark of an end, where the landing that made it is known.

    Parameters: job, not drawn; axle.
    Returns: MarkRead; None where either is not read.
    Raises: Impossible as `landing_stroke`.
    Formula: u^2 = u_mark^2 + (what half a standard uncertainty of the height either way makes of the stroke)^2.
    Source: JCGM 100:2008, 5.1.2.
    Example: see `tests/unit/model/test_marks.py`.
    """
    path = f"{axle}.mark"
    if not (job.known(path) and job.known("ride.drop")):
        return None
    mark, drop = job.fields[path].reading, job.fields["ride.drop"].reading
    assert mark is not None
    assert drop is not None
    moved = 0.5 * drop.standard_uncertainty
    strokes = [float(landing_stroke(job, axle, drop.value + sign * moved)) for sign in (-1.0, 1.0)]
    return MarkRead(axle, mark.value, float(np.hypot(mark.standard_uncertainty, strokes[1] - strokes[0])))
