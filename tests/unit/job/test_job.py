"""The job file: its header, its keys, what is entered, what is assumed, and new jobs."""

import json

import pytest

from calc.job import JobError, load, parse_header
from calc.job.export import schema, typescript
from calc.job.field import Kind
from calc.job.fields import FIELDS, GROUPS
from calc.job.starter import start, with_notes
from calc.practice import USES, usual
from calc.quantities.reading import Origin, Spread
from calc.quantities.units import DIMENSIONS
from tests.support.documents import demo
from tests.support.plain import report

BARE = {"format": "stanchion-job", "version": 1}


@pytest.mark.parametrize(
    ("document", "words"),
    [
        (None, "A job is a JSON object"), ([], "A job is a JSON object"), ("job", "A job is a JSON object"),
        ({}, r'format must be "stanchion-job"; this file says nothing'),
        ({"format": "other", "version": 1}, r"this file says 'other'"),
        ({"format": "stanchion-job"}, "version must be a whole number from 1; this file says nothing"),
        (BARE | {"version": 1.5}, "whole number"), (BARE | {"version": True}, "whole number"), (BARE | {"version": "1"}, "whole number"),
        (BARE | {"version": 0}, "whole number"), (BARE | {"version": 5}, r"newer version \(5\); this one reads up to 4"),
        (BARE | {"bikes": {}}, r"bikes is not a key of a job\. Did you mean bike\?"),
        (BARE | {"bike": []}, "bike must be an object"), (BARE | {"bike": None}, "bike must be an object"),
        (BARE | {"front": {"raet": "4.2"}}, r"front\.raet is not a key of a job\. Did you mean front\.rate\?"),
        (BARE | {"front": {"rate": True}}, "front.rate must be a string, a number, or an object"),
        (BARE | {"front": {"rate": ["4.2"]}}, "front.rate must be a string, a number, or an object"),
        (BARE | {"front": {"rate": {"valeu": 1}}}, r"front\.rate\.valeu .*Did you mean front\.rate\.value\?"),
        (BARE | {"front": {"rate": {"value": {}}}}, r"front\.rate\.value must be a string or a number"),
        (BARE | {"front": {"rate": {"value": True}}}, r"front\.rate\.value must be a string or a number"),
        (BARE | {"front": {"rate": {"value": 4, "origin": "guessed"}}}, "origin must be one of measured, stated, assumed; this file says 'guessed'"),
        (BARE | {"front": {"rate": {"value": 4, "note": 7}}}, r"front\.rate\.note must be text"),
        (BARE | {"front": {"note": "x" * 2001}}, r"front\.note must be text of at most 2000 characters"),
        (BARE | {"name": 7}, "name must be text"), (BARE | {"invented": "yes"}, "invented must be true or false"),
    ],
)  # fmt: skip
def test_what_is_not_a_job_is_refused_naming_the_key(document, words):
    with pytest.raises(JobError, match=words):
        load(document)


def test_header_is_given_back_whole():
    header = parse_header(demo())
    assert header["name"] == "Brackwater 300 E"
    assert header["invented"] is True
    assert header["note"].startswith("Demo, invented")


def test_each_object_may_hold_a_note_and_it_is_kept():
    document = demo({"front.rate": {"value": "4.2 N/mm", "origin": "stated", "note": "Marked on the top coil."}})
    document["front"]["note"] = "Read in May."
    before = json.dumps(document)
    assert report(document)["fields"]["front.rate"]["note"] == "Marked on the top coil."
    assert json.dumps(document) == before, "reading a job changes nothing in it"


@pytest.mark.parametrize(
    "entry", ["4.4 N/mm", 4.4, {"value": "4.4"}, {"value": 4.4, "origin": "stated"}, {"value": "0,448675 kgf/mm"}]
)
def test_the_ways_of_writing_one_entry(entry):
    job = load(BARE | {"bike": {"use": "enduro"}, "front": {"rate": entry}})
    assert job.value("front.rate") == pytest.approx(4.4, rel=1e-5)
    assert job.fields["front.rate"].reading.origin is Origin.STATED


def test_entered_uncertainty_and_the_one_that_stands_in():
    job = load(demo())
    assert job.fields["rider.mass"].reading.plus_minus_95 == 1.0
    assert job.fields["front.rate"].reading.plus_minus_95 == pytest.approx(0.03 * 4.2)
    given = load(demo({"front.gap_left": {"value": "5.7 in", "plus_minus_95": "0.1"}}))
    assert given.fields["front.gap_left"].reading.plus_minus_95 == pytest.approx(2.54), "a bare +/- takes the value's own unit"


@pytest.mark.parametrize("use", sorted(USES))
def test_what_is_not_entered_is_assumed_from_practice_and_marked(use):
    job = load(start(use, "80 kg"))
    for path, field in FIELDS.items():
        found = job.fields[path]
        if path in ("bike.use", "rider.mass") or not found.origin:
            continue
        assert (found.origin, found.entered) == ("assumed", False), path
        assert found.reason, path
        if (
            field.kind is Kind.QUANTITY
            and field.default.row
            and not (field.default.follow or field.default.share_of or field.default.times_high)
        ):
            row = usual(field.default.row, use)
            assert found.number == (row.typical if row else field.default.value), path
            assert found.reading.spread is Spread.RECTANGULAR


