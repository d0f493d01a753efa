"""The least moves that make the typical values of a kind of riding agree."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.optimize import least_squares  # type: ignore[import-untyped]

from calc.array import Array
from calc.job import Job
from calc.practice.calibrate.rows import AS_SOLO, INPUTS, Key, beside, half_range, inside, judged, moved, practised, rounded
from calc.practice.calibrate.standard import standard_job, worked_out
from calc.practice.uses import POSTURE

HARD = 40.0  # weight of what comes out of the model leaving its range, which no bound can hold
STEP = 1e-4  # half-ranges, of a slope


@dataclass(frozen=True)
class Problem:
    """One kind of riding, or two that share rows."""

    uses: tuple[str, ...]

    @cached_property
    def jobs(self) -> dict[str, Job]:
        """The standard rider's job of each use."""
        return {use: standard_job(use) for use in self.uses}

    @cached_property
    def keys(self) -> list[Key]:
        """What may move, in the order of rounding; a rider's share only in the posture that the use is read in."""
        unread = {use: {"sitting": "standing", "standing": "sitting"}[POSTURE[use]] for use in self.uses}
        pairs = [(row, use) for row in INPUTS for use in self.uses if row != f"rider front share {unread[use]}"]
        return list(dict.fromkeys(self._own(*pair) for pair in pairs if practised(pair)))

    def _own(self, row: str, use: str) -> Key:
        return row, self.uses[0] if row in AS_SOLO else use

    def model(self, values: Mapping[Key, Array]) -> dict[Key, Array]:
        """What comes out of the model."""
        found: dict[Key, Array] = {}
        for use in self.uses:
            rows = {row: values[self._own(row, use)] for row in INPUTS if self._own(row, use) in values}
            found |= {(row, use): value for row, value in worked_out(self.jobs[use], rows).items()}
        return found

    def solve(
        self, fixed: Mapping[Key, float], held: Mapping[Key, float], begin: Mapping[Key, float]
    ) -> tuple[dict[Key, float], float]:
        """The least moves with some inputs fixed and some outputs held; and what they cost."""
        free = [key for key in self.keys if key not in fixed and half_range(key) > 0]
        rest = {key: fixed.get(key, begin[key]) for key in self.keys}

        def at(x: Array) -> Array:
            """x: a row for each free input; columns, if any, are tries."""
            tries = {key: np.full(np.shape(x)[1:], value) for key, value in rest.items()}
            return self._residuals(tries | dict(zip(free, x, strict=True)), held)

        if not free:
            return rest, float(np.sum(at(np.zeros(0)) ** 2))
        low, high = np.array([inside(key) for key in free]).T
        scale = np.array([half_range(key) for key in free])

        def slope(x: Array) -> Array:
            down, up = (x[:, None] + side * STEP * np.diag(scale) for side in (-1.0, 1.0))
            return (at(up) - at(down)) / (2.0 * STEP * scale)

        first = np.clip([rest[key] for key in free], low + 1e-6 * scale, high - 1e-6 * scale)
        done = least_squares(at, first, slope, (low, high), x_scale=scale, xtol=1e-9, ftol=1e-10)
        return rest | dict(zip(free, map(float, done.x), strict=True)), float(2.0 * done.cost)

    def _residuals(self, values: Mapping[Key, Array], held: Mapping[Key, float]) -> Array:
        found = [moved(key, values[key]) for key in self.keys]
        for key, value in self.model(values).items():
            off = value - np.clip(value, *inside(key))
            found += [moved(key, value), HARD * (off + (value - held.get(key, value))) / half_range(key)]
        return np.array(np.broadcast_arrays(*found))

    def typical(self) -> dict[Key, float]:
        """Calibrated typical values, rounded row by row, the rest following.

        Rider sag is rounded before the unsprung masses, and these then give it to the whole millimetre that a job will want.
        """
        values, _ = self.solve({}, {}, {key: judged(key)[2] for key in self.keys})
        fixed: dict[Key, float] = {}
        sags: dict[Key, float] = {}
        held: dict[Key, float] = {}
        for key in self.keys:
            if key[0].startswith("unsprung") and not sags:
                sags = {out: share for out, share in self._told(values).items() if out[0].startswith("rider sag")}
                held = {out: self._wanted(out, share, values) for out, share in sags.items()}
                values, _ = self.solve(fixed, held, values)
            tries = [self.solve(fixed | {key: value}, held, values) for value in beside(key, values[key])]
            values, _ = min(tries, key=lambda found: found[1])
            fixed[key] = values[key]
        inputs = {(row, use): values[self._own(row, use)] for row in INPUTS for use in self.uses if self._own(row, use) in values}
        return inputs | self._told(values) | sags

    def _wanted(self, out: Key, share: float, values: Mapping[Key, float]) -> float:
        """The rider sag [% of travel] that a job makes of a typical one: whole millimetres."""
        row, use = out
        travel = values[self._own(row.replace("rider sag", "travel"), use)]
        return 100.0 * round(share / 100.0 * travel) / travel

    def _told(self, values: Mapping[Key, float]) -> dict[Key, float]:
        """The output rows, rounded."""
        return {key: rounded(key, float(value)) for key, value in self.model({k: np.array(v) for k, v in values.items()}).items()}
