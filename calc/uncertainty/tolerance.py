"""How well a setup comes out on the bench: the spring's marking, the preload and the gap, drawn like any reading."""

from __future__ import annotations

from dataclasses import replace

from calc.end.setup import Setup
from calc.job import Job
from calc.leg.air import Pumped
from calc.model.spread import standard_normal

# 95 % half-widths; common practice, no source.
BUILT_RATE = 0.03  # of the marked rate
BUILT_PRELOAD = 1.0  # mm
BUILT_GAP = 1.0  # mm, legs matched
BUILT_PRESSURE = 0.01  # MPa: what a fork pump's gauge is read to
BUILT_OIL = 1000.0  # mm3, by syringe

# Standard normal numbers for rate, preload, gap, pressure and oil, among a drawn job's samples under these names.
TOLERANCES = ("built rate", "built preload", "built gap", "built pressure", "built oil")


def with_tolerance(draws: Job) -> Job:
    """A drawn job that also draws how well a setup is built, so that every condition it is looked at under shares that too.

    Parameters: draws, a drawn job.
    Returns: Job, with a standard normal number a draw for each thing that is set.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `with_workmanship`.
    """
    return replace(draws, samples={**draws.samples, **{name: standard_normal(name, draws.draws) for name in TOLERANCES}})


def with_workmanship(draws: Job, setup: Setup) -> Setup:
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
        >>> float(with_workmanship(drawn, Setup(4.6, 3.0, 120.0)).preload.std().round(2))
        0.5
    """
    rate, preload, gap, pressure, oil = (0.5 * draws.samples[name] for name in TOLERANCES)
    air = setup.air
    if air is not None:
        gauge = BUILT_PRESSURE * pressure  # one gauge for both
        air = Pumped(
            air.pressure + gauge,
            None if air.oil is None else air.oil + BUILT_OIL * oil,
            None if air.second is None else air.second + gauge,
        )
    return Setup(
        setup.rate * (1.0 + BUILT_RATE * rate),
        setup.preload + BUILT_PRELOAD * preload,
        setup.gap + BUILT_GAP * gap if setup.gap else 0.0,
        setup.split,
        air,
    )
