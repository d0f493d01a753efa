"""The next visit of a bike: the same readings, and what was built is now what is found."""

from __future__ import annotations

from typing import Any

from calc.job.document import parse_header, upgraded
from calc.job.fields import FIELDS, GROUPS
from calc.job.fields.damping import CLICKERS
from calc.job.work import WORK

# What was built at one visit stands at the next in the field of what is found.
FOUND = {
    "built_rate": "rate",
    "built_rate_right": "rate_right",
    "built_preload": "preload",
    "built_gap_left": "gap_left",
    "built_gap_right": "gap_right",
    "built_pressure": "air_pressure",
    "set_shims": "shims",
} | {f"set_{key}": f"click_{key}" for names in CLICKERS.values() for key in names}
_THEN = ("tried_", "built_", "set_")  # what is of one visit only
_READ_THEN = {path for path, field in FIELDS.items() if field.result}  # sags belong to what was found at that visit


def next_visit(document: dict[str, Any], date: str) -> dict[str, Any]:
    """Copy a job as the bike's next visit.

    Parameters: document, a job; date of the visit, as it is to stand in it ("2026-09-01").
    Returns: a new document: what was built is what is found; nothing is built, tried, checked, ticked or offered; else as it was.
    Raises: JobError when the document is no job.
    Formula: none.
    Source: none.
    Example:
        >>> next_visit({"format": "stanchion-job", "version": 4, "front": {"rate": "4.2"}}, "2026-09-01")["date"]
        '2026-09-01'
    """
    parse_header(document)
    made = {key: value for key, value in upgraded(document).items() if key != "offer"} | {"date": date}
    if WORK in made:  # the next assembly is checked anew
        made[WORK] = {key: value for key, value in made[WORK].items() if key != "ticks"}
    for group in GROUPS:
        if group in made:
            made[group] = {key: entry for key, entry in as_found(made[group]).items() if f"{group}.{key}" not in _READ_THEN}
    return made


def as_found(entries: dict[str, Any]) -> dict[str, Any]:
    """One group of entries: what was built in it is what is found."""
    kept = {key: entry for key, entry in entries.items() if not key.startswith(_THEN)}
    for built, found in FOUND.items():
        if entries.get(built) is not None:
            kept[found] = entries[built]
    if entries.get("built_preload") is not None and "preload_from" in kept:
        kept["preload_from"] = "read"  # what was set stands in place of the lengths it was worked out from
    return kept
