"""Brake dive: the stroke at a braking, what is left, and what the tyres carry."""

from __future__ import annotations

import numpy as np

from calc.end.figures import Figures
from calc.impossible import Impossible
from calc.job import Job, Problem
from calc.model.braking import brake_dive, brake_loads
from calc.report.quantity import figure_text, number_text, quantity
from calc.report.types import Braking, BrakingBarred, BrakingFigures, Quantity

# Said with the figures: what this does not count.
LEFT_OUT = (
    "Left out: aerodynamic drag, damping, friction, the change of rake, and what a brake anchor or the chain does at the rear."
)


def braking(job: Job, done: Figures) -> Braking:
    """Brake dive of a setup, whose figures are scalars of its own end; its problem where it bottoms or cannot be worked out."""
    try:
        return _figures(job, done)
    except Impossible as error:
        problem = Problem(error.field or "bike.braking", error.code, error.message, way_out=error.way_out, end="front")
        return BrakingBarred(problem, f"{error.message} {error.way_out}")


def _figures(job: Job, done: Figures) -> BrakingFigures:
    loads, found = brake_loads(job), brake_dive(job, done)
    slowing = job.number("bike.braking")
    exponent = f"gas exponent {job.number('place.exponent'):.2f}"
    case = f"slowing at {number_text(slowing, 1)} m/s², rider aboard, {job.posture}, {exponent}"
    full = done.end.motion.stroke(done.end.travel)
    deceleration = quantity(slowing, "m/s²", "steady, on level ground", 1)
    stroke = quantity(found.stroke, "mm", f"along the leg, {case}", 0)
    added = quantity(found.added, "mm", f"beyond rider sag, along the leg, {case}", 0)
    left = quantity(np.asarray(full) - found.stroke, "mm", f"to full travel, along the leg, {case}", 0)
    rear_tyre = quantity(loads.rear, "N", f"vertical, {case}", 0)
    return BrakingFigures(
        problem=None,
        deceleration=deceleration,
        stroke=stroke,
        added=added,
        left=left,
        load=quantity(found.load, "N", f"along the fork, both legs, {case}", 0),
        front_tyre=quantity(loads.front, "N", f"vertical, {case}", 0),
        rear_tyre=rear_tyre,
        words=_words(deceleration, stroke, added, left, rear_tyre),
        left_out=LEFT_OUT,
    )


def _words(deceleration: Quantity, stroke: Quantity, added: Quantity, left: Quantity, rear_tyre: Quantity) -> str:
    return (
        f"Brake dive: slowing at {figure_text(deceleration)} the fork stands at {figure_text(stroke)}, "
        f"{figure_text(added)} beyond rider sag, with {figure_text(left)} left. The rear tyre keeps {figure_text(rear_tyre)}."
    )
