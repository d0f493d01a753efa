"""The work at the bench as plain text for the command line: filling, checks with their keys and ticks, what is due."""

from __future__ import annotations

from calc.report.columns import wrapped
from calc.report.letter import title
from calc.report.types import Check, GapStepReport, Report


def bench_text(report: Report) -> str:
    """Putting it together and handing it over: all of it."""
    return "\n".join([title(report), "", *bench_lines(report)])


def bench_lines(report: Report) -> list[str]:
    """The gap while filling, what a step of it does, the checks and what is due."""
    lines = [*_filling(report), *_checks("On reassembly", report.reassembly), *_checks("First ride", report.first_ride)]
    service = report.service
    if service is None:
        return lines
    said = [one.words for one in service.ends]
    return [*lines, "Hours and service", *(line for words in (*said, service.note) for line in wrapped(words, "    ", "  ")), ""]


def _filling(report: Report) -> list[str]:
    filling, step = report.filling, _step(report)
    said = [] if filling is None else [filling.problem, *filling.words, filling.note]
    said = [words for words in (*said, "" if step is None else step.words) if words]
    return ["Gap while filling", *(line for words in said for line in wrapped(words, "    ", "  ")), ""] if said else []


def _step(report: Report) -> GapStepReport | None:
    """Of what was built, else of the answer."""
    front = report.ends.front
    if front.state == "refused":
        return None
    return front.gap_step if front.built is None else front.built.gap_step


def _checks(name: str, checks: tuple[Check, ...]) -> list[str]:
    made = sum(1 for one in checks if one.made)
    width = max(len(one.key) for one in checks)
    rows = [f"  [{'x' if one.made else ' '}] {one.key:{width}}  {one.words}{f', {one.made}' if one.made else ''}" for one in checks]
    return [f"{name}: {made} of {len(checks)} made", *rows, ""]
