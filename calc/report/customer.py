"""A customer's readings judged: do the springs suit, how sure, what to do, what not to buy yet, what would narrow it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any, Literal

from calc.impossible import Impossible
from calc.job import Job, load
from calc.job.customer import LABELS, TAPED, job_of, missing, missing_front, problems
from calc.model.inputs import wanted_sag
from calc.model.limits import AS_SOLD, sag_window
from calc.model.observed import STICKS, SagRead, sags_read
from calc.practice import Axle
from calc.report.customer_words import (
    LEAST,
    LEAST_FRONT,
    OTHERS,
    PLAIN,
    Claim,
    claim_words,
    height_words,
    how_words,
    narrows_words,
    not_words,
    odd_words,
    open_words,
    sticks_words,
    told_chance,
)
from calc.report.quantity import quantity
from calc.report.types import Chances, Finding, MyBike, OwnSag, Quantity, Verdict, Window
from calc.uncertainty.corrected import sags_found
from calc.uncertainty.directions import Directions, directions

_DRAWS = 800  # a chance is then told to some two parts of a hundred; of 200 it would be to five
_CONTENT = (5.0, 0.02)  # mm, or of the travel: a rider sag so far off is left; common practice, no source


def my_bike(said: Mapping[str, object]) -> MyBike:
    """Judge what a customer read.

    Parameters: said, by field path, as typed (see `calc.job.customer.job_of`).
    Returns: MyBike: what is missing or wrong, or a verdict on the rear spring, and on the fork's where its lengths were read.
    Raises: JobError as `job_of`.
    Formula: see `calc.uncertainty.directions`.
    Source: see there.
    Example:
        >>> my_bike({"bike.use": "enduro", "rider.mass": "88"}).missing[0]
        'rear.hanging_length'
    """
    waits, wrong, waits_front = missing(said), problems(said), missing_front(said)
    if waits or wrong:
        return MyBike(waits, wrong, None, waits_front, None)
    typed = tuple((path, str(text)) for path, text in said.items() if text is not None)
    return MyBike((), (), _judged(typed, "rear"), waits_front, None if waits_front else _judged(typed, "front"))


@lru_cache(maxsize=4)
def _judged(said: tuple[tuple[str, str], ...], axle: Axle) -> Verdict:
    """One end, by its own readings alone: each end's verdict stands whatever the other's tape read."""
    others = {path for end, taped in TAPED.items() if end != axle for path in taped.every}
    own = {path: text for path, text in said if path not in others}
    job = load(job_of(own), _DRAWS)
    spreads = [read.spread or 0.0 for read in sags_read(job, axle)]
    if max(spreads) > STICKS:
        words = sticks_words([spread for spread in spreads if spread > STICKS - 1.5] or spreads, axle)
        return _verdict(job, axle, "sticks", words)
    tried = load(_for_judging(job_of(own), job, axle), _DRAWS)
    found = sags_found(tried)
    # What the model says against it is in a bench's words, and of springs that nobody read.
    fits = axle not in found.refused and all(one.believed for one in found.compared)
    ways = _ways(_undecided(found.correct(tried), job, axle), axle) if fits else None
    if ways is None:
        alone, aboard = sags_read(job, axle)
        words = odd_words(aboard.sag, job.number(f"{axle}.travel"), axle, alone.topped_out)
        return _verdict(job, axle, "odd", words)
    return _counted(job, axle, ways)


def _ways(tried: Job, axle: Axle) -> Directions | None:
    try:
        return directions(tried, axle)
    except Impossible:
        return None


def _for_judging(document: dict[str, Any], job: Job, axle: Axle) -> dict[str, Any]:
    """The document as it is judged: nobody knows what was sold, so that is open; a bike that stands at its top has no free sag."""
    taped, group_key = TAPED[axle], AS_SOLD[axle].split(".")
    if job.choice(AS_SOLD[axle]) == "unknown":
        document.setdefault(group_key[0], {})[group_key[1]] = {"value": "changed", "origin": "assumed"}
    if sum(job.number(path) for path in taped.alone) / 2.0 > job.number(taped.hanging):
        for path in taped.alone:
            document[axle][path.split(".")[1]] = document[axle][taped.hanging.split(".")[1]]
    return document


def _undecided(tried: Job, job: Job, axle: Axle) -> Job:
    """The judged job with the customer's own word on the spring."""
    path = AS_SOLD[axle]
    return replace(tried, fields={**tried.fields, path: job.fields[path]})


