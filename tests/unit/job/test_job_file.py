"""The job file as bytes and text: read the same way for the page's door and for the command line, and nothing lost in silence."""

import io
import json
import time
from pathlib import Path

import pytest

from calc.__main__ import main
from calc.boundary import answer
from calc.job import VERSION, JobError, load
from calc.job.document import upgraded
from calc.job.text import DEEPEST, LONGEST, MOST_BRACKETS, decode, read_jobs, read_json, several
from calc.job.visit import as_found
from tests.support.documents import demo
from tests.support.plain import report

OLD = (Path(__file__).parents[2] / "fixtures" / "job-version-1.json").read_text(encoding="utf-8")
BARE = {"format": "stanchion-job", "version": VERSION}


def opened(text: str) -> dict:
    return json.loads(answer(json.dumps({"kind": "open", "text": text})))


def test_a_file_of_version_1_opens_and_says_the_same():
    (job,), refused = read_jobs(OLD)
    old = json.loads(OLD)
    assert (old["version"], job["version"], job["owner"], refused) == (1, VERSION, "", [])
    assert {k: v for k, v in job.items() if k not in ("version", "owner")} == {k: v for k, v in old.items() if k != "version"}
    assert report(job, with_bands=False) == report(old, with_bands=False)
    assert upgraded(job) == job


def test_a_file_of_version_2_keeps_its_conditions_and_says_the_same():
    now = demo({"conditions.hot_temperature": "70", "conditions.rider": "60 kg"})
    old = {("elsewhere" if key == "conditions" else key): value for key, value in now.items()} | {"version": 2}
    (job,), refused = read_jobs(json.dumps(old))
    assert (job, refused) == (now | {"version": VERSION}, [])
    assert report(old, with_bands=False) == report(now, with_bands=False)
    for wrong in (old | {"version": VERSION}, old | {"conditions": {}}):
        with pytest.raises(JobError, match="elsewhere is not a key"):
            load(wrong)


def test_the_owner_is_kept():
    assert load(BARE | {"owner": "M. K."}).header["owner"] == "M. K."
    with pytest.raises(JobError, match="owner must be text"):
        load(BARE | {"owner": 7})


@pytest.mark.parametrize("read", [opened, lambda text: json.loads(run_line(text)[1])])
def test_a_byte_order_mark_is_passed_over_by_page_and_command_line(read):
    text = json.dumps(demo())
    assert read("\ufeff" + text) == read(text)


def run_line(text: str) -> tuple[int, str, str]:
    with pytest.MonkeyPatch.context() as patch:
        out, err = io.StringIO(), io.StringIO()
        patch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(text.encode()), encoding="utf-8"))
        patch.setattr("sys.stdout", out)
        patch.setattr("sys.stderr", err)
        return main(["--job"]), out.getvalue(), err.getvalue()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('{"a": 1, "a": 2}', "'a' stands twice"), ('{"rider": {"mass": 80, "mass": 90}}', "'mass' stands twice"), ("{", "is not JSON"), ("", "is not JSON"),
        ("[" * (MOST_BRACKETS + 1), f"nested deeper than {DEEPEST} levels"), ('{"a":' * (MOST_BRACKETS + 1), "nested deeper"), ("[]" * 600, "is not JSON"),
        ("\ufeff\ufeff{}", "is not JSON"), (" " * (LONGEST + 1), f"longer than {LONGEST} characters"), ('{"a": NaN}', "NaN is not a number"),
        ('{"format": "stanchion-jobs", "version": 2, "jobs": []}', "version must be 1"), ('{"format": "stanchion-jobs", "version": 1, "jobs": []}', "holds no job"),
    ],
)  # fmt: skip
def test_what_is_no_job_file_is_refused_alike(text, words):
    assert words in opened(text)["message"]
    status, _, err = run_line(text)
    assert status == 2
    assert words.replace("characters", "bytes") in err


def test_letters_that_are_not_utf_8_are_refused():
    with pytest.raises(JobError, match=r"not UTF-8 text .* at byte 1"):
        decode(b'"\xff"')
    with pytest.raises(JobError, match="longer than"):
        decode(b" " * (LONGEST + 1))


