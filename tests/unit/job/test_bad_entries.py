"""A bad entry is refused at its field, with the limit and the unit in words, and changes nothing else."""

import json

import pytest

from calc.boundary import answer
from calc.job import load
from calc.job.field import Field, Kind
from calc.job.fields import FIELDS
from calc.quantities.units import ALIASES, DIMENSIONS
from tests.support import bad_strings
from tests.support.documents import demo
from tests.support.plain import report

ONE_OF_EACH = {field.dimension: path for path, field in FIELDS.items() if field.kind is Kind.QUANTITY and field.default is None}
ONE_OF_EACH |= {"mass": "rider.mass", "share": "rear.leverage_fall", "number": "rear.leverage", "angle": "bike.rake", "temperature": "place.ridden_temperature", "pressure": "rear.charge",
                "force": "front.friction", "volume": "front.cap_volume", "spring rate": "front.rate", "length": "front.gap_left", "speed": "front.shaft_speed"}  # fmt: skip
BASE = load(demo())


def depends(field: Field, path: str) -> bool:
    """True where a field is declared to follow another, or to be idle by it."""
    default = field.default
    idle = {p for group in field.unless for p in group} | set(field.when) | set(field.idle) | set(field.needs)
    return path in idle or (default is not None and path in (default.follow, default.share_of))


def refused(path: str, text: str):
    """The problem at a field, after checking that no other field is read differently."""
    job = load(demo({path: text}))
    for other, field in job.fields.items():
        if other != path and vars(field) != vars(BASE.fields[other]):  # Resolved itself is compared by identity
            assert depends(FIELDS[other], path), (path, text, other)
    found = job.fields[path]
    assert found.problem is not None, f"{path} took {text!r} as {found.number} {found.unit}"
    if found.applies:
        assert found.reading is None
    else:  # out of use, it stops nothing: what stands in for an empty one stands in for it
        assert found.reading == load(demo({path: {"value": None}})).fields[path].reading
        assert not job.problems
    return found.problem


def names_field_limit_and_unit(problem, field: Field) -> None:
    assert problem.message.startswith(f"{field.label}: ")
    assert problem.limit == f"From {field.low:g} to {field.high:g} {field.unit}".rstrip() + "."
    assert problem.sentence().startswith(f"{field.path}: ")
    assert problem.code


def test_there_are_enough_bad_strings():
    assert len(set(bad_strings.ALL)) >= 60
    assert set(ONE_OF_EACH) == {f.dimension for f in FIELDS.values() if f.kind is Kind.QUANTITY}


@pytest.mark.parametrize("path", sorted(ONE_OF_EACH.values()))
def test_bad_strings_in_every_dimension(path):
    for text in bad_strings.ALL:
        names_field_limit_and_unit(refused(path, text), FIELDS[path])


@pytest.mark.parametrize("path", sorted(ONE_OF_EACH.values()))
def test_units_of_other_dimensions_do_not_fit_and_the_message_says_what_does(path):
    field = FIELDS[path]
    fitting = {unit for unit in DIMENSIONS[field.dimension].units if unit}
    tried = 0
    for name, dimension in DIMENSIONS.items():
        for unit in dimension.units:
            also_fits = fitting & {unit, *ALIASES.get(unit.lower(), ())}  # g is a gram, and what a brake is told in
            if name == field.dimension or not unit or unit == "1" or also_fits:
                continue
            problem = refused(path, f"4 {unit}")
            if problem.readings:  # 4° of warmth: of which kind?
                assert (problem.code, unit) == ("ambiguous", "°")
                continue
            assert problem.code == "dimension", unit
            assert all(u in problem.message for u in fitting if u != "1") or not fitting
            names_field_limit_and_unit(problem, field)
            tried += 1
    assert tried > 25


@pytest.mark.parametrize("path", [path for path, field in FIELDS.items() if field.kind is Kind.QUANTITY])
def test_every_field_has_limits_and_says_which_was_passed(path):
    field = FIELDS[path]
    for number, side, limit in ((field.low - 1, "below", field.low), (field.high * 1.01 + 1, "above", field.high)):
        problem = refused(path, f"{number:.6f}")
        assert problem.code == "range"
        assert f"is {side} the limit of {limit:g} {field.unit}".rstrip() in problem.message
        names_field_limit_and_unit(problem, field)
    for number in (field.low, field.high):
        assert load(demo({path: f"{number:.10g}"})).fields[path].problem is None


