"""What two sags alone say of the springs: the rate at which they differ as they do, the gas taken off."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.job import Job
from calc.model.airleg import has_coil
from calc.model.draws import drawn, half_width
from calc.model.observed import SagRead, expected, spring_rate_found
from calc.model.spread import standard_normal
from calc.model.survivors import survivors
from calc.practice import Axle


def rate_by_sags(job: Job, axle: Axle, reads: Sequence[SagRead]) -> tuple[float, float] | None:
    """The spring rate that an end's sags tell, and its 95 % half-width.

    Parameters: job, not corrected by them; axle; reads, of that end.
    Returns: rate, half-width [N/mm], as `calc.model.observed.spring_rate_found`; None where not both sags were read, the bike tops
    out by itself, there are no springs, or what is in cannot be worked out.
    Raises: nothing.
    Formula: see there; draws of all readings but the rate, which falls out where the springs are straight, and of the sags.
    Source: see there.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    if len(reads) < 2 or reads[0].topped_out or (axle == "front" and not has_coil(job)):
        return None
    sags = np.array([read.sag for read in reads])
    try:
        value, draws = float(spring_rate_found(job, axle, sags)), drawn(job)
        try:
            samples = spring_rate_found(draws, axle, sags[:, None] + _off(axle, reads, draws.draws))
        except Impossible:
            draws, left_out, _ = survivors(draws, draws.draws, lambda some: expected(some, axle))
            if draws.draws - left_out < 2:
                return None
            samples = spring_rate_found(draws, axle, sags[:, None] + _off(axle, reads, draws.draws - left_out))
    except Impossible:
        return None
    half = half_width(samples)
    return (value, half) if np.isfinite(value) and np.isfinite(half) and value > 0 else None


def _off(axle: Axle, reads: Sequence[SagRead], count: int) -> Array:
    """What each sag [mm] is off by, drawn."""
    off = np.stack([read.uncertainty * standard_normal(f"sag {axle} {read.case}", count) for read in reads])
    return np.asarray(off * np.array([2.0**-0.5 if read.spread is not None else 1.0 for read in reads])[:, None])