def test_brackets_by_the_million_are_refused_at_once():
    """Length and depth before reading: in a browser the reader's own depth ends the tab."""
    before = time.perf_counter()
    for text in ("[" * (LONGEST - 1), '{"":[' * (LONGEST // 5), "[" * 50_000_000):
        with pytest.raises(JobError):
            read_json(text)
    assert time.perf_counter() - before < 5.0


def test_brackets_inside_text_open_nothing_and_wide_files_are_read():
    assert read_json(json.dumps(["[" * 2000])) == ["[" * 2000]
    assert read_json(json.dumps(['"[\\"' * 2000])) == ['"[\\"' * 2000]
    many = several([demo()] * 300)
    assert len(read_jobs(json.dumps(many))[0]) == 300


@pytest.mark.parametrize("number", ["1e999", "-1e999", "9" * 6000, "1e-999", "12345678901234567890"])
def test_a_number_that_a_browser_would_lose_stays_and_is_refused_at_its_field(number):
    text = json.dumps(BARE | {"bike": {"use": "enduro"}, "rider": {"mass": "NUMBER"}}).replace('"NUMBER"', number)
    (job,) = opened(text)["jobs"]
    assert job["rider"]["mass"] == number
    assert load(job).fields["rider.mass"].problem is not None
    assert load(json.loads(run_line(text)[1])).fields["rider.mass"].problem is not None


def test_numbers_are_read_to_the_last_digit():
    assert read_json("[0, 0.0, -0.0, 1e-3, 123456789012345, 4.20, 1E2]") == [0, 0.0, 0.0, 0.001, 123456789012345, 4.2, 100.0]


def test_of_several_the_good_ones_open_and_the_others_are_named():
    reply = opened(
        json.dumps(
            {"format": "stanchion-jobs", "version": 1, "jobs": [demo(), {"format": "x"}, demo() | {"forks": {}}, json.loads(OLD)]}
        )
    )
    assert [job["version"] for job in reply["jobs"]] == [VERSION, VERSION]
    assert [sentence[:13] for sentence in reply["refused"]] == ["Job 2 of 4: f", "Job 3 of 4: f"]


def test_several_jobs_on_the_command_line(capsys, tmp_path):
    for name in ("may", "june"):
        (tmp_path / f"{name}.json").write_text(json.dumps(demo() | {"date": name}))
    assert main([str(tmp_path / "may.json"), str(tmp_path / "june.json"), "--gather"]) == 0
    gathered = tmp_path / "all.json"
    gathered.write_text(capsys.readouterr().out)
    assert [job["date"] for job in read_jobs(gathered.read_text())[0]] == ["may", "june"]
    assert main([str(gathered), "--job", "--only", "2"]) == 0
    assert json.loads(capsys.readouterr().out)["date"] == "june"
    assert main([str(gathered)]) == 2
    assert "holds 2 jobs: 1 Brackwater 300 E, may; 2 Brackwater 300 E, june. Name one: --only 1" in capsys.readouterr().err


def test_two_visits_compared_by_page_and_command_line(capsys, tmp_path):
    """Rows follow from the two documents: each entry that differs, each told figure that differs, no other."""
    before, after = (
        demo() | {"date": "2026-05-12"},
        demo({"rider.mass": {"value": "92 kg", "origin": "measured"}, "front.rate": None}) | {"date": "2026-09-01"},
    )
    reply = json.loads(answer(json.dumps({"kind": "compare", "before": before, "after": after})))["comparison"]
    rows = {row["path"]: (row["before"], row["after"]) for row in reply["entries"]}
    assert rows == {"rider.mass": ("104 kg, measured", "92 kg, measured"), "front.rate": ("4.2 N/mm, stated", "")}
    told = {row["label"]: (row["before"], row["after"]) for row in reply["results"]}
    for end in ("front", "rear"):
        one, other = (report(job, with_bands=False)["ends"][end]["chosen"]["preload"]["value"] for job in (before, after))
        assert told.get(f"{end.title()}: preload", (f"{one:g} mm",) * 2) == (f"{one:g} mm", f"{other:g} mm")
        one, other = (report(job, with_bands=False)["ends"][end]["chosen"]["rate"]["value"] for job in (before, after))
        assert (f"{end.title()}: spring" in told) == (one != other)
    same = json.loads(answer(json.dumps({"kind": "compare", "before": before, "after": before})))["comparison"]
    assert same == {"entries": [], "results": [], "rides": []}
    for name, job in (("before", before), ("after", after)):
        (tmp_path / name).write_text(json.dumps(job))
    assert main([str(tmp_path / "before"), "--compare", str(tmp_path / "after")]) == 0
    out = capsys.readouterr().out
    assert out.startswith("2026-05-12 -> 2026-09-01\n")
    assert "Rider in full kit: 104 kg, measured -> 92 kg, measured" in out


def test_a_plus_minus_that_alone_differs_is_told():
    reply = json.loads(
        answer(
            json.dumps(
                {
                    "kind": "compare",
                    "before": demo(),
                    "after": demo({"rider.mass": {"value": "104 kg", "plus_minus_95": "3 kg", "origin": "measured"}}),
                }
            )
        )
    )
    assert [row["after"] for row in reply["comparison"]["entries"]] == ["104 kg ±3, measured"]


THEN = ("tried_rate", "alone_sag", "filling_gap_left", "filling_gap_right")  # of that visit alone


def test_at_the_next_visit_what_was_built_is_what_is_found(capsys, tmp_path):
    before = demo({"front.tried_rate": "4.6", "front.alone_sag": "31"}) | {"date": "2026-05-12"}
    after = json.loads(answer(json.dumps({"kind": "next visit", "job": before, "date": "2026-09-01"})))["job"]
    assert after["date"] == "2026-09-01"
    assert after["front"] == {key: entry for key, entry in before["front"].items() if key not in THEN}
    assert after["rider"] == before["rider"]
    (tmp_path / "may.json").write_text(json.dumps(before))
    assert main([str(tmp_path / "may.json"), "--next-visit", "2026-09-01"]) == 0
    assert json.loads(capsys.readouterr().out) == after


def test_what_was_built_moves_to_what_is_found():
    built = {"value": "4.8 N/mm", "origin": "stated"}
    found = as_found(
        {
            "rate": "4.2",
            "preload_from": "lengths",
            "built_rate": built,
            "built_preload": "5",
            "built_gap_left": "118 mm",
            "tried_gap": "120",
        }
    )
    assert found == {"rate": built, "preload_from": "read", "preload": "5", "gap_left": "118 mm"}
