"""Load transfer, the fork under braking, and where it then stands."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.braking import dive
from calc.end.end import End
from calc.end.loads import Axles, braked, fork_axis_load
from calc.end.strut import Strut
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.gas.chamber import Chamber, Process
from calc.impossible import Impossible
from calc.motion.ratio import ForkMotion
from calc.springs.helical import LinearSpring
from tests.support.documents import demo
from tests.support.plain import applies, report

AXLES = Axles(96.2, 121.6)
decelerations, heights, bases, parts = st.floats(0.5, 6.0), st.floats(400, 700), st.floats(1200, 1600), st.floats(0, 1)


@given(a=decelerations, h=heights, base=bases, part=parts)
def test_forces_and_moments_balance_in_the_frame_of_the_bike(a, h, base, part):
    """D'Alembert: m g down and m a forward at the centre of mass, both tyres' forces at the ground."""
    done = braked(AXLES, a, h, base, part)
    mass = AXLES.front + AXLES.rear
    assert done.front + done.rear == pytest.approx(mass * STANDARD_GRAVITY)
    behind_front = base * AXLES.rear / mass  # the centre of mass, from the front tyre's foot
    about_front = done.rear * base - mass * STANDARD_GRAVITY * behind_front + mass * a * h
    assert about_front == pytest.approx(0.0, abs=1e-6 * mass * STANDARD_GRAVITY * base)
    assert done.force == pytest.approx(part * mass * a)


@given(a=decelerations, rake=st.floats(0, 0.6), unsprung=st.floats(8, 25))
def test_the_fork_carries_what_the_wheel_does_not_need_for_itself(a, rake, unsprung):
    """Newton for the wheel alone, along the steering axis: tyre forces, weight, fork; it decelerates with the bike."""
    done = braked(AXLES, a, 650.0, 1485.0, 1.0)
    along = fork_axis_load(done.front, unsprung, rake, done.force, a)
    axis = np.array([-math.sin(rake), math.cos(rake)])  # backward and up: the fork leans back
    tyre, weight = np.array([-done.force, done.front]), np.array([0.0, -unsprung * STANDARD_GRAVITY])
    needed = unsprung * np.array([-a, 0.0])
    fork = needed - tyre - weight  # what the fork must push on the wheel with
    assert float(-fork @ axis) == pytest.approx(float(along))


def test_a_lifted_rear_wheel_is_refused_with_the_deceleration_where_it_lifts():
    lifts = AXLES.rear * STANDARD_GRAVITY * 1485.0 / ((AXLES.front + AXLES.rear) * 650.0)
    assert float(braked(AXLES, lifts - 1e-6, 650.0, 1485.0, 1.0).rear) == pytest.approx(0.0, abs=1e-3)
    with pytest.raises(Impossible, match=rf"the rear wheel lifts: it carries nothing from {lifts:.1f} m/s²") as caught:
        braked(AXLES, np.array([3.0, lifts + 0.1]), 650.0, 1485.0, 1.0)
    assert caught.value.field == "bike.braking"
    with pytest.raises(Impossible, match="the rear wheel lifts"):
        braked(AXLES, lifts + 1e-4, 650.0, 1485.0, 1.0)  # by 0.02 N


def fork(rate: float = 4.6) -> End:
    leg = Strut((LinearSpring(rate, 3.0),), (Chamber(700e3, 0.1, 1800.0),), 0.0966)
    return End(((leg, 2.0),), ForkMotion(0.4625), 300.0 * math.cos(0.4625))


@given(load=st.floats(300, 2600), n=st.floats(1.0, 1.4))
def test_springs_and_gas_hold_the_load_along_the_axis(load, n):
    end, process = fork(), Process(n, 66.0)
    found = dive(end, load, process)
    leg = end.struts[0][0]
    assert 2.0 * float(leg.force(found.stroke, process)) == pytest.approx(load, abs=0.01)
    assert float(found.added) == pytest.approx(float(found.stroke) - 66.0)


def test_against_its_top_and_at_its_bottom():
    assert float(dive(fork(), 1.0, Process(1.33, 66.0)).stroke) == pytest.approx(0.0, abs=1e-5)
    held = 2.0 * float(fork().struts[0][0].force(0.0, Process(1.33, 66.0)))  # by preload and gas, hanging
    assert float(dive(fork(), held - 1.0, Process(1.33, 66.0)).stroke) == 0.0
    assert float(dive(fork(), held + 1.0, Process(1.33, 66.0)).stroke) > 0.0
    with pytest.raises(Impossible, match=r"9000 N along its axis: springs and gas hold \d+ N at full travel, so it bottoms"):
        dive(fork(), np.array([900.0, 9000.0]), Process(1.33, 66.0))


def test_many_draws_are_those_one_by_one():
    loads, rates = np.array([700.0, 1500.0, 2200.0]), np.array([4.2, 4.6, 5.0])
    together = dive(fork(rates), loads, Process(1.33, np.array([60.0, 66.0, 70.0]))).stroke
    alone = [float(dive(fork(r), n, Process(1.33, s)).stroke) for r, n, s in zip(rates, loads, (60.0, 66.0, 70.0), strict=True)]
    assert together == pytest.approx(alone, abs=1e-5)


BRAKED = {"bike.braking": "0.7 g"}


def answered(changes: dict, bands: bool = False) -> dict:
    return report(demo(BRAKED | changes), bands)["ends"]["front"]


def test_nothing_is_said_where_nothing_is_asked():
    data = report(demo(), False)
    assert data["ends"]["front"]["braking"] is None
    assert not applies(data, "bike.centre_height")
    assert not applies(data, "bike.front_braking")


def test_the_report_of_a_job_by_hand():
    """0.7 g on the demo: 217.8 kg, 650 mm, 1485 mm; all by the front tyre; rake 26.5 degrees; 16 kg unsprung."""
    data = answered({})
    braking, a, rake = data["braking"], 0.7 * 9.80665, math.radians(26.5)
    moved = 217.8 * a * 650.0 / 1485.0
    n = 96.2 * 9.80665 + moved
    load = (n - 16.0 * 9.80665) * math.cos(rake) + (217.8 * a - 16.0 * a) * math.sin(rake)
    assert braking["front_tyre"]["value"] == pytest.approx(n)
    assert braking["rear_tyre"]["value"] == pytest.approx(121.6 * 9.80665 - moved)
    assert braking["load"]["value"] == pytest.approx(load)
    rider = data["chosen"]["rider_sag"]["value"]
    assert braking["added"]["value"] == pytest.approx(braking["stroke"]["value"] - rider, abs=1e-6)
    assert braking["left"]["value"] == pytest.approx(300.0 - braking["stroke"]["value"], abs=1e-6)
    assert braking["stroke"]["case"].endswith("slowing at 6.9 m/s², rider aboard, standing, gas exponent 1.33")
    for key in ("deceleration", "stroke", "added", "left", "rear_tyre"):
        figure = braking[key]
        assert f"{figure['value']:.{figure['decimals']}f} {figure['unit']}" in braking["words"], key
    assert "aerodynamic drag" in braking["left_out"]


def test_rear_brake_alone_dives_less_and_harder_braking_more():
    strokes = [answered(c)["braking"]["stroke"]["value"] for c in ({"bike.front_braking": "0 %"}, {}, {"bike.braking": "8 m/s2"})]
    assert strokes[0] < strokes[1] < strokes[2]


def test_dive_has_a_band_and_does_not_touch_the_answer():
    with_it, without = answered({}, True), report(demo())["ends"]["front"]
    assert 2.0 < with_it["braking"]["stroke"]["plus_minus_95"] < 25.0
    assert with_it["answer"] == without["answer"]


# No spring can be built, for its coils close too early, so what is looked at is the fork as found: soft, with little oil.
SOFT = {
    "bike.braking": "1.2 g", "bike.centre_height": "600 mm", "bike.rake": "35°", "front.free_length": "400 mm", "front.solid_length": "300 mm",
    "front.rate": "2.4 N/mm", "front.gap_left": "230 mm", "front.gap_right": "230 mm",
}  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"bike.wheelbase": None}, "bike.wheelbase", "needs the wheelbase"),
        ({"bike.braking": "1.3 g"}, "bike.braking", "the rear wheel lifts"),
        (SOFT, "bike.braking", "so it bottoms"),
    ],
)
def test_what_cannot_be_is_said_beside_an_answer_that_stands(changes, path, words):
    data = answered(changes)
    assert words in data["braking"]["words"]
    assert data["braking"]["problem"]["path"] == path
    assert data["state"] == ("none" if changes is SOFT else "ok")
