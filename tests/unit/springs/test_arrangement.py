"""Arrangements of springs in sizing: preload from sag for every kind, against a plain root; bind; pairs."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.array import find_root
from calc.end.assembly import Stops
from calc.end.figures import evaluate
from calc.end.limits import Limits
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
from calc.sizing.coil import size
from calc.sizing.offers import offers
from calc.springs.arrangement import Nested, Progressive, SingleSpring, Stacked
from calc.springs.table import ForceTable
from tests.unit.end.test_end import fork, shock
from tests.unit.sizing.test_sizing import LOADS, WIDE, front_targets

TABLE = ForceTable(tuple((float(x), 3.6 * x + 0.004 * x * x) for x in range(20, 361, 20)))
KINDS = [SingleSpring(), Stacked(10.0, 20.0), Nested(1.5, 60.0), Progressive(TABLE)]


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: type(k).__name__)
@given(rate=st.floats(4, 8), gap=st.floats(110, 200), travel=st.floats(30, 120), preload=st.floats(0, 25))
@settings(max_examples=15)
def test_preload_for_sag_holds_the_load_there(kind, rate, gap, travel, preload):
    assembly = replace(fork(), arrangement=kind)
    load = float(assembly.end(Setup(rate, preload, gap)).wheel_force(travel, ISOTHERMAL))
    assert float(preload_for_sag(assembly, Setup(rate, 0.0, gap), load, travel)) == pytest.approx(preload, abs=1e-6)


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: type(k).__name__)
def test_preload_for_sag_against_a_root(kind):
    """Second method: the preload that a root search over the whole end finds, candidates at once, fork and shock."""
    for assembly, rates, gap, load, travel in (
        (replace(fork(), arrangement=kind), np.array([4.4, 5.0, 6.2]), 130.0, 790.0, 60.0),
        (replace(shock(), arrangement=kind), np.array([50.0, 60.0]), 0.0, 980.0, 100.0),
    ):
        if isinstance(kind, Stacked) and gap == 0.0:
            assembly = replace(assembly, arrangement=Stacked(300.0, 3.0))

        def surplus(p, assembly=assembly, rates=rates, gap=gap, load=load, travel=travel):
            return np.asarray(assembly.end(Setup(rates, p, gap)).wheel_force(travel, ISOTHERMAL) - load)

        low = np.full(len(rates), -20.0)
        assert preload_for_sag(assembly, Setup(rates, 0.0, gap), load, travel) == pytest.approx(
            find_root(surplus, low, low + 120.0), abs=1e-6
        )


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: type(k).__name__)
def test_sizing_meets_its_targets_with_every_kind(kind):
    assembly = replace(fork(), arrangement=kind)
    rates = np.array([4.4, 4.8, 5.2])
    sized = size(assembly, rates, LOADS, 1.33, front_targets(end_amount=5300.0), WIDE)
    end = assembly.end(Setup(rates, sized.exact.preload, sized.exact.gap))
    assert end.wheel_force(end.motion.travel(66.0), ISOTHERMAL) == pytest.approx(LOADS.aboard, rel=1e-7)
    ok = ~sized.short["end unreachable"]
    assert np.any(ok)
    assert not np.any(sized.short["sag unreachable"])
    built = np.asarray(sized.exact.preload) >= 0
    assert np.any(built)
    assert sized.figures.rider.stroke[built] == pytest.approx(66.0, abs=1.0)


def test_bind_is_that_of_the_main_spring():
    """On a stack the main spring is shortened by F / k only: more room than its stroke would leave."""
    assert float(Stacked(10.0, 20.0).main_shortened(5.0, 45.0)) == pytest.approx(30.0)  # 5 on 10 N/mm share 45 mm two to one
    for kind in (SingleSpring(), Nested(1.5, 60.0), Progressive(TABLE)):
        assert kind.main_shortened(5.0, 45.0) == 45.0
    limits = Limits((0.0, 99.0), (0.0, 499.0), 460.0, 150.0, 5.0)
    plain = size(fork(), np.array([4.6]), LOADS, 1.33, front_targets(), limits)
    stacked = size(replace(fork(), arrangement=Stacked(10.0, 20.0)), np.array([4.6]), LOADS, 1.33, front_targets(), limits)
    used = 300.0 + np.asarray(stacked.setup.preload)
    assert float(plain.room.main[0]) == pytest.approx(460 - 150 - 300 - float(plain.setup.preload[0]))
    assert float(stacked.room.main[0]) == pytest.approx(310.0 - float((used - 20.0)[0]))  # the second closed, 20 mm are its own


def test_unequal_legs_act_as_their_mean_where_neither_is_loose():
    """Springs in parallel at one preload: the sum of both rates. Steel goes with the root of each rate: a hair of gas."""
    plain, pair = fork().end(Setup(4.4, 5.0, 120.0)), fork().end(Setup(4.4, 5.0, 120.0, 0.2))
    line = np.linspace(0.0, float(plain.travel), 20)
    assert pair.spring_wheel_force(line) == pytest.approx(np.asarray(plain.spring_wheel_force(line)))
    assert pair.gas_wheel_force(line, ISOTHERMAL) == pytest.approx(np.asarray(plain.gas_wheel_force(line, ISOTHERMAL)), rel=2e-3)
    assert [strut.springs[0].rate for strut, _ in pair.struts] == [pytest.approx(4.2), pytest.approx(4.6)]
    locks = [float(fork().lock_gap(Setup(rate, 0.0, 0.0, split))) for rate, split in ((4.4, 0.2), (4.6, 0.0))]
    assert locks[0] == pytest.approx(locks[1])


def test_pairs_on_offer():
    rates, split = offers(np.array([4.2, 4.4, 4.6]), True, 4.2)
    assert rates.round(6).tolist() == [4.2, 4.3, 4.4, 4.5, 4.6]
    assert split.round(6).tolist() == [0.0, 0.1, 0.0, 0.1, 0.0]
    rates, split = offers(np.array([4.2, 4.4, 4.6]), False, 4.4, -0.2)  # 4.6 left, 4.2 right is in: "leave it" stands for 4.4
    assert rates.tolist() == [4.2, 4.4, 4.6]
    assert split.tolist() == [0.0, -0.2, 0.0]


def test_sizing_keeps_the_split_of_each_candidate():
    rates, split = offers(np.array([4.4, 4.6]), True, 4.4)
    sized = size(fork(), rates, LOADS, 1.33, front_targets(), WIDE, split)
    assert [sized.setup.at(i).split for i in range(3)] == pytest.approx([0.0, 0.1, 0.0])
    again = evaluate(
        fork(), Setup(rates[1], *(float(np.asarray(x)[1]) for x in (sized.setup.preload, sized.setup.gap)), 0.1), LOADS, 1.33
    )
    assert float(again.end_force) == pytest.approx(float(np.asarray(sized.figures.end_force)[1]), rel=1e-9)


def test_where_a_top_out_spring_still_acts_no_preload_moves_the_sag():
    soft = replace(fork(), stops=Stops(0.5, 157.0))
    sized = size(soft, np.array([4.4, 4.6]), LOADS, 1.33, front_targets(), WIDE)
    assert np.all(sized.short["sag unreachable"])
    usual = replace(fork(), stops=Stops(15.0, 157.0))
    assert not np.any(size(usual, np.array([4.4, 4.6]), LOADS, 1.33, front_targets(), WIDE).short["sag unreachable"])
