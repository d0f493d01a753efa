"""The springs or pressures on offer: what each does, what bars it, and what is said where all are barred."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

import numpy as np

from calc.array import Number
from calc.end.assembly import ForkAssembly
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job, Problem
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.quantity import quantity
from calc.report.reasons import EndWanted, reason
from calc.report.setups import Cases, setup_report
from calc.report.springs import oil_of
from calc.report.types import Candidate, Legs, Quantity, SetupReport, values
from calc.report.words import named
from calc.sizing.choice import EndSizing
from calc.sizing.coil import Sized

_OF_THE_END = {"end unreachable", "gap below", "gap above", "oil out"}  # what bars for the end of the travel alone
NEAR = 3  # springs shown either way of the choice


def candidate(job: Job, done: EndSizing, cases: Cases, index: int, chosen: int) -> Candidate:
    """One candidate: what is built, what it does, what bars it, how it stands to the choice."""
    setup, shown = done.sized.setup.at(index), candidate_setup(done, cases, index)
    bind, second = _room(done.sized, index)
    numbers = _limit_numbers(done, setup, shown) | _fit_numbers(done, setup) | {"bind": bind, "second_bind": second}
    numbers["second_short"] = None if second is None else -second
    air = done.inputs.air
    control, wanted = "gap" if air is None else air.control, _end_wanted(job, done, shown)
    return Candidate(
        **values(shown),
        vetoes=tuple(reason(name, numbers, control, wanted) for name, veto in done.sized.vetoes.items() if veto[index]),
        key=float(f"{done.sized.key[index]:.6g}"),
        relation=_relation(index - chosen) if chosen >= 0 else "other",
        fitted=math.isclose(float(setup.stepped), float(done.found_setup.stepped), rel_tol=1e-6),
        gap_other=_other_gap(job, done, setup) if index == chosen else None,
        oil=_oil(job, done, setup),
    )


def _relation(steps: int) -> Literal["chosen", "one step softer", "one step stiffer", "other"]:
    if steps == 0:
        return "chosen"
    return "other" if abs(steps) > 1 else "one step softer" if steps < 0 else "one step stiffer"


def candidate_setup(done: EndSizing, cases: Cases, index: int) -> SetupReport:
    """What a candidate is built to and what it does."""
    return setup_report(done.sized.setup.at(index), done.sized.figures.at(index), cases, *_room(done.sized, index))


def _room(sized: Sized, index: int) -> tuple[float | None, float | None]:
    """One candidate's room in the main and the second spring; a coil beside an air spring has the same at every pressure."""

    def at(room: Number | None) -> float | None:
        return None if room is None else float(np.broadcast_to(room, np.shape(sized.key))[index])

    return at(sized.room.main), at(sized.room.second)


def _limit_numbers(done: EndSizing, setup: Setup, shown: SetupReport) -> dict[str, float | None]:
    """What the words of a veto may name, in the units that they name."""
    low, high = done.limits.preload
    gap = done.limits.gap or (None, None)
    free = done.limits.free_sag or (None, None)
    numbers: dict[str, float | None] = {
        "preload": float(setup.preload), "preload_min": low, "preload_max": high, "gap": float(setup.gap), "gap_min": gap[0],
        "gap_max": gap[1], "free_sag": shown.free_sag.value,
        "rider_sag": shown.rider_sag.value, "free_low": free[0], "free_high": free[1],
        "bind_margin": done.limits.bind_margin, "wanted": float(done.inputs.targets.sag), "oil_in": done.limits.oil / 1000.0,
    }  # fmt: skip
    most = done.limits.pressure
    numbers["pressure_max"] = None if most is None else convert(most, "MPa", "bar")
    numbers["oil_out"] = None if shown.air_oil is None else -shown.air_oil.value
    numbers["pressure"] = None if shown.pressure is None else shown.pressure.value
    return numbers


