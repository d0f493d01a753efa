"""A leg pushed slowly: against plain arithmetic, energies built from volumes, and the same fork entered in the state it is in."""

from __future__ import annotations

import math
from random import Random

import numpy as np
import pytest

from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, fork
from calc.model.push_read import OPEN, as_pushed, moved_ranges, push_read, states_of
from calc.model.pushed import bench, pushed_leg, why_not
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, OUTSIDE, PISTON, STATES, Leg, made_up, slow_force

STROKES = np.array([40.0, 150.0, 220.0, 270.0])
POINTS = {"front.push_points": "; ".join(f"{stroke:g} 100" for stroke in STROKES)}


def exactly(fill: str, seed: int, changes: dict | None = None):
    """A made-up leg whose readings have no error, and its job."""
    leg, document = made_up(Random(f"pushed {seed}"), fill, True, exact=True)
    job = load(changed(document, POINTS | (changes or {})))
    assert not job.problems, job.problems
    return leg, job


def pushed(job, state, moved=0.0):
    """The leg in a state, exactly so much oil [mm3] moved."""
    push = push_read(job)
    return pushed_leg(as_pushed(job, push, (moved, moved)), push, state)


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("spring", ["out", "in"])
@pytest.mark.parametrize("bled", ["yes", "no"])
def test_the_force_is_that_of_plain_arithmetic(state, fill, spring, bled):
    for seed in range(4):
        leg, job = exactly(fill, seed, {"front.push_spring": spring, "front.push_bled": bled})
        moved = 8e3 if state == "oil moved" else 0.0
        found = pushed(job, state, moved).force(STROKES)
        let_off = bled == "yes" or spring == "out"
        want = [slow_force(leg, state, float(s), moved, let_off, spring == "in") for s in STROKES]
        assert found == pytest.approx(want, rel=2e-4, abs=0.05)


def stored(leg: Leg, state: str, s: float, moved: float) -> float:
    """Energy [N mm] of a gas-filled leg at a stroke, by what isothermal compression of each volume takes; no force, no area of one."""
    whole, rod = math.pi / 4 * leg.seal**2, math.pi / 4 * leg.rod**2
    outer, oil = leg.free * leg.gap + (whole - rod) * leg.collapsed - leg.goes_in, moved if state == "oil moved" else 0.0
    if state in ("seal leaking", "opened into one"):
        room = outer + leg.gas
        return OUTSIDE * room * math.log(room / (room - whole * s)) - OUTSIDE * whole * s
    around, inside = outer - oil, leg.gas + oil
    air = OUTSIDE * around * math.log(around / (around - (whole - rod) * s))
    held = (OUTSIDE + leg.charge) * leg.gas * math.log(inside / (inside - rod * s))
    return air + held - OUTSIDE * whole * s


@pytest.mark.parametrize("state", STATES)
def test_the_force_does_the_work_that_the_gas_stores(state):
    leg, job = exactly(GAS, 7)
    for stroke, force in zip(STROKES, pushed(job, state, -12e3).force(STROKES), strict=True):
        step = 1e-2
        work = (stored(leg, state, stroke + step, -12e3) - stored(leg, state, stroke - step, -12e3)) / (2 * step)
        assert float(force) == pytest.approx(work, rel=2e-4, abs=0.02)


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize(
    "read",
    [
        {},
        {"front.gap_read": "in", "front.free_length": "460 mm"},
        {"front.gap_state": "extended", "front.gap_left": "420 mm"},
        {"front.piston_back": "vented", "front.piston_front": "6 mm"},
    ],
)
def test_opened_it_is_the_fork_that_is_entered_as_opened_with_the_gap_it_shows_then(fill, read):
    """The gap by now, entered as that of an opened leg, gives the same gas through the model of the fork."""
    _, job = exactly(fill, 3, {"front.push_spring": "in", "front.area_by": "diameters", **read})
    leg = pushed(job, "opened into one")
    now = float(leg.gap_now())
    _, after = exactly(
        fill,
        3,
        {"front.area_by": "diameters", **read, "front.cartridge_state": "opened into one", "front.gap_left": f"{now:.6f} mm"},
    )
    gas = fork(after, bench(after)).gas.gases(leg.rate, now)
    shallow = np.array([30.0, 70.0, 110.0])
    there = Strut((), gas, bench(after).ambient).force(shallow, ISOTHERMAL)
    assert leg.strut.gas_force(shallow, ISOTHERMAL) == pytest.approx(there, rel=1e-6)
    assert now < float(leg.gap) or read.get("front.gap_state"), "with the rod's room gone and no cartridge in the oil"


@pytest.mark.parametrize("state", ["seal leaking", "opened into one"])
def test_a_leak_beside_a_vented_piston_leaves_the_gas_that_was_there_with_the_rod_out(state):
    """By hand: the gap was set while the cartridge was shut, so what the rod swept was never gas; from then on all of the seal area works."""
    leg, job = exactly(PISTON, 1, {"front.piston_back": "vented"})
    whole, rod = (math.pi / 4 * d * d for d in (leg.seal, leg.rod))
    room = leg.free * leg.gap + (whole - rod) * leg.collapsed - leg.goes_in
    want = OUTSIDE * (room / (room - whole * STROKES) - 1.0) * whole
    assert pushed(job, state).force(STROKES) == pytest.approx(want, rel=2e-4)


