"""Job files as slips, other programs and ill will make them: whole jobs with some of their parts changed. Seeded.

Each starts as a job that is answered (a demo, a golden one, a new one, a random one) and has one to six of its parts spoilt: a
value, a unit, a text, a +/-, an origin, a type, a choice, a list, an own range, the header, a part left out or put in.
"""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from functools import lru_cache
from random import Random
from typing import Any

from calc.demo import jobs
from calc.job.field import Field, Kind
from calc.job.fields import FIELDS, GROUPS
from calc.job.ranges import widest
from calc.job.starter import start
from calc.practice import GENERAL, ROWS, USES
from calc.quantities.units import ALIASES, DIMENSIONS
from tests.support import bad_strings
from tests.support.documents import Document
from tests.support.golden.jobs import golden_jobs
from tests.support.random_jobs import random_job

QUANTITIES = [field for field in FIELDS.values() if field.kind is Kind.QUANTITY]
CHOICES = [field for field in FIELDS.values() if field.kind is Kind.CHOICE]
LISTS = [field for field in FIELDS.values() if field.kind in (Kind.RATES, Kind.PAIRS, Kind.SHIMS)]
RANGES = [*ROWS, *GENERAL]
UNITS = [unit for dimension in DIMENSIONS.values() for unit in dimension.units if unit]
SPELLED = sorted(ALIASES)
EXTREME = (0, -0.0, 1e-308, -1e-308, 1e-12, 1e12, 1e300, 1e308, -1e308, math.nan, math.inf, -math.inf, 10**40, -1)
OTHER_TYPES: tuple[Any, ...] = (
    None,
    True,
    False,
    [],
    [4],
    {},
    {"value": {}},
    {"valeu": 4},
    {"value": [4]},
    "",
    0,
    "null",
    [[]],
    {"value": None},
)
TEXTS = ("", "Ærlig", "\ud800", "a\x00b", "x" * 2001, "😀", "\u202e", None, 7, True, [], {}, "é" * 2000)


@lru_cache(maxsize=1)
def fixed() -> tuple[str, ...]:
    """The jobs that are always there, as JSON."""
    riders = {"youth": "50 kg"}
    new = [start(use, riders.get(use, "84 kg")) for use in USES]
    return tuple(json.dumps(job) for job in (*jobs().values(), *golden_jobs().values(), *new))


@lru_cache(maxsize=2)
def base(name: str) -> str:
    """A job that is answered, as JSON: one of those that are always there, or a random one."""
    rng = Random(name)
    return rng.choice(fixed()) if rng.random() < 0.4 else json.dumps(random_job(name, f"{name} front", f"{name} rear"))


def spoilt(name: str, number: int) -> Document:
    """The base of a name, spoilt one way or several; the same two give the same job on every machine.

    Neighbours share a base, so an end that is left alone is worked out once.
    """
    rng = Random(f"{name} {number}")
    document: Document = json.loads(base(name))
    for _ in range(rng.choice((1, 1, 1, 2, 2, 3, 4, 6))):
        (way,) = rng.choices(WAYS, WEIGHTS)
        way(rng, document)
    return document


def _put(document: Document, field: Field, entry: Any) -> None:
    group = document.setdefault(field.group, {})
    if isinstance(group, dict):
        group[field.key] = entry


def _entry(document: Document, field: Field) -> dict[str, Any]:
    group = document.get(field.group)
    entry = group.get(field.key) if isinstance(group, dict) else None
    return dict(entry) if isinstance(entry, dict) else {"value": entry, "origin": "stated"}


def _near(rng: Random, field: Field) -> float:
    """A number within a field's limits, often at one, or a little or far beyond them."""
    span = field.high - field.low
    return rng.choice((
        field.low, field.high, rng.uniform(field.low, field.high), rng.uniform(field.low, field.high), field.low + span * rng.random() ** 4,
        field.low - span * 1e-9, field.high * (1 + 1e-12), rng.uniform(field.low - span, field.high + span), rng.choice(EXTREME),
    ))  # fmt: skip


def _text(rng: Random, number: float) -> str:
    text = repr(number) if rng.random() < 0.3 else f"{number:.{rng.randrange(6)}f}"
    return text.replace(".", ",") if rng.random() < 0.3 else text


def value(rng: Random, document: Document) -> None:
    field = rng.choice(QUANTITIES)
    number = _near(rng, field)
    _put(
        document,
        field,
        number if rng.random() < 0.4 else f"{_text(rng, number)} {field.unit if rng.random() < 0.5 else ''}".strip(),
    )


def unit(rng: Random, document: Document) -> None:
    field = rng.choice(QUANTITIES)
    number = _entry(document, field).get("value")
    number = (
        "".join(c for c in str(number) if c in "0123456789.,-")
        if number is not None and rng.random() < 0.7
        else _text(rng, _near(rng, field))
    )
    own = list(DIMENSIONS[field.dimension].units)
    _put(document, field, f"{number}{rng.choice(('', ' '))}{rng.choice(rng.choice((own, own, UNITS, SPELLED)))}")


def text(rng: Random, document: Document) -> None:
    """A text of another kind, or the one that stands there with letters lost, doubled, swapped or put in."""
    field = rng.choice(list(FIELDS.values()))
    letters = list(str(_entry(document, field).get("value")))
    if rng.random() < 0.4:
        _put(document, field, rng.choice(bad_strings.ALL))
        return
    for _ in range(rng.randrange(1, 4)):
        at = rng.randrange(len(letters) + 1)
        letters[at : at + rng.randrange(3)] = rng.choice(
            ("", "0", "9", ",", ".", "-", "e", " ", "/", ";", "5 5", "\u00a0", "mm", "kg", chr(rng.randrange(0x110000)))
        )
    _put(document, field, "".join(letters))


