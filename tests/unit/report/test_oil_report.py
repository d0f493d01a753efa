"""What is told of an oil's sheet: figures against the laws, words against the figures, and that no answer rests on it."""

import re
from random import Random

import pytest

from calc.boundary import to_json
from calc.demo import jobs
from calc.gas.warm import OIL_EXPANSION
from calc.job import load
from calc.job.fields import FIELDS
from calc.job.fields.oil_sheet import OIL_SHEET
from calc.model.draws import is_drawn
from calc.oil.viscosity import line_through
from calc.report import part_of, report_of
from calc.report.letter import letter
from calc.report.oil import oil_report
from calc.report.oil_text import oil_lines
from calc.report.text import report_text
from tests.support.documents import demo

SHEET = {"oil.viscosity_40": "15 cSt", "oil.viscosity_100": "3,6"}
MIX = SHEET | {"oil.second_40": "46", "oil.second_100": "8", "oil.second_share": "30 %"}
WARM = {"place.bled_temperature": "18 °C", "place.ridden_temperature": "35 °C", "conditions.hot_temperature": "55 °C"}


def told(changes):
    found = oil_report(load(demo(changes)))
    assert found is not None
    return found


def test_nothing_is_told_where_nothing_is_entered():
    assert oil_report(load(demo())) is None
    assert oil_lines(None) == []
    assert oil_report(load(demo({"oil.second_40": "46"}))) is None, "a second oil waits for the first"


def test_the_points_lie_on_the_line_of_the_sheet():
    found = told(SHEET | WARM)
    line = line_through(15.0, 3.6)
    assert [(point.when, point.temperature.text) for point in found.points] == [("cold", "18"), ("in use", "35"), ("hot", "55")]
    for point in found.points:
        assert point.first.value == pytest.approx(float(line.at(point.temperature.value + 273.15)), rel=1e-9)
        assert (point.second, point.mix, point.density) == (None, None, None)
    assert [point.when for point in told(SHEET).points] == ["cold", "hot"], "nobody entered a temperature in use"


def test_cold_to_hot_by_hand():
    """35.4 to 9.52 mm2/s: 3.7 times. 7.0e-4 per K (Rabie) over 37 K: 560 ml grow by 14.5, and 2.5 % come off the density."""
    found = told(SHEET | WARM | {"front.oil_volume": "560 ml"})
    change, cold, hot = found.change, found.points[0].first, found.points[-1].first
    assert change.thinner.value == pytest.approx(cold.value / hot.value, rel=1e-9)
    assert change.growth.value == pytest.approx(560.0 * OIL_EXPANSION * 37.0, rel=1e-9)
    assert change.lighter.value == pytest.approx(100.0 * (1.0 - 1.0 / (1.0 + OIL_EXPANSION * 37.0)), rel=1e-9)
    assert found.words[0].startswith("Cold to hot, 35.4 mm²/s at 18 °C to 9.52 mm²/s at 55 °C, the oil is 3.7 times thinner.")
    assert "by 2.5 %" in found.words[0]
    assert "no promise of clicks" in found.words[0]
    assert "560 ml as read, grows by 15 ml" in found.words[1], "both temperatures were entered"


def test_density_as_stated_takes_the_place_of_the_usual_growth():
    """ASTM D1250: 870 at 15 C is 0.98187 of it at 40 C."""
    found = told({"oil.density": "0.87 g/ml", "conditions.hot_temperature": "40 °C"})
    assert found.points[-1].density.value == pytest.approx(870 * 0.98187, abs=0.01)
    cold, hot = (point.density.value for point in (found.points[0], found.points[-1]))
    assert found.change.lighter.value == pytest.approx(100.0 * (1.0 - hot / cold), rel=1e-9)
    assert found.change.thinner is None
    assert not any("thinner" in words for words in found.words)
    assert any("ml assumed, grows" in words for words in found.words), "nobody read the oil in the leg"
    assert found.words[0] == "Assumed: cold start 20 °C (enter: Leg temperature when bled, which comes with that in use)."


def test_a_mix_is_told_beside_its_oils_and_is_what_is_ordered():
    found = told(MIX | {"front.oil_volume": "560 ml"})
    for point in found.points:
        assert point.first.value < point.mix.value < point.second.value
    assert found.index.first.value < found.index.mix.value < found.index.second.value
    assert found.points[0].mix.text in found.words[0]
    assert any("estimate" in words for words in found.words)
    assert [(order.volume.text, order.tins.text, order.left.text) for order in found.orders] == [
        ("784", "1", "216"),
        ("336", "1", "664"),
    ]


