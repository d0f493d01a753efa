"""Worked demo jobs. Invented bikes and riders, inside the practice ranges; a test holds that."""

from __future__ import annotations

import copy
from typing import Any

from calc.demo.enduro import ENDURO
from calc.demo.high_pass import HIGH_PASS
from calc.demo.trail import TRAIL

Document = dict[str, Any]


def jobs() -> dict[str, Document]:
    """The demo jobs by name, each a fresh copy."""
    return copy.deepcopy({"enduro": ENDURO, "trail": TRAIL, "high pass": HIGH_PASS})
