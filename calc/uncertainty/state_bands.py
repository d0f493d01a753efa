"""How sure: the states of one fork, and what opening it takes away, on the draws of its readings."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np

from calc.array import Number
from calc.conditions.in_state import WAYS, InState, State
from calc.conditions.states import States, in_state, lost_along
from calc.end.figures import evaluate
from calc.job import Job
from calc.model import conditions, end_loads
from calc.model.draws import drawn, half_width
from calc.model.survivors import survivors
from calc.uncertainty.tolerance import with_tolerance, with_workmanship

ENOUGH = 0.5  # of the draws that must be possible, for a +/- of those that are

Halves = Mapping[str, float]
Results = Mapping[tuple[int, str], Number]  # at which stroke, what


@dataclass(frozen=True, eq=False)
class StateBands:
    """95 % half-widths in internal units: of each state by name, "behind0" to "behind2" at its strokes; of what is lost at each
    stroke by the names of `Lost`. Nothing for what too many draws cannot be. `left_out`, the share of the draws [-] that a state
    cannot be of, where any is.
    """

    figures: Mapping[State, Halves]
    lost: tuple[Halves, ...]
    left_out: Mapping[State, float]


def state_bands(job: Job, found: States) -> StateBands:
    """Work out the +/- of a fork's states.

    Parameters: job, not drawn; found, its states.
    Returns: StateBands. Oil that moved is a case, and exact; what is set anew is held, as the bench sets it.
    Raises: nothing.
    Formula: quantiles of Latin-hypercube draws; what is lost is taken draw by draw.
    Source: JCGM 101:2008 (propagation of distributions).
    Example:
        >>> from calc.conditions.states import states
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["trail"])
        >>> sure = state_bands(job, states(job))
        >>> sure.lost[2]["backing"] < sure.figures["as built"]["behind2"]
        True
    """
    here = _Drawn(with_tolerance(drawn(job)), found)
    figures: dict[State, Halves] = {}
    left_out: dict[State, float] = {}
    for how, one in found.told.items():
        if isinstance(one, InState):
            halves, out = here.halves(partial(here.figures, how))
            figures |= {how: {name: half for (_, name), half in halves.items()}} if halves else {}
            left_out |= {how: out} if out else {}
    taken, _ = here.halves(here.lost) if found.lost else ({}, 0.0)
    lost = tuple({name: half for (at, name), half in taken.items() if at == i} for i in range(len(found.lost)))
    return StateBands(figures, lost, left_out)


@dataclass(frozen=True, eq=False)
class _Drawn:
    """The draws, the states they are of, and those that all draws are in already."""

    draws: Job
    found: States
    known: dict[State, InState] = field(default_factory=dict)

    def halves(self, results: Callable[[Job], Results]) -> tuple[dict[tuple[int, str], float], float]:
        """Of results that most draws have, and the share of those that have none."""
        good, left_out, whole = survivors(self.draws, self.draws.draws, results)
        out = left_out / self.draws.draws
        if out > 1.0 - ENOUGH:
            return {}, out
        return {name: half_width(np.asarray(samples)) for name, samples in (whole or results(good)).items()}, out

    def figures(self, how: State, some: Job) -> Results:
        """What the fork does in a state, by name."""
        one = self._in(how, some)
        done = one.figures
        told: dict[str, Number] = {
            "free_sag": done.free.stroke, "rider_sag": done.rider.stroke, "end_force": done.end_force,
            "end_multiple": done.end_multiple, "gas_share": one.gas_share,
        }  # fmt: skip
        told |= {f"behind{i}": one.behind(stroke, i == 0) for i, stroke in enumerate(self.found.strokes)}
        told |= {} if one.gap_now is None else {"gap_now": one.gap_now}
        return {(0, name): samples for name, samples in told.items()}

    def lost(self, some: Job) -> Results:
        """What opening takes away at each stroke, by name."""
        rows = lost_along(some, self._in("as built", some), self._in("opened into one", some), self.found.strokes)
        return {(i, name): getattr(row, name) for i, row in enumerate(rows) for name in ("backing", "rod_push", "force", "room")}

    def _in(self, how: State, some: Job) -> InState:
        if some is not self.draws:
            return self._worked_out(how, some)
        if how not in self.known:
            self.known[how] = self._worked_out(how, some)
        return self.known[how]

    def _worked_out(self, how: State, some: Job) -> InState:
        if how not in WAYS:
            return in_state(some, how, self.found.moved)
        opened, told = self._in("opened into one", some), self.found.told[how]
        assert isinstance(told, InState)
        made, setup = with_workmanship(some, told.setup), opened.setup
        if how != "gap replaced" and opened.assembly.springs:
            setup = replace(setup, preload=made.preload)
        if how != "preload replaced":
            setup = replace(setup, gap=made.gap, gap_split=0.0)
        done = evaluate(opened.assembly, setup, end_loads(some, "front"), conditions(some).exponent)
        return InState(how, opened.assembly, setup, done, setup.gap)