@pytest.mark.parametrize("path", [path for path, field in FIELDS.items() if field.kind is Kind.CHOICE])
def test_choices_take_their_keys_and_nothing_else(path):
    field, others = FIELDS[path], 0
    for text in (*bad_strings.ALL, "ENDURO", "enduro ", "4.4 N/mm", "both,one", "left", "upside down", "0", "-1", "3", "Two"):
        if text in field.choices:
            continue
        problem, others = load(demo({path: text})).fields[path].problem, others + 1
        assert problem.code == "choice"
        assert problem.message.startswith(f"{field.label}: ")
        assert all(key in problem.message for key in field.choices)
        assert len(problem.message) < 300
    assert others >= 60


NOT_RATES = [text for text in bad_strings.ALL if text not in ("4 to 6", "1 250", "4\n\n4", "4" + " " * 60 + "4")]
NOT_RATES += [
    "4.2 nan",
    "4.2; 9**9**9",
    "4.2 4.4 kg",
    "4.2,4.4,5",
    "4.2 4,4 4.6, 5",
    "4.2 1e400",
    "0.1 4.2",
    "4.2 31",
    "4.2 -4.4",
    ";",
    "; ;",
    "4.2 " * 41,
]


@pytest.mark.parametrize("text", NOT_RATES, ids=range(len(NOT_RATES)))
def test_a_list_of_rates_is_taken_whole_or_not_at_all(text):
    found = load(demo({"front.buy": "stock", "front.stock": text})).fields["front.stock"]
    assert found.problem is not None, found.rates
    assert found.rates == ()
    names_field_limit_and_unit(found.problem, FIELDS["front.stock"])


@pytest.mark.parametrize(
    ("text", "rates"),
    [("4.2 4.4 4.6", (4.2, 4.4, 4.6)), ("4,6; 4,2;4,4", (4.2, 4.4, 4.6)), ("4.2, 4.4, 4.6", (4.2, 4.4, 4.6)), ("4,2, 4,4", (4.2, 4.4)),
     ("4.2,4.4,4.6", (4.2, 4.4, 4.6)), ("4.2 N/mm, 4.4 N/mm", (4.2, 4.4)), ("9, 10", (9.0, 10.0)), ("4.4", (4.4,)), ("4.4 4.4", (4.4,)), ("25lb/in", (4.378170881,)),
     ("4.2 N/mm; 4.4 N/mm", (4.2, 4.4)), ("25 lb/in 30 lb/in", (4.378170881, 5.253805057))],
)  # fmt: skip
def test_a_list_of_rates_as_people_write_it(text, rates):
    found = load(demo({"front.buy": "stock", "front.stock": text})).fields["front.stock"]
    assert found.problem is None
    assert found.rates == pytest.approx(rates)


@pytest.mark.parametrize("written", ["-1 kg", "nan", "9**9**9", "1,250", "500 kg", "1 mm", "", "1e400", "±1"])
def test_a_bad_plus_minus_is_refused_at_its_field(written):
    problem = refused("rider.mass", {"value": "104 kg", "plus_minus_95": written})
    assert problem.message.startswith("Rider in full kit: its +/-")
    assert "kg" in problem.message + problem.limit


@pytest.mark.parametrize(
    ("path", "entry", "words"),
    [
        ("place.ridden_altitude", {"value": "0", "plus_minus_95": "4456 m"}, "its +/- must lie between 0 and 2700 m"),
        ("front.rate", {"value": "4.2", "plus_minus_95": "5 N/mm"}, "its +/- of 5 N/mm is more than the 4.2 N/mm it stands beside"),
        ("rider.mass", {"value": "13 st", "plus_minus_95": "1,250 g"}, "its +/-: this comma can be read two ways: choose one, or type it again: 1250 g or 1.250 g"),
    ],
)  # fmt: skip
def test_a_plus_minus_is_held_to_what_it_stands_beside(path, entry, words):
    problem = refused(path, entry)
    assert words in problem.message
    assert problem.readings == (), "an offer would be taken as the value"


@pytest.mark.parametrize(
    ("path", "text", "offers"),
    [
        ("front.rate", "0.44", ("0.44 kg/mm",)), ("rear.rate", "4.6", ("4.6 kg/mm",)), ("rear.rate", "525", ("525 lb/in", "525 N/cm")), ("rider.mass", "13", ("13 st",)),
        ("rider.mass", "230", ("230 lb",)), ("rear.charge", "145", ("145 psi",)), ("place.ridden_altitude", "8200", ("8200 ft",)),
        ("place.ridden_temperature", "140", ("140 °F",)), ("front.rate", "0.44 N/mm", ()), ("front.rate", "1e9", ()),
    ],
)  # fmt: skip
def test_a_bare_number_beyond_the_limits_suggests_the_units_that_it_could_be_in(path, text, offers):
    problem = refused(path, text)
    assert problem.code == "range"
    assert problem.readings == offers
    for offer in offers:
        assert load(demo({path: offer})).fields[path].problem is None


