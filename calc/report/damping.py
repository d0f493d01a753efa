"""The dampers of an end as data: what is asked of their readings, and of the setup that was built or is recommended."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from calc.array import Number
from calc.conditions.damping import Behind, Limit, behind_in_state, behind_oil, limit_at
from calc.conditions.in_state import InState, State
from calc.conditions.states import States, states
from calc.damping.flow import base_flow, orifice_drop, piston_flow
from calc.damping.wheel import at_wheel, critical, rod_force
from calc.end.figures import Figures, evaluate
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job, Ranges, Resolved
from calc.job.fields.damping import CLICKERS
from calc.model import conditions
from calc.model.damper import Damper, damper, rod_path
from calc.practice import Axle
from calc.report.damping_shims import shim_change
from calc.report.damping_words import LEFT_OUT, beside_words, clicker_log, follow_words, limit_words
from calc.report.quantity import plain_number, quantity, with_half
from calc.report.sized import banded, fields_of, part, sized
from calc.report.states import LABELS
from calc.report.types import AtWheel, Clicker, DampingOfEnd, EndReport, Follows, HoldsAt, HoldsIn, OilMoved, Quantity
from calc.sizing.attempts import built
from calc.sizing.choice import EndSizing
from calc.uncertainty.bands import Bands, told_index
from calc.uncertainty.damping import Followed, factors, followed

_NO_ANSWER = "This end has no answer, so little is told of its damping."
_AIR = "An air spring's own pressure does not back the damper: what does, no reading tells."
_PER_MINUTE = 60.0 / 1e6  # l/min in one mm3/s
_COMPARED: tuple[State, ...] = ("as built", "opened into one")
Of = Literal["built", "recommended", "found"]
Since = Literal["as found", "as sold"]


def damping_report(job: Job, corrected: Job, axle: Axle, end: EndReport) -> DampingOfEnd:
    """The dampers of one end.

    Parameters: job; corrected, the same as sags found correct it; axle; end, its report with bands.
    Returns: DampingOfEnd. Raises: nothing. Formula: see `calc.damping`. Source: see there.
    Example: see `tests/unit/report/test_damping_report.py`.
    """
    rows = clickers(job, axle)
    told = DampingOfEnd(
        axle, "found", "", None, (), None, (), rows, clicker_log(axle, rows), shim_change(job, axle), (), (), (), LEFT_OUT
    )
    refused = next((one for one in _rests_on(job, axle) if one), "")
    if refused:
        return replace(told, problem=refused)
    try:
        told = _with_figures(told, job, corrected, axle, end)
    except Impossible as error:
        told = replace(told, problem=f"{error.message} {error.way_out}".rstrip())
    words, limits, besides = follow_words(told), limit_words(job, told), beside_words(job, told)
    return replace(told, words=words, limits=limits, besides=besides)


def _rests_on(job: Job, axle: Axle) -> list[str]:
    """What is wrong with each field that it rests on: its own, clickers and shims aside, which are told by themselves; the rod, how
    many shocks there are and the oil.
    """
    apart = ("click_", "set_", "shim")
    read = {rod_path(job, axle), "rear.shocks" if axle == "rear" else "oil.density"}
    own = (
        f
        for path, f in job.fields.items()
        if path in read or (f.field.part == "damping" and f.field.group == axle and not f.field.key.startswith(apart))
    )
    return [" ".join(part for part in (f.problem.message, f.problem.limit) if part) for f in own if f.problem and f.applies]


def clickers(job: Job, axle: Axle) -> tuple[Clicker, ...]:
    """Those of which anything is entered."""
    rows = [
        Clicker(key, label, _clicks(job, f"{axle}.click_{key}"), _clicks(job, f"{axle}.set_{key}"))
        for key, label in CLICKERS[axle].items()
    ]
    return tuple(row for row in rows if row.found or row.built)


def _clicks(job: Job, path: str) -> str:
    return plain_number(job.number(path)) if job.entered(path) else ""


def _with_figures(told: DampingOfEnd, job: Job, corrected: Job, axle: Axle, end: EndReport) -> DampingOfEnd:
    found = damper(job, axle)
    told = replace(told, moved=_moved(found))
    done, _ = sized(axle, fields_of(corrected, axle), corrected.ranges)
    if done is None or end.state == "refused":
        why = "" if end.state != "refused" or not end.problems else f" {end.problems[0].message}"
        return replace(told, problem=f"{_NO_ANSWER}{why}")
    settled = end.state == "ok" and end.verdict != "open"
    of, setup, _ = _looked_at(corrected, axle, done, settled)
    now = evaluate(done.inputs.assembly, setup, done.inputs.loads, done.inputs.exponent)
    told = replace(told, of=of, wheel=_at_wheel(job, axle, found, now, done))
    told = replace(told, holds=_holds(corrected, axle, found, now, of))
    if of == "found":
        return told
    return replace(told, follows=_follows(axle, fields_of(corrected, axle), corrected.ranges, corrected.draws, settled))


def _looked_at(job: Job, axle: Axle, done: EndSizing, settled: bool) -> tuple[Of, Setup, bool]:
    """What was built, else what is recommended, else what is in; and whether the spring of that is the one that is in."""
    index = told_index(done, settled) if done.choice >= 0 else -1
    answer = None if index < 0 else done.sized.setup.at(index)
    made = built(job, axle, done, answer)
    if made is not None and made[1] is not None:
        return "built", made[0], False
    if answer is None:
        return "found", done.found_setup, True
    return "recommended", answer, index == done.fitted


def _moved(found: Damper) -> OilMoved:
    sizes, speed = found.sizes, found.speed
    case, flow = "one damper, compression", piston_flow(sizes, speed)
    drop = None if found.ports is None else orifice_drop(flow, found.ports, found.density)
    return OilMoved(
        speed=quantity(speed, "m/s", "of the shaft", 2, "mm/s"),
        base=quantity(base_flow(sizes, speed) * _PER_MINUTE, "l/min", case, 1),
        piston=quantity(flow * _PER_MINUTE, "l/min", case, 1),
        share=quantity(sizes.share, "%", "rod over piston area", 0, "1"),
        pushed_out=quantity(10.0 * sizes.rod, "ml", "10 mm of stroke", 1, "mm3"),
        ports=None if drop is None else quantity(drop, "bar", "ports alone, sharp edges", 1, "MPa"),
        density=quantity(found.density, "kg/m³", "oil", 0),
        vapour=quantity(found.vapour, "bar", "absolute", 2, "MPa"),
    )


def _at_wheel(job: Job, axle: Axle, found: Damper, now: Figures, done: EndSizing) -> AtWheel:
    most = critical(now.wheel_rate, done.inputs.loads.sprung_mass)
    q, case = now.end.motion.ratio(now.rider.travel), "at rider sag"

    def ratio(path: str) -> Quantity | None:
        if not job.entered(path):
            return None
        return quantity(at_wheel(job.number(path), found.speed, q, found.count) / most, "", f"of critical, {case}", 2)

    return AtWheel(
        critical=quantity(most, "N s/m", f"whole end, {case}", 0),
        rod=quantity(rod_force(most, found.speed, q, found.count), "N", "one damper, where damping is critical", 0),
        rebound_ratio=ratio(f"{axle}.rebound_force"),
        compression_ratio=ratio(f"{axle}.compression_force"),
    )


def _holds(job: Job, axle: Axle, found: Damper, now: Figures, of: Of) -> tuple[HoldsIn, ...]:
    """Of a cartridge as it was built and opened, as the fork came in; of any other damper with the setup that is looked at."""
    ambient = conditions(job).ambient
    if axle == "front" and job.choice("front.air") == "air leg":
        return (HoldsIn("Fork", (), _AIR),)
    if axle == "front" and job.choice("front.air") == "sealed cartridge":
        return _in_states(found, ambient, states(job))
    label = {"built": "As built", "recommended": "As recommended", "found": "As found"}[of]
    return (HoldsIn(label, _rows(found, ambient, behind_oil(now)), ""),)


def _in_states(found: Damper, ambient: Number, those: States | None) -> tuple[HoldsIn, ...]:
    assert those is not None
    told = []
    for state in _COMPARED:
        one = those.told[state]
        if isinstance(one, InState):
            told.append(HoldsIn(LABELS[state], _rows(found, ambient, behind_in_state(one, those.strokes)), ""))
        else:
            told.append(HoldsIn(LABELS[state], (), f"{LABELS[state]}: {one.message}"))
    return tuple(told)


def _rows(found: Damper, ambient: Number, those: tuple[Behind, ...]) -> tuple[HoldsAt, ...]:
    return tuple(_row(limit_at(found, behind, ambient)) for behind in those)


def _row(limit: Limit) -> HoldsAt:
    def bar(value: float, case: str) -> Quantity:
        return quantity(value, "bar", case, 1, "MPa")

    floor, stated = "nothing from the base valve", "base valve as stated"
    return HoldsAt(
        stroke=quantity(limit.behind.stroke, "mm", "along the leg or shock", 0),
        behind=bar(limit.behind.pressure, "gauge, behind the damper's oil"),
        drop=bar(limit.drop, f"over the piston, {floor}"),
        force=quantity(limit.force, "N", f"one damper, {floor}", 0),
        stated_drop=None if limit.stated_drop is None else bar(limit.stated_drop, f"over the piston, {stated}"),
        stated_force=None if limit.stated_force is None else quantity(limit.stated_force, "N", f"one damper, {stated}", 0),
        refill=bar(limit.refill, "over the check valve, rebound"),
    )


def _factors(job: Job, axle: Axle, done: EndSizing, setup: Setup, own: bool, sure: Bands | None) -> Followed:
    """The factors; of what is recommended their +/- are among the bands already."""
    if sure is None:
        return followed(job, axle, done.inputs, setup, own)
    now = evaluate(done.inputs.assembly, setup, done.inputs.loads, done.inputs.exponent)
    told = factors(job, axle, done.inputs, now)
    return Followed({name: float(value) for name, value in told.items()}, sure.damping)


@lru_cache(maxsize=16)
def _follows(axle: Axle, fields: tuple[Resolved, ...], ranges: Ranges, draws: int, settled: bool) -> tuple[Follows, ...]:
    """Of an end's own fields: one whose fields did not change is not drawn again."""
    job, (done, _) = replace(part(fields, ranges), draws=draws), sized(axle, fields, ranges)
    assert done is not None
    of, setup, own = _looked_at(job, axle, done, settled)
    told = _factors(job, axle, done, setup, own, banded(axle, fields, ranges, draws) if of == "recommended" else None)

    def factor(name: str, case: str) -> Quantity:
        half = told.halves.get(name)
        # no finer than it is told
        return with_half(quantity(told.factors[name], "×", case, 2), None if half is None else math.ceil(half * 100.0) / 100.0)

    ride, full = "rebound and compression, about rider sag", "rebound, from full travel"
    since: tuple[tuple[Since, str], ...] = (("as found", "found"), ("as sold", "sold"))
    return tuple(Follows(label, factor(name, ride), factor(f"{name}_full", full)) for label, name in since if name in told.factors)
