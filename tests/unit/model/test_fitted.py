"""The fitted spring from its wire and coil, its weight, or its marking."""

import math

import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.model import fitted
from calc.model.draws import drawn, half_width
from calc.springs.steel import GRADES
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.plain import text as text_of

WIRE = {
    "front.rate_from": "wire",
    "front.wire": "4.2 mm",
    "front.coil_diameter": "36.2 mm",
    "front.coils": "38",
    "front.spring_steel": None,
}


def test_rate_from_wire_and_coil_by_hand():
    """k = G d^4 / (8 D^3 Na), outside diameter less one wire, two dead coils of squared and ground ends, EN 10270-2 steel."""
    job = load(demo(WIRE))
    assert fitted.rate(job, "front") == pytest.approx(79500 * 4.2**4 / (8 * 32.0**3 * 36))
    assert fitted.solid(job, "front") == pytest.approx(38 * 4.2)
    assert fitted.steel(job) == pytest.approx(math.pi * 2.1**2 * math.pi * 32.0 * 38)


@pytest.mark.parametrize(("ends", "active", "solid"), [("plain", 38, 39), ("plain, ground", 37, 38), ("squared", 36, 39)])
def test_ends_of_the_coil(ends, active, solid):
    """Machinery's Handbook, 31st ed., Table 3."""
    job = load(demo(WIRE | {"front.coil_ends": ends}))
    assert fitted.rate(job, "front") == pytest.approx(79500 * 4.2**4 / (8 * 32.0**3 * active))
    assert fitted.solid(job, "front") == pytest.approx(solid * 4.2)


def test_grades_of_steel():
    """EN 10270-1 81.5 GPa (read), EN 10270-2 79.5 GPa (memory); Shigley Table 10-5: chrome-silicon 77.2, music wire 80.0-82.7 GPa."""
    assert GRADES["patented"].shear_modulus == 81500
    assert GRADES["oil-tempered"].shear_modulus == 79500
    assert GRADES["chrome-silicon"].shear_modulus == 77200
    music = GRADES["music"]
    assert (music.shear_modulus - music.plus_minus_95, music.shear_modulus + music.plus_minus_95) == (80000, 82700)
    rates = [fitted.rate(load(demo(WIRE | {"front.grade": grade})), "front") / GRADES[grade].shear_modulus for grade in GRADES]
    assert rates == pytest.approx([rates[0]] * len(rates))


def test_a_kitchen_scale_goes_before_a_volume():
    job = load(demo({"front.spring_mass": "0.4 kg"}))
    assert fitted.steel(job) == pytest.approx(0.4 / 7.85e-6)
    assert fitted.steel(load(demo())) == pytest.approx(51e3)


def test_a_marking_is_taken_as_it_is():
    job = load(demo({"front.wire": "4.2 mm"}))
    assert fitted.rate(job, "front") == 4.2
    assert fitted.solid(job, "front") is None
    assert fitted.solid(load(demo({"front.solid_length": "155 mm"})), "front") == 155.0


@pytest.mark.parametrize("part", ["wire", "coil_diameter", "coils"])
def test_a_dimension_that_is_missing_is_named(part):
    with pytest.raises(Impossible, match="is not entered") as caught:
        fitted.rate(load(demo(WIRE | {f"front.{part}": None})), "front")
    assert caught.value.field == f"front.{part}"


# Kinds of spring: what is put together, and what is named where it is missing.
TABLE = "; ".join(f"{x} {3.6 * x + 0.004 * x * x:.1f}" for x in range(0, 341, 20))
STACKED = {"front.spring_kind": "stacked", "front.second_rate": "10", "front.second_room": "20 mm"}
NESTED = {"front.spring_kind": "nested", "front.second_rate": "1.5", "front.second_later": "100 mm"}
PROGRESSIVE = {"front.spring_kind": "progressive", "front.table": TABLE}
RUBBER = {"front.rubber": "rate", "front.rubber_length": "30", "front.rubber_rate": "40"}


def front(changes: dict) -> dict:
    return report(demo(changes), with_bands=False)["ends"]["front"]


def refusal(changes: dict) -> tuple[str, str]:
    problem = front(changes)["problems"][0]
    return problem["path"], problem["message"]


