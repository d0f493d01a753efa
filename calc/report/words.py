"""The sentences. Each is made from the same numbers that stand beside it, rounded the same way."""

from __future__ import annotations

from collections.abc import Callable

from calc.practice import Axle
from calc.report.quantity import figure_text, number_text, rate_text, size_text
from calc.report.types import Candidate, Legs, Quantity, SetupReport, Window, YardstickReport


def step_of(setup: SetupReport) -> Quantity:
    """What candidates are told apart by: an air spring's pressure, else the rate."""
    return setup.pressure or setup.rate


def named(setup: SetupReport) -> str:
    """That with its unit; of an unequal pair both rates."""
    return f"{pair_text(setup.pair)} N/mm" if setup.pair and not setup.pressure else figure_text(step_of(setup))


def pair_text(pair: Legs) -> str:
    """Both rates of an unequal pair, without unit: nobody sells their mean."""
    return f"{pair.left.text} left and {pair.right.text} right"


def spring_subject(setup: Candidate, known: bool = True) -> str:
    """A candidate as the subject of a sentence; `known`: the rate of what is in was read."""
    if setup.pressure:
        return named(setup)
    if setup.fitted and not known:
        return FITTED
    return _spring(setup)


def _spring(setup: SetupReport) -> str:
    return f"the pair of {pair_text(setup.pair)}" if setup.pair else setup.rate.text


def step_text(setup: SetupReport, value: float) -> str:
    """A rate or a pressure as it stands among others of its kind, without unit."""
    return number_text(value, setup.pressure.decimals) if setup.pressure else rate_text(value)


def rate_words(setup: SetupReport) -> str:
    """The rate, or both rates of an unequal pair and their mean."""
    return f"{pair_text(setup.pair)} (mean {setup.rate.text})" if setup.pair else setup.rate.text


def answer_words(axle: Axle, verdict: str, setup: Candidate, cause: str = "", in_known: bool = True, barred: str = "") -> str:
    """The answer as one sentence, or two where nothing can be chosen yet for a `cause`.

    `in_known`: what is in was read. Where it was not, it is not named by an assumed rate. `barred`: why what is in cannot stay.
    """
    if setup.pressure:
        missed = f"; {_missed(setup)}" if verdict == "nearest" else ""
        return f"{_air_words(setup, verdict, in_known)}{_gap_words(axle, setup)}{missed}."
    rate, preload = rate_words(setup), figure_text(setup.preload)
    what_is_in = f"the {rate}" if in_known else "what is in"
    if verdict == "open":
        spring = "fork spring" if axle == "front" else "rear spring"
        keep = f"Keep {what_is_in} for now and set the sag: {preload} preload{_gap_words(axle, setup)}."
        keep = f"What is in can't stay: it {barred}." if barred else keep
        return f"Can't choose a {spring} yet{f': {cause}' if cause else ''}. {keep}"
    if verdict == "keep":
        unit = " N/mm" if in_known else ""
        return f"Keep {what_is_in}{unit}: {preload} preload{_gap_words(axle, setup)}."
    if verdict == "nearest":
        near = _nearest(setup, f"{rate} N/mm", in_known)
        return f"Nothing on offer fits. {near} with {preload} preload{_gap_words(axle, setup)}; {_missed(setup)}."
    return f"Fit {rate} N/mm, {preload} preload{_gap_words(axle, setup)}."


def _nearest(setup: Candidate, text: str, in_known: bool = True) -> str:
    """Which is the nearest: what is in, or what is on offer."""
    if not setup.fitted:
        return f"The nearest is {text}"
    return f"What is in, {text}, is the nearest" if in_known else "What is in is the nearest"


def _missed(setup: Candidate) -> str:
    """What the nearest is outside of."""
    return ", ".join(one.words for one in setup.criteria if one.state == "outside")


def _gap_words(axle: Axle, setup: Candidate) -> str:
    by_other = setup.pressure and (setup.air_oil or setup.second_pressure)  # the end of the travel is not set by the gap
    if axle == "rear" or setup.gap is None or by_other:
        return ""
    oil = "" if setup.oil is None else f": {oil_words(setup.oil)}"
    return f", gap {figure_text(setup.gap)}{oil}"


def _air_words(setup: Candidate, verdict: str, in_known: bool) -> str:
    """A pressure that nobody read is not kept: it is pumped to."""
    first = {"keep": "Keep " if in_known else "Pump to ", "fit": "Pump to ", "nearest": "No pressure fits. "}[verdict]
    near = _nearest(setup, named(setup)) if in_known else f"The nearest is {named(setup)}"
    text = f"{first}{near if verdict == 'nearest' else named(setup)}"
    oil, second = setup.air_oil, setup.second_pressure
    if oil is not None:
        verb, amount = _oil_side(oil)
        text += ", main chamber as it is" if amount == "0" else f", main chamber: {verb} {amount} ml of oil or spacers"
    return text if second is None else f"{text}, second volume to {figure_text(second)}"


def oil_words(oil: Legs) -> str:
    """Oil to add to or take from each leg: "add 42 ml left, 45 right", "take out 8 ml a leg", "add 3 ml left, right leg as it is"."""
    (left_verb, left), (right_verb, right) = _oil_side(oil.left), _oil_side(oil.right)
    if (left_verb, left) == (right_verb, right):
        return f"{left_verb} {left} ml a leg" if left != "0" else "no oil to add"
    if right == "0":
        return f"{left_verb} {left} ml left, right leg as it is"
    if left == "0":
        return f"{right_verb} {right} ml right, left leg as it is"
    if left_verb == right_verb:
        return f"{left_verb} {left} ml left, {right} right"
    return f"{left_verb} {left} ml left, {right_verb} {right} ml right"


