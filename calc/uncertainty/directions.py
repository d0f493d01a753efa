"""Which way a bench would go from the spring that is in: softer, stay, stiffer, counted over draws, whatever the rates.

Where nobody knows whether the spring is the one that the bike was sold with, both are drawn, and each counts by how well it
goes with the sags: bikes are sold to ride within the usual range, so a spring that does not is rather one that was changed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import combined, drawn, stepped
from calc.model.inputs import EndInputs, end_inputs
from calc.model.limits import AS_SOLD
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.sizing.choice import EndSizing, resized, size_end
from calc.sizing.coil import size
from calc.sizing.criteria import Margins
from calc.sizing.margins import moved_readings
from calc.sizing.rule import decide

STILL_AS_SOLD = 0.75  # of bikes whose owner does not know; common practice, no source
SOLD_OFF = 0.05  # of a ride frequency: so far outside the usual range bikes are sold too; common practice, no source
AROUND = 6  # steps either way of what is in: farther ones change no direction
# What a bench that has weighed and measured is left with, 95 %; common practice, no source.
BENCH = Margins(rider_sag=3.0, free_sag=5.0, end_multiple=0.2, frequency=0.03)


@dataclass(frozen=True, eq=False)
class Directions:
    """Chances [-] that a bench with everything measured would go to a softer spring, keep what is in, go to a stiffer one.

    `free` [mm], the free sag that what is in is left with once the rider sag is as wanted: its low, middle and high (10, 50, 90 of
    100); `causes`, readings by path that the direction hangs on, the most first.
    """

    softer: float
    keep: float
    stiffer: float
    free: tuple[float, float, float]
    causes: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class _Counted:
    """Draws of one job: weights [-]; -1, 0 or 1 each; free sag [mm] each."""

    weight: Array
    way: Array
    free: Array


def directions(job: Job, axle: Axle) -> Directions | None:
    """Count which way a bench would go.

    Parameters: job, corrected by its sags, its springs said to be "changed" where nobody knows; axle.
    Returns: Directions; None where nothing can be built, or no draw can be.
    Raises: Impossible as `calc.sizing.choice.size_end`.
    Formula: Bayes: the two cases by `STILL_AS_SOLD`, each draw by how near to the usual range the standard setup rides in it.
    Source: JCGM 101:2008 for the draws; the rule is `calc.sizing.rule.decide`.
    Example: see `tests/unit/uncertainty/test_directions.py`.
    """
    known = job.choice(AS_SOLD[axle])
    cases = {"as sold": STILL_AS_SOLD, "changed": 1.0 - STILL_AS_SOLD} if known == "unknown" else {known: 1.0}
    counted = [(prior, one) for case, prior in cases.items() if (one := _counted(_as(job, axle, case), axle)) is not None]
    if not counted:
        return None
    weight = np.concatenate([prior * one.weight / len(one.weight) for prior, one in counted])
    if not np.sum(weight) > 0:
        return None
    weight = weight / np.sum(weight)
    way, free = (np.concatenate([getattr(one, name) for _, one in counted]) for name in ("way", "free"))
    softer, keep, stiffer = (float(np.sum(weight[way == one])) for one in (-1, 0, 1))
    low, middle, high = (_quantile(free, weight, part) for part in (0.1, 0.5, 0.9))
    return Directions(softer, keep, stiffer, (low, middle, high), _causes(job, axle))


def _as(job: Job, axle: Axle, case: str) -> Job:
    """The job with its springs said to be as sold, or changed."""
    path = AS_SOLD[axle]
    return replace(job, fields={**job.fields, path: replace(job.fields[path], choice=case)})


def _counted(job: Job, axle: Axle) -> _Counted | None:
    done = size_end(job, axle)
    if done.fitted is None:
        return None

    def judged(some: Job) -> tuple[EndInputs, Array, Array]:
        here = end_inputs(some, axle)
        return here, *way(here, done, job.number(f"{axle}.step"))

    draws = drawn(job)
    good, left_out, together = survivors(draws, draws.draws, judged)
    if left_out == draws.draws:
        return None
    here, ways, free = together or judged(good)
    return _Counted(*(np.broadcast_to(part, np.shape(ways)) for part in (_sold_so(here), ways, free)))


def way(here: EndInputs, done: EndSizing, step: float) -> tuple[Array, Array]:
    """Which way the rule goes from the spring that is in, with a bench's margins, and the free sag that what is in is left with.

    Parameters: here, drawn inputs of the end; done, its nominal sizing, whose limits and step hold; step [N/mm] of the series.
    Returns: -1 to a softer spring, 0 stay, 1 to a stiffer one, 2 where nothing can be built; free sag [mm] once the rider sag is as
    wanted.
    Raises: Impossible as `calc.sizing.coil.size`.
    Formula: `calc.sizing.rule.decide` over springs a step apart from the one that is in.
    Source: common practice, no source.
    Example: see `tests/unit/uncertainty/test_directions.py`.
    """
    own = np.atleast_1d(np.asarray(here.as_found.rate))
    rates = np.maximum(own + step * np.arange(-AROUND, AROUND + 1)[:, None], 0.2 * own)
    targets = replace(here.targets, frequency=_as_a_bench_has_it(here))
    sized = size(here.assembly, rates, here.loads, here.exponent, targets, done.limits)
    decision = decide(sized, targets, BENCH, AROUND, done.step, "standard")
    went = np.take_along_axis(rates, np.maximum(decision.choice, 0)[None], axis=0)[0]
    ways = np.where(decision.choice < 0, 2, np.where(decision.kept, 0, np.sign(went - own)))
    found = sized.figures.free.stroke if targets.sag_is_stroke else sized.figures.free.travel
    free = np.broadcast_to(found, np.shape(decision.key))[AROUND]
    return ways, np.maximum(free, 0.0)


def _as_a_bench_has_it(here: EndInputs) -> Array:
    """The yardstick of each draw [Hz], that of a standard setup outside the usual range the nearest edge."""
    low, high = here.targets.windows.frequency
    ride = np.asarray(here.targets.frequency)
    return np.where(ride < low - BENCH.frequency, low, np.where(ride > high + BENCH.frequency, high, ride))


def _sold_so(here: EndInputs) -> Array:
    """How readily a bike is sold to ride as the standard setup does in each draw [-]: 1 within the usual range."""
    low, high = here.targets.windows.frequency
    ride = np.asarray(here.standard.frequency)
    off = np.maximum(np.log(low / ride), np.log(ride / high)) / SOLD_OFF
    return np.asarray(np.exp(-0.5 * np.maximum(off, 0.0) ** 2))


def _quantile(values: Array, weight: Array, part: float) -> float:
    order = np.argsort(values)
    return float(values[order][min(int(np.searchsorted(np.cumsum(weight[order]), part)), len(values) - 1)])


def _causes(job: Job, axle: Axle) -> tuple[str, ...]:
    """Readings that ln(frequency of what is in / yardstick) hangs on, as first order has it."""
    paths = moved_readings(job)
    try:
        done = size_end(job, axle)
        assert done.fitted is not None
        sized, decision = resized(end_inputs(stepped(job, paths), axle), done, slice(done.fitted, done.fitted + 1))
    except Impossible:
        return ()
    ride = np.log(np.asarray(sized.figures.frequency)[0] / decision.yardstick.frequency)
    _, parts = combined(job, paths, (ride[: len(paths)] - ride[len(paths) :]) / 2.0)
    return tuple(path for _, path in sorted(zip(-parts, paths, strict=True)))
