"""The report as plain text for the command line."""

from __future__ import annotations

import textwrap

from calc.job.fields import FIELDS
from calc.practice import Axle
from calc.report.quantity import banded_text, figure_text, number_text
from calc.report.types import EndNone, EndOk, EndReport, Report, SetupReport
from calc.report.words import named, rate_words, step_of

WIDTH = 100
_END_TITLES = {"front": "Front", "rear": "Rear"}


def report_text(report: Report) -> str:
    """The report in the order of the job: answer, why, others, as found, curve, readings, cautions."""
    header = report.header
    title = header.name or "A job with no name"
    lines = [f"{title}{' (demo, invented)' if header.invented else ''}", f"{report.use_label}, sags {report.posture}", ""]
    lines += [*_end_lines("front", report.ends.front), "", *_end_lines("rear", report.ends.rear), ""]
    if report.attitude:
        lines += [*_wrapped(report.attitude.words), ""]
    for note in report.notes:
        lines += [*_wrapped(f"Note: {note}"), ""]
    lines += _rests_on(report)
    if report.measure_first:
        lines += ["", "Measure first:", *(f"  {m.words} {m.how}" for m in report.measure_first)]
    lines += ["", "Cautions:"]
    for caution in report.cautions:
        lines += _wrapped(f"{caution.title} {caution.words}", "  ")
    lines += ["", *_wrapped(report.left_out)]
    return "\n".join(lines)


def _end_lines(axle: Axle, end: EndReport) -> list[str]:
    lines = [_END_TITLES[axle]]
    for problem in end.problems:
        lines += _wrapped(f"{problem.message} {problem.limit} {problem.way_out}".replace("  ", " ").strip(), "  ")
    if end.state == "refused":
        return lines
    if end.state == "ok":
        lines += [
            f"  {end.answer}",
            *(line for why in end.why for line in _wrapped(why, "  ")),
            f"  {end.seat.words}",
            *([f"  {end.holds_for.words}"] if end.holds_for else []),
        ]
    lines += ["", *_table(axle, end), ""]
    lines += [f"  {c.rate.text} is {rate_words(c)}" for c in end.candidates if c.pair]
    lines += [f"  {named(c)}: {v.words}" for c in end.candidates for v in c.vetoes]
    return [*lines, *_curve(end), *_beside(end), *_elsewhere(end)]


def _table(axle: Axle, end: EndOk | EndNone) -> list[str]:
    gap = "  gap mm" if axle == "front" else ""
    unit = "bar" if end.standard.pressure else "N/mm"
    head = f"  {'':20}{unit:>5}  preload mm{gap}  free sag mm  rider sag mm    Hz  axle kN  end/load  landing J"
    rows = [
        _row(c.relation if c.relation != "other" else ("as fitted" if c.fitted else ""), c) for c in end.candidates
    ]
    for name, shown in (("as found", end.as_found), ("tried", end.tried), ("built", end.built)):
        if shown is not None and shown.setup is not None:
            rows.append(_row(name, shown.setup))
        elif shown is not None and shown.problem is not None:
            rows.append(f"  {name}: {shown.problem.message}")
    rows.append(_row("standard, its rider", end.standard))
    return [head, *rows]


def _row(name: str, c: SetupReport) -> str:
    gap = f"{c.gap.text:>8}" if c.gap else ""
    return (
        f"  {name:20}{step_of(c).text:>5}{c.preload.text:>12}{gap}{c.free_sag.text:>13}{c.rider_sag.text:>14}"
        f"{c.frequency.text:>6}{c.end_force.text:>8}{c.end_multiple.text:>10}{c.landing_energy.text:>11}"
    )


def _beside(end: EndOk | EndNone) -> list[str]:
    """Brake dive at the front; the shock's motion at the rear."""
    lines: list[str] = []
    if end.braking:
        left_out = f" {end.braking.left_out}" if end.braking.problem is None else ""
        lines += ["", *_wrapped(f"{end.braking.words}{left_out}", "  ")]
    motion = end.motion
    if motion:
        lines += ["", *_wrapped(f"Shock's motion. {motion.words}", "  "), "      mm  shock stroke mm  leverage wheel / shock"]
        lines += [f"  {r.travel.text:>6}{r.stroke.text:>17}{r.leverage.text:>24}" for r in motion.rows]
        lines += [
            f"  Shock {figure_text(view.shock_length)} long {view.at}; from the swingarm pivot, forward and up, mm: "
            + "; ".join(f"{name} {number_text(x, 0)}, {number_text(z, 0)}" for name, (x, z) in view.points.items())
            for view in motion.views
        ]
        lines += _wrapped(motion.left_out, "  ")
    return lines


def _curve(end: EndOk | EndNone) -> list[str]:
    curve = end.curve
    if curve is None:
        return []
    lines = ["", f"  {curve.axis}, kN at the wheel, whole end", "      mm  springs   slow  working   fast   wheel rate N/mm"]
    for i in range(0, len(curve.stroke), max(len(curve.stroke) // 6, 1)):
        springs, slow, working, fast = curve.springs[i], curve.slow[i], curve.working[i], curve.fast[i]
        lines.append(f"  {curve.stroke[i]:6.0f}  {springs:7.2f}{slow:7.2f}{working:9.2f}{fast:7.2f}{curve.wheel_rate[i]:12.1f}")
    return lines


def _elsewhere(end: EndOk | EndNone) -> list[str]:
    if not end.elsewhere:
        return []
    lines = ["", f"  {'as built, elsewhere':34}free sag mm  rider sag mm    end/load"]
    for row in end.elsewhere:
        if row.problem is not None:
            lines += _wrapped(f"{row.label}: {row.problem}", "  ")
            continue
        figures = f"{banded_text(row.free_sag):>11}{banded_text(row.rider_sag):>14}{banded_text(row.end_multiple):>12}"
        lines.append(f"  {row.label:34}{figures}")
        lines += _wrapped(row.words, "    ")
    return lines


def _rests_on(report: Report) -> list[str]:
    lines = ["Rests on:"]
    for path, found in report.fields.items():
        field = FIELDS[path]
        beside = path.split(".")[1].startswith(("tried", "built"))
        if beside or not found.applies or (found.value is None and not found.pairs):
            continue
        if isinstance(found.value, str):
            value = field.choices[found.value]
        elif found.pairs:
            value = f"{len(found.pairs)} pairs"
        else:
            value = f"{found.value:g} {found.unit}".strip()
            value += f" +/-{found.plus_minus_95:.2g}" if found.plus_minus_95 else ""
        lines.append(f"  {field.label:42}{value:24}{found.origin}")
    return lines


def _wrapped(text: str, indent: str = "") -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent)
