"""A sealed cartridge: its piston and charge, its states, against energies built from volumes and against plain arithmetic."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Chamber, Process, circle
from calc.gas.piston import SpringPiston
from calc.impossible import Impossible
from calc.job import load
from calc.leg.sealed import SealedLeg
from calc.model import conditions, fork
from calc.model.fork import leak_gap
from tests.support.documents import demo
from tests.support.plain import report
from tests.unit.end.test_end import open_leg

AMBIENT = 0.0966
ROD, PISTON = circle(12.0), circle(28.0)
SEALED = {"front.air": "sealed cartridge", "place.bled_altitude": "0 m", "place.ridden_altitude": "0 m"}
GAS = SEALED | {"front.cartridge_fill": "gas", "front.cartridge_charge": "3 bar", "front.cartridge_gas": "90 ml"}
SPRING = SEALED | {"front.cartridge_charge": "1.5 bar", "front.piston_spring": "2 N/mm"}
SEA = 0.101325


def leg_of(changes):
    job = load(demo(changes))
    assert not job.problems, job.problems
    return fork(job, conditions(job)).gas


def strut_of(changes, gap=126.0):
    return Strut((), leg_of(changes).gases(4.2, gap), SEA)


@given(stroke=st.floats(5, 300), preload=st.floats(0, 200), rate=st.floats(0.1, 8), n=st.floats(1, 1.4))
def test_a_piston_before_the_leg_s_air_against_an_energy_built_from_volumes(stroke, preload, rate, n):
    """The leg's gas is squeezed by the seal area times the stroke, the spring by the rod's volume over the piston; no areas of force."""
    piston, process = SpringPiston(preload, rate, ROD, PISTON), Process(n)
    strut = Strut((), (Chamber(700e3, AMBIENT, circle(48.0)), piston), AMBIENT)

    def stored(s):
        air, start = 700e3 - circle(48.0) * s, 700e3
        gas = (
            AMBIENT * start * np.log(start / air) if n == 1 else AMBIENT * start**n * (air ** (1 - n) - start ** (1 - n)) / (n - 1)
        )
        moved = ROD * s / PISTON
        return gas - AMBIENT * (start - air) + preload * moved + rate * moved**2 / 2

    step = 1e-2
    assert float(strut.force(stroke, process)) == pytest.approx(
        (stored(stroke + step) - stored(stroke - step)) / (2 * step), rel=1e-4, abs=0.01
    )
    assert float(strut.energy(stroke, process)) == pytest.approx(stored(stroke), rel=1e-6, abs=0.5)


@given(stroke=st.floats(1, 280), bleed=st.floats(5, 80))
def test_force_rate_and_energy_of_a_piston_agree_and_bleeding_holds_the_force(stroke, bleed):
    piston, step = SpringPiston(92.0, 2.0, ROD, PISTON, bleed=bleed), 1e-4
    rise = piston.energy(stroke + step, AMBIENT, ISOTHERMAL) - piston.energy(stroke - step, AMBIENT, ISOTHERMAL)
    assert float(rise) / (2 * step) == pytest.approx(float(piston.force(stroke, AMBIENT, ISOTHERMAL)), rel=1e-6)
    past = stroke * ROD / PISTON > bleed + 1e-3
    assert (float(piston.rate_at(stroke, AMBIENT, ISOTHERMAL)) == 0.0) == past or abs(stroke * ROD / PISTON - bleed) < 2e-3
    if past:
        assert float(piston.force(stroke, AMBIENT, ISOTHERMAL)) == pytest.approx((92.0 + 2.0 * bleed) * ROD / PISTON)


def test_a_piston_at_its_stop_names_the_stroke():
    piston = SpringPiston(92.0, 2.0, ROD, PISTON, stop=40.0)
    assert float(piston.lock_stroke()) == pytest.approx(40.0 * PISTON / ROD)
    with pytest.raises(Impossible, match="The cartridge is oil-locked at 218 mm: its piston stands at its stop") as caught:
        piston.force(np.array([100.0, 250.0]), AMBIENT, ISOTHERMAL)
    assert caught.value.field == "front.piston_stop"
    assert np.isfinite(SpringPiston(92.0, 2.0, ROD, PISTON, stop=40.0, bleed=30.0).force(250.0, AMBIENT, ISOTHERMAL))


@pytest.mark.parametrize("changes", [{}, SPRING, SPRING | {"front.piston_back": "vented"}, GAS])
def test_swept_areas_add_up_to_the_seal_area(changes):
    leg = leg_of(SEALED | changes if changes else {})
    gases = leg.gases(4.2, 126.0)
    swept = sum(float(g.area) for g in gases if isinstance(g, Chamber))
    vented = changes.get("front.piston_back") == "vented"
    assert swept + (ROD if vented else 0.0) == pytest.approx(circle(48.0))


@pytest.mark.parametrize("changes", [GAS, SPRING, SPRING | {"front.piston_back": "vented"}])
def test_the_rod_end_on_a_scale_reads_the_charge(changes):
    """Force over the rod's area, whatever presses."""
    gauge = 0.3 if "front.cartridge_gas" in changes else 0.15
    cartridge = leg_of(changes).cartridge
    assert float(cartridge.force(0.0, SEA, ISOTHERMAL)) == pytest.approx(gauge * ROD)
    newtons = changes | {"front.charge_by": "scale", "front.charge_force": f"{gauge * ROD:.6f} N"}
    del newtons["front.cartridge_charge"]
    assert float(leg_of(newtons).cartridge.force(0.0, SEA, ISOTHERMAL)) == pytest.approx(gauge * ROD)


