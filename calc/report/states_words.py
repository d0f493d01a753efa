"""Sentences on the states of a fork, each made of the figures that stand beside it; and the same for a customer."""

from __future__ import annotations

from calc.conditions.in_state import InState, State
from calc.conditions.states import States
from calc.end.limits import Limits
from calc.job import Job
from calc.options.curves import SAME
from calc.report.quantity import banded_text, figure_text, number_text, quantity, size_text
from calc.report.types import Quantity, Replacement, StateFigures

_MEANS: dict[State, str] = {
    "as built": "sealed, with its charge",
    "charge lost": "sealed, its gas at no more than the air outside",
    "seal leaking": "what was in the cartridge and the leg's own air are at one pressure",
    "oil moved": "sealed, some of its oil on the other side of the seal",
    "opened into one": "one space with the leg, bled",
    "preload replaced": "the rider sag set as built, the oil left alone",
    "gap replaced": "the force at full travel set as built, the preload left alone",
    "both replaced": "rider sag and force at full travel set as built",
}
_PLAIN: dict[State, str] = {
    "charge lost": "If the gas in it is lost",
    "seal leaking": "If its seal leaks",
    "opened into one": "If the damper is opened to the fork",
    "both replaced": "Opened, with spring and oil set to suit",
}


def row_words(how: State, label: str, told: StateFigures, out: float = 0.0) -> str:
    """A state's figures in a sentence; `out`: in what share of the runs it cannot be."""
    bars = [banded_text(one) for one in told.behind]
    sag, times, share = (banded_text(one) for one in (told.rider_sag, told.end_multiple, told.gas_share))
    shows = "" if told.gap_now is None else f" Its oil shows a gap of {figure_text(told.gap_now)}."
    left = f" In {number_text(100.0 * out, 0)} of 100 runs it could not be so." if round(100.0 * out) else ""
    return (
        f"{label}, {_MEANS[how]}: rider sag {sag} mm; at full travel {times} times the rider load, "
        f"{share} % of it from the gas; behind the damper's oil {bars[0]}, {bars[1]} and {bars[2]} bar."
        f"{shows}{left}"
    )


def plain_words(how: State, told: StateFigures, built: StateFigures | None, moved: Quantity, into: bool) -> str:
    """A state in one sentence that a customer understands; none of a fork with half of its work done."""
    sag = f"{told.rider_sag.text} mm"
    if how == "as built":
        return f"As it was made, the fork keeps the oil in its damper pressed, and it sinks {sag} with you on it."
    if how == "oil moved":
        way = "into" if into else "out of"
        start = f"If {moved.text} ml of oil creeps {way} the damper"
    elif how in _PLAIN:
        start = _PLAIN[how]
    else:
        return ""
    if built is None:
        return f"{start}, it sinks {sag} with you on it."
    deeper = int(_number(told.rider_sag) - _number(built.rider_sag))
    sinks = f"it sinks {sag}, {abs(deeper)} mm {'more' if deeper > 0 else 'less'}" if deeper else f"it sinks {sag} as before"
    harder = _number(told.end_multiple) - _number(built.end_multiple)
    felt = harder and abs(told.end_force.value / built.end_force.value - 1.0) > SAME
    end = f", and is {'harder' if harder > 0 else 'softer'} at the end" if felt else ""
    # Less pressure behind the oil at half travel, and it foams and cavitates sooner.
    fades = _number(told.behind[1]) < _number(built.behind[1])
    return f"{start}, {sinks}{end}{'; on a hard ride its damping may fade' if fades else ''}."


def _number(figure: Quantity) -> float:
    """A figure as it is read."""
    return float(figure.text.replace("−", "-"))


