"""An offer as read: options side by side, each a setup, parts and hours. What is refused is named, and the rest stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from calc.job.field import Field
from calc.job.fields import FIELDS
from calc.job.job import Resolved
from calc.job.limits import between, span_words
from calc.job.offer_shape import BUILT, CARTRIDGE, SETUP_KEYS
from calc.job.problem import Problem
from calc.practice import Axle
from calc.quantities.entry import EntryError, convert, read_entry
from calc.quantities.money import exact, read_price

MOST_PRICE, MOST_COUNT, MOST_HOURS, MOST_TAX, MOST_INTERVAL = 1_000_000, 1000, 500, 50, 2000
MOST_CURRENCY = 8  # letters

Reader = Callable[[Field, str], Resolved]


@dataclass(frozen=True)
class Part:
    """A line of an option: `count` times `price`; None where it is not entered or refused."""

    what: str
    count: Decimal | None
    price: Decimal | None


@dataclass(frozen=True, eq=False)
class Option:
    """One option. `setup` by end, by key of what is built; `cartridge`, in which state it leaves that, empty for as it is;
    `missing`, what its total waits for; `refused`, an entry of its bill is; `answers`, numbers of complaints; `service_hours` [h]
    between services of `service_price` each.
    """

    number: int
    name: str
    note: str
    setup: Mapping[Axle, Mapping[str, Resolved]]
    cartridge: str
    parts: tuple[Part, ...]
    hours: Decimal | None
    answers: tuple[int, ...]
    adjusters: str
    valving: str
    service_hours: Decimal | None
    service_price: Decimal | None
    unknown: str
    missing: tuple[str, ...]
    refused: bool


@dataclass(frozen=True, eq=False)
class Offer:
    """All options. `tax` [%], None where none is stated; `tax_in_prices`, None where nobody said; `hourly` price of work;
    `refused`, one of these is, so that no total can be told.
    """

    currency: str
    tax: Decimal | None
    tax_in_prices: bool | None
    hourly: Decimal | None
    note: str
    complaints: tuple[str, ...]
    options: tuple[Option, ...]
    missing: tuple[str, ...]
    refused: bool
    problems: tuple[Problem, ...]


class _Reading:
    """Entries read one by one; what is refused is gathered with its place."""

    def __init__(self, currency: str) -> None:
        self.currency = currency
        self.problems: list[Problem] = []

    def price(self, holder: Mapping[str, Any], key: str, name: str, label: str) -> Decimal | None:
        """A price within its limits."""

        def read(text: str) -> Decimal:
            price = read_price(text, self.currency)
            if not 0 <= price <= MOST_PRICE:
                raise EntryError("range", f"{text.strip()} is {'below 0' if price < 0 else f'above {MOST_PRICE}'}")
            return price

        return self._read(holder, key, name, label, f"From 0 to {MOST_PRICE} {self.currency}".rstrip() + ".", read)

    def number(
        self, holder: Mapping[str, Any], key: str, name: str, label: str, kind: tuple[str, str, float, float]
    ) -> Decimal | None:
        """A number of a dimension and unit, between two limits."""
        dimension, unit, low, high = kind

        def read(text: str) -> Decimal:
            entry = read_entry(text, dimension, unit)
            between(entry, low, high, unit)
            return exact(convert(entry.number, entry.unit, unit)) if entry.unit != unit else exact(entry.number)

        return self._read(holder, key, name, label, span_words(low, high, unit), read)

    def _read(
        self, holder: Mapping[str, Any], key: str, name: str, label: str, limit: str, read: Callable[[str], Decimal]
    ) -> Decimal | None:
        text = typed(holder, key)
        if not text:
            return None
        try:
            return read(text)
        except EntryError as error:
            self.refuse(f"{name}.{key}", error, f"{label}: {error.message}.", limit)
            return None

    def refuse(self, path: str, error: EntryError, message: str, limit: str) -> None:
        """Note what is refused."""
        self.problems.append(Problem(path, error.code, message, limit, error.readings, end="neither"))


_COUNT = ("number", "", 0.001, MOST_COUNT)
_HOURS = ("time", "h", 0, MOST_HOURS)
_INTERVAL = ("time", "h", 1, MOST_INTERVAL)
_TAX = ("share", "%", 0, MOST_TAX)


def typed(holder: Mapping[str, Any], key: str) -> str:
    """An entry as text; empty where nothing is entered."""
    value = holder.get(key)
    return "" if value is None else str(value).strip()


def read_offer(given: Mapping[str, Any] | None, read: Reader) -> Offer | None:
    """Read a job's offer.

    Parameters: given, its object, of a checked shape; read, which reads a setup's entry as its field's.
    Returns: Offer; None where there is none.
    Raises: nothing; what is refused stands in its problems.
    Formula: none.
    Source: the offer's definition in `calc.job.offer_shape`.
    Example: see `tests/unit/job/test_offer.py`.
    """
    if given is None:
        return None
    currency, at = typed(given, "currency"), _Reading("")
    if len(currency) > MOST_CURRENCY or any(letter.isdigit() for letter in currency):
        words = f"Currency: {currency[:20]!r} is no currency as it stands on a bill."
        at.problems.append(
            Problem("offer.currency", "characters", words, f"1 to {MOST_CURRENCY} letters or a sign, no digits.", end="neither")
        )
        currency = ""
    at.currency = currency
    tax = at.number(given, "tax", "offer", "Tax", _TAX)
    hourly = at.price(given, "hourly", "offer", "Price of an hour")
    refused = bool(at.problems)
    complaints = tuple(one.strip() for one in given.get("complaints", ()))
    missing = []
    if not typed(given, "currency"):
        missing.append("The currency is not entered.")
    if typed(given, "tax") and given.get("tax_in_prices") is None:
        missing.append("Say whether the prices include the tax.")
    options = tuple(
        _option(at, number, one, complaints, bool(typed(given, "hourly")), read)
        for number, one in enumerate(given.get("options", ()), 1)
    )
    return Offer(
        currency=currency,
        tax=tax,
        tax_in_prices=given.get("tax_in_prices"),
        hourly=hourly,
        note=given.get("note", "").strip(),
        complaints=complaints,
        options=options,
        missing=tuple(missing),
        refused=refused,
        problems=tuple(at.problems),
    )


def _option(
    at: _Reading, number: int, given: Mapping[str, Any], complaints: Sequence[str], has_hourly: bool, read: Reader
) -> Option:
    name, label = f"offer.options[{number}]", f"Option {number}"
    setup = _setup(at, given.get("setup", {}), f"{name}.setup", label, read)
    before = len(at.problems)
    parts, missing = _parts(at, given.get("parts", ()), name, label)
    hours = at.number(given, "hours", name, f"{label}, hours", _HOURS)
    refused = len(at.problems) > before
    if typed(given, "hours") and not has_hourly:
        missing.append("The price of an hour is not entered.")
    if not parts and not typed(given, "hours"):
        missing.append("No parts and no hours are entered.")
    return Option(
        number=number,
        name=given.get("name", "").strip(),
        note=given.get("note", "").strip(),
        setup=setup,
        cartridge=typed(given.get("setup", {}).get("front", {}), CARTRIDGE),
        parts=parts,
        hours=hours,
        answers=_answers(at, given.get("answers", ()), name, label, len(complaints)),
        adjusters=given.get("adjusters", "").strip(),
        valving=given.get("valving", "").strip(),
        service_hours=at.number(given, "service_hours", name, f"{label}, service every", _INTERVAL),
        service_price=at.price(given, "service_price", name, f"{label}, price of a service"),
        unknown=given.get("unknown", "").strip(),
        missing=tuple(missing),
        refused=refused,
    )


def _parts(at: _Reading, given: Sequence[Mapping[str, Any]], name: str, label: str) -> tuple[tuple[Part, ...], list[str]]:
    """The parts, and what is not entered of them."""
    parts, missing = [], []
    for number, one in enumerate(given, 1):
        where, called = f"{name}.parts[{number}]", f"{label}, part {number}"
        count = at.number(one, "count", where, f"{called}, how many", _COUNT)
        price = at.price(one, "price", where, f"{called}, price")
        parts.append(Part(one.get("what", "").strip(), count, price))
        missing += [f"Part {number} has no {what}." for what in ("count", "price") if not typed(one, what)]
    return tuple(parts), missing


def _setup(
    at: _Reading, given: Mapping[str, Mapping[str, Any]], name: str, label: str, read: Reader
) -> dict[Axle, dict[str, Resolved]]:
    """The entries of each end, by key."""
    setup: dict[Axle, dict[str, Resolved]] = {}
    for axle, keys in SETUP_KEYS.items():
        for key in keys:
            text = typed(given.get(axle, {}), key)
            if not text:
                continue
            found = read(FIELDS[f"{axle}.{BUILT}{key}"], text)
            setup.setdefault(axle, {})[key] = found
            if found.problem is not None:
                one = found.problem
                path, words = f"{name}.{axle}.{key}", f"{label}: {one.message}"
                at.problems.append(Problem(path, one.code, words, one.limit, one.readings, one.way_out, "neither"))
    return setup


def _answers(at: _Reading, given: Sequence[int], name: str, label: str, count: int) -> tuple[int, ...]:
    """Those of its numbers that are a complaint's, each once."""
    for number, one in enumerate(given, 1):
        if not 1 <= one <= count:
            words = f"{label}: answers complaint {one}, and {count or 'none'} {'is' if count == 1 else 'are'} listed."
            at.problems.append(Problem(f"{name}.answers[{number}]", "range", words, end="neither"))
    return tuple(sorted({one for one in given if 1 <= one <= count}))