def _counted(job: Job, axle: Axle, ways: Directions) -> Verdict:
    chances = chances_of(ways)
    claim = max(chances, key=lambda one: chances[one])
    chance = chances[claim]
    if chance < (LEAST_FRONT if axle == "front" else LEAST):
        return _verdict(job, axle, "open", open_words(chances, axle), ways)
    return _verdict(job, axle, claim, claim_words(claim, chance, axle), ways, chance)


def chances_of(ways: Directions) -> dict[Claim, float]:
    """The chances of what can be claimed: a bench that would go stiffer finds the spring too soft."""
    return {"soft": ways.stiffer, "suits": ways.keep, "stiff": ways.softer}


def _verdict(
    job: Job,
    axle: Axle,
    finding: Finding,
    said: tuple[str, str, str],
    ways: Directions | None = None,
    chance: float | None = None,
) -> Verdict:
    of = "of the fork, along the leg" if axle == "front" else "of the rear wheel, straight up"
    travel = quantity(job.number(f"{axle}.travel"), "mm", of, 0)
    do_not, more = not_words(finding, chance is not None and chance >= PLAIN, axle)
    times, out_of = (0, 0) if chance is None else told_chance(chance)
    return Verdict(
        axle=axle,
        finding=finding,
        opening=said[0],
        claim=said[1],
        rest=said[2],
        chances=None if ways is None else Chances(ways.softer, ways.keep, ways.stiffer),
        chance=chance,
        times=times,
        out_of=out_of,
        travel=travel,
        sags=_sags(job, axle),
        height="" if ways is None else _height(job, axle, ways),
        do_not=do_not,
        do_not_more=more,
        narrows="" if ways is None else narrows_words(ways.causes),
        how=() if ways is None else how_words(chances_of(ways), job.draws, travel.text, job.entered(f"{axle}.travel"), axle),
        others=OTHERS[axle],
        words=" ".join(said),
    )


def _height(job: Job, axle: Axle, ways: Directions) -> str:
    free, rider = (max(read.sag, 0.0) for read in sags_read(job, axle))
    content = max(_CONTENT[0], _CONTENT[1] * job.number(f"{axle}.travel"))
    usual, aboard = (sag_window(job, axle, f"{mark} sag") for mark in ("free", "rider"))
    return height_words(rider, wanted_sag(job, axle), content, free, ways.free[1], usual, aboard, axle)


def _sags(job: Job, axle: Axle) -> tuple[OwnSag, ...]:
    free, rider = sags_read(job, axle)
    return (_sag(job, free, "free"), _sag(job, rider, "rider"))


def _sag(job: Job, read: SagRead, mark: Literal["free", "rider"]) -> OwnSag:
    label = "Free sag, bike alone" if mark == "free" else "Rider sag, you aboard"
    low, high = sag_window(job, read.axle, f"{mark} sag")

    def shown(sag: float) -> Quantity:
        return quantity(max(sag, 0.0), "mm", label, 0)

    first, second = (shown(read.hanging - length) for length in read.readings)
    return OwnSag(mark, label, first, second, shown(read.sag), Window(low, high, "mm", ""))


def verdict_text(found: MyBike) -> str:
    """What there is to say, as text."""
    if found.verdict is None:
        wrong = [one.sentence() for one in found.problems]
        return "\n".join([*wrong, *(f"Still to be said: {LABELS[path]}" for path in found.missing)])
    front = [] if found.front is None else ["", "", *_told_text(found.front)]
    begun = 0 < len(found.missing_front) < len(TAPED["front"].every)
    waits = [f"For the front, still to be said: {LABELS[path]}" for path in found.missing_front] if begun else []
    return "\n".join([*_told_text(found.verdict), *front, *waits])


def _told_text(told: Verdict) -> list[str]:
    sags = [f"{sag.label}: {sag.middle.text} mm, read {sag.first.text} and {sag.second.text}." for sag in told.sags]
    lines = [told.words, "", *sags, "", told.height, f"{told.do_not} {told.do_not_more}", told.narrows]
    return [
        *(line for line in lines if line or line == ""),
        f"If it is not the spring{'s' if told.axle == 'front' else ''}:",
        *(f"- {one}" for one in told.others),
    ]
