"""Short forms for the demo jobs' entries."""

from __future__ import annotations


def measured(value: str, plus_minus: str, note: str = "") -> dict[str, str]:
    """An entry that the user measured."""
    entry = {"value": value, "plus_minus_95": plus_minus, "origin": "measured"}
    if not plus_minus:  # a list has none
        del entry["plus_minus_95"]
    return entry | {"note": note} if note else entry


def stated(value: str, plus_minus: str | None = None, note: str = "") -> dict[str, str]:
    """An entry that a manual or a marking states."""
    entry = {"value": value, "origin": "stated"}
    entry = entry if plus_minus is None else entry | {"plus_minus_95": plus_minus}
    return entry | {"note": note} if note else entry


def assumed(value: str, plus_minus: str) -> dict[str, str]:
    """An entry that is assumed."""
    return {"value": value, "plus_minus_95": plus_minus, "origin": "assumed"}
