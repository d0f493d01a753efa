"""Command line: size a job file and print a letter, the whole report, or JSON.

What takes long to load (numpy, and all that works with it) is imported where it is first needed: a new job is written without.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calc.demo import jobs
from calc.job import DRAWS, MAX_DRAWS, MIN_DRAWS, JobError, load
from calc.job.starter import start, with_notes
from calc.job.text import LONGEST, decode, read_jobs, several
from calc.job.visit import next_visit
from calc.practice import USES

if TYPE_CHECKING:
    from calc.report.types import Report

EXAMPLES = f"""examples:
  python -m calc --starter enduro "104 kg" --short > job.json   a new job: your two answers and the eleven readings to take first
  python -m calc --starter enduro "104 kg" > job.json           the same with every field and a note on each
  python -m calc job.json                                       size it: what to fit, how sure, what to measure and to check
  python -m calc job.json --full                                and why, other springs, other conditions, cautions
  python -m calc job.json --check                               the sags found beside those expected, and what they correct
  python -m calc --json < job.json                              all of it as JSON, from standard input
  python -m calc --demo                                         the worked demo job (invented)
  python -m calc --demo --job                                   the demo's job file, to copy from
  python -m calc all.json --only 3                              the third job of a file that holds several
  python -m calc may.json --compare june.json                   what was entered and recommended differently at the next visit
  python -m calc may.json --next-visit 2026-06-20 > june.json   copy it as the bike's next visit: as built is now as found
  python -m calc --questions > mine.txt                         for a customer: the sheet of Check my bike, to fill in
  python -m calc mine.txt --my-bike                             does the rear spring suit, and how sure; --job prints it as a job
  python -m calc *.json --gather > all.json                     several jobs in one file, as the page hands them out

kinds of riding: {", ".join(USES)}
Exit status: 0 sized, checked or judged, 1 an end has no answer (the letter says why), 2 the job could not be read,
3 a fault of this program.
"""


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; returns the exit status. Whatever goes wrong ends in one line, never in a traceback."""
    options = _parser().parse_args(arguments)
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


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m calc",
        description="Choose springs, preload and oil height for a motorcycle and its rider, and say what they will do.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("files", nargs="*", metavar="file", help="a job file (JSON); standard input when left out or -")
    parser.add_argument("--check", action="store_true", help="only compare the sags found with those expected")
    parser.add_argument("--my-bike", action="store_true", help="judge a customer's five lengths: a filled-in sheet, or JSON")
    parser.add_argument("--questions", action="store_true", help="print the sheet that --my-bike reads, to fill in")
    parser.add_argument("--full", action="store_true", help="print the whole report, not just the letter")
    parser.add_argument("--json", action="store_true", help="print the whole report as JSON (the README shows what is in it)")
    parser.add_argument(
        "--starter", nargs=2, metavar=("RIDING", "RIDER"), help='write a new job, for instance: --starter enduro "104 kg"'
    )
    parser.add_argument("--short", action="store_true", help="with --starter: only the dozen fields to fill in first")
    parser.add_argument(
        "--demo", nargs="?", const="enduro", choices=sorted(jobs()), help="take a worked demo job instead of a file"
    )
    parser.add_argument(
        "--draws",
        type=int,
        default=DRAWS,
        help=f"draws of each reading behind a +/-, {MIN_DRAWS} to {MAX_DRAWS}, else {DRAWS}",
    )
    parser.add_argument("--only", type=int, metavar="N", help="of a file with several jobs, take this one")
    parser.add_argument("--compare", metavar="FILE", help="say what this later job has other than the file")
    parser.add_argument("--next-visit", metavar="DATE", help="print the job as that of the bike's next visit")
    parser.add_argument("--gather", action="store_true", help="print all jobs of the files as one file, instead of sizing")
    parser.add_argument("--job", action="store_true", help="print the job itself instead of sizing it")
    return parser


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
    if options.starter or options.job:
        _print_json(with_notes(document, options.short) if options.starter else document)
        return 0
    return _size(document, options)


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
    report = report_of(job)
    _print_report(report, options)
    for problem in job.problems:
        print(f"calc: {problem.sentence()}", file=sys.stderr)
    if job.problems:
        return 2
    if options.check:
        return 0 if report.sags and not any(end.refused for end in report.sags.ends) else 1
    return 0 if report.ends.front.state == report.ends.rear.state == "ok" else 1


def _print_report(report: Report, options: argparse.Namespace) -> None:
    if options.json:
        from calc.report.types import values

        _print_json(report, default=values)
    elif options.check:
        from calc.report.letter import sags_text

        print(sags_text(report))
    elif options.full:
        from calc.report.text import report_text

        print(report_text(report))
    else:
        from calc.report.letter import letter

        print(letter(report))


def _print_json(data: Any, **how: Any) -> None:
    text = json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False, **how)
    print(text.encode("utf-8", "backslashreplace").decode())  # half of a character, quoted from a refused entry, as JSON writes it


if __name__ == "__main__":
    sys.exit(main())
