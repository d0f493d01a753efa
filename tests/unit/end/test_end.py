"""Struts, motion and the wheel: written once, held for both ends."""

from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.end.assembly import ForkAssembly, ShockAssembly
from calc.end.end import End, ride_frequency
from calc.end.setup import Setup
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Chamber, Gas, Process, SteadyCharge, circle
from calc.leg.open import OpenLeg
from calc.motion.ratio import ForkMotion, LeverageMotion
from calc.springs.arrangement import SingleSpring
from calc.springs.helical import LinearSpring
from tests.support import motorcycle

rates, preloads, exponents, parts = st.floats(2, 9), st.floats(0, 15), st.floats(1.0, 1.4), st.floats(0.02, 0.97)


@dataclass(frozen=True)
class GivenMotion:
    """A motion known at one point only: q and its slope there."""

    q: float
    dq: float

    def stroke(self, travel):
        return self.q * travel

    def ratio(self, travel):
        return self.q + self.dq * travel

    def slope(self, travel):
        return self.dq + 0.0 * travel

    def travel(self, stroke):
        return stroke / self.q


def carrying(rate: float, load: float, motion) -> End:
    """An end whose spring carries a load [N] at zero travel."""
    return End(((Strut((LinearSpring(rate, load / rate),), (), 0.1), 1.0),), motion, 100.0)


def test_front_of_the_published_motorcycle():
    """Derived 20 370 N/m at the wheel and 2.26 Hz; the wheel carries the published load less 18.4 kg."""
    m = motorcycle
    end = carrying(m.FORK_RATE, m.FORK_SPRING_LOAD, ForkMotion(m.RAKE))
    rate, sprung = float(end.wheel_rate(0.0, ISOTHERMAL)), m.FRONT_LOAD / m.GRAVITY - m.FRONT_UNSPRUNG
    assert rate == pytest.approx(m.FRONT_WHEEL_RATE, rel=1e-4)
    assert float(end.wheel_force(0.0, ISOTHERMAL)) == pytest.approx(sprung * m.GRAVITY, rel=1e-4)
    assert float(ride_frequency(rate, sprung)) == pytest.approx(m.FRONT_FREQUENCY, abs=0.005)


def test_rear_of_the_published_motorcycle():
    """Derived k q^2 + F dq/dz = 17 953 + 1 367 = 19 320 N/m and 2.11 Hz, from q 0.55365 and its slope 0.702 per m."""
    m = motorcycle
    end = carrying(m.SHOCK_RATE, m.SHOCK_SPRING_LOAD, GivenMotion(m.RATIO, m.RATIO_SLOPE))
    fixed = carrying(m.SHOCK_RATE, m.SHOCK_SPRING_LOAD, GivenMotion(m.RATIO, 0.0))
    assert float(fixed.wheel_rate(0.0, ISOTHERMAL)) == pytest.approx(17.953, rel=1e-4)
    rate = float(end.wheel_rate(0.0, ISOTHERMAL))
    assert rate == pytest.approx(m.REAR_WHEEL_RATE, rel=1e-4)
    sprung = m.REAR_LOAD / m.GRAVITY - m.REAR_UNSPRUNG
    assert float(ride_frequency(rate, sprung)) == pytest.approx(m.REAR_FREQUENCY, abs=0.005)
    assert float(end.wheel_force(0.0, ISOTHERMAL)) == pytest.approx(sprung * m.GRAVITY, rel=1e-3)


def open_leg(**changes) -> OpenLeg:
    """The gas of an upside-down leg in plain numbers."""
    plain = dict(
        pieces=((32.0, 2010.9), (0.0, 1666.7)), seal_diameter=48.0, collapsed_stroke=308.0, stroke=300.0, steel=51e3,
        fitted_rate=4.2, spacer=0.0, others=28e3, spring_in=False, free_length=470.0, spacer_length=0.0, bleed=0.0966,
        bled_stroke=0.0,
    )  # fmt: skip
    return OpenLeg(**(plain | changes))


def fork(springs: int = 2, rake: float = 0.4625, ambient: float = 0.0966, **changes) -> ForkAssembly:
    """An upside-down fork in plain numbers."""
    leg = open_leg(**changes)
    return ForkAssembly(leg, SingleSpring(), stroke=leg.stroke, ambient=ambient, rake=rake, friction=30.0, springs=springs)


KNOWN_VOLUME = Chamber(180e3, 1.1, circle(16.0))


def shock(gas: Gas = KNOWN_VOLUME, springs: int = 1) -> ShockAssembly:
    """A rear end in plain numbers."""
    motion = LeverageMotion(2.5, 0.22, 305.0)
    return ShockAssembly(gas, SingleSpring(), motion, travel=305.0, ambient=0.0966, friction=35.0, springs=springs)


