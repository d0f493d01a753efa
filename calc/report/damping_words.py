"""What is told of the dampers, in sentences made of the figures beside them."""

from __future__ import annotations

from collections.abc import Iterator

from calc.job import Job
from calc.practice import Axle
from calc.report.quantity import banded_text, figure_text
from calc.report.types import Clicker, DampingOfEnd, Follows, HoldsIn, Quantity

LEFT_OUT = (
    "Left out: friction, brake dive, how front and rear pitch together, tyres, and how a damper's force bends with speed. "
    "Clickers and shims are found by riding: a factor is not a number of clicks."
)
WORTH = 0.1  # of a factor: what a bench can make use of; common practice, no source
LOOSE = 0.5  # of a factor: with that much either way it may be half as much or half as much again; the same
_SINCE = {"as found": "how it came in", "as sold": "the standard setup and its rider"}
_SETUPS = {"built": "what was built", "recommended": "what is recommended", "found": "what is in"}


def follow_words(told: DampingOfEnd) -> tuple[str, ...]:
    """By how much damping must follow, a sentence for each setup that it is compared with."""
    return tuple(_factor(told, one) for one in told.follows)


def limit_words(job: Job, told: DampingOfEnd) -> tuple[str, ...]:
    """What the dampers can hold."""
    return tuple(_hold(job, told))


def beside_words(job: Job, told: DampingOfEnd) -> tuple[str, ...]:
    """The wheel, and the oil that moves."""
    return (*_wheel(told), *_oil(job, told))


def _factor(told: DampingOfEnd, one: Follows) -> str:
    words = (
        f"Compared with {_SINCE[one.since]}, {_SETUPS[told.of]} wants rebound and compression {banded_text(one.ride)} times as "
        f"strong, and rebound from full travel {banded_text(one.full)} times."
    )
    return f"{words}{_worth([one.ride, one.full])}"


def _worth(factors: list[Quantity]) -> str:
    """What a bench can make of it."""
    loose = max(factors, key=lambda factor: factor.plus_minus_95 or 0.0)
    if (loose.plus_minus_95 or 0.0) >= LOOSE:
        return f" With {loose.plus_minus_text} it tells nothing yet: enter more readings."
    if all(abs(factor.value - 1.0) < WORTH / 2.0 for factor in factors):
        return " That is too little to act on."
    if all(abs(factor.value - 1.0) <= (factor.plus_minus_95 or 0.0) for factor in factors):
        return " Within its ± that may be no change at all."
    return ""


def _hold(job: Job, told: DampingOfEnd) -> Iterator[str]:
    rows = [one for one in told.holds if one.rows]
    for one in told.holds:
        if one.problem:
            yield one.problem
    for one in rows:
        yield _holds(told, one)
    if rows:
        yield "Asked for more, the oil behind the piston tears into bubbles (cavitation); the damping is gone until they close."
    if len(rows) > 1 and rows[0].rows[1].drop.value > rows[1].rows[1].drop.value:
        first, last = (one.rows[1] for one in rows)
        yield (
            f"So at half travel the piston may take {first.drop.text} bar while sealed and {last.drop.text} bar once opened: "
            "the base valve must hold the difference, or the piston ask less. That is not in the factors above."
        )
    yield from _refill(rows)
    if rows and told.moved and not job.entered(f"{told.axle}.vapour"):
        assumed = figure_text(told.moved.vapour)
        yield f"Vapour pressure assumed {assumed} absolute: 0 to 0.3 bar is usual, common practice, no source."


def _holds(told: DampingOfEnd, one: HoldsIn) -> str:
    who = "one leg's damper" if told.axle == "front" else "the shock"
    words = f"{one.label}, {who} can hold, with nothing from the base valve, {_at_three([row.force for row in one.rows])}"
    stated = [row.stated_force for row in one.rows if row.stated_force]
    return f"{words}; with the base valve as stated, {_at_three(stated)}." if stated else f"{words}."


def _at_three(forces: list[Quantity]) -> str:
    sag, half, full = (force.text for force in forces)
    if sag == half == full:
        return f"{sag} N of compression all along its stroke"
    return f"{sag} N of compression at rider sag, {half} N at half and {full} N at full travel"


def _refill(rows: list[HoldsIn]) -> Iterator[str]:
    if rows:
        each = [f"{one.rows[0].refill.text} bar{f' ({one.label.lower()})' if len(rows) > 1 else ''}" for one in rows]
        yield f"On rebound, at rider sag, the check valve may take {' or '.join(each)}."


def _wheel(told: DampingOfEnd) -> Iterator[str]:
    wheel, moved = told.wheel, told.moved
    if wheel is None or moved is None:
        return
    at = f"at {figure_text(moved.speed)}"
    yield (
        f"Critical damping at the wheel, where it would just not swing, is {figure_text(wheel.critical)}: "
        f"{figure_text(wheel.rod)} on one rod {at}. What is ridden is a part of it."
    )
    ratios = [
        (name, ratio) for name, ratio in (("rebound", wheel.rebound_ratio), ("compression", wheel.compression_ratio)) if ratio
    ]
    if ratios:
        yield f"As tested: {', '.join(f'{name} {ratio.text} of critical' for name, ratio in ratios)}, {at}."


def _oil(job: Job, told: DampingOfEnd) -> Iterator[str]:
    moved = told.moved
    if moved is None:
        return
    yield (
        f"At {figure_text(moved.speed)} the rod sends {figure_text(moved.base)} through the base valve and "
        f"{figure_text(moved.piston)} goes through the piston; the base valve acts on {moved.share.text} % of the piston's area. "
        f"The rod pushes out {figure_text(moved.pushed_out)} in 10 mm."
    )
    if moved.ports is not None:
        read = told.axle == "front" and job.entered("oil.density")
        oil = f"oil of {figure_text(moved.density)}{'' if read else ' (assumed)'}"
        yield f"The piston's ports alone, without shims, take {figure_text(moved.ports)} at that flow, with {oil}."


def clicker_log(axle: Axle, rows: tuple[Clicker, ...]) -> str:
    """Every adjuster that was counted, as found and, once any is, as built; one that was not counted is a dash."""
    if not rows:
        return ""
    built = any(row.built for row in rows)
    head = f"{axle.capitalize()} clickers from closed, {'as found → as built' if built else 'as found'}"
    each = (f"{row.found or '–'} → {row.built or '–'}" if built else row.found for row in rows)
    names = (row.label.replace(",", "").lower() for row in rows)
    return f"{head}: {', '.join(f'{name} {clicks}' for name, clicks in zip(names, each, strict=True))}."
