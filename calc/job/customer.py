"""The customer's readings as typed, made into a job: riding, weight and five lengths, and what is known of bike and spring."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from calc.job.document import FORMAT, VERSION
from calc.job.fields import FIELDS
from calc.job.job import Job
from calc.job.problem import Problem
from calc.job.resolve import load
from calc.job.shape import JobError
from calc.practice import AXLES, POSTURE, Axle, usual
from calc.quantities.entry import Entry, convert, read_entry


@dataclass(frozen=True)
class Taped:
    """The lengths that a tape finds at one end, by field path: hanging, alone and aboard twice each."""

    axle: Axle

    @property
    def hanging(self) -> str:
        """With the wheel off the ground."""
        return f"{self.axle}.hanging_length"

    @property
    def alone(self) -> tuple[str, str]:
        """Of the bike alone."""
        return f"{self.axle}.alone_length", f"{self.axle}.alone_again_length"

    @property
    def aboard(self) -> tuple[str, str]:
        """With the rider."""
        return f"{self.axle}.aboard_length", f"{self.axle}.aboard_again_length"

    @property
    def every(self) -> tuple[str, ...]:
        """All five, in the order in which they are read."""
        return (self.hanging, *self.alone, *self.aboard)


TAPED: dict[Axle, Taped] = {axle: Taped(axle) for axle in AXLES}
HANGING, ALONE, ABOARD, LENGTHS = TAPED["rear"].hanging, TAPED["rear"].alone, TAPED["rear"].aboard, TAPED["rear"].every
FRONT = TAPED["front"].every  # after the rear, for who wants to know of the front too
NEEDED = ("bike.use", "rider.mass", *LENGTHS)
# Asked, and can be left out.
KNOWN = ("rider.passenger", "rider.luggage", "bike.mass", "rear.travel", "standard.shock_spring")
KNOWN_FRONT = ("front.travel", "standard.fork_springs")
ASKED = (*NEEDED, *KNOWN, *KNOWN_FRONT, *FRONT)
NOTE = "by the customer"
# In a customer's words; the fields have a bench's.
LABELS = {
    "bike.use": "Kind of riding",
    "rider.mass": "Your weight in kit",
    "rider.passenger": "Passenger in kit",
    "rider.luggage": "Luggage",
    "bike.mass": "Weight of the bike",
    "rear.travel": "Rear wheel travel",
    "standard.shock_spring": "Rear spring as sold",
    HANGING: "Wheel off the ground",
    ALONE[0]: "Bike alone, pushed down",
    ALONE[1]: "Bike alone, lifted",
    ABOARD[0]: "You on the bike, pushed down",
    ABOARD[1]: "You on the bike, lifted",
    "front.travel": "Fork travel",
    "standard.fork_springs": "Fork springs as sold",
    FRONT[0]: "Front wheel off the ground",
    FRONT[1]: "Bike alone, front pushed down",
    FRONT[2]: "Bike alone, front lifted",
    FRONT[3]: "You on the bike, front pushed down",
    FRONT[4]: "You on the bike, front lifted",
}

_WEIGHED = ("rider.mass", "rider.passenger", "rider.luggage")
# What a rider at home reads within, 95 %: wider than a bench. Common practice, no source.
_PLUS_MINUS = dict.fromkeys(_WEIGHED, "2 kg") | {"bike.mass": "5 kg"}
_PLUS_MINUS |= dict.fromkeys(("rear.travel", "front.travel"), "5 mm") | dict.fromkeys((*LENGTHS, *FRONT), "3 mm")
# Of the usual travel: nobody stands or sits the same way twice, and both readings aboard share that. Common practice, no source.
_POSED = 0.025
_USUAL = (200.0, 1000.0)  # mm from an axle to a dot on the tail, or on the clamp of the fork; common practice, no source
_SLIP = 6.0  # mm: by so much two such readings may be out of order and still be honest; common practice, no source


def job_of(said: Mapping[str, object]) -> dict[str, Any]:
    """Make a job document of what a customer typed.

    Parameters: said, by field path, of `ASKED`; blank ones count as not said.
    Returns: a job document. Each entry says that it is the customer's and has a customer's +/-; nothing typed is lost.
    Raises: JobError for a path that is not asked, or a value that is neither text nor a number.
    Formula: none.
    Source: none.
    Example:
        >>> job_of({"bike.use": "enduro", "rider.mass": "88"})["rider"]["mass"]["note"]
        'by the customer'
    """
    document: dict[str, Any] = {"format": FORMAT, "version": VERSION, "name": "", "owner": "", "date": "", "invented": False}
    document["note"] = "Readings taken by the customer at home: Check my bike."
    typed = _typed(said)
    for path in (path for path in ASKED if path in typed):
        field = FIELDS[path]
        document.setdefault(field.group, {})[field.key] = _entry(path, typed[path], typed.get("bike.use", ""))
    for axle, taped in TAPED.items():
        if any(path in typed for path in taped.every):
            document[axle]["sags_read"] = {"value": "lengths", "origin": "stated", "note": NOTE}
    return document


def _typed(said: Mapping[str, object]) -> dict[str, str]:
    for path, value in said.items():
        if path not in ASKED:
            raise JobError(f"{path[:60]} is not asked of a customer. Asked are: {', '.join(ASKED)}.")
        if isinstance(value, bool) or not isinstance(value, (str, int, float, type(None))):
            raise JobError(f"{path} must be text or a number.")
    return {path: str(value).strip() for path, value in said.items() if value is not None and str(value).strip()}


def _entry(path: str, text: str, rides: str) -> dict[str, Any]:
    aboard = next((axle for axle, taped in TAPED.items() if path in taped.aboard), None)
    stands = POSTURE.get(rides, "") if aboard else ""
    entry = {"value": text, "origin": "measured" if path in (*_WEIGHED, *LENGTHS, *FRONT) else "stated"}
    if path in _PLUS_MINUS:
        entry["plus_minus_95"] = _aboard(rides, aboard) if aboard and stands else _PLUS_MINUS[path]
    return entry | {"note": f"{NOTE}, {stands}" if stands else NOTE}


def _aboard(rides: str, axle: Axle) -> str:
    """The +/- of a reading aboard; two are averaged, and posture is in both."""
    travel = usual(f"travel {axle}", rides)
    assert travel is not None
    return f"{(3.0**2 + 2.0 * (_POSED * travel.typical) ** 2) ** 0.5:.0f} mm"


def missing(said: Mapping[str, object]) -> tuple[str, ...]:
    """What is still to be said before there can be a verdict.

    Parameters: said, as `job_of`.
    Returns: field paths, in the order in which they are asked.
    Raises: JobError as `job_of`.
    Formula: none.
    Source: none.
    Example:
        >>> missing({"bike.use": "enduro", "rider.mass": "88"})[0]
        'rear.hanging_length'
    """
    typed = _typed(said)
    return tuple(path for path in NEEDED if path not in typed)


def missing_front(said: Mapping[str, object]) -> tuple[str, ...]:
    """What is still to be said before there can be a verdict on the front, where any of it was begun.

    Parameters: said, as `job_of`.
    Returns: field paths, in the order in which they are asked; all of them where none was said.
    Raises: JobError as `job_of`.
    Formula: none.
    Source: none.
    Example:
        >>> len(missing_front({"bike.use": "enduro"}))
        5
    """
    typed = _typed(said)
    return tuple(path for path in FRONT if path not in typed)


def problems(said: Mapping[str, object]) -> tuple[Problem, ...]:
    """What is wrong with what was said: first what cannot be read, else what no bike does.

    Parameters: said, as `job_of`.
    Returns: problems, each at its field, with other readings on offer where there are any.
    Raises: JobError as `job_of`.
    Formula: lengths of a bike: hanging is the longest, with the rider aboard the shortest.
    Source: geometry; limits of what is usual are common practice, no source.
    Example:
        >>> problems({"bike.use": "enduro", "rider.mass": "88", "rear.hanging_length": "62,5"})[0].readings
        ('62.5 cm',)
    """
    typed = _typed(said)
    job = load(job_of(typed))
    refused = {one.path: _in_own_words(one) for one in job.problems if one.path in typed}
    lengths = {path: convert(job.number(path), "mm", "mm") for path in (*LENGTHS, *FRONT) if path in typed and path not in refused}
    odd = {path: one for path in lengths if (one := _odd(job, path)) is not None}
    found = refused | odd
    return tuple(found.values()) or tuple(one for taped in TAPED.values() for one in _out_of_order(lengths, taped))


def _in_own_words(problem: Problem) -> Problem:
    bench, own = f"{FIELDS[problem.path].label}:", f"{LABELS[problem.path]}:"
    offers = tuple(text for text in problem.readings if problem.path not in (*LENGTHS, *FRONT) or _is_usual(text))
    return replace(problem, message=problem.message.replace(bench, own, 1), readings=offers)


def _is_usual(text: str) -> bool:
    entry = read_entry(text, "length", "mm")
    return _USUAL[0] <= convert(entry.number, entry.unit, "mm") <= _USUAL[1]


def _odd(job: Job, path: str) -> Problem | None:
    """A length that no bike has, most often for its unit."""
    resolved = job.fields[path]
    low, high = _USUAL
    if low <= job.number(path) <= high:
        return None
    entry = read_entry(resolved.text, "length", "mm")
    bare = resolved.text.strip()[-1:] in "0123456789,."
    offers = _in_other_units(entry) if bare else ()
    words = f"{LABELS[path]}: {entry.number:g} {entry.unit} from the axle to the dot is no bike's."
    usual_words = f"Usual is {low:g} to {high:g} mm."
    return Problem(path, "unusual", words, usual_words, offers, "" if offers else "Read the tape again.", resolved.field.end)


def _in_other_units(entry: Entry) -> tuple[str, ...]:
    return tuple(text for unit in ("cm", "in", "m") if _is_usual(text := f"{entry.number:.12g} {unit}"))


def _out_of_order(lengths: Mapping[str, float], taped: Taped) -> tuple[Problem, ...]:
    """Readings that stand in each other's place; each pair is only compared where both are there."""
    hanging = lengths.get(taped.hanging)
    alone, aboard = ([lengths[path] for path in paths if path in lengths] for paths in (taped.alone, taped.aboard))
    if hanging is not None and alone and max(alone) > hanging + _SLIP:
        return (_swapped(taped.hanging, "With the wheel hanging free the length must be the longest, and it is not."),)
    if alone and aboard and min(aboard) > max(alone):
        return (_swapped(taped.aboard[0], "With you on the bike the length must be shorter than without you, and it is longer."),)
    if hanging is not None and aboard and max(aboard) > hanging + _SLIP:
        return (_swapped(taped.aboard[0], "With you on the bike the length is longer than with the wheel hanging free."),)
    return ()


def _swapped(path: str, words: str) -> Problem:
    return Problem(path, "order", words, way_out="Check which is which, and read the odd one again.", end=FIELDS[path].end)
