"""What the report says of a job's dampers, made once for each job; and dampers of which everything is entered."""

from __future__ import annotations

import json
import re
from functools import lru_cache

from calc.job import load
from calc.report import report_of

FRONT, REAR = 0, 1


@lru_cache(maxsize=16)
def _damping(document: str):
    return report_of(load(json.loads(document))).damping


def told(document, end: int):
    return _damping(json.dumps(document))[end]


WHOLE = {
    "front.base_drop": "3 bar",
    "front.ports": "4",
    "front.port_diameter": "5",
    "front.rebound_force": "300 N",
    "front.compression_force": "180 N",
}

# What a sentence names besides its own row: strokes of travel in words, and ranges of the trade.
STANDING = {"10", "0", "0.3"}


def numbers(words: str) -> list[str]:
    return re.findall(r"−?\d+(?:\.\d+)?", words)


def figures_of(part: object) -> set[str]:
    """Every text and +/- of a part of the report."""
    if hasattr(part, "plus_minus_text"):
        return {part.text, part.plus_minus_text.lstrip("±")}
    if isinstance(part, tuple):
        return set().union(*(figures_of(one) for one in part)) if part else set()
    names = getattr(type(part), "__dataclass_fields__", {})
    return set().union(*(figures_of(getattr(part, name)) for name in names)) if names else set()
