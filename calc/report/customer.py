"""A customer's readings judged: does the rear spring suit, how sure, what to do, what not to buy yet, what would narrow it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any, Literal

from calc.impossible import Impossible
from calc.job import Job, load
from calc.job.customer import ALONE, HANGING, LABELS, job_of, missing, problems
from calc.model.inputs import wanted_sag
from calc.model.limits import AS_SOLD, sag_window
from calc.model.observed import STICKS, SagRead, sags_read
from calc.report.customer_words import (
    LEAST,
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

_CONTENT = (5.0, 0.02)  # mm, or of the travel: a rider sag so far off is left; common practice, no source


def my_bike(said: Mapping[str, object]) -> MyBike:
    """Judge what a customer read.

    Parameters: said, by field path, as typed (see `calc.job.customer.job_of`).
    Returns: MyBike: what is missing or wrong, or a verdict on the rear spring.
    Raises: JobError as `job_of`.
    Formula: see `calc.uncertainty.directions`.
    Source: see there.
    Example:
        >>> my_bike({"bike.use": "enduro", "rider.mass": "88"}).missing[0]
        'rear.hanging_length'
    """
    waits, wrong = missing(said), problems(said)
    if waits or wrong:
        return MyBike(waits, wrong, None)
    return MyBike((), (), _judged(tuple((path, str(text)) for path, text in said.items() if text is not None)))


@lru_cache(maxsize=4)
def _judged(said: tuple[tuple[str, str], ...]) -> Verdict:
    job = load(job_of(dict(said)))
    spreads = [read.spread or 0.0 for read in sags_read(job, "rear")]
    if max(spreads) > STICKS:
        return _verdict(job, "sticks", sticks_words([spread for spread in spreads if spread > STICKS - 1.5] or spreads))
    tried = load(_for_judging(job_of(dict(said)), job))
    found = sags_found(tried)
    # What the model says against it is in a bench's words, and of springs that nobody read.
    fits = "rear" not in found.refused and all(one.believed for one in found.compared)
    ways = _ways(_undecided(found.correct(tried), job)) if fits else None
    if ways is None:
        return _verdict(job, "odd", odd_words(sags_read(job, "rear")[1].sag, job.number("rear.travel")))
    return _counted(job, ways)


def _ways(tried: Job) -> Directions | None:
    try:
        return directions(tried, "rear")
    except Impossible:
        return None


def _for_judging(document: dict[str, Any], job: Job) -> dict[str, Any]:
    """The document as it is judged: nobody knows what was sold, so that is open; a bike that stands at its top has no free sag."""
    if job.choice(AS_SOLD["rear"]) == "unknown":
        document.setdefault("standard", {})["shock_spring"] = {"value": "changed", "origin": "assumed"}
    if sum(job.number(path) for path in ALONE) / 2.0 > job.number(HANGING):
        for path in ALONE:
            document["rear"][path.split(".")[1]] = document["rear"][HANGING.split(".")[1]]
    return document


def _undecided(tried: Job, job: Job) -> Job:
    """The judged job with the customer's own word on the spring."""
    path = AS_SOLD["rear"]
    return replace(tried, fields={**tried.fields, path: job.fields[path]})


def _counted(job: Job, ways: Directions) -> Verdict:
    chances = chances_of(ways)
    claim = max(chances, key=lambda one: chances[one])
    chance = chances[claim]
    if chance < LEAST:
        return _verdict(job, "open", open_words(chances), ways)
    return _verdict(job, claim, claim_words(claim, chance), ways, chance)


def chances_of(ways: Directions) -> dict[Claim, float]:
    """The chances of what can be claimed: a bench that would go stiffer finds the spring too soft."""
    return {"soft": ways.stiffer, "suits": ways.keep, "stiff": ways.softer}


def _verdict(
    job: Job, finding: Finding, said: tuple[str, str, str], ways: Directions | None = None, chance: float | None = None
) -> Verdict:
    travel = quantity(job.number("rear.travel"), "mm", "of the rear wheel, straight up", 0)
    do_not, more = not_words(finding, chance is not None and chance >= PLAIN)
    times, out_of = (0, 0) if chance is None else told_chance(chance)
    return Verdict(
        finding=finding,
        opening=said[0],
        claim=said[1],
        rest=said[2],
        chances=None if ways is None else Chances(ways.softer, ways.keep, ways.stiffer),
        chance=chance,
        times=times,
        out_of=out_of,
        travel=travel,
        sags=_sags(job),
        height="" if ways is None else _height(job, ways),
        do_not=do_not,
        do_not_more=more,
        narrows="" if ways is None else narrows_words(ways.causes),
        how=() if ways is None else how_words(chances_of(ways), job.draws, travel.text, job.entered("rear.travel")),
        others=OTHERS,
        words=" ".join(said),
    )


def _height(job: Job, ways: Directions) -> str:
    free, rider = (max(read.sag, 0.0) for read in sags_read(job, "rear"))
    content = max(_CONTENT[0], _CONTENT[1] * job.number("rear.travel"))
    return height_words(rider, wanted_sag(job, "rear"), content, free, ways.free[1], sag_window(job, "rear", "free sag"))


def _sags(job: Job) -> tuple[OwnSag, ...]:
    free, rider = sags_read(job, "rear")
    return (_sag(job, free, "free"), _sag(job, rider, "rider"))


def _sag(job: Job, read: SagRead, mark: Literal["free", "rider"]) -> OwnSag:
    label = "Free sag, bike alone" if mark == "free" else "Rider sag, you aboard"
    low, high = sag_window(job, "rear", f"{mark} sag")

    def shown(sag: float) -> Quantity:
        return quantity(max(sag, 0.0), "mm", label, 0)

    first, second = (shown(read.hanging - length) for length in read.readings)
    return OwnSag(mark, label, first, second, shown(read.sag), Window(low, high, "mm", ""))


def verdict_text(found: MyBike) -> str:
    """What there is to say, as text."""
    if found.verdict is None:
        wrong = [one.sentence() for one in found.problems]
        return "\n".join([*wrong, *(f"Still to be said: {LABELS[path]}" for path in found.missing)])
    told = found.verdict
    sags = [f"{sag.label}: {sag.middle.text} mm, read {sag.first.text} and {sag.second.text}." for sag in told.sags]
    lines = [told.words, "", *sags, "", told.height, f"{told.do_not} {told.do_not_more}", told.narrows]
    return "\n".join(
        [*(line for line in lines if line or line == ""), "If it is not the spring:", *(f"- {one}" for one in told.others)]
    )
