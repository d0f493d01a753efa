"""Air legs: swept areas, the balance chamber's port, the second volume, heat, the pressure for a sag, what the report says."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Chamber, Process, circle
from calc.gas.staged import Staged
from calc.job import load
from calc.leg.air import AirLeg, AirSpring
from calc.model import conditions, fork
from calc.model.draws import is_drawn
from calc.sizing.air_pressure import pressure_for_sag
from tests.support.documents import demo
from tests.support.plain import applies, report
from tests.support.plain import text as text_of
from tests.unit.end.test_end import open_leg

SEA = 0.101325
AIR = {
    "front.air": "air leg", "front.air_pressure": "9 bar", "front.pump_loss": "0.1 bar", "front.air_piston": "34 mm",
    "front.air_volume": "400 ml", "front.balance_volume": "20 ml", "front.balance_rod": "14 mm", "front.balance_port": "6 mm",
    "place.bled_altitude": "0 m", "place.ridden_altitude": "0 m",
}  # fmt: skip
VALVE = AIR | {"front.balance_fill": "valve", "front.balance_pressure": "11 bar"}
OIL = AIR | {"front.air_end": "oil"}
SECOND = AIR | {"front.second": "yes", "front.second_volume": "120 ml", "front.air_end": "second", "front.end_target": "multiple", "front.end_multiple": "5.6", "front.air_volume": "330 ml"}  # fmt: skip
SPRING = AirSpring(circle(34.0), 400e3, 1.0, circle(34.0) - circle(14.0), 20e3, 6.0, 60e3, 2.0)
LEG = AirLeg(open_leg(inside=SPRING.swept, name="outer chamber"), SPRING)


def fork_of(changes):
    job = load(demo(changes))
    assert not job.problems, job.problems
    return fork(job, conditions(job))


def front_of(changes, with_bands=False):
    return report(demo(changes), with_bands=with_bands)["ends"]["front"]


def areas(gases) -> float:
    return sum(float(g.main.area if isinstance(g, Staged) else g.area) for g in gases)


@pytest.mark.parametrize(
    "changes", [AIR, AIR | {"front.balance": "no"}, VALVE, AIR | {"front.second": "yes"}, AIR | {"front.air_in": "both"}]
)
def test_swept_areas_balance_chamber_included_add_up_to_the_seal_area(changes):
    assembly = fork_of(changes)
    assert areas(assembly.gas.gases(None, 126.0)) == pytest.approx(circle(48.0))
    if assembly.gas_right is not None:
        assert areas(assembly.gas_right.gases(None, 126.0)) == pytest.approx(circle(48.0)), "outer air in the other leg too"


def test_pumped_by_gauge_cold_with_the_hose_s_loss():
    main, balance = fork_of(AIR).gas.spring.gases()
    assert float(main.pressure0) == pytest.approx(0.9 - 0.01 + SEA)
    assert float(balance.area) == pytest.approx(circle(14.0) - circle(34.0))


def test_without_a_balance_chamber_there_is_one_space():
    (main,) = AirSpring(900.0, 400e3, 1.0).gases()
    assert (float(main.area), float(main.volume0)) == (900.0, 400e3)
    assert [gas.name for gas in AirSpring(900.0, 400e3, 1.0, 700.0, 20e3, 6.0).gases()] == ["main chamber", "balance chamber"]


@given(port=st.floats(0, 40), pressure=st.floats(0.3, 1.6))
def test_the_port_makes_both_chambers_alike(port, pressure):
    main, balance = AirSpring(900.0, 400e3, pressure, 700.0, 20e3, port).gases()
    assert float(balance.pressure(port, ISOTHERMAL)) == pytest.approx(float(main.pressure(port, ISOTHERMAL)))
    assert float(balance.volume(100.0) - balance.volume(0.0)) == pytest.approx(700.0 * 100.0)


def test_a_balance_chamber_with_a_valve_by_hand():
    """Boyle from its own charge at full extension: 11 bar over 20 ml, 120 mm in; the main chamber's charge does not enter it."""
    (_, one), (_, other) = (fork_of(VALVE | c).gas.spring.gases() for c in ({}, {"front.air_pressure": "7 bar"}))
    grown = circle(34.0) - circle(14.0)
    assert float(one.pressure(120.0, ISOTHERMAL)) == pytest.approx((1.1 + SEA) * 20e3 / (20e3 + grown * 120.0), rel=1e-9)
    assert float(other.pressure(120.0, ISOTHERMAL)) == float(one.pressure(120.0, ISOTHERMAL))
    (_, warm) = fork_of(VALVE | {"place.ridden_temperature": "60", "place.bled_temperature": "20"}).gas.spring.gases()
    assert float(warm.pressure0) == pytest.approx((1.1 + SEA) * 333.15 / 293.15, rel=1e-9)


