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
from calc.job.text import read_json
from calc.practice import USES

if TYPE_CHECKING:
    from calc.report.types import Report

EXAMPLES = f"""examples:
  python -m calc --starter enduro "104 kg" --short > job.json   a new job: your two answers and the eleven readings to take first
  python -m calc --starter enduro "104 kg" > job.json           the same with every field and a note on each
  python -m calc job.json                                       size it: what to fit, how sure, what to measure and to check
  python -m calc job.json --full                                and why, other springs, other conditions, cautions
  python -m calc --json < job.json                              all of it as JSON, from standard input
  python -m calc --demo                                         the worked demo job (invented)
  python -m calc --demo --job                                   the demo's job file, to copy from

kinds of riding: {", ".join(USES)}
Exit status: 0 sized, 1 an end has no answer (the letter says why), 2 the job could not be read, 3 a fault of this program.
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
    parser.add_argument("file", nargs="?", help="a job file (JSON); standard input when left out or -")
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
    parser.add_argument("--job", action="store_true", help="print the job itself instead of sizing it")
    return parser


def _run(options: argparse.Namespace) -> int:
    document = _document(options)
    if options.starter or options.job:
        _print_json(with_notes(document, options.short) if options.starter else document)
        return 0
    return _size(document, options)


def _document(options: argparse.Namespace) -> Any:
    if options.starter:
        return start(*options.starter)
    if options.demo:
        return jobs()[options.demo]
    return _read(options.file)


def _read(name: str | None) -> Any:
    if name in (None, "-") and sys.stdin.isatty():
        raise JobError("name a job file, or see --help")
    try:
        text = sys.stdin.read() if name in (None, "-") else Path(str(name)).read_text(encoding="utf-8")
    except (OSError, ValueError) as error:  # ValueError: a NUL in the name, or what is no text
        said = error.strerror if isinstance(error, OSError) else error
        raise JobError(f"cannot read {name or 'standard input'}: {said}") from error
    return read_json(text, name or "standard input")


def _size(document: Any, options: argparse.Namespace) -> int:
    from calc.report import report_of

    job = load(document, options.draws)
    report = report_of(job)
    _print_report(report, options)
    for problem in job.problems:
        print(f"calc: {problem.sentence()}", file=sys.stderr)
    if job.problems:
        return 2
    return 0 if report.ends.front.state == report.ends.rear.state == "ok" else 1


def _print_report(report: Report, options: argparse.Namespace) -> None:
    if options.json:
        from calc.report.types import values

        _print_json(report, default=values)
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