def test_a_plain_fork_shows_no_field_of_another_kind():
    shown = {path for path, found in load(demo()).fields.items() if found.applies}
    hidden = ("second_rate", "second_room", "second_later", "table", "table_error", "topout_rate", "rubber_length", "rubber_rate",
              "rubber_table", "rate_right", "spacers", "space", "new_free", "new_solid", "spring_bore", "shear_modulus", "wire")  # fmt: skip
    assert not shown & {f"front.{key}" for key in hidden}
    assert not shown & {f"rear.{key}" for key in (*hidden, "installed_length", "thread_left")}


@pytest.mark.parametrize("changes", [STACKED, NESTED, PROGRESSIVE, RUBBER, {"front.topout": "spring", "front.topout_rate": "15"}])
def test_each_kind_asks_for_what_it_needs(changes):
    """Every field of a kind applies once the kind is chosen; take one away and it is named."""
    for path in [p for p in changes if p.split("_")[-1] in {"rate", "room", "later", "length"} or p.endswith("table")]:
        assert load(demo(changes)).fields[path].applies
        assert refusal({p: v for p, v in changes.items() if p != path}) == (
            path, f"{load(demo()).fields[path].field.label} is not entered.")  # fmt: skip


def test_rates_of_kinds():
    assert fitted.rate(load(demo(STACKED)), "front") == 4.2
    job = load(demo(PROGRESSIVE | {"front.table_error": "10 %"}))
    assert fitted.rate(job, "front") == pytest.approx(1.1 * (3.6 + 0.004 * 340), rel=1e-4)
    unequal = load(demo({"front.spring_kind": "unequal", "front.rate_right": "4.6"}))
    assert (fitted.rate(unequal, "front"), fitted.split(unequal, "front")) == (pytest.approx(4.4), pytest.approx(0.2))
    assert fitted.split(load(demo({"front.rate_right": "4.6"})), "front") == 0.0
    alike = load(demo(WIRE | {"front.spring_kind": "unequal"}))  # nothing said of the right one: it is as the left one
    assert (fitted.rate(alike, "front"), fitted.split(alike, "front")) == (fitted.rate(load(demo(WIRE)), "front"), 0.0)


@pytest.mark.parametrize(
    ("table", "words"),
    [
        ("0 0; 50 210; 50 440", "pair 3: its first number must be larger than the one before"),
        ("0 0; 50", "pair 2, '50', is not two numbers with a space between them"),
        ("0 0; 50 210 440", "pair 2, '50 210 440', is not two numbers"),
        ("0 0; 50 x9", "pair 2, '50 x9', is not two numbers"),
        ("0 0; 50 1,250", "pair 2, '1,250': this comma can be read two ways"),
        ("0 0; 50 70000", "pair 2, '70000': 70000 N is above the limit of 60000 N"),
        ("0 0", "enter 2 to 40 pairs"),
        ("0 0; 100 440", "The table ends at 100 mm; full travel with the most preload shortens the spring by 315 mm"),
        ("0 0; 200 900; 400 800", "The force does not rise from 200 mm (900 N) to 400 mm (800 N)"),
    ],
)
def test_a_table_is_refused_in_words_at_its_field(table, words):
    path, message = refusal(PROGRESSIVE | {"front.table": table})
    assert path == "front.table"
    assert words in message


def test_a_table_reads_units_commas_and_lines():
    one, other = (load(demo(PROGRESSIVE | {"front.table": t})) for t in ("0 0; 50 210; 400 2100", "0 0\n5 cm 0,21 kN\n400 2100"))
    assert one.fields["front.table"].pairs == other.fields["front.table"].pairs == ((0.0, 0.0), (50.0, 210.0), (400.0, 2100.0))


