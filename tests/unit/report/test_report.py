"""The report: plain, whole and finite data whose words say what its numbers say."""

import copy
import json
import math
import re

import pytest

from calc.demo import jobs
from calc.job.fields import FIELDS
from calc.practice import usual
from calc.report import ENDS
from calc.report.quantity import number_text, plain_number, quantity, rate_text, spread_text
from tests.support.documents import demo
from tests.support.plain import part as part_of
from tests.support.plain import report

QUANTITY = {"value", "unit", "case", "origin", "plus_minus_95", "decimals", "text", "plus_minus_text"}


@pytest.fixture(scope="module")
def answered():
    return report(demo())


def told(figure):
    """A quantity as a sentence writes it."""
    return f"{number_text(figure['value'], figure['decimals'])} {figure['unit']}"


def walk(data, path=""):
    yield path, data
    if isinstance(data, dict):
        for key, part in data.items():
            yield from walk(part, f"{path}.{key}")
    elif isinstance(data, list):
        for index, part in enumerate(data):
            yield from walk(part, f"{path}[{index}]")


def test_plain_finite_data(answered):
    assert json.loads(json.dumps(answered, allow_nan=False)) == answered
    for path, part in walk(answered):
        assert part is None or isinstance(part, str | bool | int | float | list | dict), path
        assert not isinstance(part, float) or (math.isfinite(part) and math.copysign(1, part) * part >= 0), path
        assert not isinstance(part, float) or part != 0 or math.copysign(1, part) == 1, f"{path}: minus zero"


def test_every_quantity_is_told_with_unit_case_origin_and_uncertainty(answered):
    found = [(p, d) for p, d in walk(answered["ends"]) if isinstance(d, dict) and "case" in d]
    assert len(found) > 100
    for path, figure in found:
        assert set(figure) >= QUANTITY, path
        assert figure["origin"] == "worked out", path
        assert figure["case"] or figure["unit"], path
        assert figure["plus_minus_95"] is None or figure["plus_minus_95"] >= 0, path


def test_the_cases_name_posture_exponent_and_place_of_measuring(answered):
    front, rear = (answered["ends"][end]["chosen"] for end in ("front", "rear"))
    assert front["rider_sag"]["case"] == "rider aboard, standing, gas settled, along the leg"
    assert rear["rider_sag"]["case"] == "rider aboard, standing, gas settled, vertical at the axle"
    assert front["free_sag"]["case"] == "bike alone, gas settled, along the leg"
    assert "riding, gas exponent 1.33" in front["frequency"]["case"]
    assert "full travel" in front["end_force"]["case"]
    assert "landing from hanging, gas exponent 1.33" in front["landing_energy"]["case"]
    road = report(
        demo({"bike.use": "road", "rider.posture": "sitting", "front.unsprung": None, "rear.unsprung": None}), with_bands=False
    )
    assert road["posture"] == "sitting"


def test_end_force_multiple_and_energy_belong_together(answered):
    for data in answered["ends"].values():
        load, mass = data["load"]["aboard"]["value"], data["load"]["sprung_mass"]["value"]
        assert load == pytest.approx(mass * 9.80665)
        for candidate in data["candidates"]:
            assert candidate["end_multiple"]["value"] == pytest.approx(candidate["end_force"]["value"] * 1000 / load, rel=1e-9)
            assert candidate["energy_per_mass"]["value"] == pytest.approx(candidate["landing_energy"]["value"] / mass, rel=1e-9)
            hertz = math.sqrt(candidate["wheel_rate"]["value"] * 1000 / mass) / (2 * math.pi)
            assert candidate["frequency"]["value"] == pytest.approx(hertz, rel=1e-9)


def test_the_answer_in_words_is_the_answer_in_numbers(answered):
    front, rear = answered["ends"]["front"], answered["ends"]["rear"]
    chosen, oil = front["chosen"], front["chosen"]["oil"]
    assert front["answer"] == (
        f"Fit {rate_text(chosen['rate']['value'])} N/mm, {told(chosen['preload'])} preload, gap {told(chosen['gap'])}: "
        f"add {number_text(oil['left']['value'], 0)} ml left, {number_text(oil['right']['value'], 0)} right."
    )
    assert rear["answer"].startswith(
        f"Fit {rate_text(rear['chosen']['rate']['value'])} N/mm, {told(rear['chosen']['preload'])} preload"
    )
    low, high = front["holds_for"]["low"], front["holds_for"]["high"]
    assert (
        front["holds_for"]["words"]
        == f"{rate_text(chosen['rate']['value'])} is right for riders of {low:.0f} to {high:.0f} kg in kit."
    )
    assert told(chosen["frequency"]) in " ".join(front["why"])
    assert front["why"][0] == "Your load on the fork is 9 % more than the standard rider's."  # 80.2 kg sprung against 73.4


