"""How sure: the bands against draws of an independent hand model, and first order against draws."""

from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from calc.job import load
from calc.job.starter import start
from calc.model.draws import drawn, half_width
from calc.model.inputs import end_inputs
from calc.model.spread import deviation, standard_normal, strata
from calc.model.survivors import survivors
from calc.quantities.reading import Origin, Reading, Spread
from calc.sizing.choice import resized, size_end
from calc.uncertainty.choices import REACH, choices
from tests.support.documents import demo
from tests.support.hand_model import Fork
from tests.support.plain import report

COUNT = 4000


@pytest.fixture(scope="module")
def front():
    return report(demo())["ends"]["front"]


def hand_drawn() -> Fork:
    """The demo's readings drawn at random: normal with half of the +/-, rectangular where the +/- is assumed."""
    rng = np.random.default_rng(20260512)

    def normal(value, plus_minus):
        return value + plus_minus / 2 * rng.standard_normal(COUNT)

    def rectangular(value, plus_minus):
        return value + plus_minus * rng.uniform(-1, 1, COUNT)

    return Fork(
        alone=normal(54.5, 0.5), aboard=normal(96.2, 1), rider=normal(104, 1), sold_rider=normal(87, 5), unsprung=rectangular(16, 1.5),
        rake=normal(26.5, 0.5), seal=normal(48, 0.05), collapsed=normal(308, 1), travel=normal(300, 2), outer=normal(50.6, 0.1),
        depth=normal(32, 1), raised=normal(12, 0.4), steel=normal(51e3, 1e3), cap=rectangular(20e3, 10e3), washers=normal(8e3, 1e3),
        altitude=normal(400, 50), n=np.clip(normal(1.33, 0.07), 1.0, 1.4), sold_rate=normal(4.2, 0.126), sold_preload=normal(4, 1),
        sold_gap=normal(126, 2),
    )  # fmt: skip


def half(samples) -> float:
    return float(np.diff(np.quantile(samples, (0.025, 0.975)))[0]) / 2


def test_bands_of_what_the_setup_does_against_the_hand_model(front):
    """The recommended setup as it may come out on the bench: spring 3 %, preload and gap 1 mm; 200 draws know a band to a tenth."""
    rng, fork = np.random.default_rng(7), hand_drawn()
    rate, preload, gap = (value + pm / 2 * rng.standard_normal(COUNT) for value, pm in ((4.6, 0.138), (3.0, 1.0), (120.0, 1.0)))
    figures = {
        "free_sag": half(fork.sag(rate, preload, gap, fork.load_alone)),
        "rider_sag": half(fork.sag(rate, preload, gap, fork.load)),
        "end_force": half(fork.end_force(rate, preload, gap, fork.load)) / 1000,
        "end_multiple": half(fork.end_force(rate, preload, gap, fork.load) / fork.load),
        "frequency": half(fork.frequency(rate, preload, gap, fork.load)),
    }
    for name, expected in figures.items():
        assert front["chosen"][name]["plus_minus_95"] == pytest.approx(expected, rel=0.15), name


def test_bands_of_what_is_recommended_against_the_hand_model(front):
    """Preload and gap solved again in every draw, the spring held. A 95 % half-width of 200 draws has a standard error of 7 %
    (of a normal quantile, sqrt(p (1 - p) / n) over the density there); of 800, half of that."""
    preload, gap = hand_drawn().sized(4.6)
    many = report(demo(), draws=800)["ends"]["front"]
    for counted_draws, within in ((front, 0.2), (many, 0.1)):
        assert counted_draws["chosen"]["preload"]["plus_minus_95"] == pytest.approx(half(preload), rel=within)
        assert counted_draws["chosen"]["gap"]["plus_minus_95"] == pytest.approx(half(gap), rel=within)


