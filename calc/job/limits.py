"""The limits of a field: an entry, or its +/-, within them or refused in words."""

from __future__ import annotations

from calc.job.field import Field, Kind
from calc.quantities.entry import Entry, EntryError, convert, convert_difference, internal_unit, read_entry


def plus_minus(field: Field, written: str, value: float, unit: str) -> float:
    """A written +/- as a 95 % half-width in the internal unit, beside a value [internal unit] that was entered in `unit`."""
    try:
        entry = read_entry(written, field.dimension, unit)
    except EntryError as error:
        raise EntryError(error.code, f"its +/-: {error.message}", error.readings) from error
    inside = internal_unit(field.dimension)
    spread = convert_difference(entry.number, entry.unit, inside)
    widest = (field.high - field.low) / 2.0
    if not 0 <= spread <= convert_difference(widest, field.unit, inside):
        raise EntryError("range", f"its +/- must lie between 0 and {widest:g} {field.unit}".rstrip())
    if field.low > 0 and spread > value:
        half, beside = (_told(convert_difference(number, inside, unit), unit) for number in (spread, value))
        raise EntryError("range", f"its +/- of {half} is more than the {beside} it stands beside")
    return spread


def internal(field: Field, entry: Entry) -> float:
    """An entry in its field's internal unit."""
    return convert(entry.number, entry.unit, internal_unit(field.dimension))


def within(field: Field, entry: Entry) -> None:
    """Refuse an entry beyond its field's limits."""
    between(entry, field.low, field.high, field.unit)


def between(entry: Entry, low: float, high: float, unit: str) -> None:
    """Refuse an entry beyond two limits [unit]."""
    number = convert(entry.number, entry.unit, unit)
    slack = 1e-9 * max(abs(low), abs(high))
    if not low - slack <= number <= high + slack:
        side, limit = ("below", low) if number < low else ("above", high)
        raise EntryError("range", f"{_told(entry.number, entry.unit)} is {side} the limit of {_told(limit, unit)}")


def limit_words(field: Field) -> str:
    """A field's limits in words."""
    if field.kind is Kind.CHOICE:
        return ""
    if field.kind is Kind.PAIRS:
        return f"Pairs of {field.unit} and {field.second_unit}."
    return span_words(field.low, field.high, field.unit)


def span_words(low: float, high: float, unit: str) -> str:
    """Two limits in words."""
    return f"From {low:g} to {_told(high, unit)}."


def _told(number: float, unit: str) -> str:
    return f"{number:g} {unit}".rstrip()
