"""Offers for the tests: invented options put into a demo job, and random ones."""

from __future__ import annotations

from random import Random
from typing import Any

from calc.demo import jobs

Offer = dict[str, Any]


def offered(offer: Offer, demo: str = "trail") -> dict[str, Any]:
    """A demo job with this offer."""
    return {**jobs()[demo], "offer": offer}


def offer_of(*options: Offer, **head: Any) -> Offer:
    """An offer with its head filled in."""
    return (
        {"currency": "EUR", "tax": "20 %", "tax_in_prices": True, "hourly": "60", "complaints": []} | head | {"options": [*options]}
    )


def rear(preload: str, rate: str = "46 N/mm") -> Offer:
    """An option of a rear setup alone, with a part."""
    return {"setup": {"rear": {"rate": rate, "preload": preload}}, "parts": [{"what": "a", "count": "1", "price": "10"}]}


def front(preload: str, gap: str, rate: str = "4.0 N/mm") -> Offer:
    """An option of a front setup alone, with a part."""
    legs = {"rate": rate, "preload": preload, "gap_left": gap, "gap_right": gap}
    return {"setup": {"front": legs}, "parts": [{"what": "a", "count": "1", "price": "10"}]}


def random_offer(rng: Random) -> Offer:
    """One to four options of random parts, with tax in the prices, added or not stated."""

    def money() -> str:
        return f"{rng.randint(0, 900)}{rng.choice(('.', ','))}{rng.randint(0, 99):02d}"

    def part() -> Offer:
        return {"what": rng.choice(("oil", "seals", "spring")), "count": str(rng.choice((1, 2, 3, 0.5, 1.25))), "price": money()}

    options = [
        {"parts": [part() for _ in range(rng.randint(1, 6))], "hours": str(rng.choice((0, 0.25, 1, 3.5))), "answers": []}
        for _ in range(rng.randint(1, 4))
    ]
    tax = rng.choice(({}, {"tax": str(rng.choice((7, 8.1, 19, 25.5))), "tax_in_prices": rng.random() < 0.5}))
    return {"currency": "EUR", "hourly": money(), "options": options} | tax
