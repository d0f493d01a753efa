"""The typical values agree with each other: the standard rider on the standard setup, everything assumed, has typical figures.

Common practice, no source. Each figure is asked of a job as the page would start it, not of the script that calibrates.
"""

from functools import lru_cache

import numpy as np
import pytest

from calc.end.figures import evaluate
from calc.job import load
from calc.job.starter import start
from calc.model import conditions, fork, shock, standard_loads
from calc.model.inputs import end_inputs, found_setup
from calc.model.limits import limits
from calc.practice import AXLES, USES, usual
from calc.practice.judged import JUDGED
from calc.practice.rows import ROWS
from calc.sizing.coil import size

HALF_A_STEP = {"rider sag": 0.25, "free sag": 0.25, "ride frequency": 0.025, "end multiple": 0.05}
AGAIN = "moved by a change of the model? Run `python -m calc.practice.calibrate --write`"
ENDS = [(use, axle) for use in USES for axle in AXLES]


@lru_cache(maxsize=len(USES))
def standard_job(use):
    return load(start(use, f"{usual('standard rider', use).typical:g} kg"))


def worked_out(use, axle):
    job = standard_job(use)
    at = conditions(job)
    assembly = fork(job, at) if axle == "front" else shock(job, at)
    done = evaluate(assembly, found_setup(job, axle, assembly), standard_loads(job, axle), at.exponent)
    travel = job.number(f"{axle}.travel")
    rider, free = (float(sag.stroke if axle == "front" else sag.travel) for sag in (done.rider, done.free))
    return {
        "rider sag": 100 * rider / travel, "free sag": 100 * free / travel,
        "ride frequency": float(done.frequency), "end multiple": float(done.end_multiple),
    }  # fmt: skip


@pytest.mark.parametrize(("use", "axle"), ENDS)
def test_the_standard_rider_has_typical_figures_inside_their_ranges(use, axle):
    travel = standard_job(use).number(f"{axle}.travel")
    for row, figure in worked_out(use, axle).items():
        found = usual(f"{row} {axle}", use)
        whole = 50.0 / travel if row == "rider sag" else 0.0  # a job wants it to the whole millimetre
        assert figure == pytest.approx(found.typical, abs=max(HALF_A_STEP[row], whole) + 1e-6), f"{row}: {AGAIN}"
        assert found.low <= figure <= found.high, row


@pytest.mark.parametrize(("use", "axle"), ENDS)
def test_the_fitted_spring_wants_what_is_in(use, axle):
    """Preload and gap come out as they are, no oil to add, no spacer to cut, the sags typical."""
    job = standard_job(use)
    here = end_inputs(job, axle)
    setup = found_setup(job, axle, here.assembly)
    sized = size(here.assembly, np.array([setup.rate]), here.loads, here.exponent, here.targets, limits(job, axle))
    assert float(sized.setup.preload[0]) == pytest.approx(setup.preload, abs=1.0), AGAIN
    assert float(sized.setup.gap[0]) == setup.gap, AGAIN
    rider = sized.figures.rider
    wanted = job.number(f"{axle}.target_sag")
    assert float((rider.stroke if axle == "front" else rider.travel)[0]) == pytest.approx(
        wanted, abs=0.8
    )  # half a millimetre at the collar


def test_only_typical_values_moved_and_none_to_the_edge_of_its_range():
    for name, row in JUDGED.items():
        assert (ROWS[name].unit, ROWS[name].confidence) == (row.unit, row.confidence)
        for was, now in zip(row.by_use, ROWS[name].by_use, strict=True):
            assert (was is None) == (now is None)
            if was and now and now != was:
                low, high, typical = now
                assert (low, high) == was[:2]
                edge = 0.03 * (high - low)  # 0.1 before rounding
                assert low + edge <= typical <= high - edge, name


def test_springs_are_ones_that_are_sold_and_two_up_is_the_adventure_bike_loaded():
    for use in USES:
        for spring in ("fork", "shock"):
            rate, step = usual(f"{spring} rate", use).typical, usual(f"{spring} step", use)
            assert any(rate / one == pytest.approx(round(rate / one)) for one in (step.low, step.high)), (use, spring)
    for row in (
        "bike mass",
        "bike front share",
        "travel front",
        "travel rear",
        "leverage",
        "unsprung rear",
        "rider front share sitting",
    ):
        assert usual(row, "two-up") == usual(row, "adventure")
