"""What to change first after a ride, what it costs and what it brings; in words, of which some are a bench's own."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.conditions.after_ride import Change, Ridden, SagFound, felt_at
from calc.end.setup import Setup
from calc.job import Job
from calc.job.fields.ride import FELT
from calc.model.marks import was_built
from calc.model.origins import gaps_were_read, preload_was_read, was_read
from calc.practice import Axle
from calc.report.quantity import figure_text, number_text, quantity, size_text
from calc.report.ride_target import ride_target
from calc.report.types import Quantity, RideChange

# Common practice, no source.
_DEAD = "If no click makes a difference, the oil or the damper is worn out."
_DAMPING = {
    "harsh": "First: less compression damping, one click at a time. Then what sticks: seals, bushes, axle; and tyre pressure.",
    "deep": f"First: more compression damping, one click at a time. {_DEAD}",
    "bottoms": "First: more compression damping, one click at a time; then a firmer bump rubber.",
    "hard": "First: less compression damping, one click at a time.",
    "kicks": f"First: more rebound damping, one click at a time. {_DEAD}",
}


def change_report(job: Job, axle: Axle, here: Ridden, change: Change, sag: SagFound | None) -> RideChange:
    """The change, with its figures and its words.

    Parameters: job, corrected; axle; here, what was ridden; change; sag, the rider sag found, None where it was not read.
    Returns: RideChange.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/whole/test_ride.py`.
    """
    if change.setup is None or change.figures is None:
        words = _of_what(job, axle, _still_words(job, axle, here, change, sag))
        return RideChange(change.kind, None, None, None, None, None, (), None, words)
    was, now = _set(here.setup, change.kind), _set(change.setup, change.kind)
    by = quantity(now.value - was.value, was.unit, "change, more is +", was.decimals)
    known = _was_read(job, axle, change.kind)
    oil = quantity(change.oil, "ml", "into each leg", 0, "mm3") if change.kind == "oil" else None
    turns = None
    if change.kind == "preload" and job.known(f"{axle}.pitch"):
        turns = quantity(by.value / job.number(f"{axle}.pitch"), "", "turns of the adjuster, further in is +", 1)
    target = ride_target(job, here, change.setup) if change.kind == "oil" else None
    before, after = (was, now) if known else (None, None)
    made = RideChange(change.kind, by, before, after, oil, turns, _brings(axle, here, change), target, "")
    return replace(made, words=_of_what(job, axle, _set_words(made, by)))


def _of_what(job: Job, axle: Axle, words: str) -> str:
    """Of a bike ridden as it came in that the change is to that, whatever the answer builds."""
    return words if was_built(job, axle) else words.replace("First:", "Left so, first:", 1)


def _set(setup: Setup, kind: str) -> Quantity:
    """What is set."""
    if kind == "pressure" and setup.air is not None:
        return quantity(setup.air.pressure, "bar", "gauge, cold", 1, "MPa")
    if kind == "preload":
        return quantity(setup.preload, "mm", "preload", 0)
    return quantity(setup.gap, "mm", "gap, mean of both legs", 0)


def _was_read(job: Job, axle: Axle, kind: str) -> bool:
    """Whether what was in was read, so that a change can start from it; else the change alone is told."""
    if was_built(job, axle):
        return True
    if kind == "pressure":
        return was_read(job, "front.air_pressure")
    return preload_was_read(job, axle) if kind == "preload" else gaps_were_read(job)


def _brings(axle: Axle, here: Ridden, change: Change) -> tuple[Quantity, Quantity]:
    """What rider sag and force at full travel are moved by."""
    assert change.figures is not None
    was, now = here.figures, change.figures
    sags = (was.rider.stroke, now.rider.stroke) if axle == "front" else (was.rider.travel, now.rider.travel)
    forces = float(np.asarray(was.end_force)), float(np.asarray(now.end_force))
    return (
        quantity(float(np.asarray(sags[1])) - float(np.asarray(sags[0])), "mm", "rider sag, more is +", 0),
        quantity(100.0 * (forces[1] / forces[0] - 1.0), "%", "force at full travel, more is +", 0),
    )


def _moved(name: str, by: Quantity) -> str:
    if size_text(by) == "0":
        return f"{name} as it is"
    return f"{name} {size_text(by)} {by.unit} {'more' if by.value > 0 else 'less'}"


def _set_words(change: RideChange, by: Quantity) -> str:
    sag, force = change.brings
    moved, end = _moved("rider sag", sag), _moved("force at full travel", force)
    span = f"{change.before.text} to {figure_text(change.after)}" if change.before and change.after else ""
    way = "more" if by.value > 0 else "less"
    if change.oil is not None:
        verb = "add" if change.oil.value > 0 else "take out"
        gap = f"gap {span}" if span else f"{size_text(by)} mm {way} gap"
        return f"First: {verb} {size_text(change.oil)} ml a leg ({gap}): {end}, {moved}."
    turns = change.turns
    turned = "" if turns is None else f", {size_text(turns)} turns {'in' if turns.value > 0 else 'out'}"
    what = f"{change.kind} {span}" if span else f"{size_text(by)} {by.unit} {way} {change.kind}"
    return f"First: {what}{turned}: {moved}, {end}."


def _still_words(job: Job, axle: Axle, here: Ridden, change: Change, sag: SagFound | None) -> str:
    """Where springs and oil stay: why, and what comes first instead."""
    felt = felt_at(job, axle)
    if change.kind == "read":
        return "First: read the rider sag again. It fits nothing else that was read, and what to change hangs on it."
    if change.kind == "spring":
        assert sag is not None
        stiffer = "stiffer" if sag.value > here.wanted else "softer"
        now, wanted = number_text(sag.value, 0), number_text(here.wanted, 0)
        return (
            f"First: a {stiffer} spring. Preload alone can't bring {now} mm of rider sag to {wanted} and keep the free sag usual."
        )
    if change.kind == "look":
        return _look_words(axle, FELT.get(felt, ""), None if here.mark is None else here.left)
    if change.kind == "damping":
        other = "springs or oil" if axle == "front" else "spring"
        return f"{_DAMPING[felt]} This ride asks for no other {other}."
    if felt == "well":
        return "Nothing to change. Write it on the card."
    return "Ask the rider for one thing." if sag is not None else "Ask the rider for one thing, and read the sags again."


def _look_words(axle: Axle, felt: str, left: float | None) -> str:
    """What is felt does not go with the mark, or there is none."""
    if left is None:
        return f"“{felt}”: put an o-ring or a cable tie on and ride it again. Without a mark nobody knows how deep it goes."
    of = "travel" if axle == "front" else "shock's stroke"
    return (
        f"“{felt}”, yet {number_text(left, 0)} mm of the {of} were left: it is not the end of the travel that is felt. "
        "First: look for what sticks or locks, and for too much compression damping."
    )
