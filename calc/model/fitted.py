"""The fitted springs: how they are put together, rate, steel and solid length, from marking, wire and coil, or a table."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number
from calc.impossible import Impossible, decimals_apart
from calc.job import Job
from calc.practice import Axle
from calc.springs.arrangement import Arrangement, Nested, Progressive, SingleSpring, Stacked
from calc.springs.fit import Fit
from calc.springs.helical import active_coils, rate_from_wire, solid_length, steel_from_mass, steel_volume
from calc.springs.table import ForceTable
from calc.springs.tester import Tested, line_through

# Standard normal numbers of what the lines through testers' points may be off by, among a drawn job's samples.
LINE_OFF: dict[Axle, str] = {"front": "front.tester line", "rear": "rear.tester line"}


def by_wire(job: Job, axle: Axle) -> bool:
    """Tell whether the rate is worked out from wire and coil.

    Parameters: job; axle.
    Returns: True where it is.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    return job.fields[f"{axle}.rate_from"].applies and job.choice(f"{axle}.rate_from") == "wire"


def by_tester(job: Job, axle: Axle) -> Tested | None:
    """The line through a tester's points; None where the rate is known otherwise.

    Parameters: job; axle.
    Returns: Tested.
    Raises: Impossible where the points are not entered, or do not rise.
    Formula: see `calc.springs.tester.line_through`.
    Source: see there.
    Example: see `tests/unit/springs/test_tester.py`.
    """
    path = f"{axle}.tester"
    found = job.fields[path]
    if not found.applies:
        return None
    if not found.pairs:
        raise Impossible("missing", f"{found.field.label} is not entered.", "Enter three points or more.", path)
    compression, force = np.array(found.pairs).T
    return line_through(compression, force, path)


def rate(job: Job, axle: Axle) -> Number:
    """Rate [N/mm] of the fitted springs, the legs' mean: marked, by a tester's points, from wire and coil, or a table's mean.

    Parameters: job; axle.
    Returns: rate [N/mm].
    Raises: Impossible where a dimension or a table is missing or wrong.
    Formula: see `calc.springs.helical.rate_from_wire`; a table's mean x (1 + its error); (left + right) / 2.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> rate(load(jobs()["enduro"]), "front")
        4.2
    """
    left = _rate(job, axle)
    return 0.5 * (left + _right(job)) if unequal(job, axle) else left


def split(job: Job, axle: Axle) -> Number:
    """Half of what the right leg's rate is above the left one's [N/mm]; 0 where both are alike.

    Parameters: job; axle.
    Returns: split [N/mm].
    Raises: Impossible as `rate`.
    Formula: (right - left) / 2.
    Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    return 0.5 * (_right(job) - _rate(job, axle)) if unequal(job, axle) else 0.0


def unequal(job: Job, axle: Axle) -> bool:
    """Tell whether each leg carries another rate.

    Parameters: job; axle.
    Returns: True where it does.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    return job.choice(f"{axle}.spring_kind") == "unequal"


def _right(job: Job) -> Number:
    return job.value("front.rate_right") if job.entered("front.rate_right") else _rate(job, "front")


def _rate(job: Job, axle: Axle) -> Number:
    if job.choice(f"{axle}.spring_kind") == "progressive":
        return read_table(job, f"{axle}.table").mean_rate * (1.0 + job.value(f"{axle}.table_error"))
    if (points := by_tester(job, axle)) is not None:
        line = points.rate + 0.5 * points.plus_minus_95 * job.samples.get(LINE_OFF[axle], 0.0)
        return line * (1.0 + job.value(f"{axle}.tester_error"))
    if not by_wire(job, axle):
        return job.value(f"{axle}.rate")
    wire, mean, coils, ends = _dimensions(job, axle)
    return rate_from_wire(job.value(f"{axle}.shear_modulus"), wire, mean, active_coils(coils, ends))


def preload(job: Job, axle: Axle) -> Number:
    """Preload [mm] as found: read, or from the spring's free length and the room it has.

    Parameters: job; axle.
    Returns: preload [mm].
    Raises: Impossible where a length is not entered.
    Formula: rear: free - installed length; front: free length + spacers - space.
    Source: geometry.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    if job.choice(f"{axle}.preload_from") == "read":
        return job.value(f"{axle}.preload")
    if not job.entered(f"{axle}.free_length"):
        raise Impossible(
            "missing", "The spring's free length is not entered.", "Enter it, or read the preload.", f"{axle}.free_length"
        )
    if axle == "rear":
        return job.value("rear.free_length") - needed(job, "rear.installed_length")
    return job.value("front.free_length") + job.value("front.spacers") - needed(job, "front.space")


def fit(job: Job, axle: Axle) -> Fit:
    """What is known of the sizes of other springs and of their place.

    Parameters: job; axle.
    Returns: Fit, lengths [mm].
    Raises: Impossible as `rate` and `preload`. Formula: none. Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """

    def known(key: str) -> Number | None:
        path = f"{axle}.{key}"
        return job.number(path) if path in job.fields and job.fields[path].applies and job.known(path) else None

    bare = Fit(rate(job, axle), preload(job, axle), spacers=known("spacers") if axle == "front" else None)
    if job.choice(f"{axle}.new_spring") == "same":
        return bare
    return replace(
        bare,
        fitted_free=job.number(f"{axle}.free_length") if job.entered(f"{axle}.free_length") else None,
        free=known("new_free"),
        solid=known("new_solid"),
        outside=known("new_outside"),
        inside=known("new_inside"),
        bore=known("spring_bore"),
        core=known("spring_core"),
        thread=known("thread_left"),
    )


def arrangement(job: Job, axle: Axle, stroke: Number) -> Arrangement:
    """How the springs of an end are put together.

    Parameters: job; axle; stroke [mm], the strut's full one.
    Returns: Arrangement.
    Raises: Impossible where a reading is missing, or a table ends too early.
    Formula: a table has to reach full stroke + the most preload.
    Source: geometry.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    kind = job.choice(f"{axle}.spring_kind")
    if kind == "stacked":
        return Stacked(needed(job, f"{axle}.second_rate"), needed(job, f"{axle}.second_room"))
    if kind == "nested":
        return Nested(needed(job, f"{axle}.second_rate"), needed(job, f"{axle}.second_later"))
    if kind == "progressive":
        table = read_table(job, f"{axle}.table")
        _reaches(job, axle, table, stroke)
        return Progressive(table)
    return SingleSpring()


