"""A spring that a tester finds far off what it was sold as: it is no yardstick, and that is said."""

from __future__ import annotations

import pytest

from calc.job import load
from calc.model.limits import marked_as_sold, standard_setup
from calc.report import report_of
from calc.report.text import report_text
from tests.support.documents import demo

SOLD = {"standard.fork_springs": "as sold"}


def on_tester(rate: float, **more: str | None):
    """The demo's fork springs on a tester, exact, as they were sold unless told otherwise."""
    points = "; ".join(f"{x} {rate * x:.1f}" for x in (20, 60, 100, 140))
    entries = {"front.rate_from": "tester", "front.tester": points} | SOLD
    return load(demo(entries | {path.replace("__", "."): value for path, value in more.items()}))


@pytest.mark.parametrize("where", ["standard__fork_rate", "front__rate"])
def test_what_it_was_sold_as_is_the_yardstick_wherever_it_was_typed(where):
    others = {"standard__fork_rate": None, "front__rate": None}
    job = on_tester(3.7, **(others | {where: "4.2 N/mm"}))
    assert marked_as_sold(job, "front") == 4.2
    assert float(standard_setup(job, "front").rate) == 4.2
    untold = on_tester(3.7, **others)
    assert marked_as_sold(untold, "front") is None
    assert float(standard_setup(untold, "front").rate) == pytest.approx(3.7)


def test_a_rate_that_nobody_tested_is_what_it_is_marked():
    assert marked_as_sold(load(demo(SOLD)), "front") is None


@pytest.mark.parametrize(
    ("rate", "said"),
    [
        (3.7, "That is 12 % under the 4.2 it was sold as: worn, or not what it is marked."),
        (4.5, "That is 7 % over the 4.2 it was sold as: not what it is marked."),
        (4.03, None),
    ],
)
def test_it_is_said_beyond_what_springs_of_one_marking_differ_by(rate, said):
    """5 % at worst; common practice, no source."""
    text = " ".join(report_text(report_of(on_tester(rate, front__rate="4.2 N/mm"), with_bands=False)).split())
    assert ("it was sold as" in text) == (said is not None)
    assert said is None or said in text


def test_the_worn_one_is_not_kept_for_its_own_sake():
    """The rider it is sold for, on springs that have lost an eighth: what it was sold with, not what is left of it."""
    rider = {"rider__mass": "84 kg", "standard__rider": "84 kg", "front__rate": "4.2 N/mm"}
    chosen = report_of(on_tester(3.65, **rider), with_bands=False).ends.front.chosen
    assert chosen.rate.value == pytest.approx(4.2, abs=0.21)
    assert not chosen.fitted
