"""Gaps in the convention in which the user reads theirs: as found, as sold, smallest and largest; oil from one to another."""

from __future__ import annotations

from calc.array import Number
from calc.end.assembly import ForkAssembly
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import DEEPEST_GAP
from calc.model import fitted
from calc.model.conditions import Conditions, conditions
from calc.model.fork import coils, outer_parts
from calc.model.gap import by_volume, gap_filled, own_gap

_SIDES = ("left", "right")


def found_gaps(job: Job, at: Conditions) -> tuple[Number, Number]:
    """Gaps as found: read, assumed, or by the volume filled; in the convention in which the user reads theirs.

    Parameters: job; at, conditions.
    Returns: gap [mm] of the left and of the right leg.
    Raises: Impossible where the volumes do not go together, or a usual gap cannot be read the user's way.
    Formula: see `calc.model.gap`.
    Source: geometry.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> found_gaps(job, conditions(job))
        (145.0, 147.0)
    """
    return _found_gap(job, at, 0), _found_gap(job, at, 1)


def _found_gap(job: Job, at: Conditions, leg: int) -> Number:
    side, rate = _SIDES[leg], fitted_rates(job)[leg]
    if by_volume(job):
        return gap_filled(job, outer_parts(job, at)[leg], side, rate)
    return own_gap(job, f"front.gap_{side}", lambda: outer_parts(job, at)[leg], rate)


def gap_as_sold(job: Job, at: Conditions) -> Number:
    """Gap as sold, in the convention in which the user reads theirs.

    Parameters: job; at, conditions.
    Returns: gap [mm].
    Raises: Impossible where a usual gap cannot be read the user's way.
    Formula: see `calc.model.gap.own_gap`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> gap_as_sold(job, conditions(job))
        126.0
    """
    return own_gap(job, "standard.gap", lambda: outer_parts(job, at, as_sold=True)[0], fitted_rates(job)[0])


def gap_limits(job: Job, at: Conditions) -> tuple[float, float]:
    """Smallest and largest gap, in the convention in which the user reads theirs.

    Parameters: job, not drawn; at, conditions.
    Returns: gaps [mm]; a usual one that lies above the rim or below the tube is that end of it.
    Raises: Impossible where the leg cannot be.
    Formula: see `calc.model.gap.own_gap`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> gap_limits(job, conditions(job))
        (75.0, 165.0)
    """

    def limit(path: str, beyond: float) -> float:
        try:
            return float(own_gap(job, path, lambda: outer_parts(job, at)[0], fitted_rates(job)[0]))
        except Impossible as error:
            if error.code != "gap-convention":
                raise
            return beyond

    return limit("front.gap_min", 0.0), limit("front.gap_max", DEEPEST_GAP)


def fitted_rates(job: Job) -> tuple[Number | None, Number | None]:
    """Rates of the springs as found in the left and in the right leg.

    Parameters: job.
    Returns: rates [N/mm]; None for a leg with no spring in it.
    Raises: Impossible where a rate cannot be worked out.
    Formula: see `calc.model.fitted`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> fitted_rates(load(jobs()["enduro"]))
        (4.2, 4.2)
    """
    springs = coils(job)
    if springs == 0:
        return None, None
    rate, apart = fitted.rate(job, "front"), fitted.split(job, "front")
    return rate - apart, (rate + apart if springs == 2 else None)


def oil_to_add(job: Job, forks: ForkAssembly, setup: Setup) -> dict[str, Number]:
    """Oil that brings each leg from its own gap and spring as found to the new ones.

    Parameters: job; forks, the fork; setup, the new one.
    Returns: oil [mm3] by leg, "left" and "right"; below 0 to take out.
    Raises: Impossible as `found_gaps`.
    Formula: gas of the found leg less gas of the new one, each with its own steel.
    Source: oil is conserved.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> from calc.model.fork import fork
        >>> forks = fork(job, conditions(job))
        >>> {leg: round(float(oil) / 1000) for leg, oil in oil_to_add(job, forks, Setup(4.2, 5.0, 120.0)).items()}
        {'left': 42, 'right': 45}
    """
    new = forks.rates(setup)
    legs_ = zip(_SIDES, fitted_rates(job), found_gaps(job, conditions(job)), new, strict=True)
    return {leg: forks.gas.oil_to_add(rate, gap, other, setup.gap) for leg, rate, gap, other in legs_}
