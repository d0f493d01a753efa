"""The offer's money and entries as text: rounded here once, for page, paper and command line alike."""

from __future__ import annotations

from decimal import Decimal

from calc.job import Job
from calc.job.offer import Offer, Option, Part
from calc.options.bill import PER_HOURS, Bill, bill_of, service_per_50_h
from calc.quantities.money import money_text
from calc.report.types import OfferBill, OfferLine, OfferOption, OfferReport

_NOTE = (
    "No option is put before another here: what each does, costs and leaves open is for the customer to weigh. Afterwards the "
    "sags are read again. If the work shows more, you are told before it is done."
)
_INVENTED = "Demo, invented: options, parts, prices and complaints exist nowhere."


def offer_report(job: Job) -> OfferReport | None:
    """The offer of a job, added up.

    Parameters: job.
    Returns: OfferReport; None where there is no offer.
    Raises: nothing.
    Formula: see `calc.options.bill`.
    Source: see there.
    Example: see `tests/unit/report/test_offer_report.py`.
    """
    offer = job.offer
    if offer is None:
        return None
    return OfferReport(
        currency=offer.currency,
        tax=_tax_words(offer),
        complaints=offer.complaints,
        options=tuple(_option(offer, option) for option in offer.options),
        problems=offer.problems,
        invented=_INVENTED if job.header["invented"] else "",
        note=" ".join(part for part in (offer.note, _NOTE) if part),
    )


def title_of(option: Option) -> str:
    """What an option is called."""
    return f"Option {option.number}{f': {option.name}' if option.name else ''}"


def priced(amount: Decimal, currency: str) -> str:
    """An amount with its currency."""
    return f"{money_text(amount)} {currency}".rstrip()


def plain(number: Decimal | None) -> str:
    """A number as it was typed; empty where there is none."""
    return "" if number is None else f"{number:f}"


def service_words(offer: Offer, option: Option) -> str:
    """Interval and price of a service, and what that is per 50 h."""
    every, price, each = option.service_hours, option.service_price, service_per_50_h(option)
    if every is None or price is None or each is None:
        told = [f"every {plain(every)} h"] if every is not None else []
        return ", ".join([*told, *([f"{priced(price, offer.currency)} each"] if price is not None else [])])
    return f"every {plain(every)} h, {priced(price, offer.currency)} each: {priced(each, offer.currency)} per {PER_HOURS} h"


def _tax_words(offer: Offer) -> str:
    if offer.tax is None:
        return "" if offer.refused else "No tax is stated."
    if offer.tax_in_prices is None:
        return ""
    rate = f"{plain(offer.tax)} % tax"
    return f"Prices include {rate}." if offer.tax_in_prices else f"{rate} is added to the prices."


def _option(offer: Offer, option: Option) -> OfferOption:
    bill = bill_of(offer, option)
    return OfferOption(
        number=option.number,
        title=title_of(option),
        note=option.note,
        lines=_lines(offer, option),
        bill=None if bill is None else _bill(offer, option, bill),
        waits=() if bill else _waits(offer, option),
        answers=option.answers,
        complaints=_complaint_words(offer, option),
        adjusters=option.adjusters,
        valving=option.valving,
        service=service_words(offer, option),
        unknown=option.unknown,
    )


def _lines(offer: Offer, option: Option) -> tuple[OfferLine, ...]:
    """A line for each part, and one for the work."""
    lines = [_line(part) for part in option.parts]
    if option.hours is not None:
        each = "" if offer.hourly is None else money_text(offer.hourly)
        amount = "" if offer.hourly is None else money_text(option.hours * offer.hourly)
        lines.append(OfferLine("Work, hours", plain(option.hours), each, amount))
    return tuple(lines)


def _line(part: Part) -> OfferLine:
    price = "" if part.price is None else money_text(part.price)
    amount = "" if part.price is None or part.count is None else money_text(part.count * part.price)
    return OfferLine(part.what, plain(part.count), price, amount)


def _bill(offer: Offer, option: Option, bill: Bill) -> OfferBill:
    parts, labour, total = (priced(amount, offer.currency) for amount in (bill.parts, bill.labour, bill.total))
    net, tax = ("" if amount is None else priced(amount, offer.currency) for amount in (bill.net, bill.tax))
    return OfferBill(parts, labour, net, tax, total, _bill_words(offer, option, (parts, labour, net, tax, total)))


def _bill_words(offer: Offer, option: Option, told: tuple[str, str, str, str, str]) -> str:
    parts, labour, net, tax, total = told
    hours = plain(option.hours) if option.hours else ""
    said = f"Parts {parts}, work {f'of {hours} h ' if hours else ''}{labour}"
    if offer.tax is None:
        return f"{said}: {total} in all, no tax stated."
    rate = plain(offer.tax)
    if offer.tax_in_prices:
        return f"{said}: {total} in all. In it are {tax} of tax ({rate} %); {net} without."
    return f"{said}: {net}, and {tax} of tax ({rate} %): {total} in all."


def _waits(offer: Offer, option: Option) -> tuple[str, ...]:
    """What its total waits for."""
    refused = ("An entry that the total needs is refused.",) if offer.refused or option.refused else ()
    return (*refused, *offer.missing, *option.missing)


def _complaint_words(offer: Offer, option: Option) -> str:
    """Which complaints it answers, and which it leaves open."""
    if not offer.complaints:
        return ""
    listed = [(number, words) for number, words in enumerate(offer.complaints, 1) if words]
    answered = [words for number, words in listed if number in option.answers]
    left = [words for number, words in listed if number not in option.answers]
    said = f"Answers: {_joined(answered)}." if answered else "Answers none of the complaints."
    return f"{said} Leaves open: {_joined(left)}." if answered and left else said


def _joined(words: list[str]) -> str:
    return "; ".join(one.rstrip(".") for one in words)
