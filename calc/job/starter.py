"""A new job from two answers: the riding and the rider's weight. All else starts as assumed from common practice."""

from __future__ import annotations

from typing import Any

from calc.job.document import FORMAT, VERSION
from calc.job.field import Field, Kind
from calc.job.fields import FIELDS, GROUPS
from calc.job.resolve import load
from calc.job.shape import JobError


def start(use: str, rider: str) -> dict[str, Any]:
    """Make a new job document.

    Parameters: use, a key of practice.USES; rider, the kitted mass as typed ("104 kg", "16 st 5 lb").
    Returns: a job document holding just these two.
    Raises: JobError naming what is wrong with either.
    Formula: none.
    Source: none.
    Example:
        >>> start("enduro", "104 kg")["rider"]["mass"]["value"]
        '104 kg'
    """
    document = {
        "format": FORMAT,
        "version": VERSION,
        "name": "",
        "owner": "",
        "date": "",
        "invented": False,
        "note": "",
        "bike": {"use": {"value": use, "origin": "stated"}},
        "rider": {"mass": {"value": rider, "origin": "measured"}},
    }
    for problem in load(document).problems:
        raise JobError(problem.sentence())
    return document


# What a bench writes down first, of every bike; common practice, no source.
SHORT = (
    "bike.use",
    "rider.mass",
    "rider.front_axle",
    "rider.rear_axle",
    "bike.front_axle",
    "bike.rear_axle",
    "front.travel",
    "front.rate",
    "front.gap_left",
    "front.gap_right",
    "rear.travel",
    "rear.rate",
    "rear.leverage",
)


def with_notes(document: dict[str, Any], short: bool = False) -> dict[str, Any]:
    """The same job for filling in by hand: fields stand there, empty ones as null, each with a note on how to take it.

    `short`: only those that a bench writes down first. The others can be added: a job may hold any field.
    """
    job = load(document)
    filled: dict[str, Any] = {key: value for key, value in document.items() if key not in GROUPS}
    filled["note"] = "A field left at null is assumed from common practice and marked so. Values may carry their unit."
    asked = {path: FIELDS[path] for path in SHORT} if short else FIELDS
    filled |= {group: {} for group in GROUPS if any(field.group == group for field in asked.values())}
    for path, field in asked.items():
        found = job.fields[path]
        entry = dict(document.get(field.group, {}).get(field.key) or {"value": None, "origin": field.typed})
        hint = _hint(field)
        assumed = "" if found.entered or not found.origin else f" Left empty: {_assumed(found.number, found.choice)} assumed."
        entry["note"] = f"{field.label}. {hint}{assumed} {field.how}".strip()
        filled[field.group][field.key] = entry
    return filled


def _hint(field: Field) -> str:
    if field.kind is Kind.CHOICE:
        return f"One of: {', '.join(field.choices)}."
    if field.kind is Kind.SHIMS:
        return "Groups of how many, outside diameter and thickness in mm, a semicolon between groups."
    if field.kind is Kind.PAIRS:
        return f"Pairs of {field.unit} and {field.second_unit}, a semicolon between pairs."
    return f"In {field.unit or 'plain numbers'} unless you write a unit."


def _assumed(number: float | None, choice: str) -> str:
    return choice if number is None else f"{number:.6g}"
