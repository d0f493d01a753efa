"""Brake dive of a job: what the braking puts on the fork, and where the fork then stands."""

from __future__ import annotations

from calc.end.braking import Dive, dive
from calc.end.figures import Figures
from calc.end.loads import Braked, braked, fork_axis_load
from calc.impossible import Impossible
from calc.job import Job
from calc.model.axles import aboard, unsprung_mass


def is_braked(job: Job) -> bool:
    """True where a braking to look at is entered."""
    return job.known("bike.braking")


def brake_loads(job: Job) -> Braked:
    """Tyre loads at the braking asked for, rider aboard in the posture of the use."""
    if not job.known("bike.wheelbase"):
        words = "Brake dive needs the wheelbase, which is not entered."
        raise Impossible("wheelbase", words, "Measure it, axle to axle along the ground.", "bike.wheelbase")
    return braked(
        aboard(job),
        job.value("bike.braking"),
        job.value("bike.centre_height"),
        job.value("bike.wheelbase"),
        job.value("bike.front_braking"),
    )


def brake_dive(job: Job, done: Figures) -> Dive:
    """Where the fork of a setup stands at that braking; working n about rider sag."""
    loads = brake_loads(job)
    rake, unsprung = job.value("bike.rake"), unsprung_mass(job, "front")
    return dive(done.end, fork_axis_load(loads.front, unsprung, rake, loads.force, loads.deceleration), done.process)
