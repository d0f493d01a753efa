"""What stands beside the answer of an end: brake dive at the front, the shock's motion at the rear."""

from __future__ import annotations

from calc.end.figures import evaluate
from calc.end.setup import Setup
from calc.job import Job
from calc.model.braking import is_braked
from calc.practice import Axle
from calc.report.braking import braking
from calc.report.motion import motion_report
from calc.report.types import Braking, MotionReport
from calc.sizing.choice import EndSizing


def beside(job: Job, axle: Axle, done: EndSizing, setup: Setup) -> tuple[Braking | None, MotionReport | None]:
    """Of the setup that the curve shows: the recommended one, or as found where none is."""
    if axle == "front" and not is_braked(job):
        return None, None
    here = done.inputs
    as_found = done.found if setup is done.found_setup else None
    figures = as_found or evaluate(here.assembly, setup, here.loads, here.exponent)
    if axle == "front":
        return braking(job, figures), None
    return None, motion_report(job, figures.end.motion, float(figures.rider.travel))
