"""The report of one end: answer, candidates, fitted, standard, tried, curve, windows; or why there is none."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Any

from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job, Ranges, Resolved
from calc.model import conditions, found_gaps
from calc.practice import Axle
from calc.report import sure
from calc.report.beside import beside
from calc.report.candidates import candidate, nothing_fits, shown
from calc.report.conditions import condition_rows
from calc.report.curve import force_curve
from calc.report.gap_step import gap_step_report
from calc.report.names import rate_was_read, what_is_in_was_read
from calc.report.quantity import quantity
from calc.report.section import section
from calc.report.setups import Cases, setup_report
from calc.report.sized import banded, fields_of, part, problem_of, sized
from calc.report.springs import seat_of, spring_lines
from calc.report.typed_unit import in_typed_unit
from calc.report.types import (
    AsFound,
    Attempt,
    Built,
    Candidate,
    Condition,
    Curve,
    EndLoads,
    EndNone,
    EndOk,
    EndRefused,
    EndReport,
    EndTarget,
    FoundSetupReport,
    Moved,
    RiderSpan,
    SizedEnd,
    Targets,
    values,
)
from calc.report.verdict import Answered, answered_first, verdict, why, yardstick_of
from calc.report.windows import usual_windows
from calc.report.words import span_words, spring_subject
from calc.sizing.attempts import built, tried
from calc.sizing.choice import EndSizing, rider_span


def end_report(job: Job, axle: Axle, with_bands: bool) -> EndReport:
    """The report of an end; state "ok", "none" (every spring is barred) or "refused" (an entry or the bike is impossible).

    An axle whose fields did not change is not worked out again; what is kept of it is frozen.
    """
    fields = fields_of(job, axle)
    return _sure(axle, fields, job.ranges, job.draws) if with_bands else _nominal(axle, fields, job.ranges)


@lru_cache(maxsize=16)
def _nominal(axle: Axle, fields: tuple[Resolved, ...], ranges: Ranges) -> EndReport:
    done, problems = sized(axle, fields, ranges)
    if done is not None:
        try:
            return _sized(part(fields, ranges), axle, done, answered_first(done))
        except Impossible as error:
            problems = (problem_of(error, axle),)
    return EndRefused("refused", problems)


@lru_cache(maxsize=16)
def _sure(axle: Axle, fields: tuple[Resolved, ...], ranges: Ranges, draws: int) -> EndReport:
    end, (done, _) = _nominal(axle, fields, ranges), sized(axle, fields, ranges)
    if done is None or end.state == "refused":
        return end
    job = replace(part(fields, ranges), draws=draws)
    found = banded(axle, fields, ranges, draws) if end.state == "ok" else None
    answered = answered_first(done)
    if found is not None and end.state == "ok":
        answered = Answered(found.index, found)
        same = found.index == done.choice  # then only what is said of it may change
        end = replace(end, **_said(job, axle, done, end, end.chosen, answered)) if same else _sized(job, axle, done, answered)
    if found is not None and end.state == "ok":
        end = sure.with_bands(job, axle, end, done, found)
    span = _rider_span(job, axle, end, done) if found is None or found.choices.settled else None
    as_left = _built_conditions(job, axle, done, answered, end.built)
    return replace(end, conditions=_conditions(job, axle, done, answered), holds_for=span, built=as_left)


def _rider_span(job: Job, axle: Axle, end: EndOk | EndNone, done: EndSizing) -> RiderSpan | None:
    """For whom a spring holds: told of one that is chosen, never of one that only stays for now."""
    if end.state != "ok" or end.verdict not in ("keep", "fit"):
        return None
    try:
        span = rider_span(job, axle, done)
    except Impossible:  # another rider within the search cannot be carried: no word on this one's answer
        return None
    return None if span is None else RiderSpan(*span, "kg", span_words(*span, spring_subject(end.chosen, rate_was_read(job, axle))))


def _conditions(job: Job, axle: Axle, done: EndSizing, answered: Answered) -> tuple[Condition, ...]:
    setup = done.found_setup if answered.index < 0 else done.sized.setup.at(answered.index)
    return condition_rows(job, axle, setup, answered.index >= 0)


def _built_conditions(job: Job, axle: Axle, done: EndSizing, answered: Answered, shown: Built | None) -> Built | None:
    """What was built, under the job's other conditions too; its figures are held, with their tolerance."""
    as_left = built(job, axle, done, _answer(done, answered))
    if shown is None or shown.setup is None or as_left is None:
        return shown
    return replace(shown, conditions=condition_rows(job, axle, as_left[0], True))


def _answer(done: EndSizing, answered: Answered) -> Setup | None:
    return None if answered.index < 0 else done.sized.setup.at(answered.index)


