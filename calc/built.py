"""How well a setup comes out on the bench: the spring's marking, the preload and the gap, drawn like any reading."""

from __future__ import annotations

from dataclasses import replace

from calc.draws import DRAWS, standard_normal
from calc.job import Job
from calc.setup import Setup

# 95 % half-widths; common practice, no source.
BUILT_RATE = 0.03  # of the marked rate
BUILT_PRELOAD = 1.0  # mm
BUILT_GAP = 1.0  # mm, legs matched

# Standard normal numbers, among a drawn job's samples under these names.
TOLERANCES = ("built rate", "built preload", "built gap")


def with_tolerance(draws: Job, count: int = DRAWS) -> Job:
    """A drawn job that also draws how well a setup is built, so that every condition it is looked at under shares that too.

    Parameters: draws; count of them [-], > 0.
    Returns: Job, with a standard normal number a draw for rate, preload and gap.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `built`.
    """
    return replace(draws, samples={**draws.samples, **{name: standard_normal(name, count) for name in TOLERANCES}})


def built(draws: Job, setup: Setup) -> Setup:
    """A setup as it may come out on the bench, a draw a column.

    Parameters: draws, of `with_tolerance`; setup, scalars.
    Returns: Setup; a gap of 0, where there is none to set, stays.
    Raises: nothing.
    Formula: half of each 95 % half-width times a standard normal number.
    Source: the half-widths are common practice, no source.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> drawn = with_tolerance(load(jobs()["enduro"]))
        >>> float(built(drawn, Setup(4.6, 3.0, 120.0)).preload.std().round(2))
        0.5
    """
    rate, preload, gap = (draws.samples[name] for name in TOLERANCES)
    return Setup(
        setup.rate * (1.0 + 0.5 * BUILT_RATE * rate),
        setup.preload + 0.5 * BUILT_PRELOAD * preload,
        setup.gap + 0.5 * BUILT_GAP * gap if setup.gap else 0.0,
        setup.split,
    )
