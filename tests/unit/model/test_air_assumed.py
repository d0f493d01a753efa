"""A fork of any kind from practice alone: what nobody measured must make a fork that can be, and one that a bench would know.

Ranges: the practice tables, common practice, no source.
"""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from calc.job import load
from calc.model.inputs import end_inputs
from calc.practice import USES, usual
from calc.sizing.choice import size_end
from tests.support.documents import Document, changed
from tests.support.plain import report


def bare(use: str, changes) -> Document:
    """A job of which only the kind of riding and of fork is known, for the rider whom such bikes are sold for."""
    mass = usual("standard rider", use).typical
    return changed({"format": "stanchion-job", "version": 1}, {"bike.use": use, "rider.mass": f"{mass} kg"} | changes)


def front_of(use, changes, with_bands=False):
    return report(bare(use, changes), with_bands=with_bands)["ends"]["front"]


@pytest.mark.parametrize("use", USES)
def test_an_assumed_air_fork_is_one_that_is_ridden(use):
    """At the 10 bar that are usual on a small piston the standard rider has the usual sag, frequency and force at full travel."""
    front = front_of(use, {"front.air": "air leg"})
    found, wanted = front["as_found"]["setup"], front["targets"]["rider_sag"]["value"]
    assert found["pressure"]["value"] == 10.0
    assert found["rider_sag"]["value"] == pytest.approx(wanted, abs=0.02 * 300)
    for row, name in (("ride frequency front", "frequency"), ("end multiple front", "end_multiple")):
        window = usual(row, use)
        assert window.low <= found[name]["value"] <= window.high, name


@pytest.mark.parametrize("use", USES)
@pytest.mark.parametrize("share", [0.85, 1.0, 1.2])
@pytest.mark.parametrize("how", [{}, {"front.balance_fill": "valve"}])
def test_an_assumed_air_fork_gets_a_pressure_for_lighter_and_heavier_riders(use, share, how):
    mass = share * usual("standard rider", use).typical
    changes = {"front.air": "air leg", "rider.mass": f"{mass:.1f} kg"} | how
    assert front_of(use, changes)["state"] == "ok"
    bar, off = for_the_sag(use, changes)
    assert off < 3
    if not how:
        assert 6.0 <= bar <= 13.0, "what such pistons are pumped to"


def for_the_sag(use, changes) -> tuple[float, float]:
    """Of the pressures looked at, the one [bar] that comes nearest to the sag wanted, and how near [mm]."""
    done = size_end(load(bare(use, changes)), "front")
    off = np.abs(np.asarray(done.sized.figures.rider.stroke) - done.inputs.targets.sag)
    return 10 * float(np.asarray(done.sized.setup.stepped)[np.argmin(off)]), float(np.min(off))


def test_the_pressure_of_an_assumed_fork_by_hand():
    """Boyle in every chamber of the enduro fork that nobody measured, solved for the sag by scipy."""
    job = load(bare("enduro", {"front.air": "air leg"}))
    here, sag = end_inputs(job, "front"), job.number("front.target_sag")
    disc = lambda d: math.pi / 4 * d * d  # noqa: E731
    piston, grown = disc(34.5), disc(34.5) - disc(14.0)
    air = here.assembly.ambient
    outer = [leg.chamber(None, 120.0) for leg in (here.assembly.gas.outer, here.assembly.gas_right)]

    def force(bar: float) -> float:
        main = bar / 10 - 0.01 + air
        at_port = main * 455e3 / (455e3 - piston * 6.0) * (90e3 + grown * 6.0)
        total = (main * 455e3 / (455e3 - piston * sag) - air) * piston - (at_port / (90e3 + grown * sag) - air) * grown
        for leg, area in zip(outer, (disc(48.0) - disc(14.0), disc(48.0)), strict=True):
            total += (leg.pressure0 * leg.volume0 / (leg.volume0 - area * sag) - air) * area
        return float(total) / math.cos(here.assembly.rake) - float(here.loads.aboard)

    bar = brentq(force, 2.0, 20.0)
    front = front_of("enduro", {"front.air": "air leg"})
    assert front["chosen"]["pressure"]["value"] == pytest.approx(bar, abs=0.2), (
        "to the gauge's step or what is in, with the gap that goes with it"
    )


@pytest.mark.parametrize(
    "changes", [{"front.balance": "no"}, {"front.air_in": "both", "front.air_piston": "22 mm"}, {"front.gap_max": "90 mm"}]
)
def test_at_a_gap_s_limit_the_pressure_is_that_of_the_gap_that_can_be_set(changes):
    """The gap that would meet full travel cannot be set: what can be is set first, and the sag then solved for it."""
    front = front_of("enduro", {"front.air": "air leg"} | changes)
    assert any(reason["code"].startswith("gap") for reason in front["candidates"][0]["short"])
    assert for_the_sag("enduro", {"front.air": "air leg"} | changes)[1] < 3


@pytest.mark.parametrize("use", USES)
@pytest.mark.parametrize("fill", ["spring", "gas"])
@pytest.mark.parametrize("state", ["as built", "opened into one"])
def test_an_assumed_cartridge_reaches_an_answer(use, fill, state):
    """Its outside and its piston follow the tube that they stand in: nothing is oil-locked, and the rider is carried."""
    front = front_of(use, {"front.air": "sealed cartridge", "front.cartridge_fill": fill, "front.cartridge_state": state})
    assert front["state"] != "refused", front["problems"]
    assert front["as_found"]["setup"]["rider_sag"]["value"] < 0.5 * 310
    assert front["standard"]["end_multiple"]["value"] < 25


@pytest.mark.parametrize("use", USES)
def test_an_assumed_cartridge_fits_in_its_tube_and_its_piston_in_it(use):
    job = load(bare(use, {"front.air": "sealed cartridge"}))
    bore = job.number("front.seal_diameter") - 2 * job.number("front.wall")
    body, piston, rod = (job.number(f"front.{what}") for what in ("cartridge_body", "cartridge_piston", "damper_rod"))
    assert rod < piston < body < bore - 9, "a spring stands around it"


@pytest.mark.parametrize("use", ["enduro", "road", "youth"])
def test_most_draws_of_an_assumed_air_fork_can_be(use):
    sure = front_of(use, {"front.air": "air leg"}, with_bands=True)["sure"]
    assert sure["draws"] > 120
