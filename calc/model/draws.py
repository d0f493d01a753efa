"""Draws: every uncertain reading of a job as an array, so that the whole chain runs once for all of them.

Latin-hypercube samples, one numpy axis. A field's sample depends on its path alone: the same job gives the same numbers,
and candidates, the fitted and the standard setup share every common input in a draw.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import numpy as np

from calc.array import Array, Number
from calc.job import Job, Resolved
from calc.job.field import Default
from calc.model.fitted import LINE_OFF
from calc.model.motion import FIT_OFF
from calc.model.spread import TRUNCATED, deviation, drawn_uncertainty, off_at
from calc.quantities.entry import convert, internal_unit
from calc.quantities.reading import Origin, Reading

Move = tuple[str, Reading, str | None]

_STANDARD = Reading(0.0, 2.0, Origin.MEASURED)  # a standard normal number


def least_off(job: Job, path: str) -> float:
    """What a reading may be off by at most downwards: no draw lies below its field's limit of the possible.

    Parameters: job; path.
    Returns: amount [its internal unit], 0 or below; minus infinity for a number of a fit.
    Raises: nothing.
    Formula: limit - value.
    Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    if is_fit_off(path):
        return -np.inf
    field = job.fields[path].field
    return min(convert(field.low, field.unit, internal_unit(field.dimension)) - job.number(path), 0.0)


def is_drawn(found: Resolved) -> bool:
    """Tell whether a reading applies, is neither a decision nor a result, and is not known exactly.

    Parameters: found, the field as resolved.
    Returns: True where it is drawn.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    return (
        found.applies
        and not found.field.decision
        and not found.field.result
        and found.reading is not None
        and found.reading.plus_minus_95 > 0
    )


def fit_offs(job: Job) -> tuple[str, ...]:
    """Names of the standard normal numbers that fits of measured pairs and points may be off by.

    Parameters: job.
    Returns: names; none where nothing is fitted.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    pairs = FIT_OFF if "rear.pairs" in job.fields and job.choice("rear.motion_from") == "pairs" else ()
    lines = (name for name in LINE_OFF.values() if (found := job.fields.get(name.split()[0])) and found.applies)
    return (*pairs, *lines)


def is_fit_off(name: str) -> bool:
    """Tell the name of such a number from a field's path.

    Parameters: name.
    Returns: True where it is one.
    Raises: nothing. Formula: none. Source: none.
    Example:
        >>> is_fit_off("front.tester line"), is_fit_off("front.tester")
        (True, False)
    """
    return " " in name


def own_reading(job: Job, path: str) -> tuple[Reading, str | None]:
    """A reading as its distance from the value that it follows, with its own +/- alone; and the path that it follows.

    Parameters: job; path.
    Returns: Reading; path, None where it follows none.
    Raises: nothing.
    Formula: value - value followed; +/- less that of the value followed, at least 0.
    Source: none.
    Example: see `tests/unit/job/test_following.py`.
    """
    if is_fit_off(path):
        return _STANDARD, None
    found = job.fields[path]
    reading, default = found.reading, found.field.default
    assert reading is not None
    follows = default.follow if default and not found.entered and not _was_changed(job, default) else None
    base = job.fields[follows].reading if follows else None
    if base is None:
        return reading, None
    own = max(reading.plus_minus_95 - base.plus_minus_95, 0.0)
    return Reading(reading.value - base.value, own, reading.origin, reading.spread), follows


def _was_changed(job: Job, default: Default) -> bool:
    """What was changed since it was sold says nothing of what it was sold with."""
    return default.as_sold is not None and job.choice(default.as_sold) == "changed"


def moves(job: Job) -> tuple[Move, ...]:
    """Every uncertain reading of a job as it moves: its path, its own part and what it follows; that stands before it.

    Parameters: job.
    Returns: moves; for whoever moves one job many times.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    made: dict[str, Move] = {}
    waiting = [path for path, found in job.fields.items() if is_drawn(found)]
    while waiting:
        path = waiting.pop(0)
        own, follows = own_reading(job, path)
        if follows in waiting:
            waiting.append(path)
        elif not follows or follows in made or own.plus_minus_95 > 0:  # else it follows a value that nothing moves
            made[path] = (path, own, follows)
    return tuple(made.values())


def _moved(job: Job, off: Callable[[str, Reading], Number], order: Sequence[Move] | None = None) -> Job:
    """The job with every uncertain reading moved by `off`; an assumed value that follows another moves with it."""
    samples: dict[str, Number] = {}
    for path, own, follows in moves(job) if order is None else order:
        base = samples.get(follows, job.number(follows)) if follows else 0.0
        samples[path] = base + own.value + (off(path, own) if own.plus_minus_95 > 0 else 0.0)
    samples |= {name: off(name, _STANDARD) for name in fit_offs(job)}
    return replace(job, samples=samples)


def drawn(job: Job, count: int | None = None) -> Job:
    """The job with every uncertain reading drawn `count` times, or as often as the job says.

    Parameters: job; count of draws [-], None for the job's.
    Returns: Job with samples.
    Raises: nothing.
    Formula: value + `deviation`; what follows another value moves with it. Readings that were corrected come as they were drawn
    together, no more often than that.
    Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    often = job.draws if count is None else count
    known = {path: found.samples for path, found in job.fields.items() if found.samples is not None}
    if known:
        often = min(often, *(len(samples) for samples in known.values()))
    done = replace(_moved(job, lambda path, own: deviation(path, own, often, least_off(job, path))), draws=often)
    return replace(done, samples={**done.samples, **{path: samples[:often] for path, samples in known.items()}}) if known else done