@pytest.mark.parametrize("path", ["rider.mass", "front.oil_volume", "place.bled_pressure", "front.rate", "front.gap_left"])
@pytest.mark.parametrize(
    "text", ["1,250", "1,013,250 Pa", "101,325 Pa", "1,250.5", "1 050", "12,345 g", "96,200 g", "1.200,5 ml", "85 oz", "3'250"]
)
def test_what_is_offered_can_be_taken(path, text):
    problem = load(demo({path: text})).fields[path].problem
    assert problem is not None
    for offer in problem.readings:
        assert load(demo({path: offer})).fields[path].problem is None, offer
    if problem.code in ("ambiguous", "separator") and not problem.readings:
        assert problem.message.endswith("outside its limits.")
        assert problem.limit


def test_two_rates_point_to_a_rate_for_each_leg():
    for text in ("4.2/4.4", "4,2 / 4,4 N/mm", "0.42/0.44 kg/mm"):
        problem = refused("front.rate", text)
        assert problem.code == "pair"
        assert "different rate in each leg" in problem.sentence()
    assert "right leg" in refused("front.gap_left", "145/146").way_out


@pytest.mark.parametrize(
    "path", ["place.bled_temperature", "front.spacer_length", "front.cartridge_oil", "front.tube_metal", "front.air_coil"]
)
def test_a_refused_entry_that_is_out_of_use_stops_nothing_and_is_kept(path):
    """At either end, under other conditions, and with bands: as if it were empty, until its field comes into use."""
    job = load(demo({path: "x"}))
    assert not job.fields[path].applies
    told, plain = report(demo({path: "x"}), draws=20), report(demo(), draws=20)
    assert told["ends"] == plain["ends"]
    assert told["fields"][path]["text"] == "x"
    assert told["fields"][path]["problem"] is None, "it is said when the field is in use"


def test_it_is_refused_once_its_field_comes_into_use():
    both = demo({"place.bled_temperature": "x", "place.ridden_temperature": "60"})
    assert [problem.path for problem in load(both).problems] == ["place.bled_temperature"]


@pytest.mark.parametrize(
    "number",
    [float("nan"), float("inf"), 1e400, -5, 10**30, 10**400],
    ids=["nan", "inf", "1e400", "negative", "huge", "hundreds of digits"],
)
def test_bad_numbers_in_json_are_refused_like_text(number):
    names_field_limit_and_unit(refused("rider.mass", number), FIELDS["rider.mass"])


@pytest.mark.parametrize(
    ("path", "text"),
    [("front.rate", "4,4,4"), ("front.gap_left", "9**9**9"), ("front.travel", "nan"), ("front.cap_volume", "20 oz"), ("bike.rake", "1e400 °"),
     ("rear.rate", "0.46 kg"), ("rear.charge", "1,250"), ("rear.leverage", "2.5 mm"), ("rear.target_sag", ""), ("front.layout", "sideways")],
)  # fmt: skip
def test_the_other_end_keeps_its_answer_and_the_refused_one_says_why(path, text):
    base, bad = (report(demo(changes), with_bands=False) for changes in ({}, {path: text}))
    end = FIELDS[path].end
    other = "rear" if end == "front" else "front"
    assert bad["ends"][other] == base["ends"][other]
    assert bad["ends"][end]["state"] == "refused"
    assert [p["path"] for p in bad["ends"][end]["problems"]] == [path]
    assert bad["fields"][path]["problem"] == bad["ends"][end]["problems"][0]
    changed = {p for p in FIELDS if p != path and bad["fields"].get(p) != base["fields"].get(p)}
    assert all(depends(FIELDS[p], path) for p in changed), changed
    for part in ("header", "use", "posture", "modifiers", "cautions", "reassembly", "first_ride", "left_out"):
        assert bad[part] == base[part]
    json.dumps(bad, allow_nan=False)


@pytest.mark.parametrize("text", ["", "4", "null", "[]", '{"kind": 7}', '{"kind": "size"}', '{"kind": "size", "job": 7}', '{"kind": "start"}',
                                  '{"kind": "size", "job": {}, "ends": ["middle"]}', '{"kind": "size", "job": {}, "ends": 7}',
                                  *('{"kind": "size", "job": {"format": "stanchion-job", "version": 1}, "draws": ' + draws + "}" for draws in ("0", "1e9", "true", '"9"')),
                                  '{"kind": "size", "job": {"format": "stanchion-job", "version": 1e400}}', "[" * 100_000,
                                  '{"kind": "size", "job": {"format": "stanchion-job", "version": ' + "9" * 5000 + "}}", "\ud800"])  # fmt: skip
def test_the_door_of_the_core_answers_whatever_it_is_asked(text):
    reply = json.loads(answer(text))
    assert reply["kind"] == "failure"
    assert reply["message"]