def test_words_of_kinds():
    assert front(PROGRESSIVE | {"front.buy": "stock", "front.stock": "4.6 4.7"})["why"][-1].startswith(
        ("Same shape, other mean rate: an assumption.", "The rate is the mean over your table."))  # fmt: skip
    assert "second one is kept" in front(STACKED | {"front.rate": "6.2"})["why"][-1]
    rubber = front(RUBBER)
    without, with_ = rubber["chosen"]["landing_energy"]["value"], rubber["chosen"]["landing_energy_rubber"]["value"]
    assert with_ - without == pytest.approx(2 * 0.5 * 40 * 30**2 / 1000)
    assert f"{without:.0f} J without the bump rubber, {with_:.0f} J with it" in rubber["why"][-1]
    assert rubber["chosen"]["end_force"] == front({})["chosen"]["end_force"]
    assert rubber["curve"]["rubber"][-1] > rubber["curve"]["working"][-1] + 1.0
    assert front({})["curve"]["rubber"] is None


def test_a_rubber_that_is_touched_at_rider_sag_is_told():
    rear = {"rear.rubber": "rate", "rear.rubber_length": "100", "rear.rubber_rate": "5"}
    told = [
        report(demo(rear | {"rear.rubber_length": length}), with_bands=False)["ends"]["rear"]["why"][-1] for length in ("100", "60")
    ]
    assert told[0].startswith("The bump rubber is touched at rider sag already")
    assert told[1].startswith("Landing energy")


def test_legs_whose_springs_are_far_apart_are_sized_in_real_numbers():
    """Half of what they are apart is more than 1 N/mm: no leg is ever worked out with a rate below 0 (a warning fails here)."""
    front = report(demo({"front.spring_kind": "unequal", "front.rate": "6", "front.rate_right": "2.4"}), with_bands=False)["ends"][
        "front"
    ]
    fitted_ = next(candidate for candidate in front["candidates"] if candidate["fitted"])
    assert [fitted_["pair"][side]["value"] for side in ("left", "right")] == pytest.approx([6.0, 2.4])


SOLD_42 = {"standard.fork_springs": "changed", "standard.fork_rate": "4.2"}
PAIRS = {"front.buy": "stock-pairs", "front.stock": "4.4 4.8", "front.rate": "3.4"} | SOLD_42


def test_an_unequal_pair_names_both_rates_and_their_mean():
    told = front(PAIRS)
    assert told["chosen"]["pair"]["left"]["value"] == pytest.approx(4.4)
    assert told["chosen"]["pair"]["right"]["value"] == pytest.approx(4.8)
    assert told["answer"].startswith("Fit 4.4 left and 4.8 right (mean 4.6) N/mm, 2 mm preload, gap 121 mm: ")
    assert front({})["chosen"]["pair"] is None


# Preload from lengths; spacer and collar; fit.
LENGTHS = {"front.preload_from": "lengths", "front.free_length": "470", "front.spacers": "30", "front.space": "494"}
REAR_LENGTHS = {"rear.preload_from": "lengths", "rear.free_length": "250", "rear.installed_length": "235", "rear.pitch": "1.5"}


def test_preload_from_lengths():
    assert fitted.preload(load(demo()), "front") == 6.0
    assert fitted.preload(load(demo(LENGTHS)), "front") == 470 + 30 - 494
    assert fitted.preload(load(demo(REAR_LENGTHS)), "rear") == 15.0
    assert front(LENGTHS)["chosen"] == front({})["chosen"]
    assert refusal({k: v for k, v in LENGTHS.items() if k != "front.free_length"})[0] == "front.free_length"
    assert refusal({k: v for k, v in LENGTHS.items() if k != "front.space"}) == (
        "front.space",
        "Space at full extension is not entered.",
    )


def test_what_to_do_to_spacer_and_collar():
    """6 mm found, 3 wanted: 3 mm off the spacer. 15 found, 7 wanted: 8 mm out, at 1.5 mm a turn 5.3 turns."""
    ends = report(demo(REAR_LENGTHS | {"front.pitch": "1.0"}), with_bands=False)["ends"]
    assert ends["front"]["seat"]["move"]["value"] == -3.0
    assert ends["front"]["seat"]["words"].startswith(
        "Cut 3 mm off the spacer, or turn the adjuster 3.0 turns out, for a spring as long"
    )
    assert ends["rear"]["seat"]["words"].startswith("Collar 8 mm, 5.3 turns out")
    assert ends["rear"]["seat"]["turns"]["value"] == pytest.approx(-8 / 1.5)
    longer = front(LENGTHS | {"front.new_spring": "own", "front.new_free": "478"})["seat"]
    assert (longer["move"]["value"], longer["words"]) == (-11.0, "Cut 11 mm off the spacer.")


