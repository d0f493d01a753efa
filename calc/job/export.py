"""The declared fields for the page: as JSON and as TypeScript types, so that no field is written twice."""

from __future__ import annotations

import json
from typing import Any

from calc.job.customer import NOTE
from calc.job.document import FORMAT, ORIGINS, VERSION
from calc.job.field import Field, Part
from calc.job.fields import FIELDS, GROUPS
from calc.job.text import LONGEST
from calc.practice import GENERAL, POSTURE, ROWS, USES, Usual, usual
from calc.quantities.entry import MAX_CHARACTERS
from calc.quantities.units import DIMENSIONS

# What most fields are stands once: written out for each, it was a quarter of what the page loads before its first screen.
COMMON: dict[str, Any] = {
    "kind": "quantity",
    "dimension": "length",
    "unit": "mm",
    "low": 0,
    "high": 0,
    "step": 1,
    "decimals": 0,
    "plus_minus": 0,
    "choices": [],
    "main": False,
    "optional": True,
    "end": "front",
    "typed": "measured",
    "percent_of": "",
}


def schema() -> dict[str, Any]:
    """All declared fields, groups, units and uses, as plain data."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "max_characters": MAX_CHARACTERS,
        "longest_file": LONGEST,
        "groups": list(GROUPS),
        "parts": [part.value for part in Part],
        "origins": list(ORIGINS),
        "customers": NOTE,
        "uses": [{"key": key, "label": label, "posture": POSTURE[key]} for key, label in USES.items()],
        "units": {name: [unit for unit in dimension.units if unit] for name, dimension in DIMENSIONS.items()},
        "ranges": _ranges(),
        "common": COMMON,
        "fields": {path: _field(field) for path, field in FIELDS.items()},
    }


def _ranges() -> dict[str, Any]:
    """Every row of practice: its unit and [low, high, typical, confidence] by use, or for every use."""
    by_use = {row: {"unit": found.unit, "by_use": {use: _cell(usual(row, use)) for use in USES}} for row, found in ROWS.items()}
    return by_use | {row: {"unit": found.unit, "always": _cell(found)} for row, found in GENERAL.items()}


def _cell(found: Usual | None) -> list[float | str] | None:
    return None if found is None else [found.low, found.high, found.typical, found.confidence]


def _field(field: Field) -> dict[str, Any]:
    """What a field has other than COMMON."""
    whole = {
        "label": field.label,
        "part": field.part.value,
        "kind": field.kind.value,
        "dimension": field.dimension,
        "unit": field.unit,
        "low": field.low,
        "high": field.high,
        "step": field.step,
        "decimals": field.decimals,
        "plus_minus": field.plus_minus,
        "choices": [{"key": key, "label": label} for key, label in field.choices.items()],
        "main": field.main,
        "optional": field.optional,
        "end": field.end,
        "typed": field.typed,
        "how": field.how,
        "percent_of": field.percent_of,
    }
    return {key: value for key, value in whole.items() if key not in COMMON or value != COMMON[key]}


def typescript() -> str:
    """Types of the field paths, groups and parts."""

    def union(name: str, values: list[str]) -> str:
        return f"export type {name} =\n" + "\n".join(f"  | {json.dumps(value)}" for value in values) + ";\n"

    plain = schema()
    return "\n".join(
        (
            "// Written by the build from calc/job/fields. Do not edit.\n",
            union("FieldPath", list(FIELDS)),
            union("Group", plain["groups"]),
            union("Part", plain["parts"]),
            union("Origin", plain["origins"]),
            union("Use", list(USES)),
            union("Dimension", list(DIMENSIONS)),
        )
    )
