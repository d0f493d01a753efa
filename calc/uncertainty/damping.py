"""By how much damping must follow a change of setup, each factor with its +/-: before and after share every draw."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from calc.array import Number
from calc.damping.wheel import follow, follow_at_full
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.job import Job
from calc.model.axles import standard_loads
from calc.model.draws import drawn, half_width
from calc.model.inputs import EndInputs, attempted, end_inputs
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.uncertainty.tolerance import with_tolerance, with_workmanship

Factors = Mapping[str, Number]


@dataclass(frozen=True, eq=False)
class Followed:
    """Factors [-] and their 95 % half-widths, by name: `found` and `found_full` from as it came in, `sold` and `sold_full` from as
    it was sold, with the rider it is sold for; those of a setup that has no figures are missing, and a half-width where no draw
    has one.
    """

    factors: Mapping[str, float]
    halves: Mapping[str, float]


def followed(job: Job, axle: Axle, here: EndInputs, setup: Setup, own: bool) -> Followed:
    """How damping must follow from what was to a setup.

    Parameters: job; axle; here, the end; setup, scalars; own: its spring is the one that is in, whose rate each draw has.
    Returns: Followed.
    Raises: Impossible where the setup has no figures.
    Formula: see `calc.damping.wheel.follow` and `follow_at_full`; the +/- of a factor by draws that both setups share.
    Source: see there; JCGM 101:2008 (propagation of distributions).
    Example: see `tests/unit/uncertainty/test_damping_factors.py`.
    """
    nominal = factors(job, axle, here, evaluate(here.assembly, setup, here.loads, here.exponent))
    draws = with_tolerance(drawn(job))

    def asked(some: Job) -> Factors:
        there = end_inputs(some, axle)
        built = with_workmanship(some, setup)
        if own:
            built = replace(built, rate=there.as_found.rate, split=there.as_found.split)
        return factors(some, axle, there, evaluate(there.assembly, built, there.loads, there.exponent))

    good, left_out, whole = survivors(draws, draws.draws, asked)
    if left_out == draws.draws:
        return Followed({name: float(value) for name, value in nominal.items()}, {})
    samples = whole if whole is not None else asked(good)
    halves = {name: half_width(samples[name]) for name in nominal if name in samples}
    return Followed({name: float(value) for name, value in nominal.items()}, halves)


def factors(job: Job, axle: Axle, here: EndInputs, now: Figures) -> Factors:
    """The factors of one setup, drawn or not.

    Parameters: job; axle; here, the end; now, the setup's figures.
    Returns: factors [-] by name, see `Followed`.
    Raises: Impossible where the standard rider's loads cannot be.
    Formula: see `calc.damping.wheel`.
    Source: see there.
    Example: see `tests/unit/uncertainty/test_damping_factors.py`.
    """
    return factors_between(job, axle, here, attempted(here, here.as_found)[0], now)


def factors_between(job: Job, axle: Axle, here: EndInputs, was: Figures | None, now: Figures) -> Factors:
    """`factors` of an end whose figures as found are worked out already.

    Parameters: as `factors`; was, its figures as found, None where it has none.
    Returns: as `factors`. Raises: as `factors`. Formula: see `calc.damping.wheel`.
    Source: see there.
    Example: see `factors`.
    """
    told = _between("sold", here.standard, standard_loads(job, axle), now, here.loads)
    return told if was is None else _between("found", was, here.loads, now, here.loads) | told


def _between(name: str, was: Figures, load_was: Loads, now: Figures, load: Loads) -> dict[str, Number]:
    return {
        name: follow(now.wheel_rate, load.sprung_mass, was.wheel_rate, load_was.sprung_mass),
        f"{name}_full": follow_at_full(now.end_force, was.end_force),
    }