def given_back(figures: dict[State, StateFigures], set_anew: Replacement | None, why: str) -> tuple[str, str]:
    """What gives back the push on the rod, and the gas's room, by the replacement that sets the most; `why` there is none."""
    if set_anew is None:
        return (f"Nothing replaces it: {why}",) * 2
    now, was = figures[set_anew.state], figures["as built"]
    push = "No coil spring is in, so no preload can give it back."
    if set_anew.preload is not None and set_anew.more is not None:
        way = "less" if set_anew.more.value < 0 else "more"
        push = (
            f"Preload: {size_text(set_anew.more)} mm {way}, {set_anew.preload.text} mm in all. Rider sag is then "
            f"{figure_text(now.rider_sag)}; it was {figure_text(was.rider_sag)}."
        )
    room = why
    if set_anew.gap is not None:
        room = (
            f"Oil: gap {figure_text(set_anew.gap)}, read as in an open leg{_oil_words(set_anew.oil)}. Full travel is then "
            f"{now.end_multiple.text} times the rider load; it was {was.end_multiple.text}."
        )
    return push, room


def _oil_words(oil: Quantity | None) -> str:
    if oil is None or not float(size_text(oil)):
        return ""
    return f", {size_text(oil)} ml {'out of' if oil.value < 0 else 'into'} each leg"


def backing_words(bars: tuple[Quantity, ...]) -> str:
    """What must do what the pressure behind the damper's oil did."""
    most = max(bars, key=lambda bar: bar.value)
    if _number(most) <= 0:
        return "No less stands there than as built: nothing is to be replaced."
    return (
        f"Neither spring nor oil brings it back: that is work on the damper. The base valve must hold up to {most.text} bar more, "
        f"or the piston ask {most.text} bar less."
    )


def caution_words(one: InState, by_preload: bool, by_gap: bool, bounds: Limits | None) -> str:
    """What speaks against setting it so."""
    if bounds is None:
        return ""
    said = []
    if by_preload:
        said.append(_beyond("preload", float(one.setup.preload), bounds.preload, bounds.preload_read))
    if by_gap and bounds.gap is not None:
        said.append(_beyond("gap", float(one.setup.gap), bounds.gap, bounds.gap_read))
    return " ".join(words for words in said if words)


def _beyond(what: str, value: float, bounds: tuple[float, float], read: tuple[bool, bool]) -> str:
    low, high = bounds
    if low <= value <= high:
        return ""
    limit, which, known = (low, "least", read[0]) if value < low else (high, "most", read[1])
    is_so = "is" if known else "is assumed to be"
    return f"A {what} of {number_text(value, 0)} mm: {number_text(limit, 0)} mm {is_so} the {which}."


def build_words(job: Job, replacements: tuple[Replacement, ...]) -> str:
    """What a tap on a replacement does."""
    if not replacements:
        return ""
    aim = "This gives back what the fork did as built, for whoever that suited; the answer at Front sets it for this rider."
    if any(one.entries for one in replacements):
        return (
            f"{aim} Put in as built: springs as found, and the gap as found where it is not set anew. Read each back at the bench."
        )
    label = job.fields["front.cartridge_state"].field.label
    return f"{aim} To put one in as built, enter “Opened to the leg” at {label} first, and the gap as it is read then."


def note_words(job: Job, found: States) -> str:
    """What all rows rest on."""
    gap = quantity(found.shut_gap, "mm", "around the shut cartridge", 0)
    moved = quantity(abs(found.moved), "ml", "oil moved", 0, "mm3")
    way = "into" if found.moved < 0 else "out of"
    assumed = ", an example, as nobody entered how much" if found.assumed else ""
    opened = job.choice("front.cartridge_state") == "opened into one"
    as_sold = " as sold" if opened and not job.entered("front.push_gap") else ""
    return (
        f"Springs as found in every row, preload and oil too where nothing is replaced; oil by a gap of {gap.text} mm{as_sold} "
        f"around the shut cartridge. Oil moved: {moved.text} ml {way} the cartridge{assumed}. Pressures are over the air outside; "
        "at half and full travel the leg got there fast from its rider sag."
    )