@pytest.mark.parametrize("moved", [-20e3, 15e3])
def test_the_gap_by_now_is_the_one_that_holds_so_much_less_gas(moved):
    _, job = exactly(GAS, 5)
    leg = pushed(job, "oil moved", moved)
    now = float(leg.gap_now())
    free = 20e3 / job.number("front.raised_height")
    assert now == pytest.approx(float(leg.gap) - moved / free, abs=1e-6)
    assert float(pushed(job, "seal leaking").gap_now()) == float(leg.gap)


def test_a_spring_out_leaves_its_steel_and_spacer_to_the_gas():
    changes = {"front.spacer_volume": "12 ml", "front.gap_read": "in", "front.free_length": "460 mm"}
    _, out = exactly(GAS, 2, changes)
    _, inside = exactly(GAS, 2, changes | {"front.push_spring": "in"})
    volumes = [float(pushed(job, "as built").strut.gases[0].volume0) for job in (out, inside)]
    assert volumes[0] - volumes[1] == pytest.approx(out.number("front.spring_steel") + 12e3, abs=1.0)


def test_the_bench_is_where_the_legs_are_bled():
    _, job = exactly(GAS, 1, {"place.ridden_altitude": "2000 m", "place.ridden_temperature": "50 °C"})
    assert float(pushed(job, "as built").strut.ambient) == pytest.approx(OUTSIDE, abs=1e-6)
    assert conditions(job).ambient < OUTSIDE - 0.01
    _, same = exactly(GAS, 1)
    assert pushed(job, "oil moved", 9e3).force(STROKES) == pytest.approx(pushed(same, "oil moved", 9e3).force(STROKES))


def test_near_oil_lock_nothing_is_told_and_what_goes_on_is_steep():
    _, job = exactly(GAS, 1, {"front.gap_left": "60 mm"})
    leg = pushed(job, "as built")
    lock = float(leg.lock)
    assert np.isnan(leg.force(np.array([lock + 1.0, 0.99 * lock]))).all()
    assert np.isfinite(leg.force(np.array([0.97 * lock]))).all()
    there = leg.force_unbounded(np.array([0.97 * lock, 0.975 * lock, lock, lock + 20.0]))
    assert np.all(np.diff(there) > 0)


def test_a_bump_rubber_is_pushed_too():
    rubber = {"front.rubber": "rate", "front.rubber_length": "40 mm", "front.rubber_rate": "20 N/mm"}
    _, bare = exactly(GAS, 1)
    _, job = exactly(GAS, 1, rubber)
    more = pushed(job, "as built").force(STROKES) - pushed(bare, "as built").force(STROKES)
    assert more == pytest.approx([0, 0, 0, 20.0 * (270 - (290 - 40))])


def test_a_leg_opened_since_has_the_gap_that_was_last_set_while_sealed():
    _, job = exactly(GAS, 4, {"front.cartridge_state": "opened into one", "front.push_gap": "118 mm", "front.area_by": "diameters"})
    _, before = exactly(GAS, 4, {"front.gap_left": "118 mm", "front.area_by": "diameters"})
    for state in STATES:
        assert pushed(job, state).force(STROKES) == pytest.approx(pushed(before, state).force(STROKES)), state


def test_the_right_leg_has_its_own_gap():
    _, job = exactly(GAS, 4, {"front.gap_right": "90 mm", "front.push_leg": "right"})
    assert float(pushed(job, "as built").gap) == 90.0


def test_an_open_leg_is_the_fork_s_own():
    job = load(demo(POINTS | {"front.push_spring": "in"}))
    assert states_of(job) == (OPEN,)
    leg = pushed_leg(as_pushed(job, push_read(job)), push_read(job), OPEN)
    gas = fork(job, bench(job)).gas.gases(4.2, 145.0)
    springs = 4.2 * (STROKES + job.number("front.preload"))
    assert leg.force(STROKES) == pytest.approx(Strut((), gas, bench(job).ambient).force(STROKES, ISOTHERMAL) + springs)


def test_oil_leaves_a_piston_no_further_than_it_presses_and_fills_no_gas_whole():
    leg, job = exactly(PISTON, 1)
    head = math.pi / 4 * leg.piston**2
    assert moved_ranges(job)["out"][1] == pytest.approx(min(0.8 * leg.charge * head**2 / leg.spring, 60e3), rel=1e-3)
    leg, job = exactly(GAS, 1)
    assert -moved_ranges(job)["in"][0] == pytest.approx(0.5 * (leg.gas - math.pi / 4 * leg.rod**2 * 290), rel=1e-3)
    _, tight = exactly(GAS, 1, {"front.cartridge_gas": "38 ml"})
    assert set(moved_ranges(tight)) == {"out"}, "no room for oil"


def test_what_cannot_be_is_refused_in_words():
    _, job = exactly(GAS, 1)
    assert why_not(job, push_read(job)) == ""
    _, deep = exactly(GAS, 1, {"front.push_points": "250 300; 340 800"})
    assert "Pushed to 340 mm: the leg is fully collapsed at" in why_not(deep, push_read(deep))
    _, thick = exactly(GAS, 1, {"front.damper_rod": "0 mm"})
    assert "has a damper rod" in why_not(thick, push_read(thick))
    with pytest.raises(Impossible):
        pushed(thick, "as built")
    refused = load(changed(exactly_document(), {"front.gap_left": "9 km"}))
    assert "refused" in why_not(refused, push_read(refused))


def exactly_document():
    return changed(made_up(Random("refused"), GAS, True, exact=True)[1], POINTS)


def test_no_points_or_another_fork_is_no_push():
    assert push_read(load(demo())) is None
    assert push_read(load(demo(POINTS | {"front.air": "air leg"}))) is None
    assert push_read(load(demo({"front.push_points": "250 nonsense; 260 9"}))) is None
