"""Figures of the demo's report held to the hand model, point by point, and how each figure is rounded and named."""

import numpy as np
import pytest

from calc.job import load
from calc.job.field import Kind
from calc.job.fields import FIELDS
from calc.job.lists import MOST
from calc.practice import usual
from calc.quantities.entry import convert, internal_unit
from calc.report.quantity import number_text, rate_text
from tests.support.documents import demo
from tests.support.hand_model import Fork
from tests.support.plain import report
from tests.support.plain import text as text_of

HAND = Fork()


@pytest.fixture(scope="module")
def nominal():
    return report(demo(), with_bands=False)


def test_each_line_of_the_curve_by_the_hand_model(nominal):
    """Springs alone; with the gas slow, working about rider sag, and adiabatic; and the slope of the working line."""
    curve = nominal["ends"]["front"]["curve"]
    stroke = np.array(curve["stroke"])
    assert len(stroke) == 61
    assert stroke == pytest.approx(np.linspace(0, 300, 61), abs=0.006)
    sag = float(HAND.sag(4.6, 3.0, 120.0, HAND.load))
    exact = np.linspace(0, 300, 61)

    def wheel(n, settled=0.0):
        return np.array([float(HAND.wheel(4.6, 3.0, 120.0, s, n, settled)) for s in exact])

    assert np.array(curve["springs"]) == pytest.approx(2 * 4.6 * (3.0 + exact) / HAND.cos / 1000, abs=2e-5)
    assert np.array(curve["slow"]) == pytest.approx(wheel(1.0) / 1000, abs=2e-5)
    assert np.array(curve["working"]) == pytest.approx(wheel(1.33, sag) / 1000, abs=2e-5)
    assert np.array(curve["fast"]) == pytest.approx(wheel(1.4, sag) / 1000, abs=2e-5)
    step = 1e-3
    rise = [HAND.wheel(4.6, 3.0, 120.0, s + step, 1.33, sag) - HAND.wheel(4.6, 3.0, 120.0, s - step, 1.33, sag) for s in exact]
    assert np.array(curve["wheel_rate"]) == pytest.approx(np.array(rise, dtype=float) / (2 * step) / HAND.cos, rel=1e-4)
    assert (curve["rubber"], curve["axis"]) == (None, "stroke along the leg")


DECIMALS = {
    "rate": 1, "preload": 0, "gap": 0, "free_sag": 0, "rider_sag": 0, "free_sag_friction": 0, "rider_sag_friction": 0, "frequency": 2,
    "wheel_rate": 1, "end_force": 2, "end_multiple": 1, "landing_energy": 0, "energy_per_mass": 1,
}  # fmt: skip


def test_figures_are_rounded_as_the_trade_reads_them(nominal):
    for end, data in nominal["ends"].items():
        for name, decimals in DECIMALS.items():
            if data["chosen"][name]:
                assert data["chosen"][name]["decimals"] == decimals, (end, name)
    front = nominal["ends"]["front"]
    assert {name: front["targets"][name]["decimals"] for name in ("rider_sag", "end")} == {"rider_sag": 0, "end": 2}
    assert front["yardstick"]["frequency"]["decimals"] == 2
    assert {name: front["load"][name]["decimals"] for name in ("alone", "aboard", "sprung_mass")} == {
        "alone": 0,
        "aboard": 0,
        "sprung_mass": 1,
    }
    assert (
        report(demo({"front.end_target": "energy", "front.end_energy": "640 J"}), with_bands=False)["ends"]["front"]["targets"][
            "end"
        ]["decimals"]
        == 0
    )


@pytest.mark.parametrize(
    ("rate", "text"), [(4.6, "4.6"), (4.65, "4.65"), (4.0, "4.0"), (19.96, "19.96"), (20.0, "20"), (54.0, "54"), (54.5, "54.5")]
)
def test_rates_as_the_trade_writes_them(rate, text):
    assert rate_text(rate) == text


def test_what_is_in_then_three_steps_either_way_of_the_choice_are_shown(nominal):
    front = nominal["ends"]["front"]
    rates = [round(c["rate"]["value"], 2) for c in front["candidates"]]
    assert rates == [4.2, 4.0, 4.4, 4.6, 4.8, 5.0, 5.2]
    assert [c["relation"] for c in front["candidates"]] == [
        "other",
        "other",
        "one step softer",
        "chosen",
        "one step stiffer",
        "other",
        "other",
    ]
    assert [c["fitted"] for c in front["candidates"]] == [True, False, False, False, False, False, False]
    far = report(demo({"front.rate": "3.0 N/mm"}), with_bands=False)["ends"]["front"]
    assert far["candidates"][0]["rate"]["value"] == pytest.approx(3.0)
    assert [c["relation"] for c in far["candidates"]].count("chosen") == 1


