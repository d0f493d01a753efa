"""Draws of parameters from about where they were found to be, and how dense they lie: what weights are taken against."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Array


@dataclass(frozen=True, eq=False)
class Proposed:
    """Draws [-] of the parameters, a column each, and the natural logarithm of their density but for (2 pi)^(-parameters / 2)."""

    draws: Array
    log_density: Array


def proposed(best: Array, learned: Array, drawn: Array, widths: tuple[float, ...]) -> Proposed:
    """Draws from the normal distributions that a straight model would leave, widened where something was learned.

    Parameters: best [-], (parameters,); learned [-], (parameters, observations), as in `calc.uncertainty.adjustment`; drawn [-],
    standard normal numbers, (parameters, draws); widths [-], one for each distribution, which have equal shares of the draws,
    one column of each by turns.
    Returns: Proposed.
    Raises: nothing.
    Formula: C = 1 - A A^T, of whose directions U and sizes s by A's singular values, z = best + (1 - U U^T) e +
    U w sqrt(1 - s^2) U^T e; the density is that of all of them together, whichever a draw is from.
    Source: C. P. Robert, G. Casella, Monte Carlo Statistical Methods (Springer 2004), 3.3; A. Owen, Y. Zhou, JASA 95 (2000)
    135 (the mixture's density); from memory, tested against scipy.
    Example:
        >>> found = proposed(np.zeros(1), np.array([[0.6]]), np.array([[1.0]]), (1.0,))
        >>> round(float(found.draws[0, 0]), 3)  # a standard deviation of 0.8 is left
        0.8
    """
    directions, sizes, _ = np.linalg.svd(learned, full_matrices=False)
    root = np.sqrt(np.maximum(1.0 - sizes**2, 1e-12))[:, None]
    straight = directions.T @ drawn
    along = np.resize(widths, drawn.shape[1]) * straight
    beside = drawn - directions @ straight
    z = best[:, None] + beside + directions @ (root * along)
    off = np.sum(along**2, axis=0)
    dense = np.log(sum(np.exp(-0.5 * off / wide**2) / wide ** len(sizes) for wide in widths) / len(widths))
    return Proposed(z, np.asarray(dense - 0.5 * np.sum(beside**2, axis=0) - float(np.sum(np.log(root)))))
