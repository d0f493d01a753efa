"""Sentences on options: each figure in them is one that stands beside them, and nothing in them ranks."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import numpy as np

from calc.array import Number
from calc.job import Problem
from calc.job.offer import Offer, Option
from calc.options.bill import PER_HOURS, bill_of, service_per_50_h
from calc.practice import Axle
from calc.report.offer import priced
from calc.report.quantity import banded_text, figure_text, number_text, size_text
from calc.report.types import EndBetween, OptionBetween, OptionDiffers, OptionFigures, Quantity, SetupReport
from calc.report.words import named, pair_text

_ENDS: dict[Axle, str] = {"front": "Front", "rear": "Rear"}


# How an option leaves a sealed cartridge, and what that is called beside another's.
_LEFT_AS = {"as built": "cartridge shut and charged as built", "opened into one": "cartridge opened to the leg"}
_GAP_AROUND = {"as built": " around the shut cartridge"}


def setup_words(setup: SetupReport, gaps: tuple[Number, Number] | None, cartridge: str = "") -> str:
    """A setup in a line; both gaps where the legs differ."""
    spring = named(setup) if setup.pressure else f"{pair_text(setup.pair) if setup.pair else setup.rate.text} N/mm"
    preload = "" if setup.pressure else f", {figure_text(setup.preload)} preload"
    left_as = f", {_LEFT_AS[cartridge]}" if cartridge else ""
    if setup.gap is None or gaps is None or not float(np.asarray(gaps[0])):
        return f"{spring}{preload}{left_as}"
    left, right = (number_text(float(np.asarray(gap)), 0) for gap in gaps)
    around = _GAP_AROUND.get(cartridge, "")
    return f"{spring}{preload}, gap {left if left == right else f'{left} left and {right} right'} mm{around}{left_as}"


def end_words(
    axle: Axle, stays: bool, setup: str, figures: OptionFigures | None, change: OptionFigures | None, problem: Problem | None
) -> str:
    """What an option does at one end."""
    if problem is not None:
        subject = f"{_ENDS[axle]} as it came in" if stays else _ENDS[axle]
        return f"{subject}: {problem.message} {problem.way_out}".rstrip()
    assert figures is not None
    name = f"{_ENDS[axle]} stays as it came in, {setup}" if stays else f"{_ENDS[axle]}: {setup}"
    gas = f", {figure_text(figures.gas_share)} of it from the gas" if figures.gas_share else ""
    sag, force = (_against(change, key) for key in ("rider_sag", "end_force"))
    return (
        f"{name}. Rider sag {_banded(figures.rider_sag)}{sag}; ride frequency {_banded(figures.frequency)}; "
        f"at full travel {_banded(figures.end_force)}{gas}{force}.{_behind_words(figures, change)}"
    )


def _behind_words(figures: OptionFigures, change: OptionFigures | None) -> str:
    """What stands behind the damper's oil, where a charge did that once."""
    if figures.behind is None:
        return ""
    return f" Behind the damper’s oil {_banded(figures.behind)} at rider sag{_against(change, 'behind')}."


def _against(changes: OptionFigures | None, name: str) -> str:
    """What a figure changes by against as found."""
    if changes is None:
        return ""
    change: Quantity = getattr(changes, name)
    return f", {_size(change)} {_way(change)} than as found" if float(size_text(change)) else ", as found"


def between_words(offer: Offer, one: Option, other: Option, told: OptionBetween) -> OptionBetween:
    """Two options with their words: the force curves, then the price, then what else the money buys."""
    curves = _curve_words(told) if told.same else tuple(_end_between_words(row, told) for row in told.ends)
    differs = (*_cartridges(one, other), *_differing(offer, one, other))
    lead = "What the money buys then:" if told.same else "They differ besides in:"
    if not differs:
        lead = "Nothing else that is entered tells them apart." if told.same else ""
    words = tuple(words for words in (*curves, *_backing_words(told), price_words(offer, one, other)) if words)
    return replace(told, words=words, lead=lead, differs=differs)


