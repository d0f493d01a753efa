"""Least-squares adjustment: what observed results say about what they hang on.

Every parameter is a standard normal number beforehand. Gauss-Newton finds its most probable value; the same for each draw,
with its parameters and observations perturbed (randomised maximum likelihood), gives what is left of its spread. It is ours
because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from calc.array import Array, Flags

Model = Callable[[Array], Array]

_STEP = 2e-3  # standard deviations that a slope is taken over
_ROUNDS, _HALVINGS = 12, 4
_SETTLED, _NEAR = 1e-5, 0.1  # of -2 ln probability: the most probable values, and a draw, get no better
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
    surprise [-], what each is off by after the adjustment over what that should scatter by; expected_half, 95 % half-widths.
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

    Parameters: model, from parameters of shape (parameters, columns) to results of shape (observations, columns), a column of
    NaN where it cannot be worked out; drawn, standard normal draws of the parameters, (parameters, draws); noise, standard
    normal draws of the observations' errors, (observations, draws); observed.
    Returns: Adjusted; None where the model cannot be worked out as things were known before.
    Raises: nothing.
    Formula: least |z - z0|^2 + sum ((y - h(z)) / u)^2, by z = z0 + H^T (H H^T + R)^-1 (y - h(z) + H (z - z0)), repeated; z0 = 0 for
    the most probable, the draw for each draw. An observation that is only a bound has no part while the model keeps it.
    Surprise: v / sqrt(diag R (H H^T + R)^-1 R), v = y - h.
    Source: A. Tarantola, Inverse Problem Theory (SIAM 2005), 3.2 and 6.22.2; D. S. Oliver, N. He, A. C. Reynolds, ECMOR V (1996)
    (randomised maximum likelihood); W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968) (surprise); from memory,
    tested against closed forms, a grid and scipy.
    Example:
        >>> observed = Observed(np.array([1.0]), np.array([1.0]), np.array([False]))
        >>> draws, noise = np.zeros((1, 2)), np.zeros((1, 2))
        >>> found = adjusted(lambda z: z, draws, noise, observed)
        >>> found.best.round(6).tolist(), float(1.0 - found.learned[0] @ found.learned[0])
        ([0.5], 0.5)
    """
    count = len(drawn)
    start, every = np.zeros((count, 1)), np.ones(count, dtype=bool)
    expected = model(start)
    if np.any(np.isnan(expected)):
        return None
    best = _descend(model, start, expected, observed.value[:, None], observed, every, _SETTLED)
    fitted = model(best)
    slopes = _slopes(model, best, fitted, every)[:, :, 0]
    free = observed.at_most & (fitted[:, 0] <= observed.value)
    slopes[free] = 0.0
    spread = slopes @ slopes.T + np.diag(observed.uncertainty**2)
    learned = np.linalg.solve(np.linalg.cholesky(spread), slopes).T
    counts = np.any(slopes**2 > _COUNTS * observed.uncertainty[:, None] ** 2, axis=0)
    before = model(drawn)
    kept = np.flatnonzero(~np.isnan(before).any(axis=0))
    wanted = observed.value[:, None] + observed.uncertainty[:, None] * noise[:, kept]
    after = _descend(model, drawn[:, kept], before[:, kept], wanted, observed, counts, _NEAR)
    fits = model(after)
    good = ~np.isnan(fits).any(axis=0)
    return Adjusted(
        best[:, 0],
        after[:, good],
        kept[good],
        learned,
        expected[:, 0],
        before[:, kept],
        fitted[:, 0],
        fits[:, good],
        _surprise(observed, fitted[:, 0], spread, free),
    )


def _surprise(observed: Observed, fitted: Array, spread: Array, free: Flags) -> Array:
    off = np.where(free, 0.0, observed.value - fitted)
    variance = observed.uncertainty**2
    scatter = np.sqrt(variance**2 * np.diag(np.linalg.inv(spread)))
    return np.asarray(off / scatter)


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
    missed = np.where(observed.at_most[:, None], np.minimum(missed, 0.0), missed)
    return np.asarray(np.sum(off**2, axis=0) + np.sum((missed / observed.uncertainty[:, None]) ** 2, axis=0))


def _step(slopes: Array, off: Array, missed: Array, observed: Observed) -> Array:
    """Where a model as straight as it is here would have its least, from each column's start."""
    free = observed.at_most[:, None] & (missed >= 0.0)
    slopes = np.where(free[:, None, :], 0.0, slopes)
    missed = np.where(free, 0.0, missed) + np.einsum("opc,pc->oc", slopes, off)
    spread = np.einsum("opc,qpc->coq", slopes, slopes) + np.diag(observed.uncertainty**2)
    return np.asarray(np.einsum("opc,co->pc", slopes, np.linalg.solve(spread, missed.T[:, :, None])[:, :, 0]))


def _slopes(model: Model, z: Array, now: Array, counts: Flags) -> Array:
    """How each result moves with each parameter that counts, (observations, parameters, columns), from where they are `now`; all in
    one run. A parameter that cannot be moved there has no slope.
    """
    rows = np.flatnonzero(counts)
    count, columns = z.shape
    moved = np.repeat(z[:, None, :], len(rows), axis=1)
    moved[rows, np.arange(len(rows))] += _STEP
    found = model(moved.reshape(count, -1)).reshape(-1, len(rows), columns)
    slopes = np.zeros((found.shape[0], count, columns))
    slopes[:, rows] = np.nan_to_num((found - now[:, None, :]) / _STEP)
    return slopes
