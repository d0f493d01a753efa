"""From entries to readings: what was entered is read, what was not is assumed and marked so."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from graphlib import TopologicalSorter
from typing import Any

from calc.job.assumed import assumed
from calc.job.document import entries, parse_header
from calc.job.field import Field, Kind
from calc.job.fields import FIELDS
from calc.job.job import DRAWS, MAX_DRAWS, MIN_DRAWS, Job, Resolved
from calc.job.limits import internal, limit_words, other_units, plus_minus, within
from calc.job.lists import MOST, listed, read_pairs
from calc.job.offer import read_offer
from calc.job.problem import Problem
from calc.job.ranges import NO_RANGES, Ranges, read_ranges
from calc.job.shape import JobError
from calc.job.shims import read_groups
from calc.job.work import ticks
from calc.practice import posture
from calc.quantities.entry import Entry, EntryError, convert, convert_difference, internal_unit, read_entry
from calc.quantities.reading import Origin, Reading

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
        raise JobError(f"draws must be a whole number from {MIN_DRAWS} to {MAX_DRAWS}, not {str(draws)[:20]}.")
    assert isinstance(document, Mapping)
    given = entries(document)
    ranges, range_problems = read_ranges(document, _chosen(given, "bike.use"), _loaded(given))
    fields = _read(given, ranges)
    refused = {path: found for path, found in fields.items() if found.problem and not found.applies}
    if refused:  # what is out of use stops nothing: its default stands in, and what was typed is kept
        usable = _read({path: entry for path, entry in given.items() if path not in refused}, ranges)
        fields = usable | {path: _kept(usable[path], found) for path, found in refused.items()}
    offer = read_offer(document.get("offer"), read_alone)
    made, done = Job(header, fields, draws=draws, ranges=ranges, range_problems=range_problems), ticks(document)
    return replace(made, ticks=done, offer=offer)


def read_alone(field: Field, text: str) -> Resolved:
    """What stands for a field somewhere else in the job, read by the field's own declaration."""
    return _resolve(field, (("value", text), ("origin", "stated")), NO_RANGES, None)


def _read(given: Mapping[str, Mapping[str, Any]], ranges: Ranges) -> dict[str, Resolved]:
    """Every field by path, read or assumed."""
    resolved: dict[str, Resolved] = {}
    for path, field, follows, sold in _IN_ORDER:
        base = None if follows is None else resolved[follows]
        resolved[path] = _resolve(field, _key(given.get(path)), ranges, base, "" if sold is None else resolved[sold].choice)
    ordered = {path: resolved[path] for path in FIELDS}
    return ordered | {path: _idle(found) for path, found in ordered.items() if not _applies(found.field, ordered, given)}


@lru_cache(maxsize=64)
def _kept(usable: Resolved, refused: Resolved) -> Resolved:
    """A field that is out of use, with what was typed into it and why that is refused, for when it comes into use."""
    if usable.applies:
        return replace(refused, applies=True)
    return replace(usable, entered=True, text=refused.text, note=refused.note, problem=refused.problem)


@lru_cache(maxsize=2048)
def _idle(found: Resolved) -> Resolved:
    return replace(found, applies=False)


def _chosen(given: Mapping[str, Mapping[str, Any]], path: str) -> str:
    """The key of a choice as entered; empty where it is none."""
    chosen = given.get(path, {}).get("value")
    return chosen if isinstance(chosen, str) and chosen in FIELDS[path].choices else ""


def _loaded(given: Mapping[str, Mapping[str, Any]]) -> bool | None:
    """Whether a passenger or luggage is named; None where nothing is said."""
    carried = _chosen(given, "bike.carries")
    return carried != "nothing" if carried else None


def _follows(field: Field) -> str | None:
    """The path whose value an assumed value is made from, or an entry in % is a part of."""
    made_from = (field.default.follow or field.default.share_of) if field.default else None
    return made_from or field.percent_of or None


def _as_sold(field: Field) -> str | None:
    """The path of the choice that says whether what is followed is as it was sold."""
    return field.default.as_sold if field.default else None


