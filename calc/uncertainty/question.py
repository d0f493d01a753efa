"""What was found of a job as a question to the adjustment: what its readings, as standard normal numbers, let one observe."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import Move, at_normal, moves
from calc.model.marks import MarkRead, landing_stroke
from calc.model.observed import CASES, Expected, SagRead, expected
from calc.model.spread import standard_normal
from calc.model.survivors import picked, working
from calc.practice import Axle
from calc.uncertainty.adjustment import Adjusted, adjusted
from calc.uncertainty.misfit import Observed
from calc.uncertainty.pushing import Pushing


@dataclass(frozen=True, eq=False)
class Question:
    """The sags, marks and points of a push of a job that count, and the readings that they may correct.

    Parameters: job, not drawn; reads; paths, of readings that are not known exactly; push, None where none counts; points, which of
    its points do.
    """

    job: Job
    reads: tuple[SagRead | MarkRead, ...]
    paths: tuple[str, ...]
    push: Pushing | None = None
    points: tuple[int, ...] = ()

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Of all parameters: the readings, then those that the push alone has."""
        return self.paths if self._pushed is None else self._pushed.names

    @cached_property
    def _pushed(self) -> Pushing | None:
        return None if self.push is None else replace(self.push, beside=self.paths)

    @cached_property
    def _moves(self) -> tuple[Move, ...]:
        return moves(self.job)

    def model(self, z: Array) -> Array:
        """What is observed of each reading, then half of what two readings of it differ by, then the forces at the points of the
        push; a column of NaN where it cannot be.
        """
        found = self._of_sags(z[: len(self.paths)])
        return found if self._pushed is None else np.concatenate([found, self._pushed.model(z)[list(self.points)]])

    def _of_sags(self, z: Array) -> Array:
        every = np.arange(z.shape[1])
        found = np.full((len(self.reads) + len(self.twice), len(every)), np.nan)
        if not len(found):
            return found
        moved = at_normal(self.job, dict(zip(self.paths, z, strict=True)), len(every), self._moves)
        try:
            found[:] = self._observed(moved)
        except Impossible:
            good = working(moved, every, self._observed) if len(every) > 1 else every[:0]
            if len(good):
                found[:, good] = self._observed(picked(moved, good))
        return found

    def _observed(self, moved: Job) -> Array:
        ends = {axle: expected(moved, axle, all_held=False) for axle in self.sagged}
        sags = [self._one(moved, ends, read) for read in self.reads]
        halves = [ends[read.axle].friction[CASES.index(read.case)] for read in self.twice]
        rows = np.broadcast_arrays(*sags, *halves)
        return np.stack(rows).reshape(len(rows), -1)

    def _one(self, moved: Job, ends: Mapping[Axle, Expected], read: SagRead | MarkRead) -> Array:
        if isinstance(read, MarkRead):
            return -landing_stroke(moved, read.axle, moved.value("ride.drop"))
        return _of(ends[read.axle], read) - _hanging(moved, read)

    @property
    def sagged(self) -> set[Axle]:
        """The ends of which a sag was read."""
        return {read.axle for read in self.reads if isinstance(read, SagRead)}

    @property
    def twice(self) -> tuple[SagRead, ...]:
        """Those that were read twice and not at the top, which tell of friction too."""
        return tuple(read for read in self.reads if isinstance(read, SagRead) and read.spread is not None and not read.topped_out)

    def observed(self) -> Observed:
        """What was read, and how unsure it is."""
        ends = {axle: expected(self.job, axle) for axle in self.sagged}
        off = [_off(ends, read) for read in self.reads]
        value = [read.middle for read in self.reads] + [read.spread / 2.0 for read in self.twice if read.spread is not None]
        off += [read.uncertainty / 2**0.5 for read in self.twice]
        bound = [read.bound for read in self.reads] + [False] * len(self.twice)
        if self.push is not None:
            value += self.push.push.forces[list(self.points)].tolist()
            off += [self.push.push.force_off] * len(self.points)
            bound += [False] * len(self.points)
        return Observed(np.array(value), np.array(off), np.array(bound))

    def answered(self) -> Adjusted | None:
        """The readings adjusted to what was found; None where they cannot be."""
        rows = np.stack([standard_normal(name, self.job.draws) for name in self.names])
        return adjusted(self.model, rows, self.observed(), "sags")


def _off(ends: Mapping[Axle, Expected], read: SagRead | MarkRead) -> float:
    """Standard uncertainty [mm] of what is compared; a sag read once may stand anywhere within what sticks."""
    if isinstance(read, MarkRead):
        return read.uncertainty
    if read.spread is not None:
        return read.uncertainty / 2**0.5
    stuck = float(ends[read.axle].friction[CASES.index(read.case)])
    return float((read.uncertainty**2 + stuck**2 / 3.0) ** 0.5)


def _of(here: Expected, read: SagRead) -> Array:
    return np.asarray(here.sags[CASES.index(read.case)])


def _hanging(job: Job, read: SagRead) -> Array | float:
    return np.asarray(job.value(f"{read.axle}.hanging_length")) if read.taped else 0.0
