"""Readings that cannot go together, named at once and refused nowhere: a slip of the pen, a wrong unit, a scale read wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from calc.impossible import Impossible
from calc.job import Job, Resolved
from calc.job.field import Kind
from calc.job.limits import TRADE
from calc.job.ranges import widest
from calc.model.motion import rear_motion
from calc.model.weight_sums import bike_sums, half_of, rider_sums
from calc.practice import AXLES, Usual
from calc.quantities.entry import convert, dimension_of
from calc.quantities.units import DIMENSIONS

LEGS_AGREE = 5.0  # [mm] of gap; common practice, no source
LEVERAGES_AGREE = 0.05  # of the leverage; common practice, no source
SHOCK_STROKES = (20.0, 150.0)  # [mm]; shorter or longer ones are not made for motorcycles; common practice, no source
FAR = 1.5  # times the end of a usual range: beyond it a slip is likelier than such a bike; common practice, no source

_OF_A_SHOCK = ("rear.rate", "standard.shock_rate", "rear.charge", "rear.rod_diameter", "rear.leverage")

Words = tuple[str, str]


def contradictions(job: Job) -> list[Words]:
    """Name the readings of a job that cannot go together.

    Parameters: job.
    Returns: (path of the field to look at first, what does not agree, in words); empty where all agree.
    Raises: nothing: what cannot be worked out is reported elsewhere.
    Formula: two readings disagree when they differ by more than a careful bench's do and more than their +/- together.
    Source: common practice, no source.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> contradictions(load(jobs()["enduro"]))
        []
    """
    return [found for check in _CHECKS for found in check(job)]


def _bike(job: Job) -> Iterator[Words]:
    """Both axles against the bike's mass."""
    sums = bike_sums(job)
    if sums is not None and sums.apart():
        yield (
            "bike.mass",
            (
                f"The axles carry {sums.axles:.1f} kg with the bike alone, but the bike is entered as {sums.load:.1f} kg. "
                "Weigh again, or correct one of them."
            ),
        )


def _rider(job: Job) -> Iterator[Words]:
    """Both axles with the rider aboard against all that they carry."""
    sums = rider_sums(job)
    if sums is not None and sums.apart():
        off = sums.axles - sums.load
        yield (
            "rider.mass",
            (
                f"With the rider aboard the axles carry {sums.axles:.1f} kg: {abs(off):.1f} kg {'more' if off > 0 else 'less'} "
                f"than bike, rider and load add up to ({sums.load:.1f} kg). Weigh again, or check the rider's weight."
            ),
        )


def _lifted(job: Job) -> Iterator[Words]:
    """A sag read lifted against the same pushed down: what sticks leaves the bike lower after a push."""
    for axle in AXLES:
        kind, sign = ("length", -1.0) if job.choice(f"{axle}.sags_read") == "lengths" else ("sag", 1.0)
        for case, told in (("alone", "free sag"), ("aboard", "rider sag")):
            pushed, lifted = f"{axle}.{case}_{kind}", f"{axle}.{case}_again_{kind}"
            if not all(path in job.fields and job.entered(path) for path in (pushed, lifted)):
                continue
            more = sign * (job.number(lifted) - job.number(pushed))
            if more > half_of(job, pushed) + half_of(job, lifted):
                yield (
                    lifted,
                    (
                        f"{axle.capitalize()}: the {told} reads {more:.0f} mm more lifted than pushed down. What sticks does the "
                        "opposite. Were the two swapped?"
                    ),
                )


def _sags(job: Job) -> Iterator[Words]:
    """The sags wanted against the travel and each other."""
    for axle in AXLES:
        path, travel = f"{axle}.target_sag", f"{axle}.travel"
        row = job.usual(f"rider sag {axle}")
        if row is None or not job.entered(path) or not job.known(travel):
            continue
        percent = 100.0 * job.number(path) / job.number(travel)
        if not row.low / FAR <= percent <= row.high * FAR:
            yield (
                path,
                (
                    f"{job.number(path):.0f} mm of rider sag is {percent:.0f} % of {job.number(travel):.0f} mm of {axle} travel; "
                    f"{row.low:g}-{row.high:g} % is usual. Check the sag and the travel."
                ),
            )
    paths = ("rear.target_free_sag", "rear.target_sag")
    if all(job.known(path) for path in paths) and any(job.entered(path) for path in paths):
        free, rider = (job.number(path) for path in paths)
        if free >= rider:
            yield (
                paths[0],
                (
                    f"The free sag wanted at the rear, {free:.0f} mm, is not below the rider sag of {rider:.0f} mm: "
                    "free sag is read without the rider."
                ),
            )