def _in_order() -> list[tuple[str, Field, str | None, str | None]]:
    """The fields by path, each after those that it follows."""
    order = TopologicalSorter({path: filter(None, [_follows(field), _as_sold(field)]) for path, field in FIELDS.items()})
    return [(path, FIELDS[path], _follows(FIELDS[path]), _as_sold(FIELDS[path])) for path in order.static_order()]


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
def _resolve(field: Field, written: _EntryKey | None, ranges: Ranges, base: Resolved | None, sold: str = "") -> Resolved:
    range_ = ranges.usual(field.usual) if field.usual else None
    blank = Resolved(field, True, unit=field.unit, usual=range_)
    if written is None:
        if field.path == "bike.use":
            return replace(blank, problem=Problem(field.path, "missing", f"{field.label} is not chosen.", way_out="Choose one."))
        return assumed(blank, ranges, base, sold)
    entry = dict(written)
    text = entry["value"]
    filled = replace(blank, entered=True, text=text, origin=entry.get("origin") or field.typed, note=entry.get("note", ""))
    try:
        return _entered(filled, entry, base)
    except EntryError as error:
        return replace(filled, problem=_refusal(filled, error, base))


def _entered(blank: Resolved, entry: Mapping[str, str], base: Resolved | None) -> Resolved:
    kind = blank.field.kind
    if kind is Kind.CHOICE:
        return _read_choice(blank)
    if kind is Kind.RATES:
        return _read_rates(blank)
    if kind is Kind.PAIRS:
        return replace(blank, pairs=read_pairs(blank.field, blank.text))
    if kind is Kind.SHIMS:
        return replace(blank, groups=read_groups(blank.field, blank.text))
    return _read_quantity(blank, entry, base)


def _refusal(blank: Resolved, error: EntryError, base: Resolved | None) -> Problem:
    """Why an entry is refused. What is offered instead is read first, so that an offer is always taken."""
    field, message = blank.field, error.message
    offers = tuple(text for text in error.readings if _can_be_read(blank, text, base))
    if error.readings and not offers:
        message = f"{' and '.join(error.readings)} {'lies' if len(error.readings) == 1 else 'both lie'} outside its limits"
    way_out = field.pair if error.code == "pair" else ""
    return Problem(field.path, error.code, f"{field.label}: {message}.", limit_words(field), offers, way_out, field.end)


def _can_be_read(blank: Resolved, text: str, base: Resolved | None) -> bool:
    try:
        _entered(replace(blank, text=text), {}, base)
    except EntryError:
        return False
    return True


def _read_choice(blank: Resolved) -> Resolved:
    if blank.text not in blank.field.choices:
        raise EntryError("choice", f"{blank.text[:40]!r} is not one of {', '.join(blank.field.choices)}")
    return replace(blank, choice=blank.text)


def _read_rates(blank: Resolved) -> Resolved:
    field = blank.field
    parts = listed(blank.text)
    if not 1 <= len(parts) <= MOST:
        raise EntryError("empty" if not parts else "long", f"enter 1 to {MOST} rates")
    read = []
    for part in parts:
        try:
            read.append(read_entry(part, field.dimension, field.unit))
        except EntryError as error:
            whole = tuple(blank.text.replace(part, reading, 1) for reading in error.readings)
            raise EntryError(error.code, f"{part[:20]}: {error.message}", whole) from error
        within(field, read[-1])
    return replace(blank, rates=tuple(sorted({internal(field, entry) for entry in read})))


def _read_quantity(blank: Resolved, given: Mapping[str, str], base: Resolved | None) -> Resolved:
    field = blank.field
    entry = (
        _part_of(base, blank)
        if field.percent_of and _in_percent(blank.text)
        else read_entry(blank.text, field.dimension, field.unit)
    )
    try:
        within(field, entry)
    except EntryError as error:
        bare = blank.text.strip()[-1:] in "0123456789,."
        raise EntryError(error.code, error.message, other_units(field, entry) if bare else ()) from error
    value, unit = internal(field, entry), entry.unit
    written = given.get("plus_minus_95")
    if written is None:
        spread = convert_difference(field.plus_minus, field.unit, internal_unit(field.dimension)) + field.plus_minus_relative * abs(
            value
        )
    else:
        spread = plus_minus(field, written, value, unit)
    shown = convert_difference(spread, internal_unit(field.dimension), unit)
    return replace(blank, number=entry.number, unit=unit, plus_minus=shown, reading=Reading(value, spread, Origin(blank.origin)))


def _in_percent(text: str) -> bool:
    return text.rstrip().lower().endswith(("%", "percent"))


def _part_of(whole: Resolved | None, blank: Resolved) -> Entry:
    """An entry in % of another field's value, in the field's own unit."""
    share = read_entry(blank.text, "share", "%")
    if whole is None or whole.reading is None:
        raise EntryError("percent", "what this is a part of is not known")
    field = blank.field
    return Entry(share.number / 100.0 * convert(whole.reading.value, internal_unit(field.dimension), field.unit), field.unit)
