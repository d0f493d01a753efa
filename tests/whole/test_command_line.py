"""The command line: sizes a file or standard input, prints text or JSON, refuses in words."""

import io
import json
import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import calc.report
from calc.__main__ import main
from calc.demo import jobs
from calc.job.fields import FIELDS
from calc.report.columns import columns
from calc.report.letter import letter
from calc.report.message import LOOSE
from tests.support.documents import demo
from tests.support.golden.jobs import golden_jobs
from tests.support.plain import report


def run(capsys, monkeypatch, *arguments: str, given: str = "") -> tuple[int, str, str]:
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(given.encode()), encoding="utf-8"))
    status = main(list(arguments))
    out, err = capsys.readouterr()
    return status, out, err


def test_the_full_text_has_the_states_of_a_sealed_fork(capsys, monkeypatch):
    _, out, _ = run(capsys, monkeypatch, "--full", "--demo", "trail")
    states = report(jobs()["trail"])["states"]
    assert states["rows"][-1]["words"] in " ".join(out.split())
    for lost in states["lost"]:
        assert lost["replaced"] in " ".join(out.split())
    assert all(row["plain"] in " ".join(out.split()) for row in states["rows"])
    _, out, _ = run(capsys, monkeypatch, "--full", "--demo", "enduro")
    assert "States of this fork" not in out


def test_the_states_alone_as_text_and_as_json(capsys, monkeypatch):
    status, out, err = run(capsys, monkeypatch, "--states", "--demo", "trail")
    assert (status, err) == (0, "")
    assert out.startswith("States of this fork")
    assert "As built, along the stroke:" in out
    status, out, _ = run(capsys, monkeypatch, "--states", "--json", "--demo", "trail")
    assert [one["state"] for one in json.loads(out)["states"]][:2] == ["as built", "seal leaking"]
    status, out, _ = run(capsys, monkeypatch, "--states", "--demo", "enduro")
    assert (status, out.strip()) == (1, "This fork has no sealed cartridge.")


def test_a_job_file_as_a_letter(capsys, monkeypatch, tmp_path):
    file = tmp_path / "job.json"
    file.write_text(json.dumps(demo()), encoding="utf-8")
    status, out, err = run(capsys, monkeypatch, str(file))
    assert (status, err) == (0, "")
    told = report(demo())["ends"]
    words = " ".join(out.split())
    for end in ("front", "rear"):
        assert told[end]["answer"] in words
        assert told[end]["sure"]["words"] in words
        assert any(one["words"] in words for one in told[end]["measure_next"])
        free, rider = (
            f"{told[end]['chosen'][name]['text']} {told[end]['chosen'][name]['plus_minus_text']} mm"
            for name in ("free_sag", "rider_sag")
        )
        assert f"the {end} sags {free} by itself and {rider} with the rider" in words
    assert "Gas under pressure" not in out


@pytest.mark.parametrize("name", jobs())
def test_a_letter_has_ten_lines_and_what_is_long_a_second(capsys, monkeypatch, name):
    """Title, two for each end, two to measure, two to check, where the rest is; at most four of them, and a note, run over. What was
    found, pushed or poured comes to it where anything was, a few lines for each.
    """
    status, out, _ = run(capsys, monkeypatch, "--demo", name)
    assert status == 0
    lines, told = out.rstrip().split("\n"), report(jobs()[name], with_bands=False)
    found = sum(len(end["rows"]) for end in told["sags"]["ends"]) + 2 if told["sags"] else 0
    besides = ["Push"] * ("push_points" in jobs()[name]["front"]) + ["Oil"] * ("oil" in jobs()[name])
    assert 9 <= len(lines) <= 14 + 2 * len(told["notes"]) + found + 4 * len(besides)
    assert max(map(len, lines)) <= 100
    heads = [line.split()[0] for line in lines[1:-1] if not line.startswith((" ", "Sags"))]
    assert heads[: 4 + len(besides)] == ["Front", "Rear", *besides, "Next", "Check"]


def test_what_is_not_settled_is_not_to_be_checked():
    """Sags to find with a tape belong to a setup that is built: none is said to be where springs cannot be told apart yet."""
    told = calc.report.report(demo())
    assert letter(told).count("Built so") == 2
    ends = replace(told.ends, front=replace(told.ends.front, verdict="open"))
    assert letter(replace(told, ends=ends)).count("Built so") == 1
    # A sag known no better than a message tells it is nothing that a tape could find.
    chosen = told.ends.rear.chosen
    vague = replace(chosen, rider_sag=replace(chosen.rider_sag, plus_minus_95=LOOSE + 1.0))
    loose = replace(told.ends, rear=replace(told.ends.rear, chosen=vague))
    assert letter(replace(told, ends=loose)).count("Built so") == 1