def _sized(job: Job, axle: Axle, done: EndSizing, answered: Answered) -> EndOk | EndNone:
    cases, chosen = Cases.of(job, axle), answered.index
    near = shown(done, chosen)
    candidates = tuple(candidate(job, done, cases, i, chosen) for i in near)
    answer = _answer(done, answered)
    drawn, figures = (done.found_setup, done.found) if answer is None else (answer, done.sized.figures.at(chosen))
    braking, motion = (None, None) if figures is None else beside(job, axle, done, drawn)
    common = SizedEnd(
        problems=() if answer is not None else (nothing_fits(candidates, axle),),
        candidates=candidates,
        standard=setup_report(done.inputs.standard_setup, done.inputs.standard, cases),
        as_found=_as_found(job, axle, done, cases),
        windows=usual_windows(job, axle),
        targets=_targets(job, axle, done, cases),
        yardstick=yardstick_of(done, cases),
        load=_loads(done, cases),
        tried=_attempt(job, axle, done, tried(job, axle, done, answer), cases),
        built=_built(job, axle, done, answer, cases),
        curve=None if figures is None else _curve(done, drawn, figures, cases),
        curve_found=None if done.found is None else force_curve(done.found.end, done.found, cases.along),
        curve_standard=force_curve(done.inputs.standard.end, done.inputs.standard, cases.along),
        section=section(job, done.inputs.assembly, done.limits, drawn, figures),
        gap_step=gap_step_report(done, drawn),
        braking=braking,
        motion=motion,
    )
    if answer is None:
        return EndNone(**values(common))
    return _answered(job, axle, done, common, candidates[near.index(chosen)], answered)


def _as_found(job: Job, axle: Axle, done: EndSizing, cases: Cases) -> AsFound:
    if done.found is None:
        assert done.found_problem is not None
        return AsFound(problem_of(done.found_problem, axle), None)
    left, right = None, None
    if axle == "front":
        gaps = found_gaps(job, conditions(job))
        left, right = (quantity(gap, "mm", f"{leg} leg", 0) for leg, gap in zip(("left", "right"), gaps, strict=True))
    setup = setup_report(done.found_setup, done.found, cases)
    return AsFound(None, FoundSetupReport(**values(setup), gap_left=left, gap_right=right))


def _attempt(
    job: Job, axle: Axle, done: EndSizing, attempt: tuple[Setup, Figures | None, Impossible | None] | None, cases: Cases
) -> Attempt | None:
    if attempt is None:
        return None
    setup, figures, problem = attempt
    drawn = section(job, done.inputs.assembly, done.limits, setup, figures)
    if figures is None:
        assert problem is not None
        return Attempt(problem_of(problem, axle), None, None, drawn, None)
    curve, step = force_curve(figures.end, figures, cases.along), gap_step_report(done, setup)
    return Attempt(None, setup_report(setup, figures, cases), curve, drawn, step)


def _built(job: Job, axle: Axle, done: EndSizing, answer: Setup | None, cases: Cases) -> Built | None:
    attempt = _attempt(job, axle, done, built(job, axle, done, answer), cases)
    return None if attempt is None else Built(**values(attempt))


def _curve(done: EndSizing, setup: Setup, figures: Figures, cases: Cases) -> Curve:
    return force_curve(done.inputs.assembly.end(setup), figures, cases.along)


def _targets(job: Job, axle: Axle, done: EndSizing, cases: Cases) -> Targets:
    wanted = done.inputs.targets
    sag = quantity(wanted.sag, "mm", cases.rider, 0)
    free = None if wanted.free_sag is None else quantity(wanted.free_sag, "mm", cases.free, 0)
    if axle == "rear":
        return Targets(sag, free, None)
    kind = job.choice("front.end_target")
    unit, internal, case = ("J", "N mm", cases.landing) if kind == "energy" else ("kN", "N", f"full travel, {cases.working}")
    end = quantity(wanted.end_amount, unit, case, 0 if kind == "energy" else 2, internal)
    return Targets(sag, free, EndTarget(**values(end), kind=kind))


def _loads(done: EndSizing, cases: Cases) -> EndLoads:
    return EndLoads(
        alone=quantity(done.inputs.loads.alone, "N", "sprung, bike alone", 0),
        aboard=quantity(done.inputs.loads.aboard, "N", f"sprung, {cases.rider.split(', gas settled')[0]}", 0),
        sprung_mass=quantity(done.inputs.loads.sprung_mass, "kg", "at this axle, rider aboard", 1),
    )


def _moved(done: EndSizing, index: int) -> Moved | None:
    if done.found is None:
        return None
    was, now = done.found.rider, done.sized.figures.at(index).rider
    case = "rider aboard, as found to recommended, up is +"
    return Moved(
        height=quantity(was.travel - now.travel, "mm", case, 0),
        along=quantity(was.stroke - now.stroke, "mm", f"{case}, along the leg or shock", 0),
    )


def _answered(job: Job, axle: Axle, done: EndSizing, common: SizedEnd, chosen: Candidate, answered: Answered) -> EndOk:
    return EndOk(
        **values(common),
        **_said(job, axle, done, common, chosen, answered),
        chosen=chosen,
        moved=_moved(done, answered.index),
        leave=chosen.fitted and (chosen.pressure is None or what_is_in_was_read(job, axle, chosen)),
        seat=seat_of(job, axle, done, done.sized.setup.at(answered.index)),
        also=in_typed_unit(job, axle, chosen),
    )


def _said(job: Job, axle: Axle, done: EndSizing, common: SizedEnd, chosen: Candidate, answered: Answered) -> dict[str, Any]:
    """The verdict, in words, and why."""
    kind, answer = verdict(job, axle, done, common, chosen, answered)
    lines = why(job, axle, done, common, chosen, kind)
    springs = spring_lines(job, axle, chosen, done.sized.figures.at(answered.index))
    return {"verdict": kind, "answer": answer, "why": (*lines, *springs)}