def test_leave_it_can_be_the_answer():
    best = report(demo(), with_bands=False)["ends"]["rear"]["chosen"]
    as_sold = {"standard.shock_spring": "changed", "standard.shock_rate": "48 N/mm"}
    fitted = {"rear.rate": f"{best['rate']['value']} N/mm", "rear.preload": f"{best['preload']['value']} mm"} | as_sold
    rear = report(demo(fitted), with_bands=False)["ends"]["rear"]
    assert rear["leave"] is True
    assert rear["verdict"] == "keep"
    assert rear["candidates"][0] == rear["chosen"]
    assert rear["answer"].startswith(f"Keep the {rate_text(best['rate']['value'])} N/mm")


def test_what_suits_at_both_ends_is_kept_at_both():
    for end, data in report(jobs()["trail"], with_bands=False)["ends"].items():
        chosen = data["chosen"]
        assert (data["leave"], data["verdict"], chosen["fitted"]) == (True, "keep", True), end
        assert data["answer"].startswith(f"Keep the {rate_text(chosen['rate']['value'])} N/mm: {told(chosen['preload'])} preload")


def test_criteria_and_what_is_short_carry_the_numbers_that_stand_beside_them(answered):
    """Read back from the words: the figure as it is told, the window's edge that it is set against, and the state they make."""
    seen = set()
    for end, travel in (("front", 300), ("rear", 305)):
        data = answered["ends"][end]
        low, high = (data["windows"]["free_sag"][side] for side in ("low", "high"))
        wanted = data["targets"]["rider_sag"]["value"]
        for candidate in data["candidates"]:
            rider, free, force = candidate["criteria"]
            told_sag = re.fullmatch(r"rider sag ([\d.]+) mm, (\d+) wanted", rider["words"])
            assert float(told_sag[1]) == pytest.approx(candidate["rider_sag"]["value"], abs=0.5)
            assert float(told_sag[2]) == pytest.approx(wanted, abs=0.5)
            if rider["state"] == "outside":
                assert abs(candidate["rider_sag"]["value"] - wanted) > 0.02 * travel
            told_free = re.fullmatch(r"free sag ([\d.]+) mm, usual (\d+)-(\d+)", free["words"])
            assert float(told_free[1]) == pytest.approx(candidate["free_sag"]["value"], abs=0.5)
            assert (int(told_free[2]), int(told_free[3])) == (round(low), round(high))
            if free["state"] == "outside":
                assert float(told_free[1]) < low or float(told_free[1]) > high, free["words"]
            told_force = re.fullmatch(r"force at full travel ([\d.]+) × rider load, at least ([\d.]+) wanted", force["words"])
            assert float(told_force[1]) == pytest.approx(candidate["end_multiple"]["value"], abs=0.05)
            assert (force["state"] == "outside") <= (float(told_force[1]) < float(told_force[2]))
            seen |= {one["state"] for one in candidate["criteria"]} | {
                one["code"] for one in (*candidate["vetoes"], *candidate["short"])
            }
    assert seen == {"inside", "at the edge", "outside", "preload below"}


def test_what_is_in_comes_first_then_the_choice_and_its_neighbours_soft_to_stiff(answered):
    for end, data in answered["ends"].items():
        first, *others = data["candidates"]
        assert first["fitted"], end
        assert sum(c["fitted"] for c in data["candidates"]) == 1, end
        relations = [c["relation"] for c in others]
        assert relations.count("chosen") == 1
        assert relations.index("one step softer") < relations.index("chosen") < relations.index("one step stiffer")
        rates = [c["rate"]["value"] for c in others]
        assert rates == sorted(rates)
        fits = [c for c in data["candidates"] if not c["vetoes"] and all(one["state"] != "outside" for one in c["criteria"])]
        assert min(fits, key=lambda c: c["key"])["relation"] == "chosen"


def test_the_curve_ends_at_the_end_force_and_starts_at_the_preload(answered):
    for data in answered["ends"].values():
        curve, chosen = data["curve"], data["chosen"]
        assert curve["working"][-1] == pytest.approx(chosen["end_force"]["value"], abs=1e-5)
        for name in ("springs", "slow", "working", "fast", "stroke"):
            assert len(curve[name]) == len(curve["stroke"])
            assert curve[name] == sorted(curve[name]), name
        assert all(s <= g + 1e-9 for s, g in zip(curve["springs"], curve["slow"], strict=True))
        at_sag = min(range(len(curve["stroke"])), key=lambda i: abs(curve["stroke"][i] - chosen["rider_sag"]["value"]))
        after = slice(at_sag + 1, None)
        assert all(a <= b <= c for a, b, c in zip(curve["slow"][after], curve["working"][after], curve["fast"][after], strict=True))
    assert answered["ends"]["front"]["curve"]["stroke"][-1] == 300.0
    assert answered["ends"]["rear"]["curve"]["stroke"][-1] == 305.0


def test_windows_are_the_rows_of_the_riding(answered):
    for end, travel in (("front", 300), ("rear", 305)):
        for row in ("free sag", "rider sag"):
            found, window = usual(f"{row} {end}", "enduro"), answered["ends"][end]["windows"][row.replace(" ", "_")]
            assert (window["low"], window["high"]) == pytest.approx((found.low * travel / 100, found.high * travel / 100))


