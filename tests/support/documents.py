"""Job documents for the tests: the demo with some of its entries changed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.demo import jobs

Document = dict[str, Any]


def demo(changes: Mapping[str, Any] | None = None) -> Document:
    """The first demo job with entries replaced by path; None takes an entry out."""
    return changed(jobs()["enduro"], changes or {})


def changed(document: Document, changes: Mapping[str, Any]) -> Document:
    """A document with entries replaced by path, in place; None takes an entry out."""
    for path, value in changes.items():
        group, key = path.split(".")
        document.setdefault(group, {})[key] = value
        if value is None:
            del document[group][key]
    return document
