"""Least-squares adjustment: what observed results say about what they hang on.

Every parameter is a standard normal number beforehand. Gauss-Newton finds its most probable value and, the model taken as straight
there, what is left of its spread; draws from that are then moved, each along a chain of its own, to where the bent model has them.
Ours because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
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

    Parameters: best [-], the parameters' most probable values, in their standard deviations from what was known before; learned
    [-], for each parameter a row a with covariance after = identity - a a^T; expected, the observations' values before; fitted,
    after; surprise [-], what each is off by after the adjustment over what that should scatter by; expected_draws, before, of the
    draws that can be worked out; chains, which makes draws of what is left, None where none were asked for.
    """

    best: Array
    learned: Array
    expected: Array
    expected_draws: Array
    fitted: Array
    surprise: Array
    chains: Callable[[], Array] | None

    @cached_property
    def draws(self) -> Array | None:
        """Draws [-] of what is left of the parameters, a column each: drawn when asked for, which takes most of the work."""
        return None if self.chains is None else self.chains()


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
    expected, around, before = _around(model, start, drawn)
    if np.any(np.isnan(expected)):
        return None
    read = _read(model, start, (expected, around), observed)
    best, fitted, slopes = _descend(model, start, (expected, around), read)
    spread = slopes @ slopes.T + np.diag(read.uncertainty**2)
    learned = np.linalg.solve(np.linalg.cholesky(spread), slopes).T
    off = read.value - fitted[:, 0]
    scatter = read.uncertainty**2 * np.sqrt(np.diag(np.linalg.inv(spread)))

    def chains() -> Array:
        return chained(model, best, slopes, learned, drawn, (observed, read), seed or "")

    return Adjusted(
        best[:, 0],
        learned,
        expected[:, 0],
        before[:, ~np.isnan(before).any(axis=0)],
        fitted[:, 0],
        off / np.where(np.abs(off) > _MET * read.uncertainty, scatter, read.uncertainty),
        None if seed is None else chains,
    )


def _read(model: Model, start: Array, there: tuple[Array, Array], observed: Observed) -> Observed:
    """Every bound as the reading that leaves of its result the mean and the variance which the bound leaves: of a normal
    distribution, as the other observations have it, the part below the bound.
    """
    if not np.any(observed.at_most):
        return observed
    others = replace(observed, uncertainty=np.where(observed.at_most, _BLIND * observed.uncertainty, observed.uncertainty))
    _, middle, slopes = _descend(model, start, there, others)
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


def _descend(model: Model, start: Array, there: tuple[Array, Array], observed: Observed) -> tuple[Array, Array, Array]:
    """Gauss-Newton from `start`, one column, whose results and slopes are `there`, until no step makes it better: where it ends,
    its results and slopes. A step that makes matters worse, or leads where the model has no answer, is halved; the last, too
    small for the model to bend over it, is taken along the slopes.
    """
    z, (now, slopes), wanted = start, there, observed.value[:, None]
    worth = float(missed(z, now, observed)[0])
    for _ in range(_ROUNDS):
        aim = np.linalg.solve(slopes @ slopes.T + np.diag(observed.uncertainty**2), wanted - now + slopes @ z)
        step = slopes.T @ aim - z
        straight = now + slopes @ step
        if worth - float(missed(z + step, straight, observed)[0]) < _SETTLED:
            return z + step, straight, slopes
        better, last = math.inf, z
        for _ in range(_HALVINGS):
            ahead, steep, _ = _around(model, z + step)
            better = float(missed(z + step, ahead, observed)[0])
            if better <= worth:
                last = z
                z, now, slopes = z + step, ahead, steep
                break
            step = 0.5 * step
        if last is z or worth - better < _SETTLED:
            break
        worth = better
    return z, now, slopes


def _around(model: Model, z: Array, others: Array | None = None) -> tuple[Array, Array, Array]:
    """The results of one column of parameters; how each moves with each parameter, (observations, parameters); and the results of
    other columns, all in one run. A parameter that cannot be moved there has no slope.
    """
    beside = np.zeros((len(z), 0)) if others is None else others
    found = model(np.concatenate([z, z + _STEP * np.eye(len(z)), beside], axis=1))
    now, moved, rest = np.split(found, [1, 1 + len(z)], axis=1)
    return now, np.asarray(np.nan_to_num((moved - now) / _STEP)), rest