def test_where_nothing_can_be_built_what_is_in_and_what_rides_nearest_is_shown():
    """A spring that blocks at 200 mm: no rate leaves room; the one that rides nearest to the standard setup is named."""
    none = report(demo({"front.solid_length": "200 mm"}), with_bands=False)["ends"]["front"]
    assert none["state"] == "none"
    assert all(c["vetoes"] for c in none["candidates"])
    assert {c["relation"] for c in none["candidates"]} == {"other"}
    assert none["candidates"][0]["fitted"]
    (problem,) = none["problems"]
    nearest = min(none["candidates"], key=lambda c: c["key"])
    assert f"The nearest, {rate_text(nearest['rate']['value'])} N/mm, {nearest['vetoes'][0]['words']}." in problem["message"]
    rates = [round(c["rate"]["value"], 2) for c in none["candidates"][1:]]
    assert rates == [round(nearest["rate"]["value"] + 0.2 * i, 2) for i in (-3, -1, 0, 1, 2, 3)], (
        "and three steps either way; 4.2 is in"
    )


def test_a_free_sag_window_that_no_spring_meets_is_told_of_the_nearest():
    """A free sag of a quarter of the travel under a rider sag of 22 %: no spring leaves it."""
    front = report(demo() | {"practice": {"free sag front": {"low": 24, "high": 26, "typical": 25}}}, with_bands=False)["ends"][
        "front"
    ]
    assert (front["state"], front["verdict"]) == ("ok", "nearest")
    free = front["chosen"]["free_sag"]["value"]
    assert f"free sag {free:.0f} mm, usual 72-78" in front["answer"]


def test_friction_is_told_along_the_leg_at_the_front():
    """The band of sag that friction leaves: at the wheel twice the leg's friction over the slow wheel rate; along the leg a cosine more."""
    front = report(demo({"front.friction": "30 N"}), with_bands=False)["ends"]["front"]["chosen"]
    sag = float(HAND.sag(4.6, 3.0, 120.0, HAND.load))
    rise = float(HAND.wheel(4.6, 3.0, 120.0, sag + 1e-3) - HAND.wheel(4.6, 3.0, 120.0, sag - 1e-3)) / 2e-3
    assert front["rider_sag_friction"]["value"] == pytest.approx(2 * 30.0 / HAND.cos / rise, rel=1e-2)


def test_elsewhere_is_labelled_by_its_figures():
    data = report(
        demo(
            {
                "conditions.hot_temperature": "60 °C",
                "conditions.high_altitude": "2200 m",
                "conditions.rider": "80 kg",
                "conditions.luggage": "12 kg",
            }
        )
    )
    labels = [row["label"] for row in data["ends"]["front"]["conditions"]]
    assert labels == ["As built", "Legs at 60 °C", "At 2200 m, not bled there", "At 2200 m, bled there", "At 2200 m, legs at 60 °C",
                      "Rider of 80 kg", "With 12 kg of luggage"]  # fmt: skip


LIMITED = [p for p, f in FIELDS.items() if f.kind is Kind.QUANTITY]


@pytest.mark.parametrize("path", LIMITED)
def test_a_limit_itself_is_taken_and_a_thousandth_beyond_is_refused(path):
    field = FIELDS[path]
    beyond = (field.high - field.low) * 1e-3
    for number, code in ((field.low, None), (field.high, None), (field.low - beyond, "range"), (field.high + beyond, "range")):
        problem = load(demo({path: f"{number!r} {field.unit}".strip()})).fields[path].problem
        assert (problem and problem.code) == code, (path, number)
        if problem and problem.code == "range":
            side, limit = ("below", field.low) if number < field.low else ("above", field.high)
            assert f"is {side} the limit of {limit:g}" in problem.message


def test_a_plus_minus_is_at_most_half_the_range_and_no_more_than_it_stands_beside():
    field = FIELDS["front.gap_left"]
    widest = (field.high - field.low) / 2
    for value, half, code in (
        (300, widest, None),
        (300, widest * 1.001, "range"),
        (145, 145, None),
        (145, 145.2, "range"),
        (145, 0, None),
        (145, -0.1, "range"),
    ):
        problem = (
            load(demo({"front.gap_left": {"value": f"{value} mm", "plus_minus_95": f"{half!r} mm"}}))
            .fields["front.gap_left"]
            .problem
        )
        assert (problem and problem.code) == code, (value, half)


@pytest.mark.parametrize("use", ["enduro", "road"])
def test_what_is_assumed_reaches_to_the_farther_end_of_its_range(use):
    """A range that is not even about its typical value: the +/- covers both of its ends."""
    job = load({"format": "stanchion-job", "version": 1, "bike": {"use": use}, "rider": {"mass": "80 kg"}})
    seen = 0
    for path, field in FIELDS.items():
        default, found = field.default, job.fields[path]
        if field.kind is not Kind.QUANTITY or default is None or not default.row or found.reading is None or found.entered:
            continue
        row = usual(default.row, use)
        if default.follow or default.share_of or default.times_high is not None or row is None:
            continue
        seen += 1
        assert found.plus_minus == max(row.high - row.typical, row.typical - row.low), path
        assert found.reading.value == pytest.approx(convert(row.typical, field.unit, internal_unit(field.dimension))), path
    assert seen > 20