def test_what_the_new_sags_do_to_the_bike(answered):
    attitude = answered["attitude"]
    moved = {
        end: d["as_found"]["setup"]["rider_sag"]["value"] - d["chosen"]["rider_sag"]["value"] for end, d in answered["ends"].items()
    }
    nose = moved["front"] * math.cos(math.radians(26.5)) - moved["rear"]
    assert attitude["clamp_shift"]["value"] == pytest.approx(nose / math.cos(math.radians(26.5)))
    assert attitude["front_height"]["value"] == pytest.approx(moved["front"] * math.cos(math.radians(26.5)))
    assert attitude["rear_height"]["value"] == pytest.approx(moved["rear"])
    turned = math.degrees(math.atan((attitude["front_height"]["value"] - moved["rear"]) / 1485))
    assert attitude["rake_change"]["value"] == pytest.approx(turned, abs=1e-3)
    assert re.search(r"the front sits \d+ ±\d+ mm (higher|lower)", attitude["words"])


def test_readings_that_contradict_each_other_are_named():
    assert report(demo(), with_bands=False)["notes"] == []
    (note,) = report(demo({"rider.rear_axle": "128 kg"}), with_bands=False)["notes"]
    assert re.search(r"6\.4 kg more than bike, rider", note)
    (note,) = report(demo({"rider.posture": "sitting", "rider.front_axle": "86 kg", "rider.rear_axle": None}), with_bands=False)[
        "notes"
    ]
    assert "read sitting; sags here are read standing" in note


def test_every_field_is_told_as_it_was_entered(answered):
    assert list(answered["fields"]) == [path for path in FIELDS if path in answered["fields"]]
    assert {state["applies"] or state["entered"] for state in answered["fields"].values()} == {True}
    assert answered["fields"]["rider.mass"]["text"] == "104 kg"
    assert answered["fields"]["front.raised_height"]["note"].startswith("From a gap of 140")
    assert answered["fields"]["front.unsprung"]["origin"] == "assumed"
    lb = report(demo({"rider.mass": "229.28 lb"}), with_bands=False)["fields"]["rider.mass"]
    assert (lb["value"], lb["unit"]) == (229.28, "lb")
    assert lb["plus_minus_95"] == pytest.approx(1 / 0.45359237)


def test_asking_twice_gives_the_same_and_reading_changes_nothing():
    document = demo()
    before = copy.deepcopy(document)
    first, second = (json.dumps(report(document)) for _ in range(2))
    assert first == second
    assert document == before
    plain = report(document, with_bands=False)
    assert all(d["plus_minus_95"] is None for _, d in walk(plain["ends"]) if isinstance(d, dict) and "plus_minus_95" in d)


def test_a_result_that_is_not_finite_never_becomes_a_figure():
    for value in (float("nan"), float("inf"), -float("inf")):
        with pytest.raises(ArithmeticError, match="is not finite"):
            quantity(value, "mm", "case", 0)


@pytest.mark.parametrize(("value", "decimals", "text"), [(-0.4, 0, "0"), (-3.0, 0, "−3"), (2.345, 1, "2.3"), (-0.04, 1, "0.0")])
def test_numbers_as_text_have_a_real_minus_and_no_minus_zero(value, decimals, text):
    assert number_text(value, decimals) == text


@pytest.mark.parametrize(("value", "text"), [
    (2.5, "2.5"), (101325.0, "101325"), (1234567.0, "1234570"), (-1e7, "−10000000"), (0.00001234, "0.00001234"), (0.0, "0"), (1e-7, "0.0000001"),
    (999999.5, "1000000"), (110.0, "110"),
])  # fmt: skip
def test_a_number_is_never_told_as_a_power_of_ten(value, text):
    assert plain_number(value) == text


@pytest.mark.parametrize(
    ("half", "text"), [(234.0, "±230"), (0.0, ""), (None, ""), (0.125, "±0.12"), (55.0, "±55"), (1234.0, "±1200")]
)
def test_the_spread_of_a_reading_has_two_figures(half, text):
    assert spread_text(half) == text


def test_a_lighter_rider_is_told_so_and_an_equal_one_too():
    light = report(demo({"rider.front_axle": "86 kg", "rider.mass": "78.6 kg", "rider.rear_axle": None}), with_bands=False)["ends"][
        "front"
    ]
    assert light["why"][0].startswith("Your load on the fork is 5 % less")  # 70 kg sprung against 73.4
    same = report(demo({"standard.rider": "104 kg"}), with_bands=False)["ends"]["front"]
    assert same["why"][0] == "Your load on the fork is the standard rider's."


def test_one_end_alone_is_the_same_end_without_the_comparison():
    job = demo()
    both = report(job, with_bands=False)
    for end in ENDS:
        alone = part_of(job, end, with_bands=False)
        assert alone == {key: value for key, value in both.items() if key not in ("ends", "attitude", "filling", "message")} | {
            "axle": end,
            "end": both["ends"][end],
        }
