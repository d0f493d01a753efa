"""What is shown first after an edit is what the report then says."""

from __future__ import annotations

import json

import pytest

from calc.boundary import answer
from calc.job import load
from calc.report import ENDS
from tests.support.documents import demo
from tests.support.golden.jobs import golden_jobs
from tests.support.plain import figures, report, report_of
from tests.support.verdicts_ahead import check_ahead

NONE_FITS = {"front.solid_length": "200 mm"}
REFUSED = {"front.rate": "4,4,4"}


@pytest.mark.parametrize("name", golden_jobs())
def test_figures_are_those_of_the_report(name):
    job = load(golden_jobs()[name])
    check_ahead(job, report_of(job, with_bands=False))


@pytest.mark.parametrize(("changes", "state"), [({}, "ok"), (NONE_FITS, "none"), (REFUSED, "refused")])
def test_there_are_none_where_none_is_chosen(changes, state):
    job = load(demo(changes))
    told = report_of(job, with_bands=False)
    assert told["ends"]["front"]["state"] == state
    check_ahead(job, told)


def test_the_page_asks_for_them_ahead():
    job = demo()
    told = {end: json.loads(answer(json.dumps({"kind": "figures", "job": job, "end": end}))) for end in ENDS}
    assert told == {end: {"kind": "figures", "figures": figures(load(job), end)} for end in ENDS}
    whole = json.loads(answer(json.dumps({"kind": "size", "job": job, "bands": False})))
    assert whole["report"] == json.loads(json.dumps(report(job, with_bands=False)))


@pytest.mark.parametrize("end", ["7", '["front"]', '"middle"', "null"])
def test_another_end_is_refused_by_name(end):
    told = json.loads(answer('{"kind": "figures", "job": {}, "end": ' + end + "}"))
    assert told == {"kind": "failure", "message": "end: name the front or the rear."}
