"""Ten golden jobs: the shipped archives in the browser answer as the desk's core does, figures and bands, to 1e-9."""

from __future__ import annotations

import json

import pytest

from calc.boundary import answer
from tests.support.golden.jobs import golden_jobs, worst_difference

JOBS = golden_jobs()


@pytest.fixture(scope="module")
def answers():
    """What the browser said, once for all jobs."""
    return {}


@pytest.mark.parametrize("name", JOBS)
def test_the_browser_answers_as_the_desk_does(page, serve, dist, ask_core, answers, name):
    request = {"kind": "size", "job": JOBS[name]}
    if not answers:
        page.goto(serve(dist).url)
        answers |= dict(zip(JOBS, ask_core(page, *({"kind": "size", "job": job} for job in JOBS.values())), strict=True))
    desk = json.loads(answer(json.dumps(request)))
    assert desk["kind"] == "report"
    assert worst_difference(answers[name], desk) < 1e-9
