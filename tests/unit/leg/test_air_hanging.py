"""An air leg whose balance chamber wins at full extension hangs below it: zero is there, as a tape reads it."""

import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from calc.end.sag import settle
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL, Process, circle
from calc.impossible import Impossible
from calc.job import load
from calc.leg.air import Pumped
from calc.model import conditions, end_loads, fork
from calc.sizing.air_pressure import pressure_for_sag
from calc.springs.helical import LinearSpring
from tests.support.documents import demo
from tests.support.plain import report
from tests.whole.test_air import AIR, SEA

# 14 bar over 60 ml against 8 bar over 400 ml: the leg cannot hang at its stop
PULLED = AIR | {
    "front.balance_fill": "valve",
    "front.balance_pressure": "14 bar",
    "front.balance_volume": "60 ml",
    "front.air_pressure": "8 bar",
}
G = 9.80665


def fork_of(changes):
    job = load(demo(changes))
    assert not job.problems, job.problems
    return fork(job, conditions(job))


def hand(here, gap=126.0):
    """Force of both legs along the fork [N] over the stroke from full extension, slow: Boyle, chamber by chamber."""
    piston, rod, seal = circle(34.0), circle(14.0), circle(48.0)
    grown = piston - rod
    left, right = here.gas.outer.chamber(None, gap), here.gas_right.chamber(None, gap)

    def force(stroke: float) -> float:
        main = (0.8 - 0.01 + SEA) * 400e3 / (400e3 - piston * stroke) - SEA
        balance = (1.4 + SEA) * 60e3 / (60e3 + grown * stroke) - SEA
        outer = sum(
            leg.pressure0 * leg.volume0 / (leg.volume0 - a * stroke) * a - SEA * a for leg, a in ((left, seal - rod), (right, seal))
        )
        return float(main * piston - balance * grown + outer)

    return force


def test_a_tape_reads_from_where_it_hangs():
    """The wheel off the ground, its weight pulling the leg out, then the bike on it: two roots by scipy, the tape between them."""
    here = fork_of(PULLED)
    force, lean = hand(here), math.cos(here.rake)
    hangs = brentq(lambda s: force(s) + 16.0 * G * lean, 0.0, 100.0)
    assert 10 < hangs < 20
    end = here.end(Setup(0.0, 0.0, 126.0))
    for mass in (54.5, 96.2):
        load_ = (mass - 16.0) * G
        settled = brentq(lambda s: force(s) / lean - load_, 0.0, 290.0)  # noqa: B023
        assert float(settle(end, load_).stroke) == pytest.approx(settled - hangs, abs=1e-4)
    assert float(end.motion.stroke(end.travel)) == pytest.approx(300.0 - hangs, abs=1e-5), "the stop stays where it is"


def test_the_forces_at_the_stop_are_those_of_the_whole_stroke():
    """Fast about rider sag: each gas settles where the tape says, counted from its own full extension."""
    here = fork_of(PULLED)
    end = here.end(Setup(0.0, 0.0, 126.0))
    start = float(end.struts[0][0].start)
    sag = float(settle(end, (96.2 - 16.0) * G).stroke)
    one, other = here.gas.gases(None, 126.0), here.gas_right.gases(None, 126.0)
    expected = sum(float(gas.force(300.0, SEA, Process(1.33, sag + start))) for gas in (*one, *other)) / math.cos(here.rake)
    assert float(end.wheel_force(end.travel, Process(1.33, sag))) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("process", [ISOTHERMAL, Process(1.33), Process(1.33, 60.0)])
def test_energy_from_hanging_is_the_force_s_integral(process):
    end = fork_of(PULLED).end(Setup(0.0, 0.0, 126.0))
    whole = quad(lambda z: float(end.wheel_force(z, process)), 0.0, float(end.travel), epsrel=1e-10)[0]
    assert float(end.energy(end.travel, process)) == pytest.approx(whole, rel=1e-8)
    assert float(end.energy(0.0, process)) == 0.0
    assert float(end.wheel_force(0.0, ISOTHERMAL)) == pytest.approx(-16.0 * G, rel=1e-6), "what hangs on it is in balance"


def test_a_fork_that_hangs_at_its_stop_is_as_it_was():
    end = fork_of(AIR).end(Setup(0.0, 0.0, 126.0))
    assert all(np.all(strut.start == 0.0) for strut, _ in end.struts)
    assert float(end.motion.stroke(end.travel)) == pytest.approx(300.0)


