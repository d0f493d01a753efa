"""Evidence against the closed form of a straight model, a brute-force grid of a bent one, and scipy."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import chi2, multivariate_normal

from calc.model.spread import standard_normal
from calc.uncertainty.adjustment import adjusted
from calc.uncertainty.evidence import Evidence, evidence, most_misfit, weighed
from calc.uncertainty.misfit import Observed

DRAWS = 240  # as many as a push takes


def weighed_by(model, value, uncertainty, parameters: int, draws: int = DRAWS) -> Evidence:
    observed = Observed(np.asarray(value, float), np.asarray(uncertainty, float), np.zeros(len(value), dtype=bool))
    drawn = np.stack([standard_normal(f"evidence {number}", draws) for number in range(parameters)])
    found = adjusted(model, np.zeros((parameters, 1)), observed, None)
    assert found is not None
    told = evidence(model, found, observed, drawn)
    assert told is not None
    return told


@pytest.mark.parametrize("seed", range(6))
def test_a_straight_model_agrees_with_the_closed_form(seed):
    # What is observed of a straight model is normal, of covariance H H^T + R: any book on the normal distribution.
    rng = np.random.default_rng(seed)
    rows, columns = int(rng.integers(1, 6)), int(rng.integers(1, 9))
    slopes, offset, u = rng.normal(0, 3, (rows, columns)), rng.normal(0, 5, rows), rng.uniform(0.5, 2, rows)
    value = offset + slopes @ rng.standard_normal(columns) + u * rng.standard_normal(rows)
    told = weighed_by(lambda z: offset[:, None] + slopes @ z, value, u, columns)
    spread = slopes @ slopes.T + np.diag(u**2)
    assert told.log == pytest.approx(multivariate_normal(offset, spread).logpdf(value), abs=0.1)
    assert told.misfit == pytest.approx((value - offset) @ np.linalg.solve(spread, value - offset), rel=1e-4)
    after = np.linalg.inv(np.eye(columns) + slopes.T @ np.diag(u**-2.0) @ slopes)
    middle, off = weighed(told.draws, told.weights)
    assert middle == pytest.approx(after @ slopes.T @ ((value - offset) / u**2), abs=0.2)
    assert off == pytest.approx(np.sqrt(np.diag(after)), rel=0.25, abs=0.02)


def bent(z):
    """A force that rises as gas is used up, and one that hardly does; a rectangular reading among its two."""
    inside = np.tanh(0.8 * z[1])  # a reading that lies between two ends
    return np.stack([400.0 / (1.6 - 0.2 * z[0] - 0.3 * inside), 150.0 + 12.0 * z[0] + 10.0 * inside])


@pytest.mark.parametrize("value", [(250.0, 150.0), (330.0, 165.0), (205.0, 128.0), (300.0, 140.0)])
def test_a_bent_model_agrees_with_a_grid(value):
    u = np.array([12.0, 5.0])
    line = np.linspace(-6, 6, 1601)
    z = np.stack(np.meshgrid(line, line, indexing="ij")).reshape(2, -1)
    with np.errstate(divide="ignore"):
        off = (np.array(value)[:, None] - bent(z)) / u[:, None]
    logs = -0.5 * np.sum(off**2, axis=0) - 0.5 * np.sum(z**2, axis=0) - np.sum(np.log(u)) - 2.0 * np.log(2.0 * np.pi)
    whole = float(np.log(np.sum(np.exp(logs)) * (line[1] - line[0]) ** 2))
    told = weighed_by(bent, value, u, 2)
    assert told.log == pytest.approx(whole, abs=0.15)
    weights = np.exp(logs - logs.max())
    mean = (z * weights).sum(axis=1) / weights.sum()
    assert weighed(told.draws, told.weights)[0] == pytest.approx(mean, abs=0.15)


def test_a_column_that_cannot_be_counts_for_nothing():
    """Half of all places are impossible: the evidence is that of the other half."""
    model = lambda z: np.where(z[:1] + z[1:] > 0, 0.1 * z[:1], np.nan) + 0.0  # noqa: E731
    observed = Observed(np.array([0.0]), np.array([1.0]), np.array([False]))
    drawn = np.stack([standard_normal(f"half {number}", 4000) for number in range(2)])
    start = adjusted(lambda z: 0.1 * z[:1], np.zeros((2, 1)), observed, None)
    told = evidence(model, start, observed, drawn)
    whole = evidence(lambda z: 0.1 * z[:1], start, observed, drawn)
    assert told.log - whole.log == pytest.approx(np.log(0.5), abs=0.08)
    assert np.all(told.draws[0] + told.draws[1] > 0)
    assert told.weights.sum() == pytest.approx(1.0, abs=1e-3)
    assert evidence(lambda z: np.full((1, z.shape[1]), np.nan), start, observed, drawn) is None


@pytest.mark.parametrize("count", [1, 2, 3, 5, 8, 15, 40])
def test_the_most_misfit_is_a_quantile_of_chi_square(count):
    assert most_misfit(count) == pytest.approx(chi2.ppf(0.9973, count), rel=0.015)


def test_weighed_draws_leave_out_what_cannot_be_told():
    values, weights = np.array([[1.0, np.nan, 3.0], [np.nan, np.nan, 3.0]]), np.array([0.4, 0.2, 0.4])
    middle, off = weighed(values, weights)
    assert (middle[0], off[0]) == (pytest.approx(2.0), pytest.approx(1.0))
    assert np.isnan(middle[1])
    assert np.isnan(off[1])
