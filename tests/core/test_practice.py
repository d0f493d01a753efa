"""The practice tables make sense in themselves. They are common practice, so there is no source to hold them to."""

import pytest

from calc.job.fields import FIELDS
from calc.practice import GENERAL, MEASURING, MODIFIERS, POSTURE, ROWS, USES, posture, usual
from calc.quantities.units import DIMENSIONS

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
            assert unit == field.unit or (field.default.share_of and unit == "%"), path


@pytest.mark.parametrize("use", sorted(USES))
def test_ranges_of_the_trade_lie_inside_what_a_field_takes(use):
    for path, field in FIELDS.items():
        found = usual(field.usual, use) if field.usual else None
        if found and found.unit == field.unit and not field.default.follow:
            assert field.low <= found.low, path
            assert found.high <= field.high, path


def test_an_unknown_row_or_use_is_an_error():
    with pytest.raises(KeyError):
        usual("wheelie height", "road")
    with pytest.raises(KeyError):
        usual("rake", "sidecar")
