"""Sags that were read stand in the tables of setups as they were read, in the column of the setup that they were read of."""

from __future__ import annotations

import re

import pytest

from calc.demo import jobs
from calc.job import load
from calc.report import report_of
from calc.report.sags_told import of_setup
from calc.report.text import report_text
from tests.support.documents import changed, demo

# Front aboard far deeper than spring, oil and rider allow: it fits nothing else that was read.
READ = {
    "front.alone_sag": "34", "front.alone_again_sag": "27", "front.aboard_sag": "78", "front.aboard_again_sag": "70",
    "rear.alone_sag": "20", "rear.alone_again_sag": "15", "rear.aboard_sag": "96", "rear.aboard_again_sag": "90",
}  # fmt: skip
BUILT = {
    "front.built_rate": "4.6", "front.built_preload": "3", "front.built_gap_left": "120", "front.built_gap_right": "120",
    "bike.sags_of": "built",
}  # fmt: skip


def told(document):
    return report_of(load(document), with_bands=False)


def row(text: str, end: str, name: str) -> str:
    """A line of an end's table of setups, as the command line prints it."""
    return re.search(rf"^{end}$.*?^  ({name}  .*?)$", text, re.M | re.S).group(1)


@pytest.mark.parametrize("name", jobs())
def test_as_found_tells_the_mean_of_what_was_read_and_says_where_it_was_left_out(name):
    report = told(changed(jobs()[name], READ))
    text = report_text(report)
    for axle, free, rider in (("front", "30", "74"), ("rear", "18", "93")):
        sags = of_setup(report.sags_told, axle, "found")
        assert [(one.found.text, one.origin) for one in sags.values()] == [(free, "stated"), (rider, "stated")]
        believed = {one.label: one.believed for end in report.sags.ends if end.axle == axle for one in end.rows}
        for label, one in sags.items():
            assert one.left_out == ("" if believed[label] else "left out: read again")
            said = f"as found: {label} read {one.found.text} mm, left out: read again"
            assert (said in text) is not believed[label]
        assert re.search(rf" read {free} +read {rider} ", row(text, axle.capitalize(), "as found"))
    assert "read" not in row(text, "Front", "standard, its rider")


def test_a_reading_that_fits_nothing_is_one_of_these():
    report = told(changed(jobs()["trail"], READ))
    assert [one.label for one in report.sags_told if one.left_out] == ["rider sag"]


def test_without_sags_as_found_is_worked_out():
    report = told(demo())
    assert report.sags_told == ()
    assert report.ends.front.as_found.setup.rider_sag.text in row(report_text(report), "Front", "as found").split()


def test_sags_of_what_was_built_stand_there():
    report = told(demo({"front.aboard_sag": "66", **BUILT}))
    assert of_setup(report.sags_told, "front", "found") == {}
    text = report_text(report)
    assert " read 66 " in row(text, "Front", "built")
    assert "read" not in row(text, "Front", "as found")


def test_readings_that_are_refused_are_said_not_to_be_used():
    report = told(demo({"rear.aboard_sag": "90", "rear.aboard_again_sag": "108"}))
    assert "as found: rider sag read 99 mm, not used" in report_text(report)


def test_a_length_tells_its_sag_and_where_it_is_from():
    lengths = {"rear.sags_read": "lengths", "rear.hanging_length": "600", "rear.alone_again_length": "592"}
    measured = {"value": "504 mm", "origin": "measured"}
    sags = of_setup(told(demo({**lengths, "rear.aboard_length": measured})).sags_told, "rear", "found")
    assert {label: (one.found.text, one.origin) for label, one in sags.items()} == {
        "free sag": ("8", "stated"),
        "rider sag": ("96", "measured"),
    }