def _curve_words(told: OptionBetween) -> tuple[str, ...]:
    where = " and ".join(row.axle for row in told.ends)
    apart = " and ".join(f"{figure_text(row.apart)}" for row in told.ends)
    most = "nowhere apart" if all(not float(row.apart.text) for row in told.ends) else f"at most {apart} apart"
    return (f"Options {told.one} and {told.other} give the same force curve, {where}: {most}.",)


def _end_between_words(row: EndBetween, told: OptionBetween) -> str:
    name = _ENDS[row.axle]
    if row.same:
        most = "nowhere apart" if not float(row.apart.text) else f"at most {figure_text(row.apart)} apart"
        return f"{name}, options {told.one} and {told.other}: the same force curve, {most}."
    change = row.change
    figures = (("rider sag", change.rider_sag), ("ride frequency", change.frequency), ("force at full travel", change.end_force))
    said = ", ".join(_changed(label, figure) for label, figure in figures)
    return (
        f"{name}, option {told.other} against option {told.one}: {said}. Their force curves are at most "
        f"{figure_text(row.apart)} apart, at {figure_text(row.at)}."
    )


def _backing_words(told: OptionBetween) -> tuple[str, ...]:
    """What a charge does that no force curve shows."""
    return tuple(
        f"Behind the damper’s oil at rider sag, option {told.other} against option {told.one}: {_size(behind)} {_way(behind)}."
        for behind in (row.change.behind for row in told.ends)
        if behind is not None and float(size_text(behind))
    )


def _changed(label: str, figure: Quantity) -> str:
    return f"{label} {_size(figure)} {_way(figure)}" if float(size_text(figure)) else f"{label} the same"


def price_words(offer: Offer, one: Option, other: Option) -> str:
    """What the one costs more than the other; empty while either is not added up."""
    bills = [bill_of(offer, option) for option in (one, other)]
    if bills[0] is None or bills[1] is None:
        return ""
    more = bills[1].total - bills[0].total
    if not more:
        return f"Both cost {priced(bills[0].total, offer.currency)}."
    return f"Option {other.number} costs {priced(abs(more), offer.currency)} {'more' if more > 0 else 'less'}."


def _cartridges(one: Option, other: Option) -> tuple[OptionDiffers, ...]:
    """How each leaves a sealed cartridge, where they do not alike."""
    if one.cartridge == other.cartridge:
        return ()
    left_as = (_LEFT_AS.get(option.cartridge, "cartridge as it came in") for option in (one, other))
    first, second = (words.removeprefix("cartridge ") for words in left_as)
    return (OptionDiffers("Cartridge", first, second),)


def _differing(offer: Offer, one: Option, other: Option) -> tuple[OptionDiffers, ...]:
    """What the entries say of both that is not the same; what is not known of either nobody buys."""
    lines = [
        ("Adjusters", one.adjusters, other.adjusters),
        ("Valving", one.valving, other.valving),
        (f"Service per {PER_HOURS} h", *(_price(service_per_50_h(option), offer) for option in (one, other))),
        *(
            (f"“{words}”", *("answered" if number in option.answers else "left open" for option in (one, other)))
            for number, words in enumerate(offer.complaints, 1)
            if words
        ),
    ]
    return tuple(
        OptionDiffers(label, first or "nothing entered", second or "nothing entered")
        for label, first, second in lines
        if first != second
    )


def _price(amount: Decimal | None, offer: Offer) -> str:
    return "" if amount is None else priced(amount, offer.currency)


def _banded(figure: Quantity) -> str:
    return f"{banded_text(figure)} {figure.unit}".rstrip()


def _size(figure: Quantity) -> str:
    return f"{banded_text(figure, size_text(figure))} {figure.unit}".rstrip()


def _way(figure: Quantity) -> str:
    return "less" if figure.value < 0 else "more"