@pytest.mark.parametrize(
    ("read", "legs", "tins", "left"),
    [
        ({"front.oil_volume": "560 ml"}, ["560", "560"], "2", "880"),
        ({"front.oil_volume": "500 ml"}, ["500", "500"], "1", "0"),
        ({"front.oil_volume": "501 ml"}, ["501", "501"], "2", "998"),
        (
            {"front.gap_from": "volume filled", "front.filled_left": "480 ml", "front.filled_right": "490 ml"},
            ["480", "490"],
            "1",
            "30",
        ),
        ({"front.gap_from": "volume filled", "front.filled_left": "480 ml"}, ["480", "480"], "1", "40"),
    ],
)
def test_what_to_order_is_whole_tins_for_both_legs(read, legs, tins, left):
    found = told(SHEET | read)
    assert [leg.text for leg in found.legs] == legs
    (order,) = found.orders
    assert (order.tins.text, order.left.text) == (tins, left)
    assert float(order.tins.value) * 1000 == pytest.approx(order.volume.value + order.left.value)
    assert f"{tins} tin{'s' if int(tins) > 1 else ''} of 1 l, {left} ml left over" in found.words[-1]


def test_what_nobody_read_is_not_ordered():
    found = told(SHEET)
    assert (found.legs, found.orders) == ((), ())
    assert found.words[-1].startswith("Oil to order: measure what one leg takes")


@pytest.mark.parametrize(
    ("changes", "problem"),
    [
        ({"oil.viscosity_40": "15"}, "Enter the viscosity at 40 °C and at 100 °C both"),
        ({"oil.viscosity_40": "15", "oil.viscosity_100": "16"}, "no thinner at 100 °C than at 40 °C"),
        (
            {"oil.viscosity_40": "15", "oil.viscosity_100": "400"},
            r"400 mm²/s is above the limit of 200 mm²/s\. From 0.5 to 200 mm²/s",
        ),
        (SHEET | {"oil.second_40": "46"}, "Second oil: Enter the viscosity at 40 °C and at 100 °C both"),
        (SHEET | {"oil.second_40": "46", "oil.second_100": "8"}, "Enter how much of the mix the second oil is"),
        (SHEET | {"oil.density": "0.87"}, "0.87 kg/m³ is below the limit of 800 kg/m³"),
        (
            {"oil.viscosity_40": "1000", "oil.viscosity_100": "0.5", "conditions.hot_temperature": "120 °C"},
            "Cold start: There the oil would be thicker|Hot: There the oil would be thinner",
        ),
    ],
)
def test_what_cannot_be_told_says_why(changes, problem):
    found = told(changes)
    assert re.search(problem, found.problem)
    assert found.change is None
    assert not any("Cold to hot" in words for words in found.words)
    told_in_letter = next(
        part for part in re.split(r"\n(?=\S)", letter(report_of(load(demo(changes)), with_bands=False))) if part.startswith("Oil")
    )
    assert " ".join(found.problem.split())[:40] in " ".join(told_in_letter.split())


@pytest.mark.parametrize("bad", ["9000", "abc"])
@pytest.mark.parametrize("path", [
    "place.bled_temperature", "place.ridden_temperature", "conditions.hot_temperature", "front.air", "front.gap_from", "front.oil_volume",
    "front.filled_left", "front.filled_right",
])  # fmt: skip
def test_a_refused_entry_elsewhere_is_said_and_what_rests_on_it_is_not_told(path, bad):
    filled = {"front.gap_from": "volume filled", "front.filled_left": "400", "front.filled_right": "410"}
    found = told(SHEET | {"place.ridden_temperature": "30"} | (filled if "filled" in path else {}) | {path: bad})
    assert FIELDS[path].label in found.problem
    assert found.change is None
    assert len(found.points) == (2 if "temperature" in path else 3)
    assert (found.legs, found.orders) == ((), ())
    assert report_text(report_of(load(demo(SHEET | {path: bad})), with_bands=False))


def test_thin_oils_have_no_index_and_frost_and_a_cold_hot_are_said():
    assert told({"oil.viscosity_40": "3", "oil.viscosity_100": "1.2"}).index.first is None
    assert any("index is not defined" in words for words in told({"oil.viscosity_40": "3", "oil.viscosity_100": "1.2"}).words)
    cold = told(SHEET | {"conditions.hot_temperature": "-20 °C"})
    assert cold.change is None
    assert "nothing to compare" in cold.words[0]
    assert any("pour point" in words for words in cold.words)


