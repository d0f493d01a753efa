"""Pairs of wheel travel and shock length: fitted with their scatter, or taken as exact; and why the two differ."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.impossible import Impossible
from calc.motion.measured import FittedMotion, TableMotion, covers, fit_pairs, widening
from calc.motion.ratio import LeverageMotion
from tests.unit.motion.test_linkage import on_swingarm

HEIGHTS = np.array([0.0, 60.0, 120.0, 180.0, 240.0, 300.0])
TRUE = LeverageMotion(2.5, 0.22, 300.0)
LENGTHS = 470.0 - TRUE.stroke(HEIGHTS)
OFF = np.array([0.4, -0.4, 0.4, -0.4, 0.4, -0.4])  # mm, as a rule is read


def test_exact_pairs_of_a_quadratic_give_it_back():
    fit = fit_pairs(HEIGHTS, LENGTHS)
    motion = FittedMotion(fit, 300.0)
    z = np.linspace(0, 300, 13)
    assert motion.stroke(z) == pytest.approx(TRUE.stroke(z), abs=1e-9)
    assert motion.ratio(z) == pytest.approx(TRUE.ratio(z), rel=1e-9)
    assert motion.slope(z) == pytest.approx(TRUE.slope(z), rel=1e-9)
    assert motion.travel(motion.stroke(z)) == pytest.approx(z)
    assert fit.scatter == pytest.approx(0.0, abs=1e-9)


def test_the_intercept_is_free():
    """A first reading that is 2 mm off moves no length but its own: the fit does not pass through it."""
    lengths = LENGTHS + np.array([2.0, 0, 0, 0, 0, 0])
    fit = fit_pairs(HEIGHTS, lengths)
    assert abs(fit.residuals[0]) > 0.1
    assert float(np.sum(fit.residuals)) == pytest.approx(0.0, abs=1e-9)


def test_reading_error_costs_little_when_fitted_and_much_when_interpolated():
    """0.4 mm of reading error under a 48 N/mm spring: the wheel rate's error of an interpolant is many times the fit's."""

    def worst(motion) -> float:
        z = np.linspace(0, 300, 200)
        force = 48.0 * (10.0 + TRUE.stroke(z))
        rate = 48.0 * motion.ratio(z) ** 2 + force * motion.slope(z)
        true = 48.0 * TRUE.ratio(z) ** 2 + force * TRUE.slope(z)
        return float(np.max(np.abs(rate - true)))

    fitted = worst(FittedMotion(fit_pairs(HEIGHTS, LENGTHS + OFF), 300.0))
    interpolated = worst(TableMotion(HEIGHTS, LENGTHS + OFF, 300.0))
    assert fitted < 0.35
    assert 3.0 < interpolated < 20.0


def test_scatter_and_covariance_are_those_of_a_thousand_repeats():
    """Second method: the fit repeated on drawn readings; the spread of start and bend is the root's, before widening."""
    rng = np.random.default_rng(3)
    sigma, count = 0.5, 4000
    fits = [fit_pairs(HEIGHTS, LENGTHS + rng.normal(0.0, sigma, 6)) for _ in range(count)]
    assert np.sqrt(np.mean([f.scatter**2 for f in fits])) == pytest.approx(sigma, rel=0.03)
    spread = np.cov([[f.start, f.bend] for f in fits], rowvar=False)
    unit = fits[0].root[:2, :2] / fits[0].scatter / widening(3)
    assert unit @ unit.T * sigma**2 == pytest.approx(spread, rel=0.08)


def test_twice_the_widened_uncertainty_holds_the_truth_in_95_of_100():
    rng = np.random.default_rng(5)
    held = []
    for _ in range(3000):
        fit = fit_pairs(HEIGHTS[:5], LENGTHS[:5] + rng.normal(0.0, 0.5, 5))
        held.append(abs(fit.bend - TRUE.slope(0.0)) <= 2.0 * np.hypot(*fit.root[1, :2]))
    assert np.mean(held) == pytest.approx(0.95, abs=0.015)


def test_draws_move_start_and_bend_together():
    fit = fit_pairs(HEIGHTS, LENGTHS + OFF)
    off = tuple(np.eye(3))
    drawn = FittedMotion(fit, 300.0, off)
    assert drawn.start - fit.start == pytest.approx(fit.root[0])
    assert drawn.bend - fit.bend == pytest.approx(fit.root[1])
    assert np.shape(drawn.stroke(np.zeros((3, 1)))) == (3, 3)


