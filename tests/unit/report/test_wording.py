"""What is told, to the last word and digit: units, cases, decimals, who is named first. Sentences have a file of their own."""

import io
import json
import os
import re

import numpy as np
import pytest

from calc.__main__ import main
from calc.boundary import answer
from calc.gas.chamber import hydraulic_lock, open_leg
from calc.impossible import Impossible, decimals_apart
from calc.job import load
from calc.job.starter import start, with_notes
from calc.practice import usual
from calc.quantities.entry import EntryError, read_entry
from calc.report.quantity import banded_text, known_rate, quantity, with_half
from calc.sizing.air_pressure import LEAST, MOST, none_holds
from calc.springs.table import ForceTable
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.plain import text as text_of
from tests.support.verdicts import agrees, numbers
from tests.unit.model.test_cartridge import GAS
from tests.unit.model.test_motion_job import the_published
from tests.whole.test_air import AIR, OIL, SECOND


def front_of(changes=None, **how):
    return report(demo(changes), **how)["ends"]["front"]


# A half-width as it stands beside a value: to the value's decimals, but never as nothing.
@pytest.mark.parametrize(("half", "decimals", "text"), [
    (2.4, 0, "±2"), (0.4, 0, "±0.4"), (0.04, 1, "±0.04"), (0.26, 1, "±0.3"), (0.5, 0, "±0.5"), (None, 0, ""), (11.6, 1, "±11.6"),
])  # fmt: skip
def test_a_half_width_is_never_nothing(half, decimals, text):
    assert with_half(quantity(30.0, "mm", "", decimals), half).plus_minus_text == text


def test_the_case_says_per_leg_at_the_front_and_per_shock_at_the_rear():
    ends = report(demo(), with_bands=False)["ends"]
    assert ends["front"]["chosen"]["rate"]["case"] == "per leg"
    assert ends["rear"]["chosen"]["rate"]["case"] == "per shock"
    assert ends["front"]["chosen"]["preload"]["case"] == "per leg, at full extension"


def test_the_curve_is_told_to_a_hundredth_of_a_millimetre_and_ends_at_full_travel():
    stroke = front_of({"front.travel": "299.987 mm"}, with_bands=False)["curve"]["stroke"]
    assert stroke == [round(x, 2) for x in stroke]
    assert (stroke[0], stroke[-1]) == (0.0, 299.99)


def test_the_table_on_the_command_line_names_gap_at_the_front_only_and_each_row():
    text = text_of(demo(), with_bands=False)
    front, rear = (part.split("N/mm: ")[0] for part in text.split("\nRear\n"))
    heads = [next(line for line in part.split("\n") if "preload  " in line) for part in (front, rear)]
    assert "gap" in heads[0]
    assert "gap" not in heads[1]
    for name in ("one step softer", "chosen", "one step stiffer", "what is in", "as found", "standard, its rider"):
        assert f"  {name} " in front, name


def test_a_choice_that_is_first_on_the_shelf_is_still_the_choice():
    front = front_of({"front.buy": "stock", "front.stock": "4.6 4.8 5.0"}, with_bands=False)
    assert [(c["rate"]["value"], c["relation"]) for c in front["candidates"]][:3] == [
        (4.2, "one step softer"),
        (4.6, "chosen"),
        (4.8, "one step stiffer"),
    ]


def test_a_wanted_sag_that_is_assumed_follows_the_travel():
    """So many hundredths of the travel, and its +/- too: the row's own, whichever side of the typical is the wider."""
    row = usual("rider sag front", "enduro")
    for travel in (300.0, 240.0):
        told = report(demo({"front.target_sag": None, "front.travel": f"{travel:g} mm"}), with_bands=False)["fields"][
            "front.target_sag"
        ]
        assert told["value"] == round(row.typical / 100.0 * travel)
        half = max(row.high - row.typical, row.typical - row.low) / 100.0 * travel
        assert load(demo({"front.target_sag": None, "front.travel": f"{travel:g} mm"})).fields[
            "front.target_sag"
        ].plus_minus == pytest.approx(half)


def test_a_failure_is_told_in_the_letters_that_were_typed():
    reply = answer(json.dumps({"kind": "size", "job": {"format": "stanchion-job", "version": 1, "vélo": {}}}))
    assert "vélo" in reply
    assert json.loads(reply)["kind"] == "failure"


