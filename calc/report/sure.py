"""How sure: the bands put beside the results, the count of draws, and what to measure next."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

import numpy as np

from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible, decimals_apart
from calc.job import Job
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.asking import asked
from calc.report.names import spring_names
from calc.report.quantity import banded_text, decimals_worth, half_text, with_half
from calc.report.setups import Cases
from calc.report.types import (
    Candidate,
    Counted,
    EndLoads,
    EndOk,
    HowSure,
    Legs,
    Moved,
    NextReading,
    Quantity,
    SetupReport,
)
from calc.report.words import Name, count_words, open_words, pressure_words, sag_choice_words, step_text
from calc.sizing.choice import SAG_OFF, EndSizing, other_sags
from calc.sizing.rule import WITHIN
from calc.uncertainty.bands import Bands
from calc.uncertainty.causes import Cause
from calc.uncertainty.tolerance import BUILT_RATE

AnySetup = TypeVar("AnySetup", bound=SetupReport)

CERTAIN = 0.9  # of the draws: from there on no reading is asked for the choice's sake
FAR_APART = 1.5  # first order against draws
NEXT = 3  # readings to ask for
# Results that a reading is asked for, in order: name, words, unit, decimals.
_ASKED_FOR = (
    ("rate", "spring rate", "N/mm", 1),
    ("preload", "preload", "mm", 0),
    ("pressure", "pressure", "bar", 1),
    ("gap", "gap", "mm", 0),
    ("oil", "oil in the chamber", "ml", 0),
    ("second", "second volume's pressure", "bar", 1),
    ("rider", "rider sag", "mm", 0),
    ("free", "free sag", "mm", 0),
    ("end_multiple", "force at full travel", "× rider load", 1),
)
_UNASKABLE = {"place.exponent"}  # no reading on a bench narrows it


def with_bands(job: Job, axle: Axle, end: EndOk, done: EndSizing, sure: Bands) -> EndOk:
    """The report of an end, of the candidate that the bands are of, with +/- on its results."""
    along = "stroke" if axle == "front" else "travel"
    chosen = _set_to(_filled(end.chosen, sure.figures, along), sure)
    found = end.as_found
    if found.setup is not None and sure.found:
        found = replace(found, setup=_filled(found.setup, sure.found, along))
    return replace(
        _beside(end, sure),
        chosen=chosen,
        candidates=tuple(chosen if c.relation == "chosen" else c for c in end.candidates),
        as_found=found,
        load=EndLoads(*(with_half(getattr(end.load, name), sure.figures[name]) for name in ("alone", "aboard", "sprung_mass"))),
        moved=_moved(end.moved, sure.found),
        why=(*end.why, *_landing(chosen), *_sag_choice(job, axle, end, done)),
        sure=_counted(job, axle, sure, chosen, done),
        measure_next=_measure_next(job, sure, along),
    )


def _landing(chosen: Candidate) -> list[str]:
    """The flat drop that springs and gas take, where it is known to more than its +/-."""
    if chosen.flat_drop.value <= (chosen.flat_drop.plus_minus_95 or 0.0):
        return []
    return [f"Springs and gas alone take a flat drop of {banded_text(chosen.flat_drop)} cm. Damping, tyres and legs make it more."]


def _sag_choice(job: Job, axle: Axle, end: EndOk, done: EndSizing) -> list[str]:
    """What a little less or more rider sag would choose, where a spring is told."""
    if end.chosen.pressure or end.verdict not in ("keep", "fit"):
        return []
    try:
        less, more = other_sags(done)
    except Impossible:
        return []
    if not (math.isfinite(less) and math.isfinite(more)):
        return []
    rates = np.atleast_1d(done.sized.setup.rate)
    return [sag_choice_words(less, more, float(rates[done.choice]), SAG_OFF, spring_names(job, axle, done))]


def _set_to(chosen: Candidate, sure: Bands) -> Candidate:
    """What is set, with the +/- that it has solved again with the spring held."""

    def half(figure: Quantity | None, name: str, factor: float = 1.0) -> Quantity | None:  # from internal units to those shown
        return with_half(figure, sure.setup[name] * factor) if figure is not None and name in sure.setup else figure

    oil = chosen.oil and Legs(*(_ordered(getattr(chosen.oil, leg), sure.oil[leg] / 1000.0) for leg in ("left", "right")))
    return replace(
        chosen,
        rate=chosen.rate if chosen.pressure else with_half(chosen.rate, BUILT_RATE * chosen.rate.value),
        preload=half(chosen.preload, "preload") or chosen.preload,
        gap=half(chosen.gap, "gap"),
        pressure=half(chosen.pressure, "pressure", 10.0),
        air_oil=half(chosen.air_oil, "oil", 1e-3),
        second_pressure=half(chosen.second_pressure, "second", 10.0),
        oil=oil,
    )


def _ordered(oil: Quantity, half: float) -> Quantity:
    """Oil to pour in or take out with its +/-; a leg that is left as it is has none."""
    return with_half(oil, half) if oil.value else oil


def _moved(moved: Moved | None, halves: Mapping[str, float]) -> Moved | None:
    if moved is None or not halves:
        return moved
    return Moved(with_half(moved.height, halves["rise_travel"]), with_half(moved.along, halves["rise_stroke"]))


def _beside(end: EndOk, sure: Bands) -> EndOk:
    """Brake dive and the shock's motion with their +/-."""
    if end.motion is not None:
        average = with_half(end.motion.average, sure.figures["leverage"])
        fall = with_half(end.motion.fall, 100.0 * sure.figures["leverage_fall"])
        return replace(end, motion=replace(end.motion, average=average, fall=fall))
    if end.braking is not None and end.braking.problem is None and "dive" in sure.figures:
        return replace(end, braking=replace(end.braking, stroke=with_half(end.braking.stroke, sure.figures["dive"])))
    return end