def test_a_charge_carries_at_altitude_what_it_gained_there():
    """Gauge where it was filled: ridden high, the rod is pushed by the pressure that is missing outside too."""
    high = leg_of(GAS | {"place.ridden_altitude": "2000 m"}).cartridge
    assert float(high.force(0.0, 0.0794952, ISOTHERMAL)) == pytest.approx((0.3 + SEA - 0.0794952) * ROD, rel=1e-6)


@given(moved=st.floats(-20, 40), stroke=st.floats(0, 300))
def test_oil_that_crosses_the_seal_moves_volume_and_nothing_else(moved, stroke):
    before = leg_of(GAS).gases(4.2, 126.0)
    for bled in ("yes", "no"):
        state = {"front.cartridge_state": "oil moved", "front.oil_moved": f"{moved} ml", "front.bled_since": bled}
        after = leg_of(GAS | state).gases(4.2, 126.0)
        lost = [float(b.volume(stroke) - a.volume(stroke)) for b, a in zip(before, after, strict=True)]
        assert lost == pytest.approx([moved * 1000, -moved * 1000], abs=1e-3)
        kept = [float(g.pressure0 * g.volume0) for g in after]
        assert kept[1] == pytest.approx(float(before[1].pressure0 * before[1].volume0)), "the cartridge's gas is kept"
        if bled == "no":
            assert kept[0] == pytest.approx(float(before[0].pressure0 * before[0].volume0)), "and the leg's"
        else:
            assert float(after[0].pressure0) == pytest.approx(SEA)


def test_twenty_millilitres_raise_the_end_force_by_a_tenth_and_sag_shows_nothing():
    found = [
        report(demo(GAS | changes), with_bands=False)["ends"]["front"]["as_found"]["setup"]
        for changes in ({}, {"front.cartridge_state": "oil moved", "front.oil_moved": "20 ml"})
    ]
    assert 1.03 < found[1]["end_force"]["value"] / found[0]["end_force"]["value"] < 1.15
    assert abs(found[1]["rider_sag"]["value"] - found[0]["rider_sag"]["value"]) < 3.0, "within a tape's reading"