@given(
    front=st.booleans(), rate=rates, preload=preloads, gap=st.floats(110, 220), n=exponents, settled=st.floats(0, 120), part=parts
)
def test_force_is_the_slope_of_energy_and_rate_the_slope_of_force(front, rate, preload, gap, n, settled, part):
    end = fork().end(Setup(rate, preload, gap)) if front else shock().end(Setup(rate * 13.0, preload, 0.0))
    z, step, process = part * float(end.travel), 1e-3, Process(n, settled / (1 if front else 3))
    energy = end.energy(z + step, process) - end.energy(z - step, process)
    force = end.wheel_force(z + step, process) - end.wheel_force(z - step, process)
    assert energy / (2 * step) == pytest.approx(float(end.wheel_force(z, process)), rel=1e-5)
    assert force / (2 * step) == pytest.approx(float(end.wheel_rate(z, process)), rel=1e-5)
    assert float(end.energy(0.0, process)) == pytest.approx(0.0, abs=1e-6)


@given(front=st.booleans(), rate=rates, preload=preloads, n=exponents, first=parts, second=parts)
def test_force_rises_with_travel(front, rate, preload, n, first, second):
    end = fork().end(Setup(rate, preload, 120.0)) if front else shock().end(Setup(rate * 13.0, preload, 0.0))
    low, high = sorted((first, second))
    forces = end.wheel_force(np.array([low, high]) * end.travel, Process(n, 20.0))
    assert forces[1] > forces[0] or high - low < 1e-9


@given(rate=rates, preload=preloads, part=parts)
def test_springs_and_gas_add_up_to_the_whole(rate, preload, part):
    end = fork().end(Setup(rate, preload, 120.0))
    (leg, count), travel = end.struts[0], part * end.travel
    gas = count * leg.gas_force(end.motion.stroke(travel), ISOTHERMAL) * end.motion.ratio(travel)
    assert float(end.spring_wheel_force(travel) + gas) == pytest.approx(float(end.wheel_force(travel, ISOTHERMAL)))


@given(pieces=st.lists(st.floats(0.05, 1.0), min_size=1, max_size=5), stroke=st.floats(0, 200))
def test_swept_areas_of_all_chambers_add_up_to_the_seal_area(pieces, stroke):
    """However a leg's gas is divided, alike in pressure, a balance space included: one space of the seal area's force."""
    areas = [1800.0 * p / sum(pieces) for p in pieces] + [250.0, -250.0]
    gases = tuple(Chamber(abs(a) * 500.0 if a > 0 else 250.0 * 500.0, 0.1, a) for a in areas)
    leg = Strut((), gases, 0.1)
    lost = sum(g.volume0 - g.volume(stroke) for g in gases)
    assert lost == pytest.approx(1800.0 * stroke, abs=1e-6)
    balance = Strut((), gases[-2:], 0.1)
    one = Strut((), (Chamber(1800.0 * 500.0, 0.1, 1800.0),), 0.1)
    assert float(leg.force(stroke, ISOTHERMAL) - balance.force(stroke, ISOTHERMAL)) == pytest.approx(
        float(one.force(stroke, ISOTHERMAL)), abs=1e-6
    )


def test_legs_may_differ():
    """A spring in one leg only: half of the springs, both legs' gas; a gap of its own in each leg lies between."""
    whole, half = fork().end(Setup(4.4, 5.0, 120.0)), fork(springs=1).end(Setup(4.4, 5.0, 120.0))
    assert float(half.spring_wheel_force(100.0)) == pytest.approx(0.5 * float(whole.spring_wheel_force(100.0)))
    assert float(half.wheel_force(260.0, ISOTHERMAL)) > 0.5 * float(whole.wheel_force(260.0, ISOTHERMAL))
    ends = [fork().end(Setup(4.4, 5.0, gap, gap_split=split)) for gap, split in ((110.0, 0.0), (120.0, 10.0), (130.0, 0.0))]
    forces = [float(e.wheel_force(e.travel, Process(1.33))) for e in ends]
    assert forces[0] > forces[1] > forces[2]
    assert forces[1] == pytest.approx(0.5 * (forces[0] + forces[2]))


def test_two_shocks_push_twice_as_hard_as_one():
    one, two = (shock(springs=count).end(Setup(48.0, 9.0, 0.0)) for count in (1, 2))
    assert float(two.wheel_force(100.0, ISOTHERMAL)) == pytest.approx(2 * float(one.wheel_force(100.0, ISOTHERMAL)))


def test_a_charge_of_unknown_volume_is_taken_as_constant():
    charges = Chamber(180e3, 1.1, circle(16.0)), SteadyCharge(1.1, circle(16.0))
    known, unknown = (shock(gas=gas).end(Setup(48.0, 9.0, 0.0)) for gas in charges)
    assert float(known.wheel_force(0.0, ISOTHERMAL)) == pytest.approx(float(unknown.wheel_force(0.0, ISOTHERMAL)))
    assert float(known.wheel_force(300.0, ISOTHERMAL)) > float(unknown.wheel_force(300.0, ISOTHERMAL))


def test_scalar_and_array_agree():
    travel = np.linspace(0.0, 260.0, 5)
    for end in (fork().end(Setup(4.4, 5.0, 120.0)), shock().end(Setup(48.0, 9.0, 0.0))):
        for what in ("wheel_force", "wheel_rate", "energy"):
            together = getattr(end, what)(travel, Process(1.33, 20.0))
            assert together == pytest.approx(
                [float(getattr(end, what)(z, Process(1.33, 20.0))) for z in travel], rel=1e-13, abs=1e-9
            )