def test_with_a_top_out_spring_it_is_in_balance_too_and_holds_nothing():
    end = fork_of(PULLED | {"front.topout": "spring", "front.topout_rate": "15 N/mm"}).end(Setup(0.0, 0.0, 126.0))
    plain = fork_of(PULLED).end(Setup(0.0, 0.0, 126.0))
    assert float(settle(end, 400.0).stroke) == pytest.approx(float(settle(plain, 400.0).stroke), abs=1e-6)


def test_a_bump_rubber_is_touched_where_it_stands():
    """50 mm of rubber on a stroke of 300: from 250 mm of full extension on, wherever the leg hangs."""
    rubber = PULLED | {"front.rubber": "rate", "front.rubber_length": "50 mm", "front.rubber_rate": "20 N/mm"}
    end = fork_of(rubber).end(Setup(0.0, 0.0, 126.0))
    start = float(end.struts[0][0].start)
    for deep in (240.0, 260.0, 300.0):
        expected = 2 * float(LinearSpring(20.0, 0.0).force(max(deep - 250.0, 0.0))) / math.cos(0.4625)
        assert float(end.rubber_wheel_force(end.motion.travel(deep - start))) == pytest.approx(expected, rel=1e-4, abs=1e-6)


def test_many_pressures_at_once_hang_as_one_by_one():
    here = fork_of(PULLED)
    bars = np.array([0.6, 0.8, 1.0, 1.4])
    together = here.end(Setup(0.0, 0.0, 126.0, air=Pumped(bars)))
    alone = [here.end(Setup(0.0, 0.0, 126.0, air=Pumped(bar))) for bar in bars]
    starts = np.broadcast_to(together.struts[0][0].start, 4)
    assert starts == pytest.approx([float(end.struts[0][0].start) for end in alone], abs=1e-6)
    assert starts[0] > starts[1] > starts[2] > 0.0 == starts[3]


def test_a_chamber_that_wins_outright_is_refused_in_words():
    deflated = PULLED | {"front.air_pressure": "0.6 bar", "front.balance_pressure": "25 bar", "front.balance_volume": "300 ml"}
    end = fork_of(deflated).end(Setup(0.0, 0.0, 126.0))
    assert np.all(end.pulled_in)
    with pytest.raises(Impossible, match="pulls the fork in by half of its travel") as caught:
        settle(end, 400.0)
    assert caught.value.field == "front.air_pressure"


@pytest.mark.parametrize("balance", ["14 bar", "20 bar", "25 bar"])
def test_the_pressure_for_a_sag_is_found_past_pressures_that_hold_nothing(balance):
    """The search starts where the balance chamber holds the fork in; what it finds is the sag from hanging."""
    here = fork_of(PULLED | {"front.balance_pressure": balance})
    load_ = (96.2 - 16.0) * G
    pressure = float(pressure_for_sag(here, Setup(0.0, 0.0, 126.0), load_, 66.0))
    end = here.end(Setup(0.0, 0.0, 126.0, air=Pumped(pressure)))
    assert not np.any(end.pulled_in)
    assert float(settle(end, load_).stroke) == pytest.approx(66.0, abs=1e-4)


def test_the_report_says_where_the_tape_starts():
    def lines(changes):
        front = report(demo(changes | {"front.gap_min": "30 mm", "front.gap_max": "300 mm"}), with_bands=False)["ends"]["front"]
        assert front["state"] == "ok", front["problems"]
        return [line for line in front["why"] if "pulls the leg in" in line], front

    told, front = lines(PULLED | {"front.balance_pressure": "17 bar", "front.balance_volume": "40 ml"})
    pulled = 300.0 - front["curve"]["stroke"][-1]
    assert told == [f"With the wheel off the ground the balance chamber pulls the leg in {pulled:.0f} mm: sags count from there."]
    assert lines(AIR | {"front.balance_volume": "60 ml"})[0] == []


def test_the_sag_of_a_job_is_the_tape_s():
    job = load(demo(PULLED))
    found = report(demo(PULLED), with_bands=False)["ends"]["front"]["as_found"]["setup"]
    here = fork(job, conditions(job))
    force, lean = hand(here, 145.0), math.cos(here.rake)
    hangs = brentq(lambda s: force(s) + 16.0 * G * lean, 0.0, 100.0)
    free = brentq(lambda s: force(s) / lean - float(end_loads(job, "front").alone), 0.0, 290.0)
    assert found["free_sag"]["value"] == pytest.approx(free - hangs, abs=0.3)  # its right leg's gap is 147
