"""Draws: every uncertain reading of a job as an array, so that the whole chain runs once for all of them.

Latin-hypercube samples, one numpy axis. A field's sample depends on its path alone: the same job gives the same numbers,
and candidates, the fitted and the standard setup share every common input in a draw.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import lru_cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Number
from calc.impossible import Impossible
from calc.job import Job, Resolved
from calc.model.motion import FIT_OFF
from calc.quantities.entry import convert, internal_unit
from calc.quantities.reading import Origin, Reading, Spread

Columns = NDArray[np.intp]

_STANDARD = Reading(0.0, 2.0, Origin.MEASURED)  # a standard normal number
_FAR = 8.0  # standard deviations, beyond which a bound changes no draw
_TRUNCATED = {"place.exponent": (1.0, 1.4)}  # slow to adiabatic: air can do no other


@lru_cache(maxsize=512)
def strata(name: str, count: int) -> Array:
    """A Latin-hypercube column.

    Parameters: name, which alone decides the order; count of samples [-], > 0.
    Returns: the middles of `count` equal strata of 0 to 1, shuffled.
    Raises: nothing.
    Formula: (i + 1/2) / count.
    Source: M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239-245; from memory.
    Example:
        >>> sorted(float(x) for x in strata("a", 4))
        [0.125, 0.375, 0.625, 0.875]
    """
    order = list(range(count))
    random.Random(name).shuffle(order)
    return (np.array(order) + 0.5) / count


@lru_cache(maxsize=512)
def standard_normal(name: str, count: int, low: float = -np.inf, high: float = np.inf) -> Array:
    """A Latin-hypercube column of the standard normal distribution, between two bounds.

    Parameters: name, count as in `strata`; low, high bounds [-], in standard deviations.
    Returns: samples [-].
    Raises: nothing.
    Formula: the inverse of the normal distribution function at the strata.
    Source: Python's statistics.NormalDist.
    Example:
        >>> float(np.round(np.std(standard_normal("a", 200)), 2))
        1.0
    """
    normal = NormalDist()
    bottom, top = normal.cdf(low), normal.cdf(high)
    return np.array([normal.inv_cdf(bottom + (top - bottom) * float(p)) for p in strata(name, count)])


def deviation(name: str, reading: Reading, count: int, least: float = -np.inf) -> Array:
    """Samples of what a reading may be off by: normal, or rectangular where its +/- is a range of the trade.

    Parameters: name, reading; count of samples [-]; least, none is below it [the reading's internal unit].
    Returns: samples [the reading's internal unit].
    Raises: nothing.
    Formula: normal: (+/- / 2) x `standard_normal` between the bounds; rectangular: lowest + (+/- - lowest) x `strata`.
    Source: see there.
    Example: see `tests/unit/uncertainty/test_bands.py`.
    """
    half = reading.plus_minus_95
    if reading.spread is Spread.RECTANGULAR and name not in _TRUNCATED:
        lowest = max(-half, least)
        return lowest + (half - lowest) * strata(name, count)
    sigma = half / 2.0
    low, high = ((bound - reading.value) / sigma for bound in _TRUNCATED.get(name, (least + reading.value, np.inf)))
    return sigma * standard_normal(name, count, low if low > -_FAR else -np.inf, high)


def least_off(job: Job, path: str) -> float:
    """What a reading may be off by at most downwards: no draw lies below its field's limit of the possible.

    Parameters: job; path.
    Returns: amount [its internal unit], 0 or below; minus infinity for a number of a fit.
    Raises: nothing.
    Formula: limit - value.
    Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    if path in FIT_OFF:
        return -np.inf
    field = job.fields[path].field
    return min(convert(field.low, field.unit, internal_unit(field.dimension)) - job.number(path), 0.0)


def drawn_uncertainty(name: str, reading: Reading) -> float:
    """Standard deviation of what `deviation` draws, of as many draws as one likes.

    Parameters: name, reading as in `deviation`.
    Returns: standard uncertainty [the reading's internal unit].
    Raises: nothing.
    Formula: of a reading cut off at a and b standard deviations: variance 1 + (a f(a) - b f(b)) / Z - ((f(a) - f(b)) / Z)^2, f
    the normal density and Z the part of it between them.
    Source: N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 1, 2nd ed., 13.10; from memory, tested
    against scipy.
    Example:
        >>> round(drawn_uncertainty("place.exponent", Reading(1.33, 0.07, Origin.ASSUMED, Spread.RECTANGULAR)), 4)
        0.033
    """
    if name not in _TRUNCATED:
        return reading.standard_uncertainty
    normal, sigma = NormalDist(), reading.plus_minus_95 / 2.0
    low, high = ((bound - reading.value) / sigma for bound in _TRUNCATED[name])
    part, at_low, at_high = normal.cdf(high) - normal.cdf(low), normal.pdf(low), normal.pdf(high)
    return float(sigma * np.sqrt(1.0 + (low * at_low - high * at_high) / part - ((at_low - at_high) / part) ** 2))


def is_drawn(found: Resolved) -> bool:
    """Tell whether a reading applies, is no decision and is not known exactly.

    Parameters: found, the field as resolved.
    Returns: True where it is drawn.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    return found.applies and not found.field.decision and found.reading is not None and found.reading.plus_minus_95 > 0


def fit_offs(job: Job) -> tuple[str, ...]:
    """Names of the standard normal numbers that a fit of measured pairs may be off by.

    Parameters: job.
    Returns: names; none where nothing is fitted.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    return FIT_OFF if "rear.pairs" in job.fields and job.choice("rear.motion_from") == "pairs" else ()


def own_reading(job: Job, path: str) -> tuple[Reading, str | None]:
    """A reading as its distance from the value that it follows, with its own +/- alone; and the path that it follows.

    Parameters: job; path.
    Returns: Reading; path, None where it follows none.
    Raises: nothing.
    Formula: value - value followed; +/- less that of the value followed, at least 0.
    Source: none.
    Example: see `tests/unit/job/test_following.py`.
    """
    if path in FIT_OFF:
        return _STANDARD, None
    found = job.fields[path]
    reading, default = found.reading, found.field.default
    assert reading is not None
    follows = default.follow if default and not found.entered else None
    base = job.fields[follows].reading if follows else None
    if base is None:
        return reading, None
    own = max(reading.plus_minus_95 - base.plus_minus_95, 0.0)
    return Reading(reading.value - base.value, own, reading.origin, reading.spread), follows


def _moved(job: Job, off: Callable[[str, Reading], Number]) -> Job:
    """The job with every uncertain reading moved by `off`; an assumed value that follows another moves with it."""
    samples: dict[str, Number] = {}
    waiting = [path for path, found in job.fields.items() if is_drawn(found)]
    while waiting:
        path = waiting.pop(0)
        own, follows = own_reading(job, path)
        if follows in waiting:
            waiting.append(path)
            continue
        if follows and follows not in samples and own.plus_minus_95 == 0:
            continue  # it follows a value that nothing moves
        base = samples.get(follows, job.number(follows)) if follows else 0.0
        samples[path] = base + own.value + (off(path, own) if own.plus_minus_95 > 0 else 0.0)
    samples |= {name: off(name, _STANDARD) for name in fit_offs(job)}
    return replace(job, samples=samples)


def drawn(job: Job, count: int | None = None) -> Job:
    """The job with every uncertain reading drawn `count` times, or as often as the job says.

    Parameters: job; count of draws [-], None for the job's.
    Returns: Job with samples.
    Raises: nothing.
    Formula: value + `deviation`; what follows another value moves with it.
    Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    often = job.draws if count is None else count
    return replace(_moved(job, lambda path, own: deviation(path, own, often, least_off(job, path))), draws=often)


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
            off_by, (low, high) = drawn_uncertainty(path, own), _TRUNCATED.get(path, (-np.inf, np.inf))
            lowest = max(low - own.value, least_off(job, path))
            up = max(min(off_by, high - own.value), lowest + 2.0 * off_by)
            steps[column], steps[column + len(paths)] = up, up - 2.0 * off_by
        return steps

    return _moved(job, off)


def survivors(job: Job, count: int, works: Callable[[Job], object]) -> tuple[Job, int]:
    """The draws that can be built: those for which `works` raises no Impossible; and how many were left out.

    Parameters: job, drawn; count of its draws [-]; works.
    Returns: Job; number left out [-].
    Raises: as `working`. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_draws_first_order.py`.
    """
    good = working(job, np.arange(count), works)
    return (job if len(good) == count else picked(job, good)), count - len(good)


def picked(job: Job, columns: Columns) -> Job:
    """A drawn job with some of its draws only.

    Parameters: job, drawn; columns, indices of the draws.
    Returns: Job.
    Raises: nothing. Formula: none. Source: none.
    Example: see `survivors`.
    """
    return replace(job, samples={path: np.asarray(values)[columns] for path, values in job.samples.items()})


def working(job: Job, columns: Columns, works: Callable[[Job], object]) -> Columns:
    """Those of some draws for which `works` raises no Impossible, found by halving.

    Parameters: job, drawn; columns, indices of the draws; works.
    Returns: indices.
    Raises: what `works` raises besides Impossible. Formula: none. Source: none.
    Example: see `survivors`.
    """
    try:
        works(picked(job, columns))
    except Impossible:
        if len(columns) == 1:
            return columns[:0]
        half = len(columns) // 2
        return np.concatenate([working(job, columns[:half], works), working(job, columns[half:], works)])
    return columns


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
