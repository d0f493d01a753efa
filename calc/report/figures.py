"""An end's figures alone: what is shown first after an edit, ahead of the report."""

from __future__ import annotations

from calc.job import Job
from calc.practice import Axle
from calc.report.candidates import candidate_setup
from calc.report.setups import Cases
from calc.report.sized import fields_of, sized
from calc.report.types import FiguresReport
from calc.report.windows import usual_windows
from calc.uncertainty.corrected import sags_found


def figures_report(job: Job, axle: Axle) -> FiguresReport | None:
    """The setup that the report chooses, full travel [mm, where sag is read] and windows; None where none is chosen.

    The report that follows finds the axle sized.
    """
    job = sags_found(job, with_draws=False).correct(job)
    done, _ = sized(axle, fields_of(job, axle), job.ranges)
    if done is None or done.choice < 0:
        return None
    chosen = done.choice
    cases, end_built = Cases.of(job, axle), done.sized.figures.at(chosen).end
    travel = float(end_built.motion.stroke(end_built.travel) if cases.along else end_built.travel)
    return FiguresReport(candidate_setup(done, cases, chosen), travel, usual_windows(job, axle))
