"""How probable a model makes what was observed, all that its parameters may be taken together; and draws of what it leaves of them.

Ours because scipy is too large to ship, and because all draws go through the model in one run.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from calc.array import Array
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.misfit import Model, Observed, missed
from calc.uncertainty.proposals import proposed

_WIDE = 1.2  # times as wide as a straight model has it, where something was learned: draws must reach what the bent one leaves

_COUNTS = 1e-6  # of the most weight that a draw has: one of less is left out


@dataclass(frozen=True, eq=False)
class Evidence:
    """What a model makes of what was observed.

    Parameters: log, the natural logarithm of the probability density of the observations [1 / their units]; draws [-] of the
    parameters, a column each, of those that count; weights [-] of these, together 1; misfit [-], the least |z|^2 + sum of
    ((y - h) / u)^2.
    """

    log: float
    draws: Array
    weights: Array
    misfit: float


def evidence(model: Model, found: Adjusted, observed: Observed, drawn: Array) -> Evidence | None:
    """The evidence for a model that was adjusted to observations.

    Parameters: model, found, observed as in `calc.uncertainty.adjustment`, no bound among them; drawn [-], standard normal numbers,
    (parameters, draws).
    Returns: Evidence; None where no draw can be worked out.
    Raises: nothing.
    Formula: the mean of prior x likelihood / density over draws from the normal distribution that the adjustment leaves, widened
    where it learned, see `calc.uncertainty.proposals`.
    Source: C. P. Robert, G. Casella, Monte Carlo Statistical Methods (Springer 2004), 3.3 (importance sampling); from memory,
    tested against a closed form and a grid.
    Example:
        >>> observed = Observed(np.array([1.0]), np.array([1.0]), np.array([False]))
        >>> from calc.uncertainty.adjustment import adjusted
        >>> e = np.random.default_rng(1).standard_normal((1, 2000))
        >>> told = evidence(lambda z: z, adjusted(lambda z: z, e, observed, None), observed, e)
        >>> round(told.log, 1)  # of a normal distribution of variance 2, at 1
        -1.5
    """
    tried = proposed(found.best, found.learned, drawn, (_WIDE,))
    z = tried.draws
    results = model(z)
    unit = float(np.sum(np.log(observed.uncertainty)) + 0.5 * len(observed.value) * math.log(2.0 * math.pi))
    logs = np.nan_to_num(-0.5 * missed(z, results, observed) - tried.log_density - unit, nan=-np.inf)
    most = float(np.max(logs))
    if not math.isfinite(most):
        return None
    weights = np.exp(logs - most)
    whole = float(np.sum(weights))
    least = missed(found.best[:, None], found.fitted[:, None], observed)
    counts = weights > _COUNTS
    return Evidence(most + math.log(whole / z.shape[1]), z[:, counts], weights[counts] / whole, float(least[0]))


def weighed(values: Array, weights: Array) -> tuple[Array, Array]:
    """Mean and standard deviation of weighed draws.

    Parameters: values [any unit], draws along the last axis, NaN for one that cannot be told; weights [-].
    Returns: mean, standard deviation [theirs]; NaN where hardly any draw tells it.
    Raises: nothing.
    Formula: sum w x / sum w; sqrt(sum w (x - mean)^2 / sum w).
    Source: none.
    Example:
        >>> [float(x) for x in weighed(np.array([1.0, 3.0]), np.array([0.5, 0.5]))]
        [2.0, 1.0]
    """
    known = ~np.isnan(values)
    share = np.where(known, weights, 0.0)
    whole = np.sum(share, axis=-1)
    with np.errstate(invalid="ignore", divide="ignore"):
        mean = np.sum(share * np.nan_to_num(values), axis=-1) / whole
        off = np.sqrt(np.sum(share * np.nan_to_num(values - np.asarray(mean)[..., None]) ** 2, axis=-1) / whole)
    return np.where(whole > 0.5, mean, np.nan), np.where(whole > 0.5, off, np.nan)


def most_misfit(observations: int) -> float:
    """The misfit that a model which is right goes beyond as seldom as a normal number goes beyond 3 standard deviations.

    Parameters: observations, how many [-], 1 or more.
    Returns: misfit [-].
    Raises: nothing.
    Formula: chi-square quantile, n (1 - 2 / (9 n) + z sqrt(2 / (9 n)))^3, z = 2.782 at 0.9973.
    Source: E. B. Wilson, M. M. Hilferty, PNAS 17 (1931) 684; from memory, tested against scipy.
    Example:
        >>> round(most_misfit(5), 1)
        18.3
    """
    part = 2.0 / (9.0 * observations)
    return float(observations * (1.0 - part + 2.782 * part**0.5) ** 3)
