"""One end of one job as its readings describe it, before anything is chosen: loads, yardstick, targets, what is fitted."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calc.array import Number
from calc.end.air_setting import AirSetting
from calc.end.assembly import Assembly, ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.setup import Setup
from calc.end.targets import Targets
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import AirLeg
from calc.model import conditions, end_loads, fitted, fork, fork_as_sold, found_gaps, shock, standard_setup
from calc.model.airleg import has_second, pumped_as_found
from calc.practice import Axle


@dataclass(frozen=True, eq=False)
class EndInputs:
    """One end as its readings describe it, before anything is chosen: what is loaded, by how much, against what yardstick; what
    is set at its air springs, None where it has none.
    """

    assembly: Assembly
    loads: Loads
    exponent: Number
    standard_setup: Setup
    standard: Figures
    targets: Targets
    air: AirSetting | None = None


def end_inputs(job: Job, axle: Axle) -> EndInputs:
    """Read one end of a job, drawn or not.

    Parameters: job; axle, "front" or "rear".
    Returns: EndInputs.
    Raises: Impossible naming the cause and the way out.
    Formula: see `calc.model` and `calc.end.setup`.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(end_inputs(load(jobs()["enduro"]), "front").loads.aboard), 1)
        786.5
    """
    at = conditions(job)
    assembly: Assembly = fork(job, at) if axle == "front" else shock(job, at)
    as_sold = fork_as_sold(job, at, assembly) if isinstance(assembly, ForkAssembly) else assembly
    loads, yardstick = end_loads(job, axle), standard_setup(job, axle)
    standard = _standard(job, axle, as_sold, yardstick, at.exponent)
    targets = targets_of(job, axle, standard, loads.aboard)
    return EndInputs(assembly, loads, at.exponent, yardstick, standard, targets, _air_setting(job, assembly))


def _standard(job: Job, axle: Axle, assembly: Assembly, yardstick: Setup, exponent: Number) -> Figures:
    try:
        return evaluate(assembly, yardstick, end_loads(job, axle, job.value("standard.rider")), exponent)
    except Impossible as error:
        path = "standard.gap" if axle == "front" else "standard.shock_rate"
        words = f"As sold, with the rider it is sold for: {error.message[0].lower()}{error.message[1:]}"
        raise Impossible(error.code, words, "Check the setup as sold, and the readings of the leg.", error.field or path) from error


def _air_setting(job: Job, assembly: Assembly) -> AirSetting | None:
    """What is set at an air spring; None where there is none."""
    if not isinstance(assembly, ForkAssembly) or not isinstance(assembly.gas, AirLeg):
        return None
    control = job.choice("front.air_end")
    if control == "second" and not has_second(job):
        raise Impossible(
            "control",
            "There is no second volume to set the end of the travel by.",
            "Choose another way, or enter it.",
            "front.air_end",
        )
    return AirSetting(replace(found_setup(job, "front", assembly), gap_split=0.0), control, job.number("front.air_step"))


def targets_of(job: Job, axle: Axle, standard: Figures, load: Number) -> Targets:
    """What is wanted of an end under a load [N], rider aboard."""
    sag = job.number(f"{axle}.target_sag")
    if sag >= job.number(f"{axle}.travel"):
        raise Impossible("sag", "The rider sag wanted is not below the travel.", "Enter a smaller sag.", f"{axle}.target_sag")
    if axle == "rear":
        return Targets(sag, False, "none", 0.0, free_sag=job.number("rear.target_free_sag"))
    kind = job.choice("front.end_target")
    if kind == "standard":
        return Targets(sag, True, "force", standard.end_multiple * load, frequency=standard.frequency)
    path = f"front.end_{kind}"
    if not job.known(path):
        label = job.fields[path].field.label
        raise Impossible("target", f"{label} is not entered.", "Enter it, or choose another target.", path)
    amount = job.number(path) * (load if kind == "multiple" else 1.0)
    return Targets(sag, True, "energy" if kind == "energy" else "force", amount, frequency=standard.frequency)


def found_setup(job: Job, axle: Axle, assembly: Assembly) -> Setup:
    """What is fitted now, each leg at its own gap."""
    rate, preload = fitted.rate(job, axle), fitted.preload(job, axle)
    if not isinstance(assembly, ForkAssembly):
        return Setup(rate, preload, 0.0)
    if assembly.springs == 0:
        rate, preload = 0.0, 0.0
    left, right = found_gaps(job, conditions(job))
    middle, apart = 0.5 * (left + right), 0.5 * (right - left)
    return Setup(rate, preload, middle, fitted.split(job, axle), pumped_as_found(job), apart)


def found(job: Job, axle: Axle, here: EndInputs) -> tuple[Setup, Figures | None, Impossible | None]:
    """What is fitted now; a setup that cannot carry the rider or locks has no figures, only its reason."""
    setup = found_setup(job, axle, here.assembly)
    return setup, *attempted(here, setup)


def attempted(here: EndInputs, setup: Setup) -> tuple[Figures | None, Impossible | None]:
    """The figures of a setup, or why it has none."""
    try:
        return evaluate(here.assembly, setup, here.loads, here.exponent), None
    except Impossible as problem:
        return None, problem
