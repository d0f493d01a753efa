"""The enduro demo with some readings not taken and sags found."""

from __future__ import annotations

import copy

from calc.job import Job, load
from tests.support.documents import demo

LEVERAGE = ("rear.leverage", "rear.leverage_fall")
SAGS = {"rear_alone_sag": "8", "rear_alone_again_sag": "4", "rear_aboard_sag": "101", "rear_aboard_again_sag": "95"}


def bike(unread: tuple[str, ...] = (), **entries: object) -> Job:
    """The enduro demo, some of its readings not taken, with sags found: `rear_alone_sag="8 mm"`."""
    document = copy.deepcopy(demo())
    for path in unread:
        group, key = path.split(".")
        document[group].pop(key, None)
    for name, value in entries.items():
        group, _, key = name.partition("_")
        document[group][key] = value
    return load(document)
