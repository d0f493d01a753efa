"""Readings that belong together: JCGM 100:2008, H.2 and H.3, by our draws, by our fit, and by the `uncertainties` library.

The core takes every reading of a job as independent; what it must carry are covariances that a fit leaves behind (start and
bend of measured pairs) and those of results that share their readings. Both are tried here against the published examples.
The published values are from memory and were worked out again from the raw data below.
"""

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import curve_fit
from uncertainties import correlated_values, correlation_matrix, umath

from calc.job import load
from calc.model.draws import drawn, half_width
from calc.model.motion import FIT_OFF, rear_motion
from calc.model.spread import standard_normal
from calc.motion.measured import FittedMotion, fit_pairs
from calc.quantities.few import widening
from tests.support.documents import demo

# H.2, Table H.2: five sets of readings taken together; V [V], I [A], phi [rad].
VOLTS = np.array([5.007, 4.994, 5.005, 4.990, 4.999])
AMPERES = np.array([19.663, 19.639, 19.640, 19.685, 19.678]) / 1000.0
PHASE = np.array([1.0456, 1.0438, 1.0468, 1.0428, 1.0433])
# Table H.4: resistance, reactance, impedance [ohm] with standard uncertainties and correlations.
OHMS, OHMS_U = (127.732, 219.847, 254.260), (0.071, 0.295, 0.236)
TOGETHER = {(0, 1): -0.588, (0, 2): -0.485, (1, 2): 0.993}
ALONE_U = (0.195, 0.201, 0.204)  # the covariances left out: worked out, and far from what is published

# H.3, Table H.6: thermometer readings [deg C] and corrections [deg C]; the line is y1 + y2 (t - 20).
READ = np.array([21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511])
CORRECTION = np.array([-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160])

HEIGHTS = np.array([0.0, 50, 100, 150, 200, 250, 305])
LENGTHS = 470.0 - 0.36 * HEIGHTS - 1.3e-4 * HEIGHTS**2 + np.array([0.3, -0.4, 0.2, 0.3, -0.5, 0.2, -0.1])


def means_and_covariance() -> tuple[np.ndarray, np.ndarray]:
    """Means of the five sets, and the covariance of the means."""
    readings = np.stack([VOLTS, AMPERES, PHASE])
    return readings.mean(axis=1), np.cov(readings) / readings.shape[1]


def three(volts, amperes, phase, maths=np):
    return volts / amperes * maths.cos(phase), volts / amperes * maths.sin(phase), volts / amperes


def drawn_readings(root: np.ndarray, count: int) -> np.ndarray:
    """Independent normal numbers of the core turned into readings that belong together, as FittedMotion does it."""
    means, _ = means_and_covariance()
    return means[:, None] + root @ np.stack([standard_normal(name, count) for name in ("H.2 V", "H.2 I", "H.2 phi")])


def test_h2_by_the_library_is_what_is_published():
    means, covariance = means_and_covariance()
    told = three(*correlated_values(means, covariance), maths=umath)
    assert [x.nominal_value for x in told] == pytest.approx(OHMS, abs=5e-4)
    assert [x.std_dev for x in told] == pytest.approx(OHMS_U, abs=1e-3)
    correlations = correlation_matrix(told)
    assert [correlations[pair] for pair in TOGETHER] == pytest.approx(list(TOGETHER.values()), abs=1e-3)


def test_h2_by_draws_with_its_covariances():
    _, covariance = means_and_covariance()
    results = np.stack(three(*drawn_readings(np.linalg.cholesky(covariance), 4000)))
    assert results.mean(axis=1) == pytest.approx(OHMS, abs=5e-3)
    assert results.std(axis=1) == pytest.approx(OHMS_U, rel=0.03)
    correlations = np.corrcoef(results)
    assert [correlations[pair] for pair in TOGETHER] == pytest.approx(list(TOGETHER.values()), abs=0.02)
    assert [half_width(x) for x in results] == pytest.approx([1.96 * u for u in OHMS_U], rel=0.04)


def test_h2_first_order_in_one_run_of_steps():
    """One step up and one down a column, as `draws.stepped` lays them out; halves of their differences are the effects."""
    means, covariance = means_and_covariance()
    steps = np.linalg.cholesky(covariance) @ np.hstack([np.eye(3), -np.eye(3)])
    results = np.stack(three(*(means[:, None] + steps)))
    effects = (results[:, :3] - results[:, 3:]) / 2.0
    total = effects @ effects.T
    assert np.sqrt(np.diag(total)) == pytest.approx(OHMS_U, abs=1e-3)
    for (a, b), published in TOGETHER.items():
        assert total[a, b] / np.sqrt(total[a, a] * total[b, b]) == pytest.approx(published, abs=1e-3)


