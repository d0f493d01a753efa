"""The states of a fork: against Boyle's law and the statics of the piston written out by hand, and the replacement built again."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi
from random import Random

import pytest

from calc.conditions.in_state import WAYS, InState
from calc.conditions.replaced import replaced, solved
from calc.conditions.states import MOVED, states
from calc.demo import jobs
from calc.end.figures import evaluate
from calc.gas.chamber import ISOTHERMAL, Process
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, end_loads
from calc.report import part_of
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
    assert found.strokes[1:] == pytest.approx((145.0, 290.0)), "half and all of the travel"
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
    for i, lost in enumerate(found.lost):
        built, opened = found.told["as built"], found.told["opened into one"]
        apart = [
            moved_fast(leg, one is opened, *_where(one, found.strokes[i], settled=i == 0), n if i else 1.0)[0]
            for one in (built, opened)
        ]
        assert lost.force == pytest.approx(apart[0] - apart[1], abs=0.7), "the whole of it, by hand"
        # Only gas over the oil that has more room, and the push on the rod, can make the leg weaker.
        closed = leg.gas - rod * found.strokes[i] if fill == GAS else 0.0
        assert lost.room == pytest.approx(closed, rel=1e-3, abs=1.0)


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_one_coil_in_the_left_leg_carries_alone_what_gas_leaves(fill):
    """By hand: the left leg with its coil and its steel, the right one with its gas alone."""
    leg, job = exactly(fill, 1, {"front.springs_in": "one"})
    for how in ("as built", "opened into one"):
        one = states(job).told[how]
        sag = float(one.figures.rider.stroke)
        held = sum(slow_force(leg, how, sag, main_in=coil) for coil in (True, False)) / cos(job.number("bike.rake"))
        assert held == pytest.approx(end_loads(job, "front").aboard, rel=1e-3)
        assert float(one.setup.rate) == pytest.approx(leg.main, rel=1e-6)


def _where(one, stroke: float, settled: bool) -> tuple[float, float]:
    """Where the gas settled, and where the leg is."""
    return (stroke if settled else float(one.figures.rider.stroke)), stroke


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_the_force_of_every_state_is_what_its_energy_gives_up(fill):
    """Virtual work: force = dE/ds of springs and gas, by differences of the energy over 0.02 mm."""
    found = states(exactly(fill, 2)[1])
    for how, one in found.told.items():
        strut, _ = one.figures.end.struts[0]
        for process in (ISOTHERMAL, Process(1.33)):
            for s in (30.0, 145.0, 280.0):
                slope = (float(strut.energy(s + 0.01, process)) - float(strut.energy(s - 0.01, process))) / 0.02
                assert float(strut.force(s, process)) == pytest.approx(slope, rel=1e-5), how


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_what_is_solved_gives_back_what_it_is_for_exactly(fill):
    _, job = exactly(fill, 5)
    found, loads = states(job), end_loads(job, "front")
    opened, built = found.told["opened into one"], found.told["as built"].figures
    for way in WAYS:
        again = evaluate(opened.assembly, solved(way, built, opened, loads), loads, conditions(job).exponent)
        if way != "gap replaced":
            assert float(again.rider.stroke) == pytest.approx(float(built.rider.stroke), abs=1e-4)
        if way != "preload replaced":
            assert float(again.end_force) == pytest.approx(float(built.end_force), rel=1e-7)
    assert float(opened.figures.rider.stroke) != pytest.approx(float(built.rider.stroke), abs=0.5), "something was lost"


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("way", WAYS)
def test_a_replacement_put_into_a_job_as_found_is_what_the_report_reads_there(fill, way):
    """Another way through the model: the opened fork is entered as one, with that preload and gap, and sized as any other."""
    _, job = exactly(fill, 5)
    one = states(job).told[way]
    assert (float(one.setup.preload) % 1.0, float(one.setup.gap) % 1.0)[way == "gap replaced"] == 0.0
    entered = {
        "front.cartridge_state": "opened into one",
        "front.preload": f"{float(one.setup.preload):.9f} mm",
        "front.gap_left": f"{float(one.setup.gap):.9f} mm",
        "front.gap_right": None,
        "front.raised_height": f"{20e3 / job_free(job, opened=True):.9f} mm",  # 20 ml poured in again, the cartridge open by now
    }
    found = part_of(exactly(fill, 5, entered)[1], "front", with_bands=False).end.as_found.setup
    assert found.rider_sag.value == pytest.approx(float(one.figures.rider.stroke), abs=2e-3)
    assert found.end_force.value == pytest.approx(float(one.figures.end_force) / 1000.0, rel=2e-6)
    assert found.free_sag.value == pytest.approx(float(one.figures.free.stroke), abs=2e-3)


def test_set_by_hand_is_within_half_a_millimetre_of_exact_and_the_gap_follows_the_preload_as_rounded():
    _, job = exactly(GAS, 5)
    found, loads = states(job), end_loads(job, "front")
    opened, built = found.told["opened into one"], found.told["as built"].figures
    both = replaced("both replaced", found.told["as built"], opened, loads)
    exact = solved("both replaced", built, opened, loads)
    assert abs(float(both.setup.preload) - float(exact.preload)) <= 0.5
    nearer = [evaluate(opened.assembly, _with_gap(both.setup, off), loads, built.process.exponent) for off in (-1.0, 0.0, 1.0)]
    missed = [abs(float(one.end_force - built.end_force)) for one in nearer]
    assert min(missed) == missed[1], "no other whole millimetre comes nearer"


def _with_gap(setup, off: float):
    return replace(setup, gap=setup.gap + off)


def test_where_softer_springs_would_be_needed_no_preload_is_told():
    """A leg whose leak leaves its gas pressed sits higher: with no preload to take out there is nothing to replace it by."""
    _, job = exactly(GAS, 5, {"front.preload": "0 mm"})
    told = states(job)
    high = replace(told.told["as built"], figures=replace(told.told["as built"].figures, rider=_deeper(told, 15.0)))
    refused = replaced("preload replaced", high, told.told["opened into one"], end_loads(job, "front"))
    assert isinstance(refused, Impossible)
    assert "preload of −" in refused.message


def _deeper(told, by: float):
    sag = told.told["opened into one"].figures.rider
    return replace(sag, travel=sag.travel + by, stroke=sag.stroke + by)


def test_the_oil_that_replaces_it_is_what_takes_the_gap_up():
    _, job = exactly(GAS, 5)
    found = states(job)
    was = float(found.told["opened into one"].setup.gap)
    for way in ("gap replaced", "both replaced"):
        new = float(found.told[way].setup.gap)
        assert found.oil[way] == pytest.approx((was - new) * job_free(job, opened=True), rel=1e-6)
    assert "preload replaced" not in found.oil


@pytest.mark.parametrize("how", ["seal leaking", "opened into one"])
def test_a_vented_piston_s_leg_keeps_its_gas_when_it_leaks_or_is_opened(how):
    """Oil is conserved: with the rod out nothing has moved, so each state has the gas over its oil that it had as built."""
    _, job = exactly(PISTON, 1, {"front.piston_back": "vented"})
    told = states(job).told
    hanging = [
        float(told[one].assembly.gas.gases(told[one].setup.rate, told[one].setup.gap)[0].volume0) for one in ("as built", how)
    ]
    assert hanging[1] == pytest.approx(hanging[0], rel=1e-9)


def test_a_vented_leak_that_is_entered_so_is_the_row_of_that_name():
    """All callers agree: its gap is read as it leaks, told as it was while shut, and the row is the fork as found again."""
    entered = {
        "front.piston_back": "vented",
        "front.piston_front": "8 mm",
        "front.cartridge_state": "seal leaking",
        "bike.sags_correct": "no",
    }
    job = exactly(PISTON, 1, entered)[1]
    one = states(job).told["seal leaking"]
    found = part_of(job, "front", with_bands=False).end.as_found.setup
    assert found.end_force.value == pytest.approx(float(one.figures.end_force) / 1000.0, rel=1e-6)
    assert found.rider_sag.value == pytest.approx(float(one.figures.rider.stroke), abs=1e-3)
    assert one.gap_now == pytest.approx(found.gap.value, abs=1e-3)
    assert float(one.setup.gap) > one.gap_now + 20.0, "the oil that came out stands in the gap read now"


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
    assert found.told["both replaced"].setup.gap_split == 0.0
    assert found.told["preload replaced"].setup.gap_split == opened.setup.gap_split, "its oil is left alone"


def job_free(job, opened: bool) -> float:
    """Free area [mm2] by the oil that was poured in around the cartridge; opened, the cartridge's circle is oil's too."""
    around = job.number("front.raised_volume") / job.number("front.raised_height")
    return around + (pi / 4 * job.number("front.cartridge_body") ** 2 if opened else 0.0)


@pytest.mark.parametrize(("while_sealed", "gap"), [("118 mm", 118.0), (None, 125.0)])
def test_of_a_fork_that_is_open_by_now_the_oil_is_that_of_the_gap_set_while_sealed(while_sealed, gap):
    """Nobody's reading: then it was filled as it was sold."""
    document = changed(jobs()["trail"], {"front.push_gap": while_sealed, "standard.gap": "125 mm"})
    assert states(load(document)).shut_gap == pytest.approx(gap)