@pytest.mark.parametrize("heights", [5, 6, 9])
@pytest.mark.parametrize("noise", [0.05, 0.4])
def test_the_plus_minus_holds_a_linkage_that_no_quadratic_follows(heights, noise):
    """A real loop of bars read by rule, many times over: in 95 of 100 its leverage and its wheel rate lie within twice u, at no height in fewer than 80.

    The scatter alone held the wheel rate at mid travel in 0 to 55 of 100. At full travel itself the loop bends more than a cubic.
    """
    loop, z, at = on_swingarm(), np.linspace(0.0, 300.0, heights), np.linspace(0.0, 250.0, 6)
    ratio, slope = np.array([(float(loop.ratio(t)), float(loop.slope(t))) for t in at]).T
    rng, held = np.random.default_rng(7), []
    for _ in range(150):
        fit = fit_pairs(z, loop.length(z) + rng.normal(0.0, noise, heights))
        off = np.stack([np.ones_like(at), at, at**2], axis=1) @ fit.root
        bent = np.stack([0.0 * at, np.ones_like(at), 2.0 * at], axis=1) @ fit.root
        q, true = fit.start + fit.bend * at, 48.0 * ratio**2 + 2500.0 * slope
        rate, half = 48.0 * q**2 + 2500.0 * fit.bend, np.linalg.norm(96.0 * q[:, None] * off + 2500.0 * bent, axis=1)
        held.append((np.abs(q - ratio) <= 2.0 * np.linalg.norm(off, axis=1), np.abs(rate - true) <= 2.0 * half))
    assert np.mean(held) >= 0.95
    assert np.min(np.mean(held, axis=0)) >= 0.8


def test_the_shape_that_is_left_out_is_numpys_third_legendre_term():
    z = np.linspace(0.0, 300.0, 301)
    lengths = LENGTHS[0] - TRUE.stroke(z) + 0.4 * np.polynomial.legendre.Legendre.basis(3, [0.0, 300.0])(z)
    fit = fit_pairs(z, lengths)
    assert fit.shape == pytest.approx(0.4, rel=1e-9)
    other = FittedMotion(fit, 300.0, (0.0, 0.0, 1.0))
    assert other.stroke(z) == pytest.approx(lengths[0] - lengths, abs=1e-9), "told exactly, it is all of what is drawn"
    assert other.travel(other.stroke(z)) == pytest.approx(z, abs=1e-6)
    step = 1e-3
    assert (other.stroke(z + step) - other.stroke(z - step)) / (2 * step) == pytest.approx(other.ratio(z), rel=1e-7)
    assert (other.ratio(z + step) - other.ratio(z - step)) / (2 * step) == pytest.approx(other.slope(z), abs=1e-8)


def test_readings_too_few_or_too_rough_to_show_a_shape_leave_the_usual_one_open():
    """1 / u^2 added up: what five readings of 5 mm scatter know of it is nothing, what a hundred good ones know is all."""
    rough = fit_pairs(HEIGHTS[:5], LENGTHS[:5] + np.array([5.0, -9.0, 7.0, -8.0, 6.0]))
    steep = float(np.ptp(LENGTHS[:5] + np.array([5.0, -9.0, 7.0, -8.0, 6.0])))
    # the third Legendre term's slope at hanging is 12 over the span, a little less for that of five points
    assert abs(rough.root[0, 2]) == pytest.approx(0.003 * steep * 12.0 / 240.0, rel=0.15)
    z = np.linspace(0.0, 300.0, 100)
    fine = fit_pairs(z, 470.0 - TRUE.stroke(z) + np.tile([0.01, -0.01], 50))
    assert abs(fine.root[0, 2]) < 2e-4


def test_a_draw_whose_ratio_dips_below_zero_between_the_ends_is_refused():
    root = np.zeros((3, 3))
    root[:, 2] = (0.0, -0.01, 0.01 / 300.0)
    fit = replace(fit_pairs(HEIGHTS, LENGTHS), root=root)
    assert FittedMotion(fit, 300.0, (0.0, 0.0, 0.3)).ratio(150.0) > 0
    with pytest.raises(Impossible, match="does not shorten"):
        FittedMotion(fit, 300.0, (0.0, 0.0, np.array([0.0, 1.0])))


