"""A few of the random jobs, with bands, on every machine that the core runs on; test_random_jobs.py has ten thousand on the desk."""

import pytest

from calc.job import load
from calc.report import ENDS, report_of
from calc.report.text import report_text
from tests.support.plain import read
from tests.support.random_jobs import random_job
from tests.support.verdicts_ahead import check_ahead, check_span
from tests.support.verdicts_whole import check_report

GROUPS, BIKES = 4, 15


def jobs(group: int, **how):
    for bike in range(group * BIKES, (group + 1) * BIKES):
        yield load(random_job(f"few {bike}", f"few {bike} front", f"few {bike} rear"), **how)


@pytest.mark.parametrize("group", range(GROUPS))
def test_words_agree_with_numbers_and_bands(group):
    for job in jobs(group, draws=60):
        typed = report_of(job)
        told = read(typed)
        check_report(told)
        check_ahead(job, told)
        check_span(job, told)
        assert report_text(typed).strip()


def test_many_are_answered():
    states = [
        read(report_of(job, with_bands=False))["ends"][end]["state"]
        for group in range(GROUPS)
        for job in jobs(group)
        for end in ENDS
    ]
    assert states.count("ok") >= len(states) / 3