def test_how_often_each_spring_wins_against_the_hand_model(front):
    """Nearest in frequency to the setup as sold, sags and end of travel within their windows by their bands; the 4.2 that is in,
    which is as sold and drawn with it, stays within one step of the nearest: about seven draws of ten for 4.6."""
    fork, rates = hand_drawn(), np.array([4.2, 4.4, 4.6, 4.8, 5.0])
    own, wanted = fork.sold_rate, fork.frequency(fork.sold_rate, fork.sold_preload, fork.sold_gap, fork.sold_load)
    away = []
    for rate in rates:
        drawn_rate = own if rate == 4.2 else rate
        preload, gap = (np.round(x) for x in fork.sized(drawn_rate))
        built = np.maximum(preload, 0.0)
        free, rider = (fork.sag(drawn_rate, built, gap, load) for load in (fork.load_alone, fork.load))
        out = (np.abs(rider - 66.0) - half(rider) > 0.02 * 300) | (np.abs(free - 0.11 * 300) - half(free) > 0.03 * 300)
        away.append(np.where(out, np.inf, np.abs(np.log(fork.frequency(drawn_rate, built, gap, fork.load) / wanted))))
    best = np.argmin(away, axis=0)
    stays = np.isfinite(away[0]) & (np.abs(rates[best] - own) <= 0.2 * 1.05)
    by_hand = np.bincount(np.where(stays, 0, best), minlength=len(rates)) / COUNT
    counted = {c["rate"]: c["count"] / front["sure"]["draws"] for c in front["sure"]["counts"]}
    for rate, share in zip(rates, by_hand, strict=True):
        assert counted.get(rate, 0.0) == pytest.approx(share, abs=0.1), rate
    assert front["sure"]["draws"] + front["sure"]["left_out"] == 200


def test_the_words_count_what_the_numbers_count(front):
    sure = front["sure"]
    best = max(sure["counts"], key=lambda c: c["count"])
    assert sure["words"].startswith(f"{best['rate']} in {best['of_ten']} of 10 runs with your ± varied")
    assert sum(c["of_ten"] for c in sure["counts"]) == 10


def test_what_is_measured_better_narrows_the_band():
    """Weighing the unsprung mass, the first reading asked for, narrows the preload as much as was promised."""
    before = report(demo())["ends"]["front"]
    asked = next(m for m in before["measure_next"] if m["path"] == "front.unsprung")
    assert asked["then"] < asked["now"]
    weighed = {"value": "16 kg", "plus_minus_95": "0.75 kg", "origin": "assumed"}
    after = report(demo({"front.unsprung": weighed}))["ends"]["front"]
    gained = after["chosen"]["preload"]["plus_minus_95"] / before["chosen"]["preload"]["plus_minus_95"]
    assert gained == pytest.approx(asked["then"] / asked["now"], abs=0.08)


def test_no_uncertainty_gives_no_band_but_that_of_the_bench():
    exact = {p: {"value": e["value"], "plus_minus_95": "0", "origin": e["origin"]} for group in ("bike", "rider", "front", "place", "standard")
             for k, e in demo()[group].items() if isinstance(e, dict) and "plus_minus_95" in e for p in [f"{group}.{k}"]}  # fmt: skip
    narrow = report(demo(exact))["ends"]["front"]["chosen"]
    wide = report(demo())["ends"]["front"]["chosen"]
    assert narrow["preload"]["plus_minus_95"] < 0.5 * wide["preload"]["plus_minus_95"]
    assert narrow["rider_sag"]["plus_minus_95"] < wide["rider_sag"]["plus_minus_95"]


def test_strata_fill_the_range_evenly_and_always_alike():
    column = strata("front.unsprung", 200)
    assert np.sort(column) == pytest.approx((np.arange(200) + 0.5) / 200)
    assert np.array_equal(column, strata("front.unsprung", 200))
    assert abs(np.corrcoef(column, strata("bike.rake", 200))[0, 1]) < 0.25


def test_shapes_have_the_spread_they_are_declared_with():
    """JCGM 100:2008, 4.3.7 and 6.3: a normal +/- is two standard uncertainties, a rectangular one is its whole half-width."""
    normal = Reading(10.0, 2.0, Origin.MEASURED)
    assert np.std(deviation("a", normal, 200)) == pytest.approx(1.0, rel=0.02)
    flat = Reading(10.0, 2.0, Origin.ASSUMED, Spread.RECTANGULAR)
    assert np.std(deviation("a", flat, 200)) == pytest.approx(2.0 / np.sqrt(3), rel=0.01)
    assert np.max(np.abs(deviation("a", flat, 200))) <= 2.0
    assert half_width(standard_normal("a", 2000)) == pytest.approx(1.96, rel=0.01)
    for count in (1, 2, 7, 200):  # the second opinion: numpy's quantiles
        samples = strata("b", count) ** 2
        assert half_width(samples) == pytest.approx(np.diff(np.quantile(samples, (0.025, 0.975)))[0] / 2, abs=1e-15)


