"""The report of one end: answer, candidates, fitted, standard, tried, curve, windows; or why there is none."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from calc.advice import EndSizing, rider_span, tried
from calc.impossible import Impossible
from calc.job import Job, Ranges, Resolved
from calc.model import conditions, found_gaps
from calc.report import sure
from calc.report.beside import beside
from calc.report.candidates import candidate, nothing_fits, shown
from calc.report.curve import curve_data
from calc.report.data import Data, quantity
from calc.report.elsewhere import elsewhere_data
from calc.report.section import section_data
from calc.report.setups import Cases, setup_data
from calc.report.sized import fields_of, part, problem_of, sized
from calc.report.springs import seat_data, spring_lines
from calc.report.windows import windows_data
from calc.report.words import answer_words, front_why, rear_why, span_words, step_of, step_text
from calc.setup import Figures, Setup


def end_data(job: Job, end: str, with_bands: bool) -> Data:
    """The report of an end; state "ok", "none" (every spring is barred) or "refused" (an entry or the bike is impossible).

    Read-only: an end whose fields did not change is not worked out again.
    """
    fields = fields_of(job, end)
    return _sure(end, fields, job.ranges, job.draws) if with_bands else _nominal(end, fields, job.ranges)


@lru_cache(maxsize=16)
def _nominal(end: str, fields: tuple[Resolved, ...], ranges: Ranges) -> Data:
    done, problems = sized(end, fields, ranges)
    if done is not None:
        try:
            return _sized_data(part(fields, ranges), end, done)
        except Impossible as error:
            problems = (problem_of(error, end),)
    return {"state": "refused", "problems": [problem.as_data() for problem in problems]}


@lru_cache(maxsize=16)
def _sure(end: str, fields: tuple[Resolved, ...], ranges: Ranges, draws: int) -> Data:
    data, (done, _) = _nominal(end, fields, ranges), sized(end, fields, ranges)
    if done is None or data["state"] == "refused":
        return data
    job = replace(part(fields, ranges), draws=draws)
    more = {"elsewhere": _elsewhere(job, end, done), "holds_for": _span_data(job, end, data, done)}
    return sure.with_bands(job, end, data, done) | more


def _span_data(job: Job, end: str, data: Data, done: EndSizing) -> Data | None:
    try:
        span = rider_span(job, end, done)
    except Impossible:  # another rider within the search cannot be carried: no word on this one's answer
        return None
    if span is None:
        return None
    chosen = data["chosen"]
    return {"low": span[0], "high": span[1], "unit": "kg", "words": span_words(*span, step_text(chosen, step_of(chosen)))}


def _elsewhere(job: Job, end: str, done: EndSizing) -> list[Data]:
    chosen = int(done.sized.choice)
    built = done.found_setup if chosen < 0 else done.sized.setup.at(chosen)
    return elsewhere_data(job, end, built, chosen >= 0)


def _sized_data(job: Job, end: str, done: EndSizing) -> Data:
    cases = Cases.of(job, end)
    chosen = int(done.sized.choice)
    near = shown(done, chosen)
    candidates = [candidate(job, done, cases, i, chosen) for i in near]
    answer = None if chosen < 0 else done.sized.setup.at(chosen)
    data: Data = {
        "state": "none" if answer is None else "ok",
        "problems": [] if answer is not None else [nothing_fits(job, candidates, end).as_data()],
        "candidates": candidates,
        "standard": setup_data(done.situation.standard_setup, done.situation.standard, cases),
        "as_found": _found_data(job, end, done, cases),
        "windows": windows_data(job, end),
        "targets": _targets_data(job, end, done, cases),
        "load": _loads_data(done, cases),
        "tried": None,
        "sure": None,
        "measure_next": [],
        "elsewhere": [],
        "holds_for": None,
        "seat": None,
        "braking": None,
        "motion": None,
    }
    drawn, figures = (done.found_setup, done.found) if answer is None else (answer, done.sized.figures.at(chosen))
    if figures is not None:
        data |= beside(job, end, done, drawn)
    data["curve"] = None if figures is None else _curve(done, drawn, figures, cases)
    data["curve_found"] = None if done.found is None else curve_data(done.found.end, done.found, cases.along)
    standard = done.situation.standard
    data["curve_standard"] = curve_data(standard.end, standard, cases.along)
    data["section"] = section_data(job, done, drawn, figures)
    attempt = tried(job, end, done, answer)
    if attempt is not None:
        data["tried"] = _attempt_data(end, attempt, cases) | {"section": section_data(job, done, *attempt[:2])}
    if answer is not None:
        data |= _answer_data(job, end, done, data, candidates[near.index(chosen)])
    return data


def _found_data(job: Job, end: str, done: EndSizing, cases: Cases) -> Data:
    if done.found is None:
        assert done.found_problem is not None
        return {"problem": problem_of(done.found_problem, end).as_data(), "setup": None}
    data = setup_data(done.found_setup, done.found, cases)
    if end == "front":
        left, right = found_gaps(job, conditions(job))
        data["gap_left"], data["gap_right"] = quantity(left, "mm", "left leg", 0), quantity(right, "mm", "right leg", 0)
    return {"problem": None, "setup": data}


def _attempt_data(end: str, attempt: tuple[Setup, Figures | None, Impossible | None], cases: Cases) -> Data:
    setup, figures, problem = attempt
    if figures is None:
        assert problem is not None
        return {"problem": problem_of(problem, end).as_data(), "setup": None, "curve": None}
    return {"problem": None, "setup": setup_data(setup, figures, cases), "curve": curve_data(figures.end, figures, cases.along)}


def _curve(done: EndSizing, setup: Setup, figures: Figures, cases: Cases) -> Data:
    if done.found is not None and setup is done.found_setup:
        return curve_data(done.found.end, figures, cases.along)
    return curve_data(done.situation.assembly.end(setup.rate, setup.preload, setup.gap), figures, cases.along)


def _targets_data(job: Job, end: str, done: EndSizing, cases: Cases) -> Data:
    data: Data = {"rider_sag": quantity(job.number(f"{end}.target_sag"), "mm", cases.rider, 0)}
    if end == "rear":
        return data | {"free_sag": quantity(job.number("rear.target_free_sag"), "mm", cases.free, 0)}
    kind = job.choice("front.end_target")
    unit, internal, case = ("J", "N mm", cases.landing) if kind == "energy" else ("kN", "N", f"full travel, {cases.working}")
    decimals = 0 if kind == "energy" else 2
    data["end"] = quantity(done.situation.targets.end_amount, unit, case, decimals, internal) | {"kind": kind}
    data["frequency"] = quantity(done.situation.standard.frequency, "Hz", "standard rider on the standard setup", 2)
    return data


def _loads_data(done: EndSizing, cases: Cases) -> Data:
    return {
        "alone": quantity(done.situation.loads.alone, "N", "sprung, bike alone", 0),
        "aboard": quantity(done.situation.loads.aboard, "N", f"sprung, {cases.rider.split(', n 1')[0]}", 0),
        "sprung_mass": quantity(done.situation.loads.sprung_mass, "kg", "at this axle, rider aboard", 1),
    }


def _moved_data(done: EndSizing) -> Data | None:
    """What the recommended setup raises the bike by, rider aboard: at the wheel, and along the leg at the front."""
    if done.found is None:
        return None
    was, now = done.found.rider, done.sized.figures.at(int(done.sized.choice)).rider
    case = "rider aboard, as found to recommended, up is +"
    return {
        "height": quantity(was.travel - now.travel, "mm", case, 0),
        "along": quantity(was.stroke - now.stroke, "mm", f"{case}, along the leg or shock", 0),
    }


def _answer_data(job: Job, end: str, done: EndSizing, data: Data, chosen: Data) -> Data:
    found = data["as_found"]["setup"]
    if end == "front":
        standard = done.situation.standard
        sold = standard.end_force / standard.end_multiple
        extra = float(done.situation.loads.aboard / sold) - 1.0
        why = front_why(extra, chosen, data["standard"], found, data["windows"]["frequency"])
    else:
        why = rear_why(chosen, data["targets"]["free_sag"]["value"], found)
    return {
        "chosen": chosen,
        "moved": _moved_data(done),
        "leave": bool(chosen["fitted"]),
        "answer": answer_words(end, chosen, chosen["oil"], bool(chosen["fitted"])),
        "why": [*why, *spring_lines(job, end, chosen, done.sized.figures.at(int(done.sized.choice)))],
        "seat": seat_data(job, end, done, done.sized.setup.at(int(done.sized.choice))),
    }
