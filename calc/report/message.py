"""What a customer is sent when the bike is handed over: what was done, what it does now, what to look for, when to come back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from calc.job import Job
from calc.model.origins import gaps_were_read
from calc.practice import AXLES, Axle
from calc.report.damping import clickers
from calc.report.names import rate_was_read
from calc.report.quantity import figure_text, number_text, size_text
from calc.report.types import EndReport, Ends, FoundSetupReport, Quantity, Report, SetupReport, WholeBike
from calc.report.words import pair_text

OPENED = "opened into one"
OIL_MOVED = 3.0  # mm of the gap, from which it is worth telling
READ_TO = 5.0  # mm: what a tape beside a bike is read to; common practice, no source
SPRING_SET = 2.0  # mm of preload, the same
LOOSE = 20.0  # mm either way: a drop that is known no better is no check; the same
_MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"]
_NAMES: dict[Axle, str] = {"front": "front", "rear": "rear"}
_SPRINGS: dict[Axle, str] = {"front": "fork springs", "rear": "rear spring"}
_ABOARD = {
    "nothing": "with you on it in all your kit",
    "passenger": "with you and your passenger on it",
    "luggage": "with you and your luggage on it",
    "both": "with you, your passenger and your luggage on it",
}
_POSTURE = {"standing": "standing on the pegs", "sitting": "sitting as you ride"}

FIRST_RIDE = (
    "First ride: take it easy for ten minutes, then stop and look. Is there oil on the fork legs? Is a bolt loose? Does something "
    "rub? If so, do not ride on. Call me. After one or two hours of riding, use the tape again. Change one thing at a time, and "
    "write it down."
)
ALARM = "Come back at once if oil shows, if it knocks, or if the bike sits lower than it did."
BOOK = "The book of your bike says when the fork and the shock need new oil."


@dataclass(frozen=True)
class _Left:
    """An end as it is left: built, or planned; `open`, its springs cannot be chosen yet: what is in stays, or others wait."""

    axle: Axle
    setup: SetupReport
    built: bool
    found: FoundSetupReport | None
    open: bool = False

    @property
    def halves(self) -> list[float | None]:
        """The +/- [mm] of both sags."""
        return _halves(self.setup)

    @property
    def checked(self) -> bool:
        """Whether its sags are known well enough to be checked with a tape."""
        return not self.open and checkable(self.setup)


def checkable(setup: SetupReport) -> bool:
    """Whether the sags of a setup are known well enough for a tape to find them, or not to."""
    return all(half is None or half <= LOOSE for half in _halves(setup))


def _halves(setup: SetupReport) -> list[float | None]:
    return [setup.free_sag.plus_minus_95, setup.rider_sag.plus_minus_95]


def message(job: Job, whole: WholeBike, ends: Ends) -> tuple[str, ...]:
    """The message, a paragraph each.

    Parameters: job; whole, what the report says beside its ends; ends.
    Returns: paragraphs; none where neither end has anything to tell.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/report/test_message.py`.
    """
    left = [one for axle in AXLES if (one := _left(axle, ends.front if axle == "front" else ends.rear)) is not None]
    if not left:
        return ()
    done = [f"{_opening(left)} {' '.join(words for one in left for words in _done(job, one))}"]
    return (_title(whole), *done, _tape(job, left), FIRST_RIDE, _come_back(whole))


def message_text(report: Report) -> str:
    """The message as plain text, a line between paragraphs; why there is none."""
    return "\n\n".join(report.message) or "Neither end has anything to tell yet: see the report."


def _left(axle: Axle, end: EndReport) -> _Left | None:
    if end.state == "refused":
        return None
    if end.built is not None:
        return None if end.built.setup is None else _Left(axle, end.built.setup, True, end.as_found.setup)
    return (
        _Left(axle, end.chosen, False, end.as_found.setup, end.verdict == "open" or bool(end.doubt)) if end.state == "ok" else None
    )


def _title(whole: WholeBike) -> str:
    name = whole.header.name or "Your bike"
    return ", ".join(part for part in (name, _day(whole.header.date)) if part) + (
        " (demo, invented)." if whole.header.invented else "."
    )


def _day(text: str) -> str:
    """A date as people write it; one that is no date stays as it was typed."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return text
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def _opening(left: list[_Left]) -> str:
    """Whether the work is done, told of each end where it is not alike, and of one that has no answer."""
    if len(left) == 1:
        other = "rear" if left[0].axle == "front" else "front"
        said = "is done" if left[0].built else "is planned, not done yet"
        return f"The {_NAMES[left[0].axle]} {said}. Of the {other} there is nothing to tell yet."
    if all(one.built for one in left):
        return "Your bike is done."
    if not any(one.built for one in left):
        return "This is the plan. Nothing is done yet."
    return " ".join(f"The {_NAMES[one.axle]} {'is done' if one.built else 'is planned, not done yet'}." for one in left)


def _done(job: Job, one: _Left) -> list[str]:
    """What was changed at an end, or will be."""
    air = [] if one.setup.pressure is None else [_air_words(one, one.setup.pressure)]
    springs = [] if one.setup.rate.value == 0 else _spring_words(job, one)
    return [*air, *springs, *([] if one.open else _oil_words(job, one)), *_damper_words(job, one)]


def _air_words(one: _Left, pressure: Quantity) -> str:
    return f"The air in the fork {'is' if one.built else 'will be'} at {figure_text(pressure)}, cold. Look at it before each ride."


def _spring_words(job: Job, one: _Left) -> list[str]:
    name, found = _SPRINGS[one.axle], one.found
    if one.open and not getattr(one.setup, "fitted", False):
        suits = "suits" if one.axle == "rear" else "suit"
        return [f"Which {name} {suits} you cannot be said yet: the bike is measured once more first."]
    now = f"{pair_text(one.setup.pair)} N/mm" if one.setup.pair else figure_text(one.setup.rate)
    verb = ("is" if one.axle == "rear" else "are") if one.built else "will be"
    if found is None or not rate_was_read(job, one.axle):
        stays = getattr(one.setup, "fitted", False)
        return [f"The {name} {'stays' if one.axle == 'rear' else 'stay'}." if stays else f"The {name} {verb} {now}."]
    apart = one.setup.rate.value - found.rate.value
    if one.setup.rate.text != found.rate.text:
        before = f"{pair_text(found.pair)}" if found.pair else found.rate.text
        return [f"The {name} {verb} {'stiffer' if apart > 0 else 'softer'}: {now}, before {before}."]
    stay = "stays" if one.axle == "rear" else "stay"
    if one.open:
        which = "which one suits" if one.axle == "rear" else "which ones suit"
        return [f"The {name} {stay} for now, {now}: {which} you cannot be said yet.", *_preload_words(job, one, found)]
    return [f"The {name} {stay}, {now}.", *_preload_words(job, one, found)]


def _preload_words(job: Job, one: _Left, found: FoundSetupReport) -> list[str]:
    more = one.setup.preload.value - found.preload.value
    if not job.entered(f"{one.axle}.preload") or abs(more) < SPRING_SET:
        return []
    subject = "It is" if one.axle == "rear" else "They are"
    subject = subject if one.built else f"{subject.split()[0]} will be"
    return [f"{subject} set {number_text(abs(more), 0)} mm {'tighter' if more > 0 else 'looser'}."]


def _oil_words(job: Job, one: _Left) -> list[str]:
    """How much higher the oil stands: what the customer feels near the end of the travel."""
    if one.setup.gap is None or one.found is None or one.found.gap is None or not gaps_were_read(job):
        return []
    higher = one.found.gap.value - one.setup.gap.value
    if abs(higher) < OIL_MOVED:
        return []
    verb, way = "stands" if one.built else "will stand", "higher" if higher > 0 else "lower"
    then = "harder" if higher > 0 else "softer"
    return [f"The oil in the fork {verb} {number_text(abs(higher), 0)} mm {way}, so it gets {then} near the end of its travel."]


def _damper_words(job: Job, one: _Left) -> list[str]:
    """A cartridge that was opened, and clickers that were moved: in words of someone who counts none."""
    sealed_once = one.axle == "front" and job.choice("front.air") == "sealed cartridge"
    opened = sealed_once and job.choice("front.cartridge_state") == OPENED
    words = (
        ["The damper in the fork is open to the fork now: nothing presses on its oil but the air in the fork."] if opened else []
    )
    if one.built and any(row.built and row.built != row.found for row in clickers(job, one.axle)):
        words.append(f"The clickers at the {_NAMES[one.axle]} are set anew. How they stand is on the card: leave them there first.")
    return words


def _tape(job: Job, left: list[_Left]) -> str:
    """What the customer reads with a tape: bike alone, then all aboard."""
    aboard = f"{_ABOARD[job.choice('bike.carries') or 'nothing']}, {_POSTURE[job.posture]}"
    axle = {"front": "at the front along the fork leg", "rear": "at the rear straight up from the axle"}
    where = " and ".join(axle[one.axle] for one in left)
    known, unknown = [one for one in left if one.checked], [one for one in left if not one.checked]
    start = "By itself the bike drops" if all(one.built for one in left) else "Once it is built, the bike by itself drops"
    drops = [_drops(known, "free_sag", start), _drops(known, "rider_sag", "Loaded like that it drops")] if known else []
    return " ".join(
        (
            f"Check it with a tape. Lift the bike so that the wheel hangs, and measure {where}, each time to the same mark.",
            f"Then measure with the bike down, and again {aboard}.",
            *drops,
            *_within(known),
            *_unknown(unknown, bool(known)),
        )
    )


def _unknown(left: list[_Left], some: bool) -> list[str]:
    """What is asked for where nothing can be checked."""
    if not left:
        return []
    there = " and ".join(f"at the {_NAMES[one.axle]}" for one in left)
    where = f" {there}" if some else ""
    return [f"How far it should drop{where} cannot be said yet. Send me what you read."]


def _drops(left: list[_Left], key: Literal["free_sag", "rider_sag"], start: str) -> str:
    figures = [(figure_text(getattr(one.setup, key)), f"at the {_NAMES[one.axle]}") for one in left]
    drops = [f"{'not at all' if figure == '0 mm' else figure} {where}" for figure, where in figures]
    return f"{start} {' and '.join(drops)}."


def _within(left: list[_Left]) -> list[str]:
    """How far off is still fine: what is not known of the figures told, where that is worked out."""
    if not left or any(half is None for one in left for half in one.halves):
        return []
    most = {one.axle: f"{max(*(half or 0.0 for half in one.halves), READ_TO):.0f} mm" for one in left}
    alike = len(set(most.values())) == 1
    by = most[left[0].axle] if alike else " or ".join(f"{words} at the {_NAMES[axle]}" for axle, words in most.items())
    return [f"A little more or less is normal. If it is off by more than {by}, tell me."]


def _come_back(whole: WholeBike) -> str:
    """When the next service is due, as far as it is known."""
    said = []
    for end in () if whole.service is None else whole.service.ends:
        what = "fork" if end.end == "front" else "shock"
        if end.left is not None and end.due is not None and end.left.value < 0:
            ago = size_text(end.left)  # half an hour late is told as due now
            late = f"That is {ago} {end.left.unit} ago." if float(ago) else "That is now."
            said.append(f"The {what} was due for new oil at {figure_text(end.due)}. {late}")
        elif end.due is not None:
            said.append(f"The {what} needs new oil at {figure_text(end.due)} on the meter.")
    return " ".join([ALARM, *(said or [BOOK])])
