"""An opened fork with what its cartridge's charge did given back: by preload, by the gap, by both."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.conditions.equivalent_gap import gap_for_end_force
from calc.conditions.in_state import InState, Way
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.impossible import Impossible

_ROUNDS, _CLOSE = 40, 1e-7  # of preload and gap in turn; mm at which neither moves any more


def replaced(way: Way, built: InState, opened: InState, loads: Loads) -> InState | Impossible:
    """The opened fork with what was lost replaced, set as a hand sets it.

    Parameters: way, what is set anew: preload for the rider sag as built, gap for the force at full travel, or both; built, opened:
    the fork before and after; loads.
    Returns: InState, preload and gap whole millimetres and every figure worked out again from these; Impossible, not raised, where
    nothing gives it back, with the reason.
    Raises: nothing.
    Formula: preload in closed form, gap by its root, in turn until neither moves; the gap once more for the preload as rounded.
    Source: statics; Boyle's law.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    try:
        setup = set_by_hand(way, solved(way, built.figures, opened, loads), built.figures, opened, loads)
        figures = evaluate(opened.assembly, setup, loads, built.figures.process.exponent)
        return InState(way, opened.assembly, setup, figures, float(setup.gap))
    except Impossible as error:
        return error


def solved(way: Way, want: Figures, opened: InState, loads: Loads) -> Setup:
    """The setup that gives back exactly.

    Parameters: way, as `replaced`; want, the figures as built; opened; loads.
    Returns: Setup, not rounded; a gap that is set anew is alike in both legs.
    Raises: Impossible where no preload or gap gives it, or the preload would be below 0 mm.
    Formula: as `replaced`.
    Source: none.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    by_preload, by_gap = way != "gap replaced" and opened.assembly.springs > 0, way != "preload replaced"
    setup = replace(opened.setup, gap_split=0.0) if by_gap else opened.setup
    for _ in range(_ROUNDS):
        before = setup
        if by_preload:
            setup = replace(setup, preload=preload_for_sag(opened.assembly, setup, loads.aboard, want.rider.travel))
        if by_gap:
            setup = _gap_for(want, setup, opened, loads)
        if max(abs(float(setup.preload - before.preload)), abs(float(setup.gap - before.gap))) < _CLOSE:
            break
    else:
        raise Impossible("replace", "No preload and gap together give both back.", "Change the springs.", None)
    if by_preload and float(setup.preload) < 0:
        sag, preload = "The sag would need a preload of", float(setup.preload)
        raise Impossible("replace", f"{sag} {preload:.1f} mm.".replace("-", "−"), "Softer springs would replace it.", None)
    return setup


def set_by_hand(way: Way, exact: Setup, want: Figures, opened: InState, loads: Loads) -> Setup:
    """The nearest that a hand sets, to 1 mm.

    Parameters: way, as `replaced`; exact, as `solved`; want, the figures as built; opened; loads.
    Returns: Setup; the gap is that of the preload as rounded.
    Raises: Impossible as `solved`.
    Formula: none.
    Source: none.
    Example: see `tests/unit/conditions/test_states.py`.
    """
    if way == "preload replaced" or (opened.assembly.springs > 0 and way == "both replaced"):
        exact = replace(exact, preload=np.round(exact.preload))
    if way == "preload replaced":
        return exact
    return replace(exact, gap=np.round(_gap_for(want, exact, opened, loads).gap))


def _gap_for(want: Figures, setup: Setup, opened: InState, loads: Loads) -> Setup:
    gap = gap_for_end_force(opened.assembly, setup, loads, want.process.exponent, want.end_force)
    return replace(setup, gap=gap)
