"""Sags found beside those expected, and what they correct."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job.declared import FieldPath, Origin
from calc.practice import Axle
from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class SagRow:
    """One sag: found, expected before it was looked at; `believed` False where it fits nothing and was left out."""

    axle: Axle
    label: str
    found: Quantity
    expected: Quantity
    believed: bool


@dataclass(frozen=True, slots=True)
class SagTold:
    """A sag that was read, as it stands in the column of the setup it was read `of`: `word` before it, `origin` of the reading;
    `left_out`: that nothing rests on it, empty where it counts.
    """

    axle: Axle
    label: str
    of: Literal["found", "built"]
    word: str
    found: Quantity
    origin: Origin
    left_out: str


@dataclass(frozen=True, slots=True)
class CorrectedReading:
    """A reading as it was and as what was found has it, in the unit of its field."""

    path: FieldPath
    label: str
    before: Quantity
    after: Quantity
    words: str


@dataclass(frozen=True, slots=True)
class SagsOfEnd:
    """What the sags of an end say, in words; `travel` [mm], where sag is read, 0 where not known; `refused`: why not."""

    axle: Axle
    travel: float
    rows: tuple[SagRow, ...]
    spring_rate: Quantity | None
    friction: Quantity | None
    refused: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SagsReport:
    """Both ends' sags found, `of` which setup; `lead`: what matters most of them, in a sentence; `by`: what corrects, sags, a push
    or a mark; `applied`: the answer rests on the corrected readings.
    """

    of: Literal["found", "built"]
    lead: str
    ends: tuple[SagsOfEnd, ...]
    corrections: tuple[CorrectedReading, ...]
    by: str
    applied: bool
    words: tuple[str, ...]
