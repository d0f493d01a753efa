"""The whole report, and that of one end alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from calc.job import Problem
from calc.job.declared import FieldPath, MaybeUse, Origin
from calc.practice import Axle
from calc.report.types.damping import DampingOfEnd
from calc.report.types.end import EndReport
from calc.report.types.figure import Quantity, UsualRange
from calc.report.types.oil import OilReport
from calc.report.types.options import OfferReport, OptionsReport
from calc.report.types.push import PushReport
from calc.report.types.ride import RideOfEnd
from calc.report.types.sags import SagsReport, SagTold
from calc.report.types.states import StatesReport
from calc.report.types.work import Check, Filling, Service


@dataclass(frozen=True, slots=True)
class Header:
    """The head of the job's document."""

    format: str
    version: int
    name: str
    owner: str
    date: str
    invented: bool
    note: str


@dataclass(frozen=True, slots=True)
class FieldState:
    """A field that applies or holds an entry: `text` as typed; `value` in `unit`, that of the entry, or the key of a choice."""

    applies: bool
    entered: bool
    text: str
    value: float | str | None
    rates: tuple[float, ...]
    pairs: tuple[tuple[float, float], ...]
    unit: str
    plus_minus_95: float | None
    plus_minus_text: str
    origin: Origin | None
    reason: str
    note: str
    usual: UsualRange | None
    problem: Problem | None


@dataclass(frozen=True, slots=True)
class Ends:
    """Both ends."""

    front: EndReport
    rear: EndReport


@dataclass(frozen=True, slots=True)
class ShareAssumed:
    """How many of an end's main quantities are assumed, of how many."""

    assumed: int
    of: int


@dataclass(frozen=True, slots=True)
class SharesAssumed:
    """Of both ends."""

    front: ShareAssumed
    rear: ShareAssumed


@dataclass(frozen=True, slots=True)
class MeasureFirst:
    """A reading to take first where little is known."""

    path: FieldPath
    words: str
    how: str


@dataclass(frozen=True, slots=True)
class Modifier:
    """When a range of practice is moved, and how."""

    when: str
    words: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution where work can hurt."""

    key: str
    title: str
    words: str


@dataclass(frozen=True, slots=True)
class Attitude:
    """What going from found to recommended does to the bike; `rake_change` where the wheelbase is known."""

    front_height: Quantity
    rear_height: Quantity
    clamp_shift: Quantity
    rake_change: Quantity | None
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeBike:
    """What the report says beside its ends."""

    format: Literal["stanchion-report"]
    version: int
    header: Header
    use: MaybeUse
    use_label: str
    posture: str
    fields: Mapping[FieldPath, FieldState]
    range_problems: tuple[Problem, ...]
    assumed: SharesAssumed
    measure_first: tuple[MeasureFirst, ...]
    sags: SagsReport | None
    sags_told: tuple[SagTold, ...]
    ride: tuple[RideOfEnd, ...]
    push: PushReport | None
    oil: OilReport | None
    states: StatesReport | None
    damping: tuple[DampingOfEnd, ...]
    offer: OfferReport | None
    options: OptionsReport | None
    notes: tuple[str, ...]
    modifiers: tuple[Modifier, ...]
    cautions: tuple[Caution, ...]
    reassembly: tuple[Check, ...]
    first_ride: tuple[Check, ...]
    service: Service | None
    left_out: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Report(WholeBike):
    """The report of a job. `message`: for the customer, a paragraph each."""

    ends: Ends
    attitude: Attitude | None
    filling: Filling | None
    message: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartReport(WholeBike):
    """The report of one end alone, for whoever cannot wait for both; it lacks what compares the two."""

    axle: Axle
    end: EndReport
