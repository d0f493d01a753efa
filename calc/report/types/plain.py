"""From the report's types to plain data."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields
from functools import cache
from operator import attrgetter
from typing import Any


def values(part: Any) -> dict[str, Any]:
    """One part of the report as a dict, its own parts left as they are.

    Parameters: part, of a type of the report, or a mapping.
    Returns: its values by name, in the order of the declaration: what JSON's encoder asks of a part that it does not know.
    Raises: TypeError for anything else.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.report.types.figure import Window
        >>> values(Window(52.0, 69.0, "mm", ""))
        {'low': 52.0, 'high': 69.0, 'unit': 'mm', 'confidence': ''}
    """
    return _reader(type(part))(part)  # type: ignore[arg-type]  # mypy doubts that a class can be hashed


@cache
def _reader(kind: type[Any]) -> Callable[[Any], dict[str, Any]]:
    """What makes a dict of a part of one type; no such type has fewer than two values."""
    if issubclass(kind, Mapping):
        return dict
    names = tuple(field.name for field in fields(kind))
    read = attrgetter(*names)
    return lambda part: dict(zip(names, read(part), strict=True))
