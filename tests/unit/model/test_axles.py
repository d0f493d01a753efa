"""Axle masses and sprung loads of a job: what is carried, what is weighed in parts, and what is said where it cannot be."""

import math

import pytest

from calc.end.loads import shared_swingarm
from calc.impossible import Impossible
from calc.job import load
from calc.job.starter import start
from calc.model import aboard, alone, end_loads, loaded, loaded_frequency, rated_load, standard_loads
from calc.model.axles import rider_share, unsprung_mass
from calc.model.inputs import end_inputs
from calc.practice import AXLES, usual
from tests.support import motorcycle as m
from tests.support.documents import changed, demo
from tests.support.plain import report

CARRIED = {"bike.carries": "luggage", "rider.luggage": "30 kg", "rider.luggage_front_share": "10 %"}


def job(use: str, changes: dict | None = None):
    return load(changed(start(use, "90 kg"), changes or {}))


@pytest.mark.parametrize("use", ["adventure", "road", "enduro"])
def test_luggage_can_be_carried_in_any_use_and_is_asked_for_in_none(use):
    without, with_it = job(use), job(use, CARRIED)
    assert not without.fields["rider.luggage"].applies
    assert not without.fields["rider.passenger"].applies
    assert with_it.fields["rider.luggage"].applies
    assert not with_it.fields["rider.passenger"].applies
    base, more = loaded(without), loaded(with_it)
    assert more.front - base.front == pytest.approx(3.0)
    assert more.rear - base.rear == pytest.approx(27.0)


def test_free_sag_is_read_without_luggage_and_rider_sag_with_it():
    without, with_it = (end_loads(j, "rear") for j in (job("adventure"), job("adventure", CARRIED)))
    assert with_it.alone == without.alone
    assert with_it.aboard - without.aboard == pytest.approx(27.0 * 9.80665)


def test_a_passenger_too():
    both = job(
        "road",
        {"bike.carries": "both", "rider.passenger": "70 kg", "rider.passenger_front_share": "0 %"}
        | {"rider.luggage": "20 kg", "rider.luggage_front_share": "0 %"},
    )
    assert loaded(both).rear - alone(both).rear == pytest.approx(90.0)
    assert aboard(both).front + aboard(both).rear == pytest.approx(alone(both).front + alone(both).rear + 90.0 + 90.0)


def test_what_is_named_and_not_weighed_is_assumed_and_marked():
    found = job("road", {"bike.carries": "both"})
    for path in ("rider.luggage", "rider.luggage_front_share", "rider.passenger", "rider.passenger_front_share"):
        assert found.fields[path].origin == "assumed"
        assert found.fields[path].plus_minus > 0


def test_two_up_carries_both_unless_it_says_otherwise():
    assert job("two-up").fields["rider.passenger"].applies
    alone_again = job("two-up", {"bike.carries": "nothing"})
    assert vars(loaded(alone_again)) == vars(alone(alone_again))


BOTH = {"bike.carries": "both", "rider.passenger": "60 kg", "rider.luggage": "25 kg"}
G = 9.80665


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("use", ["adventure", "road", "enduro"])
def test_the_standard_rider_carries_neither_passenger_nor_luggage(use, axle):
    without, with_both = job(use), job(use, BOTH)
    assert vars(standard_loads(with_both, axle)) == vars(standard_loads(without, axle))
    assert vars(standard_loads(without, axle)) == vars(end_loads(without, axle, without.value("standard.rider")))
    yardsticks = [end_inputs(j, axle).standard for j in (without, with_both)]
    assert yardsticks[0].frequency == yardsticks[1].frequency
    assert yardsticks[0].end_multiple == yardsticks[1].end_multiple


def test_another_rider_today_has_the_passenger_and_the_luggage_of_today():
    with_both = job("road", BOTH | {"rider.passenger_front_share": "8 %", "rider.luggage_front_share": "4 %"})
    other = end_loads(with_both, "rear", 100.0).aboard - end_loads(job("road"), "rear", 100.0).aboard
    assert other == pytest.approx((60.0 * 0.92 + 25.0 * 0.96) * G)


def test_two_up_is_sold_for_the_usual_passenger_and_luggage_whoever_comes_along_today():
    """Its rows are read loaded. The masses are practice's; what is left at home today is left out of the standard too."""
    usual_load = sum(
        usual(who, "two-up").typical * (1 - usual(f"{who} front share", "two-up").typical / 100) for who in ("passenger", "luggage")
    )
    light = {
        "rider.passenger": "50 kg",
        "rider.luggage": "5 kg",
        "rider.passenger_front_share": "0 %",
        "rider.luggage_front_share": "0 %",
    }
    solo = standard_loads(job("two-up", {"bike.carries": "nothing"}), "rear").aboard
    for today in ({}, light):
        assert standard_loads(job("two-up", today), "rear").aboard == pytest.approx(solo + usual_load * G)
    assert end_loads(job("two-up", light), "rear").aboard < standard_loads(job("two-up", light), "rear").aboard
    passenger = usual("passenger", "two-up").typical * (1 - usual("passenger front share", "two-up").typical / 100)
    only = standard_loads(job("two-up", {"bike.carries": "passenger"}), "rear").aboard
    assert only == pytest.approx(solo + passenger * G)