def _oil_side(oil: Quantity) -> tuple[str, str]:
    millilitres = size_text(oil)
    return ("take out" if oil.value < 0 and millilitres != "0" else "add", millilitres)


def _capital(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}"


def span_words(low: float | None, high: float | None, text: str) -> str:
    """Between which rider masses the choice, told as `text`, stays the same."""
    text = _capital(text)
    if low is None and high is None:
        return f"{text} is right for every rider within half as much or 24 kg."
    if low is None:
        return f"{text} is right for riders of up to {number_text(high or 0.0, 0)} kg in kit."
    if high is None:
        return f"{text} is right for riders from {number_text(low, 0)} kg in kit up."
    return f"{text} is right for riders of {number_text(low, 0)} to {number_text(high, 0)} kg in kit."


RUNS = "runs with your ± varied"
FITTED = "what is fitted"  # where nobody read its rate: an assumed one would read as known
Name = Callable[[float], str]


def count_words(tenths: dict[float, int], chosen: float, near: int, name: Name = rate_text) -> str:
    """How sure the choice is: in how many of ten runs it comes out, it or a spring within a step of it (`near`); `name` tells a
    rate, or both of an unequal pair.
    """
    mine = tenths.get(chosen, 0)
    ordered = sorted(tenths.items(), key=lambda t: (-t[1], t[0]))
    others = [f"{name(rate)} in {part}" for rate, part in ordered if part and rate != chosen]
    if 2 * mine >= 10:
        text = f"{_capital(name(chosen))} in {mine} of 10 {RUNS}"
        return f"{text}, {', '.join(others)}." if others else f"{text}."
    every = ", ".join(f"{name(rate)} in {part}" for rate, part in ordered if part)
    return f"{_capital(name(chosen))} or a step from it in {near} of 10 {RUNS}: {every}."


def open_words(low: float, high: float, undecided: bool, name: Name = rate_text) -> str:
    """Where the readings leave the spring open: the span; `undecided`: in some runs nothing can be built."""
    runs = f"{RUNS} that find a spring" if undecided else RUNS
    return f"From {name(low)} to {name(high)} N/mm in 8 of 10 {runs}."


def pressure_words(low: float, high: float, setup: SetupReport) -> str:
    """How sure a pressure is. Pressure is easily corrected, so its range is shown beside it, not in place of it."""
    first, last = (step_text(setup, value) for value in (low, high))
    span = f"{first} bar" if first == last else f"{first} to {last} bar"
    return f"{span} in 8 of 10 {RUNS}: pump, read the sag, and go on from there."


def load_words(axle: Axle, extra: float) -> str:
    """The present load against the standard rider's; `extra` [-] of it."""
    percent, where = number_text(abs(extra) * 100, 0), "fork" if axle == "front" else "rear"
    if percent == "0":
        return f"Your load on the {where} is the standard rider's."
    return f"Your load on the {where} is {percent} % {'more' if extra > 0 else 'less'} than the standard rider's."


def ride_words(chosen: Candidate, yardstick: YardstickReport, found: SetupReport | None, usual: Window, known: bool = True) -> str:
    """Ride frequencies: the chosen setup's, what it is measured by, the one as found; and what is usual. `known`: its rate
    or pressure was read.
    """
    subject = spring_subject(chosen, known)
    ride = f"{_capital(subject)} rides at {figure_text(chosen.frequency)}; {yardstick.words}"
    if found is not None and abs(step_of(found).value - step_of(chosen).value) > 1e-6:
        name = named(found) if found.pressure else _spring(found)
        fitted = f"the {name.removeprefix('the ')} as it came in" if known else FITTED
        ride += f"; {fitted} at {figure_text(found.frequency)}"
    return f"{ride}. Usual for this riding: {usual.low:g}-{usual.high:g} Hz."


def yardstick_words(source: str, frequency: str, standard: str) -> str:
    """What the choice is measured by: a frequency with its unit, and where it is from."""
    if source == "frequency":
        return f"{frequency} is wanted"
    if source == "free sag":
        return f"the free sag wanted asks for {frequency}"
    if source == "standard":
        return f"the standard rider on the standard setup at {frequency}"
    side = "softer" if source == "softest usual" else "stiffer"
    return f"the standard setup at {standard} is {side} than usual, so the choice goes by {frequency}"


def best_words(best: float, chosen: float, step: float, name: Name = rate_text) -> str:
    """What would be nearest where what is in stays."""
    steps = "one step" if abs(best - chosen) <= 1.001 * step else "no more than springs sold alike differ by"
    return f"Nearest to the standard would be {name(best)}, {steps}."


def preload_words(preload: Quantity, low: float, high: float) -> str:
    """That it takes more preload than the trade usually gives, from `low` to `high` [its unit]."""
    return f"{figure_text(preload)} preload is more than usual ({low:g} to {high:g}): a stiffer spring does it with less."


def sag_choice_words(less: float, more: float, chosen: float, off: float, name: Name = rate_text) -> str:
    """What a little less or more rider sag would choose."""
    by = f"{number_text(off, 0)} mm"
    if less == more == chosen:
        return f"With {by} less or more rider sag it would be the same spring."
    return f"With {by} less rider sag it would be {name(less)}, with {by} more {name(more)}."
