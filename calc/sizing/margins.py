"""How far results may be off for the readings' sake: the margin that no window bars by less than."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Array
from calc.end.figures import evaluate
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import combined, fit_offs, is_drawn, own_reading, stepped
from calc.model.inputs import end_inputs
from calc.model.survivors import picked, working
from calc.practice import Axle
from calc.sizing.criteria import Margins


def moved_readings(job: Job) -> list[str]:
    """The readings that are not known exactly, and what a fit of measured pairs may be off by.

    Parameters: job.
    Returns: names, as `stepped` takes them.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `margins`.
    """
    paths = [path for path, found in job.fields.items() if is_drawn(found) and own_reading(job, path)[0].plus_minus_95 > 0]
    return [*paths, *fit_offs(job)]


def margins(job: Job, axle: Axle, setup: Setup, own: bool = False) -> Margins:
    """The margins of an end, a setup held.

    Parameters: job; axle, "front" or "rear"; setup, scalars; own, whether its springs are those that are in, whose rate is a
    reading too.
    Returns: Margins. A reading that cannot be moved either way (the leg would lock) counts for nothing.
    Raises: nothing.
    Formula: 2 sqrt(sum u_i^2 (df/dx_i)^2), each reading moved by its standard uncertainty both ways, all in one run;
    corrected readings as they are tied.
    Source: JCGM 100:2008, 5.1.2 and 5.2.2.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> front = margins(load(jobs()["enduro"]), "front", Setup(4.6, 3.0, 120.0))
        >>> 1.0 < front.rider_sag < 3.0
        True
    """
    paths = moved_readings(job)

    def results(some: Job) -> Array:
        here = end_inputs(some, axle)
        held = replace(setup, rate=here.as_found.rate, split=here.as_found.split) if own else setup
        done = evaluate(here.assembly, held, here.loads, here.exponent)
        along = axle == "front"
        sags = (done.rider.stroke, done.free.stroke) if along else (done.rider.travel, done.free.travel)
        return np.stack(np.broadcast_arrays(*sags, done.end_multiple, here.standard.frequency)).reshape(4, -1)

    both = stepped(job, paths)
    try:
        found = results(both)
    except Impossible:
        found = np.full((4, 2 * len(paths)), np.nan)
        good = working(both, np.arange(2 * len(paths)), results)
        found[:, good] = results(picked(both, good))
    up, down = found[:, : len(paths)], found[:, len(paths) :]
    variance, _ = combined(job, paths, np.nan_to_num((up - down) / 2.0))
    halves = 2.0 * np.sqrt(variance)
    return Margins(*(float(half) for half in halves))
