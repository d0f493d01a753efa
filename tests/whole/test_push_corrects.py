"""What the points of a push correct, read back: each number in a sentence is one of the row's own; what it rests on is said."""

from __future__ import annotations

import re
from random import Random

import pytest

from calc.job import load
from calc.report import report_of
from calc.report.letter import sags_text
from calc.report.text import report_text
from tests.support.documents import changed
from tests.support.hand_push import GAS, PISTON, Leg, made_up, slow_force

STROKES = (150, 200, 240, 262, 278)


def pushed(seed: str, fill: str, state: str = "as built", **changes: object) -> tuple[Leg, dict]:
    """A made-up leg pushed, 20 N of friction in what was read, its gap read to 8 mm."""
    leg, document = made_up(Random(seed), fill, True)
    read = "; ".join(f"{s} {slow_force(leg, state, float(s)) + 20:.1f}" for s in STROKES)
    entries = {"front.push_points": read, "front.gap_left": {"value": f"{leg.gap + 7:.1f} mm", "plus_minus_95": "8 mm"}}
    return leg, changed(document, entries | {f"front.{key}": value for key, value in changes.items()})


@pytest.mark.parametrize("number", range(8))
def test_each_number_of_a_correction_is_its_rows(number):
    changes = {"gap_left": None} if number % 2 else {"cartridge_charge": None}
    told = report_of(load(pushed(f"row {number}", (GAS, PISTON)[number // 2 % 2], **changes)[1]))
    assert told.sags is not None or told.push.corrects == ("These points change none of your readings.",)
    for one in told.sags.corrections if told.sags else ():
        said = re.findall(r"\d+(?:\.\d+)?", one.words.removeprefix(one.label))
        rows = [one.before.text, one.before.plus_minus_text, one.after.text, one.after.plus_minus_text]
        assert said == [text.lstrip("−±") for text in rows if text], one.words
        assert "by your push" in one.words
        assert one.words in told.push.corrects


def test_the_gap_corrected_is_the_one_that_the_leg_truly_had():
    leg, document = pushed("row", GAS)
    told = report_of(load(document))
    gap = next(one for one in told.sags.corrections if one.path == "front.gap_left")
    assert gap.before.value == pytest.approx(leg.gap + 7, abs=0.05)
    assert abs(gap.after.value - leg.gap) <= gap.after.plus_minus_95
    assert told.sags.by == "your push"
    assert told.sags.words == ("The answer rests on the corrected readings. What you typed stays as it is.",)


def test_an_answer_that_rests_on_the_push_has_another_end_force():
    _, document = pushed("row", GAS)
    by_push = report_of(load(document)).ends.front.as_found.setup
    as_entered = report_of(load(changed(document, {"front.push_correct": "no"}))).ends.front.as_found.setup
    assert by_push.end_force.value > 1.02 * as_entered.end_force.value  # less gap: less gas


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"push_correct": "no"}, "The answer rests on your readings as they are: these points are only compared."),
        (
            {"cartridge_state": None},
            "Say which condition the cartridge is in: then the points can correct the readings of the leg.",
        ),
        ({"push_points": "150 400; 200 400; 240 400"}, "The points do not fit the leg as entered, so they correct nothing."),
    ],
)
def test_why_nothing_is_corrected_is_said(changes, words):
    told = report_of(load(pushed("row", GAS, **changes)[1]))
    assert words in told.push.corrects
    assert told.sags is None


def test_another_state_than_the_one_entered_comes_first():
    """Entered as built, its charge not known; pushed with its charge gone."""
    _, document = pushed("row", GAS, "opened into one", cartridge_charge={"value": "3 bar", "plus_minus_95": "3 bar"})
    told = report_of(load(document))
    if told.push.states and "as built" not in told.push.states:
        assert told.push.corrects[0].startswith(("You entered the cartridge as “As built”", "The points do not fit"))
    else:
        assert told.push.corrects[0].startswith("The cartridge is taken as you entered it, “As built”")


def test_the_command_line_says_it_in_both_letters():
    report = report_of(load(pushed("row", GAS)[1]))
    gap = next(one.words for one in report.sags.corrections if one.path == "front.gap_left")
    for text in (sags_text(report), report_text(report)):
        assert gap in " ".join(text.split())
