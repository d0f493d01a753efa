"""How far a model's results are from what was observed, and how probable that makes its parameters."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from calc.array import Array, Flags

Model = Callable[[Array], Array]

_ROOT = math.sqrt(2.0 * math.pi)


@dataclass(frozen=True, eq=False)
class Observed:
    """What was observed.

    Parameters: value [any unit], one an observation; uncertainty [the same], standard, > 0; at_most, True where the value is
    only known not to be above it.
    """

    value: Array
    uncertainty: Array
    at_most: Flags


def missed(z: Array, results: Array, observed: Observed) -> Array:
    """-2 ln of how probable parameters are, a column each, but for a constant: what is to become least.

    Parameters: z [-], standard normal parameters, (parameters, columns); results [any unit], the model's, (observations, columns);
    observed.
    Returns: numbers [-], one a column; NaN where a result is.
    Raises: nothing.
    Formula: |z|^2 + sum of ((y - h) / u)^2, and of -2 ln of the normal distribution function of (y - h) / u where y is a bound.
    Source: A. Tarantola, Inverse Problem Theory (SIAM 2005), 1.2; from memory.
    Example:
        >>> observed = Observed(np.array([1.0]), np.array([0.5]), np.array([False]))
        >>> float(missed(np.array([[1.0]]), np.array([[2.0]]), observed)[0])
        5.0
    """
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