def test_the_exponent_never_leaves_what_air_can_do():
    n = 1.33 + deviation("place.exponent", Reading(1.33, 0.2, Origin.ASSUMED, Spread.RECTANGULAR), 200)
    assert np.min(n) >= 1.0
    assert np.max(n) <= 1.4


def test_every_draw_chooses_among_all_springs_however_far_from_the_choice():
    """The search over a few springs about the choice, widened until no draw stands at its edge, against all springs at once."""
    job = start("enduro", "104 kg")
    done = size_end(load(job), "front")
    draws, *_ = survivors(drawn(load(job)), 200, lambda some: resized(end_inputs(some, "front"), done))
    here = end_inputs(draws, "front")
    nominal = np.asarray(done.sized.setup.rate)
    whole = nominal[resized(here, done)[1].choice]
    assert counted(choices(here, done)) == counted_rates(whole)
    off = np.searchsorted(nominal, whole) - done.choice
    assert max(-np.min(off), np.max(off)) > REACH, "some draw goes beyond the first search"
    # From elsewhere too: the search widens either way.
    for start_at in (done.choice - 6, done.choice + 6):
        elsewhere = replace(done, decision=replace(done.decision, choice=np.intp(start_at)))
        assert counted(choices(here, elsewhere)) == counted_rates(whole)


def counted(found) -> dict[float, int]:
    return dict(found.counts)


def counted_rates(rates) -> dict[float, int]:
    return dict(Counter(rates.tolist()))


def test_what_the_new_setup_raises_the_bike_by_has_a_band_of_its_own_from_the_same_draws():
    """Both setups stand on the same bike and rider: what they share drops out, so the change is known better than either sag."""
    front = report(demo())["ends"]["front"]
    moved, chosen, found = front["moved"], front["chosen"]["rider_sag"], front["as_found"]["setup"]["rider_sag"]
    assert moved["along"]["value"] == pytest.approx(found["value"] - chosen["value"])
    apart = np.hypot(found["plus_minus_95"], chosen["plus_minus_95"])
    assert 0.2 < moved["along"]["plus_minus_95"] < 0.95 * apart
    assert moved["height"]["plus_minus_95"] == pytest.approx(moved["along"]["plus_minus_95"] * np.cos(np.radians(26.5)), rel=0.03)
    both = report(demo())["attitude"]
    assert both["front_height"] == moved["height"]
    rear = report(demo())["ends"]["rear"]["moved"]["height"]["plus_minus_95"]
    assert both["rake_change"]["plus_minus_95"] == pytest.approx(
        np.degrees((moved["height"]["plus_minus_95"] + rear) / 1485.0), rel=0.01
    )


def test_loads_have_the_band_of_the_scales_and_the_wheel():
    """Aboard: +/-1 kg of the axle and +/-1.5 kg of the wheel, which was assumed; by JCGM 100:2008, 5.1.2."""
    load = report(demo())["ends"]["front"]["load"]
    assert load["aboard"]["plus_minus_95"] == pytest.approx(9.80665 * np.hypot(1.0, 1.5), rel=0.12)
    assert load["sprung_mass"]["plus_minus_95"] == pytest.approx(np.hypot(1.0, 1.5), rel=0.12)
    assert load["alone"]["plus_minus_95"] == pytest.approx(9.80665 * np.hypot(0.5, 1.5), rel=0.12)


def test_no_draw_lies_below_what_can_be():
    """A +/- as wide as the reading itself, and an own range whose typical value stands at one end: both would go below nothing."""
    wide = {"value": "1.5 N/mm", "plus_minus_95": "1.4", "origin": "stated"}
    charge = {"value": "0.2 bar", "plus_minus_95": "9 bar", "origin": "measured"}
    own = {"practice": {"shock rod": {"low": 6, "typical": 7, "high": 30}}}
    samples = drawn(load(demo({"front.rate": wide, "rear.charge": charge, "rear.rod_diameter": None}) | own)).samples
    assert np.min(samples["front.rate"]) >= 1.0
    assert np.min(samples["rear.charge"]) >= 0.0
    assert np.min(samples["rear.rod_diameter"]) >= 6.0
    assert np.mean(samples["rider.mass"]) == pytest.approx(104.0, abs=1e-6), "a limit that is far off changes no draw"
