"""What a bench push says, in words: each number in them is one of the report's own."""

from __future__ import annotations

import math
from itertools import combinations

from calc.job import Job
from calc.report.quantity import banded_text, number_text, size_text
from calc.report.types import PushFurther, PushReport, PushRival
from calc.report.types.push import PushState
from calc.uncertainty.rivals import settled

LABELS: dict[PushState, str] = {
    "open": "As read",
    "as built": "Sealed as built",
    "seal leaking": "Seal leaking",
    "oil moved": "Oil moved",
    "opened into one": "Opened to the leg",
}
_IF: dict[PushState, str] = {
    "open": "it is as read",
    "as built": "it is as built",
    "seal leaking": "the seal leaks",
    "oil moved": "oil has moved",
    "opened into one": "it was opened",
}
_NOUNS: dict[PushState, str] = {
    "open": "the leg as read",
    "as built": "a sealed cartridge",
    "seal leaking": "a leaking seal",
    "oil moved": "oil that has moved",
    "opened into one": "an opened cartridge",
}
NOTE = "All states were taken as equally likely beforehand. Pushed slowly, a small leak looks like a wide one."
_READ_GAP = 2.0  # mm, 95 %: how well a gap is read again; common practice, no source
_ALIKE = 0.1  # of what their difference would scatter by: two states that press alike
_VAGUE = 20.0  # mm either way: then the push tells little of the gap
_PRESSURE = (
    "A charged cartridge is under pressure, and may be even with a leaking seal: leave opening it to a workshop that has the "
    "maker's instructions."
)
_SAGS = "Sags can't show a lost seal."
_BACKED = "nothing backs the damper's oil: the damping fades when ridden hard"
_MEANS: dict[PushState, str] = {
    "as built": "The cartridge holds its charge: look for the fault elsewhere.",
    "seal leaking": f"Its charge is gone, so {_BACKED}.",
    "opened into one": f"Its spaces were joined, so there is no charge and {_BACKED}.",
}
_AGAIN = "Is the scale set to 0, the spring out or in as you say, the gap the one last set? Read it again, in and out."


def verdict_words(report: PushReport) -> str:
    """The verdict in one sentence."""
    best = report.rivals[0]
    if not any(rival.fits for rival in report.rivals):
        return "Can't tell: no explanation fits these points. Measure again."
    if best.state == "open":
        return "These points fit the leg as you read it."
    if len(report.states) == 1:
        return f"{best.label}: {best.chance.text} in 100."
    if report.states:
        return f"The charge is gone, {_together(report)} in 100: the seal leaks, or the cartridge was opened to the leg."
    if settled({rival.state: rival.chance.value / 100.0 for rival in report.rivals if rival.fits}):
        points = _listed([f"{report.points[i].stroke.text} mm" for i in report.doubtful], "and")
        return f"Can't tell: it hangs on the point{'s' if len(report.doubtful) > 1 else ''} at {points}."
    in_question = [f"{_low(rival.label)} {rival.chance.text}" for rival in report.rivals if rival.open]
    return f"Can't tell: {_listed(in_question, 'or')} in 100."


def _together(report: PushReport) -> str:
    """The chance of the states that are told together."""
    whole = sum(rival.chance.value for rival in report.rivals if rival.state in report.states)
    return "over 99" if whole > 99.5 else number_text(whole, 0)


def push_words(job: Job, report: PushReport) -> list[str]:
    """What follows from the verdict, in the order of the bench."""
    if not any(rival.fits for rival in report.rivals):
        return [*_doubts(report), _AGAIN]
    gap = _gap_words(job, report.rivals[0]) if report.states or report.rivals[0].state == "open" else []
    if report.rivals[0].state == "open":
        return [*_doubts(report), *gap]
    in_question = [rival for rival in report.rivals if rival.open]
    words = [*_doubts(report), *_meaning(report), *gap, *_next(report, in_question)]
    return [*words, *([] if report.states == ("as built",) else [_PRESSURE]), _SAGS]


