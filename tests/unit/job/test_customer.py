"""A customer's answers: numbers as people write them, what cannot be, what is missing, and the job that they make."""

from __future__ import annotations

import json

import pytest

from calc.job import JobError, load
from calc.job.customer import ABOARD, ALONE, ASKED, FRONT, HANGING, LABELS, LENGTHS, NEEDED, NOTE, job_of, missing, problems
from calc.job.filled import read_sheet
from calc.job.questions import QUESTIONS, exported, sheet
from calc.practice import USES, posture

LENGTH = dict(zip(LENGTHS, ("625", "591", "600", "496", "506"), strict=True))
SAID = {"bike.use": "enduro", "rider.mass": "86", **LENGTH}


# NIST SP 811: 1 in = 25.4 mm. The rest is how people write.
@pytest.mark.parametrize(
    ("typed", "mm"),
    [("625", 625), ("625 mm", 625), ("625mm", 625), ("62,5 cm", 625), ("62.5cm", 625), ("0.625 m", 625), ("24.6 in", 624.84), (' 24,6" ', 624.84), ("625,0", 625), (625, 625)],
)  # fmt: skip
def test_numbers_are_taken_as_people_write_them(typed, mm):
    said = SAID | {HANGING: typed}
    assert problems(said) == ()
    assert load(job_of(said)).number(HANGING) == pytest.approx(mm)


@pytest.mark.parametrize(
    ("path", "typed", "offers"),
    [
        (HANGING, "62,5", ("62.5 cm",)),
        (HANGING, "24.6", ("24.6 cm", "24.6 in")),
        (HANGING, "30", ("30 cm", "30 in")),
        (ALONE[0], "0.591", ("0.591 m",)),
        ("rider.mass", "230", ("230 lb",)),
        (HANGING, "1,625", ()),
    ],
)
def test_a_figure_without_its_unit_is_asked_back_with_what_it_may_be(path, typed, offers):
    (found,) = problems(SAID | {path: typed})
    assert (found.path, found.readings) == (path, offers)
    assert LABELS[path] in found.message
    for offer in offers:
        assert [one for one in problems(SAID | {path: offer}) if one.code != "order"] == []


@pytest.mark.parametrize("typed", ["a hand", "625 kg", "nan", "1e400", "591 600", "-625", "5 m", "9**9"])
def test_what_cannot_be_read_is_named_with_its_field_and_kept(typed):
    said = SAID | {HANGING: typed}
    (found,) = problems(said)
    assert found.path == HANGING
    assert "Wheel off the ground" in found.message
    assert found.limit
    assert job_of(said)["rear"]["hanging_length"]["value"] == typed


@pytest.mark.parametrize(
    ("changes", "path", "word"),
    [
        ({HANGING: "560"}, HANGING, "longest"),
        ({ALONE[0]: "496", ALONE[1]: "506", ABOARD[0]: "591", ABOARD[1]: "600"}, ABOARD[0], "shorter than without you"),
        ({ABOARD[0]: "640"}, ABOARD[0], "hanging free"),
    ],
)
def test_readings_in_each_others_place_are_said(changes, path, word):
    (found,) = problems(SAID | changes)
    assert found.path == path
    assert word in found.message
    assert "Check which is which" in found.way_out


def test_a_reading_error_is_no_swap():
    # A bike that stands at its top by itself, read a little long: within what a tape is off by.
    assert problems(SAID | {ALONE[0]: "627", ALONE[1]: "628"}) == ()


def test_each_entry_says_that_it_is_the_customers():
    document = job_of(SAID | {"bike.mass": "112", "standard.shock_spring": "as sold"})
    assert json.loads(json.dumps(document)) == document
    entries = {f"{group}.{key}": one for group in ("bike", "rider", "rear", "standard") for key, one in document[group].items()}
    assert set(entries) == {*SAID, "bike.mass", "standard.shock_spring", "rear.sags_read"}
    assert all(one["note"].startswith(NOTE) for one in entries.values())
    assert {path: one["origin"] for path, one in entries.items() if path in LENGTHS} == dict.fromkeys(LENGTHS, "measured")
    assert entries["bike.mass"]["origin"] == "stated"
    assert load(document).problems == ()


@pytest.mark.parametrize("use", USES)
def test_posture_is_stated_and_widens_what_is_read_aboard(use):
    document = job_of(SAID | {"bike.use": use})
    aboard = load(document).fields[ABOARD[0]]
    assert aboard.note == f"{NOTE}, {posture(use)}"
    assert aboard.reading.plus_minus_95 > load(document).fields[ALONE[0]].reading.plus_minus_95


def test_what_is_missing_is_told_in_the_order_of_asking():
    assert missing({}) == NEEDED
    assert missing(SAID | {ALONE[0]: "  "}) == (ALONE[0],)
    assert missing(SAID) == ()


@pytest.mark.parametrize("said", [{"rear.rate": "48"}, {"rider.mass": True}, {"rider.mass": ["86"]}])
def test_what_is_not_asked_is_refused(said):
    with pytest.raises(JobError, match=r"asked|text or a number"):
        job_of(said)


def test_every_field_has_one_question_and_readings_come_last():
    paths = [one.path for one in QUESTIONS if one.path]
    assert sorted(paths) == sorted(ASKED)
    assert tuple(paths[-5:]) == FRONT
    rear = [one.path for one in QUESTIONS if one.path and one.end == "rear"]
    assert tuple(rear[-5:]) == LENGTHS
    assert {one.path for one in QUESTIONS if one.path and not one.optional} == {*NEEDED, *FRONT}
    assert set(exported()["rides"]) == set(USES)


def test_the_sheet_is_read_back_as_it_was_filled_in():
    answers = {
        "riding": "enduro",
        "weight": "86",
        "hanging": "625",
        "alone": "591",
        "alone again": "600",
        "aboard": "496",
        "aboard again": "506",
    }
    lines = [f"{line} {answers[line[:-1]]}" if line[:-1] in answers else line for line in sheet().splitlines()]
    said = read_sheet("\n".join(lines))
    assert {path: text for path, text in said.items() if text} == SAID
    assert read_sheet(json.dumps(SAID)) == SAID
    assert read_sheet(json.dumps(answers)) == SAID


@pytest.mark.parametrize(
    ("text", "word"), [("riding enduro", "line 1"), ("sag: 30", "sag is not asked"), ("[1]", "object"), ("{", "JSON")]
)
def test_a_sheet_that_cannot_be_read_says_why(text, word):
    with pytest.raises(JobError, match=word):
        read_sheet(text)
