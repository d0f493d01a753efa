"""The +/- of a fork's states: against Boyle's law drawn by hand, draw by draw against one at a time, and where a state cannot be."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest

from calc.conditions.states import states
from calc.demo import jobs
from calc.job import load
from calc.model.draws import drawn
from calc.model.survivors import picked
from calc.report import report_of
from calc.report.states import states_report
from calc.uncertainty.state_bands import ENOUGH, _Drawn, state_bands
from calc.uncertainty.tolerance import with_tolerance
from tests.support.documents import changed
from tests.support.hand_push import GAS, Leg, made_up
from tests.unit.conditions.test_states import moved_fast
from tests.unit.uncertainty.test_bands import half

COUNT = 20_000


def hand_drawn(leg: Leg) -> tuple[Leg, np.ndarray]:
    """The leg's readings drawn at random, normal with half of the +/- that `made_up` writes beside them; and the exponent."""
    rng = np.random.default_rng(20261130)

    def normal(true: float, plus_minus: float) -> np.ndarray:
        return true + plus_minus / 2 * rng.standard_normal(COUNT)

    rise = normal(20e3 / leg.free, 0.3)
    one = Leg(
        leg.fill, normal(leg.gap, 2), 20e3 / rise, normal(leg.seal, 0.05), normal(leg.collapsed, 1), normal(leg.goes_in, 3e3),
        normal(leg.rod, 0.05), normal(leg.gas, 5e3), normal(leg.charge, 0.03), leg.piston, leg.spring, normal(leg.main, 0.05),
        normal(leg.preload, 1), normal(leg.steel, 1e3),
    )  # fmt: skip
    return one, np.clip(normal(1.33, 0.07), 1.0, 1.4)


@pytest.mark.parametrize("seed", range(2))
def test_what_backs_the_oil_and_what_opening_takes_by_boyles_law_drawn_by_hand(seed):
    """At full travel, on 2000 draws. Sags are the job's: the bands of sags have a test of their own."""
    leg, document = made_up(Random(f"state bands {seed}"), GAS, True, exact=True)
    job = load(document, 2000)
    found = states(job)
    sure = state_bands(job, found)
    one, n = hand_drawn(leg)
    sag = {how: float(found.told[how].figures.rider.stroke) for how in ("as built", "opened into one")}
    built, opened = (moved_fast(one, how != "as built", sag[how], found.strokes[2], n) for how in sag)
    assert sure.figures["as built"]["behind2"] == pytest.approx(half(built[1]), rel=0.06)
    assert sure.figures["opened into one"]["behind2"] == pytest.approx(half(opened[1]), rel=0.06)
    assert sure.lost[2]["backing"] == pytest.approx(half(built[1] - opened[1]), rel=0.06)
    assert sure.lost[2]["force"] == pytest.approx(half(built[0] - opened[0]), rel=0.06)


@pytest.mark.parametrize("name", ["gas", "piston"])
def test_all_draws_together_are_as_one_at_a_time(name):
    document = jobs()["trail"] if name == "piston" else made_up(Random("one at a time"), GAS, True)[1]
    job = load(changed(document, {"front.oil_moved": "5 ml"}))
    found = states(job)
    here = _Drawn(with_tolerance(drawn(job, 40)), found)
    for how in found.told:
        together = here.figures(how, here.draws)
        for column in (0, 17, 39):
            alone = here.figures(how, picked(here.draws, np.array([column])))
            assert together.keys() == alone.keys()
            for what, samples in together.items():
                single = np.broadcast_to(samples, (40,))[column]
                assert float(np.ravel(alone[what])[0]) == pytest.approx(float(single), rel=1e-6, abs=1e-6), (how, what)


def test_what_is_set_anew_is_known_as_well_as_a_bench_sets_it():
    """The gap that was read is known to 20 mm in the demo, the one that is set to a millimetre: what hangs on it follows."""
    job = load(jobs()["trail"])
    figures = state_bands(job, states(job)).figures
    assert figures["gap replaced"]["gap_now"] == pytest.approx(1.0, abs=0.1)
    assert figures["opened into one"]["gap_now"] > 10.0
    assert figures["gap replaced"]["end_multiple"] < 0.5 * figures["opened into one"]["end_multiple"]
    assert figures["preload replaced"]["end_multiple"] == pytest.approx(figures["opened into one"]["end_multiple"], rel=0.1)


def test_a_better_read_charge_narrows_what_it_presses_with():
    coarse, fine = (
        load(changed(jobs()["trail"], {"front.charge_force": {"value": "17 N", "plus_minus_95": read, "origin": "measured"}}))
        for read in ("6 N", "1 N")
    )
    assert state_bands(coarse, states(coarse)).lost[0]["backing"] > 1.5 * state_bands(fine, states(fine)).lost[0]["backing"]


def test_where_a_state_cannot_be_in_every_run_that_is_said():
    told = states_report(job := load(jobs()["trail"]), job)
    moved = next(row for row in told.rows if row.state == "oil moved")
    out = state_bands(job, states(job)).left_out
    assert set(out) == {"oil moved"}
    assert 0.01 < out["oil moved"] < 1.0 - ENOUGH
    assert moved.words.endswith(f" In {100 * out['oil moved']:.0f} of 100 runs it could not be so.")
    assert moved.figures.rider_sag.plus_minus_95 > 0
    little = load(changed(jobs()["trail"], {"front.oil_moved": "2 ml"}))
    assert not state_bands(little, states(little)).left_out


def test_every_figure_of_every_state_carries_its_plus_minus():
    told = report_of(load(jobs()["trail"])).states
    for row in told.rows:
        figures = row.figures
        for name in ("free_sag", "rider_sag", "end_force", "end_multiple", "gas_share"):
            assert getattr(figures, name).plus_minus_text.startswith("±"), (row.state, name)
        assert all(one.plus_minus_text for one in figures.behind)
    for row in told.lost:
        assert all(figure.plus_minus_text for figure in row.figures), row.what
