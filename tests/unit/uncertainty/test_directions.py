"""Which way a bench would go: against the bench's panel, against counting by hand, and by what must not matter."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from calc.job import load
from calc.job.customer import LENGTHS, job_of
from calc.model.draws import drawn, own_reading
from calc.model.inputs import end_inputs
from calc.model.limits import AS_SOLD
from calc.sizing.choice import size_end
from calc.uncertainty import directions as module
from calc.uncertainty.corrected import sags_found
from calc.uncertainty.directions import directions, way
from tests.support.documents import demo
from tests.support.panel import PANEL

SURE = [case for case in PANEL if "rear.rate" in case.entries and case.entries.get("rear.buy", "series") == "series"]


def _job(case):
    document = {"format": "stanchion-job", "version": 2, "bike": {"use": case.use}, "rider": {"mass": case.rider}}
    for path, value in case.entries.items():
        group, key = path.split(".")
        document.setdefault(group, {})[key] = value
    return load(document)


@pytest.mark.parametrize(
    "case", [case for case in SURE if not any("target" in path for path in case.entries)], ids=lambda case: case.name
)
def test_one_way_goes_as_a_bench_would(case):
    """`tests/support/panel.py`: what a bench would sign tells the direction."""
    job = _job(case)
    went, free = way(end_inputs(job, "rear"), size_end(job, "rear"), job.number("rear.step"))
    own, (low, high) = job.number("rear.rate"), case.rear
    may = {0} if low <= own <= high else set()
    may |= {1} if high > own else set()
    may |= {-1} if low < own else set()
    assert int(went[0]) in may
    assert free[0] >= 0


def _sagged(lengths=("625", "588", "596", "517", "527"), spring="as sold", rider="86"):
    job = load(
        job_of({"bike.use": "enduro", "rider.mass": rider, AS_SOLD["rear"]: spring, **dict(zip(LENGTHS, lengths, strict=True))})
    )
    return sags_found(job).correct(job)


def test_chances_are_the_draws_counted_and_weighed_by_hand():
    job = _sagged()
    found, done = directions(job, "rear"), size_end(job, "rear")
    draws = drawn(job)
    here = end_inputs(draws, "rear")
    went, _ = way(here, done, job.number("rear.step"))
    low, high = here.targets.windows.frequency
    weights = []
    for ride in np.ravel(here.standard.frequency):
        off = 0.0 if low <= ride <= high else min(abs(np.log(ride / low)), abs(np.log(ride / high)))
        weights.append(np.exp(-0.5 * (off / module.SOLD_OFF) ** 2))
    for chance, which in ((found.softer, -1), (found.keep, 0), (found.stiffer, 1)):
        by_hand = sum(w for w, one in zip(weights, went, strict=True) if one == which) / sum(weights)
        assert chance == pytest.approx(by_hand, abs=1e-12)


def test_not_known_lies_between_as_sold_and_changed():
    job = _sagged(spring="changed")
    path = AS_SOLD["rear"]
    ways = {
        said: directions(replace(job, fields={**job.fields, path: replace(job.fields[path], choice=said)}), "rear")
        for said in ("as sold", "changed", "unknown")
    }
    for name in ("softer", "keep", "stiffer"):
        ends = sorted(getattr(ways[said], name) for said in ("as sold", "changed"))
        assert ends[0] - 1e-9 <= getattr(ways["unknown"], name) <= ends[1] + 1e-9


def test_free_sag_once_set_is_what_geometry_has():
    """Preload raises free and rider sag nearly alike: found 124 and 30, at 104 about 10 are left, less what the leverage falls by."""
    low, middle, high = directions(_sagged(("625", "591", "600", "496", "506")), "rear").free
    assert low < middle < high
    assert middle == pytest.approx(30.0 - 20.0, abs=4.0)


def test_what_was_changed_does_not_follow_what_is_in():
    """A spring that was changed says nothing of the one that the bike was sold with: their draws are apart."""
    changed = load(demo({"standard.shock_spring": "changed", "standard.shock_rate": None, "rear.rate": None}))
    samples = drawn(changed, 2000).samples
    assert own_reading(changed, "standard.shock_rate")[1] is None
    assert abs(np.corrcoef(samples["rear.rate"], samples["standard.shock_rate"])[0, 1]) < 0.1
    still = load(demo({"standard.shock_spring": "unknown", "standard.shock_rate": None, "rear.rate": None}))
    assert own_reading(still, "standard.shock_rate")[1] == "rear.rate"
