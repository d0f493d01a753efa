"""Survivors: which draws of a job can be built, where a law refuses some."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from calc.impossible import Impossible
from calc.job import Job

Columns = NDArray[np.intp]
T = TypeVar("T")


def survivors(job: Job, count: int, works: Callable[[Job], T]) -> tuple[Job, int, T | None]:
    """The draws that can be built: those for which `works` raises no Impossible; how many were left out; what it found.

    Parameters: job, drawn; count of its draws [-]; works.
    Returns: Job; number left out [-]; what `works` returned for all draws together, None where it did not work so.
    Raises: as `working`. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    try:
        return job, 0, works(job)
    except Impossible:
        good = working(job, np.arange(count), works)
    return (job if len(good) == count else picked(job, good)), count - len(good), None


def picked(job: Job, columns: Columns) -> Job:
    """A drawn job with some of its draws only.

    Parameters: job, drawn; columns, indices of the draws.
    Returns: Job.
    Raises: nothing. Formula: none. Source: none.
    Example: see `survivors`.
    """
    return replace(job, samples={path: np.asarray(values)[columns] for path, values in job.samples.items()})


def working(job: Job, columns: Columns, works: Callable[[Job], object]) -> Columns:
    """Those of some draws for which `works` raises no Impossible: by what the law says of each, else found by halving.

    Parameters: job, drawn; columns, indices of the draws; works.
    Returns: indices.
    Raises: what `works` raises besides Impossible. Formula: none. Source: none.
    Example: see `survivors`.
    """
    try:
        works(picked(job, columns))
    except Impossible as error:
        if len(columns) == 1:
            return columns[:0]
        bad = np.asarray(error.where)
        if bad.shape[-1:] == columns.shape and bad.any():
            left = columns[~bad.reshape(-1, len(columns)).any(axis=0)]
            return working(job, left, works) if len(left) else left
        half = len(columns) // 2
        return np.concatenate([working(job, columns[:half], works), working(job, columns[half:], works)])
    return columns
