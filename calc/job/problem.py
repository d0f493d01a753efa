"""A refused entry or document, in words that name the field, the limit and the unit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job.declared import MaybePath


@dataclass(frozen=True)
class Problem:
    """What is wrong: path of the field, a code, a message, the limit in words, readings to choose from, whose result waits."""

    path: MaybePath
    code: str
    message: str
    limit: str = ""
    readings: tuple[str, ...] = ()
    way_out: str = ""
    end: Literal["front", "rear", "both", "neither"] = "both"

    def sentence(self) -> str:
        """The problem in one line."""
        offers = f" Did you mean {' or '.join(self.readings)}?" if self.readings else ""
        return " ".join(part for part in (f"{self.path}: {self.message}", self.limit, self.way_out) if part) + offers
