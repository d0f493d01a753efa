"""The limits of a field: an entry, or its +/-, within them or refused in words."""

from __future__ import annotations

from calc.job.field import Field, Kind
from calc.quantities.entry import Entry, EntryError, convert, convert_difference, internal_unit, read_entry


def plus_minus(field: Field, written: str, unit: str) -> float:
    """A written +/- as a 95 % half-width in the internal unit."""
    try:
        entry = read_entry(written, field.dimension, unit)
    except EntryError as error:
        raise EntryError(error.code, f"its +/-: {error.message}", error.readings) from error
    spread = convert_difference(entry.number, entry.unit, internal_unit(field.dimension))
    widest = convert_difference(field.high - field.low, field.unit, internal_unit(field.dimension))
    if not 0 <= spread <= widest:
        raise EntryError("range", f"its +/- must lie between 0 and {field.high - field.low:g} {field.unit}".rstrip())
    return spread


def internal(field: Field, entry: Entry) -> float:
    """An entry in its field's internal unit."""
    return convert(entry.number, entry.unit, internal_unit(field.dimension))


def within(field: Field, entry: Entry) -> None:
    """Refuse an entry beyond its field's limits."""
    number = convert(entry.number, entry.unit, field.unit)
    slack = 1e-9 * max(abs(field.low), abs(field.high))
    if not field.low - slack <= number <= field.high + slack:
        side = "below" if number < field.low else "above"
        limit = field.low if number < field.low else field.high
        raise EntryError(
            "range", f"{entry.number:g} {entry.unit}".rstrip() + f" is {side} the limit of {limit:g} {field.unit}".rstrip()
        )


def limit_words(field: Field) -> str:
    """A field's limits in words."""
    if field.kind is Kind.CHOICE:
        return ""
    if field.kind is Kind.PAIRS:
        return f"Pairs of {field.unit} and {field.second_unit}."
    return f"From {field.low:g} to {field.high:g} {field.unit}".rstrip() + "."
