"""The same curve: found from forces, told from those of the report's own chart and from closed form."""

from __future__ import annotations

import numpy as np
import pytest

from calc.demo import jobs
from calc.job import load
from calc.options.curves import SAME
from calc.report import report_of
from calc.report.options import options_report
from tests.support.documents import changed
from tests.support.offers import front, offer_of, offered, rear


def between(*options, demo="trail"):
    job = load(offered(offer_of(*options), demo))
    return options_report(job, job).between


def test_a_millimetre_of_collar_by_closed_form():
    """A linear spring behind linear leverage: dF = k d q(z). Average leverage 2.5, falling by 22 %: q = 0.8 / 1.78 at full travel."""
    (told,) = between(rear("10 mm"), rear("12 mm"))
    row = told.ends[0]
    assert row.apart.value == pytest.approx(46 * 2 * 0.8 / 1.78, rel=1e-9)
    assert row.at.value == pytest.approx(300)
    assert not row.same
    (told,) = between(rear("10 mm"), rear("10.5 mm"))
    assert told.ends[0].apart.value == pytest.approx(46 * 0.5 * 0.8 / 1.78, rel=1e-9)
    assert told.same


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (("5", "103", "4.0"), ("5", "103", "4.0")),
        (("5", "103", "4.0"), ("5", "104", "4.0")),
        (("5", "103", "4.0"), ("6", "103", "4.0")),
        (("5", "103", "4.0"), ("7", "103", "4.0")),
        (("5", "103", "4.0"), ("5", "112", "4.0")),
        (("5", "103", "4.0"), ("2", "105", "4.2")),
        (("5", "103", "4.0"), ("4,4", "103", "4.05")),
    ],
)
def test_against_the_curves_of_the_chart(one, other):
    """What was built goes another way through the report, to the curves of its chart: 61 points, in kN."""
    curves, report = [], None
    for preload, gap, rate in (one, other):
        paths = {"built_rate": rate, "built_preload": preload, "built_gap_left": gap, "built_gap_right": gap}
        document = changed(jobs()["trail"], {f"front.{key}": value for key, value in paths.items()})
        del document["offer"]
        report = report_of(load(document), with_bands=False)
        curves.append(report.ends.front.built.curve)
    load_ = report.ends.front.load.aboard.value
    first, second = ([np.asarray(line) * 1000 for line in (curve.slow, curve.working)] for curve in curves)
    apart = max(float(np.max(np.abs(b - a))) for a, b in zip(first, second, strict=True))
    same = all(bool(np.all(np.abs(b - a) <= SAME * np.maximum(np.abs(a), load_))) for a, b in zip(first, second, strict=True))
    (told,) = between(*(front(preload, gap, rate) for preload, gap, rate in (one, other)))
    assert told.ends[0].apart.value == pytest.approx(apart, rel=0.01, abs=0.05)
    assert told.same == same


def test_where_they_are_the_most_apart_is_one_of_the_places_compared():
    """120 steps from hanging to full travel, so that every other place is one of the chart's 61: short of the end, a stiffer spring
    with less preload and more gap."""
    (told,) = between(front("5", "103", "4.0"), front("2", "105", "4.2"))
    steps = told.ends[0].at.value / 290.0 * 120.0
    assert steps == pytest.approx(round(steps), abs=1e-6)
    assert 60 < round(steps) < 120


def test_unlike_entries_can_give_one_curve_and_the_page_finds_it():
    """2 x 2 N/mm beside 1.9 and 2.1: by the mean, which is all that both legs together push with."""
    pair = front("5", "103")
    pair["setup"]["front"] |= {"rate": "3.9", "rate_right": "4.1"}
    (told,) = between(front("5", "103"), pair)
    assert told.same
    assert told.ends[0].apart.value == pytest.approx(0, abs=1)


def test_of_several_each_is_told_against_the_one_that_rides_like_it():
    told = between(rear("10"), rear("5"), rear("5"), rear("2"))
    assert [(row.one, row.other, row.same) for row in told] == [(1, 2, False), (2, 3, True), (1, 4, False)]


def test_two_options_that_touch_neither_end_have_no_curves_to_compare():
    bare = {"parts": [{"what": "seals", "count": "1", "price": "10"}]}
    assert between(bare, bare) == ()
    (told,) = between(bare, rear("10 mm"))
    assert told.same  # as it came in is 46 N/mm and 10 mm
