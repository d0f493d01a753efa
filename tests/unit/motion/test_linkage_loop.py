"""The linkage's closed form against another solver: scipy's, on bar lengths alone, and against the lever law."""

import numpy as np
import pytest
from scipy.interpolate import CubicSpline
from scipy.optimize import fsolve
from scipy.stats import t

from calc.motion.linkage import LinkageMotion
from calc.motion.measured import TableMotion, fit_pairs
from calc.quantities.few import widening
from tests.unit.motion.test_linkage import on_swingarm, published


def closed_by_scipy(motion: LinkageMotion, travel: np.ndarray) -> np.ndarray:
    """Shock length at each travel: axle height and every bar's length written as equations, solved together."""
    r = motion.rocker
    carried = [motion.axle, r.pivot if r.on_swingarm else r.rod_other]
    still = r.rod_other if r.on_swingarm else r.pivot
    names = ("axle", "carried", "rod", "shock")
    start = dict(zip(names, (*carried, r.rod_rocker, r.shock_rocker), strict=True))

    def bars(p: dict) -> list:
        pivot, other = (p["carried"], still) if r.on_swingarm else (still, p["carried"])
        return [
            p["axle"],
            p["carried"],
            p["axle"] - p["carried"],
            p["rod"] - pivot,
            p["shock"] - pivot,
            p["rod"] - p["shock"],
            p["rod"] - other,
        ]

    lengths = np.array([abs(b) for b in bars(start)])
    found, guess = [], np.array([v for p in start.values() for v in (float(p.real), float(p.imag))])
    steps = np.linspace(float(motion.measured_at), 0.0, 50)[:-1].tolist() + np.asarray(travel).tolist()
    for z in steps:
        height = float(motion.axle.imag) + z - float(motion.measured_at)

        def off(v: np.ndarray, height: float = height) -> np.ndarray:
            p = {name: complex(v[2 * i], v[2 * i + 1]) for i, name in enumerate(names)}
            return np.append(np.array([abs(b) for b in bars(p)]) - lengths, p["axle"].imag - height)

        guess, _, good, message = fsolve(off, guess, xtol=1e-13, full_output=True)
        assert good == 1 or np.max(abs(off(guess))) < 1e-8, message
        found.append(abs(complex(guess[6], guess[7]) - complex(motion.shock_top)))
    return np.array(found[-len(travel) :])


@pytest.mark.parametrize("motion", [published(), on_swingarm()], ids=["rocker on the frame", "rocker on the swingarm"])
def test_loop_closure(motion):
    travel = np.linspace(0.0, float(motion.full_travel), 60)
    assert motion.length(travel) == pytest.approx(closed_by_scipy(motion, travel), abs=1e-6)


@pytest.mark.parametrize("motion", [published(), on_swingarm()], ids=["rocker on the frame", "rocker on the swingarm"])
def test_q_by_forces_on_the_bars(motion):
    """Statics: moments about the rocker's pivot, then about the swingarm's, give the same wheel force as virtual work."""
    for z in (0.0, 0.4 * float(motion.full_travel), float(motion.full_travel)):
        at = {name: complex(float(x), float(y)) for name, (x, y) in motion.points(z).items()}
        pivot, swung = at["rocker pivot"], motion.rocker.on_swingarm

        def moment(force: complex, about: complex, where: complex) -> float:
            return ((where - about).conjugate() * force).imag

        push = at["shock on rocker"] - at["shock top"]
        shock = push / abs(push)  # 1 N on the rocker, away from the frame
        along = at["rod's other end"] - at["rod on rocker"]
        rod = along / abs(along)
        pull = -moment(shock, pivot, at["shock on rocker"]) / moment(rod, pivot, at["rod on rocker"])
        if swung:  # shock and rod both load the swingarm through the rocker
            turning = moment(shock, 0j, at["shock on rocker"]) + moment(pull * rod, 0j, at["rod on rocker"])
        else:  # the rod pulls the swingarm the other way
            turning = moment(-pull * rod, 0j, at["rod's other end"])
        wheel = -turning / at["axle"].real
        assert wheel == pytest.approx(float(motion.ratio(z)), rel=1e-9)


def test_the_spline_is_scipys():
    knots = np.array([0.0, 35.0, 90.0, 140.0, 215.0, 300.0])
    lengths = on_swingarm().length(knots)
    ours, theirs, z = TableMotion(knots, lengths, 300.0), CubicSpline(knots, lengths, bc_type="not-a-knot"), np.linspace(0, 300, 97)
    assert ours.stroke(z) == pytest.approx(lengths[0] - theirs(z), abs=1e-9)
    assert ours.ratio(z) == pytest.approx(-theirs(z, 1), rel=1e-10)
    assert ours.slope(z) == pytest.approx(-theirs(z, 2), abs=1e-12)


def test_the_fit_is_numpys_and_the_widening_students():
    z, y = np.array([0.0, 40.0, 95.0, 150.0, 210.0, 260.0, 300.0]), np.array([470.2, 454.1, 431.0, 408.8, 381.9, 358.9, 338.1])
    (bend, slope, _), covariance = np.polyfit(z, y, 2, cov=True)
    fit = fit_pairs(z, y)
    assert (fit.start, fit.bend) == pytest.approx((-slope, -2 * bend), rel=1e-9)
    unit = fit.root[:2, :2] / widening(4)
    assert unit @ unit.T == pytest.approx(
        np.array([[covariance[1, 1], 2 * covariance[0, 1]], [2 * covariance[0, 1], 4 * covariance[0, 0]]]), rel=1e-6
    )
    for freedom in range(1, 41):
        assert widening(freedom) == pytest.approx(t.ppf(0.975, freedom) / 2, abs=0.006)