def test_a_job_is_not_invented_unless_it_says_so():
    said = demo()
    assert report(said, with_bands=False)["header"]["invented"] is True
    del said["invented"]
    assert report(said, with_bands=False)["header"]["invented"] is False


def test_a_table_that_falls_twice_is_told_where_it_falls_first():
    with pytest.raises(Impossible, match=r"from 10 mm \(50 N\) to 20 mm \(40 N\)"):
        ForceTable(((0, 0), (10, 50), (20, 40), (30, 90), (40, 80))).mean_rate  # noqa: B018


def test_more_oil_in_than_there_was_gas_names_the_gas():
    (problem,) = front_of(
        GAS | {"front.cartridge_gas": "60.53 ml", "front.cartridge_state": "oil moved", "front.oil_moved": "-80 ml"}
    )["problems"]
    assert "than the 61 ml of its gas" in problem["message"]


def test_bled_deeper_than_there_is_gas_names_the_stroke():
    with pytest.raises(Impossible) as caught:
        open_leg(200e3, 1000.0, 100.0, 100e3, 0.1, bled_stroke=250.0)
    assert caught.value.message == hydraulic_lock(200.0).message  # (200 + 100 - 100) ml over 10 cm2


def test_the_pressures_that_were_tried_are_those_that_are_told():
    assert f"No pressure from {10 * LEAST:.1f} to {10 * MOST:.0f} bar at the gauge holds" in none_holds(786.5, 66.0).message


def test_a_character_that_cannot_be_seen_is_refused_as_such():
    for text in ("4.4\u202e", "4.4 \u200b N/mm", "\x074.4"):
        with pytest.raises(EntryError) as caught:
            read_entry(text, "spring rate", "N/mm")
        assert caught.value.message == "this contains characters that cannot be shown", ascii(text)


def test_the_starter_s_notes_name_each_field_s_unit():
    notes = with_notes(demo())
    assert "In mm unless you write a unit." in notes["front"]["travel"]["note"]
    assert "In plain numbers unless you write a unit." in notes["rear"]["leverage"]["note"]
    assert "One of: both, one." in notes["front"]["springs_in"]["note"]


def test_a_reader_that_closes_early_is_no_crash(monkeypatch, tmp_path):
    (tmp_path / "job.json").write_text(json.dumps(demo()), encoding="utf-8")
    closed: list[int] = []

    def close(*_):
        raise BrokenPipeError

    class Pipe(io.StringIO):
        write = close

        def fileno(self):
            return 99

    monkeypatch.setattr("sys.stdout", Pipe())
    monkeypatch.setattr(os, "dup2", lambda _, to: closed.append(to))
    assert main([str(tmp_path / "job.json")]) == 1
    assert closed == [99], "what is still in the pipe goes nowhere"


RESULTS = {
    "preload": "preload", "gap": "gap", "rider sag": "rider_sag", "free sag": "free_sag", "force at full travel": "end_multiple", "spring rate": "rate",
    "pressure": "pressure", "oil in the chamber": "air_oil", "second volume's pressure": "second_pressure",
}  # fmt: skip


@pytest.mark.parametrize("changes", [{}, OIL, SECOND])
def test_what_a_reading_would_narrow_is_told_in_the_unit_of_the_result(changes):
    """ "Now" is first order, and told only within a half of the draws' own +/-; both numbers as the result's decimals show them."""
    front = front_of(changes)
    assert front["measure_next"]
    for ask in front["measure_next"]:
        told = front["chosen"][RESULTS[ask["result"]]]
        assert ask["unit"] == (told["unit"] or "× rider load")
        assert 1 / 1.5 < ask["now"] / told["plus_minus_95"] < 1.5
        now, then = numbers(ask["words"])[-2:]
        assert agrees(now, ask["now"])
        decimals = decimals_apart(ask["now"], ask["then"], told["decimals"])
        assert [len(text.partition(".")[2]) for text in (now, then)] == [decimals, decimals], ask["words"]


def test_halving_or_better_is_promised_only_as_far_as_care_goes():
    """A reading that is far off its careful +/- can be narrowed by more than half; then = now sqrt(1 - share (1 - kept^2))."""

    def asked(half):
        front = front_of({"front.unsprung": {"value": "16 kg", "plus_minus_95": f"{half} kg", "origin": "measured"}})
        return next(ask for ask in front["measure_next"] if ask["path"] == "front.unsprung")

    for half, kept in ((12.0, 1.5 / 12.0), (4.0, 1.5 / 4.0), (2.0, 0.5)):
        ask = asked(half)
        assert ask["then"] == pytest.approx(ask["now"] * (1.0 - ask["share"] * (1.0 - kept**2)) ** 0.5, rel=0.02)