def test_a_list_holds_so_many_rates_and_no_more():
    many = "; ".join(f"{4 + 0.05 * i:.2f}" for i in range(MOST))
    job = load(demo({"front.buy": "stock", "front.stock": many}))
    assert len(job.fields["front.stock"].rates) == MOST
    assert load(demo({"front.buy": "stock", "front.stock": f"{many}; 9"})).fields["front.stock"].problem.code == "long"


# How fine each unit is read at the bench, and what is told finer or coarser on purpose.
BY_UNIT = {"mm": 0, "cm": 0, "°": 1, "N/mm": 1, "Hz": 2, "kN": 2, "N": 0, "J": 0, "J/kg": 1, "kg": 1, "ml": 0, "%": 0}
FINER = {"shock_length": 1, "scatter": 2, "off": 2, "leverage": 2, "average": 2, "end_multiple": 1, "turns": 1}
EVERYTHING = {
    "front.pitch": "1 mm", "rear.pitch": "1.5 mm", "front.rubber": "rate", "front.rubber_length": "30", "front.rubber_rate": "40",
    "front.friction": "30 N", "conditions.rider": "80 kg", "front.tried_gap": "130 mm", "rear.tried_preload": "8 mm",
}  # fmt: skip
PAIRS = "; ".join(f"{z} {470 - 0.36 * z - 2.5e-4 * z * z + (0.1 if z % 120 else -0.1):.1f}" for z in range(0, 321, 40))


@pytest.mark.parametrize("more", [{}, {"rear.motion_from": "pairs", "rear.pairs": PAIRS}])
def test_every_figure_is_told_as_finely_as_its_unit_is_read(more):
    seen = set()

    def walk(name, data):
        if isinstance(data, dict) and "decimals" in data and "case" in data:
            at_the_shock = data["case"].startswith("at the shock")
            assert data["decimals"] == (1 if at_the_shock else FINER.get(name, BY_UNIT.get(data["unit"]))), (name, data)
            seen.add((name, data["unit"]))
        elif isinstance(data, dict):
            for key, part in data.items():
                walk(key, part)
        elif isinstance(data, list):
            for part in data:
                walk(name, part)

    answered = report(demo(EVERYTHING | more), with_bands=False)
    assert {end: answered["ends"][end]["state"] for end in ("front", "rear")} == {"front": "ok", "rear": "ok"}
    walk("", answered["ends"])
    walk("", answered["attitude"])
    assert len(seen) > 25


def test_the_plain_text_carries_the_curve_and_the_figures_of_the_report():
    """Seven heights from 0 to full travel, each the nearest point of the curve; rows as the figures beside them are told."""
    answered = report(demo())
    text = text_of(demo())
    for data in answered["ends"].values():
        curve = data["curve"]
        for i in range(0, 61, 10):
            row = [curve["stroke"][i], *(curve[key][i] for key in ("springs", "slow", "working", "fast", "wheel_rate"))]
            shown = [f"{row[0]:.0f}", *(f"{x:.2f}" for x in row[1:5]), f"{row[5]:.1f}"]
            assert any(line.split() == shown for line in text.split("\n")), shown
        for candidate in data["candidates"]:
            figures = [rate_text(candidate["rate"]["value"]), *(
                number_text(candidate[name]["value"], candidate[name]["decimals"])
                for name in ("preload", "gap", "free_sag", "rider_sag", "frequency", "end_force", "end_multiple", "landing_energy")
                if candidate[name])]  # fmt: skip
            assert any(line.split()[-len(figures) :] == figures for line in text.split("\n")), figures
    turned = answered["attitude"]["rake_change"]["value"]
    rake, way = (
        f"{number_text(abs(turned), 1)} {answered['attitude']['rake_change']['plus_minus_text']}°",
        "slacker" if turned > 0 else "steeper",
    )
    assert f"That makes the rake {rake} {way}." in text.replace("\n", " ")


def test_a_usual_range_is_shown_beside_the_field_whose_range_it_is():
    """Not one in % of another field, nor of millimetres beyond another field."""
    fields = report(demo(), with_bands=False)["fields"]
    for path in ("front.gap_left", "front.rate", "rider.mass", "rear.leverage", "front.preload"):
        row = usual(FIELDS[path].usual, "enduro")
        assert {key: fields[path]["usual"][key] for key in ("low", "high", "typical", "unit")} == {
            "low": row.low, "high": row.high, "typical": row.typical, "unit": row.unit}, path  # fmt: skip
    assert fields["front.target_sag"]["usual"] is None
    assert fields["front.collapsed_stroke"]["usual"] is None
