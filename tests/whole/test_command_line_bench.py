"""The work at the bench from the command line: filling, checks made, the message to the customer."""

import json

from calc.job.work import CHECKS, ticks
from tests.support.documents import demo
from tests.support.plain import report
from tests.whole.test_command_line import run

READ = {
    "front.filling_gap_left": "123 mm",
    "front.filling_gap_right": "119 mm",
    "service.now_hours": "42 h",
    "service.fork_last_hours": "12 h",
}


def test_assembling_is_one_word_away(capsys, monkeypatch):
    job = demo(READ)
    status, out, err = run(capsys, monkeypatch, "--assemble", given=json.dumps(job))
    assert (status, err) == (0, "")
    told, words = report(job), " ".join(out.split())
    assert all(said in words for said in told["filling"]["words"])
    assert told["ends"]["front"]["gap_step"]["words"] in words
    assert all(one["words"] in words for one in told["service"]["ends"])
    assert "On reassembly: 0 of 9 made" in words
    for key in CHECKS:
        assert f"[ ] {key}" in words


def test_the_whole_report_tells_it_too_and_the_letter_what_is_overdue(capsys, monkeypatch):
    _, out, _ = run(capsys, monkeypatch, "--full", given=json.dumps(demo(READ)))
    assert "Left: 123 read, 120 wanted: add 5 ml" in " ".join(out.split())
    assert "next service due at 52 h" in " ".join(out.split())
    _, out, _ = run(capsys, monkeypatch, given=json.dumps(demo(READ)))
    assert "Due" not in out
    _, out, _ = run(capsys, monkeypatch, given=json.dumps(demo(READ | {"service.now_hours": "60 h"})))
    assert "Due Fork: service was due at 52 h and is 8 h overdue." in " ".join(out.split())


def test_checks_are_made_by_name_and_date(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--tick", "caps,gap", "2026-11-29", given=json.dumps(demo()))
    assert status == 0
    made = json.loads(out)
    assert ticks(made) == {"caps": "2026-11-29", "gap": "2026-11-29"}
    _, out, _ = run(capsys, monkeypatch, "--assemble", given=json.dumps(made))
    assert "On reassembly: 2 of 9 made" in out
    assert next(line for line in out.split("\n") if "[x] caps" in line).split() == [
        "[x]",
        "caps",
        "Caps",
        "to",
        "the",
        "maker's",
        "torque,",
        "2026-11-29",
    ]


def test_a_check_or_a_date_that_cannot_be_is_refused(capsys, monkeypatch):
    for given, words in (
        (("cap", "2026-11-29"), "Did you mean work.ticks.caps?"),
        (("caps", "soon"), "written 2026-11-29"),
        (("", "2026-11-29"), "no check of a job"),
    ):
        status, out, err = run(capsys, monkeypatch, "--tick", *given, given=json.dumps(demo()))
        assert (status, out) == (2, "")
        assert words in err


def test_the_message_alone(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--message", given=json.dumps(demo()))
    assert status == 0
    assert out.strip().split("\n\n") == report(demo())["message"]
