"""Worked demo jobs. Invented bikes and riders, inside the practice ranges; a test holds that."""

from __future__ import annotations

import copy
from typing import Any

from calc.demo.enduro import ENDURO

Document = dict[str, Any]


def jobs() -> dict[str, Document]:
    """The demo jobs by name, each a fresh copy."""
    return {"enduro": copy.deepcopy(ENDURO)}
