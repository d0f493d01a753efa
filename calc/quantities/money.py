"""Money and other decimals as they are typed, kept exact: bills add up to the cent, and floats do not."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_EVEN, Decimal

from calc.quantities.entry import EntryError, read_entry

CENT = Decimal("0.01")
_LONG_PART = re.compile(r"[+-]?([0-9]+)[.,]([0-9]{3,})")


def read_price(text: str, currency: str) -> Decimal:
    """Read a price, with or without its currency before or after it.

    Parameters: text as typed; currency, as the shop writes it; empty where none is named yet.
    Returns: the price [currency], exact.
    Raises: EntryError as `calc.quantities.entry.read_entry`; for more than two decimals, of which three may be
    thousands; for another currency.
    Formula: none.
    Source: common practice, no source: "12,50", "12.50 EUR", "€ 12.50" as people write them.
    Example:
        >>> read_price("12,5 EUR", "EUR")
        Decimal('12.5')
    """
    bare = _without(text.strip(), currency)
    other = re.search(r"[^\W\d_]{2,}|[^\w\s.,'+−-]", bare)
    if other:
        known = f"this offer is in {currency}" if currency else "say first which currency the offer is in"
        raise EntryError("unit", f"{other[0][:8]!r} does not fit here: {known}")
    long = _LONG_PART.fullmatch(bare)
    if long:
        whole, part = long.groups()
        readings = tuple(dict.fromkeys((whole + part, *((f"{whole}.{part[:2]}",) if not part[2:].strip("0") else ()))))
        raise EntryError("ambiguous", "a price has at most two decimals", readings if len(part) == 3 else ())
    return exact(read_entry(bare, "number", "").number)


def _without(text: str, currency: str) -> str:
    """The text without its currency at either end."""
    if currency and text.lower().endswith(currency.lower()):
        return text[: -len(currency)].rstrip()
    if currency and text.lower().startswith(currency.lower()):
        return text[len(currency) :].lstrip()
    return text


def exact(number: float) -> Decimal:
    """A typed number as the decimal that was typed.

    Parameters: number [any unit], as `read_entry` gives it.
    Returns: the decimal [the same].
    Raises: nothing.
    Formula: the shortest decimal that stands for the float: what was typed, up to 15 digits.
    Source: Python's own `repr` of a float.
    Example:
        >>> exact(0.1) + exact(0.2)
        Decimal('0.3')
    """
    return Decimal(repr(number)).normalize()


def cents(amount: Decimal) -> Decimal:
    """An amount to two decimals, half to the even digit.

    Parameters: amount [currency].
    Returns: amount [currency].
    Raises: nothing.
    Formula: none.
    Source: ISO/IEC 60559 (roundTiesToEven).
    Example:
        >>> cents(Decimal("2.345")), cents(Decimal("2.355"))
        (Decimal('2.34'), Decimal('2.36'))
    """
    return amount.quantize(CENT, ROUND_HALF_EVEN)


def money_text(amount: Decimal) -> str:
    """An amount as text, at least two decimals and none cut off.

    Parameters: amount [currency].
    Returns: text, a real minus where it is below 0.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> money_text(Decimal("40")), money_text(Decimal("212.875"))
        ('40.00', '212.875')
    """
    plain = amount.normalize()
    least = plain if int(plain.as_tuple().exponent) < -2 else plain.quantize(CENT)
    return f"{least:f}".replace("-", "−")