def test_the_side_view_hangs_on_the_swingarm_pivot_and_shows_tenths_of_the_shock():
    views = report(demo(the_published()), with_bands=False)["ends"]["rear"]["motion"]["views"]
    assert views
    for view in views:
        assert view["points"]["swingarm pivot"] == [0.0, 0.0]
        assert view["shock_length"]["decimals"] == 1
        assert view["travel"]["decimals"] == 0


def test_air_alone_tells_no_coil_and_no_balance_chamber_where_there_is_none():
    told = front_of(AIR | {"front.balance": "no"}, with_bands=False)
    assert told["as_found"]["setup"]["rate"]["value"] == 0.0
    assert np.isfinite(told["as_found"]["setup"]["free_sag"]["value"])


@pytest.mark.parametrize(("mass", "own", "said"), [
    ("150 kg", {}, {"front": True, "rear": True}), ("86 kg", {}, {"front": False, "rear": False}),
    ("150 kg", {"preload fork": {"low": 5, "high": 40, "typical": 12}}, {"front": False, "rear": True}),
])  # fmt: skip
def test_more_preload_than_usual_is_told_where_a_stiffer_spring_needs_less(mass, own, said):
    """Usual of a road bike: 5 to 20 mm in a fork, 5 to 18 on a shock, common practice, no source; a job's own range stands for it."""
    for axle, end in report(start("road", mass) | {"practice": own}, draws=60)["ends"].items():
        chosen, high = end["chosen"], {"front": 20, "rear": 18}[axle]
        words = f"{chosen['preload']['text']} mm preload is more than usual (5 to {high}): a stiffer spring does it with less."
        assert (words in end["why"]) == said[axle], end["why"]
        assert any("more than usual" in line for line in end["why"]) == said[axle]
        less = [one for one in end["candidates"] if one["preload"]["value"] < chosen["preload"]["value"]]
        assert not said[axle] or any(one["rider_sag"]["text"] == chosen["rider_sag"]["text"] for one in less)


def test_more_preload_than_usual_is_no_word_where_no_stiffer_spring_is_on_offer():
    job = start("road", "150 kg")
    job["rear"] = job.get("rear", {}) | {"buy": "stock", "stock": "75 80"}
    end = report(job, with_bands=False)["ends"]["rear"]
    assert end["chosen"]["preload"]["value"] > 18
    assert end["chosen"]["rate"]["value"] == max(one["rate"]["value"] for one in end["candidates"])
    assert not any("more than usual" in line for line in end["why"])


@pytest.mark.parametrize(("value", "half", "told"), [
    (80.31, 35.3, "80 ±35"), (52.4, 5.04, "52 ±5"), (52.4, 4.9, "52.4 ±4.9"), (9.614, 2.62, "9.6 ±2.6"), (9.614, 0.3, "9.61 ±0.30"),
])  # fmt: skip
def test_a_rate_is_told_no_finer_than_it_is_known(value, half, told):
    assert banded_text(known_rate(value, half, "")) == told


def test_a_reading_that_narrows_a_rate_of_many_is_told_in_whole_ones():
    """Of a shock spring that nobody read: known to some 20 N/mm, no tenth of which is known."""
    end = report(start("enduro", "86 kg"), draws=60)["ends"]["rear"]
    (words,) = (one["words"] for one in end["measure_next"] if one["result"] == "spring rate")
    now, then = re.search(r"from ±(\S+) to ±(\S+) N/mm", words).groups()
    assert float(now) > 5.0
    assert "." not in now + then


def test_the_line_of_two_sags_tells_a_loose_rate_in_whole_ones():
    sags = {"alone_sag": "37 mm", "alone_again_sag": "35 mm", "aboard_sag": "104 mm", "aboard_again_sag": "102 mm"}
    job = start("motocross", "82 kg")
    job["rear"] = job.get("rear", {}) | {"rate": "52 N/mm"} | sags
    (end,) = report(job, with_bands=False)["sags"]["ends"]
    assert end["spring_rate"]["plus_minus_95"] > 5.0
    told = f"the spring is {end['spring_rate']['value']:.0f} ±{end['spring_rate']['plus_minus_95']:.0f} N/mm"
    assert any(told in words for words in end["words"]), end["words"]
