"""Twenty thousand job files spoilt on purpose: each is answered, or refused by name; no number in an answer is not one.

STANCHION_MORE=10 takes ten times as many. Numpy's warnings are errors here, so an invalid operation is one too. What a job may
take is 3 s; the test stops only what hangs, since a busy machine is no fault of the core.
"""

import json
import re
from time import process_time

import pytest

from calc.boundary import answer
from calc.job import JobError, load
from calc.job.fields import FIELDS
from calc.report import report_of
from calc.report.text import report_text
from tests.support.how_many import TIMES
from tests.support.plain import read
from tests.support.spoilt_jobs import spoilt
from tests.support.verdicts import NEVER

CHUNKS, BASES, EACH = 40, 20, 25
SURE = 2  # of so many bases one job is asked how sure it is, through the page's door
HANGS = 30.0  # s of this process


def check_problem(problem: dict) -> None:
    """A refusal has a code and words, and names the field or the number that it is about."""
    assert problem["code"]
    assert problem["message"].endswith((".", "?")), problem
    assert problem["path"] in FIELDS or re.search(r"\d", problem["message"]), problem


def check_told(told: dict) -> None:
    for path, found in told["fields"].items():
        if found.get("problem"):
            assert found["problem"]["path"] == path
            check_problem(found["problem"])
    for problem in told["range_problems"]:
        assert problem["path"].startswith("practice.")
        assert problem["limit"].startswith("From ")
    for end in told["ends"].values():
        assert end["state"] in ("ok", "none", "refused")
        assert bool(end["problems"]) == (end["state"] != "ok")
        for problem in end["problems"]:
            check_problem(problem)
        if end["state"] == "ok":
            assert not NEVER.search(" ".join((end["answer"], *end["why"]))), end["answer"]
    assert not any(NEVER.search(note) for note in told["notes"]), told["notes"]


@pytest.mark.timeout(1200)
@pytest.mark.parametrize("chunk", range(CHUNKS * TIMES))
def test_a_spoilt_job_is_answered_or_refused_by_name(chunk):
    slowest, answered = 0.0, 0
    for name in (f"{chunk}.{base}" for base in range(BASES)):
        for number in range(EACH):
            document, started = spoilt(name, number), process_time()
            try:
                told = report_of(load(document), with_bands=False)
            except JobError as error:
                assert len(str(error)) > 10
                continue
            except Exception as error:
                raise AssertionError(f"spoilt({name!r}, {number}) ended unnamed") from error
            slowest = max(slowest, process_time() - started)
            plain = read(told)  # by way of JSON, which refuses what is no number
            check_told(plain)
            answered += any(end["state"] == "ok" for end in plain["ends"].values())
            if number % 5 == 0:
                assert report_text(told).strip()
    assert slowest < HANGS
    assert answered > BASES * EACH / 4, "spoilt so much that nothing is tested"
    print(f"slowest {slowest:.3f} s of this process")


@pytest.mark.timeout(1200)
@pytest.mark.parametrize("chunk", range(CHUNKS * TIMES))
def test_how_sure_a_spoilt_job_is_comes_back_through_the_door(chunk):
    slowest = 0.0
    for name in (f"{chunk}.{base}" for base in range(0, BASES, SURE)):
        request, started = json.dumps({"kind": "size", "draws": 40, "job": spoilt(name, 0)}), process_time()
        reply = json.loads(answer(request))
        slowest = max(slowest, process_time() - started)
        if reply["kind"] == "failure":
            assert "core failed" not in reply["message"], (name, reply["message"])
        else:
            check_told(reply["report"])
    assert slowest < HANGS
    print(f"slowest {slowest:.3f} s of this process")
