"""Least-squares adjustment against closed forms, a brute-force grid, scipy, and by the coverage of its bands over made-up truths."""

from __future__ import annotations

import numpy as np
import pytest

from calc.uncertainty.adjustment import Adjusted, adjusted
from calc.uncertainty.chains import uniform
from calc.uncertainty.misfit import Observed

RNG = np.random.default_rng(20261129)


def settled(model, value, uncertainty, parameters: int, draws: int = 400, at_most=None, rng=None) -> Adjusted:
    rng = rng or np.random.default_rng(7)
    value, uncertainty = np.asarray(value, float), np.asarray(uncertainty, float)
    bound = np.zeros(len(value), dtype=bool) if at_most is None else np.asarray(at_most)
    found = adjusted(model, rng.standard_normal((parameters, draws)), Observed(value, uncertainty, bound), f"{rng.random()}")
    assert found is not None
    return found


def bent(z):
    """Two results of two parameters, bent about as much as a sag is by leverage."""
    return np.stack([20.0 + 5.0 * z[0] + 3.0 * z[1] + 0.5 * z[0] * z[1], 60.0 + 10.0 * np.sinh(0.3 * z[0]) - 4.0 * z[1]])


@pytest.mark.parametrize("seed", range(5))
def test_a_straight_model_agrees_with_the_closed_form(seed):
    # A. Tarantola, Inverse Problem Theory (SIAM 2005), eq. 3.37-3.38, from memory: m = C H^T R^-1 y, C = (H^T R^-1 H + I)^-1.
    rng = np.random.default_rng(seed)
    slopes, u = rng.normal(0, 3, (3, 5)), rng.uniform(0.5, 2, 3)
    value = slopes @ rng.standard_normal(5) + u * rng.standard_normal(3)
    found = settled(lambda z: slopes @ z, value, u, 5, draws=4000)
    covariance = np.linalg.inv(slopes.T @ np.diag(u**-2.0) @ slopes + np.eye(5))
    assert found.best == pytest.approx(covariance @ slopes.T @ (value / u**2), abs=1e-6)
    assert np.eye(5) - found.learned @ found.learned.T == pytest.approx(covariance, abs=1e-8)
    assert np.cov(found.draws) == pytest.approx(covariance, abs=0.09)
    assert found.draws.mean(axis=1) == pytest.approx(found.best, abs=0.06)


def test_surprise_is_what_a_weighing_may_scatter_by():
    # One parameter seen twice: v1 = (y1 - y2 ...)/..., its variance u^2 - u^4 (HH^T + R)^-1, by hand for H = (1, 1), u = 1.
    found = settled(lambda z: np.stack([z[0], z[0]]), [4.0, 0.0], [1.0, 1.0], 1)
    assert found.fitted == pytest.approx([4 / 3, 4 / 3], abs=1e-6)
    inverse = np.linalg.inv(np.array([[2.0, 1.0], [1.0, 2.0]]))
    assert found.surprise == pytest.approx(np.array([8 / 3, -4 / 3]) / np.sqrt(np.diag(inverse)), abs=1e-5)


@pytest.mark.parametrize("value", [(27.0, 64.0), (12.0, 71.0), (20.0, 60.0), (33.0, 48.0)])
def test_a_bent_model_agrees_with_scipy(value):
    from scipy.optimize import least_squares

    u = np.array([1.0, 1.5])
    found = settled(bent, value, u, 2)
    there = least_squares(lambda z: np.concatenate([z, (bent(z) - value) / u]), np.zeros(2), xtol=1e-12, ftol=1e-12)
    assert found.best == pytest.approx(there.x, abs=5e-3)


def test_the_generator_is_flat_and_its_numbers_are_unlike():
    # Chi-square of 100 classes and the correlation of neighbours, at the 1 in 1000 level.
    from scipy.stats import chi2

    numbers = uniform("a", (400, 500))
    counts, _ = np.histogram(numbers, 100, (0, 1))
    assert np.sum((counts - 2000) ** 2 / 2000) < chi2.ppf(0.999, 99)
    flat = numbers.ravel()
    assert abs(np.corrcoef(flat[1:], flat[:-1])[0, 1]) < 3.3 / flat.size**0.5
    assert abs(np.corrcoef(uniform("a", (1, 9999)), uniform("b", (1, 9999)))[0, 1]) < 3.3 / 9999**0.5


