"""Spaces that join at a stroke, a small leak, a second volume that opens at a pressure: the gas is kept, force is dE/ds."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.gas.chamber import ISOTHERMAL, Chamber, Process
from calc.gas.joined import Joined, SmallLeak
from calc.gas.staged import Staged
from calc.impossible import Impossible

AMBIENT = 0.0966
OUTER, CARTRIDGE = Chamber(560e3, 0.0966, 1696.5, "outer chamber"), Chamber(90e3, 0.4, 113.1, "cartridge")
AIR = Staged(Chamber(280e3, 1.0, 615.0, "main chamber"), 60e3, 2.0)

strokes = st.floats(0, 300)
exponents = st.floats(1.0, 1.4)
joins = st.floats(0, 300)
settled = st.floats(0, 200)


def kinds(join: float) -> dict:
    return {"joined": Joined((OUTER, CARTRIDGE), join), "small leak": SmallLeak((OUTER, CARTRIDGE)), "staged": AIR}


@pytest.mark.parametrize("name", list(kinds(0.0)))
@given(stroke=st.floats(1, 299), join=joins, n=exponents, rest=settled)
def test_force_is_the_slope_of_energy_and_rate_the_slope_of_force(name, stroke, join, n, rest):
    gas, process, step = kinds(join)[name], Process(n, rest), 1e-3
    if name == "joined":
        assume(abs(stroke - join) > 0.1)  # there the force may step
    rise = gas.energy(stroke + step, AMBIENT, process) - gas.energy(stroke - step, AMBIENT, process)
    assert float(rise) / (2 * step) == pytest.approx(float(gas.force(stroke, AMBIENT, process)), rel=1e-4, abs=1e-2)
    steeper = gas.force(stroke + step, AMBIENT, process) - gas.force(stroke - step, AMBIENT, process)
    rates = [float(gas.rate_at(stroke + x, AMBIENT, process)) for x in (-step, 0.0, step)]
    slope = float(steeper) / (2 * step)
    assert slope == pytest.approx(rates[1], rel=1e-4) or min(rates) <= slope <= max(rates)  # where a second volume opens
    assert float(gas.energy(0.0, AMBIENT, process)) == pytest.approx(0.0, abs=1e-6)


@given(stroke=strokes, join=joins)
def test_slow_the_gas_is_kept_and_one_pressure_holds_where_they_are_one(stroke, join):
    pressures = Joined((OUTER, CARTRIDGE), join).pressures(stroke, ISOTHERMAL)
    kept = sum(c.pressure0 * c.volume0 for c in (OUTER, CARTRIDGE))
    volumes = [c.volume(stroke) for c in (OUTER, CARTRIDGE)]
    assert sum(float(p) * v for p, v in zip(pressures, volumes, strict=True)) == pytest.approx(kept)
    if stroke >= join:
        assert float(pressures[0]) == pytest.approx(float(pressures[1]))


@given(join=joins, n=exponents, rest=settled)
def test_mixing_where_they_join_keeps_the_inner_energy(join, n, rest):
    """A closed, rigid whole: sum(P V), inner energy times n - 1, is the same before and after."""
    gas, process = Joined((OUTER, CARTRIDGE), join), Process(n, rest)
    assume(join > rest)
    before = sum(float(p) * c.volume(join) for p, c in zip(gas._apart(join, process), gas.chambers, strict=True))
    after = float(gas.pressures(join, process)[0]) * sum(c.volume(join) for c in gas.chambers)
    assert after == pytest.approx(before)


@given(stroke=strokes, n=exponents, rest=settled)
def test_joined_all_along_is_one_chamber_of_the_seal_area(stroke, n, rest):
    one = Chamber(650e3, (0.0966 * 560e3 + 0.4 * 90e3) / 650e3, 1696.5 + 113.1)
    both = Joined((OUTER, CARTRIDGE), 0.0)
    for process in (ISOTHERMAL, Process(n, rest)):
        for name in ("force", "rate_at", "energy"):
            expected = float(getattr(one, name)(stroke, AMBIENT, process))
            assert float(getattr(both, name)(stroke, AMBIENT, process)) == pytest.approx(expected, rel=1e-9, abs=1e-6)


@given(stroke=strokes, rest=settled, n=exponents)
def test_a_small_leak_is_one_space_slow_and_two_fast(stroke, rest, n):
    leak, one = SmallLeak((OUTER, CARTRIDGE)), Joined((OUTER, CARTRIDGE), 0.0)
    assert float(leak.force(stroke, AMBIENT, ISOTHERMAL)) == pytest.approx(float(one.force(stroke, AMBIENT, ISOTHERMAL)))
    there = float(one.force(rest, AMBIENT, ISOTHERMAL))
    assert float(leak.force(rest, AMBIENT, Process(n, rest))) == pytest.approx(there), "settled, equal"
    if stroke > rest + 1:
        assert leak.force(stroke, AMBIENT, Process(n, rest)) > one.force(stroke, AMBIENT, Process(n, rest)) - 1e-9, (
            "shut is stiffer"
        )


def test_staged_by_hand_slow():
    """Boyle: shut until 280 x 1.0 / V = 2.0, at V = 140 ml, 228 mm; then 280 + 120 bar ml over what is left of both."""
    opens = (280e3 - 140e3) / 615.0
    assert float(AIR.pressure(opens - 1e-6, ISOTHERMAL)) == pytest.approx(2.0)
    assert float(AIR.pressure(150.0, ISOTHERMAL)) == pytest.approx(280e3 / (280e3 - 615.0 * 150))
    assert float(AIR.pressure(300.0, ISOTHERMAL)) == pytest.approx((280e3 + 120e3) / (340e3 - 615.0 * 300))


@given(stroke=strokes, rest=settled, n=exponents)
def test_both_gases_of_a_staged_spring_keep_their_own_law(stroke, rest, n):
    """A second method: bisect the floating piston's place until both pressures agree."""
    process = Process(n, rest)

    def volumes(s, first, second, exponent):
        total = 340e3 - 615.0 * s
        if first / (total - 60e3) ** exponent <= second / 60e3**exponent and total > 60e3:
            return total - 60e3, 60e3
        low, high = max(total - 60e3, 1.0), total - 1e-9
        for _ in range(200):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if first / middle**exponent > second / (total - middle) ** exponent else (low, middle)
        return low, total - low

    main, second = volumes(rest, 280e3, 120e3, 1.0)
    gases = [280e3 / main * main**n, 120e3 / second * second**n]
    volume = volumes(stroke, *gases, n)[0]
    assert float(AIR.pressure(stroke, process)) == pytest.approx(gases[0] / volume**n, rel=1e-6)


