"""Ten thousand random valid jobs: finite, real, named errors only; the words and the numbers of every verdict agree.

A chunk is fifty bikes, each with two forks and two rears in every combination: a fork that is known already costs nothing,
and every job is a document of its own. One job in forty is asked how sure it is too.
"""

from collections import Counter

import pytest

from calc.job.fields import FIELDS
from calc.report import report
from calc.report.text import report_text
from tests.core.random_jobs import random_job
from tests.core.verdicts_whole import check_report

CHUNKS, BIKES = 50, 50  # 2 500 bikes, four jobs each: 10 000
SURE = 40
ANSWERED, CHOSEN = 0.55, 0.2  # shares of the jobs: no end refused; a spring chosen at both ends
KINDS = ("front.air", "front.cartridge_state", "front.spring_kind", "rear.spring_kind", "rear.motion_from", "rear.linkage")


def jobs_of(chunk: int):
    for bike in range(BIKES):
        for front in "AB":
            for rear in "AB":
                name = f"{chunk}.{bike}"
                yield random_job(name, f"{name} front {front}", f"{name} rear {rear}")


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_random_jobs_are_answered_in_words_that_agree_with_their_numbers(chunk):
    states, kinds = Counter(), Counter()
    for count, document in enumerate(jobs_of(chunk)):
        told = report(document, with_bands=count % SURE == 0)
        try:
            check_report(told)
            assert report_text(told).strip()
        except AssertionError as error:
            raise AssertionError(f"{document['name']}: {error}") from error
        states[tuple(told["ends"][end]["state"] for end in ("front", "rear"))] += 1
        for path in KINDS:
            found = told["fields"][path]
            if found["applies"] and told["ends"][path.split(".")[0]]["state"] != "refused":
                kinds[path, found["value"]] += 1
    total = sum(states.values())
    answered = sum(n for state, n in states.items() if "refused" not in state)
    assert total == 4 * BIKES
    assert answered >= ANSWERED * total, states
    assert states["ok", "ok"] >= CHOSEN * total, states
    missing = [(path, key) for path in KINDS for key in FIELDS[path].choices if not kinds[path, key]]
    assert missing == [], kinds