def _leverage(job: Job) -> Iterator[Words]:
    """The leverage against the travel and the shock's stroke: from measured pairs, a table or points, or as it comes out."""
    if not job.entered("rear.leverage") or not job.known("rear.travel"):
        return
    travel, leverage = job.number("rear.travel"), job.number("rear.leverage")
    stroke = travel / leverage
    if job.choice("rear.motion_from") == "leverage":
        if not SHOCK_STROKES[0] <= stroke <= SHOCK_STROKES[1]:
            yield (
                "rear.leverage",
                (
                    f"{travel:.0f} mm of wheel travel at a leverage of {leverage:.2f} is {stroke:.0f} mm of shock stroke, "
                    "which no shock has. Check both: leverage is wheel travel over shock stroke."
                ),
            )
        return
    try:
        measured = float(np.asarray(rear_motion(job).stroke(travel)))
    except (Impossible, KeyError):  # said at the rear itself
        return
    if measured > 0 and abs(stroke / measured - 1.0) > LEVERAGES_AGREE:
        yield (
            "rear.leverage",
            (
                f"The linkage as measured gives a leverage of {travel / measured:.2f}; {leverage:.2f} is entered. "
                "The measured one is used."
            ),
        )


def _legs(job: Job) -> Iterator[Words]:
    """One leg's gap against the other's."""
    paths = ("front.gap_left", "front.gap_right")
    if job.choice("front.gap_from") == "read" and all(job.entered(path) for path in paths):
        left, right = (job.number(path) for path in paths)
        if abs(left - right) > LEGS_AGREE:
            yield (
                paths[1],
                (
                    f"The gaps differ by {abs(left - right):.0f} mm: {left:.0f} left, {right:.0f} right. "
                    "Read both again, then set both legs the same."
                ),
            )


def _units(job: Job) -> Iterator[Words]:
    """A reading far outside what is usual, with the unit that would bring it back."""
    for path, found in job.fields.items():
        usual = _usual_of(found)
        if usual is None or found.number is None or not found.applies or not job.entered(path) or _alone_in_kind(job, path):
            continue
        here = convert(found.number, found.unit, usual.unit)
        if not _far(here, usual.low, usual.high):
            continue
        meant = _meant(found, usual)
        if meant or _far(here, *widest(found.field.usual or "")):
            own = "" if found.unit == usual.unit else f" ({here:.3g} {usual.unit})"
            question = f"Did you mean {meant}?" if meant else "Check the reading and its unit."
            yield (
                path,
                (
                    f"{found.field.label}: {found.number:.6g} {found.unit}{own} is far from the usual "
                    f"{usual.low:g} to {usual.high:g} {usual.unit}. {question}"
                ),
            )


def _pairs(job: Job) -> Iterator[Words]:
    """Pairs of rates for a fork with one spring."""
    one = job.fields["front.springs_in"].applies and job.choice("front.springs_in") == "one"
    if one and job.choice("front.buy").endswith("pairs"):
        yield "front.buy", "Pairs of rates need a spring in each leg, but only one leg has one. Only equal rates are offered."


def _usual_of(found: Resolved) -> Usual | None:
    """The range that a reading of a field can be held against."""
    field, usual = found.field, found.usual
    if usual is None or not usual.unit or field.kind is not Kind.QUANTITY or field.decision:
        return None
    follows = field.default is not None and field.default.follow
    return None if follows or dimension_of(usual.unit) != field.dimension else usual


def _alone_in_kind(job: Job, path: str) -> bool:
    """What belongs to one of two shocks, or to a spring in one leg alone: the usual ranges are not theirs."""
    if path in ("front.rate", "standard.fork_rate"):
        return job.choice("front.springs_in") == "one"
    return path in _OF_A_SHOCK and job.choice("rear.shocks") == "2"


def _far(number: float, low: float, high: float) -> bool:
    if low > 0:
        return not low / FAR <= number <= high * FAR
    return not low - (high - low) <= number <= high + (high - low)


def _meant(found: Resolved, usual: Usual) -> str:
    """The same number in the first unit that makes it usual."""
    number = found.number
    for unit in DIMENSIONS[found.field.dimension].units:
        if unit and unit != found.unit and number is not None and usual.low <= convert(number, unit, usual.unit) <= usual.high:
            return f"{number:.6g} {TRADE.get(unit, unit)}"
    return ""


_CHECKS: tuple[Callable[[Job], Iterator[Words]], ...] = (_bike, _rider, _sags, _lifted, _leverage, _legs, _pairs, _units)
