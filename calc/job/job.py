"""A job as read: every declared field with its reading, and what is asked of them."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from calc.job.field import Field
from calc.job.lists import Pairs
from calc.job.problem import Problem
from calc.job.ranges import NO_RANGES, Ranges
from calc.job.shims import Groups
from calc.practice import Usual, posture
from calc.quantities.reading import Reading

if TYPE_CHECKING:  # a new job is written without loading numpy
    from calc.array import Array, Number
    from calc.job.offer import Offer

DRAWS = 200  # of every reading behind a +/-, where no other number is asked for
MIN_DRAWS, MAX_DRAWS = 20, 10_000  # a 95 % half-width means little from fewer, and more take minutes


@dataclass(frozen=True, eq=False)  # compared and hashed by identity, so that an unchanged field is known again at once
class Resolved:
    """One field of one job, read.

    `number` and `plus_minus` are in `unit` (the one it was entered in); `reading` is internal. `applies` is False when
    the job's choices or better readings make the field idle. `problem` is set when the entry was refused: then there is
    no value. `reason` says where an assumed value comes from. Where results that were read have corrected it, `reading` is the
    corrected one, `samples` its draws, which belong to those of the other corrected readings, and `learned` what ties it to them
    (`calc.uncertainty.adjustment`); all else stays as it was entered.
    """

    field: Field
    applies: bool
    entered: bool = False
    text: str = ""
    number: float | None = None
    unit: str = ""
    plus_minus: float | None = None
    origin: str = ""
    reading: Reading | None = None
    choice: str = ""
    rates: tuple[float, ...] = ()
    pairs: Pairs = ()
    groups: Groups = ()
    reason: str = ""
    note: str = ""
    usual: Usual | None = None
    problem: Problem | None = None
    samples: Array | None = None
    learned: tuple[float, ...] = ()


@dataclass(frozen=True)
class Job:
    """A job as read: header and every declared field by path.

    `samples` stand in for readings that are drawn, `draws` times; `ticks` tells when each check was made.
    """

    header: Mapping[str, Any]
    fields: Mapping[str, Resolved]
    samples: Mapping[str, Number] = dataclasses.field(default_factory=dict)
    draws: int = DRAWS
    ranges: Ranges = NO_RANGES
    range_problems: tuple[Problem, ...] = ()
    ticks: Mapping[str, str] = dataclasses.field(default_factory=dict)
    offer: Offer | None = None

    @property
    def use(self) -> str:
        """Kind of riding, a key of practice.USES; empty when it was not named."""
        return self.fields["bike.use"].choice

    @property
    def posture(self) -> str:
        """Posture of this use's sag, frequency and end-force rows."""
        return posture(self.use)

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Every refused entry of a field that applies; refused ranges and entries of the offer too."""
        refused = (f.problem for f in self.fields.values() if f.problem and f.applies)
        return (*refused, *self.range_problems, *(self.offer.problems if self.offer else ()))

    def usual(self, row: str) -> Usual | None:
        """The range of the trade, or the user's own, for a practice row."""
        return self.ranges.usual(row)

    def known(self, path: str) -> bool:
        """True when a quantity has a value, entered or assumed."""
        return self.fields[path].reading is not None

    def entered(self, path: str) -> bool:
        """True when the user entered the field (measured or stated) and it was not refused."""
        found = self.fields[path]
        return found.entered and found.problem is None

    def value(self, path: str) -> Number:
        """A quantity in internal units; an array where it is drawn."""
        return self.samples[path] if path in self.samples else self.number(path)

    def number(self, path: str) -> float:
        """A quantity in internal units as it was read, drawn or not."""
        reading = self.fields[path].reading
        if reading is None:
            raise KeyError(path)
        return reading.value

    def choice(self, path: str) -> str:
        """A choice's key."""
        return self.fields[path].choice
