"""What each option does on this bike: its setup at either end in the present model, and all of them on the same draws."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.conditions.in_state import State, behind_oil
from calc.conditions.states import assembly_in
from calc.end.assembly import Assembly, ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.gas.chamber import ISOTHERMAL
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
    """An option at one end; `stays`: nothing is done there, so it is as found; `cartridge`, in which state a sealed one is left,
    empty for as it is. Figures, or the problem why there are none.
    """

    number: int
    stays: bool
    setup: Setup
    figures: Figures | None
    problem: Impossible | None
    assembly: Assembly
    cartridge: str = ""


Entered = tuple[Mapping[str, Resolved], str]


def options_at(job: Job, axle: Axle, done: EndSizing, setups: Sequence[Entered]) -> tuple[OptionAt, ...]:
    """Every option at one end, in the model of the bike as it is.

    Parameters: job; axle; done, its nominal sizing; setups, of each option the entries at this end, by key, and in which state it
    leaves a sealed cartridge, empty for as it is.
    Returns: OptionAt of each.
    Raises: nothing.
    Formula: as what was built, see `calc.sizing.attempts.built`.
    Source: none.
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    return tuple(_at(job, axle, done, number, *entered) for number, entered in enumerate(setups, 1))


def _at(job: Job, axle: Axle, done: EndSizing, number: int, entries: Mapping[str, Resolved], cartridge: str) -> OptionAt:
    if not entries and not cartridge:
        return as_found(done, number)
    nothing = OptionAt(number, False, done.found_setup, None, None, done.inputs.assembly, cartridge)
    if cartridge and job.choice("front.air") != "sealed cartridge":
        return replace(nothing, problem=_does_not_apply(f"{axle}.cartridge_state"))
    try:
        here = _in_cartridge(job, done.inputs, cartridge)
    except Impossible as error:
        return replace(nothing, problem=error)
    answer = done.sized.setup.at(done.choice) if done.choice >= 0 else None
    attempt = built(_as_if_built(job, axle, entries), axle, replace(done, inputs=here), answer)
    if attempt is None:
        return replace(nothing, problem=_not_set(axle, entries))
    setup, figures, problem = attempt
    return OptionAt(number, False, setup, figures, problem, here.assembly, cartridge)


def as_found(done: EndSizing, number: int = 0) -> OptionAt:
    """The end as it came in, as an option.

    Parameters: done, its nominal sizing; number of the option [-], 0 for none.
    Returns: OptionAt.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    return OptionAt(number, True, done.found_setup, done.found, done.found_problem, done.inputs.assembly)


def _not_set(axle: Axle, entries: Mapping[str, Resolved]) -> Impossible:
    if entries:
        return _does_not_apply(f"{axle}.{BUILT}{next(iter(entries))}")
    return Impossible("missing", "Only the cartridge is said.", "Enter what the fork is set to then: springs, preload, gaps.")


def _does_not_apply(path: str) -> Impossible:
    return Impossible("missing", f"{FIELDS[path].label} does not apply here.", "Enter what this kind of fork or shock is set by.")


def _in_cartridge(job: Job, here: EndInputs, cartridge: str) -> EndInputs:
    """The end with its cartridge in the state in which an option leaves it."""
    if not cartridge or job.choice("front.cartridge_state") == cartridge:
        return here
    how: State = "as built" if cartridge == "as built" else "opened into one"
    return replace(here, assembly=assembly_in(job, how))


def _as_if_built(job: Job, axle: Axle, entries: Mapping[str, Resolved]) -> Job:
    """The job with an option's entries, and no others, in the fields of what was built."""
    fields = dict(job.fields)
    for key in SETUP_KEYS[axle]:
        path = f"{axle}.{BUILT}{key}"
        blank = Resolved(FIELDS[path], True)
        fields[path] = replace(entries.get(key, blank), applies=job.fields[path].applies)
    return replace(job, fields=fields)


def results(job: Job, assembly: Assembly, done: Figures) -> dict[str, Number]:
    """The figures by which options are told apart.

    Parameters: job; assembly; done, the figures of a setup in it.
    Returns: by name: sags [mm], frequency [Hz], force at full travel [N] and over the rider load [-], the gas's share of it [-]; of
    a fork whose cartridge is, or was, a sealed one the pressure behind its damper's oil at rider sag, settled [MPa, gauge].
    Raises: nothing.
    Formula: gas share = the gas's part of the force at full travel over that force; see `calc.conditions.in_state.behind_oil`.
    Source: the cases of each in DEVELOPERS.md, Conventions.
    Example: see `tests/unit/options/test_option_setups.py`.
    """
    end, fork = done.end, isinstance(assembly, ForkAssembly)
    told: dict[str, Number] = {
        "free_sag": done.free.stroke if fork else done.free.travel,
        "rider_sag": done.rider.stroke if fork else done.rider.travel,
        "frequency": done.frequency,
        "end_force": done.end_force,
        "end_multiple": done.end_multiple,
        "gas_share": end.gas_wheel_force(end.travel, done.process) / done.end_force,
    }
    if isinstance(assembly, ForkAssembly) and job.choice("front.air") == "sealed cartridge":
        told["behind"] = behind_oil(assembly, done, done.rider.stroke, ISOTHERMAL)
    return told


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
        found = {} if done.found is None else {0: _results(some, here, here.as_found)}
        others = {one.number: (_in_cartridge(some, here, one.cartridge), _as_made(some, here, done, one.setup)) for one in able}
        return found | {number: _results(some, *made) for number, made in others.items()}

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


def _results(job: Job, here: EndInputs, setup: Setup) -> dict[str, Number]:
    done = evaluate(here.assembly, setup, here.loads, here.exponent)
    return results(job, here.assembly, done)


def _as_made(draws: Job, here: EndInputs, done: EndSizing, setup: Setup) -> Setup:
    """A setup as the bench may build it."""
    made = replace(with_workmanship(draws, setup), gap_split=setup.gap_split)
    same = abs(float(setup.rate) - float(done.found_setup.rate)) < _SAME_RATE
    return replace(made, rate=here.as_found.rate, split=here.as_found.split) if setup.air is None and same else made
