"""What each option does on this bike: its setup at either end in the present model, and all of them on the same draws."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job, Resolved
from calc.job.fields import FIELDS
from calc.job.offer_shape import BUILT, SETUP_KEYS
from calc.model.draws import drawn, half_width
from calc.model.inputs import EndInputs, end_inputs
from calc.model.survivors import survivors
from calc.practice import Axle
from calc.sizing.attempts import built
from calc.sizing.choice import EndSizing
from calc.uncertainty.tolerance import with_tolerance, with_workmanship

_SAME_RATE = 1e-9  # N/mm: the spring that is in stays in


@dataclass(frozen=True, eq=False)
class OptionAt:
    """An option at one end; `stays`: nothing is done there, so it is as found. Figures, or the problem why there are none."""

    number: int
    stays: bool
    setup: Setup
    figures: Figures | None
    problem: Impossible | None


def options_at(job: Job, axle: Axle, done: EndSizing, setups: Sequence[Mapping[str, Resolved]]) -> tuple[OptionAt, ...]:
    """Every option at one end, in the model of the bike as it is.

    Parameters: job; axle; done, its nominal sizing; setups, the entries of each option at this end, by key.
    Returns: OptionAt of each.
    Raises: nothing.
    Formula: as what was built, see `calc.sizing.attempts.built`.
    Source: none.
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    return tuple(_at(job, axle, done, number, entries) for number, entries in enumerate(setups, 1))


def _at(job: Job, axle: Axle, done: EndSizing, number: int, entries: Mapping[str, Resolved]) -> OptionAt:
    if not entries:
        return OptionAt(number, True, done.found_setup, done.found, done.found_problem)
    answer = done.sized.setup.at(done.choice) if done.choice >= 0 else None
    attempt = built(_as_if_built(job, axle, entries), axle, done, answer)
    if attempt is None:
        label = FIELDS[f"{axle}.{BUILT}{next(iter(entries))}"].label
        nothing = Impossible("missing", f"{label} does not apply here.", "Enter what this kind of fork or shock is set by.")
        return OptionAt(number, False, done.found_setup, None, nothing)
    setup, figures, problem = attempt
    return OptionAt(number, False, setup, figures, problem)


def _as_if_built(job: Job, axle: Axle, entries: Mapping[str, Resolved]) -> Job:
    """The job with an option's entries, and no others, in the fields of what was built."""
    fields = dict(job.fields)
    for key in SETUP_KEYS[axle]:
        path = f"{axle}.{BUILT}{key}"
        blank = Resolved(FIELDS[path], True)
        fields[path] = replace(entries.get(key, blank), applies=job.fields[path].applies)
    return replace(job, fields=fields)


def results(done: Figures, along: bool) -> dict[str, Number]:
    """The figures by which options are told apart.

    Parameters: done; along, whether sags are along the leg.
    Returns: by name: sags [mm], frequency [Hz], force at full travel [N] and over the rider load [-], the gas's share of it [-].
    Raises: nothing.
    Formula: gas share = the gas's part of the force at full travel over that force.
    Source: the cases of each in DEVELOPERS.md, Conventions.
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    end = done.end
    return {
        "free_sag": done.free.stroke if along else done.free.travel,
        "rider_sag": done.rider.stroke if along else done.rider.travel,
        "frequency": done.frequency,
        "end_force": done.end_force,
        "end_multiple": done.end_multiple,
        "gas_share": end.gas_wheel_force(end.travel, done.process) / done.end_force,
    }


@dataclass(frozen=True, eq=False)
class OptionBands:
    """95 % half-widths by option's number (0 as found), then by the name of the result; `between`, of what two differ by."""

    own: Mapping[int, Mapping[str, float]]
    between: Mapping[tuple[int, int], Mapping[str, float]]


def option_bands(job: Job, axle: Axle, done: EndSizing, options: Sequence[OptionAt]) -> OptionBands | None:
    """The +/- of what each option does, and of what it changes against as found and against every option before it.

    Parameters: job; axle; done, its nominal sizing; options at that end.
    Returns: OptionBands; None where no draw can be built every way.
    Raises: nothing.
    Formula: quantiles of Latin-hypercube draws; differences are taken draw by draw, every option built with the same care: readings
    and the bench's tolerance are shared, and the spring that is in keeps the rate that each draw gives it.
    Source: JCGM 101:2008 (propagation of distributions).
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    able = [one for one in options if one.figures is not None and not one.stays]
    draws = with_tolerance(drawn(job))

    def work(some: Job) -> dict[int, dict[str, Number]]:
        here = end_inputs(some, axle)
        found = {} if done.found is None else {0: _results(here, here.as_found, axle)}
        return found | {one.number: _results(here, _as_made(some, here, done, one.setup), axle) for one in able}

    good, left_out, together = survivors(draws, draws.draws, work)
    if left_out == draws.draws:
        return None
    drawn_results = together or work(good)
    if 0 in drawn_results:
        drawn_results |= {one.number: drawn_results[0] for one in options if one.stays}
    numbers = sorted(drawn_results)
    between = {
        (one, other): {
            name: half_width(_apart(drawn_results[other][name], drawn_results[one][name])) for name in drawn_results[one]
        }
        for index, one in enumerate(numbers)
        for other in numbers[index + 1 :]
    }
    own = {number: {name: half_width(values) for name, values in found.items()} for number, found in drawn_results.items()}
    return OptionBands(own, between)


def _apart(one: Number, other: Number) -> Array:
    difference: Array = np.asarray(one) - np.asarray(other)
    return difference


def _results(here: EndInputs, setup: Setup, axle: Axle) -> dict[str, Number]:
    return results(evaluate(here.assembly, setup, here.loads, here.exponent), axle == "front")


def _as_made(draws: Job, here: EndInputs, done: EndSizing, setup: Setup) -> Setup:
    """A setup as the bench may build it."""
    made = replace(with_workmanship(draws, setup), gap_split=setup.gap_split)
    same = abs(float(setup.rate) - float(done.found_setup.rate)) < _SAME_RATE
    return replace(made, rate=here.as_found.rate, split=here.as_found.split) if setup.air is None and same else made
