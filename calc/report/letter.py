"""The report as a short letter: what to fit at both ends, how sure that is, what to measure next, what to check after."""

from __future__ import annotations

from calc.job import Problem
from calc.report.columns import wrapped
from calc.report.message import checkable
from calc.report.quantity import banded_text
from calc.report.types import EndOk, EndReport, Report, RideOfEnd

_SETUPS = {"built": "as built", "found": "as it came in"}
MARGIN = 8  # columns for the word that stands before a paragraph


def letter(report: Report) -> str:
    """The report in about ten lines.

    Parameters: report.
    Returns: title; front and rear, each its answer and how sure it is; next; check; what else must be known; where the rest is.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.report import report
        >>> letter(report(jobs()["enduro"], with_bands=False)).splitlines()[1].split(",")[0]
        'Front   Fit 4.6 N/mm'
    """
    lines = [title(report)]
    lines += _paragraphs("Front", _end(report.ends.front))
    lines += _paragraphs("Rear", _end(report.ends.rear))
    lines += _paragraphs("Sags", _sags_found(report))
    lines += _paragraphs("Ride", ride_lines(report))
    lines += _paragraphs("Push", [] if report.push is None else [report.push.verdict, *report.push.words[:1]])
    lines += _paragraphs("Oil", [] if report.oil is None else [report.oil.problem or report.oil.words[0]])
    lines += _paragraphs("Due", overdue(report))
    lines += _paragraphs("Next", _next(report))
    lines += _paragraphs("Check", _check(report))
    lines += _paragraphs("Note", list(report.notes))
    return "\n".join([*lines, "Why, other springs, hot and high, cautions: --full. The maker's manual takes precedence."])


def sags_text(report: Report) -> str:
    """The check alone: sags found beside those expected, a push, a ride, and what they correct."""
    if report.sags is None and not report.ride and report.push is None:
        return (
            "No sags, ride or push are entered. Read the sags alone and aboard, each twice: front.alone_sag, rear.aboard_sag "
            "and so on."
        )
    lines = [title(report)]
    if report.sags is not None:
        lines += [f"Sags found, {_SETUPS[report.sags.of]}", ""] if report.sags.ends else []
        for end in report.sags.ends:
            lines += _paragraphs(end.axle.capitalize(), list(end.words))
        lines += _paragraphs("So", [*(one.words for one in report.sags.corrections), *report.sags.words])
    lines += _paragraphs("Push", _pushed(report))
    return "\n".join([*lines, *_paragraphs("Ride", ride_lines(report))])


def _pushed(report: Report) -> list[str]:
    """What a push says, and what it does to the answer, but for readings that stand above already."""
    if report.push is None:
        return []
    above = {one.words for one in report.sags.corrections} if report.sags else set()
    return [report.push.verdict, *(words for words in report.push.corrects if words not in above)]


def ride_lines(report: Report) -> list[str]:
    """What the ride said of each end, and what to change first."""
    return [f"{end.axle.capitalize()}, {_SETUPS[end.of]}: {' '.join(_said(end))}" for end in report.ride]


def overdue(report: Report) -> list[str]:
    """The services that are overdue; the others are told where the work at the bench is."""
    ends = () if report.service is None else report.service.ends
    return [one.words for one in ends if one.left is not None and one.left.value < 0]


def _said(end: RideOfEnd) -> list[str]:
    if end.change is None:
        return [*end.missed, *end.held, end.problem]
    target = end.change.target
    return [*end.missed, *end.held, end.change.words, *([target.words] if target else [])]


def _sags_found(report: Report) -> list[str]:
    """Whether the sags are as expected, and the two readings that they tell most of."""
    if report.sags is None:
        return []
    said = [
        f"{end.axle.capitalize()}: {words[0].lower()}{words[1:]}"
        for end in report.sags.ends
        for words in end.words[: len(end.rows) or 1]
    ]
    return [*said, *(one.words for one in report.sags.corrections[:2])]


def title(report: Report) -> str:
    """Which job it is."""
    name = report.header.name or "A job with no name"
    use = f": {report.use_label}, sags {report.posture}" if report.use_label else ""
    return f"{name}{' (demo, invented)' if report.header.invented else ''}{use}"


def problem_text(problem: Problem) -> str:
    """A problem in one paragraph."""
    return " ".join(part for part in (problem.message, problem.limit, problem.way_out) if part)


def _paragraphs(word: str, sentences: list[str]) -> list[str]:
    lines, indent = [], " " * MARGIN
    for number, sentence in enumerate(sentences):
        lines += wrapped(sentence, indent, indent if number else f"{word:{MARGIN}}")
    return lines


def _end(end: EndReport) -> list[str]:
    if end.state != "ok":
        return [problem_text(problem) for problem in end.problems]
    return [end.answer, *([end.also] if end.also else []), *([end.sure.words] if end.sure else [])]


def _next(report: Report) -> list[str]:
    """The rider's weight before all; else the reading that narrows most at each end, none twice; where none is known to, what a
    bench takes first.
    """
    if report.measure_first and report.measure_first[0].path == "rider.mass":
        return [report.measure_first[0].words]
    readings: dict[str, str] = {}
    for end in (report.ends.front, report.ends.rear):
        fresh = [] if end.state == "refused" else [one for one in end.measure_next if one.path not in readings]
        readings |= {one.path: one.words for one in fresh[:1]}
    return list(readings.values()) or [first.words for first in report.measure_first[:2]]


def _check(report: Report) -> list[str]:
    """The sags that a tape must find once it is built; none where what to build is not settled, or they are not known so well."""
    ends = {"front": report.ends.front, "rear": report.ends.rear}
    told = {axle: end for axle, end in ends.items() if end.state == "ok" and end.verdict != "open" and not end.doubt}
    return [_sags(axle, end) for axle, end in told.items() if checkable(end.chosen)]


def _sags(axle: str, end: EndOk) -> str:
    free, rider = banded_text(end.chosen.free_sag), banded_text(end.chosen.rider_sag)
    return f"Built so, the {axle} sags {free} mm by itself and {rider} mm with the rider."
