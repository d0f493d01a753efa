"""How sure an end's answer is, for whom it holds, and what to measure next."""

from __future__ import annotations

from dataclasses import dataclass

from calc.job.declared import FieldPath


@dataclass(frozen=True, slots=True)
class Counted:
    """How many draws choose one spring or pressure: `rate` [N/mm], or bar where candidates differ by pressure; `text` names it, an
    unequal pair by both rates.
    """

    rate: float
    count: int
    of_ten: int
    text: str


@dataclass(frozen=True, slots=True)
class HowSure:
    """The draws counted. Where they are not `settled` `low` to `high` is told, never one rate alone.

    `left_out`: draws that cannot be; `undecided`: draws in which every candidate is barred.
    """

    draws: int
    left_out: int
    undecided: int
    counts: tuple[Counted, ...]
    settled: bool
    low: float
    high: float
    words: str


@dataclass(frozen=True, slots=True)
class NextReading:
    """A reading that narrows a result: its share of that result's variance, the +/- now and then [`unit`], how to take it."""

    path: FieldPath
    result: str
    share: float
    now: float
    then: float
    unit: str
    words: str
    how: str


@dataclass(frozen=True, slots=True)
class RiderSpan:
    """Kitted masses of riders for whom the choice stays the same; None where a limit lies beyond the search."""

    low: float | None
    high: float | None
    unit: str
    words: str