def grid(model, value, u, at_most):
    """Mean and standard deviation of two parameters by brute force: every place on a grid, weighed by its probability."""
    from scipy.stats import norm

    line = np.linspace(-5, 5, 801)
    z = np.stack(np.meshgrid(line, line, indexing="ij")).reshape(2, -1)
    off = (np.asarray(value)[:, None] - model(z)) / np.asarray(u)[:, None]
    chance = np.where(np.asarray(at_most)[:, None], norm.logcdf(off), -0.5 * off**2)
    weight = np.exp(np.sum(chance, axis=0) - 0.5 * np.sum(z**2, axis=0))
    mean = (z * weight).sum(axis=1) / weight.sum()
    return mean, np.sqrt(((z - mean[:, None]) ** 2 * weight).sum(axis=1) / weight.sum())


@pytest.mark.parametrize("value", [(27.0, 64.0), (12.0, 71.0), (20.0, 60.0)])
def test_draws_agree_with_a_brute_force_grid(value):
    u = (1.0, 1.5)
    found = settled(bent, value, u, 2, draws=4000)
    mean, deviation = grid(bent, value, u, (False, False))
    assert found.draws.mean(axis=1) == pytest.approx(mean, abs=0.05)
    assert found.draws.std(axis=1) == pytest.approx(deviation, rel=0.08)


def test_a_bound_counts_only_where_it_would_be_broken():
    # Topped out: the sag is at most 0. Far above the model's it says nothing; below, it agrees with the grid.
    free = settled(bent, (200.0, 60.0), (1.0, 1e6), 2, at_most=(True, False))
    assert free.best == pytest.approx([0, 0], abs=1e-9)
    assert not free.learned.any() or np.abs(free.learned).max() < 1e-3
    value, u, bound = (15.0, 60.0), (1.0, 1e6), (True, False)
    found = settled(bent, value, u, 2, draws=4000, at_most=bound)
    mean, deviation = grid(bent, value, u, bound)
    assert found.draws.mean(axis=1) == pytest.approx(mean, abs=0.08)
    assert found.draws.std(axis=1) == pytest.approx(deviation, rel=0.1)


def test_a_model_that_cannot_be_worked_out_gives_nothing_and_draws_that_cannot_are_left_out():
    nothing = adjusted(
        lambda z: np.full((1, z.shape[1]), np.nan),
        np.zeros((1, 3)),
        Observed(*np.array([[1.0], [1.0]]), np.array([False])),
    )
    assert nothing is None

    def partly(z):
        return np.where(z[:1] > 1.5, np.nan, z[:1])

    found = settled(partly, [0.5], [0.5], 1, draws=400)
    assert 300 < found.draws.shape[1] <= 400
    assert found.draws.max() <= 1.5


@pytest.mark.parametrize("noise", [0.7, 2.0, 6.0])
def test_bands_hold_the_truth_as_often_as_they_say(noise):
    """Of 2 000 made-up truths, drawn as they are thought to be, 92 to 98 % lie in their bands of 95 %."""
    truths, draws = 2000, 200
    rng = np.random.default_rng(int(noise * 10))
    held = np.zeros(2)
    u = np.array([noise, noise])
    for _ in range(truths):
        truth = rng.standard_normal((2, 1))
        value = bent(truth)[:, 0] + u * rng.standard_normal(2)
        found = settled(bent, value, u, 2, draws=draws, rng=rng)
        low, high = np.quantile(found.draws, [0.025, 0.975], axis=1)
        held += (low <= truth[:, 0]) & (truth[:, 0] <= high)
    assert np.all((held / truths >= 0.92) & (held / truths <= 0.98)), held / truths
