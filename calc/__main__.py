"""Command line: size a job file and print a letter, the whole report, or JSON.

What takes long to load (numpy, and all that works with it) is imported where it is first needed: a new job is written without.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calc.arguments import parser
from calc.demo import jobs
from calc.job import JobError, load
from calc.job.document import parse_header, upgraded
from calc.job.starter import start, with_notes
from calc.job.text import LONGEST, decode, read_jobs, several
from calc.job.visit import next_visit
from calc.job.work import ticked

if TYPE_CHECKING:
    from calc.job import Job
    from calc.report.types import Report


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; returns the exit status. Whatever goes wrong ends in one line, never in a traceback."""
    options = parser().parse_args(arguments)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # not every terminal can show every sign
            stream.reconfigure(errors="backslashreplace")
    try:
        return _run(options)
    except JobError as error:
        return _ended(str(error), 2)
    except BrokenPipeError:  # the reader closed early, as head does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        return _ended("stopped", 130)
    except Exception as error:
        return _ended(f"a fault of this program, not of the job ({type(error).__name__}: {error}). Please report it.", 3)


def _ended(sentence: str, status: int) -> int:
    print(f"calc: {' '.join(sentence.split())}", file=sys.stderr)
    return status


def _run(options: argparse.Namespace) -> int:
    if options.gather:
        _print_json(several([document for file in options.files or [None] for document in _jobs_of(file)]))
        return 0
    if options.questions:
        from calc.job.questions import sheet

        print(sheet())
        return 0
    if options.my_bike:
        return _my_bike(options)
    document = _document(options)
    if options.compare:
        return _compare(document, _one(_jobs_of(options.compare), options.compare, None), options.json)
    if options.next_visit is not None:
        _print_json(next_visit(document, options.next_visit))
        return 0
    if options.tick is not None:
        _print_json(_ticked(document, *options.tick))
        return 0
    if options.starter or options.job:
        _print_json(with_notes(document, options.short) if options.starter else document)
        return 0
    return _size(document, options)


def _ticked(document: Any, keys: str, on: str) -> Any:
    parse_header(document)
    try:
        return ticked(upgraded(document), keys.split(","), on)
    except ValueError as error:
        raise JobError(str(error)) from error


def _document(options: argparse.Namespace) -> Any:
    if options.starter:
        return start(*options.starter)
    if options.demo:
        return jobs()[options.demo]
    if len(options.files) > 1:
        raise JobError("one file at a time is sized; --gather puts several into one")
    file = options.files[0] if options.files else None
    return _one(_jobs_of(file), file or "standard input", options.only)


def _jobs_of(name: str | None) -> list[dict[str, Any]]:
    """The jobs that a file holds, one or several; those that are none are named."""
    text, source = _text_of(name)
    found, refused = read_jobs(text, source)
    for sentence in refused:
        print(f"calc: {sentence}", file=sys.stderr)
    return found


def _text_of(name: str | None) -> tuple[str, str]:
    """What a file or standard input holds, and what it is called."""
    source = "standard input" if name in (None, "-") else str(name)
    if source == "standard input" and sys.stdin.isatty():
        raise JobError("name a job file, or see --help")
    try:
        data = _bytes(name)
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name
        said = error.strerror if isinstance(error, OSError) else error
        raise JobError(f"cannot read {source}: {said}") from error
    return decode(data, source), source


def _bytes(name: str | None) -> bytes:
    if name not in (None, "-"):
        with Path(str(name)).open("rb") as file:
            return file.read(LONGEST + 1)
    return sys.stdin.buffer.read(LONGEST + 1)


def _one(found: list[dict[str, Any]], source: str, number: int | None) -> dict[str, Any]:
    if number is None and len(found) == 1:
        return found[0]
    if number is not None and 1 <= number <= len(found):
        return found[number - 1]
    names = "; ".join(f"{n} {_name(job)}" for n, job in enumerate(found[:20], 1))
    raise JobError(f"{source} holds {len(found)} jobs: {names}. Name one: --only 1")


def _name(job: dict[str, Any]) -> str:
    return ", ".join(part for part in (job["name"] or "no name", job["owner"], job["date"]) if part)


def _my_bike(options: argparse.Namespace) -> int:
    """A customer's readings judged, or made into the job that a tuner opens."""
    from calc.job.customer import job_of
    from calc.job.filled import read_sheet

    if len(options.files) > 1:
        raise JobError("one customer's sheet at a time")
    said = read_sheet(_text_of(options.files[0] if options.files else None)[0])
    if options.job:
        _print_json(job_of(said))
        return 0
    from calc.report.customer import my_bike, verdict_text
    from calc.report.types import values

    found = my_bike(said)
    if options.json:
        _print_json(found, default=values)
    else:
        print(verdict_text(found), file=sys.stdout if found.verdict else sys.stderr)
    return 0 if found.verdict else 2


def _compare(before: Any, after: Any, as_json: bool) -> int:
    from calc.report.compare import comparison, comparison_text
    from calc.report.types import values

    one, other = load(before), load(after)
    if as_json:
        _print_json(comparison(one, other), default=values)
    else:
        print(comparison_text(one, other))
    return 0


def _size(document: Any, options: argparse.Namespace) -> int:
    from calc.report import report_of

    job = load(document, options.draws)
    if options.states:
        answered = _states(job, options.json)
    else:
        report = report_of(job)
        _print_report(report, options)
        answered = _answered(report, options)
    for problem in job.problems:
        print(f"calc: {problem.sentence()}", file=sys.stderr)
    if job.problems:
        return 2
    return 0 if answered else 1


def _answered(report: Report, options: argparse.Namespace) -> bool:
    """Whether what was asked for is there."""
    if options.offer:
        return report.offer is not None
    if options.check:
        return _checked(report)
    return report.ends.front.state == report.ends.rear.state == "ok"


def _states(job: Job, as_json: bool) -> bool:
    """The fork in each state of its cartridge, as rows and along its stroke."""
    from calc.report.states_text import states_text
    from calc.report.types import values

    text, looked = states_text(job)
    if as_json:
        _print_json(looked, default=values)
    else:
        print(text)
    return bool(looked and looked.states)


# Which text each option prints of a report: its module and its function.
_TEXTS = {
    "check": ("letter", "sags_text"),
    "assemble": ("bench_text", "bench_text"),
    "message": ("message", "message_text"),
    "offer": ("offer_text", "offer_text"),
    "full": ("text", "report_text"),
}


def _checked(report: Report) -> bool:
    """Whether something that was found is there, and all of it says something."""
    ends = report.sags.ends if report.sags else ()
    silent = [*(end.refused for end in ends), *(end.problem for end in report.ride), report.push.refused if report.push else ""]
    return bool(report.sags or report.ride or report.push) and not any(silent)


def _print_report(report: Report, options: argparse.Namespace) -> None:
    if options.json:
        from calc.report.types import values

        _print_json(report, default=values)
        return
    module, function = next((where for option, where in _TEXTS.items() if getattr(options, option)), ("letter", "letter"))
    print(getattr(import_module(f"calc.report.{module}"), function)(report))


def _print_json(data: Any, **how: Any) -> None:
    text = json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False, **how)
    print(text.encode("utf-8", "backslashreplace").decode())  # half of a character, quoted from a refused entry, as JSON writes it


if __name__ == "__main__":
    sys.exit(main())
