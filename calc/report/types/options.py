"""The offer: what each option costs and says, and what each does on this bike."""

from __future__ import annotations

from dataclasses import dataclass

from calc.job import Problem
from calc.practice import Axle
from calc.report.types.figure import Quantity


@dataclass(frozen=True, slots=True)
class OfferLine:
    """A line of an option's bill as it is printed; empty text where nothing is known."""

    what: str
    count: str
    price: str
    amount: str


@dataclass(frozen=True, slots=True)
class OfferBill:
    """An option's bill, each with its currency; `net` and `tax` empty where no tax is stated."""

    parts: str
    labour: str
    net: str
    tax: str
    total: str
    words: str


@dataclass(frozen=True, slots=True)
class OfferOption:
    """One option as entered and added up. `bill` None while `waits` says what for; `answers`, numbers of complaints, from 1;
    `service`: its interval and price, and what that is per 50 h.
    """

    number: int
    title: str
    note: str
    lines: tuple[OfferLine, ...]
    bill: OfferBill | None
    waits: tuple[str, ...]
    answers: tuple[int, ...]
    complaints: str
    adjusters: str
    valving: str
    service: str
    unknown: str


@dataclass(frozen=True, slots=True)
class OfferReport:
    """The offer's money and entries. `tax` says whether it is in the prices; `invented`, what of it exists nowhere."""

    currency: str
    tax: str
    complaints: tuple[str, ...]
    options: tuple[OfferOption, ...]
    problems: tuple[Problem, ...]
    invented: str
    note: str


@dataclass(frozen=True, slots=True)
class OptionFigures:
    """What a setup does, or what it changes. `gas_share` of the force at full travel; None at the rear. `behind` its damper's oil
    at rider sag [bar, gauge]; None but for a fork whose cartridge is, or was, a sealed one.
    """

    free_sag: Quantity
    rider_sag: Quantity
    frequency: Quantity
    end_force: Quantity
    end_multiple: Quantity
    gas_share: Quantity | None
    behind: Quantity | None


@dataclass(frozen=True, slots=True)
class OptionEnd:
    """One end of an option. `setup` in words; `stays`, nothing is done there; `change` against as found, None where that has no
    figures, or where it stays; `problem`: why there are no figures.
    """

    axle: Axle
    stays: bool
    setup: str
    figures: OptionFigures | None
    change: OptionFigures | None
    problem: Problem | None
    words: str


@dataclass(frozen=True, slots=True)
class OptionDone:
    """What an option does at both ends."""

    number: int
    ends: tuple[OptionEnd, ...]


@dataclass(frozen=True, slots=True)
class EndBetween:
    """Two options at one end: by how much their force curves are `apart` at most, `at` which stroke or travel, and whether that
    counts as the same; `change`, from the one to the other.
    """

    axle: Axle
    same: bool
    apart: Quantity
    at: Quantity
    change: OptionFigures


@dataclass(frozen=True, slots=True)
class OptionDiffers:
    """What the entries of two options say differently."""

    label: str
    one: str
    other: str


@dataclass(frozen=True, slots=True)
class OptionBetween:
    """Two options side by side, `other` against `one`; `same`: no end rides differently. `words`: the force curves and the price;
    `lead` stands before `differs`.
    """

    one: int
    other: int
    same: bool
    ends: tuple[EndBetween, ...]
    words: tuple[str, ...]
    lead: str
    differs: tuple[OptionDiffers, ...]


@dataclass(frozen=True, slots=True)
class OptionsReport:
    """What the options do on this bike, worked out with the bands. `problem`: why nothing is; `found`: the bike as it came in."""

    problem: str
    found: tuple[OptionEnd, ...]
    options: tuple[OptionDone, ...]
    between: tuple[OptionBetween, ...]
    note: str
