"""What a bench takes for granted of a choice over riders from light to heavy: asked of any end, whatever its job. Common practice."""

from __future__ import annotations

import numpy as np

from calc.array import Number
from calc.impossible import Impossible
from calc.job import Job
from calc.model import end_loads
from calc.practice import Axle
from calc.sizing.choice import EndSizing, other_choices, size_end
from calc.sizing.coil import Sized
from calc.sizing.rule import Decision

_LIGHT, _HEAVY, _RIDERS = 0.7, 1.3, 13
_WISHES = ("target_frequency", "target_free_sag")


def check_heavier(job: Job, axle: Axle) -> int:
    """A heavier rider never gets a softer spring, and spring rate and wheel rate follow the load; returns how many riders that was asked of.

    Not asked: where the user's own wish takes the standard's place, of an air spring (a pressure is no spring), and of two springs
    or a progressive one, where one frequency belongs to more than one rate. A rider who keeps what is in is no measure for the
    next one, and none is one for whom nothing fits. One step back is let pass: a preload is built to the whole millimetre, and where a
    sag lies at the edge of its window that decides which of two neighbours is inside.
    """
    try:
        done = size_end(job, axle)
    except Impossible:
        return 0
    if done.choice < 0 or done.inputs.air is not None or job.choice(f"{axle}.spring_kind") not in ("single", "unequal"):
        return 0
    if any(job.known(f"{axle}.{wish}") for wish in _WISHES) or (axle == "front" and job.choice("front.end_target") != "standard"):
        return 0
    masses = np.round(job.number("rider.mass") * np.linspace(_LIGHT, _HEAVY, _RIDERS))
    try:
        return _checked(job, axle, done, masses)
    except Impossible:  # one of them cannot be carried
        return 0


def _checked(job: Job, axle: Axle, done: EndSizing, masses: np.ndarray) -> int:
    sized, decision = other_choices(job, axle, done, masses)
    fits = decision.criteria_met & ~decision.kept
    rates = _chosen(sized.setup.rate, decision)
    back = np.maximum.accumulate(rates[fits]) - rates[fits]
    apart = float(np.max(np.diff(np.asarray(done.sized.setup.rate))))
    assert np.all(back <= apart * (1 + 1e-9)), (axle, masses[fits].tolist(), rates[fits].tolist())
    unbarred = fits & (decision.choice == np.argmin(decision.key, axis=0)) & (decision.choice > 0)
    unbarred &= decision.choice < len(decision.key) - 1
    if np.count_nonzero(unbarred) > 1:
        # As weighed today, moved by what the rider's mass moves it by.
        weighed = done.inputs.loads.aboard - end_loads(job, axle, job.number("rider.mass")).aboard
        loads = np.log(np.asarray(end_loads(job, axle, masses[unbarred]).aboard + weighed))
        change, load = np.log(rates[unbarred][-1] / rates[unbarred][0]), loads[-1] - loads[0]
        offered = np.asarray(done.sized.setup.rate)
        room = 1.02 * float(np.max(np.diff(np.log(offered))))  # half of what lies between two on offer, at either rider
        # Gas gives a heavier rider no more than a light one: the springs make up for its part of the wheel rate too.
        whole, gas = (_chosen(rate, decision)[unbarred] for rate in (sized.figures.wheel_rate, _gas_rate(sized)))
        most = max(1.5, float(np.max(1.0 / (1.0 - gas / whole))))
        assert 0.5 * load - room <= change <= most * load + room, (axle, change, load, room)
        assert 0.75 * load - room <= np.log(whole[-1] / whole[0]) <= 1.25 * load + room, (axle, whole.tolist(), load, room)
    return int(np.count_nonzero(fits))


def _chosen(of: Number, decision: Decision) -> np.ndarray:
    """What each rider's choice has of it."""
    return np.take_along_axis(np.broadcast_to(of, decision.key.shape), decision.choice[None], axis=0)[0]


def _gas_rate(sized: Sized) -> np.ndarray:
    """The gas's part of the wheel rate at rider sag [N/mm], by its force half a millimetre either way."""
    end, at, process = sized.figures.end, sized.figures.rider.travel, sized.figures.process
    return np.asarray(end.gas_wheel_force(at + 0.5, process)) - np.asarray(end.gas_wheel_force(at - 0.5, process))