def test_the_pressure_that_a_port_would_give_gives_the_same_fork():
    """A port is a valve filled to what the port leaves at full extension."""
    balance = float(fork_of(AIR).gas.spring.gases()[1].pressure0)
    by_port = front_of(AIR)["as_found"]["setup"]
    by_valve = front_of(AIR | {"front.balance_fill": "valve", "front.balance_pressure": f"{10 * (balance - SEA):.9f} bar"})[
        "as_found"
    ]["setup"]
    for name in ("free_sag", "rider_sag", "frequency", "end_force"):
        assert by_valve[name]["value"] == pytest.approx(by_port[name]["value"], rel=1e-6)


def test_more_pressure_in_the_balance_chamber_gives_free_sag_and_keeps_the_end():
    low, high = (front_of(VALVE | {"front.balance_pressure": f"{bar} bar"})["as_found"]["setup"] for bar in (9, 13))
    free, end = ([setup[name]["value"] for setup in (low, high)] for name in ("free_sag", "end_force"))
    assert free[1] - free[0] > 5
    assert abs(end[1] / end[0] - 1) < 0.02


def test_what_is_kept_of_an_air_spring_is_told():
    def kept(changes):
        return next(line for line in front_of(changes | {"front.gap_min": "45 mm"})["why"] if line.startswith("Kept"))

    assert kept(AIR | {"front.balance": "no"}) == "Kept as found: main chamber."
    assert kept(AIR) == "Kept as found: main chamber. The balance chamber fills through its port."
    assert kept(VALVE) == "Kept as found: main chamber and balance chamber."
    every = VALVE | {"front.second": "yes", "front.air_coil": "yes", "front.rate": "1 N/mm", "front.air_pressure": "7 bar"}
    assert kept(every) == "Kept as found: main chamber, second volume and balance chamber; the coil beside it too."


@given(stroke=st.floats(1, 299), n=st.floats(1, 1.4), rest=st.floats(0, 120))
def test_force_is_the_slope_of_energy_over_all_chambers(stroke, n, rest):
    strut, process, step = Strut((), LEG.gases(None, 126.0), SEA), Process(n, rest), 1e-3
    rise = strut.energy(stroke + step, process) - strut.energy(stroke - step, process)
    assert float(rise) / (2 * step) == pytest.approx(float(strut.force(stroke, process)), rel=1e-4, abs=1e-2)


def test_by_hand_slow():
    """Boyle, chamber by chamber, at 150 mm."""
    main, area, grown = 1.0 * 400.0 / (400.0 - 0.9079203 * 150), 0.9079203, 0.7539822
    at_port = 400.0 / (400.0 - area * 6.0)
    balance = at_port * (20.0 + grown * 6.0) / (20.0 + grown * 150.0)
    outer = LEG.outer.chamber(None, 126.0)
    forces = (main - SEA) * area * 1000 - (balance - SEA) * grown * 1000 + float(outer.force(150.0, SEA, ISOTHERMAL))
    assert float(Strut((), LEG.gases(None, 126.0), SEA).force(150.0, ISOTHERMAL)) == pytest.approx(forces, rel=1e-6)


def test_heat_raises_every_chamber_by_its_absolute_temperature():
    hot = {"place.ridden_temperature": "60", "place.bled_temperature": "20"}
    cold, warm = (fork_of(AIR | {"front.second": "yes"} | c).gas.spring.gases() for c in ({}, hot))
    factor = 333.15 / 293.15
    assert float(warm[0].main.pressure0) == pytest.approx(float(cold[0].main.pressure0) * factor)
    assert float(warm[0].charge) == pytest.approx(float(cold[0].charge) * factor)
    assert float(warm[1].pressure0) == pytest.approx(float(cold[1].pressure0) * factor)


@given(load_=st.floats(500, 1000), stroke=st.floats(30, 120))
def test_pressure_for_a_sag_puts_the_fork_there(load_, stroke):
    assembly = fork_of(AIR)
    pressure = float(pressure_for_sag(assembly, Setup(0.0, 0.0, 126.0), load_, stroke))
    pumped = fork_of(AIR | {"front.air_pressure": f"{pressure * 10:.9f} bar"})
    end = pumped.end(Setup(0.0, 0.0, 126.0))
    assert float(end.wheel_force(end.motion.travel(stroke), ISOTHERMAL)) == pytest.approx(load_, rel=1e-6)


