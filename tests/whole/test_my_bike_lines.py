"""The customer's path on the command line: the sheet out, the filled-in sheet in, a verdict, a job."""

from __future__ import annotations

import json

from calc.boundary import answer
from calc.job import load
from calc.job.customer import LENGTHS, NOTE
from calc.job.questions import sheet
from tests.whole.test_command_line import run

FILLED = """riding: enduro
weight: 86 kg
hanging: 62,5 cm
alone: 591
alone again: 600 mm
aboard: 496
aboard again: 506
"""


def test_a_filled_in_sheet_gets_a_verdict(capsys, monkeypatch, tmp_path):
    status, out, err = run(capsys, monkeypatch, "--questions")
    assert (status, out.rstrip("\n"), err) == (0, sheet(), "")
    file = tmp_path / "mine.txt"
    file.write_text(FILLED, encoding="utf-8")
    status, out, err = run(capsys, monkeypatch, str(file), "--my-bike")
    assert (status, err) == (0, "")
    assert out.startswith("Your rear spring is too soft for you: at least")
    assert "Do not order a spring yet." in out
    assert "Rider sag, you aboard: 124 mm, read 129 and 119." in out
    assert run(capsys, monkeypatch, "--my-bike", given=FILLED) == (0, out, "")


def test_the_front_is_told_after_the_rear(capsys, monkeypatch):
    front = "front hanging: 700\nfront alone: 662\nfront alone again: 670\nfront aboard: 61,2 cm\nfront aboard again: 622\n"
    status, out, err = run(capsys, monkeypatch, "--my-bike", given=FILLED + front)
    assert (status, err) == (0, "")
    rear, _, fork = out.partition("\n\n\n")
    assert rear.rstrip("\n") == run(capsys, monkeypatch, "--my-bike", given=FILLED)[1].rstrip("\n")
    assert fork.startswith(("Your fork springs ", "From these readings I can't tell yet about your fork springs"))
    assert "Rider sag, you aboard: 83 mm, read 88 and 78." in fork


def test_the_same_as_json_and_as_a_job(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--my-bike", "--json", given=FILLED)
    assert status == 0
    found = json.loads(out)
    assert found["verdict"]["finding"] == "soft"
    status, out, _ = run(capsys, monkeypatch, "--my-bike", "--job", given=FILLED)
    assert status == 0
    job = json.loads(out)
    assert load(job).fields[LENGTHS[0]].note == NOTE
    assert run(capsys, monkeypatch, given=out)[0] == 0, "a tuner sizes it like any job"


def test_what_is_wrong_or_missing_is_said_in_words(capsys, monkeypatch):
    status, out, err = run(capsys, monkeypatch, "--my-bike", given=FILLED.replace("62,5 cm", "62,5"))
    assert (status, out) == (2, "")
    assert "Wheel off the ground: 62.5 mm" in err
    assert "Did you mean 62.5 cm?" in err
    status, out, err = run(capsys, monkeypatch, "--my-bike", given="riding: enduro\nweight: 86\n")
    assert (status, out) == (2, "")
    assert "Still to be said: Wheel off the ground" in err
    status, out, err = run(capsys, monkeypatch, "--my-bike", given="sag 30")
    assert (status, out) == (2, "")
    assert "line 1" in err


def test_the_page_s_door_says_the_same():
    said = {
        "bike.use": "enduro",
        "rider.mass": "86 kg",
        **dict(zip(LENGTHS, ("62,5 cm", "591", "600 mm", "496", "506"), strict=True)),
    }
    reply = json.loads(answer(json.dumps({"kind": "my bike", "said": said})))
    assert reply["kind"] == "my bike"
    assert reply["found"]["verdict"]["claim"] == "too soft"
    assert reply["job"]["rear"]["hanging_length"]["value"] == "62,5 cm"
    for wrong in ({}, {"said": []}, {"said": {"rear.rate": "48"}}):
        assert json.loads(answer(json.dumps({"kind": "my bike"} | wrong)))["kind"] == "failure"