def test_oil_out_of_a_spring_loaded_cartridge_only_slackens_its_spring():
    """The piston comes forward by the oil that left: behind it the leg's air has as much more room as the oil takes."""
    state = {"front.cartridge_state": "oil moved", "front.oil_moved": "5 ml"}
    before, after = leg_of(SPRING).gases(4.2, 126.0), leg_of(SPRING | state).gases(4.2, 126.0)
    assert float(after[0].volume0) == pytest.approx(float(before[0].volume0))
    less = 2.0 * 5000.0 / PISTON * ROD / PISTON
    assert float(before[1].force(100.0, SEA, ISOTHERMAL) - after[1].force(100.0, SEA, ISOTHERMAL)) == pytest.approx(less)
    vented = SPRING | {"front.piston_back": "vented"}
    before, after = leg_of(vented).gases(4.2, 126.0), leg_of(vented | state).gases(4.2, 126.0)
    assert float(before[0].volume0 - after[0].volume0) == pytest.approx(5000.0)


def test_a_leaking_gas_cartridge_shares_its_gas_and_its_areas():
    built = leg_of(GAS).gases(4.2, 126.0)
    (joined,) = leg_of(GAS | {"front.cartridge_state": "seal leaking"}).gases(4.2, 126.0)
    kept = sum(float(g.pressure0 * g.volume0) for g in built)
    assert float(joined.pressure(0.0, ISOTHERMAL)) * sum(float(g.volume0) for g in built) == pytest.approx(kept)
    (bled,) = leg_of(GAS | {"front.cartridge_state": "seal leaking", "front.leak_bled": "yes"}).gases(4.2, 126.0)
    assert float(bled.force(0.0, SEA, ISOTHERMAL)) == pytest.approx(0.0, abs=1e-6)


def test_a_leaking_spring_loaded_cartridge_is_an_open_leg():
    """The piston goes to its stop: what its spring carried is gone, and all of the seal area works on the leg's own gas."""
    leak = SPRING | {"front.cartridge_state": "seal leaking"}
    built, leaking = strut_of(SPRING), strut_of(leak)
    lost = float(built.force(200.0, ISOTHERMAL) - leaking.force(200.0, ISOTHERMAL))
    assert lost == pytest.approx((0.15 * PISTON + 2.0 * 200.0 * ROD / PISTON) * ROD / PISTON)
    vented = leak | {"front.piston_back": "vented", "front.piston_front": "10 mm"}
    (chamber,), (before, _) = leg_of(vented).gases(4.2, 126.0), leg_of(SPRING | {"front.piston_back": "vented"}).gases(4.2, 126.0)
    assert float(chamber.area) == pytest.approx(circle(48.0))
    # Its gap is read as it leaks: what the piston pushed out stands in it already, what the rod pushed out goes back.
    assert float(chamber.volume0) == pytest.approx(float(before.volume0) + ROD * 308.0)


def test_a_gap_read_as_a_vented_piston_leaks_is_the_one_from_before_less_the_oil_that_came_out():
    """By hand: oil that piston and rod push out with the leg collapsed, 308 mm, stands in the tube, over the free area."""
    vented = SPRING | {"front.cartridge_state": "seal leaking", "front.piston_back": "vented", "front.piston_front": "10 mm"}
    job = load(demo(vented | {"front.area_by": "raised", "front.raised_volume": "20 ml", "front.raised_height": "16 mm"}))
    at, free = conditions(job), 20e3 / 16.0
    now = float(leak_gap(job, at, 4.2, 150.0, shut=False))
    assert now == pytest.approx(150.0 - (10.0 * PISTON + 308.0 * ROD) / free, abs=1e-6)
    assert float(leak_gap(job, at, 4.2, now, shut=True)) == pytest.approx(150.0, abs=1e-6)
    for same in ({"front.piston_back": "outer"}, {"front.cartridge_fill": "gas", "front.cartridge_gas": "90 ml"}):
        assert leak_gap(load(demo(vented | same)), at, 4.2, 150.0, shut=True) == 150.0


