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
        own = (figures.rider_sag, figures.end_multiple, figures.gas_share, *figures.behind, figures.gap_now)
        assert numbers(row.words) == [one.text for one in own if one is not None]
    for row, words in zip(report.lost, report.words, strict=False):
        bar, push = row.backing.text.lstrip("−"), row.rod_push.text.lstrip("−")
        gone = row.backing.value >= 0
        assert numbers(words) == [row.stroke.text, bar, push, *([bar, bar] if gone else [])]
        assert ("less stands" in words) == gone
        assert ("more stands" in words) != gone
    if report.replaced:
        shown = {report.replaced.more.text, report.replaced.preload.text, report.replaced.gap.text, report.replaced.oil.text}
        assert set(numbers(report.words[-1])) <= {text.lstrip("−") for text in shown}


def test_what_is_lost_is_the_difference_of_the_rows_above_it():
    report = told(jobs()["trail"])
    rows = {row.state: row.figures for row in report.rows}
    for i, lost in enumerate(report.lost):
        apart = rows["as built"].behind[i].value - rows["opened into one"].behind[i].value
        assert lost.backing.value == pytest.approx(apart, abs=1e-9)


def test_a_state_that_cannot_be_says_why_and_the_table_goes_on():
    report = told(changed(made_up(Random("small"), GAS, True)[1], {"front.cartridge_gas": "10 ml"}))
    rows = {row.state: row for row in report.rows}
    assert rows["as built"].figures is None
    assert "oil-locked" in rows["as built"].problem
    assert rows["opened into one"].figures is not None
    assert rows["as built"].problem in " ".join(" ".join(states_lines(report)).split())


def test_an_open_fork_has_no_such_table():
    assert told(demo()) is None
    assert states_lines(None) == []


def test_a_refused_entry_is_said_not_guessed():
    report = told(changed(jobs()["trail"], {"front.travel": "290 kg"}))
    assert (report.rows, report.replaced) == ((), None)
    assert "refused" in report.problem


def test_the_report_has_it_with_the_bands_only_and_json_takes_it():
    job = load(jobs()["trail"])
    assert part_of(job, "front", with_bands=False).states is None
    whole = report_of(job)
    assert whole.states is not None
    assert [row.state for row in whole.states.rows] == ["as built", "seal leaking", "oil moved", "opened into one"]
    assert "backing" in to_json(whole)
