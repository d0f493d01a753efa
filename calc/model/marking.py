"""What the springs that are in are called: by their marking, whatever else has come to be known of them."""

from __future__ import annotations

import numpy as np

from calc.job import Job
from calc.model.fitted import by_tester, by_wire, rate, unequal
from calc.practice import Axle
from calc.quantities.entry import convert


def renamed(job: Job, axle: Axle) -> tuple[float, float] | None:
    """The rate of the springs that are in as results have corrected it, and as it was entered: by that they are sold and asked for.

    Parameters: job; axle.
    Returns: rate corrected and rate entered [N/mm], the legs' mean; None where none was entered, or none corrected.
    Raises: Impossible as `calc.model.fitted.rate`.
    Formula: none.
    Source: common practice, no source.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    paths = (f"{axle}.rate", f"{axle}.rate_right")
    corrected = any(job.fields[path].learned for path in paths if path in job.fields)
    if not corrected or not job.entered(paths[0]) or by_wire(job, axle) or by_tester(job, axle) is not None:
        return None
    called = _entered(job, paths[0])
    if unequal(job, axle):
        called = 0.5 * (called + _entered(job, paths[1]))
    return float(np.asarray(rate(job, axle))), called


def _entered(job: Job, path: str) -> float:
    found = job.fields[path]
    assert found.number is not None
    return convert(found.number, found.unit, "N/mm")
