"""The command line: sizes a file or standard input, prints text or JSON, refuses in words."""

import io
import json

import pytest

from calc.__main__ import main
from tests.core.documents import demo
from tests.core.plain import report


def run(capsys, monkeypatch, *arguments: str, given: str = "") -> tuple[int, str, str]:
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(given.encode()), encoding="utf-8"))
    status = main(list(arguments))
    out, err = capsys.readouterr()
    return status, out, err


def test_a_job_file_as_readable_text(capsys, monkeypatch, tmp_path):
    file = tmp_path / "job.json"
    file.write_text(json.dumps(demo()), encoding="utf-8")
    status, out, err = run(capsys, monkeypatch, str(file))
    assert (status, err) == (0, "")
    assert report(demo())["ends"]["front"]["answer"] in out.replace("\n  ", " ")
    assert "nan" not in out


def test_standard_input_as_json_is_the_report(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--json", given=json.dumps(demo()))
    assert status == 0
    assert json.loads(out) == json.loads(json.dumps(report(demo())))


def test_a_starter_job_with_notes_can_be_sized(capsys, monkeypatch):
    status, job, _ = run(capsys, monkeypatch, "--starter", "enduro", "104 kg")
    assert status == 0
    assert json.loads(job)["front"]["gap_left"]["note"]
    assert run(capsys, monkeypatch, given=job)[0] == 0


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("", "is not JSON"), ("{", "is not JSON"), ("[" * 100_000, "so it is no job"), ('{"a": NaN}', "NaN is not a number"), ("9" * 5000, "JSON"),
        ("{}", 'format must be "stanchion-job"'), (json.dumps(demo() | {"forks": {}}), "forks is not a key"),
        (json.dumps(demo({"front.travel": "3000 mm"})), "front.travel: Fork travel: 3000 mm is above the limit of 400 mm"),
        (json.dumps(demo({"front.gap_left": "1,250"})), "Did you mean 1250 or 1.250?"),
    ],
)  # fmt: skip
def test_bad_input_exits_with_2_and_says_what_is_wrong(capsys, monkeypatch, given, words):
    status, out, err = run(capsys, monkeypatch, "--json", given=given)
    assert status == 2
    assert words in err
    assert "Traceback" not in out + err


def test_a_file_that_is_not_there_is_named(capsys, monkeypatch):
    status, _, err = run(capsys, monkeypatch, "no-such-job.json")
    assert status == 2
    assert "no-such-job.json" in err


def test_an_end_without_an_answer_exits_with_1(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, given=json.dumps(demo({"front.target_sag": "20 mm"})))
    assert status == 1
    assert "No spring on offer meets the targets" in out


def test_help_teaches_by_example(capsys, monkeypatch):
    with pytest.raises(SystemExit) as left:
        run(capsys, monkeypatch, "--help")
    assert left.value.code == 0
    assert "python -m calc --starter enduro" in capsys.readouterr().out


def test_the_number_of_draws_is_asked_for_and_told(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--demo", "--json", "--draws", "50")
    assert status == 0
    assert json.loads(out)["ends"]["front"]["sure"]["draws"] == 50
    status, _, err = run(capsys, monkeypatch, "--demo", "--draws", "7")
    assert status == 2
    assert "from 20 to 10000" in err