def at_normal(job: Job, values: Mapping[str, Array], count: int, order: Sequence[Move] | None = None) -> Job:
    """The job with readings moved to where a standard normal number of each says; those that are not named stay.

    Parameters: job; values [-], by path, each of `count` numbers; count [-]; order, its `moves` where they are at hand.
    Returns: Job with samples.
    Raises: nothing.
    Formula: value + `calc.model.spread.off_at`; what follows another value moves with it.
    Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """

    def off(path: str, own: Reading) -> Number:
        return off_at(path, own, values[path], least_off(job, path)) if path in values else np.zeros(count)

    return _moved(job, off, order)


def combined(job: Job, paths: Sequence[str], effects: Array) -> tuple[Array, Array]:
    """Variance of a result from what each reading's standard uncertainty does to it, and what each would take off if it were known.

    Parameters: job; paths; effects [any unit], along the last axis one for each path.
    Returns: variance [its square], along the other axes; parts [the same], along the last axis too.
    Raises: nothing.
    Formula: with f = effect / sqrt(C_ii), C = identity - A A^T, A what the readings learned: f^T C f; (C f)_i^2 / C_ii.
    Source: JCGM 100:2008, 5.2.2 (correlated readings); the part by conditioning a normal distribution.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    learned = [job.fields[path].learned if path in job.fields else () for path in paths]
    ties = np.array([(*one, *[0.0] * (max(map(len, learned)) - len(one))) for one in learned]).reshape(len(paths), -1)
    own = 1.0 - np.sum(ties**2, axis=1)
    each = effects / np.sqrt(own)
    tied = each - (each @ ties) @ ties.T
    return np.sum(each * tied, axis=-1), tied**2 / own


def stepped(job: Job, paths: Sequence[str]) -> Job:
    """The job with one reading a column moved up by what it is drawn with, then one a column moved down.

    Parameters: job; paths, one for each column.
    Returns: Job with samples, two columns for each path.
    Raises: nothing.
    Formula: up and down u, see `drawn_uncertainty`; 2 u apart even where a bound is nearer.
    Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """

    def off(path: str, own: Reading) -> Array:
        steps = np.zeros(2 * len(paths))
        if path in paths:
            column = paths.index(path)
            off_by, (low, high) = drawn_uncertainty(path, own), TRUNCATED.get(path, (-np.inf, np.inf))
            lowest = max(low - own.value, least_off(job, path))
            up = max(min(off_by, high - own.value), lowest + 2.0 * off_by)
            steps[column], steps[column + len(paths)] = up, up - 2.0 * off_by
        return steps

    return _moved(job, off)


def half_width(samples: Number) -> float:
    """95 % half-width of samples: half of what lies between the 2.5 % and 97.5 % quantiles.

    Parameters: samples [any unit], any shape.
    Returns: half-width [theirs].
    Raises: nothing.
    Formula: (q97.5 - q2.5) / 2.
    Source: common practice, no source.
    Example:
        >>> half_width(np.arange(101.0))
        47.5
    """
    return float(half_widths(np.ravel(samples)))


def half_widths(samples: Number) -> Array:
    """`half_width` along the last axis of samples.

    Parameters: samples [any unit].
    Returns: half-widths [theirs].
    Raises: nothing. Formula: as `half_width`. Source: see there.
    Example: see `half_width`.
    """
    ordered = np.sort(samples, axis=-1)
    return (_between(ordered, 0.975) - _between(ordered, 0.025)) / 2.0


def _between(ordered: Array, share: float) -> Array:
    """A quantile along the last axis; np.quantile does the same and loads numpy.ma for it, which a phone has to fetch."""
    at = share * (ordered.shape[-1] - 1)
    below = ordered[..., int(at)]
    return np.asarray(below + (at - int(at)) * (ordered[..., min(int(at) + 1, ordered.shape[-1] - 1)] - below))