def _filled(setup: AnySetup, halves: Mapping[str, float], along: str) -> AnySetup:
    return replace(
        setup,
        free_sag=with_half(setup.free_sag, halves[f"free_{along}"]),
        rider_sag=with_half(setup.rider_sag, halves[f"rider_{along}"]),
        frequency=with_half(setup.frequency, halves["frequency"]),
        wheel_rate=with_half(setup.wheel_rate, halves["wheel_rate"]),
        end_force=with_half(setup.end_force, halves["end_force"] * 1e-3),
        end_multiple=with_half(setup.end_multiple, halves["end_multiple"]),
        landing_energy=with_half(setup.landing_energy, halves["energy"] * 1e-3),
        energy_per_mass=with_half(setup.energy_per_mass, halves["energy_per_mass"] * 1e-3),
        # per weight, the same energy; the travel's own +/- of a few millimetres is left out of centimetres
        flat_drop=with_half(setup.flat_drop, halves["energy_per_mass"] * 1e-3 / STANDARD_GRAVITY * 100.0),
    )


def of_ten(counts: Mapping[float, int], draws: int) -> dict[float, int]:
    """Counts of draws as parts of ten that add up to ten where every draw chose: largest remainders."""
    total = round(10 * sum(counts.values()) / draws)
    exact = {rate: 10 * count / draws for rate, count in counts.items()}
    parts = {rate: int(share) for rate, share in exact.items()}
    by_remainder = sorted(exact, key=lambda rate: parts[rate] - exact[rate])
    for rate in by_remainder[: max(total - sum(parts.values()), 0)]:
        parts[rate] += 1
    return parts


def middle(counts: Mapping[float, int]) -> tuple[float, float]:
    """The rates [N/mm] between which the middle eight of ten draws choose."""
    ordered = [rate for rate in sorted(counts) for _ in range(counts[rate])]
    last = len(ordered) - 1
    return ordered[round(0.1 * last)], ordered[round(0.9 * last)]


