"""What sags found make of a job: against scipy on the same bike, and by the coverage of its bands over made-up truths."""

from __future__ import annotations

import random

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.job.customer import job_of
from calc.model.draws import at_normal, drawn, half_width, is_fit_off
from calc.model.observed import expected, sags_read
from calc.sizing.margins import moved_readings
from calc.uncertainty.corrected import sags_found, shown_reading
from calc.uncertainty.misfit import missed
from calc.uncertainty.question import Question
from tests.support.how_many import TIMES
from tests.support.sagging import LEVERAGE, SAGS, bike
from tests.support.said import said


def test_the_bike_agrees_with_scipy():
    from scipy.optimize import least_squares

    job = bike(LEVERAGE, **SAGS)
    paths = tuple(path for path in moved_readings(job) if path.startswith(("rear", "rider", "bike")))
    asked = Question(job, sags_read(job, "rear"), paths)
    seen = asked.observed()
    best = asked.answered().best

    def off(z):
        return np.concatenate([z, (asked.model(z[:, None])[:, 0] - seen.value) / seen.uncertainty])

    there = least_squares(off, np.zeros(len(paths)), x_scale=1.0, xtol=1e-10)
    assert best == pytest.approx(there.x, abs=0.03)
    assert np.sum(off(best) ** 2) == pytest.approx(2.0 * there.cost, abs=0.02)


@pytest.mark.parametrize("lengths", [(625, 591, 600, 496, 506), (625, 588, 596, 517, 527), (625, 610, 616, 540, 552)])
def test_draws_agree_with_all_that_the_readings_allow_weighed(lengths):
    """Importance sampling from the prior, by brute force, of a bike that nobody but its owner read: what sags leave of leverage, of
    the rate and of the two together.
    """
    job = load(job_of(said(lengths)), draws=3000)
    paths = tuple(path for path in moved_readings(job) if not is_fit_off(path))
    asked = Question(job, sags_read(job, "rear"), paths)
    z = np.random.default_rng(11).standard_normal((len(paths), 150_000))
    weight = np.exp(-0.5 * (np.nan_to_num(missed(z, asked.model(z), asked.observed()), nan=np.inf) - np.sum(z**2, axis=0)))
    weight /= np.sum(weight)
    assert 1.0 / np.sum(weight**2) > 400
    found = asked.answered()
    rows = [paths.index("rear.leverage"), paths.index("rear.rate")]
    for spread in (np.eye(2), np.array([[1.0, 1.0], [1.0, -1.0]])):  # each, their sum and their difference
        for true, left in zip(spread @ z[rows], spread @ found.draws[rows], strict=True):
            mean = np.sum(weight * true)
            deviation = np.sqrt(np.sum(weight * (true - mean) ** 2))
            assert left.mean() == pytest.approx(mean, abs=0.2 * deviation)
            assert left.std() == pytest.approx(deviation, rel=0.2)


_LOOSE = {"rear_preload": "6 mm"}  # so that it hardly ever tops out


@pytest.mark.timeout(600)
def test_bands_hold_the_truth_on_bikes():
    """Made-up bikes, each its readings as wide as they say and its sags read as well: 92 to 98 % of the leverages, of the rates and of
    the rider sags lie in their bands. STANCHION_MORE multiplies the number.
    """
    count = 400 * TIMES
    base = bike(LEVERAGE, **_LOOSE)
    paths = tuple(moved_readings(base))
    rng = random.Random(4)
    held, seen = {"rear.leverage": 0, "rear.rate": 0, "rear.leverage_fall": 0, "sag": 0}, 0
    for _ in range(count):
        z = {path: np.array([rng.gauss(0, 1)]) for path in paths}
        truth = at_normal(base, z, 1)
        try:
            sags, friction = (np.ravel(x) for x in (expected(truth, "rear").sags, expected(truth, "rear").friction))
        except Impossible:
            continue
        entries = dict(_LOOSE)
        for case, sag, stick in zip(("alone", "aboard"), sags, friction, strict=True):
            entries[f"rear_{case}_sag"] = f"{sag + stick + rng.gauss(0, 1):.3f}"
            entries[f"rear_{case}_again_sag"] = f"{max(sag - stick + rng.gauss(0, 1), 0):.3f}"
        if float(entries["rear_alone_again_sag"]) < 1.0:
            continue  # topped out: a bound, which has a test of its own
        job = bike(LEVERAGE, **entries)
        found = sags_found(job)
        if found.refused or not all(one.believed for one in found.compared):
            continue
        seen += 1
        corrected = found.correct(job)
        for path in ("rear.leverage", "rear.rate", "rear.leverage_fall"):
            told = shown_reading(corrected.fields[path])
            held[path] += abs(float(truth.samples[path][0]) - told.value) <= told.plus_minus_95
        after = expected(drawn(corrected), "rear").sags[1]
        held["sag"] += abs(sags[1] - after.mean()) <= half_width(after)
    assert seen > 0.7 * count
    room = max(2.6 * (0.95 * 0.05 / seen) ** 0.5, 0.03)
    for what, times in held.items():
        assert 0.95 - room <= times / seen <= 0.95 + room, (what, times / seen, seen)