def _meaning(report: PushReport) -> list[str]:
    if len(report.states) > 1:
        return [f"Either way {_BACKED}."]
    if not report.states and report.doubtful:
        return []
    if not report.states:
        out = [rival for rival in report.rivals if rival.state == "as built" and not rival.open]
        return [f"Sealed as built is out of the question: {rival.chance.text} in 100." for rival in out]
    moved = report.rivals[0].moved
    if report.states != ("oil moved",) or moved is None:
        return [_MEANS[state] for state in report.states]
    ways, by = ("left the cartridge", "less") if moved.value > 0 else ("gone into the cartridge", "more")
    return [
        f"{banded_text(moved, size_text(moved))} ml of oil have {ways}: {by} stands behind its damper, and {by} air over the oil.",
        "The seal between the two is worn: have it renewed, and both oils set anew.",
    ]


def _gap_words(job: Job, rival: PushRival) -> list[str]:
    """The gap that the push alone makes it, beside the one that was read."""
    gap = rival.gap
    if gap is None or gap.plus_minus_95 is None:
        return []
    if gap.plus_minus_95 > _VAGUE:
        return [f"These points alone tell little of the gap: {banded_text(gap)} mm."]
    side = "right" if job.choice("front.push_leg") == "right" else "left"
    paths = ("front.push_gap", f"front.gap_{side}")
    path = next((path for path in paths if job.fields[path].applies and job.entered(path)), None)
    said = f"By these points alone the gap last set was {banded_text(gap)} mm"
    if path is None or job.choice("front.gap_from") != "read":
        return [f"{said}."]
    read = job.fields[path].reading
    assert read is not None
    room = math.hypot(gap.plus_minus_95, read.plus_minus_95)
    beside = number_text(read.value, 0)
    fits = abs(gap.value - read.value) <= room
    return [f"{said}; the {beside} that was read fits that." if fits else f"{said}, not the {beside} that was read. Read it again."]


def _next(report: PushReport, in_question: list[PushRival]) -> list[str]:
    """What would tell those apart that are still in question."""
    if len(in_question) < 2:
        return []
    words = [] if report.further is None else [_further_words(report.further)]
    gaps = [rival for rival in in_question if rival.gap_now is not None]
    if any(_apart(one, other) for one, other in combinations(gaps, 2)):
        gaps_now = [f"{banded_text(rival.gap_now)} mm if {_IF[rival.state]}" for rival in gaps if rival.gap_now is not None]
        words.append(f"Reading the gap now would tell: {_listed(gaps_now, 'or')}.")
    if report.read != "both" and not report.states:
        words.append("Read every stroke going in and coming out and enter the middle: friction then drops out.")
    return words


def _further_words(further: PushFurther) -> str:
    one, other = further.expected
    apart, names = further.apart, f"{_NOUNS[one.state]} and {_NOUNS[other.state]}"
    if apart.value < _ALIKE * (apart.plus_minus_95 or 0.0):
        return f"{names[0].upper()}{names[1:]} press alike: no stroke tells them apart."
    if further.tells:
        forces = f"{one.force.text} N if {_IF[one.state]}, {other.force.text} N if {_IF[other.state]}"
        return f"Next, read {further.stroke.text} mm: {forces}."
    return f"One more stroke won't tell {names} apart: at best, at {further.stroke.text} mm, they differ by {banded_text(apart)} N."


def _apart(one: PushRival, other: PushRival) -> bool:
    """Whether the gap, read again, would tell two states apart."""
    gaps = one.gap_now, other.gap_now
    assert gaps[0] is not None
    assert gaps[1] is not None
    room = math.hypot(gaps[0].plus_minus_95 or 0.0, gaps[1].plus_minus_95 or 0.0, _READ_GAP)
    return abs(gaps[0].value - gaps[1].value) > room


def _doubts(report: PushReport) -> list[str]:
    """Points that fit no explanation that is in question, or the likeliest where none is."""
    best = report.rivals[0]
    doubts = []
    for i in report.doubtful:
        off, stroke = best.residuals[i], report.points[i].stroke
        way = "more" if off.value > 0 else "less"
        doubts.append(
            f"The point at {stroke.text} mm does not fit: {size_text(off)} N {way} than if {_IF[best.state]}. Read it again."
        )
    if not doubts or best.state == "open":
        return doubts
    them = "them" if len(doubts) > 1 else "it"
    others = [f"{_low(rival.label)} {rival.without.text}" for rival in report.rivals if rival.without is not None]
    without = f"Without {them}: {_listed(others, 'or')} in 100." if others else f"Without {them} nothing fits either."
    return [*doubts, without]


def _low(label: str) -> str:
    return label[0].lower() + label[1:]


def _listed(parts: list[str], word: str) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {word} {parts[-1]}"
