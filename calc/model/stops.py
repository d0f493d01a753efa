"""Top-out spring and bump rubber of an end as the readings describe them."""

from __future__ import annotations

import numpy as np

from calc.array import Number
from calc.end.assembly import Stops
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible
from calc.job import Job
from calc.model import fitted
from calc.practice import Axle
from calc.springs.helical import LinearSpring, Spring
from calc.springs.table import TableSpring


def stops(job: Job, axle: Axle, stroke: Number) -> Stops:
    """What works at either end of a strut; the wheel and what moves with it hang on it in the air.

    Parameters: job; axle; stroke [mm], the strut's full one.
    Returns: Stops.
    Raises: Impossible as `topout` and `rubber`.
    Formula: hanging = unsprung mass x g.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(stops(load(jobs()["enduro"]), "front", 300.0).hanging, 1)
        156.9
    """
    return Stops(topout(job, axle), job.value(f"{axle}.unsprung") * STANDARD_GRAVITY, rubber(job, axle, stroke))


def topout(job: Job, axle: Axle) -> Number | None:
    """Rate [N/mm] of the top-out spring; None where it is left out.

    Parameters: job; axle.
    Returns: rate [N/mm] or None.
    Raises: Impossible as `calc.model.fitted.needed`. Formula: none. Source: none.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    return fitted.needed(job, f"{axle}.topout_rate") if job.choice(f"{axle}.topout") == "spring" else None


def rubber(job: Job, axle: Axle, stroke: Number) -> Spring | None:
    """The bump rubber of a strut; None where it is left out.

    Parameters: job; axle; stroke [mm], the strut's full one.
    Returns: Spring or None.
    Raises: Impossible where a reading is missing, or a table ends before the rubber's length.
    Formula: first touch at stroke - length.
    Source: geometry.
    Example: see `tests/unit/model/test_fitted.py`.
    """
    kind = job.choice(f"{axle}.rubber")
    if kind == "none":
        return None
    apart = fitted.needed(job, f"{axle}.rubber_length") - stroke  # below 0: loose until the stroke of first touch
    if kind == "rate":
        return LinearSpring(fitted.needed(job, f"{axle}.rubber_rate"), apart)
    table = fitted.read_table(job, f"{axle}.rubber_table")
    if table.reach < np.max(job.value(f"{axle}.rubber_length")):
        raise Impossible(
            "table",
            f"The rubber's table ends at {table.reach:g} mm; at the stop it is squeezed by "
            f"{np.max(job.value(f'{axle}.rubber_length')):g} mm.",
            "Measure further, or enter a shorter length.",
            f"{axle}.rubber_table",
        )
    return TableSpring(table, table.mean_rate, apart)
