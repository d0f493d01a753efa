"""The springs that can be had: a stepped series or a shelf, unequal pairs too, the fitted one among them."""

from __future__ import annotations

import numpy as np

from calc.array import Array

SERIES_FROM, SERIES_TO = 0.5, 1.8  # times the fitted rate: where a series is tried


def series(step: float, fitted: float) -> Array:
    """The rates of a stepped series that are worth trying.

    Parameters: step [N/mm], > 0; fitted rate [N/mm], > 0.
    Returns: rates [N/mm], ascending: multiples of the step around the fitted rate.
    Raises: nothing.
    Formula: multiples of the step from 0.5 to 1.8 times the fitted rate.
    Source: springs are sold in steps; common practice, no source.
    Example:
        >>> [float(r) for r in series(0.5, 2.0)]
        [1.0, 1.5, 2.0, 2.5, 3.0, 3.5]
    """
    first, last = np.ceil(SERIES_FROM * fitted / step), np.floor(SERIES_TO * fitted / step)
    return np.round(np.arange(first, last + 1) * step, 6)


def offers(rates: Array, pairs: bool, fitted: float, fitted_split: float = 0.0) -> tuple[Array, Array]:
    """The springs on offer, the fitted ones among them, so that "leave it" can be the answer.

    Parameters: rates [N/mm] that can be had; pairs, whether two neighbours may go one in each leg; fitted rate [N/mm], their
    mean where the legs differ; fitted_split [N/mm], half of what the fitted right one is above the left one.
    Returns: rates [N/mm], ascending, each the mean of its two legs; and the split [N/mm] of each.
    Raises: nothing.
    Formula: mean and half the difference of neighbours. What is fitted takes the place of an offer of the same mean.
    Source: none.
    Example:
        >>> [part.round(2).tolist() for part in offers(np.array([4.2, 4.6]), True, 4.5)]
        [[4.2, 4.4, 4.5, 4.6], [0.0, 0.2, 0.0, 0.0]]
    """
    means, splits = np.sort(rates), np.zeros(len(rates))
    if pairs:
        halves = 0.5 * np.diff(means)
        means, splits = np.append(means, means[:-1] + halves), np.append(splits, halves)
    other = ~np.isclose(means, fitted, rtol=1e-6)
    same = np.append(means[~other], fitted)[0]  # as it is offered, where it is
    means, splits = np.append(means[other], same), np.append(splits[other], fitted_split)
    order = np.argsort(means)
    return means[order], splits[order]
