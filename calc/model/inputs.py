"""One end of one job as its readings describe it, before anything is chosen: loads, yardstick, targets, what is fitted."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Number
from calc.end.air_setting import AirSetting
from calc.end.assembly import Assembly, ForkAssembly
from calc.end.figures import Figures, evaluate
from calc.end.loads import Loads
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.end.targets import Targets, Windows
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.air import AirLeg
from calc.model import (
    conditions,
    end_loads,
    fitted,
    fork,
    fork_as_sold,
    found_gaps,
    loaded_frequency,
    rated_load,
    sag_window,
    shock,
    standard_loads,
    standard_setup,
)
from calc.model.airleg import has_second, pumped_as_found
from calc.model.limits import AS_SOLD, standard_preload_known
from calc.model.origins import gaps_were_read, was_read
from calc.practice import Axle

END_SHORT = 0.98  # of the force wanted at full travel: what rounding the gap leaves is reached
# Of the force wanted at full travel: short of it, and beyond it, by which no bench opens a leg; a judgement, common practice, no
# source. Nobody knows the gap as sold: what is in is the best guess of it that there is.
OIL_STAYS, OIL_UNKNOWN = (0.04, 0.08), (np.inf, np.inf)


@dataclass(frozen=True, eq=False)
class EndInputs:
    """One end as its readings describe it, before anything is chosen: what is loaded, by how much, the setup it was sold with and
    what that does, what is wanted, what is in; what is set at its air springs, None where it has none.
    """

    assembly: Assembly
    loads: Loads
    exponent: Number
    standard_setup: Setup
    standard: Figures
    targets: Targets
    as_found: Setup
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
    if not standard_preload_known(job, axle):
        yardstick = _preloaded(as_sold, yardstick, standard_loads(job, axle), _sag_as_sold(job, axle))
    standard = _standard(job, axle, as_sold, yardstick, at.exponent)
    targets = targets_of(job, axle, standard, loads.aboard, rated_load(job, axle))
    as_found = found_setup(job, axle, assembly)
    return EndInputs(assembly, loads, at.exponent, yardstick, standard, targets, as_found, _air_setting(job, assembly, as_found))


def _standard(job: Job, axle: Axle, assembly: Assembly, yardstick: Setup, exponent: Number) -> Figures:
    try:
        return evaluate(assembly, yardstick, standard_loads(job, axle), exponent)
    except Impossible as error:
        path = "standard.gap" if axle == "front" else "standard.shock_rate"
        words = f"As sold, with the rider it is sold for: {error.message[0].lower()}{error.message[1:]}"
        way_out = "Check the setup as sold, and the readings of the leg."
        raise Impossible(error.code, words, way_out, error.field or path, error.where) from error


def _preloaded(assembly: Assembly, setup: Setup, loads: Loads, sag: float) -> Setup:
    """A setup with the preload that gives a rider sag [mm, in its own measure], none below 0."""
    if assembly.springs == 0:
        return setup
    travel = assembly.end(setup).motion.travel(sag) if isinstance(assembly, ForkAssembly) else sag
    return replace(setup, preload=np.maximum(preload_for_sag(assembly, setup, loads.aboard, travel), 0.0))


def _sag_as_sold(job: Job, axle: Axle) -> float:
    """The rider sag [mm] that the standard setup is taken to give the standard rider: the one wanted, but of the bike loaded as it
    is sold, whatever it carries today.
    """
    row = f"rider sag {axle}"
    now, sold = job.usual(row), replace(job.ranges, loaded=None).usual(row)
    if job.entered(f"{axle}.target_sag") or sold is None or sold == now:
        return wanted_sag(job, axle)
    return round(sold.typical / 100.0 * job.number(f"{axle}.travel"), job.fields[f"{axle}.target_sag"].field.decimals)


def _air_setting(job: Job, assembly: Assembly, as_found: Setup) -> AirSetting | None:
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
    return AirSetting(replace(as_found, gap_split=0.0), control, job.number("front.air_step"))


def targets_of(job: Job, axle: Axle, standard: Figures, load: Number, rated: Number) -> Targets:
    """What is wanted of an end.

    Parameters: job; axle; standard, what the standard rider has on the standard setup; load [N], rider aboard;
    rated [N], without what the bike is not sold to carry.
    Returns: Targets.
    Raises: Impossible where a target is missing or beyond the travel.
    Formula: the user's, else what the standard rider has on the standard setup, else practice (see `wanted_sag`).
    Source: common practice, no source.
    Example: see `end_inputs`.
    """
    sag = wanted_sag(job, axle)
    if sag >= job.number(f"{axle}.travel"):
        raise Impossible("sag", "The rider sag wanted is not below the travel.", "Enter a smaller sag.", f"{axle}.target_sag")
    kind, amount = ("none", 0.0) if axle == "rear" else _end_target(job, standard, load, rated)
    wish, free = (job.number(path) if job.known(path) else None for path in (f"{axle}.target_frequency", f"{axle}.target_free_sag"))
    least = _least_multiple(job, axle, standard.end_multiple * rated / load, amount / load if kind == "force" else 0.0)
    frequency = standard.frequency * loaded_frequency(job, axle)
    stays, within = _gap_stays(job) if axle == "front" else (None, OIL_STAYS)
    return Targets(sag, axle == "front", kind, amount, frequency, wish, free, _windows(job, axle, sag, least), stays, within)


def _gap_stays(job: Job) -> tuple[Number | None, tuple[float, float]]:
    """The gap that is in, where it was read and no end of travel of the user's own is asked for, and what it may miss."""
    if job.choice("front.end_target") != "standard" or not gaps_were_read(job):
        return None, OIL_STAYS
    left, right = found_gaps(job, conditions(job))
    return 0.5 * (left + right), OIL_STAYS if was_read(job, "standard.gap") else OIL_UNKNOWN


