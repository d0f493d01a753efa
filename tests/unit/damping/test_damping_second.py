"""Damping's laws a second time: a library's orifice, a plate solved by scipy, a quarter of a bike let go and watched."""

import math
from itertools import pairwise

import fluids
import numpy as np
import pytest
from scipy.integrate import solve_bvp, solve_ivp
from scipy.signal import find_peaks

from calc.damping.flow import orifice_drop
from calc.damping.shims import POISSON, Group, stiffness
from calc.damping.wheel import critical, follow


@pytest.mark.parametrize("flow", [0.05e6, 0.3e6])
def test_an_orifice_as_the_library_fluids_has_it(flow):
    """The library fluids, by the heads of the mean speed that are lost: one over the contraction squared."""
    area, density = 50.0, 870.0
    speed = flow / 1e9 / (area / 1e6)
    loss = 1.0 / (math.pi / (math.pi + 2.0)) ** 2
    assert orifice_drop(flow, area, density) * 1e6 == pytest.approx(fluids.dP_from_K(loss, rho=density, V=speed), rel=1e-9)


def by_numbers(groups: list[Group], clamp: float) -> float:
    """The same plate as a boundary value problem: deflection, slope, moment along the radius, rigidity in steps."""
    inner, edge = clamp / 2.0, max(group.diameter for group in groups) / 2.0
    steps = sorted({inner, *(group.diameter / 2.0 for group in groups)})
    lengths = list(pairwise(steps))
    rigid = [sum(g.rigidity for g in groups if g.diameter / 2.0 >= b) for _, b in lengths]

    def rates(x, y):
        """Every piece along x from 0 to 1: w, s, M of each; moments in units of the first rigidity."""
        out = np.zeros_like(y)
        for i, ((a, b), d) in enumerate(zip(lengths, rigid, strict=True)):
            w, s, m = y[3 * i : 3 * i + 3]
            del w
            r = a + (b - a) * x
            shear = (edge**2 - r**2) / (2.0 * r)  # of a unit pressure, what is outside of r
            bend = m / d - POISSON * s / r
            around = d * (s / r + POISSON * bend)
            out[3 * i : 3 * i + 3] = (b - a) * np.array([s, bend, (around - m) / r - shear])
        return out

    def ends(at_start, at_end):
        gaps = [at_start[0], at_start[1], at_end[-1]]
        for i in range(len(lengths) - 1):
            gaps += list(at_end[3 * i : 3 * i + 3] - at_start[3 * i + 3 : 3 * i + 6])
        return np.array(gaps)

    x = np.linspace(0.0, 1.0, 60)
    found = solve_bvp(rates, ends, x, np.zeros((3 * len(lengths), len(x))), tol=1e-8, max_nodes=20000)
    assert found.success, found.message
    return 1.0 / abs(found.y[-3, -1])


@pytest.mark.parametrize(
    "groups",
    [
        [Group(1, 24.0, 0.2)],
        [Group(3, 24.0, 0.15), Group(2, 20.0, 0.1)],
        [Group(4, 28.0, 0.15), Group(1, 24.0, 0.1), Group(2, 18.0, 0.2), Group(1, 14.0, 0.3)],
    ],
)
def test_a_plate_of_several_steps_solved_by_scipy(groups):
    assert stiffness(groups, 12.0) == pytest.approx(by_numbers(groups, 12.0), rel=1e-5)


def decrement(rate: float, mass: float, damping: float) -> float:
    """Logarithm of one peak over the next as a quarter of a bike, let go from 50 mm, comes to rest; integrated in time."""
    k = rate * 1000.0
    found = solve_ivp(
        lambda _, y: [y[1], -(k * y[0] + damping * y[1]) / mass], (0.0, 6.0), [0.05, 0.0], rtol=1e-10, atol=1e-13, max_step=2e-3
    )
    peaks = found.y[0][find_peaks(found.y[0])[0]]
    return math.log(0.05 / peaks[0])


@pytest.mark.parametrize("ratio", [0.1, 0.25, 0.4])
def test_scaled_by_the_factor_it_dies_away_alike(ratio):
    """Another spring and another rider: the log decrement is what it was, and what a damping ratio's closed form says."""
    before = (13.5, 80.0, ratio * float(critical(13.5, 80.0)))
    factor = float(follow(16.2, 93.0, 13.5, 80.0))
    closed = 2.0 * math.pi * ratio / math.sqrt(1.0 - ratio**2)
    assert decrement(*before) == pytest.approx(closed, rel=1e-3)
    assert decrement(16.2, 93.0, factor * before[2]) == pytest.approx(decrement(*before), rel=1e-3)
    assert decrement(16.2, 93.0, before[2]) < 0.95 * decrement(*before), "left alone it would swing on"