def plus_minus(rng: Random, document: Document) -> None:
    field = rng.choice(QUANTITIES)
    entry = _entry(document, field)
    if entry.get("value") is None:
        entry["value"] = rng.uniform(field.low, field.high)
    span = field.high - field.low
    half = rng.choice(
        (0, span * rng.random() ** 3, span * rng.random() ** 3, span * rng.random(), span, span * 1.01, -span, *EXTREME)
    )
    entry["plus_minus_95"] = rng.choice(
        (half, half, _text(rng, half), f"{half} {field.unit}", f"{half} {rng.choice(UNITS)}", rng.choice(bad_strings.ALL))
    )
    _put(document, field, entry)


def origin(rng: Random, document: Document) -> None:
    field = rng.choice(list(FIELDS.values()))
    entry = _entry(document, field)
    entry["origin"] = rng.choice(("measured", "stated", "assumed", "measured", "stated", "assumed", "guessed", None, 7, ""))
    _put(document, field, entry)


def other_type(rng: Random, document: Document) -> None:
    if rng.random() < 0.1:
        document[rng.choice(GROUPS)] = rng.choice(OTHER_TYPES)
    else:
        _put(document, rng.choice(list(FIELDS.values())), rng.choice(OTHER_TYPES))


def left_out(rng: Random, document: Document) -> None:
    groups = [key for key in GROUPS if isinstance(document.get(key), dict) and document[key]]
    if not groups or rng.random() < 0.05:
        document.pop(rng.choice(list(document)), None) if document else None
        return
    group = rng.choice(groups)
    if rng.random() < 0.1:
        del document[group]
        return
    for key in rng.sample(sorted(document[group]), rng.randrange(1, len(document[group]) + 1)):
        del document[group][key]


def put_in(rng: Random, document: Document) -> None:
    holder = document if rng.random() < 0.3 else document.get(rng.choice(GROUPS))
    if isinstance(holder, dict):
        holder[rng.choice(("rate2", "note", "value", "", "\ud800", "practice", "x" * 300))] = rng.choice(OTHER_TYPES)


def choice(rng: Random, document: Document) -> None:
    field = rng.choice(CHOICES)
    wrong = rng.choice((*bad_strings.ALL, "x", "Yes", 1, 2, 1.0, "both ", *field.choices))
    _put(document, field, rng.choice(list(field.choices)) if rng.random() < 0.8 else wrong)


def several_choices(rng: Random, document: Document) -> None:
    for _ in range(rng.randrange(2, 8)):
        choice(rng, document)


def listed(rng: Random, document: Document) -> None:
    field = rng.choice(LISTS)
    many = rng.choice((0, 1, 2, 5, 6, 9, 41))
    if field.kind is Kind.RATES:
        between = rng.choice((" ", "; ", ";", ", ", "/", "\n", ";;"))
        _put(document, field, between.join(_text(rng, _near(rng, field)) for _ in range(many)))
        return
    rise = (field.high - field.low) / max(many, 1)
    pairs = [
        (i * rise * rng.choice((1, 1, rng.random())), rng.uniform(field.second_low, field.second_high) * rng.choice((1, 0.01)))
        for i in range(many)
    ]
    pairs = (
        pairs
        if rng.random() < 0.5
        else [(first, field.second_low + (field.second_high - field.second_low) * i / 50) for i, (first, _) in enumerate(pairs)]
    )
    _put(
        document,
        field,
        rng.choice(("; ", "\n", ";", ", ")).join(
            f"{first:.{rng.randrange(4)}f} {second:.{rng.randrange(4)}f}" for first, second in pairs
        ),
    )


def own_range(rng: Random, document: Document) -> None:
    row = rng.choice(RANGES)
    low, high = widest(row)
    points = sorted(
        rng.choice((0, low, high, rng.uniform(low, high), rng.uniform(0, 2 * high), high * 10, -high, 100)) for _ in range(3)
    )
    numbers: list[Any] = rng.choice(
        (points, points, points, [points[0]] * 3, [rng.choice(EXTREME) for _ in range(3)], rng.choices(bad_strings.ALL, k=3))
    )
    if numbers is points and rng.random() < 0.2:
        numbers = [f"{number:g} {rng.choice(UNITS)}" for number in points]
    entry: Any = dict(zip(("low", "typical", "high"), numbers, strict=True))
    if rng.random() < 0.1:
        entry.pop(rng.choice(list(entry)))
    if rng.random() < 0.05:
        entry = rng.choice(OTHER_TYPES)
    practice = document.setdefault("practice", {})
    if isinstance(practice, dict):
        practice[row if rng.random() < 0.97 else "gpa"] = entry


def header(rng: Random, document: Document) -> None:
    key = rng.choice(("name", "date", "note", "invented", "format", "version", "name", "note"))
    document[key] = rng.choice((*TEXTS, 0, 1, 2, 1.0, 10**400, -1, "stanchion-job"))


Way = Callable[[Random, Document], None]
SPOILS: dict[Way, float] = {
    value: 6, unit: 3, text: 3, plus_minus: 4, origin: 1, other_type: 0.4, left_out: 2, put_in: 0.2, choice: 4, several_choices: 3, listed: 2, own_range: 3, header: 0.4,
}  # fmt: skip
WAYS, WEIGHTS = list(SPOILS), list(SPOILS.values())