def test_what_is_lost_is_told_of_the_left_leg_where_the_right_is_filled_otherwise():
    """By hand as above, with the left leg's own gap; the right one has 30 mm more."""
    leg, _ = exactly(GAS, 4)
    job = exactly(GAS, 4, {"front.gap_right": f"{leg.gap + 30.0:.6f} mm"})[1]
    found, n = states(job), job.number("place.exponent")
    built, opened = found.told["as built"], found.told["opened into one"]
    for i, lost in enumerate(found.lost):
        force = [
            moved_fast(leg, one is opened, *_where(one, found.strokes[i], settled=i == 0), n if i else 1.0)[0]
            for one in (built, opened)
        ]
        assert lost.force == pytest.approx(force[0] - force[1], abs=0.7)


def test_a_state_that_cannot_be_stands_as_that_and_the_others_are_told():
    found = states(exactly(GAS, 3, {"front.cartridge_gas": "10 ml"})[1])
    assert isinstance(found.told["as built"], Impossible), "290 mm of the thinnest rod, 10 mm, displace 23 ml"
    assert isinstance(found.told["opened into one"], InState)
    assert (found.lost, dict(found.oil)) == ((), {})
    assert not set(WAYS) & set(found.told)


def test_an_open_fork_has_no_such_states():
    assert states(load(demo())) is None
