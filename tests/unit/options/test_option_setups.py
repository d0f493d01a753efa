"""What an option does: as what was built would, and what two differ by on the same draws."""

from __future__ import annotations

import pytest

from calc.demo import jobs
from calc.job import load
from calc.options.setups import option_bands, options_at
from calc.report import report_of
from calc.report.options import options_report
from calc.sizing.choice import size_end
from tests.support.documents import changed, demo
from tests.support.offers import front, offer_of, offered, rear


def told(*options):
    job = load(offered(offer_of(*options)))
    return options_report(job, job)


def test_an_option_does_what_the_same_setup_does_once_it_is_built():
    built = {"built_rate": "4.2", "built_preload": "2", "built_gap_left": "104", "built_gap_right": "106"}
    document = changed(jobs()["trail"], {f"front.{key}": value for key, value in built.items()})
    setup = report_of(load(document), with_bands=False).ends.front.built.setup
    option = {"setup": {"front": {key.removeprefix("built_"): value for key, value in built.items()}}}
    figures = told(option).options[0].ends[0].figures
    for name in ("free_sag", "rider_sag", "frequency", "end_force", "end_multiple"):
        assert getattr(figures, name).value == pytest.approx(getattr(setup, name).value, rel=1e-9)


@pytest.mark.parametrize("end_by", ["gap", "oil"])
def test_an_air_forks_pressure_is_offered_with_what_the_answer_sets_beside_it(end_by):
    """As once it is built at that pressure: with the answer's gap, or its oil in the chamber, which are not those as found."""
    air = {"front.air": "air leg", "front.air_pressure": "10 bar", "front.air_end": end_by}
    job = load({**changed(jobs()["enduro"], air), "offer": offer_of({"setup": {"front": {"pressure": "9.5 bar"}}})})
    figures = options_report(job, job).options[0].ends[0].figures
    front_ = report_of(load(changed(jobs()["enduro"], air | {"front.built_pressure": "9.5 bar"})), with_bands=False).ends.front
    moved = front_.chosen.gap.value - front_.as_found.setup.gap.value if end_by == "gap" else front_.chosen.air_oil.value
    assert abs(moved) > 5.0
    for name in ("free_sag", "rider_sag", "end_force", "end_multiple"):
        assert getattr(figures, name).value == pytest.approx(getattr(front_.built.setup, name).value, rel=1e-9)


def test_the_gas_share_is_what_the_springs_leave():
    """Springs alone by the chart's own line: 1 - springs / working at full travel."""
    document = changed(
        jobs()["trail"],
        {"front.built_rate": "4.0", "front.built_preload": "5", "front.built_gap_left": "103", "front.built_gap_right": "103"},
    )
    curve = report_of(load(document), with_bands=False).ends.front.built.curve
    share = told(front("5", "103")).options[0].ends[0].figures.gas_share
    assert share.value == pytest.approx(100 * (1 - curve.springs[-1] / curve.working[-1]), abs=0.05)


def test_an_end_without_entries_stays_as_it_came_in():
    ends = told(rear("7")).options[0].ends
    assert [end.stays for end in ends] == [True, False]
    found = report_of(load(jobs()["trail"]), with_bands=False).ends.front.as_found.setup
    assert ends[0].figures.rider_sag.value == pytest.approx(found.rider_sag.value)
    assert ends[0].change is None
    assert "stays as it came in" in ends[0].words


def test_what_two_differ_by_is_surer_than_either():
    """Preload alone: dF = k d q, its +/- by first order from 3 % of the rate, 2 % of the leverage and 4 % of its fall."""
    (pair,) = told(rear("10"), rear("5")).between
    change = pair.ends[0].change
    own = told(rear("10"), rear("5")).options[0].ends[1].figures
    assert change.end_force.value == pytest.approx(-46 * 5 * 0.8 / 1.78 / 1000, rel=1e-6)
    # q = 2 / (L (2 - f)) at full travel: dq/q = -dL/L + df / (2 - f)
    half = abs(change.end_force.value) * (0.03**2 + 0.02**2 + (0.04 / 1.78) ** 2) ** 0.5
    assert change.end_force.plus_minus_95 == pytest.approx(half, rel=0.25)
    assert change.end_force.plus_minus_95 < 0.5 * own.end_force.plus_minus_95


def test_alike_options_differ_by_nothing_give_or_take_nothing():
    (pair,) = told(front("5", "103"), front("5", "103")).between
    change = pair.ends[0].change
    assert (change.end_force.value, change.end_force.plus_minus_95) == (0, 0)


def test_what_is_missing_or_cannot_be_is_named_and_the_others_stand():
    half = {"setup": {"front": {"rate": "4.2"}}}
    locked = front("5", "20")
    report = told(half, locked, front("5", "103"))
    first, second, third = (option.ends[0] for option in report.options)
    assert first.problem.path == "front.built_preload"
    assert "is not entered" in first.words
    assert second.figures is None or second.problem is None
    assert third.figures is not None


def test_no_draw_at_all_leaves_figures_without_a_band():
    job = load(offered(offer_of(rear("10"))))
    done = size_end(job, "rear")
    options = options_at(job, "rear", done, [(dict(job.offer.options[0].setup["rear"]), "")])
    assert option_bands(job, "rear", done, options).own[1]["rider_sag"] > 0


def test_an_air_fork_is_offered_by_its_pressure():
    base = demo({"front.air": "air leg"})
    answer = report_of(load(base), with_bands=False).ends.front.chosen
    option = {"setup": {"front": {"pressure": f"{answer.pressure.text} bar"} | dict.fromkeys(("gap_left", "gap_right"), "120 mm")}}
    job = load({**base, "offer": offer_of(option, {"setup": {"front": {"rate": "4.2", "preload": "3"}}})})
    report = options_report(job, job)
    end = report.options[0].ends[0]
    assert end.setup.startswith(f"{answer.pressure.text} bar")
    assert end.figures.rider_sag.value == pytest.approx(answer.rider_sag.value, abs=1)
    assert "Pressure built is not entered" in report.options[1].ends[0].words