@pytest.mark.parametrize(("path", "text", "millimetres"), [
    ("rear.target_sag", "34 %", 0.34 * 305), ("rear.target_sag", "34%", 0.34 * 305), ("rear.target_sag", "33,5 percent", 0.335 * 305),
    ("front.target_sag", "22 %", 66.0), ("rear.target_free_sag", "10 %", 30.5), ("rear.target_sag", "104", 104.0), ("rear.target_sag", "4 in", 101.6),
])  # fmt: skip
def test_sag_may_be_typed_in_percent_of_travel(path, text, millimetres):
    job = load(demo({path: text}))
    found = job.fields[path]
    assert job.number(path) == pytest.approx(millimetres)
    assert (found.text, found.entered, found.problem) == (text, True, None)
    assert found.unit != "%"  # told in what it amounts to


def test_percent_of_a_travel_that_changes_changes_with_it_and_stays_within_limits():
    assert load(demo({"rear.travel": "290 mm", "rear.target_sag": "30 %"})).number("rear.target_sag") == pytest.approx(87.0)
    too_much = load(demo({"rear.target_sag": "99 %"})).fields["rear.target_sag"].problem
    assert "is above the limit of 250 mm" in too_much.message
    of_nothing = load(demo({"rear.travel": "abc", "rear.target_sag": "30 %"})).fields["rear.target_sag"].problem
    assert "not known" in of_nothing.message
    assert load(demo({"rear.target_sag": "x %"})).fields["rear.target_sag"].problem.code == "characters"
    assert load(demo({"front.travel": "30 %"})).fields["front.travel"].problem.code == "dimension"


def test_what_follows_another_field_follows_it():
    job = load(demo({"front.travel": "290 mm", "front.collapsed_stroke": None, "front.target_sag": None, "front.gap_right": None}))
    assert job.value("front.collapsed_stroke") == 298.0
    assert job.value("front.target_sag") == round(usual("rider sag front", "enduro").typical / 100 * 290)
    assert job.value("front.gap_right") == job.value("front.gap_left")
    assert job.fields["front.gap_right"].reason.startswith("follows gap as found, left")


def test_an_idle_field_says_so():
    job = load(demo())
    assert not job.fields["bike.mass"].applies, "both axles are on scales"
    assert not job.fields["front.wall"].applies, "the area is known from pouring"
    assert not job.fields["rider.passenger"].applies, "not two-up"


@pytest.mark.parametrize("use", sorted(USES))
def test_two_answers_start_a_job_that_is_answered_at_once(use):
    document = start(use, "13 st 4 lb" if use != "youth" else "50 kg")
    assert set(document) - {"bike", "rider"} <= {"format", "version", "name", "owner", "date", "invented", "note"}
    answered = report(document, with_bands=False)
    assert [answered["ends"][end]["state"] for end in ("front", "rear")] == ["ok", "ok"]
    assert answered["assumed"]["front"]["assumed"] >= answered["assumed"]["front"]["of"] - 2
    assert answered["measure_first"]


@pytest.mark.parametrize(("use", "rider", "words"), [("sidecar", "80 kg", "bike.use"), ("", "80 kg", "bike.use"), ("road", "heavy", "rider.mass"),
                                                     ("road", "", "rider.mass"), ("road", "5 kg", "rider.mass.*below the limit of 20 kg")])  # fmt: skip
def test_a_start_that_cannot_be_read_names_the_field(use, rider, words):
    with pytest.raises(JobError, match=words):
        start(use, rider)


def test_the_starter_with_notes_holds_every_field_and_computes_the_same():
    plain, noted = start("enduro", "104 kg"), with_notes(start("enduro", "104 kg"))
    assert {f"{g}.{k}" for g in GROUPS for k in noted[g]} == set(FIELDS)
    assert all(noted[f.group][f.key]["note"] for f in FIELDS.values())
    assert report(noted, with_bands=False)["ends"] == report(plain, with_bands=False)["ends"]


def test_each_field_is_declared_in_one_piece():
    for path, field in FIELDS.items():
        assert field.label, path
        assert field.how.endswith((".", ".)")), path
        if field.kind is Kind.CHOICE:
            assert len(field.choices) >= 2, path
        else:
            assert field.unit in DIMENSIONS[field.dimension].units, path
            assert field.low < field.high, path
        assert {p for group in field.unless for p in group} | set(field.when) | set(field.idle) <= set(FIELDS), path


def test_the_page_gets_every_field_as_data_and_as_types():
    plain = json.loads(json.dumps(schema(), allow_nan=False))
    assert list(plain["fields"]) == list(FIELDS)
    assert {u["key"] for u in plain["uses"]} == set(USES)
    types = typescript()
    assert all(json.dumps(path) in types for path in FIELDS)


def test_an_ambiguous_rate_offers_the_whole_list_in_each_way_that_can_be():
    job = load(
        {"format": "stanchion-job", "version": 1, "bike": {"use": "road"}, "front": {"buy": "stock", "stock": "9.6; 1,250; 10.2"}}
    )
    problem = job.fields["front.stock"].problem
    assert problem is not None
    assert problem.readings == ("9.6; 1.250; 10.2",), "no spring has 1250 N/mm"
