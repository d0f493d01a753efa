"""The limits of a field: an entry, or its +/-, within them or refused in words."""

from __future__ import annotations

from calc.job.field import Field, Kind
from calc.quantities.entry import Entry, EntryError, convert, convert_difference, internal_unit, read_entry
from calc.quantities.units import DIMENSIONS

_NEVER_BARE = {"1", "km", "GPa", "MPa", "K", "rad"}  # nobody leaves these out
_SMALLEST = 0.05  # of the field's unit: nobody takes altitudes in inches
TRADE = {"kgf/mm": "kg/mm", "lbf/in": "lb/in"}  # what is written on a spring; common practice, no source


def plus_minus(field: Field, written: str, value: float, unit: str) -> float:
    """A written +/- as a 95 % half-width in the internal unit, beside a value [internal unit] that was entered in `unit`."""
    try:
        entry = read_entry(written, field.dimension, unit)
    except EntryError as error:
        offers = f": {' or '.join(error.readings)}" if error.readings else ""  # in words: an offer would take the value's place
        raise EntryError(error.code, f"its +/-: {error.message}{offers}") from error
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
        digits = next((d for d in range(6, 17) if f"{number:.{d}g}" != f"{limit:.{d}g}"), 17)
        raise EntryError("range", f"{_told(entry.number, entry.unit, digits)} is {side} the limit of {_told(limit, unit)}")


def other_units(field: Field, entry: Entry) -> tuple[str, ...]:
    """A bare number beyond its field's limits, written in the units that would bring it within them."""
    offers = []
    for unit in DIMENSIONS[field.dimension].units:
        usable = unit and unit not in _NEVER_BARE and convert_difference(1.0, unit, field.unit) >= _SMALLEST
        if usable and field.low <= convert(entry.number, unit, field.unit) <= field.high:
            offers.append(f"{entry.number:.12g} {TRADE.get(unit, unit)}")
    return tuple(offers[:3])


def limit_words(field: Field) -> str:
    """A field's limits in words."""
    if field.kind is Kind.CHOICE:
        return ""
    if field.kind is Kind.SHIMS:
        return "Groups of how many, outside diameter and thickness in mm."
    if field.kind is Kind.PAIRS:
        return f"Pairs of {field.unit} and {field.second_unit}."
    return span_words(field.low, field.high, field.unit)


def span_words(low: float, high: float, unit: str) -> str:
    """Two limits in words."""
    return f"From {low:g} to {_told(high, unit)}."


def _told(number: float, unit: str, digits: int = 6) -> str:
    return f"{number:.{digits}g} {unit}".rstrip()
