"""From entries to readings: what was entered is read, what was not is assumed and marked so."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from graphlib import TopologicalSorter
from typing import Any

from calc.job.document import JobError, entries, parse_header
from calc.job.field import Default, Field, Kind
from calc.job.fields import FIELDS
from calc.job.job import DRAWS, MAX_DRAWS, MIN_DRAWS, Job, Resolved
from calc.job.limits import internal, limit_words, plus_minus, within
from calc.job.lists import MOST, listed, read_pairs
from calc.job.problem import Problem
from calc.job.ranges import Ranges, read_ranges
from calc.practice import posture
from calc.quantities.entry import EntryError, convert, convert_difference, internal_unit, read_entry
from calc.quantities.reading import Origin, Reading, Spread

_SHARES = ("rider.front_share_sitting", "rider.front_share_standing")


def load(document: object, draws: int = DRAWS) -> Job:
    """Read a job document.

    Parameters: document, what a JSON reader returned; draws behind each +/- [-], 20 to 10 000.
    Returns: Job with every declared field resolved; refused entries are listed in `problems`.
    Raises: JobError when the document is not a job at all, or for another number of draws.
    Formula: none.
    Source: the job file's definition in `calc.job.document`; assumed values from `calc.practice`.
    Example:
        >>> job = load({"format": "stanchion-job", "version": 1, "bike": {"use": "enduro"}, "rider": {"mass": "104 kg"}})
        >>> job.value("rider.mass"), job.fields["front.travel"].origin, job.value("front.travel")
        (104.0, 'assumed', 300.0)
    """
    header = parse_header(document)
    if type(draws) is not int or not MIN_DRAWS <= draws <= MAX_DRAWS:
        raise JobError(f"draws: a whole number from {MIN_DRAWS} to {MAX_DRAWS} is wanted, {str(draws)[:20]} is none.")
    assert isinstance(document, Mapping)
    given = entries(document)
    ranges, range_problems = read_ranges(document, _use(given))
    resolved: dict[str, Resolved] = {}
    for path, field, follows in _IN_ORDER:
        base = None if follows is None else resolved[follows]
        resolved[path] = _resolve(field, _key(given.get(path)), ranges, base)
    ordered = {path: resolved[path] for path in FIELDS}
    idle = {path: _idle(found) for path, found in ordered.items() if not _applies(found.field, ordered, given)}
    return Job(header, ordered | idle, draws=draws, ranges=ranges, range_problems=range_problems)


@lru_cache(maxsize=2048)
def _idle(found: Resolved) -> Resolved:
    return replace(found, applies=False)


def _use(given: Mapping[str, Mapping[str, Any]]) -> str:
    chosen = given.get("bike.use", {}).get("value")
    return chosen if isinstance(chosen, str) and chosen in FIELDS["bike.use"].choices else ""


def _follows(field: Field) -> str | None:
    """The path whose value an assumed value is made from."""
    return (field.default.follow or field.default.share_of) if field.default else None


def _in_order() -> list[tuple[str, Field, str | None]]:
    """The fields by path, each after the one that it follows."""
    order = TopologicalSorter({path: filter(None, [_follows(field)]) for path, field in FIELDS.items()})
    return [(path, FIELDS[path], _follows(FIELDS[path])) for path in order.static_order()]


_IN_ORDER = _in_order()

_EntryKey = tuple[tuple[str, str], ...]


def _key(entry: Mapping[str, Any] | None) -> _EntryKey | None:
    return None if entry is None else tuple((key, str(value)) for key, value in entry.items() if value is not None)


def _applies(field: Field, resolved: Mapping[str, Resolved], given: Mapping[str, Any]) -> bool:
    if field.path in _SHARES:
        return _share_applies(field, resolved, given)
    for path, allowed in field.when.items():
        if resolved[path].choice not in allowed:
            return False
    if field.idle and all(resolved[path].choice in choices for path, choices in field.idle.items()):
        return False
    superseded = field.unless and any(all(path in given for path in group) for group in field.unless)
    waits = field.needs and not any(path in given for path in field.needs)
    if superseded or waits:
        return False
    practised = field.usual is not None and field.default is not None and field.default.row is not None
    return not practised or field.path in given or resolved[field.path].reading is not None


def _share_applies(field: Field, resolved: Mapping[str, Resolved], given: Mapping[str, Any]) -> bool:
    """A usual share stands in for scales, or carries scale readings over from another posture."""
    use = resolved["bike.use"].choice
    if not use or resolved[field.path].reading is None:
        return False
    if "rider.front_axle" in given or "rider.rear_axle" in given:
        return resolved["rider.posture"].choice != posture(use)
    return field.path == f"rider.front_share_{posture(use)}"


@lru_cache(maxsize=2048)  # an edit changes one field: the others come from here
def _resolve(field: Field, written: _EntryKey | None, ranges: Ranges, base: Resolved | None) -> Resolved:
    range_ = ranges.usual(field.usual) if field.usual else None
    blank = Resolved(field, True, unit=field.unit, usual=range_)
    if written is None:
        if field.path == "bike.use":
            return replace(
                blank, problem=Problem(field.path, "missing", f"{field.label}: say what kind of riding.", way_out="Choose one.")
            )
        return _assumed(blank, ranges, base)
    entry = dict(written)
    text = entry["value"]
    filled = replace(blank, entered=True, text=text, origin=entry.get("origin") or field.typed, note=entry.get("note", ""))
    try:
        if field.kind is Kind.CHOICE:
            return _read_choice(filled)
        if field.kind is Kind.RATES:
            return _read_rates(filled)
        if field.kind is Kind.PAIRS:
            return replace(filled, pairs=read_pairs(field, text))
        return _read_quantity(filled, entry)
    except EntryError as error:
        message = f"{field.label}: {error.message}."
        return replace(filled, problem=Problem(field.path, error.code, message, limit_words(field), error.readings, end=field.end))


def _read_choice(blank: Resolved) -> Resolved:
    if blank.text not in blank.field.choices:
        raise EntryError("choice", f"{blank.text[:40]!r} is not one of {', '.join(blank.field.choices)}")
    return replace(blank, choice=blank.text)


def _read_rates(blank: Resolved) -> Resolved:
    field = blank.field
    parts = listed(blank.text)
    if not 1 <= len(parts) <= MOST:
        raise EntryError("empty" if not parts else "long", f"name 1 to {MOST} rates")
    read = []
    for part in parts:
        try:
            read.append(read_entry(part, field.dimension, field.unit))
        except EntryError as error:
            whole = tuple(blank.text.replace(part, reading, 1) for reading in error.readings)
            raise EntryError(error.code, f"{part[:20]}: {error.message}", whole) from error
        within(field, read[-1])
    return replace(blank, rates=tuple(sorted({internal(field, entry) for entry in read})))


def _read_quantity(blank: Resolved, given: Mapping[str, str]) -> Resolved:
    field = blank.field
    entry = read_entry(blank.text, field.dimension, field.unit)
    within(field, entry)
    value, unit = internal(field, entry), entry.unit
    written = given.get("plus_minus_95")
    if written is None:
        spread = convert_difference(field.plus_minus, field.unit, internal_unit(field.dimension)) + field.plus_minus_relative * abs(
            value
        )
    else:
        spread = plus_minus(field, written, unit)
    shown = convert_difference(spread, internal_unit(field.dimension), unit)
    return replace(blank, number=entry.number, unit=unit, plus_minus=shown, reading=Reading(value, spread, Origin(blank.origin)))


def _assumed(blank: Resolved, ranges: Ranges, followed: Resolved | None) -> Resolved:
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
    if followed is not None:
        if followed.reading is None or (default.row and row is None):
            return blank
        start = convert(followed.reading.value, internal_unit(followed.field.dimension), field.unit)
        if default.share_of:
            assert number is not None
            number, half = round(number / 100.0 * start, field.decimals), half / 100.0 * start
        else:
            own = convert_difference(followed.reading.plus_minus_95, internal_unit(followed.field.dimension), field.unit)
            number, half = start + (number or 0.0), half + own
    if number is None:
        return blank
    return _stands_in(blank, number, half, Spread.RECTANGULAR, _reason(default.reason, followed))


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