@pytest.mark.parametrize(
    ("sizes", "code", "words"),
    [
        (
            {"new_outside": "42", "spring_bore": "41.8"},
            "too wide",
            "does not fit: 42.0 mm wide with its coils closed, in a bore of 41.8 mm",
        ),
        ({"new_inside": "30", "spring_core": "30.5"}, "too narrow", "does not fit: 30.0 mm inside, over 30.5 mm"),
        ({"new_free": "470", "new_solid": "168"}, "coil bind", "before the coils touch at full travel"),
    ],
)
def test_what_does_not_fit_is_said(sizes, code, words):
    told = front(LENGTHS | {"front.new_spring": "own"} | {f"front.{key}": value for key, value in sizes.items()})
    fitted_, *others = told["candidates"]
    for other in others:
        assert words in {v["code"]: v["words"] for v in other["vetoes"]}[code]
    assert told["verdict"] == "keep", "the fitted spring fits, and no other can be built"
    assert fitted_["relation"] == "chosen"


def test_a_spring_that_leaves_no_room_for_spacers_has_a_least_preload():
    """40 mm longer than the fitted one, 30 mm of spacers to take out, 6 mm preload found: 16 mm are the least."""
    told = front(LENGTHS | {"front.new_spring": "own", "front.new_free": "510"})
    stiff = next(c for c in told["candidates"] if c["rate"]["value"] == pytest.approx(4.6))
    assert stiff["preload"]["value"] == 6 + 40 - 30
    sag = stiff["rider_sag"]["value"]
    short = {one["code"]: one["words"] for one in stiff["short"]}
    assert short["preload below"] == f"even with 16 mm preload it sags only {sag:.0f} of the 66 mm wanted"


# +/- of wire, coil and steel.
def test_grade_wire_and_coil_enter_the_draws():
    """The half-width of the drawn rate is that of first order, D being outside less wire: G, 4 d / d + 3 d / D, 3 / D, 1 / Na."""
    rates = fitted.rate(drawn(load(demo(WIRE)), 2000), "front")
    wire, outside, coils, grade = 4 * 0.05 / 4.2 + 3 * 0.05 / 32, 3 * 0.1 / 32, 0.1 / 36, 2000 / 79500
    expected = math.sqrt(wire**2 + outside**2 + coils**2 + grade**2)
    nominal = fitted.rate(load(demo(WIRE)), "front")
    assert half_width(rates) / nominal == pytest.approx(expected, rel=0.03)
    known = fitted.rate(drawn(load(demo(WIRE | {"front.shear_modulus": {"value": "79.5", "plus_minus_95": "0"}})), 2000), "front")
    assert half_width(known) / nominal == pytest.approx(math.hypot(wire, outside, coils), rel=0.03)


def test_a_modulus_follows_its_grade_and_can_be_known_better():
    job = load(demo(WIRE | {"front.grade": "music"}))
    assert job.value("front.shear_modulus") == pytest.approx(81350)
    assert job.fields["front.shear_modulus"].reading.plus_minus_95 == pytest.approx(1350)
    assert job.fields["front.shear_modulus"].reason.startswith("Music wire")
    own = load(demo(WIRE | {"front.shear_modulus": "80 GPa"}))
    assert fitted.rate(own, "front") == pytest.approx(80000 * 4.2**4 / (8 * 32.0**3 * 36))


def test_the_command_line_tells_pairs_tables_and_what_to_do_to_the_spacer():
    text = text_of(demo(PROGRESSIVE | {"front.buy": "stock", "front.stock": "4.9"}), with_bands=False)
    assert "18 pairs" in text.split("Force against length")[1].split("\n")[0]
    text = text_of(demo({"front.buy": "series-pairs"}), with_bands=False)
    assert "4.5 is 4.4 left and 4.6 right (mean 4.5)" in text
    assert "Cut 3 mm off the spacer, for a spring as long as the fitted one." in text