def _end_target(job: Job, standard: Figures, load: Number, rated: Number) -> tuple[str, Number]:
    """Which kind is asked for at full travel, and how much of it."""
    kind = job.choice("front.end_target")
    if kind == "standard":
        return "force", standard.end_multiple * rated
    path = f"front.end_{kind}"
    if not job.known(path):
        label = job.fields[path].field.label
        raise Impossible("target", f"{label} is not entered.", "Enter it, or choose another target.", path)
    return ("energy" if kind == "energy" else "force"), job.number(path) * (load if kind == "multiple" else 1.0)


def _least_multiple(job: Job, axle: Axle, standard: Number, wanted: Number) -> Number:
    """The least force at full travel over the load that is no fault: the standard's, the usual range's, or what is wanted."""
    if axle == "front" and job.choice("front.end_target") != "standard":
        return END_SHORT * wanted
    usual = job.usual(f"end multiple {axle}")
    assert usual is not None
    return np.minimum(standard, usual.low)


def _windows(job: Job, axle: Axle, sag: float, least: Number) -> Windows:
    """Between what each result is no fault."""
    off, usual = job.number(f"{axle}.sag_within") * job.number(f"{axle}.travel"), job.usual(f"ride frequency {axle}")
    assert usual is not None
    low, high = sag_window(job, axle, "free sag")
    # a window from 0 on means that topping out is usual
    return Windows((sag - off, sag + off), (low if low > 0 else -np.inf, high), least, (usual.low, usual.high))


def wanted_sag(job: Job, axle: Axle) -> float:
    """The rider sag wanted, a decision that is never drawn.

    Parameters: job; axle.
    Returns: sag [mm], in its own measure.
    Raises: Impossible as the standard setup.
    Formula: the user's; else what the standard rider has on the standard setup, where that was entered whole and the sag lies
    inside the usual window; else the practice value.
    Source: common practice, no source.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> wanted_sag(load(jobs()["enduro"]), "front")
        66.0
    """
    path = f"{axle}.target_sag"
    strut = "fork" if axle == "front" else "shock"
    rate = f"{axle}.rate" if job.choice(AS_SOLD[axle]) == "as sold" else f"standard.{strut}_rate"
    stated = [rate, f"standard.{strut}_preload", "standard.rider", *(["standard.gap"] if axle == "front" else [])]
    if job.entered(path) or not all(job.entered(each) for each in stated):
        return job.number(path)
    sag = _standard_sag(replace(job, samples={}), axle)
    low, high = sag_window(job, axle, "rider sag")
    return sag if low <= sag <= high else job.number(path)


def _standard_sag(job: Job, axle: Axle) -> float:
    """To the whole millimetre [mm]."""
    at = conditions(job)
    assembly: Assembly = fork(job, at) if axle == "front" else shock(job, at)
    as_sold = fork_as_sold(job, at, assembly) if isinstance(assembly, ForkAssembly) else assembly
    rider = _standard(job, axle, as_sold, standard_setup(job, axle), at.exponent).rider
    return float(np.round(rider.stroke if axle == "front" else rider.travel))


def found_setup(job: Job, axle: Axle, assembly: Assembly) -> Setup:
    """What is fitted now, each leg at its own gap.

    Parameters: job; axle; assembly, of that end.
    Returns: Setup: rate [N/mm], preload and gap [mm], half of what the gaps differ by [mm].
    Raises: Impossible as `calc.model.fitted.rate`, `calc.model.fitted.preload` and `found_gaps`.
    Formula: gap = (left + right) / 2; split = (right - left) / 2.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> float(found_setup(job, "front", fork(job, conditions(job))).gap)
        146.0
    """
    rate, preload = fitted.rate(job, axle), fitted.preload(job, axle)
    if not isinstance(assembly, ForkAssembly):
        return Setup(rate, preload, 0.0)
    if assembly.springs == 0:
        rate, preload = 0.0, 0.0
    left, right = found_gaps(job, conditions(job))
    middle, apart = 0.5 * (left + right), 0.5 * (right - left)
    return Setup(rate, preload, middle, fitted.split(job, axle), pumped_as_found(job), apart)


def found(here: EndInputs) -> tuple[Setup, Figures | None, Impossible | None]:
    """What is fitted now; a setup that cannot carry the rider or locks has no figures, only its reason.

    Parameters: here, the end.
    Returns: Setup; Figures or None; Impossible or None.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `attempted`.
    """
    return here.as_found, *attempted(here, here.as_found)


def attempted(here: EndInputs, setup: Setup) -> tuple[Figures | None, Impossible | None]:
    """The figures of a setup, or why it has none.

    Parameters: here, the end; setup.
    Returns: Figures or None; Impossible or None.
    Raises: nothing.
    Formula: see `calc.end.figures.evaluate`.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> here = end_inputs(load(jobs()["enduro"]), "front")
        >>> round(float(attempted(here, here.as_found)[0].rider.stroke))
        69
    """
    try:
        return evaluate(here.assembly, setup, here.loads, here.exponent), None
    except Impossible as problem:
        return None, problem
