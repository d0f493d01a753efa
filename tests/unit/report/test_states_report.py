"""What is told of a fork's states: words against the figures beside them, and where nothing is told."""

from __future__ import annotations

import re
from random import Random

import pytest

from calc.boundary import to_json
from calc.demo import jobs
from calc.job import load
from calc.report import part_of, report_of
from calc.report.states import states_report
from calc.report.states_text import states_lines
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, PISTON, made_up


def told(document):
    job = load(document)
    return states_report(job, job)


def numbers(words: str) -> list[str]:
    return re.findall(r"−?\d+(?:\.\d+)?", words)


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("seed", range(4))
def test_every_number_in_the_words_is_one_of_the_figures(fill, seed):
    report = told(made_up(Random(f"words {seed}"), fill, True)[1])
    for row in report.rows:
        if row.figures is None:
            assert row.problem.startswith(f"{row.label}: ")
            continue
        figures = row.figures
        said = (figures.rider_sag, figures.end_multiple, figures.gas_share, *figures.behind)
        own = [text for one in said for text in (one.text, one.plus_minus_text.lstrip("±")) if text]
        own += [] if figures.gap_now is None else [figures.gap_now.text]
        assert row.words.startswith(f"{row.label}, ")
        words = row.words.removeprefix(row.label).partition(" In ")[0]
        assert numbers(words) == own
        if row.state in ("gap replaced", "preload replaced"):
            anew = next(one for one in report.replacements if one.state == row.state)
            assert numbers(row.label) == [(anew.preload or anew.gap).text]
    check_lost(report)
    check_plain(report)


def of(report, what: str):
    return next(row for row in report.lost if row.what == what)


def check_lost(report) -> None:
    """What gives each loss back, against the replacement and the rows that it speaks of."""
    if not report.lost:
        return
    rows = {row.state: row.figures for row in report.rows}
    both = next((one for one in report.replacements if one.state == "both replaced"), None)
    if both is None:
        assert of(report, "push").replaced.startswith("Nothing replaces it: ")
        return
    now, was = rows["both replaced"], rows["as built"]
    size = both.more.text.lstrip("−")
    assert numbers(of(report, "push").replaced) == [size, both.preload.text, now.rider_sag.text, was.rider_sag.text]
    assert (" less," in of(report, "push").replaced) == (both.more.value < 0)
    oil = [both.oil.text.lstrip("−")] if float(both.oil.text.lstrip("−")) else []
    for room in (row for row in report.lost if row.what == "room"):
        assert numbers(room.replaced) == [both.gap.text, *oil, now.end_multiple.text, was.end_multiple.text]
        assert ("out of each leg" in room.replaced) == (bool(oil) and both.oil.value < 0)
    most = max(of(report, "backing").figures, key=lambda one: one.value)
    assert numbers(of(report, "backing").replaced) == ([most.text] * 2 if most.value >= 0.05 else [])


def check_plain(report) -> None:
    """The customer's sentences, against the rows: by how much it sinks more, and what is said of its end and its damping."""
    rows = {row.state: row for row in report.rows}
    built = rows["as built"].figures
    for how, row in rows.items():
        if not row.plain or how == "as built" or built is None:
            continue
        told, words = row.figures, row.plain
        deeper = int(told.rider_sag.text) - int(built.rider_sag.text)
        moved = ["20"] if how == "oil moved" else []
        assert numbers(words) == [*moved, told.rider_sag.text, *([str(abs(deeper))] if deeper else [])]
        assert ("mm more" in words, "mm less" in words, "as before" in words) == (
            deeper > 0,
            deeper < 0,
            not deeper,
        )
        harder = float(told.end_multiple.text) - float(built.end_multiple.text)
        felt = abs(told.end_force.value / built.end_force.value - 1) > 0.02  # below that two force curves count as the same
        assert ("harder" in words, "softer" in words) == (felt and harder > 0, felt and harder < 0)
        assert ("fade" in words) == (number(told.behind[1]) < number(built.behind[1]))


def number(figure) -> float:
    return float(figure.text.replace("−", "-"))


def test_a_customer_is_told_one_sentence_a_state():
    for fill, states in ((GAS, 6), (PISTON, 5)):
        report = told(made_up(Random("five"), fill, True)[1])
        plain = [row.plain for row in report.rows if row.plain]
        assert len(plain) == states, "each state, and opened with all set anew"
        assert all(words.count(".") == 1 and words.endswith(".") for words in plain)
        assert not any(word in " ".join(plain) for word in ("bar", "backing", "gap", "preload", "cavitat", "N/mm"))


def test_what_is_put_in_as_built_is_what_the_label_says_and_the_report_then_tells():
    document = jobs()["trail"]
    report = told(document)
    assert [one.state for one in report.replacements] == ["preload replaced", "gap replaced", "both replaced"]
    for one in report.replacements:
        entries = dict(one.entries)
        assert numbers(one.label) == [figure.text for figure in (one.preload, one.more, one.gap) if figure is not None]
        gaps = {entries["front.built_gap_left"], entries["front.built_gap_right"]}
        assert gaps == {"112 mm" if one.gap is None else f"{one.gap.text} mm"}, (
            "a gap that is not set anew is the one that was read"
        )
        assert entries["front.built_preload"] == ("3 mm" if one.preload is None else f"{one.preload.text} mm")
        assert entries["front.built_rate"] == "4.0 N/mm"
        built = part_of(load(changed(document, entries)), "front", with_bands=False).end.built
        assert built.problem is None
        assert built.setup.preload.text == entries["front.built_preload"].split()[0]
        # With the gap set anew it is the very fork of the row, its oil known by another reading.
        if one.gap is not None:
            row = next(row.figures for row in report.rows if row.state == one.state)
            assert built.setup.rider_sag.value == pytest.approx(row.rider_sag.value, abs=0.05)
            assert built.setup.end_force.value == pytest.approx(row.end_force.value, rel=2e-3)


