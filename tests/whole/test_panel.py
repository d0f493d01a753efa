"""The panel: ordinary jobs, and the springs that a bench would sign for each. Common practice, no source."""

import pytest

from calc.job import load
from calc.job.starter import start
from calc.practice import AXLES
from calc.sizing.choice import size_end
from tests.support.panel import PANEL


def job_of(case):
    document = start(case.use, f"{case.rider} kg")
    for path, value in case.entries.items():
        group, key = path.split(".")
        document.setdefault(group, {})[key] = {"value": value, "origin": "stated"}
    job = load(document)
    assert job.problems == ()
    return job


def test_the_panel_is_as_large_as_it_says():
    assert len(PANEL) >= 40
    assert len({case.name for case in PANEL}) == len(PANEL)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("case", PANEL, ids=lambda case: case.name)
def test_a_bench_would_sign_it(case, axle):
    done = size_end(job_of(case), axle)
    low, high = getattr(case, axle)
    chosen = float(done.sized.setup.rate[done.choice])
    assert low - 1e-6 <= chosen <= high + 1e-6, f"{case.why}: {low}-{high} wanted"
    assert bool(done.decision.criteria_met)
