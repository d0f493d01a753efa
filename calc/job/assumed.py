"""What stands in for a field that was not entered: the trade's range, a plain value, or what another field says."""

from __future__ import annotations

from dataclasses import replace

from calc.job.field import Default, Field
from calc.job.job import Resolved
from calc.job.ranges import Ranges
from calc.practice import Usual
from calc.quantities.entry import convert, convert_difference, internal_unit
from calc.quantities.reading import Origin, Reading, Spread


def assumed(blank: Resolved, ranges: Ranges, followed: Resolved | None, sold: str) -> Resolved:
    """What stands in for a field that was not entered; blank when nothing does."""
    field, default = blank.field, blank.field.default
    if default is None:
        return blank
    if default.choice is not None:
        return replace(blank, choice=default.choice_by_use.get(ranges.use, default.choice), origin="assumed", reason=default.reason)
    if default.by_choice:
        return _by_choice(blank, default, followed)
    number, half = default.value, default.plus_minus
    row = ranges.usual(default.row) if default.row else None
    if row is not None:
        number, half = row.typical, max(row.high - row.typical, row.typical - row.low)
        if default.times_high is not None:
            number, half = default.times_high * row.high, 0.0
    if sold and followed is not None:
        number, half, followed = _sold_with(followed, row, sold)
    if followed is not None:
        if followed.reading is None or (default.row and row is None):
            return blank
        number, half = _following(field, followed, followed.reading, number, half)
    if number is None:
        return blank
    return _stands_in(blank, number, half, Spread.RECTANGULAR, _reason(default.reason, followed))


def _following(field: Field, followed: Resolved, base: Reading, number: float | None, half: float) -> tuple[float, float]:
    """A distance from another field's reading, or a share of it, as a value and its half-width in the field's unit."""
    inside = internal_unit(followed.field.dimension)
    start = convert(base.value, inside, field.unit)
    if field.default is not None and field.default.share_of:
        assert number is not None
        return round(number / 100.0 * start, field.decimals), half / 100.0 * start
    return start + (number or 0.0), half + convert_difference(base.plus_minus_95, inside, field.unit)


def _sold_with(fitted: Resolved, row: Usual | None, sold: str) -> tuple[float | None, float, Resolved | None]:
    """What a bike was sold with against what is fitted: a distance and its half-width from it, or the row where it was changed."""
    if row is None:
        return 0.0, 0.0, fitted
    half = max(row.high - row.typical, row.typical - row.low)
    if sold == "changed":
        return row.typical, half, None
    return 0.0, (half if sold == "unknown" and fitted.entered else 0.0), fitted


def _by_choice(blank: Resolved, default: Default, followed: Resolved | None) -> Resolved:
    if followed is None or followed.choice not in default.by_choice:
        return blank
    number, half = default.by_choice[followed.choice]
    return _stands_in(blank, number, half, Spread.NORMAL, f"{followed.field.choices[followed.choice]}; {default.reason}")


def _stands_in(blank: Resolved, number: float, half: float, spread: Spread, reason: str) -> Resolved:
    unit, inside = blank.field.unit, internal_unit(blank.field.dimension)
    reading = Reading(convert(number, unit, inside), convert_difference(half, unit, inside), Origin.ASSUMED, spread)
    return replace(blank, number=number, plus_minus=half, origin="assumed", reading=reading, reason=reason)


def _reason(reason: str, followed: Resolved | None) -> str:
    return reason if followed is None else f"follows {followed.field.label.lower()}; {reason}"