def test_the_space_that_locks_is_named():
    thick = Chamber(20e3, 0.4, 113.1, "cartridge")
    with pytest.raises(Impossible, match="The cartridge is oil-locked at 177 mm") as caught:
        Joined((OUTER, thick), 250.0).force(300.0, AMBIENT, ISOTHERMAL)
    assert caught.value.field == "front.cartridge_gas"
    assert float(Joined((OUTER, thick), 250.0).lock_stroke()) == pytest.approx(20e3 / 113.1)
    assert float(Joined((OUTER, thick), 100.0).lock_stroke()) == pytest.approx(580e3 / 1809.6)
    assert float(SmallLeak((OUTER, thick)).lock_stroke()) == pytest.approx(20e3 / 113.1)
    assert float(AIR.lock_stroke()) == pytest.approx(340e3 / 615.0)


def test_scalar_and_array_agree():
    many = np.linspace(0.0, 300.0, 13)
    for join in (0.0, 120.0, 300.0):
        for gas in kinds(join).values():
            for process in (ISOTHERMAL, Process(1.33, 60.0), Process(1.33, 200.0)):
                for name in ("force", "rate_at", "energy"):
                    together = getattr(gas, name)(many, AMBIENT, process)
                    one = [float(getattr(gas, name)(s, AMBIENT, process)) for s in many]
                    assert np.asarray(together).tolist() == pytest.approx(one, rel=1e-12, abs=1e-9)


@given(stroke=st.floats(0, 149), n=exponents, rest=st.floats(150, 220))
def test_back_over_the_stroke_that_parts_them_each_keeps_what_it_had_there(stroke, n, rest):
    """Settled as one, then fast outwards: one space down to the joining stroke, two from there, each P V^n = constant."""
    gas, process = Joined((OUTER, CARTRIDGE), 150.0), Process(n, rest)
    kept, areas = 0.0966 * 560e3 + 0.4 * 90e3, (1696.5, 113.1)
    whole = 650e3 - sum(areas) * np.array([rest, 150.0])
    parted = kept / whole[0] * (whole[0] / whole[1]) ** n
    for pressure, volume, area in zip(gas.pressures(stroke, process), (560e3, 90e3), areas, strict=True):
        assert float(pressure) == pytest.approx(parted * ((volume - area * 150.0) / (volume - area * stroke)) ** n, rel=1e-9)