def test_a_reading_that_narrows_both_ends_is_asked_for_once():
    told = calc.report.report(demo())
    first, *others = told.ends.front.measure_next
    rear = replace(told.ends.rear, measure_next=(first, *(one for one in told.ends.rear.measure_next if one.path != first.path)))
    text = letter(replace(told, ends=replace(told.ends, rear=rear)))
    assert text.count(first.words.split(" (")[0]) == 1
    assert others


def test_the_whole_report_is_one_word_away(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--demo", "--full")
    assert status == 0
    for part in (
        "Based on:",
        "Conditions to check",
        "Gas under pressure",
        "Left out:",
        "Force at the wheel",
        "standard, its rider",
    ):
        assert part in out


def test_the_check_is_one_word_away(capsys, monkeypatch):
    """Sags found from a file on standard input: 0 where they say something, 1 where none is there or they are refused."""
    status, out, _ = run(capsys, monkeypatch, "--demo", "--check")
    assert status == 1
    assert "No sags, ride or push are entered" in out
    sags = {"rear.alone_sag": "8", "rear.alone_again_sag": "4", "rear.aboard_sag": "101", "rear.aboard_again_sag": "95"}
    status, out, _ = run(capsys, monkeypatch, "--check", given=json.dumps(demo(sags)))
    assert status == 0
    assert "Rider sag 98 mm found" in out
    assert "by your sags" in out
    _, out, _ = run(capsys, monkeypatch, given=json.dumps(demo(sags)))
    assert "Sags    Rear: free sag 6 mm found" in out
    assert len(out.splitlines()) <= 16
    status, out, _ = run(capsys, monkeypatch, "--check", given=json.dumps(demo(sags | {"rear.aboard_sag": "120"})))
    assert status == 1
    assert "something sticks" in out


def tables(text: str) -> list[list[str]]:
    """Runs of lines that are rows of a table: indented, and with two spaces inside."""
    found: list[list[str]] = [[]]
    for line in text.split("\n"):
        if re.match(r" {2,}\S.*\S {2,}\S", line):
            found[-1].append(line)
        elif found[-1]:
            found.append([])
    return [table for table in found if len(table) > 2]


@pytest.mark.parametrize("name", golden_jobs())
def test_columns_never_run_together_and_numbers_are_plain(capsys, monkeypatch, name):
    """Between two columns stand two blanks all the way down; no power of ten, no +/- of several figures, no force that pulls."""
    _, out, _ = run(capsys, monkeypatch, "--full", given=json.dumps(golden_jobs()[name]))
    assert not re.search(r"\de[+-]?\d|\bnan\b|\binf\b|\+/-", out)
    assert tables(out) or "refused" in name
    for table in tables(out):
        width = max(map(len, table))
        gaps = [all(line.ljust(width)[i : i + 2] == "  " for line in table) for i in range(2, width - 1)]
        assert any(gaps), table
    for block in out.split("Force at the wheel")[1:]:
        rows = [line.split() for line in block.split("\n")[3:10]]
        assert all(len(row) == 6 for row in rows), rows
        assert all(float(cell.replace("−", "-")) >= 0 for row in rows for cell in row[:5]), rows


def test_standard_input_as_json_is_the_report(capsys, monkeypatch):
    status, out, _ = run(capsys, monkeypatch, "--json", given=json.dumps(demo()))
    assert status == 0
    assert json.loads(out) == json.loads(json.dumps(report(demo())))


@pytest.mark.parametrize("short", [[], ["--short"]])
def test_a_starter_job_with_notes_can_be_sized(capsys, monkeypatch, short):
    status, job, _ = run(capsys, monkeypatch, "--starter", "enduro", "104 kg", *short)
    assert status == 0
    assert json.loads(job)["front"]["gap_left"]["note"]
    fields = [f"{group}.{key}" for group, part in json.loads(job).items() if isinstance(part, dict) for key in part]
    assert len(fields) == (13 if short else len(FIELDS))
    assert run(capsys, monkeypatch, given=job)[0] == 0


def test_a_fault_of_the_program_is_one_line_and_a_status_of_its_own(capsys, monkeypatch):
    def broken(*_: object) -> None:
        raise KeyError("front.rate\nsecond line")

    monkeypatch.setattr(calc.report, "report_of", broken)
    status, out, err = run(capsys, monkeypatch, given=json.dumps(demo()))
    assert (status, out) == (3, "")
    assert err.startswith("calc: a fault of this program, not of the job (KeyError: ")
    assert err.count("\n") == 1
    monkeypatch.setattr(calc.report, "report_of", lambda *_: (_ for _ in ()).throw(KeyboardInterrupt))
    assert run(capsys, monkeypatch, given=json.dumps(demo()))[0] == 130


@pytest.mark.parametrize("name", [".", "no\0name"])
def test_a_name_that_is_no_file_is_refused(capsys, monkeypatch, name):
    status, _, err = run(capsys, monkeypatch, name)
    assert (status, err.count("\n")) == (2, 1)
    assert err.startswith("calc: cannot read")


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("", "is not JSON"), ("{", "is not JSON"), ("[" * 100_000, "so it isn't a job"), ('{"a": NaN}', "NaN is not a number"), ("9" * 5000, "JSON"),
        ("{}", 'format must be "stanchion-job"'), (json.dumps(demo() | {"forks": {}}), "forks is not a key"),
        (json.dumps(demo({"front.travel": "3000 mm"})), "front.travel: Fork travel: 3000 mm is above the limit of 400 mm"),
        (json.dumps(demo({"front.gap_left": "1,250"})), "1250 and 1.250 both lie outside its limits. From 20 to 500 mm."),
        (json.dumps(demo({"front.air_volume": "1,250", "front.air": "air leg"})), "Did you mean 1250?"),
        (json.dumps(demo() | {"name": "\ud800"}), "name contains half of a character"),
        (json.dumps(demo({"front.layout": "\ud800"})), "'\\ud800' is not one of upside-down, conventional"),
        (json.dumps(demo({"place.bled_altitude": "1,250"})), "Did you mean 1250 or 1.250?"),
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
    status, out, _ = run(
        capsys, monkeypatch, given=json.dumps(demo({"front.free_length": "470 mm", "front.solid_length": "400 mm"}))
    )
    assert status == 1
    assert "Nothing on offer can be built." in " ".join(out.split())


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


CELLS = st.text(alphabet="ab0−.±", min_size=1, max_size=12)


@given(
    st.integers(1, 5).flatmap(lambda wide: st.lists(st.lists(CELLS, min_size=wide, max_size=wide), min_size=2, max_size=6)),
    st.integers(0, 5),
)
def test_columns_stand_under_each_other(grid, left):
    """Every cell is there, in its place: flush left its first sign in one line with the others', flush right its last."""
    lines = columns(grid[0], grid[1:], left)
    for number in range(len(grid[0])):
        cells = [[*re.finditer(r"\S+", line)][number] for line in lines]
        assert [cell[0] for cell in cells] == [row[number] for row in grid]
        assert len({cell.start() if number < left else cell.end() for cell in cells}) == 1
    assert all(re.search(r"\S \S", line) is None for line in lines)


def test_a_row_of_another_length_is_refused():
    with pytest.raises(ValueError, match="argument"):
        columns(["", "mm"], [["a", "1"], ["b"]])


def test_a_bench_push_is_told_short_and_in_full(capsys, monkeypatch):
    """The demo's cartridge had lost its charge before it was opened."""
    _, out, _ = run(capsys, monkeypatch, "--demo", "trail")
    assert "Push    The charge is gone, " in out
    _, out, _ = run(capsys, monkeypatch, "--demo", "trail", "--full")
    assert "Bench push, the middle of in and out" in out
    assert re.search(r"Seal leaking +\d+ +\d+ ±\d+ +\d+ ±\d+", out)
    assert re.search(r"280 mm, 470 N +−?\d+ +−?\d+", out)


def test_the_offer_alone_and_in_the_whole_report(capsys, monkeypatch):
    status, out, err = run(capsys, monkeypatch, "--offer", "--demo", "trail")
    assert (status, err) == (0, "")
    assert "Options 1 and 2 give the same force curve" in out
    _, whole, _ = run(capsys, monkeypatch, "--full", "--demo", "trail")
    assert "Option 2 costs 501.50 EUR more." in whole
    status, out, _ = run(capsys, monkeypatch, "--offer", "--demo", "enduro")
    assert (status, out.startswith("There is no offer")) == (1, True)
    spoilt = jobs()["trail"]
    spoilt["offer"]["options"][0]["parts"][0]["price"] = "19,50 USD"
    status, out, err = run(capsys, monkeypatch, "--offer", given=json.dumps(spoilt))
    assert status == 2
    assert "offer.options[1].parts[1].price: Option 1, part 1, price: 'USD' does not fit here" in err
    assert "No total yet. An entry that the total needs is refused." in out
