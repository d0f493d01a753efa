"""Ten thousand random valid jobs: finite, real, named errors only; the words and the numbers of every verdict agree.

A chunk is 17 bikes, each with four forks and four rears in every combination: an end that was worked out already costs
nothing, and every job is a document of its own. One job in forty is asked how sure it is too; every end, what
riders from light to heavy would choose.
"""

from collections import Counter
from collections.abc import Iterator

import pytest

from calc.job import load
from calc.practice import Axle
from calc.report import report_of
from calc.report.text import report_text
from tests.support.heavier import check_heavier
from tests.support.plain import applies, read
from tests.support.random_jobs import FIELDS, random_job
from tests.support.verdicts_ahead import check_ahead, check_span
from tests.support.verdicts_whole import check_report

CHUNKS, BIKES, VARIANTS = 37, 17, "ABCD"  # 10 064 jobs
SURE = 40
ANSWERED, CHOSEN = 0.5, 0.1  # shares of a chunk at least: no end refused; a spring chosen at both ends
KINDS = ("front.air", "front.spring_kind", "rear.spring_kind", "rear.motion_from")


def jobs_of(chunk: int):
    for bike in range(BIKES):
        for front in VARIANTS:
            for rear in VARIANTS:
                name = f"{chunk}.{bike}"
                yield random_job(name, f"{name} front {front}", f"{name} rear {rear}")


def _new_ends(count: int) -> Iterator[Axle]:
    """The ends of a job that no job before it had."""
    front, rear = divmod(count % len(VARIANTS) ** 2, len(VARIANTS))
    if rear == 0:
        yield "front"
    if front == 0:
        yield "rear"


def test_there_are_ten_thousand():
    assert CHUNKS * BIKES * len(VARIANTS) ** 2 >= 10_000
    names = [document["name"] for chunk in (0, 1) for document in jobs_of(chunk)]
    assert len(set(names)) == len(names)
    assert next(jobs_of(0)) == next(jobs_of(0)), "the same on every machine"


@pytest.mark.timeout(600)
@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_random_jobs_are_answered_in_words_that_agree_with_their_numbers(chunk):
    states, kinds, riders = Counter(), Counter(), 0
    for count, document in enumerate(jobs_of(chunk)):
        job = load(document)
        typed = report_of(job, with_bands=count % SURE == 0)
        told = read(typed)
        try:
            check_report(told)
            check_ahead(job, told)
            check_span(job, told)
            riders += sum(check_heavier(job, axle) for axle in _new_ends(count))
            assert report_text(typed).strip()
        except AssertionError as error:
            raise AssertionError(f"{document['name']}: {error}") from error
        states[tuple(told["ends"][end]["state"] for end in ("front", "rear"))] += 1
        kinds.update(
            (path, told["fields"][path]["value"]) for path in KINDS
            if told["ends"][path.split(".")[0]]["state"] != "refused" and applies(told, path)
        )  # fmt: skip
    total = sum(states.values())
    answered = sum(n for state, n in states.items() if "refused" not in state)
    assert answered >= ANSWERED * total, states
    assert states["ok", "ok"] >= CHOSEN * total, states
    assert riders > 20 * BIKES, "heavier riders are compared"
    missing = [(path, key) for path in KINDS for key in FIELDS[path].choices if not kinds[path, key]]
    assert missing == [], "every kind is answered in every chunk"


def test_every_choice_of_every_field_is_among_them():
    """Also those that only one kind of fork or linkage has: the states of a cartridge, a rocker on the frame."""
    seen = set()
    for chunk in range(20):
        for bike in range(BIKES):
            for which in VARIANTS:
                name = f"{chunk}.{bike}"
                job = load(random_job(name, f"{name} front {which}", f"{name} rear {which}"))
                seen |= {(path, found.choice) for path, found in job.fields.items() if found.applies and found.choice}
    assert {(path, key) for path, field in FIELDS.items() for key in field.choices if key != "tester"} - seen == set()
