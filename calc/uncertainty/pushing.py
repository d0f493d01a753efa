"""A bench push as a question to the adjustment: what the leg's readings, as standard normal numbers, let one read in one state."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import at_normal, least_off
from calc.model.push_read import Push, can_have_moved
from calc.model.pushed import PushedLeg, pushed_leg
from calc.model.spread import off_at, standard_normal
from calc.model.survivors import Columns, picked
from calc.sizing.margins import moved_readings
from calc.uncertainty.adjustment import Adjusted, adjusted
from calc.uncertainty.evidence import Evidence, evidence
from calc.uncertainty.misfit import Observed, missed

DRAWS = 240
ANY_GAP = 60.0  # mm, standard deviation about the gap that was read: any that a leg may have
OF_THE_LEG = ("front.", "place.")
# Read for a push alone, so no part of the model elsewhere: drawn here.
_OWN = ("front.push_friction", "front.push_scale", "front.push_gap")


@dataclass(frozen=True, eq=False)
class Pushing:
    """A push in one state of the leg.

    Parameters: job, as `calc.model.pushed.as_pushed` leaves it; push; how, the state; any_gap, whether the gap that was read is
    left aside, so that the push alone tells one; beside, readings of the whole bike to be moved with it, None for the leg's own.
    """

    job: Job
    push: Push
    how: str
    any_gap: bool = False
    beside: tuple[str, ...] | None = None

    @cached_property
    def paths(self) -> tuple[str, ...]:
        """Readings that are not known exactly."""
        if self.beside is not None:
            return self.beside
        return tuple(path for path in moved_readings(self.job) if path.startswith(OF_THE_LEG))

    @cached_property
    def own(self) -> tuple[str, ...]:
        """Readings of the push that are not known exactly."""
        fields = self.job.fields
        return tuple(path for path in _OWN if fields[path].applies and (one := fields[path].reading) and one.plus_minus_95 > 0)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Of all parameters: readings, the gap where any is let be, what each stroke is off by."""
        strokes = tuple(f"stroke {number}" for number in range(len(self.push.strokes)))
        return (*self.paths, *self.own, *(("any gap",) if self.any_gap else ()), *strokes)

    def model(self, z: Array) -> Array:
        """The forces read at the strokes of the push, a column of NaN where they cannot be."""
        strokes = self.push.strokes[:, None] + self.push.stroke_off * z[-len(self.push.strokes) :]
        return self._of_each(z, len(strokes), lambda leg, at: self._shown(leg.force_unbounded(strokes[:, at]), z[:, at]))

    def ahead(self, z: Array, strokes: Array) -> Array:
        """The forces that scales would show at further strokes [mm]; NaN where hardly any gas is left."""
        return self._of_each(z, len(strokes), lambda leg, at: self._shown(leg.force(strokes[:, None]), z[:, at]))

    def figures(self, z: Array) -> Array:
        """Gap last set, gap by now [mm], oil moved [mm3], friction [N]; NaN for one that cannot be."""

        def rows(leg: PushedLeg, at: Columns) -> Array:
            moved = leg.job.value("front.oil_moved") if self.how == "oil moved" else np.nan
            try:
                now = leg.gap_now()
            except Impossible:
                now = np.nan
            found = (leg.gap, now, moved, self._own("front.push_friction", z[:, at]))
            return np.stack([np.broadcast_to(np.asarray(one, dtype=float), at.shape) for one in found])

        return self._of_each(z, 4, rows)

    def _of_each(self, z: Array, rows: int, asked: Callable[[PushedLeg, Columns], Array]) -> Array:
        """What is asked of the leg where its readings are as each column of `z` says; NaN where there is none, found by halving."""
        every = np.arange(z.shape[1])
        moved = at_normal(self.job, dict(zip(self.paths, z, strict=False)), len(every))
        if self.how == "oil moved":
            moved = can_have_moved(moved)
        further = self._own("front.push_gap", z) - self._number("front.push_gap") + np.zeros(len(every))
        if self.any_gap:
            further = further + ANY_GAP * z[len(self.paths) + len(self.own)]

        def some(at: Columns) -> Array:
            job = moved if len(at) == len(every) else picked(moved, at)
            try:
                return np.broadcast_to(asked(pushed_leg(job, self.push, self.how, further[at]), at), (rows, len(at)))
            except Impossible:
                if len(at) == 1:
                    return np.full((rows, 1), np.nan)
                half = len(at) // 2
                return np.concatenate([some(at[:half]), some(at[half:])], axis=1)

        return some(every)

    def _shown(self, force: Array, z: Array) -> Array:
        """What scales show [N] of a force [N]: with friction, and what they are off by."""
        sticks = self.push.sign * self._own("front.push_friction", z)
        return np.asarray((force + sticks) * (1.0 + self._own("front.push_scale", z)))

    def observed(self) -> Observed:
        """What was read, and how unsure it is."""
        count = len(self.push.forces)
        return Observed(self.push.forces, np.full(count, self.push.force_off), np.zeros(count, dtype=bool))

    def adjusted(self) -> tuple[Adjusted, Evidence] | None:
        """Its readings adjusted to the push, and how probable that makes it; None where this state cannot give such a push."""
        observed = self.observed()
        found = adjusted(self.model, np.zeros((len(self.names), 1)), observed, None)
        if found is None or np.any(np.isnan(found.fitted)):
            return None
        drawn = np.stack([standard_normal(f"push {name}", DRAWS) for name in self.names])
        weighed = evidence(self.model, found, observed, drawn)
        return None if weighed is None else (found, weighed)

    def misfit(self) -> float | None:
        """The least |z|^2 + sum of ((force read - expected) / u)^2 [-]; None where this state cannot give such a push."""
        observed = self.observed()
        found = adjusted(self.model, np.zeros((len(self.names), 1)), observed, None)
        if found is None or np.any(np.isnan(found.fitted)):
            return None
        return float(missed(found.best[:, None], found.fitted[:, None], observed)[0])

    def _number(self, path: str) -> float:
        found = self.job.fields[path]
        return found.reading.value if found.applies and found.reading is not None else 0.0

    def _own(self, path: str, z: Array) -> Array | float:
        if path not in self.own:
            return self._number(path)
        reading, row = self.job.fields[path].reading, len(self.paths) + self.own.index(path)
        assert reading is not None
        return reading.value + off_at(path, reading, z[row], least_off(self.job, path))