def _reaches(job: Job, axle: Axle, table: ForceTable, stroke: Number) -> None:
    """Refuse a table that ends before full travel with the most preload."""
    most = float(np.max(stroke)) + max(job.number(f"{axle}.preload_max"), float(np.max(preload(job, axle))))
    if table.reach < most:
        needs = f"{most:.{decimals_apart(most, table.reach, 0)}f} mm"
        raise Impossible(
            "table",
            f"The table ends at {table.reach:g} mm; full travel with the most preload shortens the spring by {needs}.",
            "Measure further, or lower the most preload that can be built.",
            f"{axle}.table",
        )


def steel(job: Job) -> Number:
    """Steel [mm3] of one fitted fork spring: weighed, from wire and coil, or as entered or assumed.

    Parameters: job.
    Returns: volume [mm3].
    Raises: Impossible where a dimension is not entered.
    Formula: see `calc.springs.helical.steel_from_mass` and `steel_volume`.
    Source: see there.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    if job.known("front.spring_mass"):
        return steel_from_mass(job.value("front.spring_mass"))
    if by_wire(job, "front") and not job.entered("front.spring_steel"):
        wire, mean, coils, _ = _dimensions(job, "front")
        return steel_volume(wire, mean, coils)
    return job.value("front.spring_steel")


def solid(job: Job, axle: Axle) -> Number | None:
    """Solid length [mm]: measured, from wire and coil, or None where it is not known.

    Parameters: job; axle.
    Returns: length [mm] or None.
    Raises: Impossible where a dimension is not entered.
    Formula: see `calc.springs.helical.solid_length`.
    Source: see there.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    if job.known(f"{axle}.solid_length"):
        return job.value(f"{axle}.solid_length")
    if not by_wire(job, axle):
        return None
    wire, _, coils, ends = _dimensions(job, axle)
    return solid_length(wire, coils, ends)


def second_room(job: Job, axle: Axle) -> Number | None:
    """What a second spring can be shortened by [mm] until its coils touch; None where a length is not known or there is none.

    Parameters: job; axle.
    Returns: room [mm] or None.
    Raises: Impossible where the solid length is not below the free one.
    Formula: free length - solid length.
    Source: geometry.
    Example: see `tests/unit/sizing/test_second_bind.py`.
    """
    paths = [f"{axle}.second_{part}" for part in ("free", "solid")]
    if not all(job.fields[path].applies and job.known(path) for path in paths):
        return None
    free, solid = (job.value(path) for path in paths)
    if np.any(np.asarray(solid) >= free):
        raise Impossible("solid", "The second spring's solid length is not below its free length.", "Measure both again.", paths[1])
    return free - solid


def needed(job: Job, path: str) -> Number:
    """A quantity that nothing stands in for.

    Parameters: job; path.
    Returns: quantity [its internal unit].
    Raises: Impossible naming it where it is not entered. Formula: none. Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    if not job.known(path):
        raise Impossible("missing", f"{job.fields[path].field.label} is not entered.", "Enter it, or choose another kind.", path)
    return job.value(path)


def read_table(job: Job, path: str) -> ForceTable:
    """A table of compression and force that nothing stands in for.

    Parameters: job; path.
    Returns: ForceTable.
    Raises: Impossible at the field, where it is not entered or does not make a spring.
    Formula: see `calc.springs.table.ForceTable`. Source: see there.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    pairs = job.fields[path].pairs
    if not pairs:
        raise Impossible("missing", f"{job.fields[path].field.label} is not entered.", "Enter it, or choose another kind.", path)
    found = ForceTable(pairs)
    try:
        found.mean_rate  # noqa: B018 (reads the table, so that what is wrong with it is told at its field)
    except Impossible as error:
        raise Impossible(error.code, error.message, error.way_out, path) from error
    return found


def _dimensions(job: Job, axle: Axle) -> tuple[Number, Number, Number, str]:
    """Wire, mean diameter [mm], coils in all, end type."""
    for part in ("wire", "coil_diameter", "coils"):
        if not job.known(f"{axle}.{part}"):
            label = job.fields[f"{axle}.{part}"].field.label
            raise Impossible("coil", f"{label} is not entered.", "Enter it, or take the rate from the marking.", f"{axle}.{part}")
    wire = job.value(f"{axle}.wire")
    return wire, job.value(f"{axle}.coil_diameter") - wire, job.value(f"{axle}.coils"), job.choice(f"{axle}.coil_ends")
