"""The states of a fork: against Boyle's law and the statics of the piston written out by hand, and the replacement built again."""

from __future__ import annotations

from math import cos, pi
from random import Random

import pytest

from calc.conditions.states import MOVED, InState, states
from calc.end.figures import evaluate
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, end_loads
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, OUTSIDE, PISTON, Leg, made_up, slow_force


def exactly(fill: str, seed: int, changes: dict | None = None):
    """A made-up fork whose readings have no error."""
    leg, document = made_up(Random(f"states {seed}"), fill, True, exact=True)
    return leg, load(changed(document, changes or {}))


def moved_fast(leg: Leg, opened: bool, sag: float, s: float, n: float) -> tuple[float, float]:
    """Force [N] of a leg at a stroke, moved fast from a sag, and gauge pressure [MPa] behind its damper's oil: P V = const down to
    the sag, P V^n = const from there, absolute pressures; gauge only where a force is made of one.
    """
    whole, rod, head = (pi / 4 * d * d for d in (leg.seal, leg.rod, leg.piston))

    def at(room: float, swept: float, start: float) -> float:
        return start * room / (room - swept * sag) * ((room - swept * sag) / (room - swept * s)) ** n

    coil = leg.main * (leg.preload + s)
    in_it = leg.goes_in + leg.steel
    if leg.fill == PISTON:
        over = at(leg.free * leg.gap + whole * leg.collapsed - in_it, whole, OUTSIDE) - OUTSIDE
        press = 0.0 if opened else leg.charge + leg.spring * rod * s / head / head
        return coil + over * whole + press * rod, over + press
    around = leg.free * leg.gap + (whole - rod) * leg.collapsed - in_it
    if opened:
        over = at(around + leg.gas, whole, OUTSIDE) - OUTSIDE
        return coil + over * whole, over
    over, inside = at(around, whole - rod, OUTSIDE) - OUTSIDE, at(leg.gas, rod, OUTSIDE + leg.charge) - OUTSIDE
    return coil + over * (whole - rod) + inside * rod, inside


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("seed", range(3))
def test_as_built_and_opened_are_the_sum_of_the_forces_by_hand(fill, seed):
    leg, job = exactly(fill, seed)
    found, load_on = states(job), end_loads(job, "front").aboard
    leaning = 2.0 / cos(job.number("bike.rake"))  # what two legs do at the wheel, by their work: the leg goes 1 / cos further
    n = job.number("place.exponent")
    pressure = {}
    for how in ("as built", "opened into one"):
        one = found.told[how]
        sag = float(one.figures.rider.stroke)
        held = leaning * slow_force(leg, how, sag, main_in=True)
        assert held == pytest.approx(load_on, rel=1e-3)
        force, _ = moved_fast(leg, how != "as built", sag, 290.0, n)
        assert float(one.figures.end_force) == pytest.approx(leaning * force, rel=1e-3)
        coils = leaning * leg.main * (leg.preload + 290.0)
        assert one.gas_share == pytest.approx(1.0 - coils / float(one.figures.end_force), abs=1e-3)
        first = found.strokes[0]
        at = [moved_fast(leg, how != "as built", first, first, 1.0)[1]]
        at += [moved_fast(leg, how != "as built", sag, s, n)[1] for s in found.strokes[1:]]
        assert [one.behind(s, i == 0) for i, s in enumerate(found.strokes)] == pytest.approx(at, rel=2e-3, abs=1e-4)
        pressure[how] = at
    rod = pi / 4 * leg.rod**2
    for lost, built, opened in zip(found.lost, pressure["as built"], pressure["opened into one"], strict=True):
        assert lost.backing == pytest.approx(built - opened, rel=1e-2, abs=5e-4)
        assert lost.rod_push == pytest.approx((built - opened) * rod, rel=1e-2, abs=0.1)


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_the_replacement_built_and_worked_out_again_gives_both_back(fill):
    _, job = exactly(fill, 5)
    found = states(job)
    opened, built = found.told["opened into one"], found.told["as built"].figures
    again = evaluate(opened.assembly, found.replaced.setup, end_loads(job, "front"), conditions(job).exponent)
    assert float(again.rider.stroke) == pytest.approx(float(built.rider.stroke), abs=1e-4)
    assert float(again.end_force) == pytest.approx(float(built.end_force), rel=1e-7)
    assert float(opened.figures.rider.stroke) != pytest.approx(float(built.rider.stroke), abs=0.5), "something was lost"


