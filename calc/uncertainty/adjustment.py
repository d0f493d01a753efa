"""Least-squares adjustment: what observed results say about what they hang on.

Every parameter is a standard normal number beforehand. Gauss-Newton finds its most probable value; the same for each draw,
with its parameters and observations perturbed (randomised maximum likelihood), gives what is left of its spread. It is ours
because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from statistics import NormalDist

import numpy as np

from calc.array import Array, Flags

Model = Callable[[Array], Array]

_STEP = 2e-3  # standard deviations that a slope is taken over
_ROUNDS, _HALVINGS = 12, 4
_SETTLED, _NEAR = 1e-5, 0.1  # of -2 ln probability: the most probable values, and a draw, get no better
_BLIND = 1e6  # times its uncertainty, an observation says nothing
_FAR = 30.0  # standard deviations, beyond which a bound is broken by as much as numbers can tell
_COUNTS = 1e-3  # of an observation's variance: a parameter that moves none by as much is left as it was drawn


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
    [-], the same for each draw that could be worked out, a column each, and kept, which they are; learned [-], for each
    parameter a row a with covariance after = identity - a a^T; expected, the observations' values before; fitted, after;
    surprise [-], what each is off by after the adjustment over what that should scatter by. Of the draws that could be worked out,
    expected_draws before and fitted_draws after.
    """

    best: Array
    draws: Array
    kept: Array
    learned: Array
    expected: Array
    expected_draws: Array
    fitted: Array
    fitted_draws: Array
    surprise: Array


def adjusted(model: Model, drawn: Array, noise: Array, observed: Observed) -> Adjusted | None:
    """Adjust a model's parameters to what was observed.

    Parameters: model, from parameters [-], (parameters, columns), to results [any unit], (observations, columns), a column of
    NaN where it cannot be worked out; drawn [-], standard normal draws of the parameters, (parameters, draws); noise [-], standard
    normal draws of the observations' errors, (observations, draws); observed.
    Returns: Adjusted; None where the model cannot be worked out as things were known before.
    Raises: nothing.
    Formula: least |z - z0|^2 + sum ((y - h(z)) / u)^2, by z = z0 + H^T (H H^T + R)^-1 (y - h(z) + H (z - z0)), repeated; z0 = 0 for
    the most probable, the draw for each draw. A bound counts as the reading that leaves the same mean and variance, see `_read`. Surprise: v / sqrt(diag R (H H^T + R)^-1 R), v = y - h.
    Source: A. Tarantola, Inverse Problem Theory (SIAM 2005), 3.2 and 6.22.2; D. S. Oliver, N. He, A. C. Reynolds, ECMOR V (1996)
    (randomised maximum likelihood); W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968) (surprise); from memory,
    tested against closed forms, a grid and scipy.
    Example:
        >>> observed = Observed(np.array([1.0]), np.array([1.0]), np.array([False]))
        >>> draws, noise = np.zeros((1, 2)), np.zeros((1, 2))
        >>> found = adjusted(lambda z: z, draws, noise, observed)
        >>> found.best.round(4).tolist(), round(float(1.0 - found.learned[0] @ found.learned[0]), 4)
        ([0.5], 0.5)
    """
    count = len(drawn)
    start, every = np.zeros((count, 1)), np.ones(count, dtype=bool)
    expected = model(start)
    if np.any(np.isnan(expected)):
        return None
    observed = _read(model, start, expected, observed)
    best = _descend(model, start, expected, observed.value[:, None], observed, every, _SETTLED)
    fitted = model(best)
    slopes = _slopes(model, best, fitted, every)[:, :, 0]
    spread = slopes @ slopes.T + np.diag(observed.uncertainty**2)
    learned = np.linalg.solve(np.linalg.cholesky(spread), slopes).T
    counts = np.any(slopes**2 > _COUNTS * observed.uncertainty[:, None] ** 2, axis=0)
    before = model(drawn)
    kept = np.flatnonzero(~np.isnan(before).any(axis=0))
    wanted = observed.value[:, None] + observed.uncertainty[:, None] * noise[:, kept]
    after = _descend(model, drawn[:, kept], before[:, kept], wanted, observed, counts, _NEAR)
    fits = model(after)
    good = ~np.isnan(fits).any(axis=0)
    scatter = observed.uncertainty**2 * np.sqrt(np.diag(np.linalg.inv(spread)))
    return Adjusted(
        best[:, 0],
        after[:, good],
        kept[good],
        learned,
        expected[:, 0],
        before[:, kept],
        fitted[:, 0],
        fits[:, good],
        (observed.value - fitted[:, 0]) / scatter,
    )