def test_a_small_leak_before_a_spring_loaded_piston_is_open_slow_and_shut_fast():
    small = SPRING | {"front.cartridge_state": "seal leaking", "front.leak": "small", "front.piston_front": "10 mm"}
    leak, wide = strut_of(small), strut_of(SPRING | {"front.cartridge_state": "seal leaking"})
    for stroke in (0.0, 66.0, 250.0):
        assert float(leak.force(stroke, ISOTHERMAL)) == pytest.approx(float(wide.force(stroke, ISOTHERMAL)))
    process, step = Process(1.33, 66.0), 1e-3
    assert float(leak.force(66.0, process)) == pytest.approx(float(wide.force(66.0, process)))
    more = (0.15 * PISTON - 2.0 * 10.0 + 2.0 * (250.0 - 66.0) * ROD / PISTON) * ROD / PISTON
    assert float(leak.force(250.0, process) - wide.force(250.0, process)) == pytest.approx(more)
    for stroke in (40.0, 100.0, 250.0):
        rise = leak.energy(stroke + step, process) - leak.energy(stroke - step, process)
        assert float(rise) / (2 * step) == pytest.approx(float(leak.force(stroke, process)), rel=1e-5)
        steeper = leak.force(stroke + step, process) - leak.force(stroke - step, process)
        assert float(steeper) / (2 * step) == pytest.approx(float(leak.rate_at(stroke, process)), rel=1e-4)


def test_opened_in_the_workshop_it_is_an_open_leg_and_as_sold_stays_as_built():
    opened = GAS | {"front.cartridge_state": "opened into one"}
    plain = {key: value for key, value in SEALED.items() if key != "front.air"}
    ends = [report(demo(changes), with_bands=False)["ends"]["front"] for changes in (opened, plain, GAS)]
    figures = ("free_sag", "rider_sag", "end_force", "landing_energy")
    assert [ends[0]["as_found"]["setup"][f]["value"] for f in figures] == [
        ends[1]["as_found"]["setup"][f]["value"] for f in figures
    ]
    assert ends[0]["standard"]["rider_sag"]["value"] < ends[1]["standard"]["rider_sag"]["value"], "the charge holds it up"
    body = {"front.area_by": "diameters"}
    built, sold = (report(demo(c | body), with_bands=False)["ends"]["front"]["standard"] for c in (GAS, opened))
    assert built == sold, "by diameters the leg as sold is known in either state"


def test_the_gap_that_locks_a_joined_leg_locks_it():
    gas = Chamber(20e3, 0.4, ROD, "cartridge")
    outer = open_leg(others=130e3, inside=ROD, name="outer chamber")
    for leg in (
        SealedLeg(outer, gas, joined=0.0),
        SealedLeg(outer, replace(gas, volume0=90e3), joined=100.0),
        SealedLeg(outer, gas),
    ):
        gap = float(leg.lock_gap(4.4))
        locks = [float(np.asarray(g.lock_stroke())) for g in leg.gases(4.4, gap)]
        assert min(locks[:1]) == pytest.approx(300.0, abs=1e-5)