@pytest.mark.parametrize("changes", [SHEET, MIX, SHEET | {"oil.viscosity_100": "400"}, {"oil.density": "870"}])
def test_no_answer_rests_on_it(changes):
    """The ends are those of the job without it, to the last digit; a refused entry stops neither."""
    without, found = report_of(load(demo()), with_bands=False), report_of(load(demo(changes)), with_bands=False)
    assert to_json(found.ends) == to_json(without.ends)
    assert found.attitude == without.attitude
    job = load(demo(changes))
    assert not any(is_drawn(job.fields[field.path]) for field in OIL_SHEET)
    assert {FIELDS[field.path].end for field in OIL_SHEET} == {"neither"}


def test_words_say_the_figures_of_any_sheet():
    """Random sheets, some of them refused, some half entered: every sentence is whole, and the first holds the figures beside it."""
    rng, changed = Random("sheets"), 0
    for _ in range(150):
        thick, thin = rng.uniform(3, 300), rng.uniform(1.2, 12)
        entries = {
            "oil.viscosity_40": f"{thick:.1f}", "oil.viscosity_100": f"{thick / thin:.2f}",
            "oil.second_40": f"{rng.uniform(3, 300):.1f}", "oil.second_100": f"{rng.uniform(0.4, 30):.2f}", "oil.second_share": f"{rng.uniform(-2, 102):.0f}",
            "oil.density": f"{rng.uniform(780, 1180):.0f}", "front.oil_volume": f"{rng.uniform(100, 1400):.0f} ml",
            "conditions.hot_temperature": f"{rng.uniform(-30, 120):.0f} °C", "place.ridden_temperature": f"{rng.uniform(-30, 120):.0f} °C",
            "place.bled_temperature": f"{rng.uniform(-30, 80):.0f} °C",
        }  # fmt: skip
        kept = {path: entry for path, entry in entries.items() if rng.random() < 0.8}
        found = oil_report(load(demo(kept)))
        if found is None:
            continue
        text = "\n".join(oil_lines(found))
        assert not re.search(r"nan|inf\b|None|  \.|\bml ml", text), text
        assert all(words.strip() == words and words.endswith(".") for words in (*found.words, found.note)), found.words
        assert bool(found.problem) + (found.change is not None) <= 1
        if found.change is not None and found.change.thinner is not None:
            changed += 1
            cold, hot = (point.mix or point.first for point in (found.points[0], found.points[-1]))
            numbers = re.findall(r"\d+(?:\.\d+)?", found.words[0].replace("mm²", ""))
            temperatures = [point.temperature.text.lstrip("−") for point in (found.points[0], found.points[-1])]
            assert numbers == [
                cold.text,
                temperatures[0],
                hot.text,
                temperatures[1],
                found.change.thinner.text,
                found.change.lighter.text,
            ]
            assert cold.value > hot.value
            assert found.change.lighter.value > 0
        for order in found.orders:
            assert 0 <= order.left.value < 1000
            assert order.tins.value * 1000 == pytest.approx(order.volume.value + order.left.value)
    assert changed > 15


def test_it_is_on_the_command_line_and_in_the_report_of_one_end():
    job = load(demo(MIX | WARM))
    whole = report_of(job, with_bands=False)
    assert whole.oil == part_of(job, "front", with_bands=False).oil == oil_report(job)
    for text in (report_text(whole), "\n".join(oil_lines(whole.oil))):
        words = " ".join(text.split())
        assert whole.oil.note in words
        assert all(one in words for one in whole.oil.words)
        for point in whole.oil.points:
            assert re.search(
                rf"{point.label}, {point.temperature.text} °C +{point.first.text} +{point.second.text} +{point.mix.text}\n", text
            )
    short = letter(whole).split("\n")
    assert sum(line.startswith("Oil ") for line in short) == 1
    assert "means nothing between tins" in report_text(whole)
    assert "means nothing between tins" not in letter(whole), "the letter has one sentence of it"


def test_the_third_demo_shows_an_oil():
    found = oil_report(load(jobs()["high pass"]))
    assert found is not None
    assert not found.problem
    assert [point.when for point in found.points] == ["cold", "in use", "hot"]
    assert "To order, 560 ml a leg: 2 tins of 1 l" in " ".join(found.words)
