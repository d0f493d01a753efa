"""Least-squares adjustment: what observed results say about what they hang on.

Every parameter is a standard normal number beforehand. Gauss-Newton finds its most probable value and, the model taken as straight
there, what is left of its spread; draws from that are then moved, each along a chain of its own, to where the bent model has them.
Ours because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

import math
import zlib
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from statistics import NormalDist

import numpy as np

from calc.array import Array, Flags

Model = Callable[[Array], Array]

_STEP = 2e-3  # standard deviations that a slope is taken over
_ROUNDS, _HALVINGS = 12, 4
_SETTLED = 1e-5  # of -2 ln probability: the most probable values get no better
_STEPS = 36  # of a draw's chain, by turns:
_REACH = 0.7  # in every direction, of a new draw;
_LINES, _STRIDE = 3, 2.2  # along one of the parameters most learned about, the others with it, standard deviations left;
_BESIDE = 0.5  # of what two other draws differ by.
_WIDE = 1.6  # that many times as wide as a straight model has it: a chain that is short comes in sooner than it gets out
_ROOT = math.sqrt(2.0 * math.pi)
_BLIND = 1e6  # times its uncertainty, an observation says nothing
_FAR = 30.0  # standard deviations, beyond which a bound is broken by as much as numbers can tell
_COUNTS = 1e-4  # of a parameter's variance: where less was learned it is left as it was drawn


@dataclass(frozen=True, eq=False)
class Observed:
    """What was observed.

    Parameters: value [any unit], one an observation; uncertainty [the same], standard, > 0; at_most, True where the value is
    only known not to be above it.
    """

    value: Array
    uncertainty: Array
    at_most: Flags


@dataclass(frozen=True, eq=False)
class Adjusted:
    """An adjustment's outcome.

    Parameters: best [-], the parameters' most probable values, in their standard deviations from what was known before; draws
    [-], the same for each draw that could be worked out, a column each; learned [-], for each
    parameter a row a with covariance after = identity - a a^T; expected, the observations' values before; fitted, after;
    surprise [-], what each is off by after the adjustment over what that should scatter by. Of the draws that could be worked out,
    expected_draws before and fitted_draws after.
    """

    best: Array
    draws: Array
    learned: Array
    expected: Array
    expected_draws: Array
    fitted: Array
    fitted_draws: Array
    surprise: Array


def adjusted(model: Model, drawn: Array, observed: Observed, seed: str = "") -> Adjusted | None:
    """Adjust a model's parameters to what was observed.

    Parameters: model, from parameters [-], (parameters, columns), to results [any unit], (observations, columns), a column of
    NaN where it cannot be worked out; drawn [-], standard normal draws of the parameters, (parameters, draws); observed; seed of
    the chains.
    Returns: Adjusted; None where the model cannot be worked out as things were known before.
    Raises: nothing.
    Formula: least |z|^2 + sum ((y - h(z)) / u)^2, by z = H^T (H H^T + R)^-1 (y - h(z) + H z), repeated. A bound counts there as the
    reading that leaves the same mean and variance, see `_read`. Draws: see `_chained`. Surprise: v / sqrt(diag R (H H^T + R)^-1 R),
    v = y - h.
    Source: A. Tarantola, Inverse Problem Theory (SIAM 2005), 3.2; W. Baarda, A Testing Procedure for Use in Geodetic Networks
    (1968) (surprise); from memory, tested against closed forms, a grid and scipy.
    Example:
        >>> observed = Observed(np.array([1.0]), np.array([1.0]), np.array([False]))
        >>> found = adjusted(lambda z: z, np.zeros((1, 2)), observed)
        >>> found.best.round(4).tolist(), round(float(1.0 - found.learned[0] @ found.learned[0]), 4)
        ([0.5], 0.5)
    """
    start = np.zeros((len(drawn), 1))
    expected = model(start)
    if np.any(np.isnan(expected)):
        return None
    read = _read(model, start, expected, observed)
    best, fitted, slopes = _descend(model, start, expected, read)
    spread = slopes @ slopes.T + np.diag(read.uncertainty**2)
    learned = np.linalg.solve(np.linalg.cholesky(spread), slopes).T
    draws, fits = _chained(model, best, slopes, learned, drawn, (observed, read), seed)
    before = model(drawn)
    good = ~np.isnan(fits).any(axis=0)
    scatter = read.uncertainty**2 * np.sqrt(np.diag(np.linalg.inv(spread)))
    return Adjusted(
        best[:, 0],
        draws[:, good],
        learned,
        expected[:, 0],
        before[:, ~np.isnan(before).any(axis=0)],
        fitted[:, 0],
        fits[:, good],
        (read.value - fitted[:, 0]) / scatter,
    )


def _read(model: Model, start: Array, value: Array, observed: Observed) -> Observed:
    """Every bound as the reading that leaves of its result the mean and the variance which the bound leaves: of a normal
    distribution, as the other observations have it, the part below the bound.
    """
    if not np.any(observed.at_most):
        return observed
    others = replace(observed, uncertainty=np.where(observed.at_most, _BLIND * observed.uncertainty, observed.uncertainty))
    _, middle, slopes = _descend(model, start, value, others)
    tie = slopes @ slopes.T
    known = np.linalg.solve(tie + np.diag(others.uncertainty**2), tie)
    scatter = np.diag(tie - tie @ known) + observed.uncertainty**2
    read, off = observed.value.copy(), observed.uncertainty.copy()
    for row in np.flatnonzero(observed.at_most):
        before, centre = float(scatter[row]), float(middle[row, 0])
        at = max((float(observed.value[row]) - centre) / before**0.5, -_FAR)
        steep = NormalDist().pdf(at) / (0.5 * math.erfc(-at / 2**0.5))  # its own cdf is 0 from -8 on
        left = max(before * (1.0 - at * steep - steep**2), 1e-6 * before)
        more = before * left / max(before - left, left / _BLIND)
        read[row] = centre - (before + more) / before * before**0.5 * steep
        off[row] = (observed.uncertainty[row] ** 2 + more) ** 0.5
    return Observed(read, off, np.zeros(len(read), dtype=bool))


def _descend(model: Model, start: Array, value: Array, observed: Observed) -> tuple[Array, Array, Array]:
    """Gauss-Newton from `start`, one column, whose results are `value`, until no step makes it better: where it ends, the results and
    the slopes there. A step that makes matters worse, or leads where the model has no answer, is halved.
    """
    z, now, wanted = start, value, observed.value[:, None]
    worth = float("inf")
    for _ in range(_ROUNDS):
        slopes = _slopes(model, z, now)
        better = float(_missed(z, now, observed)[0])
        if worth - better < _SETTLED:
            break
        worth = better
        aim = np.linalg.solve(slopes @ slopes.T + np.diag(observed.uncertainty**2), wanted - now + slopes @ z)
        step = slopes.T @ aim - z
        for _ in range(_HALVINGS):
            there = model(z + step)
            if _missed(z + step, there, observed)[0] <= worth:
                z, now = z + step, there
                break
            step = 0.5 * step
    return z, now, slopes


def _missed(z: Array, results: Array, observed: Observed) -> Array:
    """-2 ln of how probable parameters are, a column each: what is to become least."""
    off = (observed.value[:, None] - results) / observed.uncertainty[:, None]
    chance = np.where(observed.at_most[:, None], _below(off), off**2)
    return np.asarray(np.sum(z**2, axis=0) + np.sum(chance, axis=0))


def _below(off: Array) -> Array:
    """-2 ln of the standard normal distribution function, from a table."""
    at, values = _table()
    return np.where(off > at[0], np.interp(off, at, values), off**2 + 2.0 * np.log(_ROOT * np.maximum(-off, 1.0)))


@lru_cache(maxsize=1)
def _table() -> tuple[Array, Array]:
    at = np.linspace(-12.0, 8.0, 2001)
    return at, np.array([-2.0 * math.log(0.5 * math.erfc(-x / 2**0.5)) for x in at])


def _chained(
    model: Model, best: Array, slopes: Array, learned: Array, drawn: Array, seen: tuple[Observed, Observed], seed: str
) -> tuple[Array, Array]:
    """Draws of the parameters after the adjustment, and their results.

    They begin as draws of the normal distribution that a straight model would leave, widened; each then goes its own chain, whose
    steps are taken as often as the bent model finds them as probable, so that its own distribution is kept. By turns a step keeps
    the distribution of the straight model, leads along one parameter with the others as they are tied to it, or along what two
    other draws differ by.
    W. K. Hastings, Biometrika 57 (1970) 97; S. L. Cotter and others, Statistical Science 28 (2013) 424; C. J. F. ter Braak,
    Statistics and Computing 16 (2006) 239; from memory.
    """
    observed, read = seen
    counts = np.sum(learned**2, axis=1) > _COUNTS
    count, scatter = int(np.count_nonzero(counts)), _scatter(learned[counts])
    left = np.eye(len(learned)) - learned @ learned.T
    along = np.argsort(-np.sum(learned**2, axis=1))[:_LINES]

    def whole(z: Array, results: Array) -> Array:
        return np.nan_to_num(_missed(z, results, observed), nan=np.inf, posinf=np.inf)

    def beside(z: Array, results: Array) -> Array:
        """-2 ln of how much more probable it is than a straight model has it."""
        off = z - best
        return whole(z, results) - np.sum(off**2, axis=0) - np.sum((slopes @ off / read.uncertainty[:, None]) ** 2, axis=0)

    z = drawn.copy()
    z[counts] = best[counts] + _WIDE * (scatter @ drawn[counts])
    now = model(z)
    for number in range(_STEPS if count else 0):
        random, tried = uniform(f"{seed} {number}", (2 * count + 2, z.shape[1])), z.copy()
        fresh = np.sqrt(-2.0 * np.log(random[:count])) * np.cos(2.0 * np.pi * random[count : 2 * count])
        weigh = whole
        if number % 3 == 0:
            tried[counts] = best[counts] + (1.0 - _REACH**2) ** 0.5 * (z[counts] - best[counts]) + _REACH * (scatter @ fresh)
            weigh = beside
        elif number % 3 == 1:
            line = int(along[number // 3 % len(along)])
            tried += _STRIDE * left[:, line : line + 1] / left[line, line] ** 0.5 * fresh[:1]
        else:
            one, other = np.argsort(random[0]), np.argsort(random[-2])
            tried += _BESIDE * (z[:, one] - z[:, other])
        there = model(tried)
        with np.errstate(invalid="ignore"):  # from nowhere to nowhere
            taken = np.log(random[-1]) < 0.5 * (weigh(z, now) - weigh(tried, there))
        z, now = np.where(taken, tried, z), np.where(taken, there, now)
    return z, now


def _scatter(learned: Array) -> Array:
    """The symmetric root of the covariance left, identity - A A^T."""
    size, directions = np.linalg.eigh(learned.T @ learned)
    within = directions / (1.0 + np.sqrt(np.maximum(1.0 - size, 0.0))) @ directions.T
    return np.asarray(np.eye(len(learned)) - learned @ within @ learned.T)


def _slopes(model: Model, z: Array, now: Array) -> Array:
    """How each result moves with each parameter, (observations, parameters), from one column of them, where they are `now`; all in
    one run. A parameter that cannot be moved there has no slope.
    """
    found = model(z + _STEP * np.eye(len(z)))
    return np.asarray(np.nan_to_num((found - now) / _STEP))


def uniform(seed: str, shape: tuple[int, int]) -> Array:
    """Numbers that look drawn between 0 and 1, the same for the same seed. Ours: numpy's generators are left out of what a phone
    fetches, and Python's own give one at a time.

    Parameters: seed; shape [-].
    Returns: numbers [-], above 0 and below 1.
    Raises: nothing.
    Formula: splitmix64 of a count from the seed's CRC on; its upper 53 bits + 1/2 over 2^53.
    Source: G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014 (splitmix64); from memory.
    Example:
        >>> bool(abs(uniform("a", (100, 100)).mean() - 0.5) < 0.01)
        True
    """
    count = np.arange(shape[0] * shape[1], dtype=np.uint64) + (np.uint64(zlib.crc32(seed.encode())) << np.uint64(32))
    mixed = count * np.uint64(0x9E3779B97F4A7C15)
    for shift, factor in ((30, 0xBF58476D1CE4E5B9), (27, 0x94D049BB133111EB)):
        mixed = (mixed ^ (mixed >> np.uint64(shift))) * np.uint64(factor)
    mixed ^= mixed >> np.uint64(31)
    return np.asarray(((mixed >> np.uint64(11)).astype(float) + 0.5).reshape(shape) / 2.0**53)