def test_an_exact_table_passes_through_every_row():
    motion = on_swingarm()
    lengths = motion.length(HEIGHTS)
    table = TableMotion(HEIGHTS, lengths, 300.0)
    assert table.stroke(HEIGHTS) == pytest.approx(lengths[0] - lengths, abs=1e-9)
    z = np.linspace(0, 300, 61)
    assert table.stroke(z) == pytest.approx(motion.stroke(z), abs=0.05)
    assert table.ratio(z) == pytest.approx(motion.ratio(z), rel=0.01)


def test_a_finer_table_comes_nearer_the_linkage():
    motion, z = on_swingarm(), np.linspace(0, 300, 61)

    def off(rows: int) -> float:
        knots = np.linspace(0, 300, rows)
        return float(np.max(np.abs(TableMotion(knots, motion.length(knots), 300.0).ratio(z) - motion.ratio(z))))

    assert off(31) < off(16) < off(7)
    assert off(31) < 1e-4


@given(
    steps=st.lists(st.floats(15, 60), min_size=4, max_size=9),
    start=st.floats(0.3, 0.6),
    rise=st.floats(0.0, 0.3),
    part=st.floats(0.02, 0.98),
)
def test_ratio_is_the_slope_of_stroke_and_slope_that_of_ratio(steps, start, rise, part):
    z = np.concatenate([[0.0], np.cumsum(steps)])
    full = float(z[-1])
    table = TableMotion(z, 480.0 - start * z - rise * z**3 / (3 * full**2), full)
    here, step = part * full, 1e-3
    assert (table.stroke(here + step) - table.stroke(here - step)) / (2 * step) == pytest.approx(table.ratio(here), rel=1e-6)
    assert (table.ratio(here + step) - table.ratio(here - step)) / (2 * step) == pytest.approx(table.slope(here), abs=1e-8)
    assert table.travel(table.stroke(here)) == pytest.approx(here, abs=1e-6)
    assert table.ratio(here) == pytest.approx(start + rise * (here / full) ** 2, rel=1e-9)  # a cubic is reproduced


def test_beyond_the_last_row_the_ratio_stays():
    """A drawn full travel may pass the last row by its own +/-."""
    table = TableMotion(HEIGHTS, LENGTHS, np.array([299.0, 302.0]))
    last = float(table.ratio(300.0))
    assert float(table.ratio(302.0)) == last
    assert float(table.slope(302.0)) == 0.0
    assert float(table.stroke(302.0)) == pytest.approx(float(table.stroke(300.0)) + 2.0 * last)
    assert table.stroke(np.array([[0.0], [302.0]])).shape == (2, 1)


def test_pairs_that_do_not_cover_the_travel_are_refused():
    covers(HEIGHTS, 300.0)
    for travel, full in ((HEIGHTS, 305.0), (HEIGHTS[1:], 300.0)):
        with pytest.raises(Impossible, match=r"of wheel travel; the rear wheel travel is 0 to 30[05] mm") as caught:
            covers(travel, full)
        assert caught.value.field == "rear.pairs"


@pytest.mark.parametrize("make", [lambda z, y: FittedMotion(fit_pairs(z, y), 300.0), lambda z, y: TableMotion(z, y, 300.0)])
def test_a_shock_that_does_not_shorten_is_refused(make):
    bent = 470.0 - 0.5 * HEIGHTS + 1e-3 * HEIGHTS**2
    for lengths in (470.0 + TRUE.stroke(HEIGHTS), bent):
        with pytest.raises(Impossible, match="does not shorten all the way"):
            make(HEIGHTS, lengths)


def test_a_dip_between_two_rows_is_seen():
    """q is above 0 at every row and below 0 between two of them."""
    z = np.array([0.0, 50.0, 100.0, 150.0, 200.0])
    y = np.array([100.0, 90.0, 89.5, 89.0, 40.0])
    with pytest.raises(Impossible, match="does not shorten"):
        TableMotion(z, y, 200.0)
    with pytest.raises(Impossible, match="does not shorten"):  # and seen from the other end
        TableMotion(z, 140.0 - y[::-1], 200.0)


def test_too_few_are_refused():
    with pytest.raises(Impossible, match="4 heights of the wheel are too few"):
        fit_pairs(HEIGHTS[:4], LENGTHS[:4])
    with pytest.raises(Impossible, match="3 rows are too few"):
        TableMotion(HEIGHTS[:3], LENGTHS[:3], 120.0)
    with pytest.raises(Impossible, match="stands twice"):
        TableMotion(np.array([0.0, 60.0, 60.0, 120.0]), LENGTHS[:4], 120.0)
