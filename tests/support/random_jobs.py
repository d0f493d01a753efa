"""Random valid jobs, built from the declared fields: most of them a bike that could be, some of them wild. Seeded."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import Any

from calc.job import fields
from calc.job.field import Field, Kind, Part
from calc.practice import USES, Usual, usual
from tests.support import random_parts as parts
from tests.support.documents import Document, changed

# Sags found correct the readings that the checks read back; tests/whole/test_random_sags.py draws them apart.
# So do marks of a ride, tests/whole/test_ride.py; a bench push, tests/whole/test_push_verdicts.py; a tester's points, test_tester.py; an oil's sheet, test_oil_report.py;
# dampers, tests/unit/report/test_damping_report.py.
APART = {f"{axle}.{key}" for axle in ("front", "rear") for key in ("tester", "tester_error")}
PARTS_APART = (Part.FOUND, Part.RIDE, Part.PUSH, Part.SHEET, Part.DAMPING)
FIELDS = {path: field for path, field in fields.FIELDS.items() if field.part not in PARTS_APART and path not in APART}
WILD = 0.25  # of the jobs have a few entries anywhere between their limits
KEPT = 0.45  # how often a field that an assumed value could stand in for is entered
# How often a choice is drawn from all of its own, not left as it is; 0.2 where nothing is said.
ODD = {
    "front.air": 0.45, "front.cartridge_fill": 0.8, "front.cartridge_state": 0.75, "front.leak_bled": 0.6, "front.spring_kind": 0.7, "rear.spring_kind": 0.65,
    "rear.motion_from": 0.7, "rear.linkage": 0.6, "front.grade": 0.6, "rear.grade": 0.6,
}  # fmt: skip


def random_job(bike: str, front: str, rear: str) -> Document:
    """A job whose every entry lies within its field's limits; the same three seeds give the same job.

    What both ends share comes from the first seed, each end's own entries from its own: a bike with another fork in it.
    """
    use = Random(bike).choice(list(USES))
    by_end = {"both": _entries(bike, use), "front": _entries(front, use), "rear": _entries(rear, use)}
    drawn = {path: value for end, entries in by_end.items() for path, value in entries.items() if FIELDS[path].end == end}
    header = {"format": "stanchion-job", "version": 1, "name": f"Drawn {bike}, {front}, {rear}"}
    return changed(header, {"bike.use": use} | drawn)


@lru_cache(maxsize=16)  # the jobs of one bike share most of theirs
def _entries(seed: str, use: str) -> dict[str, Any]:
    rng = Random(seed)
    chosen = _choices(rng, use)
    drawn = {path: key for path, key in chosen.items() if key != _default(FIELDS[path], use) or rng.random() < 0.1}
    numbers = _numbers(rng, use, chosen)
    return drawn | {
        path: number if isinstance(number, str) else _typed(rng, FIELDS[path], number) for path, number in numbers.items()
    }


def _default(field: Field, use: str) -> str:
    default = field.default
    return "" if default is None or default.choice is None else default.choice_by_use.get(use, default.choice)


def _choices(rng: Random, use: str) -> dict[str, str]:
    """Every choice of a job: most as they are when nothing is entered, the kinds often otherwise."""
    chosen = {"bike.use": use}
    for path, field in FIELDS.items():
        if field.kind is Kind.CHOICE and path != "bike.use":
            other = rng.random() < ODD.get(path, 0.2)
            chosen[path] = rng.choice([key for key in field.choices if key != "tester"]) if other else _default(field, use)
    return chosen


def _applies(field: Field, chosen: dict[str, str]) -> bool:
    return all(chosen[path] in allowed for path, allowed in field.when.items())


def _numbers(rng: Random, use: str, chosen: dict[str, str]) -> dict[str, Any]:
    """Quantities in their fields' units, and lists as text."""
    plain = {path: field for path, field in FIELDS.items() if field.kind is Kind.QUANTITY and _applies(field, chosen)}
    typical: dict[str, float] = {}
    for path in FIELDS:  # follows may point ahead, so each is worked out when it is asked for
        _typical(rng, path, use, chosen, typical)
    numbers = {path: typical[path] for path, field in plain.items() if field.default is not None and rng.random() < KEPT}
    numbers |= {path: numbers.get(path, typical[path]) for path in ("rider.mass", "front.travel", "rear.travel")}
    numbers |= parts.together(rng, chosen, typical, numbers)
    if rng.random() < WILD:
        for path in rng.sample(sorted(plain), 4):
            numbers[path] = rng.uniform(plain[path].low, plain[path].high)
    return {path: number for path, number in numbers.items() if path in plain or isinstance(number, str)}


def _typical(rng: Random, path: str, use: str, chosen: dict[str, str], known: dict[str, float]) -> float:
    """A plausible number for a quantity, in its field's unit: from its range of the trade, its default, or what it follows."""
    if path in known:
        return known[path]
    field = FIELDS[path]
    default, row = field.default, _row(field, use)
    if field.kind is not Kind.QUANTITY:
        return math.nan
    number = rng.uniform(field.low, field.high)
    if default is not None and default.share_of:
        number = _from(rng, row) / 100.0 * _typical(rng, default.share_of, use, chosen, known)
    elif default is not None and default.by_choice and chosen[str(default.follow)] in default.by_choice:
        middle, half = default.by_choice[chosen[str(default.follow)]]
        number = middle + half * rng.uniform(-1, 1)
    elif default is not None and default.follow and not default.by_choice:
        base = _typical(rng, default.follow, use, chosen, known)
        number = base + _from(rng, row) if default.row else base * rng.uniform(0.97, 1.03) + (default.value or 0.0)
    elif row is not None:
        number = _from(rng, row)
    elif default is not None and default.value is not None:
        number = default.value + (default.plus_minus or 0.1 * abs(default.value)) * rng.uniform(-1, 1)
    known[path] = min(max(number, field.low), field.high)
    return known[path]


def _row(field: Field, use: str) -> Usual | None:
    name = (field.default.row if field.default else None) or field.usual
    row = usual(name, use) if name else None
    own = field.default is not None and field.default.row is not None
    if (
        row is None
        or not (own or row.unit == field.unit)
        or (not own and field.default is not None and field.default.value is not None)
    ):
        return None
    times = field.default.times_high if field.default else None
    return row if times is None else replace(row, low=times * row.high, typical=times * row.high, high=2 * times * row.high)


def _from(rng: Random, row: Usual | None) -> float:
    """From a range of the trade, its typical value the likeliest; the middle of nothing where this use has none."""
    return 0.0 if row is None else rng.triangular(row.low, row.high, row.typical)


def _typed(rng: Random, field: Field, number: float) -> Any:
    """As someone might type it: more or fewer decimals, comma or point, sometimes with a +/- and an origin."""
    text = f"{min(max(round(number, field.decimals + rng.choice((0, 1, 3))), field.low), field.high):.6f}".rstrip("0").rstrip(".")
    whole, _, part = text.partition(".")
    text = f"{whole},{part}" if part and len(part) != 3 and rng.random() < 0.1 else text
    text = f"{text} {field.unit}".rstrip() if rng.random() < 0.5 else text
    if field.decision or rng.random() < 0.8:
        return text
    half = rng.uniform(0.0, 2.0) * (field.plus_minus + field.plus_minus_relative * abs(number))
    return {"value": text, "plus_minus_95": f"{half:.4f}", "origin": rng.choice(("measured", "stated", "assumed"))}
