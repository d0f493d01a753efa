"""Brake dive of a job: what the braking puts on the fork, and where the fork then stands."""

from __future__ import annotations

from calc.end.braking import Dive, dive
from calc.end.figures import Figures
from calc.end.loads import Braked, braked, fork_axis_load
from calc.impossible import Impossible
from calc.job import Job
from calc.model.axles import aboard, unsprung_mass


def is_braked(job: Job) -> bool:
    """Tell whether a braking to look at is entered.

    Parameters: job.
    Returns: True where it is.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> is_braked(load(jobs()["enduro"]))
        False
    """
    return job.known("bike.braking")


def brake_loads(job: Job) -> Braked:
    """Tyre loads at the braking asked for, rider aboard in the posture of the use.

    Parameters: job, with a braking entered.
    Returns: Braked: loads and braking force [N], deceleration [m/s2].
    Raises: Impossible where the wheelbase is not entered, or as `calc.model.axles.aboard` and `calc.end.loads.braked`.
    Formula: load moved = m a h / wheelbase, see `calc.end.loads.braked`.
    Source: see there.
    Example: see `tests/unit/end/test_braking.py`.
    """
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
    """Where the fork of a setup stands at that braking; working n about rider sag.

    Parameters: job, with a braking entered; done, the figures of the setup.
    Returns: Dive: stroke and what the braking added [mm], load [N].
    Raises: Impossible as `brake_loads` and `calc.end.braking.dive`.
    Formula: springs and gas = (N - m_u g) cos r + (X - m_u a) sin r, see `calc.end.loads.fork_axis_load` and
    `calc.end.braking.dive`.
    Source: see there.
    Example: see `tests/unit/end/test_braking.py`.
    """
    loads = brake_loads(job)
    rake, unsprung = job.value("bike.rake"), unsprung_mass(job, "front")
    return dive(done.end, fork_axis_load(loads.front, unsprung, rake, loads.force, loads.deceleration), done.process)
