"""The whole report as plain text for the command line, in the order of the job."""

from __future__ import annotations

from calc.job.field import Part
from calc.job.fields import FIELDS
from calc.practice import Axle
from calc.report.bench_text import bench_lines
from calc.report.columns import columns, wrapped
from calc.report.damping_text import damping_lines
from calc.report.leg_text import leg_lines
from calc.report.letter import problem_text, sags_text, title
from calc.report.offer_text import offer_lines
from calc.report.oil_text import oil_lines
from calc.report.push_text import push_lines
from calc.report.quantity import banded_text, figure_text, number_text, plain_number
from calc.report.sags_told import left_out_words, of_setup, sag_texts
from calc.report.states_text import states_lines
from calc.report.types import (
    Candidate,
    Condition,
    Curve,
    EndNone,
    EndOk,
    EndReport,
    FieldState,
    MotionReport,
    Report,
    SagTold,
    SetupReport,
)
from calc.report.words import named, rate_words, step_of

_TITLES: dict[Axle, str] = {"front": "Front", "rear": "Rear"}
_TOLD_ELSEWHERE = (Part.FILLING, Part.SERVICE, Part.DAMPING)  # nothing that is sized rests on these
_SETUP = ("free sag\nmm", "rider sag\nmm", "ride\nHz", "at full\ntravel kN", "x rider\nload", "landing\nJ")


def report_text(report: Report) -> str:
    """Answer, why, others, as found, curve, conditions, readings, cautions."""
    lines = [title(report), ""]
    lines += [*_end_lines("front", report.ends.front, report), ""]
    lines += [*_end_lines("rear", report.ends.rear, report), ""]
    if report.attitude:
        lines += [*wrapped(report.attitude.words), ""]
    for note in report.notes:
        lines += [*wrapped(f"Note: {note}"), ""]
    if report.sags:
        lines += [*sags_text(report).split("\n")[1:], ""]
    lines += [*push_lines(report.push), *oil_lines(report.oil), *states_lines(report.states), *damping_lines(report.damping)]
    lines += bench_lines(report)
    if report.offer:
        lines += ["Offer", *offer_lines(report), ""]
    lines += _based_on(report)
    if report.measure_first:
        lines += ["", "Measure first:"]
        lines += [line for first in report.measure_first for line in wrapped(f"{first.words} {first.how}", "    ", "  ")]
    lines += ["", "Cautions:"]
    lines += [line for caution in report.cautions for line in wrapped(f"{caution.title} {caution.words}", "    ", "  ")]
    return "\n".join([*lines, "", *wrapped(report.left_out)])


def _end_lines(axle: Axle, end: EndReport, report: Report) -> list[str]:
    lines = [_TITLES[axle]]
    for problem in end.problems:
        lines += wrapped(problem_text(problem), "  ")
    if end.state == "refused":
        return lines
    if end.state == "ok":
        said = (end.answer, end.also, end.sure and end.sure.words, *end.why, end.seat.words, end.holds_for and end.holds_for.words)
        lines += [line for sentence in said if sentence for line in wrapped(sentence, "  ")]
    lines += ["", *_setups(axle, end, report.sags_told), *_barred(end)]
    if end.measure_next:
        lines += ["", "  Next:"]
        lines += [line for reading in end.measure_next for line in wrapped(f"{reading.words} {reading.how}", "      ", "    ")]
    return [*lines, *_curve(end.curve), *leg_lines(end.section), *_braking(end), *_motion(end.motion), *_conditions(end.conditions)]


def _setups(axle: Axle, end: EndOk | EndNone, told: tuple[SagTold, ...]) -> list[str]:
    read = {name: of_setup(told, axle, of) for name, of in (("as found", "found"), ("built", "built"))}
    unit = "bar" if end.standard.pressure else "N/mm"
    heads = ["", unit, "preload\nmm", *(["gap\nmm"] if axle == "front" else []), *_SETUP]
    rows = [_row(_name(c), c, {}) for c in end.candidates]
    shown: list[tuple[str, SetupReport | None]] = [("as found", end.as_found.setup), ("standard, its rider", end.standard)]
    shown += [(name, attempt.setup) for name, attempt in (("tried", end.tried), ("built", end.built)) if attempt]
    rows += [_row(name, setup, read.get(name, {})) for name, setup in shown if setup]
    problems = (
        ("as found", end.as_found.problem),
        ("tried", end.tried and end.tried.problem),
        ("built", end.built and end.built.problem),
    )
    said = [line for name, problem in problems if problem for line in wrapped(f"{name}: {problem.message}", "  ")]
    said += [words for name, sags in read.items() for one in left_out_words(name, sags) for words in wrapped(one, "  ")]
    return columns(heads, rows) + said