@pytest.mark.parametrize(("found", "decimals"), [("3 mm", 0), ("3.5 mm", 1)])
def test_how_much_more_preload_is_what_is_turned_in_beyond_what_was_found(found, decimals):
    report = told(changed(jobs()["trail"], {"front.preload": found}))
    set_anew = [one for one in report.replacements if one.preload is not None]
    assert len(set_anew) == 2
    for one in set_anew:
        turned = float(one.preload.text) - float(found.removesuffix(" mm"))
        assert turned > 0, "what the rod pushed is missing"
        assert one.more.text == f"{turned:.{decimals}f}"
        assert f"(+{one.more.text})" in one.label


def test_a_single_coil_is_preloaded_like_two():
    """In one leg it has twice the rate and is set as a pair is: the preload that replaces the rod's push is told and typed."""
    one = told(changed(jobs()["trail"], {"front.springs_in": "one", "front.rate": "8.0 N/mm"}))
    assert [(done.state, done.preload is None) for done in one.replacements] == [
        ("preload replaced", False), ("gap replaced", True), ("both replaced", False),
    ]  # fmt: skip
    for done, pair in zip(one.replacements, told(jobs()["trail"]).replacements, strict=True):
        entries = dict(done.entries)
        assert float(entries["front.built_rate"].split()[0]) == 8.0
        if done.preload is not None:
            assert entries["front.built_preload"] == f"{done.preload.text} mm"
            assert done.more.text == f"{float(done.preload.text) - 3.0:.0f}"
            assert done.more.value == pytest.approx(pair.more.value, abs=1.0)


def test_unequal_springs_are_put_in_each_in_its_leg():
    document = changed(jobs()["trail"], {"front.spring_kind": "unequal", "front.rate_right": "4.4 N/mm"})
    entries = dict(told(document).replacements[-1].entries)
    assert (entries["front.built_rate"], entries["front.built_rate_right"]) == ("4.0 N/mm", "4.4 N/mm")


def test_a_fork_that_is_not_opened_yet_is_told_what_to_enter_first():
    report = told(made_up(Random("shut"), GAS, True)[1])
    assert all(one.entries == () for one in report.replacements)
    assert "enter “Opened to the leg”" in report.build
    assert "as built" in told(jobs()["trail"]).build


def test_beyond_what_can_be_built_a_caution_stands_beside_it():
    sold = {"front.preload_max": "6 mm", "front.gap_min": "110 mm"}
    by = {one.state: one.caution for one in told(changed(jobs()["trail"], sold)).replacements}
    assert by["preload replaced"] == "A preload of 8 mm: 6 mm is the most."
    assert by["gap replaced"] == "A gap of 108 mm: 110 mm is the least."
    assert "6 mm is the most" in by["both replaced"]
    assert "110 mm is the least" in by["both replaced"]
    assert all(one.caution == "" for one in told(jobs()["trail"]).replacements)
    assumed = told(changed(made_up(Random("states 5"), GAS, True, exact=True)[1], {"front.preload": "9 mm"})).replacements[0]
    assert "15 mm is assumed to be the most" in assumed.caution


def test_what_is_lost_is_the_difference_of_the_rows_above_it():
    report = told(jobs()["trail"])
    rows = {row.state: row.figures for row in report.rows}
    for i, lost in enumerate(of(report, "backing").figures):
        apart = rows["as built"].behind[i].value - rows["opened into one"].behind[i].value
        assert lost.value == pytest.approx(apart, abs=1e-9)


def test_a_state_that_cannot_be_says_why_and_the_table_goes_on():
    report = told(changed(made_up(Random("small"), GAS, True)[1], {"front.cartridge_gas": "10 ml"}))
    rows = {row.state: row for row in report.rows}
    assert rows["as built"].figures is None
    assert "oil-locked" in rows["as built"].problem
    assert rows["opened into one"].figures is not None
    assert rows["as built"].problem in " ".join(" ".join(states_lines(report)).split())


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("seed", range(4))
def test_a_loss_of_nothing_is_no_row(fill, seed):
    for lost in told(made_up(Random(f"words {seed}"), fill, True)[1]).lost:
        assert {figure.text for figure in lost.figures} != {"0"}, lost.label


def test_gas_behind_the_oil_gives_its_room_back_and_a_piston_has_none():
    room = {fill: [one.what for one in told(made_up(Random("words 0"), fill, True)[1]).lost] for fill in (GAS, PISTON)}
    assert room == {GAS: ["push", "room", "force", "backing"], PISTON: ["push", "force", "backing"]}


def test_the_demo_opened_by_a_piston_loses_no_room_for_gas():
    report = told(jobs()["trail"])
    assert [row.what for row in report.lost] == ["push", "force", "backing"]
    assert "Room for gas" not in " ".join(states_lines(report))


def test_an_open_fork_has_no_such_table():
    assert told(demo()) is None
    assert states_lines(None) == []


def test_a_refused_entry_is_said_not_guessed():
    report = told(changed(jobs()["trail"], {"front.travel": "290 kg"}))
    assert (report.rows, report.replacements, report.lost) == ((), (), ())
    assert "refused" in report.problem


def test_the_report_has_it_with_the_bands_only_and_json_takes_it():
    job = load(jobs()["trail"])
    assert part_of(job, "front", with_bands=False).states is None
    whole = report_of(job)
    assert whole.states is not None
    assert [row.state for row in whole.states.rows] == [
        "as built", "seal leaking", "oil moved", "opened into one", "preload replaced", "gap replaced", "both replaced",
    ]  # fmt: skip
    assert "backing" in to_json(whole)
