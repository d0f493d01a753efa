"""The edge: units, one number and one unit from what people type, and back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.quantities.entry import (
    EntryError,
    _line,
    convert,
    convert_difference,
    dimension_of,
    internal_unit,
    pint_lines,
    read_entry,
)
from calc.quantities.lines import LINES
from calc.quantities.units import ALIASES, DIMENSIONS

# Exact unless said; NIST SP 811 (its lbf/in is printed as 1.751 268 E+02 N/m).
PUBLISHED = [
    (1.0, "in", "mm", 25.4),
    (1.0, "ft", "mm", 304.8),
    (1.0, "lb", "kg", 0.45359237),
    (1.0, "st", "kg", 6.35029318),
    (1.0, "kgf", "N", 9.80665),
    (1.0, "lbf", "N", 4.4482216152605),
    (1.0, "kgf/mm", "N/mm", 9.80665),
    (1.0, "lbf/in", "N/m", 175.126835246),
    (1.0, "N/cm", "N/m", 100.0),
    (1.0, "psi", "Pa", 6894.757293168),
    (1.0, "bar", "Pa", 1e5),
    (1.0, "atm", "Pa", 101325.0),
    (1.0, "US fl oz", "ml", 29.5735295625),
    (1.0, "imp fl oz", "ml", 28.4130625),
    (1.0, "MPa", "bar", 10.0),
    (1.0, "GPa", "MPa", 1000.0),
    (1.0, "hPa", "Pa", 100.0),
    (1.0, "J", "N mm", 1000.0),
    (1.0, "l", "mm3", 1e6),
    (180.0, "°", "rad", 3.141592653589793),
    (20.0, "°C", "K", 293.15),
    (212.0, "°F", "K", 373.15),
    (50.0, "%", "1", 0.5),
    (1.0, "h", "s", 3600.0),
    (1.0, "cSt", "mm²/s", 1.0),
    (1.0, "g/ml", "kg/m³", 1000.0),
]
UNITS = [(name, unit) for name, dimension in DIMENSIONS.items() for unit in dimension.units]


@pytest.mark.parametrize(("number", "unit", "to", "published"), PUBLISHED)
def test_units_of_nist_sp_811(number, unit, to, published):
    assert convert(number, unit, to) == pytest.approx(published, rel=1e-11)


@given(pair=st.sampled_from(UNITS), number=st.floats(-1e6, 1e6))
def test_units_round_trip(pair, number):
    dimension, unit = pair
    inside = convert(number, unit, internal_unit(dimension))
    assert convert(inside, internal_unit(dimension), unit) == pytest.approx(number, rel=1e-12, abs=1e-9)


@given(pair=st.sampled_from([pair for pair in UNITS if pair[1]]), number=st.floats(0, 1e4))
def test_a_number_written_with_its_unit_is_read_back(pair, number):
    dimension, unit = pair
    if unit == "1":
        return  # the unit of a plain share is not written
    assert read_entry(f"{number:.10f} {unit}", dimension, unit).unit == unit
    assert read_entry(f"{number:.10f}{unit}", dimension, unit).number == pytest.approx(number, abs=1e-10)


def test_a_difference_leaves_the_offset_out():
    assert convert_difference(9.0, "°F", "K") == pytest.approx(5.0)
    assert convert_difference(3.0, "°C", "K") == pytest.approx(3.0)
    assert convert_difference(1.0, "in", "mm") == pytest.approx(25.4)


def test_units_of_two_dimensions_do_not_mix():
    for function in (convert, convert_difference):
        with pytest.raises(EntryError, match="kg cannot be turned into mm"):
            function(1.0, "kg", "mm")
    with pytest.raises(EntryError, match="'furlong' is not a unit known here"):
        dimension_of("furlong")


def test_every_alias_leads_to_an_accepted_unit():
    assert {unit for spelled in ALIASES.values() for unit in spelled} <= {unit for _, unit in UNITS}


@pytest.mark.parametrize(
    ("text", "dimension", "bare", "expected"),
    [
        ("4,4", "spring rate", "N/mm", 4.4),
        ("4.4", "spring rate", "N/mm", 4.4),
        ("4,4 N/mm", "spring rate", "N/mm", 4.4),
        ("0.46 kg/mm", "spring rate", "N/mm", 0.46 * 9.80665),
        ("0,46kgf/mm", "spring rate", "N/mm", 0.46 * 9.80665),
        ("25 lb/in", "spring rate", "N/mm", 25 * 0.175126835246),
        ("25 lbs / in", "spring rate", "N/mm", 25 * 0.175126835246),
        ("110mm", "length", "mm", 110.0),
        ("11 CM", "length", "mm", 110.0),
        ('4"', "length", "mm", 101.6),
        ("4 in", "length", "mm", 101.6),
        ("400", "length", "m", 400e3),
        ("13 st 4 lb", "mass", "kg", 13 * 6.35029318 + 4 * 0.45359237),
        ("13st4lb", "mass", "kg", 13 * 6.35029318 + 4 * 0.45359237),
        ("13 stone 4,5 lbs", "mass", "kg", 13 * 6.35029318 + 4.5 * 0.45359237),
        ("13 st", "mass", "kg", 13 * 6.35029318),
        ("188 lb", "mass", "kg", 188 * 0.45359237),
        ("1.2 bar", "pressure", "bar", 0.12),
        ("15 psi", "pressure", "bar", 15 * 6894.757293168e-6),
        ("1013 mbar", "pressure", "hPa", 0.1013),
        ("20 cc", "volume", "ml", 20e3),
        ("1 US fl oz", "volume", "ml", 29573.5295625),
        ("44 N/cm", "spring rate", "N/mm", 4.4),
        ("32 cst", "kinematic viscosity", "mm²/s", 32.0),
        ("5,4 mm2/s", "kinematic viscosity", "mm²/s", 5.4),
        ("0.87 g/cm3", "density", "kg/m³", 870.0),
        ("0.87 kg/l", "density", "kg/m³", 870.0),
        ("20degC", "temperature", "°C", 293.15),
        ("20 deg C", "temperature", "°C", 293.15),
        ("20 ºC", "temperature", "°C", 293.15),
        ("20 ℃", "temperature", "°C", 293.15),
        ("68 degF", "temperature", "°C", 293.15),
        ("68 Fahrenheit", "temperature", "°C", 293.15),
        ("26.5°", "angle", "°", 0.46251225177849),
        ("26,5 deg", "angle", "°", 0.46251225177849),
        ("22 %", "share", "%", 0.22),
        ("22", "share", "%", 0.22),
        ("1e2 mm", "length", "mm", 100.0),
        ("1.250 mm", "length", "mm", 1.25),
        ("0,125 in", "length", "mm", 3.175),
        ("-3", "length", "mm", -3.0),
        ("−3 mm", "length", "mm", -3.0),
        ("+3 mm", "length", "mm", 3.0),
        (".5 mm", "length", "mm", 0.5),
        ("5. mm", "length", "mm", 5.0),
        ("  96.2\u00a0kg ", "mass", "kg", 96.2),
    ],
)  # fmt: skip
def test_people_write_it_so(text, dimension, bare, expected):
    entry = read_entry(text, dimension, bare)
    assert convert(entry.number, entry.unit, internal_unit(dimension)) == pytest.approx(expected, rel=1e-9)


def test_a_comma_that_reads_two_ways_is_refused_with_both_readings():
    for text, readings in (
        ("1,250", ("1250", "1.250")),
        ("96,200 kg", ("96200 kg", "96.200 kg")),
        ("-1,250 g", ("-1250 g", "-1.250 g")),
    ):
        with pytest.raises(EntryError) as caught:
            read_entry(text, "mass", "kg")
        assert caught.value.code == "ambiguous"
        assert caught.value.readings == readings
        for reading in readings:
            read_entry(reading, "mass", "kg")


@pytest.mark.parametrize(("text", "code"), [("9**9**9", "two-numbers"), ("nan", "characters"), ("1e400 mm", "infinite"), ("-1e999", "infinite"), ("", "empty"),
                                            ("4.4.4", "two-numbers"), ("1" * 41, "long"), ("4 furlongs", "unit"), ("13 st 14 lb", "two-numbers")])  # fmt: skip
def test_each_refusal_has_its_own_reason(text, code):
    with pytest.raises(EntryError) as caught:
        read_entry(text, "length", "mm")
    assert caught.value.code == code


def test_a_stone_has_fourteen_pounds():
    with pytest.raises(EntryError, match="pounds below 14"):
        read_entry("13 st 14 lb", "mass", "kg")


@pytest.mark.parametrize(
    ("text", "dimension", "offer"),
    [("1,013,250 Pa", "pressure", "1013250 Pa"), ("1,250.5 N", "force", "1250.5 N"), ("1.250,5 N", "force", "1250.5 N"), ("1 250 N", "force", "1250 N"),
     ("-1'250'000 N", "force", "-1250000 N"), ("1.013.250 Pa", "pressure", "1013250 Pa")],
)  # fmt: skip
def test_thousands_that_can_be_nothing_else_are_offered_plainly(text, dimension, offer):
    with pytest.raises(EntryError) as caught:
        read_entry(text, dimension, internal_unit(dimension))
    assert (caught.value.code, caught.value.readings) == ("separator", (offer,))
    entry = read_entry(offer, dimension, internal_unit(dimension))
    assert entry.number == float(offer.split()[0])


@pytest.mark.parametrize(
    ("text", "code"),
    [("1,250 furlongs", "unit"), ("1,250 mm", "dimension"), ("1,250,5", "two-numbers"), ("0,125", None), ("1.250", None)],
)
def test_nothing_is_offered_that_cannot_be_read(text, code):
    try:
        read_entry(text, "mass", "kg")
    except EntryError as error:
        assert (error.code, error.readings) == (code, ())
    else:
        assert code is None


def test_a_degree_of_warmth_is_asked_for():
    with pytest.raises(EntryError) as caught:
        read_entry("68°", "temperature", "°C")
    assert caught.value.readings == ("68 °C", "68 °F")


def test_an_ounce_of_either_kind_is_asked_for():
    with pytest.raises(EntryError) as caught:
        read_entry("14 oz", "volume", "ml")
    assert caught.value.readings == ("14 US fl oz", "14 imp fl oz")
    assert [read_entry(r, "volume", "ml").unit for r in caught.value.readings] == ["US fl oz", "imp fl oz"]


def test_a_dimension_that_does_not_fit_names_what_does():
    with pytest.raises(EntryError, match="kg does not fit here: use N/mm, kgf/mm, lbf/in, N/m") as caught:
        read_entry("4.6 kg", "spring rate", "N/mm")
    assert caught.value.code == "dimension"


@given(st.text(max_size=60))
def test_whatever_is_typed_is_read_or_refused(text):
    """Any text at all: a finite number and an accepted unit, or an EntryError in words; nothing else escapes."""
    for dimension, details in DIMENSIONS.items():
        try:
            entry = read_entry(text, dimension, details.internal)
        except EntryError as error:
            assert error.message
            assert error.code
        else:
            assert entry.unit in details.units
            assert abs(entry.number) < float("inf")


def test_lines_written_down_are_those_of_pint():
    """Pint is the second opinion on every line, and answers for a unit that has none."""
    assert set(LINES) == {unit for _, unit in UNITS}
    for unit, line in pint_lines().items():
        assert LINES[unit] == pytest.approx(line, rel=1e-13, abs=1e-12), unit


def test_pint_answers_for_a_unit_without_a_line(monkeypatch):
    _line.cache_clear()
    monkeypatch.setattr("calc.quantities.entry.LINES", {unit: line for unit, line in LINES.items() if unit != "psi"})
    assert convert(1.0, "psi", "Pa") == pytest.approx(6894.757293168, rel=1e-12)
    _line.cache_clear()
