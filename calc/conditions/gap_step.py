"""What a small step of the gap does: how well a gap has to be read and matched."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Number
from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.model.inputs import EndInputs, attempted

STEP = 5.0  # mm: what a bench can still be out by


@dataclass(frozen=True, eq=False)
class GapStep:
    """A setup with its gap made smaller, both legs alike.

    `step` [mm]; `oil` [mm3], into the left leg; `before` and `after`, what the setup does; `after` is None where the smaller gap
    cannot be: then `problem` says why.
    """

    step: float
    oil: Number
    before: Figures
    after: Figures | None
    problem: Impossible | None


def gap_step(here: EndInputs, setup: Setup, step: float = STEP) -> GapStep | None:
    """A setup beside the same with a smaller gap.

    Parameters: here, the end; setup, scalars; step [mm], above 0.
    Returns: GapStep; None at an end that has no gap, or of a setup that cannot be as it is.
    Raises: nothing.
    Formula: two setups worked out whole, see `calc.end.figures.evaluate`; oil by `LegGas.oil_to_add`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> from calc.model.inputs import end_inputs
        >>> here = end_inputs(load(jobs()["enduro"]), "front")
        >>> found = gap_step(here, here.as_found)
        >>> round(float(found.oil)), bool(found.after.end_force > found.before.end_force)
        (8333, True)
    """
    if not isinstance(here.assembly, ForkAssembly) or not np.all(np.asarray(setup.gap) > step):
        return None
    before, _ = attempted(here, setup)
    if before is None:
        return None
    smaller = replace(setup, gap=setup.gap - step)
    rate = here.assembly.rates(setup)[0]
    oil = here.assembly.gas.oil_to_add(rate, setup.gaps[0], rate, smaller.gaps[0])
    return GapStep(step, oil, before, *attempted(here, smaller))
