"""A gap by another convention is the same leg: by the volume filled and read extended, usual gaps and limits, and a rod in it.

Everything here is held to plain geometry of tubes, by arithmetic of its own.
"""

import math

import pytest

from calc.job import load
from calc.model import conditions, fork, found_gaps, limits
from calc.model.gaps import gap_as_sold
from tests.support.documents import Document, changed, demo
from tests.support.plain import report

ROAD = {
    "bike.use": "road", "rider.mass": "86 kg", "front.travel": "118 mm", "front.collapsed_stroke": "126 mm", "front.seal_diameter": "43 mm",
    "front.layout": "conventional", "front.wall": "2.4 mm", "front.damper_rod": "0 mm",
}  # fmt: skip
FILLED = {
    "front.gap_from": "volume filled",
    "front.brim_volume": "640 ml",
    "front.filled_left": "450 ml",
    "front.filled_kept": "0 ml",
}
WAYS = ({"front.gap_state": "extended"}, {"front.gap_read": "in"}, {"front.gap_state": "extended", "front.gap_read": "in"})


def bare(changes) -> Document:
    return changed({"format": "stanchion-job", "version": 1}, {"bike.use": "enduro", "rider.mass": "85 kg"} | changes)


def gas_found(document) -> tuple[float, ...]:
    """Gas [ml] of both legs as found, at full extension."""
    job = load(document)
    assert not job.problems, job.problems
    at = conditions(job)
    leg, rate = fork(job, at).gas, float(job.value("front.rate"))
    return tuple(float(leg.chamber(rate, gap).volume0) / 1000 for gap in found_gaps(job, at))


def disc(diameter: float) -> float:
    return math.pi / 4 * diameter**2


@pytest.mark.parametrize("way", [{}, *WAYS])
def test_by_volume_the_gas_is_brim_less_oil_and_what_the_stroke_draws_out(way):
    """190 ml stand over the oil collapsed; 126 mm of a 43 mm seal draw 183 ml out; 38 ml of steel and a cap of 20 go in."""
    gas = 640 - 450 + disc(43) * 126 / 1000 - 38 - 20
    assert gas == pytest.approx(315, abs=0.5)
    for told in gas_found(bare(ROAD | FILLED | way)):
        assert told == pytest.approx(gas, abs=1e-3)


def test_by_volume_around_a_sealed_cartridge_the_rod_draws_nothing_out():
    sealed = (
        ROAD
        | FILLED
        | {
            "front.air": "sealed cartridge",
            "front.damper_rod": "12 mm",
            "front.cartridge_fill": "gas",
            "front.filled_left": "560 ml",
            "front.cartridge_body": "20 mm",
        }
    )
    gas = 640 - 560 + (disc(43) - disc(12)) * 126 / 1000 - 38 - 20
    for way in ({}, *WAYS):
        job = load(bare(sealed | way))
        leg = fork(job, conditions(job)).gas
        told = leg.chamber(float(job.value("front.rate")), found_gaps(job, conditions(job))[0])
        assert float(told.volume0) / 1000 == pytest.approx(gas, abs=1e-3)


@pytest.mark.parametrize(("use", "middle"), [("enduro", 120.0), ("adventure", 130.0)])  # upside-down, conventional
@pytest.mark.parametrize("way", WAYS)
def test_usual_gaps_and_limits_are_the_trade_s_and_told_the_user_s_way(way, use, middle):
    """Nothing measured: whatever way the gap is read, the leg holds the gas of the usual gap and may hold that of 75 to 165."""
    usual, own = (load(bare({"bike.use": use} | changes)) for changes in ({}, way))
    legs = [fork(job, conditions(job)).gas for job in (usual, own)]
    pairs = [
        (middle, found_gaps(own, conditions(own))[0]),
        (middle, gap_as_sold(own, conditions(own))),
        *zip((75.0, 165.0), limits(own, "front").gap, strict=True),
    ]
    rate = float(usual.value("front.rate"))
    for collapsed, told in pairs:
        assert told != pytest.approx(collapsed, abs=1.0)
        assert float(legs[1].chamber(rate, told).volume0) == pytest.approx(
            float(legs[0].chamber(rate, collapsed).volume0), rel=1e-7
        )


def test_read_extended_an_upside_down_leg_s_limits_by_hand():
    """48 mm seal, 2.4 mm wall, 50.6 mm bore for 32 mm, 12 mm rod, 308 mm: oil at 165 mm stands at 433 mm once the leg is drawn out."""
    deep = disc(50.6) - disc(48) + disc(43.2) - disc(12)
    top = (disc(50.6) - disc(12)) * 32
    gas = top + deep * (165 - 32) + disc(48) * 308
    gap = 308 + 32 + (gas - disc(50.6) * 308 - top) / deep
    assert gap == pytest.approx(433.1, abs=0.1)
    assert limits(load(bare({"front.gap_state": "extended"})), "front").gap[1] == pytest.approx(gap, abs=1e-6)


