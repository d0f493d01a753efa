"""Draws of what is left unknown: many tried at once, of which the probable are kept; where few are, each is moved along a chain of
its own to where the model has it.
"""

from __future__ import annotations

import zlib

import numpy as np

from calc.array import Array, Flags
from calc.uncertainty.misfit import Model, Observed, missed
from calc.uncertainty.proposals import proposed

_TRIED, _ROUNDS = 12, 3  # for every draw, in one run: the model takes little longer for many than for few; runs at most
_WIDTHS = (1.0, 1.6, 3.0)  # times as wide as a straight model has it: a bent one may reach far out
_LEAST, _MILDER = 0.3, 0.8  # of these that must count for every draw, or weights are taken to that power, again and again
_STEPS = ((4.0, 0), (1.0, 6), (0.0, 36))  # of a draw's chain, where at least so many count of what was tried for it; by turns:
_REACH = 0.7  # in every direction, of a new draw;
_LINES, _STRIDE = 3, 2.2  # along one of the parameters most learned about, the others with it, standard deviations left;
_BESIDE = 0.5  # of what two other draws differ by.
_COUNTS = 1e-4  # of a parameter's variance: where less was learned it is left as it was drawn


def chained(
    model: Model, best: Array, slopes: Array, learned: Array, drawn: Array, seen: tuple[Observed, Observed], seed: str
) -> Array:
    """Draws of the parameters after the adjustment.

    Parameters: model; best [-], one column; slopes [the results' unit], learned [-], as in `calc.uncertainty.adjustment`; drawn
    [-], standard normal draws of the parameters; seen, what was observed, and with its bounds as readings; seed.
    Returns: parameters [-], (parameters, draws), of the draws that can be worked out.
    Raises: nothing.
    Formula: many draws of the normal distributions that a straight model would leave, of which so many are kept as are wanted,
    each as often as the bent model finds it more probable; less strictly where a few would stand for all. Where few count, each
    goes a chain of its own, whose steps are taken as often as the bent model finds them as probable, so that its own distribution
    is kept. By turns a step keeps the distribution of the straight model, leads along one parameter with the others as they are
    tied to it, or along what two other draws differ by.
    Source: N. Chopin, Biometrika 89 (2002) 539 (weighed, then moved); W. K. Hastings, Biometrika 57 (1970) 97; S. L. Cotter and
    others, Statistical Science 28 (2013) 424; C. J. F. ter Braak, Statistics and Computing 16 (2006) 239; from memory.
    Example: see `tests/unit/uncertainty/test_adjustment.py`.
    """
    observed, read = seen
    counts = np.sum(learned**2, axis=1) > _COUNTS
    count, scatter = int(np.count_nonzero(counts)), _scatter(learned[counts])
    left = np.eye(len(learned)) - learned @ learned.T
    along = np.argsort(-np.sum(learned**2, axis=1))[:_LINES]

    def whole(z: Array, results: Array) -> Array:
        return np.asarray(np.nan_to_num(missed(z, results, observed), nan=np.inf, posinf=np.inf))

    def beside(z: Array, results: Array) -> Array:
        """-2 ln of how much more probable it is than a straight model has it."""
        off = z - best
        straight = np.sum(off**2, axis=0) + np.sum((slopes @ off / read.uncertainty[:, None]) ** 2, axis=0)
        return np.asarray(whole(z, results) - straight)

    z, steps = _kept(model, best, learned, drawn, observed, counts, seed) if count else (drawn, 0)
    if count and not steps:
        return z  # each has a weight, so the model has it
    now = model(z)
    for number in range(steps):
        random, tried = uniform(f"{seed} {number}", (2 * count + 2, z.shape[1])), z.copy()
        fresh = _normal(random[: 2 * count])
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
    return z[:, ~np.isnan(now).any(axis=0)]


def _kept(
    model: Model, best: Array, learned: Array, drawn: Array, observed: Observed, counts: Flags, seed: str
) -> tuple[Array, int]:
    """Of many draws so many as are wanted, each as often as its weight says; and how many steps each is to go from there."""
    wanted, size = drawn.shape[1], int(np.count_nonzero(counts))
    made, logs, count = np.zeros((size, 0)), np.zeros(0), 0.0
    for number in range(_ROUNDS):
        tried = np.tile(drawn, _TRIED)
        normal = _normal(uniform(f"{seed} tried {number}", (2 * size, tried.shape[1])))
        near = proposed(best[counts, 0], learned[counts], normal, _WIDTHS)
        tried[counts] = near.draws
        found = -0.5 * missed(near.draws, model(tried), observed) - near.log_density
        made, logs = np.append(made, near.draws, axis=1), np.append(logs, np.nan_to_num(found, nan=-np.inf))
        weight = np.exp(logs - np.max(logs)) if np.isfinite(np.max(logs)) else np.zeros(len(logs))
        count = float(np.sum(weight) ** 2 / max(np.sum(weight**2), 1e-300)) / wanted
        if count >= _STEPS[0][0]:
            break
    if not count:
        return drawn, _STEPS[-1][1]
    steps = next(steps for least, steps in _STEPS if count >= least)
    # Where a few would stand for all, they count for less, and it is the chains that bring the rest.
    while np.sum(weight) ** 2 < _LEAST * wanted * np.sum(weight**2):
        weight = weight**_MILDER
    reached = np.cumsum(weight) / np.sum(weight)
    places = (np.arange(wanted) + uniform(f"{seed} kept", (1, 1))[0, 0]) / wanted
    kept = drawn.copy()
    kept[counts] = made[:, np.searchsorted(reached, places)]
    return kept, steps


def _normal(uniform_pairs: Array) -> Array:
    """Standard normal numbers, half as many as those between 0 and 1 that they are made of (G. E. P. Box, M. E. Muller, 1958)."""
    one, other = np.split(uniform_pairs, 2)
    return np.asarray(np.sqrt(-2.0 * np.log(one)) * np.cos(2.0 * np.pi * other))


def _scatter(learned: Array) -> Array:
    """The symmetric root of the covariance left, identity - A A^T."""
    size, directions = np.linalg.eigh(learned.T @ learned)
    within = directions / (1.0 + np.sqrt(np.maximum(1.0 - size, 0.0))) @ directions.T
    return np.asarray(np.eye(len(learned)) - learned @ within @ learned.T)


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