def _end_wanted(job: Job, done: EndSizing, shown: SetupReport) -> EndWanted | None:
    """In the measure that the target is asked in; None at the rear, which has none."""
    targets = done.inputs.targets
    if targets.end_kind == "none":
        return None
    wanted, load = float(targets.end_amount), float(done.inputs.loads.aboard)
    if targets.end_kind == "energy":
        return EndWanted(" J", 0, convert(wanted, "N mm", "J"), shown.landing_energy.value)
    if job.choice("front.end_target") == "force":
        return EndWanted(" kN", 2, wanted / 1000.0, shown.end_force.value)
    return EndWanted(" × load", 1, wanted / load, shown.end_multiple.value)


def _fit_numbers(done: EndSizing, setup: Setup) -> dict[str, float | None]:
    fit = done.limits.fit
    assert fit is not None
    move = fit.move(setup.rate, setup.preload)
    sizes = {"outside": fit.widest, "bore": fit.bore, "inside": fit.inside, "core": fit.core, "thread": fit.thread}
    sizes |= {"spacers": fit.spacers, "further": move, "shorter": -np.asarray(move)}
    return {name: None if size is None else float(np.asarray(size)) for name, size in sizes.items()}


def _other_gap(job: Job, done: EndSizing, setup: Setup) -> Quantity | None:
    if not isinstance(done.inputs.assembly, ForkAssembly):
        return None
    case = f"read with spring and spacer {'out' if job.choice('front.gap_read') == 'in' else 'in'}"
    try:
        return quantity(done.inputs.assembly.gas.other_gap(setup.rate, setup.gap), "mm", case, 0)
    except Impossible:
        return None


def _oil(job: Job, done: EndSizing, setup: Setup) -> Legs | None:
    """Oil for each leg; None where no leg is opened for it."""
    fork, air = done.inputs.assembly, done.inputs.air
    if not isinstance(fork, ForkAssembly) or (air is not None and air.control != "gap"):
        return None
    return oil_of(job, fork, setup)


def shown(done: EndSizing, chosen: int) -> list[int]:
    """The choice, what stands near it, and the fitted spring; where none is chosen, what the fewest vetoes bar."""
    stepped = np.asarray(done.sized.setup.stepped)
    leave = np.isclose(stepped, float(done.found_setup.stepped), rtol=1e-6)
    if chosen >= 0:
        return [i for i in range(np.size(stepped)) if abs(i - chosen) <= NEAR or leave[i]]
    barred = np.sum(list(done.sized.vetoes.values()), axis=0)
    best = np.lexsort((done.sized.key, barred))[: 2 * NEAR + 1]
    return [i for i in range(np.size(stepped)) if i in best or leave[i]]


def nothing_fits(job: Job, candidates: Sequence[Candidate], axle: Axle) -> Problem:
    """That all are barred, the nearest one's bars, and the way out of each; at the field that the nearest one misses."""
    first = candidates[0].vetoes[0]
    if first.code == "no pressure":
        return Problem("front.air_pressure", "air-spring", f"{first.words}.", way_out=first.way_out, end=axle)
    nearest = min(candidates, key=lambda c: (len(c.vetoes), c.key))
    words = "; ".join(veto.words for veto in nearest.vetoes)
    way_out = " ".join(dict.fromkeys(veto.way_out for veto in nearest.vetoes))
    what = "pressure" if nearest.pressure else "spring on offer"
    path = f"{axle}.target_sag" if {veto.code for veto in nearest.vetoes} - _OF_THE_END else _end_path(job)
    message = f"No {what} meets the targets. Nearest is {named(nearest)}: {words}."
    return Problem(path, "nothing-fits", message, way_out=way_out, end=axle)


def _end_path(job: Job) -> str:
    """Where the end-of-travel target is asked for."""
    kind = job.choice("front.end_target")
    return "front.end_target" if kind == "standard" else f"front.end_{kind}"