def test_h2_without_its_covariances_comes_out_wrong():
    """Why it matters: taken as independent, the resistance is nearly three times as unsure as it is."""
    _, covariance = means_and_covariance()
    results = np.stack(three(*drawn_readings(np.diag(np.sqrt(np.diag(covariance))), 4000)))
    assert results.std(axis=1) == pytest.approx(ALONE_U, rel=0.04)
    assert results.std(axis=1)[0] > 2.5 * OHMS_U[0]


def test_h3_by_scipy_is_what_is_published():
    """y1 -0.1712 (0.0029), y2 0.00218 (0.00067), r -0.930; correction at 30 deg C -0.1494 (0.0041). It anchors the next test."""
    line, covariance = curve_fit(lambda t, y1, y2: y1 + y2 * (t - 20.0), READ, CORRECTION)
    told = correlated_values(line, covariance)
    assert [x.nominal_value for x in told] == pytest.approx([-0.1712, 0.00218], abs=5e-5)
    assert [x.std_dev for x in told] == pytest.approx([0.0029, 0.00067], rel=0.02)
    assert correlation_matrix(told)[0, 1] == pytest.approx(-0.930, abs=5e-4)
    at_thirty = told[0] + told[1] * 10.0
    assert (at_thirty.nominal_value, at_thirty.std_dev) == pytest.approx((-0.1494, 0.0041), abs=5e-5)


def scipys_fit() -> tuple:
    """Start and bend of the pairs by the method that gave H.3, told as correlated numbers."""
    found, covariance = curve_fit(lambda z, at, start, bend: at - start * z - bend * z * z / 2.0, HEIGHTS, LENGTHS)
    return tuple(correlated_values(found, covariance)[1:])


def test_start_and_bend_of_a_fit_are_the_librarys_with_their_covariance():
    fit, (start, bend) = fit_pairs(HEIGHTS, LENGTHS), scipys_fit()
    assert (fit.start, fit.bend) == pytest.approx((start.nominal_value, bend.nominal_value), rel=1e-6)
    root = fit.root[:2, :2] / widening(len(HEIGHTS) - 3)
    covariance = root @ root.T
    assert np.sqrt(np.diag(covariance)) == pytest.approx([start.std_dev, bend.std_dev], rel=1e-5)
    correlation = covariance[0, 1] / np.sqrt(covariance[0, 0] * covariance[1, 1])
    assert correlation == pytest.approx(correlation_matrix((start, bend))[0, 1], abs=1e-6)
    assert correlation < -0.8  # left out, it would spoil what follows


@pytest.mark.parametrize("travel", [0.0, 150.0, 305.0])
def test_the_ratio_at_a_travel_is_as_sure_as_the_library_says(travel):
    """As the correction at 30 deg C: at mid travel the two errors undo each other, which only their covariance tells."""
    start, bend = scipys_fit()
    told = (start + bend * travel).std_dev * widening(len(HEIGHTS) - 3)
    off = (*(standard_normal(name, 4000) for name in FIT_OFF[:2]), 0.0)
    ratios = FittedMotion(fit_pairs(HEIGHTS, LENGTHS), 305.0, off).ratio(travel)
    assert np.std(ratios) == pytest.approx(told, rel=0.03)
    apart = np.hypot(start.std_dev, travel * bend.std_dev) * widening(len(HEIGHTS) - 3)
    assert travel == 0.0 or np.std(ratios) < 0.65 * apart


def test_a_drawn_jobs_fall_and_average_keep_their_covariance():
    """The whole way: pairs in a job, drawn; leverage hanging and at full travel by the library from the fit's correlated numbers."""
    start, bend = scipys_fit()
    text = "; ".join(f"{z:g} {length:.4f}" for z, length in zip(HEIGHTS, LENGTHS, strict=True))
    travel = {"value": "305 mm", "plus_minus_95": "0 mm", "origin": "stated"}
    job = drawn(load(demo({"rear.motion_from": "pairs", "rear.pairs": text, "rear.travel": travel})), 4000)
    motion = rear_motion(replace(job, samples=job.samples | {FIT_OFF[2]: 0.0}))  # the library knows no shape but a quadratic's
    results = np.stack([np.broadcast_to(1.0 / motion.ratio(z), (4000,)) for z in (0.0, 305.0)])
    told = (1.0 / start, 1.0 / (start + 305.0 * bend))
    widened = [x.std_dev * widening(len(HEIGHTS) - 3) for x in told]
    assert results.std(axis=1) == pytest.approx(widened, rel=0.04)
    assert np.corrcoef(results)[0, 1] == pytest.approx(correlation_matrix(told)[0, 1], abs=0.05)