def _read(model: Model, start: Array, value: Array, observed: Observed) -> Observed:
    """Every bound as the reading that leaves of its result the mean and the variance which the bound leaves: of a normal
    distribution, as the other observations have it, the part below the bound.
    """
    if not np.any(observed.at_most):
        return observed
    others = replace(observed, uncertainty=np.where(observed.at_most, _BLIND * observed.uncertainty, observed.uncertainty))
    every = np.ones(len(start), dtype=bool)
    best = _descend(model, start, value, observed.value[:, None], others, every, _SETTLED)
    middle = model(best)
    slopes = _slopes(model, best, middle, every)[:, :, 0]
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


def _descend(model: Model, start: Array, value: Array, wanted: Array, observed: Observed, counts: Flags, near: float) -> Array:
    """Gauss-Newton from `start`, whose results are `value`, until no step makes it better by more than `near`. A step that makes matters
    worse, or leads where the model has no answer, is halved. Each column goes its own way, and stays once it has settled.
    """
    z, now, going = start.copy(), value.copy(), np.arange(start.shape[1])
    for _ in range(_ROUNDS):
        here, first, aim = z[:, going], start[:, going], wanted[:, going]
        slopes = _slopes(model, here, now[:, going], counts)
        step = _step(slopes, here - first, aim - now[:, going], observed) - here + first
        worth = _worth(here - first, aim - now[:, going], observed)
        z[:, going], now[:, going] = _walked(model, (here, now[:, going]), step, first, aim, observed)
        going = going[worth - _worth(z[:, going] - first, aim - now[:, going], observed) > near]
        if not len(going):
            break
    return z


def _walked(
    model: Model, here: tuple[Array, Array], step: Array, start: Array, wanted: Array, observed: Observed
) -> tuple[Array, Array]:
    """Where a step leads, and the results there: whole, or halved as often as it takes; nowhere where that does not help."""
    z, now = here
    worth, share = _worth(z - start, wanted - now, observed), np.ones(z.shape[1])
    for _ in range(_HALVINGS):
        tried = z + share * step
        then = model(tried)
        worse = ~(_worth(tried - start, wanted - then, observed) <= worth * (1.0 + 1e-9))  # NaN is worse
        if not np.any(worse):
            break
        share = np.where(worse, 0.5 * share, share)
    return np.where(worse, z, tried), np.where(worse, now, then)


def _worth(off: Array, missed: Array, observed: Observed) -> Array:
    """What is to become least."""
    return np.asarray(np.sum(off**2, axis=0) + np.sum((missed / observed.uncertainty[:, None]) ** 2, axis=0))


def _step(slopes: Array, off: Array, missed: Array, observed: Observed) -> Array:
    """Where a model as straight as it is here would have its least, from each column's start."""
    aim = missed + np.einsum("opc,pc->oc", slopes, off)
    spread = np.einsum("opc,qpc->coq", slopes, slopes) + np.diag(observed.uncertainty**2)
    return np.asarray(np.einsum("opc,co->pc", slopes, np.linalg.solve(spread, aim.T[:, :, None])[:, :, 0]))


def _slopes(model: Model, z: Array, now: Array, counts: Flags) -> Array:
    """How each result moves with each parameter that counts, (observations, parameters, columns), from where they are `now`; all in
    one run. A parameter that cannot be moved there has no slope.
    """
    rows = np.flatnonzero(counts)
    count, columns = z.shape
    moved = np.repeat(z[:, None, :], len(rows), axis=1)
    moved[rows, np.arange(len(rows))] += _STEP
    slopes = np.zeros((len(now), count, columns))
    if not len(rows):
        return slopes
    found = model(moved.reshape(count, -1)).reshape(-1, len(rows), columns)
    slopes[:, rows] = np.nan_to_num((found - now[:, None, :]) / _STEP)
    return slopes
