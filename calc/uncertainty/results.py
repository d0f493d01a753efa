"""Results that carry a +/-, by the report's names: what a setup does, and what is recommended, solved again."""

from __future__ import annotations

import numpy as np

from calc.array import Array, Number
from calc.end.figures import Figures
from calc.model.inputs import EndInputs
from calc.uncertainty.choices import Choices


def solved(here: EndInputs, found_choices: Choices, index: int) -> dict[str, Array]:
    """What is recommended, solved again with the spring held.

    Parameters: here, the end; found_choices, sized with it; index of the candidate that is told [-].
    Returns: preload and gap [mm], or pressure [MPa, gauge] and what else is set, by name; nothing for what some draws cannot find.
    Raises: nothing. Formula: see `calc.sizing.coil.size`. Source: none.
    Example: see `calc.uncertainty.bands.bands`.
    """
    exact, unreachable = found_choices.sized.exact, found_choices.sized.short.get("end unreachable")
    if here.air is not None:
        assert exact.air is not None
        reached = {here.air.control: np.asarray(here.air.amount(exact))}
        return {"pressure": np.asarray(exact.air.pressure)} | ({} if np.any(unreachable) else reached)
    held = index - found_choices.first
    solved = {"preload": np.asarray(exact.preload)[held]}
    if unreachable is not None and not np.any(unreachable[held]):
        solved["gap"] = np.asarray(exact.gap)[held]
    return solved


def results(done: Figures) -> dict[str, Number]:
    """The results that carry a band.

    Parameters: done, the figures of a setup.
    Returns: results [internal units] by the report's names.
    Raises: nothing. Formula: none. Source: none.
    Example: see `calc.uncertainty.bands.bands`.
    """
    return {
        "free_travel": done.free.travel,
        "free_stroke": done.free.stroke,
        "rider_travel": done.rider.travel,
        "rider_stroke": done.rider.stroke,
        "wheel_rate": done.wheel_rate,
        "frequency": done.frequency,
        "end_force": done.end_force,
        "end_multiple": done.end_multiple,
        "energy": done.energy,
        "energy_per_mass": done.energy_per_mass,
    }
