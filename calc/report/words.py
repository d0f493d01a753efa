"""The sentences. Each is made from the same numbers that stand beside it, rounded the same way."""

from __future__ import annotations

from calc.practice import Axle
from calc.report.data import Data, number_text, rate_text, told


def named(setup: Data) -> str:
    """What candidates are told apart by, with its unit: an air spring's pressure, else the rate."""
    return told(setup["pressure"]) if setup["pressure"] else f"{rate_text(setup['rate']['value'])} N/mm"


def step_of(setup: Data) -> float:
    """The number that candidates are told apart by: bar or N/mm."""
    return float(setup["pressure" if setup["pressure"] else "rate"]["value"])


def step_text(setup: Data, value: float) -> str:
    """A rate or a pressure as it stands among others of its kind, without unit."""
    return number_text(value, setup["pressure"]["decimals"]) if setup["pressure"] else rate_text(value)


def rate_words(setup: Data) -> str:
    """The rate, or both rates of an unequal pair and their mean."""
    mean = rate_text(setup["rate"]["value"])
    pair = setup["pair"]
    if pair is None:
        return mean
    return f"{rate_text(pair['left']['value'])} left and {rate_text(pair['right']['value'])} right (mean {mean})"


def answer_words(axle: Axle, setup: Data, oil: dict[str, Data] | None, leave: bool, span: tuple[float, float] | None = None) -> str:
    """The answer as one sentence; `span` [N/mm] where what is known leaves the rate open: then no single rate is told alone."""
    start = _air_words(setup, leave) if setup["pressure"] else _spring_words(setup, leave, span)
    if axle == "rear" or oil is None:
        return f"{start}."
    return f"{start}, gap {told(setup['gap'])}: {oil_words(oil)}."


def _spring_words(setup: Data, leave: bool, span: tuple[float, float] | None) -> str:
    rate, preload = rate_words(setup), told(setup["preload"])
    if span is not None:
        return f"From {rate_text(span[0])} to {rate_text(span[1])} N/mm, not settled yet; as your readings stand {rate} with {preload} preload"
    return f"Leave the {rate} N/mm, with {preload} preload" if leave else f"Fit {rate} N/mm, {preload} preload"


def _air_words(setup: Data, leave: bool) -> str:
    text = f"Leave {named(setup)}" if leave else f"Pump to {named(setup)}"
    oil, second = setup["air_oil"], setup["second_pressure"]
    if oil is not None:
        verb, amount = _oil_side(oil)
        text += ", main chamber as it is" if amount == "0" else f", main chamber: {verb} {amount} ml of oil or spacers"
    return text if second is None else f"{text}, second volume to {told(second)}"


def oil_words(oil: dict[str, Data]) -> str:
    """Oil to add to or take from each leg: "add 42 ml left, 45 right", "take out 8 ml a leg"."""
    (left_verb, left), (right_verb, right) = (_oil_side(oil[side]) for side in ("left", "right"))
    if (left_verb, left) == (right_verb, right):
        return f"{left_verb} {left} ml a leg" if left != "0" else "no oil to add"
    if left_verb == right_verb:
        return f"{left_verb} {left} ml left, {right} right"
    return f"{left_verb} {left} ml left, {right_verb} {right} ml right"


def _oil_side(oil: Data) -> tuple[str, str]:
    millilitres = number_text(abs(oil["value"]), 0)
    return ("take out" if oil["value"] < 0 and millilitres != "0" else "add", millilitres)


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


def pressure_words(low: float, high: float, setup: Data) -> str:
    """How sure a pressure is. Pumping is undone in a minute: the span is told beside it, not in place of it."""
    first, last = (step_text(setup, value) for value in (low, high))
    span = f"{first} bar" if first == last else f"{first} to {last} bar"
    return f"{span} in 8 of 10 draws of your readings: pump, read the sag, and go on from there."


def front_why(extra: float, chosen: Data, standard: Data, found: Data | None, usual: Data) -> list[str]:
    """Why this front spring: load against the standard rider's, and the frequencies."""
    percent = number_text(abs(extra) * 100, 0)
    more = f"{percent} % {'more' if extra > 0 else 'less'} on the fork than" if percent != "0" else "as much on the fork as"
    lines = [f"You put {more} the rider it is sold for."]
    name = named if chosen["pressure"] else lambda setup: rate_text(setup["rate"]["value"])
    ride = f"{name(chosen)} rides at {told(chosen['frequency'])}, as sold {told(standard['frequency'])}"
    if found is not None and abs(step_of(found) - step_of(chosen)) > 1e-6:
        ride += f"; your {name(found)} as found rides at {told(found['frequency'])}"
    lines.append(f"{ride}. Usual for this riding: {usual['low']:g}-{usual['high']:g} Hz.")
    return lines


def rear_why(chosen: Data, target_free: float, found: Data | None) -> list[str]:
    """Why this rear spring: its free sag at the wanted rider sag."""
    lines = [
        f"At {told(chosen['rider_sag'])} rider sag, {rate_text(chosen['rate']['value'])} N/mm leaves {told(chosen['free_sag'])} free sag; "
        f"{number_text(target_free, 0)} mm is wanted."
    ]
    if found is not None:
        free = "no free sag, preload alone holds the bike" if found["topped_out"] else f"{told(found['free_sag'])} free sag"
        lines.append(f"As found: {free}, {told(found['rider_sag'])} rider sag.")
    return lines
