"""A bench push as it was read, and the states that a push is to tell apart."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number, some
from calc.gas.chamber import circle
from calc.job import Job, Resolved
from calc.job.fields.air import STATES
from calc.model.cartridge import gauge
from calc.quantities.reading import Origin, Reading, Spread

OPEN = "open"  # a leg that never had a closed cartridge in it
LEAST_MOVED, MOST_MOVED = 5e3, 60e3  # mm3 of oil over a worn seal: less is none, more is a leak; common practice, no source
_SLACK = 0.8  # of the oil that would leave a spring-loaded piston slack: beyond, the charge is as good as lost
_SIGNS = {"in": 1.0, "out": -1.0, "both": 0.0}


@dataclass(frozen=True, eq=False)
class Push:
    """A push as it was read.

    Parameters: strokes [mm] and forces [N], a point each; force_off [N], stroke_off [mm], standard uncertainties of a reading;
    sign of friction in the reading: 1 pushed in, -1 let out, 0 in the middle; spring_in, whether a spring was pushed too; bled, at
    full extension before the push; right, which leg.
    """

    strokes: Array
    forces: Array
    force_off: float
    stroke_off: float
    sign: float
    spring_in: bool
    bled: bool
    right: bool


def push_read(job: Job) -> Push | None:
    """The bench push of a job.

    Parameters: job.
    Returns: Push; None where no point is entered, or the fork is none that a push tells of.
    Raises: nothing.
    Formula: u = half of the 95 % half-width.
    Source: JCGM 100:2008, 6.3.
    Example:
        >>> from calc.job import load
        >>> said = {"bike": {"use": "enduro"}, "front": {"push_points": "250 310; 280 520"}}
        >>> push_read(load({"format": "stanchion-job", "version": 1} | said)).forces.tolist()
        [310.0, 520.0]
    """
    points = job.fields["front.push_points"]
    if not points.applies or not points.pairs:
        return None
    strokes, forces = np.array(points.pairs, dtype=float).T
    spring_in = job.choice("front.push_spring") == "in"
    return Push(
        strokes,
        forces,
        _off_by(job, "front.push_error"),
        _off_by(job, "front.push_stroke_error"),
        _SIGNS.get(job.choice("front.push_read"), 0.0),
        spring_in,
        not spring_in or job.choice("front.push_bled") == "yes",
        job.choice("front.push_leg") == "right",
    )


def _off_by(job: Job, path: str) -> float:
    """Standard uncertainty of each point; 0 where the entry is refused, and then nothing is told (`calc.model.pushed.why_not`)."""
    return 0.0 if job.fields[path].reading is None else job.number(path) / 2.0


def states_of(job: Job) -> tuple[str, ...]:
    """The states that a push is to tell apart.

    Parameters: job.
    Returns: keys of the field's choices; `OPEN` alone for a fork with no sealed cartridge.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> states_of(load(jobs()["enduro"])), len(states_of(load(jobs()["trail"])))
        (('open',), 4)
    """
    return tuple(STATES) if job.choice("front.air") == "sealed cartridge" else (OPEN,)


def moved_ranges(job: Job) -> dict[str, tuple[float, float]]:
    """How much oil may have crossed a worn seal, out of the cartridge or into it.

    Parameters: job, not drawn.
    Returns: least and most [mm3], below 0 for into it, by "out" and "in"; none that leaves the cartridge no cartridge.
    Raises: Impossible as `calc.model.cartridge.gauge`.
    Formula: out, until a spring-loaded piston hardly presses any more; in, until half of the gas's or the piston's room is used up.
    Source: common practice, no source.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> sorted(moved_ranges(load(jobs()["trail"])))
        ['in', 'out']
    """
    swept = circle(job.number("front.damper_rod")) * job.number("front.travel")
    if job.choice("front.cartridge_fill") == "gas":
        room: Number = job.number("front.cartridge_gas")
    else:
        room = circle(job.number("front.cartridge_piston")) * (
            job.number("front.piston_stop") if job.known("front.piston_stop") else np.inf
        )
    out, into = min(float(_presses_out(job)), MOST_MOVED), min(float(0.5 * (room - swept)), MOST_MOVED)
    found = {"out": (LEAST_MOVED, out), "in": (-into, -LEAST_MOVED)}
    return {way: (low, high) for way, (low, high) in found.items() if high > low}


def can_have_moved(job: Job) -> Job:
    """The job with no more oil out of its cartridge than a spring-loaded piston presses out, in each draw by its own spring.

    Parameters: job, drawn, with oil that has moved.
    Returns: Job.
    Raises: Impossible as `calc.model.cartridge.gauge`.
    Formula: see `moved_ranges`.
    Source: none.
    Example: see `tests/unit/model/test_pushed.py`.
    """
    moved = np.minimum(job.value("front.oil_moved"), _presses_out(job))
    return replace(job, samples={**job.samples, "front.oil_moved": moved})


def _presses_out(job: Job) -> Number:
    """Oil [mm3] that a spring-loaded piston presses out before its charge is as good as lost."""
    rate, rod = job.value("front.piston_spring"), circle(job.value("front.damper_rod"))
    if job.choice("front.cartridge_fill") == "gas" or some(rate <= 0) or some(rod <= 0):
        return np.inf
    return _SLACK * gauge(job, rod) * circle(job.value("front.cartridge_piston")) ** 2 / rate


def as_pushed(job: Job, push: Push, moved: tuple[float, float] | None = None) -> Job:
    """The job as it was when it was pushed: bled or not, a wide leak, so much oil moved.

    Parameters: job, not drawn; push; moved [mm3], between which the oil that has moved lies, None for none.
    Returns: Job.
    Raises: nothing.
    Formula: pushed slowly a small leak does what a wide one does.
    Source: none.
    Example: see `tests/unit/model/test_pushed.py`.
    """
    bled = "yes" if push.bled else "no"
    chosen = {"front.leak": "wide", "front.leak_bled": bled, "front.bled_since": bled}
    fields: dict[str, Resolved] = {path: replace(job.fields[path], choice=key) for path, key in chosen.items()}
    if moved is not None:
        low, high = moved
        reading = Reading(0.5 * (low + high), 0.5 * (high - low), Origin.ASSUMED, Spread.RECTANGULAR)
        fields["front.oil_moved"] = replace(job.fields["front.oil_moved"], applies=True, reading=reading)
    return replace(job, fields={**job.fields, **fields})
