"""The linkage's closed form against another solver: scipy's, on bar lengths alone, and against the lever law."""

import numpy as np
import pytest
from scipy.optimize import fsolve

from calc.linkage import LinkageMotion
from tests.core.test_linkage import on_swingarm, published


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
