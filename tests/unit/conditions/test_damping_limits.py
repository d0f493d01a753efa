"""What a damper may hold along its stroke: pressures by Boyle's law written out by hand, gauge and absolute each on its own scale."""

from __future__ import annotations

from math import pi
from random import Random

import numpy as np
import pytest

from calc.conditions.damping import Behind, behind_in_state, behind_oil, limit_at
from calc.conditions.states import states
from calc.damping.flow import Sizes
from calc.demo import jobs
from calc.end.figures import evaluate
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions
from calc.model.damper import DENSITY, Damper, damper, rod_path
from calc.model.inputs import end_inputs
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, OUTSIDE, PISTON, made_up

AMBIENT = 0.101325  # MPa


def figures(job, axle: str):
    here = end_inputs(job, axle)
    return evaluate(here.assembly, here.as_found, here.loads, here.exponent)


def test_a_shock_on_a_steady_charge_is_backed_by_it_at_every_stroke():
    job = load(demo({"rear.charge": "11 bar"}))
    found = behind_oil(figures(job, "rear"))
    # the gauge read 11 bar where it was filled; it is ridden at the same height
    assert [one.pressure for one in found] == pytest.approx([1.1] * 3)
    assert found[2].stroke == pytest.approx(305.0 / 2.5)
    assert found[1].stroke == pytest.approx(0.5 * found[2].stroke)


def test_a_shock_with_a_known_volume_is_boyles_law_settled_and_a_polytrope_fast():
    """P V = const down to rider sag, P V^n = const from there, absolute: computed here by hand."""
    job = load(demo({"rear.charge": "10 bar", "rear.gas_volume": "60 ml"}))
    done = figures(job, "rear")
    outside = float(conditions(job).ambient)
    sag, n, rod = float(done.rider.stroke), job.number("place.exponent"), pi / 4 * 16.0**2
    settled = (1.0 + outside) * 60e3 / (60e3 - rod * sag)
    found = behind_oil(done)
    assert found[0].pressure == pytest.approx(settled - outside)
    for one in found[1:]:
        fast = settled * ((60e3 - rod * sag) / (60e3 - rod * one.stroke)) ** n
        assert one.pressure == pytest.approx(fast - outside)


def test_an_open_damper_is_backed_by_the_air_over_its_oil():
    """Statics: over ambient, that pressure times the seal's area is the gas's force of a leg."""
    done = figures(load(demo()), "front")
    strut = done.end.struts[0][0]
    for one in behind_oil(done)[1:]:
        force = float(strut.gas_force(one.stroke, done.process))
        assert one.pressure * pi / 4 * 48.0**2 == pytest.approx(force, rel=1e-9)


@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_a_sealed_cartridge_holds_more_than_once_opened_by_its_backing(fill):
    """The forces differ by the backing pressure lost times the ring; OUTSIDE is where the made-up legs are."""
    _, document = made_up(Random(f"limits {fill}"), fill, True, exact=True)
    job = load(document)
    those, found = states(job), damper(job, "front")
    sealed, opened = (behind_in_state(those.told[how], those.strokes) for how in ("as built", "opened into one"))
    for one, other, lost in zip(sealed, opened, those.lost, strict=True):
        apart = limit_at(found, one, OUTSIDE).force - limit_at(found, other, OUTSIDE).force
        assert one.pressure - other.pressure == pytest.approx(lost.backing)
        assert apart == pytest.approx(lost.backing * float(found.sizes.ring))


@pytest.mark.parametrize("seed", range(5))
def test_limits_by_the_absolute_pressure_of_each_space(seed):
    """A second sum: the pressure of the space behind the piston, and of the one behind the check valve, lands on the vapour's."""
    rng = Random(f"absolute {seed}")
    sizes = Sizes.of(rng.uniform(8, 18), rng.uniform(20, 50))
    vapour, base = rng.uniform(0.0, 0.03), rng.uniform(0.1, 2.0)
    found = Damper(sizes, 2, 1000.0, base, vapour, None, DENSITY)
    behind = Behind(100.0, rng.uniform(0.0, 1.5))
    limit = limit_at(found, behind, AMBIENT)
    assert behind.pressure + AMBIENT - limit.drop == pytest.approx(vapour)
    assert behind.pressure + AMBIENT + base - limit.stated_drop == pytest.approx(vapour)
    assert behind.pressure + AMBIENT - limit.refill == pytest.approx(vapour)
    bore, rod = float(sizes.piston), float(sizes.rod)
    below, above = behind.pressure + AMBIENT + base, vapour
    assert limit.stated_force == pytest.approx(below * bore - above * (bore - rod) - (behind.pressure + AMBIENT) * rod)
    assert limit.force < limit.stated_force


def test_nothing_is_stated_where_nobody_stated_it():
    limit = limit_at(damper(load(demo()), "front"), Behind(0.0, 0.1), AMBIENT)
    assert (limit.stated_drop, limit.stated_force) == (None, None)


def test_the_rod_is_read_where_its_field_is():
    poured, stated = load(demo({"front.damping_rod": "10 mm"})), load(changed(jobs()["trail"], {"front.damper_rod": "11 mm"}))
    assert (rod_path(poured, "front"), rod_path(stated, "front"), rod_path(stated, "rear")) == (
        "front.damping_rod",
        "front.damper_rod",
        "rear.rod_diameter",
    )
    assert damper(poured, "front").sizes.rod == pytest.approx(pi / 4 * 100.0)
    assert damper(stated, "front").sizes.rod == pytest.approx(pi / 4 * 121.0)


def test_how_many_damp_and_with_which_oil():
    both, one, twins = load(demo()), load(demo({"front.damps": "one", "oil.density": "850"})), load(demo({"rear.shocks": "2"}))
    assert [damper(job, axle).count for job, axle in ((both, "front"), (one, "front"), (both, "rear"), (twins, "rear"))] == [
        2,
        1,
        1,
        2,
    ]
    assert damper(one, "front").density == 850.0
    assert damper(one, "rear").density == DENSITY, "the tin of the fork is not the shock's oil"


def test_ports_need_their_number_and_their_size():
    job = load(demo({"front.ports": "4", "front.port_diameter": "5 mm"}))
    assert np.asarray(damper(job, "front").ports) == pytest.approx(25.0 * pi)
    with pytest.raises(Impossible, match="Port diameter is not entered") as refused:
        damper(load(demo({"front.ports": "4"})), "front")
    assert refused.value.field == "front.port_diameter"


def test_a_rod_as_thick_as_the_piston_is_named_with_its_field():
    with pytest.raises(Impossible, match="must be thinner than its piston") as refused:
        damper(load(demo({"front.damping_rod": "20", "front.damper_piston": "20"})), "front")
    assert refused.value.field == "front.damping_rod"
