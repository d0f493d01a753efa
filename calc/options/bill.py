"""What an option costs: parts, work, tax, and its service; in decimals, so that a bill adds up to the cent."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from calc.job.offer import Offer, Option
from calc.quantities.money import cents

PER_HOURS = 50  # h of riding, by which service is compared
_HUNDRED = Decimal(100)


@dataclass(frozen=True)
class Bill:
    """A bill [currency]. `amounts` of the parts, `parts` their sum, and `labour` are exact; what follows is told to the cent, and
    `net` and `tax` add up to `total`. `net` and `tax` None where no tax is stated.
    """

    amounts: tuple[Decimal, ...]
    parts: Decimal
    labour: Decimal
    net: Decimal | None
    tax: Decimal | None
    total: Decimal


def bill_of(offer: Offer, option: Option) -> Bill | None:
    """What an option costs.

    Parameters: offer; option of it.
    Returns: Bill; None while an entry of it is missing or refused.
    Raises: nothing.
    Formula: sum of count x price, plus hours x hourly price. Tax in the prices: total = sum, tax = sum x t / (100 + t), net = the
    rest. Tax added: net = sum, tax = net x t / 100, total = both. Rounded half to even, in totals only.
    Source: arithmetic; ISO/IEC 60559 for the rounding.
    Example:
        >>> from calc.job import load
        >>> option = {"parts": [{"what": "oil", "count": 2, "price": "18"}], "hours": "1.5"}
        >>> offer = {"currency": "EUR", "tax": 20, "tax_in_prices": False, "hourly": "60", "options": [option]}
        >>> read = load({"format": "stanchion-job", "version": 4, "offer": offer}).offer
        >>> bill = bill_of(read, read.options[0])
        >>> print(bill.net, bill.tax, bill.total)
        126.00 25.20 151.20
    """
    if offer.missing or offer.refused or option.missing or option.refused:
        return None
    amounts = tuple(part.count * part.price for part in option.parts if part.count is not None and part.price is not None)
    labour = (option.hours or Decimal(0)) * (offer.hourly or Decimal(0))
    parts = sum(amounts, Decimal(0))
    together = parts + labour
    if offer.tax is None:
        return Bill(amounts, parts, labour, None, None, cents(together))
    if offer.tax_in_prices:
        total = cents(together)
        tax = cents(together * offer.tax / (_HUNDRED + offer.tax))
        return Bill(amounts, parts, labour, total - tax, tax, total)
    net = cents(together)
    tax = cents(net * offer.tax / _HUNDRED)
    return Bill(amounts, parts, labour, net, tax, net + tax)


def service_per_50_h(option: Option) -> Decimal | None:
    """What service costs by 50 h of riding.

    Parameters: option.
    Returns: price [currency]; None where interval or price is not known.
    Raises: nothing.
    Formula: price of a service x 50 h / interval.
    Source: arithmetic; 50 h as the trade compares by, common practice, no source.
    Example: see `tests/unit/options/test_bill.py`.
    """
    if option.service_hours is None or option.service_price is None:
        return None
    return cents(option.service_price * PER_HOURS / option.service_hours)
