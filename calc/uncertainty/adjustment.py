"""Least-squares adjustment: what observed results say about what they hang on.

Every parameter is a standard normal number beforehand. Gauss-Newton finds its most probable value and, the model taken as straight
there, what is left of its spread; draws from that are then moved, each along a chain of its own, to where the bent model has them.
Ours because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from statistics import NormalDist

import numpy as np

from calc.array import Array
from calc.uncertainty.chains import chained
from calc.uncertainty.misfit import Model, Observed, missed

_STEP = 2e-3  # standard deviations that a slope is taken over
_ROUNDS, _HALVINGS = 12, 4
_SETTLED = 1e-3  # of -2 ln probability: the most probable values get no better
_BLIND = 1e6  # times its uncertainty, an observation says nothing
_MET = 0.25  # of its uncertainty: an observation that is met so closely is no surprise, however little it was free to be off
_FAR = 30.0  # standard deviations, beyond which a bound is broken by as much as numbers can tell


@dataclass(frozen=True, eq=False)
class Adjusted:
    """An adjustment's outcome.

    Parameters: best [-], the parameters' most probable values, in their standard deviations from what was known before; draws
    [-], of what is left of them, a column each, None where none were asked for; learned [-], for each
    parameter a row a with covariance after = identity - a a^T; expected, the observations' values before; fitted, after;
    surprise [-], what each is off by after the adjustment over what that should scatter by; expected_draws, before, of the draws
    that can be worked out.
    """

    best: Array
    draws: Array | None
    learned: Array
    expected: Array
    expected_draws: Array
    fitted: Array
    surprise: Array


def adjusted(model: Model, drawn: Array, observed: Observed, seed: str | None = "") -> Adjusted | None:
    """Adjust a model's parameters to what was observed.

    Parameters: model, from parameters [-], (parameters, columns), to results [any unit], (observations, columns), a column of
    NaN where it cannot be worked out; drawn [-], standard normal draws of the parameters, (parameters, draws); observed; seed of
    the chains, None for no draws.
    Returns: Adjusted; None where the model cannot be worked out as things were known before.
    Raises: nothing.
    Formula: least |z|^2 + sum ((y - h(z)) / u)^2, by z = H^T (H H^T + R)^-1 (y - h(z) + H z), repeated. A bound counts there as the
    reading that leaves the same mean and variance, see `_read`. Draws: see `chained`. Surprise: v / sqrt(diag R (H H^T + R)^-1 R),
    v = y - h; of a v below a quarter of its uncertainty, v over that: so small a one is the model's bend.
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
    draws = None if seed is None else chained(model, best, slopes, learned, drawn, (observed, read), seed)
    before, off = model(drawn), read.value - fitted[:, 0]
    scatter = read.uncertainty**2 * np.sqrt(np.diag(np.linalg.inv(spread)))
    return Adjusted(
        best[:, 0],
        draws,
        learned,
        expected[:, 0],
        before[:, ~np.isnan(before).any(axis=0)],
        fitted[:, 0],
        off / np.where(np.abs(off) > _MET * read.uncertainty, scatter, read.uncertainty),
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
    """Gauss-Newton from `start`, one column, whose results are `value`, until no step makes it better: where it ends, its results
    and slopes. A step that makes matters worse, or leads where the model has no answer, is halved.
    """
    z, now, wanted = start, value, observed.value[:, None]
    worth = float("inf")
    for _ in range(_ROUNDS):
        slopes = _slopes(model, z, now)
        better = float(missed(z, now, observed)[0])
        if worth - better < _SETTLED:
            break
        worth = better
        aim = np.linalg.solve(slopes @ slopes.T + np.diag(observed.uncertainty**2), wanted - now + slopes @ z)
        step = slopes.T @ aim - z
        for _ in range(_HALVINGS):
            there = model(z + step)
            if missed(z + step, there, observed)[0] <= worth:
                z, now = z + step, there
                break
            step = 0.5 * step
    return z, now, slopes


def _slopes(model: Model, z: Array, now: Array) -> Array:
    """How each result moves with each parameter, (observations, parameters), from one column of them, where they are `now`; all in
    one run. A parameter that cannot be moved there has no slope.
    """
    found = model(z + _STEP * np.eye(len(z)))
    return np.asarray(np.nan_to_num((found - now) / _STEP))
