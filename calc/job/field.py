"""What a declared field is. The fields themselves stand in `calc.job.fields`, each declared once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Literal


class Kind(StrEnum):
    """What a field holds."""

    QUANTITY = "quantity"
    CHOICE = "choice"
    RATES = "rates"  # a list of spring rates, separated by spaces or semicolons
    PAIRS = "pairs"  # a table of pairs, two numbers each, separated by semicolons
    SHIMS = "shims"  # groups of equal shims, three numbers each, separated by semicolons


class Part(StrEnum):
    """The part of the page and of the job that a field belongs to."""

    BIKE = "bike and rider"
    SPRINGS = "springs and sag"
    OIL = "oil and air"
    REAR = "rear"
    FOUND = "sags found"
    RIDE = "after the ride"
    CONDITIONS = "conditions to check"
    PUSH = "bench push"
    SHEET = "oil on the tin"
    DAMPING = "damping"
    FILLING = "gap while filling"
    SERVICE = "hours and service"


@dataclass(frozen=True)
class Default:
    """Where an assumed value comes from when nothing is entered.

    One of: `row` (a practice row), `value` (in the field's unit, with `plus_minus`), `choice` (with `choice_by_use`),
    `follow` (another field's value, plus the typical of `row` if given), `share_of` (`row`, in %, of that field's value);
    `times_high` takes that many times the top of `row` instead of its typical value; `by_choice`, with `follow` naming a
    choice, gives value and 95 % half-width by what is chosen there; `as_sold`, with `follow` and `row`, names the choice that
    says whether what is fitted is what was sold: then it is followed, with the row's width where that is not known, and the row
    stands in where it was changed.
    """

    row: str | None = None
    value: float | None = None
    plus_minus: float = 0.0
    choice: str | None = None
    choice_by_use: Mapping[str, str] = field(default_factory=dict)
    follow: str | None = None
    times_high: float | None = None
    share_of: str | None = None
    by_choice: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    as_sold: str | None = None
    reason: str = "common practice, no source"


@dataclass(frozen=True, eq=False)  # one object per declaration: compared and hashed by identity
class Field:
    """One field: what it is called, what it may hold, how it is measured, what stands in for it, when it applies.

    `low` and `high` are limits of the possible in `unit`; `plus_minus` is the 95 % half-width of a careful reading, in
    `unit` (with `plus_minus_relative` as a fraction of the value instead). `when` maps a path to the choices under
    which the field applies, `idle` to choices that together put it out of use; `unless` lists groups of paths: when every
    path of a group is entered the field is not needed; with `needs` it waits until one of these paths is entered. `main`
    fields are shown first, the others one tap away. `end` says whose result a refused entry stops: neither where no answer rests
    on it; `typed` is the origin that a newly typed value starts with. A `decision` is wanted, not read: it carries no +/-. A
    `result` is read of what comes out: it corrects readings, and is none of what the model is made from. A table of pairs has its
    second number's dimension, unit and limits in `second_...`, and at least `fewest` pairs. `percent_of` is the path whose
    value an entry in % is a part of; `pair` says what to do with two numbers, where a person may have one for each leg.
    """

    path: str
    label: str
    part: Part
    kind: Kind = Kind.QUANTITY
    dimension: str = ""
    unit: str = ""
    low: float = 0.0
    high: float = 0.0
    step: float = 1.0
    decimals: int = 0
    plus_minus: float = 0.0
    plus_minus_relative: float = 0.0
    usual: str | None = None
    default: Default | None = None
    when: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    idle: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    unless: tuple[tuple[str, ...], ...] = ()
    needs: tuple[str, ...] = ()
    choices: Mapping[str, str] = field(default_factory=dict)
    main: bool = False
    end: Literal["front", "rear", "both", "neither"] = "both"
    how: str = ""
    typed: str = "measured"
    decision: bool = False
    result: bool = False
    second_dimension: str = ""
    second_unit: str = ""
    second_low: float = 0.0
    second_high: float = 0.0
    fewest: int = 2
    percent_of: str = ""
    pair: str = ""

    @cached_property
    def group(self) -> str:
        """First part of the path: the object of the job file that holds the field."""
        return self.path.split(".")[0]

    @cached_property
    def key(self) -> str:
        """Last part of the path: the name inside its object."""
        return self.path.split(".")[1]

    @property
    def optional(self) -> bool:
        """True when nothing stands in for the field: left empty, it is simply not known."""
        return self.default is None