def test_the_oil_that_replaces_it_is_what_takes_the_gap_up():
    _, job = exactly(GAS, 5)
    found = states(job)
    was, new = float(found.told["opened into one"].setup.gap), float(found.replaced.setup.gap)
    assert found.replaced.oil == pytest.approx((was - new) * job_free(job, opened=True), rel=1e-6)


@pytest.mark.parametrize("how", ["seal leaking", "opened into one"])
def test_a_vented_piston_s_leg_keeps_its_gas_when_it_leaks_or_is_opened(how):
    """Oil is conserved: with the rod out nothing has moved, so each state has the gas over its oil that it had as built."""
    _, job = exactly(PISTON, 1, {"front.piston_back": "vented"})
    told = states(job).told
    hanging = [
        float(told[one].assembly.gas.gases(told[one].setup.rate, told[one].setup.gap)[0].volume0) for one in ("as built", how)
    ]
    assert hanging[1] == pytest.approx(hanging[0], rel=1e-9)


def test_a_lost_charge_leaves_the_gas_at_the_air_outside():
    leg, job = exactly(GAS, 1)
    lost = states(job).told["charge lost"]
    rod = pi / 4 * leg.rod**2
    assert lost.behind(0.0, settled=True) == pytest.approx(0.0, abs=1e-9)
    assert lost.behind(100.0, settled=True) == pytest.approx(OUTSIDE * (leg.gas / (leg.gas - rod * 100.0) - 1.0), rel=1e-3)
    assert "charge lost" not in states(exactly(PISTON, 1)[1]).told, "a spring does not lose its charge by itself"


def test_oil_moved_is_the_fork_that_is_entered_so():
    _, job = exactly(GAS, 2)
    said = states(job)
    assert (said.moved, said.assumed) == (MOVED, True)
    _, entered = exactly(GAS, 2, {"front.cartridge_state": "oil moved", "front.oil_moved": "20 ml"})
    found = states(entered)
    assert (found.moved, found.assumed) == (pytest.approx(MOVED), False)
    want, got = (one.told["oil moved"].figures for one in (said, found))
    assert float(got.end_force) == pytest.approx(float(want.end_force), rel=1e-9)


def test_oil_that_nobody_measured_is_an_example_and_stops_no_row():
    found = states(exactly(GAS, 2, {"front.cartridge_state": "oil moved"})[1])
    assert (found.moved, found.assumed) == (MOVED, True)
    assert all(isinstance(one, InState) for one in found.told.values())


def test_legs_filled_unlike_each_other_are_opened_each_by_its_own_oil_and_replaced_alike():
    _, job = exactly(GAS, 4, {"front.gap_right": "118 mm"})
    found = states(job)
    opened = found.told["opened into one"]
    apart = 118.0 - job.number("front.gap_left")
    assert 2.0 * float(opened.setup.gap_split) * job_free(job, opened=True) == pytest.approx(
        apart * job_free(job, opened=False), rel=1e-6
    )
    assert found.replaced.setup.gap_split == 0.0


def job_free(job, opened: bool) -> float:
    """Free area [mm2] by the oil that was poured in around the cartridge; opened, the cartridge's circle is oil's too."""
    around = job.number("front.raised_volume") / job.number("front.raised_height")
    return around + (pi / 4 * job.number("front.cartridge_body") ** 2 if opened else 0.0)


def test_a_state_that_cannot_be_stands_as_that_and_the_others_are_told():
    found = states(exactly(GAS, 3, {"front.cartridge_gas": "10 ml"})[1])
    assert isinstance(found.told["as built"], Impossible), "290 mm of the thinnest rod, 10 mm, displace 23 ml"
    assert isinstance(found.told["opened into one"], InState)
    assert (found.lost, found.replaced) == ((), None)


def test_an_open_fork_has_no_such_states():
    assert states(load(demo())) is None
