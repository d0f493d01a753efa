"""The script that calibrates gives what is stored, and the least moves are the least: scipy's SLSQP finds the same."""

from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import minimize

from calc.practice.calibrate.__main__ import moves, problems, written
from calc.practice.calibrate.least_moves import Problem
from calc.practice.calibrate.rows import OUTPUTS, beside, half_range, inside, judged, moved, rounded
from calc.practice.calibrated import TYPICAL
from calc.practice.uses import USES


def stored(uses):
    return {(row, use): value for use in uses for row, value in TYPICAL[use].items()}


def test_it_gives_what_is_stored(request):
    uses = list(USES) if request.config.getoption("--calibrate") else ["enduro"]
    for together in problems(uses):
        assert Problem(together).typical() == stored(together), "run `python -m calc.practice.calibrate --write`"


def test_the_least_moves_are_those_of_another_method():
    """SLSQP minimises the same moves with the ranges as constraints; nothing rounded."""
    problem = Problem(("enduro",))
    begin = {key: judged(key)[2] for key in problem.keys}
    found, cost = problem.solve({}, {}, begin)
    free = [key for key in problem.keys if half_range(key) > 0]
    half = np.array([half_range(key) for key in free])

    def sum_of_moves(x):
        values = begin | dict(zip(free, x * half, strict=True))
        arrays = {key: np.array(value) for key, value in values.items()}
        outputs = problem.model(arrays)
        return float(sum(moved(key, value) ** 2 for key, value in (arrays | outputs).items()))

    first = np.array([begin[key] for key in free]) / half
    bounds = [tuple(edge / half_range(key) for edge in inside(key)) for key in free]
    other = minimize(sum_of_moves, first, method="SLSQP", bounds=bounds, options={"maxiter": 60, "ftol": 1e-9})
    assert other.fun == pytest.approx(cost, rel=1e-3)
    assert [found[key] for key in free] == pytest.approx(list(other.x * half), rel=0.01)


def test_a_move_counts_in_half_ranges_by_confidence_and_stops_short_of_the_edge():
    key = ("gap", "enduro")  # 100-140, judged 120, M
    assert moved(key, np.array(130.0)) == pytest.approx(2.0 * 0.5)
    assert inside(key) == (104.0, 136.0)
    assert beside(key, 121.7) == [120.0, 125.0]
    assert beside(key, 135.9) == [135.0]
    assert rounded(("fork rate", "enduro"), 4.27) == 4.2
    assert rounded(("shock rate", "road"), 88.0) == 90.0


def test_what_is_written_reads_back_and_what_moved_is_told():
    space = {}
    exec(written(TYPICAL), space)
    assert space["TYPICAL"] == TYPICAL
    assert set(OUTPUTS) == {"rider sag", "free sag", "ride frequency", "end multiple"}
    lines = moves({("gap", "enduro"): 130.0, ("rake", "enduro"): 26.5})
    assert lines[2:] == ["| gap (M) | 130 (+0.5) |"]


def test_the_guide_lists_the_moves():
    guide = (Path(__file__).parents[3] / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert "\n".join(moves(stored(USES))) in guide, "copy the table that `python -m calc.practice.calibrate` prints"