def test_a_gap_that_is_entered_is_the_user_s_own():
    entered = {"front.gap_read": "in", "front.gap_left": "100 mm", "standard.gap": "95 mm", "front.gap_min": "60 mm"}
    job = load(demo(entered | {"front.gap_right": None}))
    assert found_gaps(job, conditions(job)) == (100.0, 100.0), "the right leg follows the left one, as it was read"
    assert gap_as_sold(job, conditions(job)) == 95.0
    assert limits(job, "front").gap[0] == 60.0
    assert limits(job, "front").gap[1] < 165.0, "with the spring in, the same oil stands higher"


@pytest.mark.parametrize("way", WAYS)
def test_the_figures_of_what_is_found_and_sold_are_those_of_any_convention(way):
    one, other = (report(bare(changes), with_bands=False)["ends"]["front"] for changes in ({}, way))
    for name in ("free_sag", "rider_sag", "frequency", "end_force", "landing_energy"):
        for setup in (lambda front: front["as_found"]["setup"], lambda front: front["standard"]):
            assert setup(other)[name]["value"] == pytest.approx(setup(one)[name]["value"], rel=1e-6), name


def test_limits_beyond_what_can_be_read_bar_nothing():
    """128 ml stand over the oil at 75 mm; a spring of 140 ml raises it over the rim."""
    reads = {"front.gap_read": "in", "front.spring_steel": "140 ml", "front.gap_left": "90 mm", "standard.gap": "90 mm"}
    low, high = limits(load(bare(reads)), "front").gap
    assert low == 0.0 < high < 165.0


def test_a_usual_gap_that_cannot_be_read_the_user_s_way_asks_for_it():
    reads = {"front.gap_state": "extended", "front.layout": "conventional"}  # deeper than 500 mm
    front = report(bare(reads), with_bands=False)["ends"]["front"]
    (problem,) = front["problems"]
    assert problem["path"] in ("front.gap_left", "standard.gap")
    assert "cannot be read your way" in problem["message"]


@pytest.mark.parametrize("layout", ["upside-down", "conventional"])
def test_a_damper_rod_takes_its_circle_of_a_gap_known_from_diameters(layout):
    """12 mm over 115 mm of gap: 13.0 ml less gas, wherever the leg is read."""
    read = {"front.layout": layout, "front.gap_left": "115 mm"}
    without, with_ = (gas_found(bare(read | {"front.damper_rod": rod}))[0] for rod in ("0 mm", "12 mm"))
    assert without - with_ == pytest.approx(disc(12) * 115 / 1000, abs=1e-6)
    assert gas_found(bare(read))[0] == with_, "assumed where nothing is entered"
    drawn = 308.0 + 120.0
    extended = {**read, "front.gap_state": "extended", "front.gap_left": f"{drawn} mm"}
    without, with_ = (gas_found(bare(extended | {"front.damper_rod": rod}))[0] for rod in ("0 mm", "12 mm"))
    assert without - with_ == pytest.approx(disc(12) * 120 / 1000, abs=1e-6), "extended it stands in the deepest 120 mm only"


def test_oil_that_was_poured_in_met_the_rod():
    for known in (
        {"front.area_by": "raised", "front.raised_height": "12 mm"},
        {"front.area_by": "brim", "front.brim_gap": "140 mm", "front.brim_poured": "240 ml"},
    ):
        job = load(bare(known))
        assert not job.fields["front.damper_rod"].applies
        assert gas_found(bare(known)) == gas_found(bare(known | {"front.damper_rod": "0 mm"}))


def test_inside_a_closed_cartridge_the_rod_takes_nothing_and_opened_it_does():
    def free(state):
        job = load(bare({"front.air": "sealed cartridge", "front.cartridge_state": state, "front.layout": "conventional"}))
        leg = fork(job, conditions(job)).gas
        return float(getattr(leg, "outer", leg).free_area[-1][1])

    assert free("as built") == pytest.approx(disc(43.2) - disc(32))
    assert free("opened into one") == pytest.approx(disc(43.2) - disc(12))


def test_a_sealed_cartridge_with_no_rod_is_refused():
    front = report(bare({"front.air": "sealed cartridge", "front.damper_rod": "0 mm"}), with_bands=False)["ends"]["front"]
    assert [(problem["path"], problem["code"]) for problem in front["problems"]] == [("front.damper_rod", "rod")]
