"""A refused entry or document, in words that name the field, the limit and the unit."""

from __future__ import annotations

from dataclasses import asdict, dataclass


@dataclass(frozen=True)
class Problem:
    """What is wrong: path of the field, a code, a message, the limit in words, readings to choose from, whose result waits."""

    path: str
    code: str
    message: str
    limit: str = ""
    readings: tuple[str, ...] = ()
    way_out: str = ""
    end: str = "both"

    def as_data(self) -> dict[str, object]:
        """The problem as plain data."""
        return asdict(self)

    def sentence(self) -> str:
        """The problem in one line."""
        offers = f" Did you mean {' or '.join(self.readings)}?" if self.readings else ""
        return " ".join(part for part in (f"{self.path}: {self.message}", self.limit, self.way_out) if part) + offers
