"""A spring on a tester: the straight line against JCGM 100, H.3, and numpy's own; how its +/- goes into the answer."""

from __future__ import annotations

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.model import fitted
from calc.model.draws import drawn, half_width
from calc.quantities.few import widening
from calc.springs.tester import line_through
from tests.support.documents import demo
from tests.support.plain import report

# JCGM 100:2008, H.3, Table H.6: thermometer readings t_k [deg C] and corrections b_k [deg C], from memory as in test_covariance.py.
READINGS = np.array([21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511])
CORRECTIONS = np.array([-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160])


def test_the_line_of_the_guides_example():
    # There y2 = 0.002 18, s(y2) = 0.000 67, s = 0.0035; corrections rise, so they can stand for a spring's forces.
    done = line_through(READINGS, CORRECTIONS, "")
    assert done.rate == pytest.approx(0.00218, abs=5e-6)
    assert done.plus_minus_95 / (2.0 * widening(9)) == pytest.approx(0.00067, abs=5e-6)
    assert done.scatter == pytest.approx(0.0035, abs=5e-5)
    assert not done.bent


def test_the_line_is_numpys():
    rng = np.random.default_rng(1)
    for count in (3, 4, 7, 12):
        x = np.sort(rng.uniform(0, 100, count))
        force = 40.0 + 4.2 * x + rng.normal(0, 3, count)
        done = line_through(x, force, "")
        slope, start = np.polyfit(x, force, 1)
        scatter = np.sqrt(np.sum((force - start - slope * x) ** 2) / (count - 2))
        assert done.rate == pytest.approx(slope)
        assert done.scatter == pytest.approx(scatter)


def test_nineteen_of_twenty_lines_hold_the_rate():
    rng, x, held = np.random.default_rng(2), np.linspace(0, 100, 5), 0
    for _ in range(2000):
        done = line_through(x, 4.2 * x + rng.normal(0, 4, 5), "")
        held += abs(done.rate - 4.2) <= done.plus_minus_95
    assert 0.94 <= held / 2000 <= 0.97


def test_a_progressive_spring_is_told_from_scatter():
    x = np.linspace(0, 120, 7)
    rising = line_through(x, 3.6 * x + 0.005 * x**2 + np.array([1, -1, 0, 1, -1, 0, 1]), "")
    assert rising.bent
    assert rising.stiffer == pytest.approx(2 * 0.005 * 120 / 4.2, rel=0.1)
    rng = np.random.default_rng(3)
    false = sum(line_through(x, 4.2 * x + rng.normal(0, 8, 7), "").bent for _ in range(1000))
    assert false < 20
    assert not line_through(x[:3], 3.6 * x[:3] + 0.005 * x[:3] ** 2, "").bent, "three points cannot tell"


def test_forces_that_fall_say_so():
    with pytest.raises(Impossible, match="do not rise"):
        line_through(np.array([0.0, 50.0, 100.0]), np.array([400.0, 200.0, 100.0]), "front.tester")


TESTED = {"front.rate_from": "tester", "front.tester": "20 85; 60 254; 100 419; 140 590"}


def test_its_rate_is_the_fitted_one_and_its_plus_minus_is_drawn():
    job = load(demo(TESTED))
    line = line_through(np.array([20.0, 60.0, 100.0, 140.0]), np.array([85.0, 254.0, 419.0, 590.0]), "")
    assert fitted.rate(job, "front") == pytest.approx(line.rate)
    whole = (line.plus_minus_95**2 + (0.01 * line.rate) ** 2) ** 0.5
    assert half_width(fitted.rate(drawn(job, 2000), "front")) == pytest.approx(whole, rel=0.05)


def test_the_report_tells_the_points():
    front = report(demo(TESTED))["ends"]["front"]
    assert any("By 4 points on the tester, what is in has 4.2 ±" in words for words in front["why"])
    bent = report(demo(TESTED | {"front.tester": "0 0; 40 140; 80 310; 120 510; 160 740"}))["ends"]["front"]
    assert any("enter it as a progressive spring" in words for words in bent["why"])


def test_points_that_are_missing_are_asked_for():
    front = report(demo({"front.rate_from": "tester"}))["ends"]["front"]
    assert front["state"] == "refused"
    assert "three points or more" in front["problems"][0]["way_out"]
