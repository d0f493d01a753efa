"""Which reading to improve next: what each has in a result's +/-."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array
from calc.end.figures import evaluate
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import combined, own_reading, stepped
from calc.model.inputs import end_inputs
from calc.model.spread import drawn_uncertainty
from calc.practice import Axle
from calc.quantities.entry import convert_difference, internal_unit
from calc.sizing.choice import EndSizing, resized
from calc.sizing.margins import moved_readings
from calc.uncertainty.choices import Choices, rate_wanted
from calc.uncertainty.results import results, solved


@dataclass(frozen=True, eq=False)
class Cause:
    """A reading's part in a result's variance, and the result's 95 % half-width now and after that reading is improved.

    Improved means measured with care where that is better than half of the present +/-, else halved.
    """

    path: str
    share: float
    now: float
    then: float


def causes(job: Job, axle: Axle, done: EndSizing, index: int) -> Mapping[str, tuple[Cause, ...]]:
    """What each result's +/- comes from, by result.

    Parameters: job; axle; done, its nominal sizing; index of the candidate that is told [-].
    Returns: causes, the largest first; none where the readings cannot all be moved.
    Raises: nothing.
    Formula: first-order sensitivities: every reading moved by its standard uncertainty, all in one run.
    Source: JCGM 100:2008, 5.1.2.
    Example: see `calc.uncertainty.bands.bands`.
    """
    paths = moved_readings(job)
    count = len(done.decision.key)
    some = slice(0, 1) if done.inputs.air is not None else slice(max(index - 1, 0), min(index + 2, count))
    moved = stepped(job, paths)
    try:
        here = end_inputs(moved, axle)
        setup = done.sized.setup.at(index)
        if here.air is None and index == done.fitted:
            setup = replace(setup, rate=here.as_found.rate, split=here.as_found.split)
        fixed = evaluate(here.assembly, setup, here.loads, here.exponent)
        sized, decision = resized(here, done, some)
    except Impossible:
        return {}
    along = "stroke" if axle == "front" else "travel"
    told = {name: results(fixed)[name] for name in (f"free_{along}", f"rider_{along}", "end_multiple")}
    row = 0 if here.air is not None else index - some.start
    told |= solved(here, Choices(sized, decision, index - row, {}, True), index)
    if here.air is None:
        told["rate"] = rate_wanted(done, sized, decision, row, index)
    return {name: _ranked(job, paths, np.asarray(values)) for name, values in told.items()}


def _ranked(job: Job, paths: list[str], values: Array) -> tuple[Cause, ...]:
    moves = np.broadcast_to(values, (2 * len(paths),))
    variance, parts = combined(job, paths, (moves[: len(paths)] - moves[len(paths) :]) / 2.0)
    total = float(variance)
    by_field: dict[str, float] = {}
    for path, effect in zip(paths, parts, strict=True):  # what a fit may be off by has two parts and one field
        field = path.split()[0]
        by_field[field] = by_field.get(field, 0.0) + float(effect)
    worth = sorted((p for p, effect in by_field.items() if effect > 0.01 * total), key=lambda p: -by_field[p])
    return tuple(_cause(job, path, by_field[path], total) for path in worth)


def _cause(job: Job, path: str, effect: float, total: float) -> Cause:
    field, kept = job.fields[path].field, 0.5
    if job.known(path):
        careful = convert_difference(field.plus_minus, field.unit, internal_unit(field.dimension))
        careful += field.plus_minus_relative * abs(job.number(path))
        own, _ = own_reading(job, path)
        kept = min(0.5, careful / 2.0 / drawn_uncertainty(path, own)) if careful > 0 else 0.5
    return Cause(path, effect / total, 2.0 * total**0.5, 2.0 * (total - effect * (1.0 - kept**2)) ** 0.5)
