"""Work orders start from readings: millilitres, spacers and turns are ordered where gap or preload was read, else the target alone."""

import re

import pytest

from calc.job import load
from calc.model.origins import found_was_read, gaps_were_read, preload_was_read, was_read
from tests.support.documents import changed, demo
from tests.support.plain import report, text
from tests.whole.test_air import AIR

UNREAD = {"front.gap_left": None, "front.gap_right": None, "front.preload": None, "rear.preload": None}
LENGTHS = {
    "front.preload": None, "front.preload_from": "lengths", "front.free_length": "470 mm", "front.space": "466 mm",
    "rear.preload": None, "rear.preload_from": "lengths", "rear.free_length": "250 mm", "rear.installed_length": "236 mm",
}  # fmt: skip
BY_VOLUME = {"front.gap_from": "volume filled", "front.filled_left": "520 ml", "front.brim_volume": "780 ml"}


def ends(changes):
    return report(demo(changes), with_bands=False)["ends"]


@pytest.mark.parametrize(
    ("changes", "gaps", "preloads"),
    [
        ({}, True, True),
        (UNREAD, False, False),
        ({"front.gap_right": None}, True, True),  # a leg that is left out is taken to be as the other
        ({"front.gap_left": {"value": "120 mm", "origin": "assumed"}}, False, True),
        ({"front.gap_left": "120"}, True, True),
        ({"front.gap_left": "much"}, False, True),
        (BY_VOLUME, True, True),
        (BY_VOLUME | {"front.filled_left": {"value": "520 ml", "origin": "assumed"}}, False, True),
        (UNREAD | LENGTHS, False, True),
        (LENGTHS | {"front.free_length": None, "rear.installed_length": None}, True, False),
    ],
)
def test_what_was_read(changes, gaps, preloads):
    job = load(
        demo(
            {
                path: value
                for path, value in changes.items()
                if value is not None or path in ("front.gap_left", "front.gap_right", "front.preload", "rear.preload")
            }
        )
    )
    assert gaps_were_read(job) == gaps
    assert [preload_was_read(job, axle) for axle in ("front", "rear")] == [preloads, preloads]


def test_a_default_that_adds_something_is_no_reading():
    job = load(demo({"front.collapsed_stroke": None}))
    assert was_read(job, "front.travel")
    assert not was_read(job, "front.collapsed_stroke"), "travel and the usual 8 mm"


def test_an_air_spring_starts_from_its_pressure():
    for pressure, read in (("9 bar", True), (None, False)):
        job = load(
            demo(
                AIR | {"front.air_pressure": pressure, "front.preload": None}
                if pressure
                else {**{k: v for k, v in AIR.items() if k != "front.air_pressure"}, "front.preload": None}
            )
        )
        assert found_was_read(job, "front") == read
    coil = AIR | {"front.air_coil": "yes", "front.preload": None}
    assert not found_was_read(load(demo(coil)), "front"), "a coil's preload counts too"


def test_read_gaps_and_preloads_are_worked_from():
    told = ends({})
    assert told["front"]["chosen"]["oil"] is not None
    assert re.search(r"(add|take out) \d+ ml|no oil to add", told["front"]["answer"])
    assert re.match(r"(Add|Cut|Spacers stay)", told["front"]["seat"]["words"])
    assert re.match(r"Collar", told["rear"]["seat"]["words"])


def test_from_nothing_read_the_target_alone_is_told():
    told = ends(UNREAD)
    gap = told["front"]["chosen"]["gap"]["value"]
    assert told["front"]["chosen"]["oil"] is None
    assert f"gap {gap:.0f} mm" in told["front"]["answer"]
    for end in ("front", "rear"):
        seat, preload = told[end]["seat"], told[end]["chosen"]["preload"]["value"]
        assert (seat["move"], seat["turns"]) == (None, None)
        assert f"set {preload:.0f} mm by the tape" in seat["words"]
        assert " ml" not in told[end]["answer"]
    assert "clamps" not in report(demo(UNREAD), with_bands=False)["attitude"]["words"]


def test_an_air_fork_whose_gap_nobody_read_still_has_one_to_set():
    changes = AIR | {"front.gap_left": None, "front.gap_right": None, "front.gap_min": "30 mm"}
    front = ends(changes)["front"]
    assert front["chosen"]["oil"] is None
    assert f"gap {front['chosen']['gap']['value']:.0f} mm" in front["answer"]


def test_a_job_of_which_nothing_is_known_orders_nothing():
    """Every kind of riding, all assumed: no millilitre, no spacer, no turn, no clamp."""
    for use in ("motocross", "road", "two-up", "trials"):
        bare = changed({"format": "stanchion-job", "version": 1}, {"bike.use": use, "rider.mass": "95 kg"})
        whole = report(bare, with_bands=False)
        said = [
            whole["attitude"]["words"],
            *(whole["ends"][end][key] for end in ("front", "rear") for key in ("answer",)),
            *(whole["ends"][end]["seat"]["words"] for end in ("front", "rear")),
        ]
        assert not any(re.search(r"\d ml|Add|Cut|Collar \d|turns|clamps", line) for line in said), said


def test_the_command_line_prints_what_to_do_at_the_seat():
    for changes in ({}, UNREAD):
        told, printed = ends(changes), " ".join(text(demo(changes), with_bands=False).split())
        for end in ("front", "rear"):
            assert told[end]["seat"]["words"] in printed
