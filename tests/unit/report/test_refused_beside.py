"""An entry that is refused beside a part of the report: that part says so, and the rest is told. Each ended in a fault once."""

import pytest

from calc.boundary import to_json
from calc.demo import jobs
from calc.job import load
from calc.report import report_of
from tests.support.documents import changed


@pytest.mark.parametrize(
    ("path", "entry", "end"),
    [
        ("rear.rod_diameter", "9**9", "rear"),
        ("rear.shocks", "seven", "rear"),
        ("oil.density", "heavy", "front"),
        ("front.damper_rod", "0.1 km", "front"),
    ],
)
def test_dampers_are_not_told_of_a_refused_entry(path, entry, end):
    told = report_of(load(changed(jobs()["trail"], {path: entry}), 20))
    part = next(one for one in told.damping if one.axle == end)
    assert part.problem
    assert (part.holds, part.follows, part.moved) == ((), (), None)
    assert to_json(told)


@pytest.mark.parametrize("path", ["front.push_error", "front.push_stroke_error", "front.push_read"])
@pytest.mark.parametrize("bands", [False, True])
def test_a_push_with_a_refused_entry_corrects_nothing_and_says_so(path, bands):
    job = load(changed(jobs()["trail"], {path: "??", "front.cartridge_state": "as built", "front.push_bled": "yes"}), 20)
    assert job.fields[path].problem
    told = report_of(job, bands)
    assert told.fields[path].problem == job.fields[path].problem
    if bands:
        assert "refused" in told.push.verdict
