"""The states along their strokes: against the rows told of them, against the leg's own volumes, and through the door."""

from __future__ import annotations

import json
from random import Random

import numpy as np
import pytest

from calc.boundary import answer, to_json
from calc.demo import jobs
from calc.job import load
from calc.report.states import states_report
from calc.report.states_looked import states_looked
from calc.report.states_text import states_text
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, OUTSIDE, PISTON, made_up


def looked(document):
    return {one.state: one for one in states_looked(load(document)).states}


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_a_curve_ends_where_its_row_says_and_passes_its_sag(fill):
    document = made_up(Random("looked"), fill, True)[1]
    job = load(document)
    rows, seen = {row.state: row for row in states_report(job, job).rows}, looked(changed(document, {"bike.sags_correct": "no"}))
    assert set(seen) == {how for how, row in rows.items() if row.figures}
    for how, one in seen.items():
        told = rows[how].figures
        assert one.label == rows[how].label
        assert one.curve.working[-1] == pytest.approx(told.end_force.value, abs=1e-4)
        assert one.gas_share[-1] == pytest.approx(told.gas_share.value, abs=0.01)
        assert one.behind[-1] == pytest.approx(told.behind[-1].value, abs=1e-3)
        at_sag = np.interp(told.rider_sag.value, one.curve.stroke, one.curve.working)
        assert at_sag == pytest.approx(float(np.interp(told.rider_sag.value, one.curve.stroke, one.curve.slow)), rel=1e-3)
        assert one.setup.rider_sag.text == told.rider_sag.text


def test_the_share_is_what_springs_leave_of_the_force_and_none_where_the_gas_pulls():
    for one in looked(jobs()["trail"]).values():
        for share, springs, whole in zip(one.gas_share, one.curve.springs, one.curve.working, strict=True):
            if share is None:
                assert whole - springs < 1e-5 or springs < 0
            else:
                assert share == pytest.approx(100.0 * (1.0 - springs / whole), abs=0.2)


def test_the_leg_of_each_state_is_drawn_with_the_parts_that_it_has():
    seen = looked(made_up(Random("drawn"), GAS, True)[1])
    for how, one in seen.items():
        names = {part.name for part in one.section.legs[0].parts}
        opened = how in ("opened into one", "preload replaced", "gap replaced", "both replaced")
        assert ("opened cartridge" in names, "cartridge" in names) == (opened, not opened), how
        assert one.section.kind == ("opened cartridge" if opened else "sealed cartridge")
        assert [space.name for space in one.section.legs[0].spaces] == (
            ["over the oil"] if opened else ["over the oil", "cartridge"]
        )
        assert one.section.stroke == one.curve.stroke


def test_behind_the_oil_stands_what_the_drawing_has_in_its_last_space():
    for one in looked(made_up(Random("behind"), GAS, True)[1]).values():
        assert one.behind == pytest.approx(one.section.legs[0].spaces[-1].pressure, abs=1e-3), one.state


def test_the_oil_of_all_states_is_one_amount():
    """Volumes of the drawing, by hand: opened, the gas over the oil is what stood over it and in the cartridge together, less the
    rod that is drawn out of the cartridge with the leg hanging (it is all of it out in both)."""
    leg, document = made_up(Random("states 1"), GAS, True, exact=True)
    seen = looked(document)
    shut, opened = (seen[how].section.legs[0].spaces for how in ("as built", "opened into one"))
    assert opened[0].volume[0] == pytest.approx(shut[0].volume[0] + shut[1].volume[0], abs=0.2)
    assert shut[1].volume[0] == pytest.approx(leg.gas / 1000.0, abs=0.01)
    held = (OUTSIDE + leg.charge) * leg.gas
    assert seen["as built"].curve.stroke[0] == 0.0
    at, room = 30, leg.gas - np.pi / 4 * leg.rod**2 * seen["as built"].curve.stroke[30]
    sag = seen["as built"].setup.rider_sag.value
    then = leg.gas - np.pi / 4 * leg.rod**2 * sag
    n = load(document).number("place.exponent")
    assert seen["as built"].behind[at] == pytest.approx(10.0 * (held / then * (then / room) ** n - OUTSIDE), rel=2e-3)


def test_a_state_that_cannot_be_is_left_out_and_one_that_is_refused_says_why():
    small = looked(changed(made_up(Random("small"), GAS, True)[1], {"front.cartridge_gas": "10 ml"}))
    assert "as built" not in small
    assert "opened into one" in small
    refused = states_looked(load(changed(jobs()["trail"], {"front.travel": "290 kg"})))
    assert refused.states == ()
    assert "refused" in refused.problem
    assert states_looked(load(demo())) is None


def test_limits_that_contradict_each_other_are_said():
    found = states_looked(load(changed(jobs()["trail"], {"front.preload_min": "9 mm", "front.preload_max": "3 mm"})))
    assert found.states == ()
    assert "below the minimum" in found.problem


def test_the_page_asks_for_them_by_themselves_and_gets_what_the_core_tells():
    reply = json.loads(answer(json.dumps({"kind": "states", "job": jobs()["trail"]})))
    assert reply["kind"] == "states"
    assert reply["states"] == json.loads(to_json(states_looked(load(jobs()["trail"]))))
    assert json.loads(answer(json.dumps({"kind": "states", "job": demo()}))) == {"kind": "states", "states": None}
    assert len(json.dumps(reply)) < 150_000, "asked for when they are looked at, and still a moment's work to read"


def test_the_command_line_tells_the_same_along_the_stroke():
    text, found = states_text(load(jobs()["trail"]))
    opened = next(one for one in found.states if one.state == "opened into one")
    assert "Opened to the leg, along the stroke:" in text
    last = f"290  {opened.curve.working[-1]:.2f}     {opened.gas_share[-1]:.0f}       {opened.behind[-1]:.1f}"
    assert last.split() in [line.split() for line in text.splitlines()]
    assert "For the customer:" in text
    assert states_text(load(demo()))[0] == "  This fork has no sealed cartridge."
