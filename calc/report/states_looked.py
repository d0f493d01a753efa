"""Each state of a fork along its stroke, for looking at: its leg in section, its curve, what stands behind its damper's oil."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.conditions.in_state import InState, State
from calc.end.limits import Limits
from calc.impossible import Impossible
from calc.job import Job
from calc.model import limits
from calc.report.curve import force_curve
from calc.report.section import section
from calc.report.setups import Cases, setup_report
from calc.report.spaces import BAR, listed
from calc.report.states import label_of, said, worked_out
from calc.report.types import StateLooked, StatesLooked
from calc.uncertainty.corrected import sags_found


def states_looked(job: Job) -> StatesLooked | None:
    """The states of the fork as found, along their strokes.

    Parameters: job.
    Returns: StatesLooked, those that can be; None where the fork has no sealed cartridge.
    Raises: nothing.
    Formula: see `calc.conditions.states`.
    Source: see there.
    Example: see `tests/unit/report/test_states_looked.py`.
    """
    corrected = sags_found(job, with_draws=False).correct(job)
    found = worked_out(job, corrected)
    if found is None or isinstance(found, str):
        return None if found is None else StatesLooked(found, ())
    try:
        bounds = limits(corrected, "front")
    except Impossible as error:
        return StatesLooked(said(error), ())
    can = (one for one in found.told.values() if isinstance(one, InState))
    return StatesLooked("", tuple(_looked(corrected, one, bounds) for one in can))


def _looked(job: Job, one: InState, bounds: Limits) -> StateLooked:
    done, end = one.figures, one.figures.end
    curve = force_curve(end, done, along=True)
    travel = end.motion.travel(np.asarray(curve.stroke))
    springs, gas = end.spring_wheel_force(travel), end.gas_wheel_force(travel, done.process)
    return StateLooked(
        state=one.state,
        label=label_of(one.state, one),
        setup=setup_report(one.setup, done, Cases.of(job, "front")),
        curve=curve,
        section=section(_drawn_in(job, one.state), one.assembly, bounds, one.setup, done),
        gas_share=tuple(_share(*pair) for pair in zip(np.asarray(springs), np.asarray(gas), strict=True)),
        behind=listed(BAR * one.behind_along(np.asarray(curve.stroke), done.process), 4),
    )


def _share(springs: float, gas: float) -> float | None:
    """The gas's share [%] of a force that both push with; drawn out fast, the gas pulls, and has none."""
    return round(100.0 * float(gas / (springs + gas)), 2) if springs >= 0 and gas >= 0 and springs + gas > 0 else None


def _drawn_in(job: Job, how: State) -> Job:
    """The job with the parts that there are to draw in a state: whether its cartridge stands open."""
    now = job.fields["front.cartridge_state"]
    opened = "opened into one" if how == "opened into one" or how.endswith("replaced") else "as built"
    return replace(job, fields={**job.fields, "front.cartridge_state": replace(now, choice=opened)})