def test_what_compares_with_the_standard_rider_leaves_out_what_the_bike_is_not_sold_to_carry():
    for use, sold_loaded in (("road", False), ("two-up", True)):
        found = job(use, BOTH)
        alone_again = job(use, {"bike.carries": "nothing"})
        expected = end_loads(found, "rear").aboard if sold_loaded else end_loads(alone_again, "rear").aboard
        assert rated_load(found, "rear") == pytest.approx(expected)
        heavier = rated_load(found, "rear", 100.0) - rated_load(found, "rear", 90.0)
        assert heavier == pytest.approx(10.0 * (1 - rider_share(found)) * G)


@pytest.mark.parametrize("use", ["adventure", "road", "enduro", "track"])
def test_a_loaded_bike_rides_slower_and_its_spring_meets_half_of_the_load(use):
    """Rate goes with load x frequency squared: common practice, no source."""
    found = job(use, BOTH)
    factor = loaded_frequency(found, "rear")
    gain = end_loads(found, "rear").aboard / rated_load(found, "rear")
    assert gain * factor**2 == pytest.approx(gain**0.5)
    assert loaded_frequency(job(use), "rear") == 1.0
    assert loaded_frequency(job("two-up", BOTH), "rear") == 1.0
    ride = usual("ride frequency rear", use)
    assert usual("ride frequency rear", use, True).low < factor * ride.typical < ride.high


PARTS = {
    "rear.unsprung_from": "parts",
    "rear.wheel_mass": "14.7 kg",
    "rear.swingarm_mass": "8 kg",
    "rear.swingarm_length": "549 mm",
    "rear.swingarm_balance": "353 mm",
}


def test_swingarm_of_the_published_motorcycle():
    """Its swingarm shared by the centre of mass: sprung 109.84 kg (derived), the whole swingarm unsprung would leave less."""
    shared = shared_swingarm(m.REAR_WHEEL, m.SWINGARM, m.PIVOT_X - m.SWINGARM_CENTRE_X, m.PIVOT_X - m.AXLE_X)
    assert m.REAR_LOAD / m.GRAVITY - shared == pytest.approx(109.84, abs=0.005)


def test_a_job_weighs_it_in_parts():
    found = load(demo(PARTS))
    assert not found.fields["rear.unsprung"].applies
    assert float(unsprung_mass(found, "rear")) == pytest.approx(m.REAR_UNSPRUNG)
    assert float(unsprung_mass(load(demo()), "rear")) == 21.0
    assert math.isclose(float(end_loads(found, "rear").aboard), (121.6 - m.REAR_UNSPRUNG) * 9.80665)


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"rear.swingarm_mass": None}, "rear.swingarm_mass", "Swingarm is not entered"),
        ({"rear.swingarm_balance": "600 mm"}, "rear.swingarm_balance", "600 mm from the pivot, lies beyond the axle at 549 mm"),
    ],
)
def test_parts_that_do_not_add_up_are_said_at_their_field(changes, path, words):
    with pytest.raises(Impossible, match=words) as caught:
        unsprung_mass(load(demo({k: v for k, v in (PARTS | changes).items() if v is not None})), "rear")
    assert caught.value.field == path
    problem = report(demo({k: v for k, v in (PARTS | changes).items() if v is not None}), False)["ends"]["rear"]["problems"][0]
    assert problem["path"] == path


def test_the_usual_share_asked_for_is_that_of_the_posture_ridden():
    """Without scales one share stands in; with scales read as ridden none does; read in another posture both carry it over."""

    def asked(*changes: tuple[str, str]) -> tuple[bool, bool]:
        found = job("enduro", dict(changes)).fields
        return found["rider.front_share_standing"].applies, found["rider.front_share_sitting"].applies

    weighed = ("rider.front_axle", "94 kg")
    assert asked() == (True, False)
    assert asked(weighed, ("rider.posture", "standing")) == (False, False)
    assert asked(weighed, ("rider.posture", "sitting")) == (True, True)


def test_a_share_read_sitting_is_carried_over_to_standing_by_the_difference_of_the_usual_ones():
    shares = {"rider.front_share_standing": "48 %", "rider.front_share_sitting": "34 %"}
    read = {"bike.front_axle": "50 kg", "bike.rear_axle": "56 kg", "rider.front_axle": "85 kg", "rider.mass": "100 kg"}
    assert float(rider_share(job("enduro", shares | read | {"rider.posture": "standing"}))) == pytest.approx(0.35)
    assert float(rider_share(job("enduro", shares | read | {"rider.posture": "sitting"}))) == pytest.approx(0.35 + 0.48 - 0.34)


@pytest.mark.parametrize(("reading", "said"), [
    ({"rider.front_axle": "53 kg", "rider.rear_axle": None}, "lost weight"), ({"rider.front_axle": "170 kg", "rider.rear_axle": None}, "gained more than the rider weighs"),
    ({"rider.front_axle": None, "rider.rear_axle": "58 kg"}, "the rear axle lost weight"),
])  # fmt: skip
def test_a_rider_who_lifts_an_axle_is_told_so(reading, said):
    with pytest.raises(Impossible, match=said):
        aboard(load(demo(reading)))


def test_readings_in_the_posture_ridden_are_taken_as_they_are_though_they_do_not_add_up():
    found = aboard(load(demo({"rider.mass": "110 kg"})))
    assert (float(found.front), float(found.rear)) == (96.2, 121.6)
    sitting = aboard(load(demo({"rider.posture": "sitting"})))
    assert float(sitting.front) != 96.2
    assert float(sitting.front + sitting.rear) == pytest.approx(54.5 + 59.3 + 104.0)
