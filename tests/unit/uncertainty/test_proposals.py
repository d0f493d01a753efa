"""Draws from about where parameters were found to be: their density against scipy, the weights that it gives against a grid."""

from __future__ import annotations

import numpy as np
import pytest

from calc.uncertainty.proposals import proposed

BEST = np.array([0.5, -1.0, 0.2])
LEARNED = np.array([[0.9, 0.1], [-0.2, 0.7], [0.0, 0.3]])


@pytest.mark.parametrize("widths", [(1.0,), (1.2,), (1.0, 1.6, 3.0)])
def test_the_density_is_that_of_the_normal_distributions_together(widths):
    from scipy.stats import multivariate_normal

    drawn = np.random.default_rng(3).standard_normal((3, 60))
    found = proposed(BEST, LEARNED, drawn, widths)
    directions = np.linalg.svd(LEARNED, full_matrices=False)[0] @ np.linalg.svd(LEARNED, full_matrices=False)[0].T
    left = np.eye(3) - LEARNED @ LEARNED.T
    # Wider only where something was learned; beside that they are as they were.
    spreads = [w**2 * directions @ left @ directions + np.eye(3) - directions for w in widths]
    there = np.mean([multivariate_normal(BEST, spread).pdf(found.draws.T) for spread in spreads], axis=0)
    assert found.log_density == pytest.approx(np.log(there) + 1.5 * np.log(2.0 * np.pi), abs=1e-8)


def test_draws_scatter_as_a_straight_model_leaves_them():
    found = proposed(BEST, LEARNED, np.random.default_rng(3).standard_normal((3, 40_000)), (1.0,))
    assert found.draws.mean(axis=1) == pytest.approx(BEST, abs=0.02)
    assert np.cov(found.draws) == pytest.approx(np.eye(3) - LEARNED @ LEARNED.T, abs=0.03)


def test_each_width_has_its_share_of_the_draws():
    drawn = np.ones((1, 6))
    found = proposed(np.zeros(1), np.array([[0.6]]), drawn, (1.0, 2.0, 3.0))
    assert found.draws[0] == pytest.approx(0.8 * np.array([1, 2, 3, 1, 2, 3]))
