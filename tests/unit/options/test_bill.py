"""What an option costs, against sums done by hand and in exact fractions."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from random import Random

import pytest

from calc.job import load
from calc.options.bill import bill_of, service_per_50_h
from calc.quantities.entry import EntryError
from calc.quantities.money import cents, money_text, read_price
from tests.support.offers import offer_of, offered, random_offer


def bill(offer):
    read = load(offered(offer)).offer
    return bill_of(read, read.options[0])


PARTS = {"parts": [{"what": "oil", "count": "2", "price": "19,50"}, {"what": "seals", "count": "1", "price": "48"}], "hours": "1,5"}


def test_a_bill_by_hand_with_the_tax_in_the_prices_and_without():
    """2 x 19.50 + 48 + 1.5 x 60 = 177; of that a sixth is tax at 20 %: 29.50. Added to it: 35.40, 212.40 in all."""
    inside, added = bill(offer_of(PARTS)), bill(offer_of(PARTS, tax_in_prices=False))
    assert [str(one) for one in (inside.parts, inside.labour)] == ["87.0", "90"]
    assert [str(one) for one in (inside.net, inside.tax, inside.total)] == ["147.50", "29.50", "177.00"]
    assert [str(one) for one in (added.net, added.tax, added.total)] == ["177.00", "35.40", "212.40"]
    none = bill(offer_of(PARTS, tax=None))
    assert (none.net, none.tax, str(none.total)) == (None, None, "177.00")


def half_even(amount: Fraction) -> Fraction:
    """Python rounds a Fraction half to even."""
    return Fraction(round(amount * 100), 100)


def number(text) -> Fraction:
    return Fraction(str(text).replace(",", "."))


@pytest.mark.parametrize("seed", range(40))
def test_random_bills_against_exact_fractions(seed):
    offer = random_offer(Random(f"bill {seed}"))
    read = load(offered(offer)).offer
    assert read.problems == ()
    for given, option in zip(offer["options"], read.options, strict=True):
        found = bill_of(read, option)
        together = sum(
            (number(one["count"]) * number(one["price"]) for one in given["parts"]),
            number(given["hours"]) * number(offer["hourly"]),
        )
        if "tax" not in offer:
            assert Fraction(found.total) == half_even(together)
            continue
        share = number(offer["tax"]) / 100
        if offer["tax_in_prices"]:
            assert Fraction(found.total) == half_even(together)
            assert Fraction(found.tax) == half_even(together * share / (1 + share))
        else:
            assert Fraction(found.net) == half_even(together)
            assert Fraction(found.tax) == half_even(half_even(together) * share)
        assert found.net + found.tax == found.total


def test_amounts_of_a_line_are_exact_and_only_totals_are_rounded():
    """Twice 1.5 x 3.33 is 9.99; rounded line by line it would be 2 x 5.00 = 10.00."""
    line = {"what": "oil", "count": "1.5", "price": "3.33"}
    found = bill(offer_of({"parts": [line, line]}, tax=None))
    assert [money_text(one) for one in found.amounts] == ["4.995", "4.995"]
    assert str(found.total) == "9.99"


def test_cents_go_to_the_even_neighbour():
    """ISO/IEC 60559, roundTiesToEven."""
    assert [str(cents(Decimal(text))) for text in ("0.125", "0.135", "0.1251", "2.675")] == ["0.12", "0.14", "0.13", "2.68"]


def test_service_by_fifty_hours():
    """165 every 30 h is 5.50 an hour, so 275 in 50 h."""
    read = load(offered(offer_of({"service_hours": "30", "service_price": "165"}, {"service_hours": "60 h"}))).offer
    assert service_per_50_h(read.options[0]) == Decimal(275)
    assert service_per_50_h(read.options[1]) is None


@pytest.mark.parametrize(
    ("text", "currency", "price"),
    [("12,5 EUR", "EUR", "12.5"), ("€ 12.50", "€", "12.5"), ("eur 7", "EUR", "7"), ("1250", "", "1250"), ("0,05kr", "kr", "0.05")],
)
def test_prices_as_people_write_them(text, currency, price):
    assert read_price(text, currency) == Decimal(price)


@pytest.mark.parametrize(
    ("text", "code", "readings"),
    [
        ("12 USD", "unit", ()),
        ("12 €", "unit", ()),
        ("1,250", "ambiguous", ("1250", "1.25")),
        ("1.250", "ambiguous", ("1250", "1.25")),
        ("12.345", "ambiguous", ("12345",)),
        ("12.3456", "ambiguous", ()),
        ("1.250,50", "separator", ("1250.50",)),
        ("nan", "unit", ()),
        ("1e999", "infinite", ()),
        ("12-", "unit", ()),
    ],
)
def test_a_price_that_can_be_read_two_ways_or_none_is_refused(text, code, readings):
    with pytest.raises(EntryError) as caught:
        read_price(text, "EUR")
    assert (caught.value.code, caught.value.readings) == (code, readings)