def _counted(job: Job, axle: Axle, sure: Bands, setup: SetupReport, done: EndSizing) -> HowSure:
    """Draws by what they choose: rates [N/mm], or pressures in bar."""
    by_step = {_shown(step, setup): count for step, count in sure.choices.counts.items()}
    tenths = of_ten(by_step, sure.draws)
    rates = np.atleast_1d(done.sized.setup.rate)
    name: Name = (lambda step: step_text(setup, step)) if setup.pressure else spring_names(job, axle, done)
    called = Cases.of(job, axle).called
    counts = [Counted(called(step), count, tenths[step], name(step)) for step, count in by_step.items()]
    low, high = middle(by_step)
    undecided = sure.draws - sum(by_step.values())
    if setup.pressure:
        words = pressure_words(low, high, setup)
    elif sure.choices.settled:
        chosen = float(rates[sure.index])
        near = round(10 * sum(c for rate, c in by_step.items() if abs(rate - chosen) <= done.step * (1 + WITHIN)) / sure.draws)
        words = count_words(tenths, chosen, near, name)
    else:
        words = open_words(low, high, undecided > 0, spring_names(job, axle, done, known=True))
    return HowSure(
        draws=sure.draws,
        left_out=sure.left_out,
        undecided=undecided,
        counts=tuple(sorted(counts, key=lambda c: -c.count)),
        settled=sure.choices.settled,
        low=called(low),
        low_text=name(low),
        high=called(high),
        high_text=name(high),
        words=words,
    )


def _shown(step: float, setup: SetupReport) -> float:
    """A rate or pressure as the report holds it, so that the same one is the same number."""
    return float(f"{convert(step, 'MPa', 'bar'):.12g}") if setup.pressure else step


def _measure_next(job: Job, sure: Bands, along: str) -> tuple[NextReading, ...]:
    """The readings that would narrow the results most: the greatest cause of each result in turn, each reading once; where the
    choice hangs on one, that one first.
    """
    asked_for: list[NextReading] = []
    for result, words, unit, decimals in _ASKED_FOR:
        name = f"{result}_{along}" if result in ("rider", "free") else result
        causes = [c for c in sure.causes.get(name, ()) if c.path not in _UNASKABLE] if _first_order_holds(sure, name) else []
        if causes and all(causes[0].path != one.path for one in asked_for):
            asked_for.append(_ask(job, causes[0], words, unit, decimals))
    ordered = sorted(asked_for, key=lambda one: one.then / one.now)
    first = [one for one in ordered if one.result == _ASKED_FOR[0][1] and not _certain(sure)]
    return tuple([*first, *(one for one in ordered if one not in first)][:NEXT])


def _certain(sure: Bands) -> bool:
    """True where nearly every draw chooses the same."""
    return max(sure.choices.counts.values(), default=0) >= CERTAIN * sure.draws


def _first_order_holds(sure: Bands, name: str) -> bool:
    """The ranking is first order: where the draws say otherwise by half as much again, nothing is promised."""
    drawn = {**sure.figures, **sure.setup}.get(name)
    causes = sure.causes.get(name, ())
    return drawn is not None and bool(causes) and 1.0 / FAR_APART < causes[0].now / drawn < FAR_APART


def _ask(job: Job, cause: Cause, result: str, unit: str, decimals: int) -> NextReading:
    factor = {"bar": 10.0, "ml": 1e-3}.get(unit, 1.0)
    now, then = cause.now * factor, cause.then * factor
    places = decimals_apart(now, then, decimals_worth(now, decimals))
    was, left = half_text(now, places), half_text(then, places)
    change = f"narrows the {result} from {was} to {left} {unit}".rstrip()
    return NextReading(
        path=cause.path,
        result=result,
        share=float(f"{cause.share:.3g}"),
        now=float(f"{now:.3g}"),
        then=float(f"{then:.3g}"),
        unit=unit,
        words=f"{asked(job, cause.path)} ({change}).",
        how=job.fields[cause.path].field.how,
    )
