"""The springs or pressures on offer: what each does, what it is judged by, and what is said where none can be built."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

import numpy as np

from calc.array import Number
from calc.end.assembly import ForkAssembly
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job, Problem
from calc.model.origins import gaps_were_read
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.quantity import quantity
from calc.report.reasons import Numbers, criterion, reason
from calc.report.setups import Cases, setup_report
from calc.report.springs import oil_of
from calc.report.types import Candidate, Legs, Quantity, SetupReport, values
from calc.report.words import named
from calc.sizing.choice import EndSizing
from calc.sizing.coil import Sized

NEAR = 3  # springs shown either way of the choice


def candidate(job: Job, done: EndSizing, cases: Cases, index: int, chosen: int) -> Candidate:
    """One candidate: what is built, what it does, what it is judged by, how it stands to the choice."""
    setup, shown = done.sized.setup.at(index), candidate_setup(done, cases, index)
    numbers = _numbers(done, setup, shown, index)
    wanted = float(np.asarray(done.inputs.targets.sag))
    barred = [name for name, flag in done.sized.hard.items() if flag[index]]
    if done.decision.idle[index]:
        barred += [name for name in ("preload below", "preload above") if done.sized.short[name][index]]
    return Candidate(
        **values(shown),
        vetoes=tuple(reason(name, numbers) for name in barred),
        short=tuple(reason(name, numbers) for name, flag in done.sized.short.items() if flag[index] and name not in barred),
        criteria=tuple(criterion(name, one, index, wanted) for name, one in done.decision.criteria.items()),
        key=float(f"{done.decision.key[index]:.6g}"),
        relation=_relation(index - chosen) if chosen >= 0 else "other",
        fitted=index == done.fitted,
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
        return None if room is None else float(np.broadcast_to(room, np.shape(sized.setup.stepped))[index])

    return at(sized.room.main), at(sized.room.second)


def _numbers(done: EndSizing, setup: Setup, shown: SetupReport, index: int) -> Numbers:
    """What the words of a reason may name, in the units that they name."""
    limits, targets, exact = done.limits, done.inputs.targets, done.sized.exact
    (low, high), (bind, second) = limits.preload, _room(done.sized, index)
    numbers: Numbers = {
        "preload": float(setup.preload), "preload_min": low, "preload_max": high, "gap": float(setup.gap),
        "gap_exact": float(np.ravel(np.broadcast_to(exact.gap, np.shape(done.sized.setup.stepped)))[index]),
        "rider_sag": shown.rider_sag.value, "wanted": float(np.asarray(targets.sag)), "oil_in": limits.oil / 1000.0,
        "bind": bind, "second_bind": second, "second_short": None if second is None else -second, "bind_margin": limits.bind_margin,
        "end": shown.end_multiple.value, "end_wanted": _multiple_wanted(done),
        "energy": shown.landing_energy.value, "energy_wanted": _energy_wanted(done),
        "pressure": shown.pressure.value if shown.pressure else None,
        "pressure_max": None if limits.pressure is None else convert(limits.pressure, "MPa", "bar"),
        "oil_out": None if shown.air_oil is None else -shown.air_oil.value,
    }  # fmt: skip
    fit = limits.fit
    sizes = {} if fit is None else {"outside": fit.widest, "bore": fit.bore, "inside": fit.inside, "core": fit.core}
    return numbers | {name: None if size is None else float(np.asarray(size)) for name, size in sizes.items()}


def _multiple_wanted(done: EndSizing) -> float | None:
    """Force at full travel wanted, over the rider load; None where it is not asked for as a force."""
    targets = done.inputs.targets
    return float(np.asarray(targets.end_amount / done.inputs.loads.aboard)) if targets.end_kind == "force" else None


def _energy_wanted(done: EndSizing) -> float | None:
    """Landing energy wanted [J]; None where it is not asked for."""
    targets = done.inputs.targets
    return float(np.asarray(targets.end_amount)) / 1000.0 if targets.end_kind == "energy" else None


def _other_gap(job: Job, done: EndSizing, setup: Setup) -> Quantity | None:
    if not isinstance(done.inputs.assembly, ForkAssembly):
        return None
    case = f"read with spring and spacer {'out' if job.choice('front.gap_read') == 'in' else 'in'}"
    try:
        return quantity(done.inputs.assembly.gas.other_gap(setup.rate, setup.gap), "mm", case, 0)
    except Impossible:
        return None


def _oil(job: Job, done: EndSizing, setup: Setup) -> Legs | None:
    """Oil for each leg; None where no leg is opened for it, or nobody read the gap that it starts from."""
    fork, air = done.inputs.assembly, done.inputs.air
    if not isinstance(fork, ForkAssembly) or (air is not None and air.control != "gap") or not gaps_were_read(job):
        return None
    return oil_of(job, fork, setup)


def shown(done: EndSizing, chosen: int) -> list[int]:
    """What is in, first; then the choice and what stands near it, soft to stiff."""
    count, middle = np.size(done.sized.setup.stepped), chosen if chosen >= 0 else int(np.argmin(done.decision.key))
    near = [i for i in range(count) if abs(i - middle) <= NEAR and i != done.fitted]
    return near if done.fitted is None else [done.fitted, *near]


def nothing_fits(candidates: Sequence[Candidate], axle: Axle) -> Problem:
    """That nothing on offer can be built, what stops the nearest one, and the way out."""
    nearest = min(candidates, key=lambda c: c.key)
    if nearest.pressure and nearest.vetoes[0].code == "no pressure":
        words = nearest.vetoes[0].words
        return Problem(
            "front.air_pressure", "air-spring", f"{words[0].upper()}{words[1:]}.", way_out=nearest.vetoes[0].way_out, end=axle
        )
    words = "; ".join(veto.words for veto in nearest.vetoes)
    way_out = " ".join(dict.fromkeys(veto.way_out for veto in nearest.vetoes))
    message = f"Nothing on offer can be built. The nearest, {named(nearest)}, {words}."
    return Problem(f"{axle}.buy", "nothing-fits", message, way_out=way_out, end=axle)
