"""The ticks of a job: kept by key, dated, refused by name where they are spoilt, gone at the next visit."""

import pytest

from calc.job import JobError, load, parse_header
from calc.job.document import upgraded
from calc.job.visit import next_visit
from calc.job.work import CHECKS, FIRST_RIDE, REASSEMBLY, ticked, ticks, work_problem
from calc.report import report
from tests.support.documents import demo


def with_work(work):
    return demo() | {"work": work}


def test_keys_stay_what_files_have():
    # What a file once held must be read for ever: a key that goes missing here loses a tick there.
    assert list(REASSEMBLY) == ["locknuts", "springs", "gap", "caps", "clamps", "bled", "pumped", "clickers", "o-ring"]
    assert list(FIRST_RIDE) == ["easy", "looked over", "o-ring read", "sag again", "one change"]
    assert len(CHECKS) == len(REASSEMBLY) + len(FIRST_RIDE)


@pytest.mark.parametrize(
    ("work", "named"),
    [
        ([], "work must be an object of ticks, note"),
        ({"tick": {}}, "work.tick is no key of a job. Did you mean work.ticks?"),
        ({"ticks": ["caps"]}, "work.ticks must be an object"),
        ({"ticks": {"cap": "2026-11-29"}}, "Did you mean work.ticks.caps?"),
        ({"ticks": {"caps": True}}, "work.ticks.caps must be the date it was made"),
        ({"ticks": {"caps": None}}, "work.ticks.caps must be the date"),
        ({"ticks": {"caps": "29/11/2026"}}, "work.ticks.caps must be the date"),
        ({"ticks": {"caps": "2026-02-30"}}, "work.ticks.caps must be the date"),
        ({"ticks": {"caps": "20261129"}}, "work.ticks.caps must be the date"),
        ({"ticks": {"x" * 5000: "2026-11-29"}}, "is no check of a job"),
        ({"note": 7}, "work.note must be text"),
    ],
)
def test_spoilt_work_is_refused_by_name(work, named):
    with pytest.raises(JobError, match=named.replace(".", r"\.").replace("?", r"\?")) as error:
        parse_header(with_work(work))
    assert len(str(error.value)) < 300


def test_ticks_are_kept_and_reported():
    job = with_work({"ticks": {"caps": "2026-11-29", "easy": "2026-12-01"}, "note": "by R."})
    assert ticks(upgraded(job)) == load(job).ticks == {"caps": "2026-11-29", "easy": "2026-12-01"}
    found = report(job, with_bands=False)
    made = {one.key: one.made for one in (*found.reassembly, *found.first_ride) if one.made}
    assert made == {"caps": "2026-11-29", "easy": "2026-12-01"}
    assert [one.words for one in found.reassembly] == list(REASSEMBLY.values())


def test_no_answer_rests_on_a_tick():
    bare, done = (report(job, with_bands=False) for job in (demo(), with_work({"ticks": dict.fromkeys(CHECKS, "2026-11-29")})))
    assert bare.ends == done.ends


def test_the_next_visit_starts_with_none():
    made = next_visit(with_work({"ticks": {"caps": "2026-11-29"}, "note": "torque wrench 2"}), "2027-03-01")
    assert made["work"] == {"note": "torque wrench 2"}
    assert "work" not in next_visit(demo(), "2027-03-01")


def test_the_meter_is_read_anew_and_the_last_service_stays():
    job = demo() | {"service": {"now_hours": "42 h", "fork_last_hours": "42 h", "fork_every_hours": "30 h"}}
    assert next_visit(job, "2027-03-01")["service"] == {"fork_last_hours": "42 h", "fork_every_hours": "30 h"}


def test_a_gap_read_while_filling_does_not_outlive_the_visit():
    assert "filling_gap_left" not in next_visit(demo({"front.filling_gap_left": "123 mm"}), "2027-03-01")["front"]


def test_ticking_adds_to_what_is_ticked():
    once = ticked(demo(), ["caps"], "2026-11-29")
    assert ticks(ticked(once, ["gap"], "2026-11-30")) == {"caps": "2026-11-29", "gap": "2026-11-30"}
    with pytest.raises(ValueError, match=r"work\.ticks\.cap is no check"):
        ticked(demo(), ["cap"], "2026-11-29")
    assert work_problem(ticked(demo(), list(CHECKS), "2026-11-29")["work"]) == ""
