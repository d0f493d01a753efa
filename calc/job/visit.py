"""The next visit of a bike: the same readings, and what was built is now what is found."""

from __future__ import annotations

from typing import Any

from calc.job.document import parse_header, upgraded
from calc.job.fields import FIELDS, GROUPS

# What was built at one visit stands at the next in the field of what is found.
FOUND = {
    "built_rate": "rate",
    "built_rate_right": "rate_right",
    "built_preload": "preload",
    "built_gap_left": "gap_left",
    "built_gap_right": "gap_right",
    "built_pressure": "air_pressure",
}
_TRIED = "tried_"
_READ_THEN = {path for path, field in FIELDS.items() if field.result}  # sags belong to what was found at that visit


def next_visit(document: dict[str, Any], date: str) -> dict[str, Any]:
    """Copy a job as the bike's next visit.

    Parameters: document, a job; date of the visit, as it is to stand in it ("2026-09-01").
    Returns: a new document: what was built is what is found, nothing is built, tried or checked yet, all else as it was.
    Raises: JobError when the document is no job.
    Formula: none.
    Source: none.
    Example:
        >>> next_visit({"format": "stanchion-job", "version": 3, "front": {"rate": "4.2"}}, "2026-09-01")["date"]
        '2026-09-01'
    """
    parse_header(document)
    made = upgraded(document) | {"date": date}
    for group in GROUPS:
        if group in made:
            made[group] = {key: entry for key, entry in as_found(made[group]).items() if f"{group}.{key}" not in _READ_THEN}
    return made


def as_found(entries: dict[str, Any]) -> dict[str, Any]:
    """One group of entries: what was built in it is what is found."""
    kept = {key: entry for key, entry in entries.items() if not key.startswith((_TRIED, "built_"))}
    for built, found in FOUND.items():
        if entries.get(built) is not None:
            kept[found] = entries[built]
    if entries.get("built_preload") is not None and "preload_from" in kept:
        kept["preload_from"] = "read"  # what was set stands in place of the lengths it was worked out from
    return kept
