"""The practice tables make sense in themselves. They are common practice, so there is no source to hold them to."""

import pytest

from calc.job import load
from calc.job.export import schema
from calc.job.fields import FIELDS
from calc.job.starter import start
from calc.practice import GENERAL, MEASURING, MODIFIERS, POSTURE, ROWS, USES, posture, usual
from calc.practice.uses import BETWEEN
from calc.quantities.units import DIMENSIONS
from tests.support.documents import changed

NOT_PRACTISED = {
    "passenger": {"two-up"}, "luggage": {"two-up"}, "passenger front share": {"two-up"}, "luggage front share": {"two-up"},
    "rider front share sitting": set(USES) - {"trials"}, "rider front share standing": set(USES) - {"road", "track"},
}  # fmt: skip
PAIRS = [
    ("free sag front", "rider sag front"), ("free sag rear", "rider sag rear"), ("rider front share sitting", "rider front share standing"),
    ("end multiple rear", "end multiple front"),
]  # fmt: skip


@pytest.mark.parametrize("row", sorted(ROWS))
def test_every_row_covers_every_use_in_order(row):
    assert len(ROWS[row].by_use) == len(USES)
    covered = {use for use in USES if usual(row, use) is not None}
    assert covered == NOT_PRACTISED.get(row, set(USES))
    for use in covered:
        found = usual(row, use)
        assert found.low <= found.typical <= found.high, use
        assert found.confidence in {"H", "M", "L"}
        assert "no source" in found.note


def test_the_page_gets_every_range_with_its_confidence():
    ranges = schema()["ranges"]
    assert ranges["gap"]["by_use"]["enduro"] == [100, 140, 120, "M"]
    assert ranges["gap"]["by_use"]["dual-sport"][3] == "L"
    assert ranges["passenger"]["by_use"]["road"] is None
    assert ranges["damper rod"]["always"] == [10, 12.5, 12, "H"]


@pytest.mark.parametrize("name", sorted(GENERAL))
def test_general_ranges_are_in_order_and_say_where_they_come_from(name):
    found = GENERAL[name]
    assert found.low <= found.typical <= found.high
    assert found.confidence in {"H", "M", "L"}
    assert "no source" in found.note or "no published" in found.note
    assert usual(name, "road") is found


def test_every_unit_is_known():
    known = {unit for dimension in DIMENSIONS.values() for unit in dimension.units}
    for row in (*ROWS.values(), *GENERAL.values()):
        assert row.unit in known
    assert {unit for _, unit in MEASURING.values()} <= known


@pytest.mark.parametrize(("less", "more"), PAIRS)
@pytest.mark.parametrize("use", sorted(USES))
def test_what_must_be_less_is_less(less, more, use):
    low, high = usual(less, use), usual(more, use)
    if low and high:
        assert low.typical < high.typical


@pytest.mark.parametrize("use", sorted(USES))
def test_each_use_reads_sag_in_a_posture_that_it_has_shares_for(use):
    assert posture(use) == POSTURE[use]
    assert usual(f"rider front share {posture(use)}", use) is not None


def test_how_well_people_measure_is_positive_and_changes_are_told():
    assert all(amount > 0 for amount, _ in MEASURING.values())
    assert all(words.endswith(".") for words in MODIFIERS.values())


def test_fields_name_rows_that_exist_in_their_own_unit():
    for path, field in FIELDS.items():
        rows = {field.usual, field.default.row if field.default else None} - {None}
        for row in rows:
            assert row in ROWS or row in GENERAL, path
            unit = (GENERAL.get(row) or ROWS.get(row)).unit
            assert unit == field.unit or (field.percent_of and unit == "%"), path


@pytest.mark.parametrize("use", sorted(USES))
def test_ranges_of_the_trade_lie_inside_what_a_field_takes(use):
    for path, field in FIELDS.items():
        found = usual(field.usual, use) if field.usual else None
        if found and found.unit == field.unit and not (field.default and field.default.follow):
            assert field.low <= found.low, path
            assert found.high <= field.high, path


def test_kinds_of_riding_between_two_others_say_so_and_lie_between_them():
    assert set(BETWEEN) == {"supermoto", "dual-sport"}
    for use, others in BETWEEN.items():
        for row in ("bike mass", "travel front", "travel rear", "shock rate", "fork rate", "rider sag rear", "end multiple front"):
            found, ends = usual(row, use), sorted(usual(row, other).typical for other in others)
            assert ends[0] <= found.typical <= ends[1], (use, row)
            assert found.confidence == "L"
            assert "judged between" in found.note


LOADED_ROWS = [f"{row} {axle}" for row in ("rider sag", "free sag", "ride frequency", "end multiple") for axle in ("front", "rear")]


def test_adventure_loaded_is_two_up_and_two_up_with_nothing_carried_is_adventure():
    for row in LOADED_ROWS:
        assert usual(row, "adventure", True) == usual(row, "two-up") == usual(row, "two-up", True)
        assert usual(row, "two-up", False) == usual(row, "adventure") == usual(row, "adventure", False)


@pytest.mark.parametrize("use", sorted(set(USES) - {"adventure", "two-up"}))
def test_a_loaded_bike_may_top_out_alone_and_rides_slower(use):
    free = usual("free sag rear", use, True)
    assert (free.low, free.high, free.confidence) == (0, usual("free sag rear", use).high, "L")
    for row in LOADED_ROWS:
        solo, loaded = usual(row, use), usual(row, use, True)
        assert loaded.low <= loaded.typical <= loaded.high, row
        assert loaded.low <= solo.low, row
        assert loaded.typical <= solo.typical, row
        assert loaded.high == solo.high, row
    assert usual("ride frequency rear", use, True).low < usual("ride frequency rear", use).low
    assert usual("rider sag rear", use, True) == usual("rider sag rear", use)


def test_a_load_changes_what_a_bike_is_judged_by_and_not_what_it_is():
    for row in set(ROWS) - set(LOADED_ROWS):
        for use in USES:
            assert usual(row, use, True) == usual(row, use) == usual(row, use, False)


@pytest.mark.parametrize(("use", "carried", "loaded"), [
    ("road", None, False), ("road", "nothing", False), ("road", "luggage", True), ("enduro", "passenger", True), ("adventure", "both", True),
    ("two-up", None, True), ("two-up", "both", True), ("two-up", "nothing", False), ("road", "a dog", False),
])  # fmt: skip
def test_a_job_takes_the_targets_of_what_it_carries(use, carried, loaded):
    job = load(changed(start(use, "90 kg"), {"bike.carries": carried} if carried else {}))
    assert job.usual("free sag rear") == usual("free sag rear", use, loaded)
    assert job.fields["rear.rate"].usual == usual("shock rate", use)


def test_an_unknown_row_or_use_is_an_error():
    with pytest.raises(KeyError):
        usual("wheelie height", "road")
    with pytest.raises(KeyError):
        usual("rake", "sidecar")
