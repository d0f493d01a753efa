"""The sentences. Each is made from the same numbers that stand beside it, rounded the same way."""

from __future__ import annotations

from calc.practice import Axle
from calc.report.quantity import figure_text, number_text, rate_text, size_text
from calc.report.types import Candidate, Legs, Quantity, SetupReport, Window


def step_of(setup: SetupReport) -> Quantity:
    """What candidates are told apart by: an air spring's pressure, else the rate."""
    return setup.pressure or setup.rate


def named(setup: SetupReport) -> str:
    """That with its unit."""
    return figure_text(step_of(setup))


def step_text(setup: SetupReport, value: float) -> str:
    """A rate or a pressure as it stands among others of its kind, without unit."""
    return number_text(value, setup.pressure.decimals) if setup.pressure else rate_text(value)


def rate_words(setup: SetupReport) -> str:
    """The rate, or both rates of an unequal pair and their mean."""
    mean, pair = setup.rate.text, setup.pair
    return mean if pair is None else f"{pair.left.text} left and {pair.right.text} right (mean {mean})"


def answer_words(axle: Axle, setup: Candidate, leave: bool, span: tuple[float, float] | None = None) -> str:
    """The answer as one sentence; `span` [N/mm] where what is known leaves the rate open: then no single rate is told alone."""
    start = _air_words(setup, leave) if setup.pressure else _spring_words(setup, leave, span)
    if axle == "rear" or setup.oil is None or setup.gap is None:
        return f"{start}."
    return f"{start}, gap {figure_text(setup.gap)}: {oil_words(setup.oil)}."


def _spring_words(setup: SetupReport, leave: bool, span: tuple[float, float] | None) -> str:
    rate, preload = rate_words(setup), figure_text(setup.preload)
    if span is not None:
        return f"From {rate_text(span[0])} to {rate_text(span[1])} N/mm, not settled yet; as your readings stand {rate} with {preload} preload"
    return f"Leave the {rate} N/mm, with {preload} preload" if leave else f"Fit {rate} N/mm, {preload} preload"


def _air_words(setup: SetupReport, leave: bool) -> str:
    text = f"Leave {named(setup)}" if leave else f"Pump to {named(setup)}"
    oil, second = setup.air_oil, setup.second_pressure
    if oil is not None:
        verb, amount = _oil_side(oil)
        text += ", main chamber as it is" if amount == "0" else f", main chamber: {verb} {amount} ml of oil or spacers"
    return text if second is None else f"{text}, second volume to {figure_text(second)}"


def oil_words(oil: Legs) -> str:
    """Oil to add to or take from each leg: "add 42 ml left, 45 right", "take out 8 ml a leg"."""
    (left_verb, left), (right_verb, right) = _oil_side(oil.left), _oil_side(oil.right)
    if (left_verb, left) == (right_verb, right):
        return f"{left_verb} {left} ml a leg" if left != "0" else "no oil to add"
    if left_verb == right_verb:
        return f"{left_verb} {left} ml left, {right} right"
    return f"{left_verb} {left} ml left, {right_verb} {right} ml right"


def _oil_side(oil: Quantity) -> tuple[str, str]:
    millilitres = size_text(oil)
    return ("take out" if oil.value < 0 and millilitres != "0" else "add", millilitres)


def span_words(low: float | None, high: float | None, text: str) -> str:
    """Between which rider masses the choice, told as `text`, stays the same."""
    if low is None and high is None:
        return f"Stays {text} for every rider within half as much or 24 kg."
    if low is None:
        return f"Stays {text} up to {number_text(high or 0.0, 0)} kg kitted."
    if high is None:
        return f"Stays {text} from {number_text(low, 0)} kg kitted up."
    return f"Stays {text} for {number_text(low, 0)} to {number_text(high, 0)} kg kitted."


def count_words(tenths: dict[float, int], chosen: float) -> str:
    """How sure the choice is, counted in draws of ten."""
    mine = tenths.get(chosen, 0)
    others = [
        f"{rate_text(rate)} in {part}" for rate, part in sorted(tenths.items(), key=lambda t: -t[1]) if part and rate != chosen
    ]
    text = f"{rate_text(chosen)} in {mine} of 10 draws of your readings"
    return f"{text}, {', '.join(others)}." if others else f"{text}."


def unsettled_words(low: float, high: float, chosen: float, undecided: bool) -> str:
    """Where the readings leave the rate open: the span, not one rate; `undecided`: in some draws every spring is barred."""
    draws = "draws of your readings that find a spring" if undecided else "draws of your readings"
    span = f"{rate_text(low)} to {rate_text(high)} N/mm in 8 of 10 {draws}"
    return f"Not settled yet: {span}. {rate_text(chosen)} is what they give as they stand. Do not order; measure first."


def pressure_words(low: float, high: float, setup: SetupReport) -> str:
    """How sure a pressure is. Pumping is undone in a minute: the span is told beside it, not in place of it."""
    first, last = (step_text(setup, value) for value in (low, high))
    span = f"{first} bar" if first == last else f"{first} to {last} bar"
    return f"{span} in 8 of 10 draws of your readings: pump, read the sag, and go on from there."


def front_why(extra: float, chosen: SetupReport, standard: SetupReport, found: SetupReport | None, usual: Window) -> list[str]:
    """Why this front spring: load against the standard rider's, and the frequencies."""
    percent = number_text(abs(extra) * 100, 0)
    more = f"{percent} % {'more' if extra > 0 else 'less'} on the fork than" if percent != "0" else "as much on the fork as"
    lines = [f"You put {more} the rider it is sold for."]
    name = named if chosen.pressure else lambda setup: setup.rate.text
    ride = f"{name(chosen)} rides at {figure_text(chosen.frequency)}, as sold {figure_text(standard.frequency)}"
    if found is not None and abs(step_of(found).value - step_of(chosen).value) > 1e-6:
        ride += f"; your {name(found)} as found rides at {figure_text(found.frequency)}"
    lines.append(f"{ride}. Usual for this riding: {usual.low:g}-{usual.high:g} Hz.")
    return lines


def rear_why(chosen: SetupReport, target_free: Quantity, found: SetupReport | None) -> list[str]:
    """Why this rear spring: its free sag at the wanted rider sag."""
    lines = [
        f"At {figure_text(chosen.rider_sag)} rider sag, {named(chosen)} leaves {figure_text(chosen.free_sag)} free sag; "
        f"{figure_text(target_free)} is wanted."
    ]
    if found is not None:
        free = "no free sag, preload alone holds the bike" if found.topped_out else f"{figure_text(found.free_sag)} free sag"
        lines.append(f"As found: {free}, {figure_text(found.rider_sag)} rider sag.")
    return lines