def test_pressures_for_many_loads():
    assembly, loads = fork_of(AIR), np.array([600.0, 780.0])
    many = pressure_for_sag(assembly, Setup(0.0, 0.0, 126.0), loads, 66.0)
    assert many.tolist() == pytest.approx([float(pressure_for_sag(assembly, Setup(0.0, 0.0, 126.0), x, 66.0)) for x in loads])


def test_where_no_pressure_gives_the_sag_what_is_found_is_worked_out_and_told_so():
    front = front_of(AIR | {"front.air_coil": "yes", "front.rate": "8 N/mm", "front.air_pressure": "1 bar"})
    assert front["state"] == "none"
    (problem,) = front["problems"]
    assert "No pressure" in problem["message"]
    assert "gives 66 mm of rider sag" in problem["message"]
    assert front["as_found"]["setup"]["rate"]["value"] == 8.0
    assert "pumped" in {c["key"] for c in report(demo(AIR), with_bands=False)["cautions"]}


def test_air_alone_has_no_springs_in_its_curve():
    front = front_of(AIR)
    assert front["as_found"]["setup"]["rate"]["value"] == 0.0
    assert front["curve"]["springs"] == [0.0] * len(front["curve"]["springs"])


def test_a_fork_on_air_alone_asks_for_nothing_of_coils_and_draws_none_of_it():
    coils = (
        "front.rate",
        "front.preload",
        "front.buy",
        "front.free_length",
        "front.spring_kind",
        "front.spring_steel",
        "front.tried_rate",
        "standard.fork_springs",
    )
    for changes, shown in (
        (AIR, False),
        (AIR | {"front.air_coil": "yes"}, True),
        ({}, True),
        ({"front.air": "sealed cartridge"}, True),
    ):
        told = report(demo(changes), with_bands=False)
        assert {path: applies(told, path) for path in coils} == dict.fromkeys(coils, shown), changes
        assert all(applies(told, path) for path in ("front.travel", "front.topout"))
    job = load(demo(AIR | {"front.rate": "4.2 N/mm"}))
    assert not is_drawn(job.fields["front.rate"])
    assert job.fields["front.rate"].text == "4.2 N/mm", "what was entered is kept"


def test_free_sag_is_told_by_what_decides_it():
    def told(changes):
        return next(line for line in front_of(changes | {"front.gap_min": "45 mm"})["why"] if line.startswith("Free sag"))

    assert told(AIR | {"front.balance_volume": "60 ml"}).endswith(": its volumes decide that, not its pressure.")
    assert told(VALVE | {"front.balance_pressure": "8 bar"}).endswith(
        ": the balance chamber's pressure and the volumes decide that, not the main chamber's."
    )


def test_a_coil_beside_the_air_carries_too():
    found = [front_of(AIR | {"front.air_pressure": "4 bar"} | c)["as_found"]["setup"] for c in ({}, {"front.air_coil": "yes"})]
    assert found[1]["rate"]["value"] == pytest.approx(4.2)
    assert found[1]["rider_sag"]["value"] < found[0]["rider_sag"]["value"]


def test_more_pressure_as_sold_changes_only_the_yardstick():
    one, other = (front_of(AIR | c) for c in ({}, {"standard.air_pressure": "10 bar"}))
    assert one["as_found"]["setup"] == other["as_found"]["setup"]
    assert other["standard"]["rider_sag"]["value"] < one["standard"]["rider_sag"]["value"]


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"front.air_pressure": "0.5 bar", "front.pump_loss": "1.9 bar"}, "front.pump_loss", "No pressure is left"),
        ({"front.balance_rod": "36 mm"}, "front.balance_rod", "not thinner than the air piston"),
        ({"front.air_piston": "56 mm", "front.balance": "no"}, "front.air_piston", "not smaller than the seal area"),
        ({"front.air_volume": "200 ml"}, "front.air_volume", "main chamber is oil-locked at 220 mm"),
    ],
)
def test_what_cannot_be_is_refused_in_words(changes, path, words):
    front = front_of(AIR | changes)
    assert front["state"] == "refused"
    (problem,) = front["problems"]
    assert (problem["path"], words in problem["message"]) == (path, True), problem


def test_the_command_line_tells_it():
    text = text_of(demo(AIR | {"front.air_end": "oil"}), with_bands=True)
    assert "Nearest is 7.1 bar" not in text
    assert "Pump to 7.1 bar, main chamber: add 45 ml of oil or spacers." in text
    assert "as it loses" not in text


def test_a_chamber_that_grows_never_locks():
    assert isinstance(SPRING.gases()[1], Chamber)
    assert SPRING.gases()[1].lock_stroke() == np.inf