def _name(candidate: Candidate) -> str:
    """How a candidate stands to the choice; what is in is named so."""
    if candidate.fitted:
        return "keep what is in" if candidate.relation == "chosen" else "what is in"
    return "" if candidate.relation == "other" else candidate.relation


def _row(name: str, setup: SetupReport, read: dict[str, SagTold]) -> list[str]:
    figures = (setup.frequency, setup.end_force, setup.end_multiple, setup.landing_energy)
    built = (step_of(setup), setup.preload, *([setup.gap] if setup.gap else []))
    return [name, *(figure.text for figure in built), *sag_texts(setup, read), *(figure.text for figure in figures)]


def _barred(end: EndOk | EndNone) -> list[str]:
    lines = [f"  {c.rate.text} is {rate_words(c)}" for c in end.candidates if c.pair]
    for c in end.candidates:
        against = [one.words for one in (*c.vetoes, *c.short)] + [one.words for one in c.criteria if one.state == "outside"]
        lines += wrapped(f"{named(c)}: {'; '.join(against)}", "    ", "  ") if against else []
    return ["", *lines] if lines else []


def _braking(end: EndOk | EndNone) -> list[str]:
    if end.braking is None:
        return []
    left_out = f" {end.braking.left_out}" if end.braking.problem is None else ""
    return ["", *wrapped(f"{end.braking.words}{left_out}", "  ")]


def _motion(motion: MotionReport | None) -> list[str]:
    if motion is None:
        return []
    lines = ["", *wrapped(f"Linkage. {motion.words}", "  ")]
    rows = [[row.travel.text, row.stroke.text, row.leverage.text] for row in motion.rows]
    lines += columns(["wheel travel\nmm", "shock stroke\nmm", "leverage\nwheel / shock"], rows, left=0)
    for view in motion.views:
        points = "; ".join(f"{name} {number_text(x, 0)}, {number_text(z, 0)}" for name, (x, z) in view.points.items())
        length = f"Shock {figure_text(view.shock_length)} long {view.at}"
        lines += wrapped(f"{length}; from the swingarm pivot, forward and up, mm: {points}", "    ", "  ")
    return [*lines, *wrapped(motion.left_out, "  ")]


def _curve(curve: Curve | None) -> list[str]:
    """Seven points of the curve; a leg cannot pull, so a line of moving gas that falls below 0 near hanging is told as 0."""
    if curve is None:
        return []
    points = range(0, len(curve.stroke), max(len(curve.stroke) // 6, 1))
    lines = (curve.springs, curve.slow, curve.working, curve.fast)
    rows = [
        [f"{curve.stroke[i]:.0f}", *(number_text(max(line[i], 0.0), 2) for line in lines), number_text(curve.wheel_rate[i], 1)]
        for i in points
    ]
    heads = ["mm", "springs\nkN", "gas settled\nkN", "riding\nkN", "sudden\nkN", "wheel rate\nN/mm"]
    below = min(min(line) for line in lines) < 0
    note = ["  0.00 where moving gas would pull: a leg cannot."] if below else []
    return ["", f"  Force at the wheel, whole end, over {curve.axis}:", *columns(heads, rows, left=0), *note]


def _conditions(rows: tuple[Condition, ...]) -> list[str]:
    if not rows:
        return []
    shown = [row for row in rows if row.problem is None]
    figures = [[row.label, *(banded_text(f) for f in (row.free_sag, row.rider_sag, row.end_multiple))] for row in shown]
    lines = columns(["Conditions to check", "free sag\nmm", "rider sag\nmm", "full travel\nx rider load"], figures) if shown else []
    said = [(row.label, row.words if row.problem is None else row.problem) for row in rows]
    return ["", *lines, *(line for label, words in said if words for line in wrapped(f"{label}: {words}", "    ", "  "))]


def _based_on(report: Report) -> list[str]:
    rows = [
        [FIELDS[path].label, _value(path, found), found.origin or ""]
        for path, found in report.fields.items()
        if found.applies
        and (found.value is not None or found.pairs)
        and not path.split(".")[1].startswith(("tried", "built"))
        and FIELDS[path].part not in _TOLD_ELSEWHERE
    ]
    return ["Based on:", *columns(["", "", ""], rows, left=3)[1:]]


def _value(path: str, found: FieldState) -> str:
    if isinstance(found.value, str):
        return FIELDS[path].choices[found.value]
    if found.value is None:
        return f"{len(found.pairs)} pairs"
    unit = "" if found.unit in ("", "1") else found.unit if found.unit == "°" else f" {found.unit}"
    return f"{plain_number(found.value)}{unit} {found.plus_minus_text}".rstrip()