def test_oil_to_add_is_the_same_whatever_is_in_the_cartridge():
    assert leg_of(GAS).oil_to_add(4.2, 145.0, 4.6, 120.0) == leg_of({}).oil_to_add(4.2, 145.0, 4.6, 120.0)
    assert float(leg_of(GAS).other_gap(4.4, 126.0)) == pytest.approx(float(leg_of({}).other_gap(4.4, 126.0)))


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        (GAS | {"front.cartridge_gas": "20 ml"}, "front.cartridge_gas", "the cartridge is oil-locked at 177 mm"),
        (GAS | {"front.cartridge_state": "oil moved", "front.oil_moved": "-95 ml"}, "front.oil_moved", "More oil went into the cartridge than the 90 ml"),
        (SPRING | {"front.cartridge_state": "oil moved", "front.oil_moved": "60 ml"}, "front.oil_moved", "With 60 ml gone the spring-loaded piston presses no more"),
        (GAS | {"front.cartridge_state": "oil moved"}, "front.oil_moved", "Oil that left the cartridge is not entered"),
        (GAS | {"front.charge_by": "scale"}, "front.charge_force", "Force on the rod end is not entered"),
        (SPRING | {"front.piston_stop": "30 mm"}, "front.piston_stop", "its piston stands at its stop"),
        (GAS | {"front.cartridge_state": "seal leaking", "front.joined_stroke": "310 mm"}, "front.joined_stroke", "310 mm, lies beyond the travel of 300 mm"),
        (SPRING | {"front.cartridge_state": "seal leaking", "front.piston_front": "60 mm"}, "front.piston_front", "slack before its front stop at 60 mm"),
        (SPRING | {"front.cartridge_state": "seal leaking", "front.leak": "small", "front.piston_back": "vented"}, "front.leak", "hangs on the ride before, which no reading tells"),
        (GAS | {"front.area_by": "diameters", "front.cartridge_body": "52 mm"}, "front.cartridge_body", "no free area around it"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_in_words(changes, path, words):
    front = report(demo(changes), with_bands=False)["ends"]["front"]
    assert front["state"] == "refused"
    (problem,) = front["problems"]
    assert problem["path"] == path
    assert words in problem["message"]


def test_a_hot_cartridge():
    """Oil of 200 ml grows by 200 x 7e-4 x 40 = 5.6 ml, less what the tube gives: the gas has that much less room, the piston stands back."""
    hot = {"place.ridden_temperature": "60", "place.bled_temperature": "20", "front.cartridge_oil": "200 ml"}
    cold, warm = leg_of(GAS).cartridge, leg_of(GAS | hot).cartridge
    assert float(warm.pressure0 * warm.volume0) / 333.15 == pytest.approx(float(cold.pressure0 * cold.volume0) / 293.15)
    grown = (7.0e-4 - 3 * 23.1e-6) * 200e3 * 40.0
    assert float(cold.volume0 - warm.volume0) == pytest.approx(grown - 3 * 23.1e-6 * 90e3 * 40.0)
    pressed = leg_of(SPRING | hot).cartridge.force(0.0, SEA, ISOTHERMAL) - leg_of(SPRING).cartridge.force(0.0, SEA, ISOTHERMAL)
    assert float(pressed) == pytest.approx(2.0 * grown / PISTON * ROD / PISTON)


@pytest.mark.parametrize(
    "changes", [GAS, SPRING, GAS | {"front.cartridge_state": "seal leaking", "front.leak": "small", "front.leak_bled": "yes"}]
)
def test_bands_are_found(changes):
    front = report(demo(changes | {"front.preload_min": "0 mm", "front.target_sag": "60 mm"}))["ends"]["front"]
    assert front["state"] == "ok"
    assert front["sure"] is not None
    assert front["chosen"]["end_force"]["plus_minus_95"] > 0


def test_the_report_says_what_state_it_is_in():
    notes = report(demo(GAS | {"front.cartridge_state": "seal leaking", "front.leak": "small"}), with_bands=False)["notes"]
    assert "As found the cartridge's seal leaks; as sold is worked out with it as built." in notes
    assert any("take the leak as shut" in note for note in notes)
    assert "cartridge" in {c["key"] for c in report(demo(GAS), with_bands=False)["cautions"]}
    assert not {"cartridge", "pumped"} & {c["key"] for c in report(demo(), with_bands=False)["cautions"]}


def test_a_vented_piston_that_the_leg_s_pressure_can_push_back_is_told():
    """By hand: 1.5 bar of spring; the leg's gas alone, slow, passes that over the outside air before full travel."""
    vented = SPRING | {"front.cartridge_state": "seal leaking", "front.piston_back": "vented"}
    (chamber,) = leg_of(vented).gases(4.2, 126.0)
    assert float(chamber.pressure(300.0, ISOTHERMAL)) - SEA > 0.15 > float(chamber.pressure(66.0, ISOTHERMAL)) - SEA
    notes = report(demo(vented), with_bands=False)["notes"]
    assert any("end force is then below what is told" in note for note in notes)
    assert not any(
        "vented piston" in note for note in report(demo(vented | {"front.piston_back": "outer"}), with_bands=False)["notes"]
    )
