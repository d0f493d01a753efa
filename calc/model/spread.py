"""How a reading may be off: the shape that its +/- is drawn from, as a column of samples or at a probability."""

from __future__ import annotations

import random
from functools import lru_cache
from statistics import NormalDist

import numpy as np

from calc.array import Array
from calc.quantities.reading import Reading, Spread

_FAR = 8.0  # standard deviations, beyond which a bound changes no draw
TRUNCATED = {"place.exponent": (1.0, 1.4)}  # slow to adiabatic: air can do no other


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
    if reading.spread is Spread.RECTANGULAR and name not in TRUNCATED:
        lowest = max(-half, least)
        return lowest + (half - lowest) * strata(name, count)
    sigma = half / 2.0
    low, high = ((bound - reading.value) / sigma for bound in TRUNCATED.get(name, (least + reading.value, np.inf)))
    return sigma * standard_normal(name, count, low if low > -_FAR else -np.inf, high)


def off_at(name: str, reading: Reading, z: Array, least: float = -np.inf) -> Array:
    """What a reading is off by where the standard normal distribution has the same probability below it.

    Parameters: name, reading, least as in `deviation`; z [-], standard normal numbers, any shape.
    Returns: amounts [the reading's internal unit].
    Raises: nothing.
    Formula: the inverse of the distribution that `deviation` draws from, at the standard normal distribution function of z; where
    that is no straight line, from a table, to 1e-5 standard deviations.
    Source: the probability integral transform.
    Example:
        >>> from calc.quantities.reading import Origin
        >>> off_at("a", Reading(10.0, 2.0, Origin.MEASURED), np.array([-1.0, 0.0, 2.0])).tolist()
        [-1.0, 0.0, 2.0]
        >>> off_at("a", Reading(10.0, 2.0, Origin.ASSUMED, Spread.RECTANGULAR), np.array([-9.0, 0.0, 9.0])).round(6).tolist()
        [-2.0, 0.0, 2.0]
    """
    half = reading.plus_minus_95
    if reading.spread is Spread.RECTANGULAR and name not in TRUNCATED:
        lowest = max(-half, least)
        return lowest + (half - lowest) * np.interp(z, _AT, _below())
    sigma = half / 2.0
    low, high = ((bound - reading.value) / sigma for bound in TRUNCATED.get(name, (least + reading.value, np.inf)))
    if low <= -_FAR and high >= _FAR:
        return sigma * z
    return sigma * np.interp(z, _AT, _between(low, high))


# Functions of a standard normal number are read from a table: Python's own take one number at a time, and numpy has none.
_AT = np.linspace(-_FAR, _FAR, 2049)


@lru_cache(maxsize=1)
def _below() -> Array:
    """The standard normal distribution function at `_AT`."""
    return np.array([NormalDist().cdf(float(z)) for z in _AT])


@lru_cache(maxsize=64)
def _between(low: float, high: float) -> Array:
    """The standard normal number that has the same probability below it, of what lies between two bounds, as `_AT` has of all."""
    normal = NormalDist()
    bottom, top = normal.cdf(low), normal.cdf(high)
    inside = np.clip(bottom + (top - bottom) * _below(), 1e-15, 1.0 - 1e-15)
    return np.array([normal.inv_cdf(float(p)) for p in inside])


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
        >>> from calc.quantities.reading import Origin
        >>> round(drawn_uncertainty("place.exponent", Reading(1.33, 0.07, Origin.ASSUMED, Spread.RECTANGULAR)), 4)
        0.033
    """
    if name not in TRUNCATED:
        return reading.standard_uncertainty
    normal, sigma = NormalDist(), reading.plus_minus_95 / 2.0
    low, high = ((bound - reading.value) / sigma for bound in TRUNCATED[name])
    part, at_low, at_high = normal.cdf(high) - normal.cdf(low), normal.pdf(low), normal.pdf(high)
    return float(sigma * np.sqrt(1.0 + (low * at_low - high * at_high) / part - ((at_low - at_high) / part) ** 2))
