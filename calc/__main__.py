"""Command line: size a job file and print a readable report, or JSON."""

from __future__ import annotations

import argparse
import json
import os
import sys
from pathlib import Path
from typing import Any

from calc.demo import jobs
from calc.job import DRAWS, MAX_DRAWS, MIN_DRAWS, Job, JobError, load
from calc.job.starter import start, with_notes
from calc.job.text import read_json
from calc.practice import USES
from calc.report import report_of
from calc.report.text import report_text
from calc.report.types import values

EXAMPLES = f"""examples:
  python -m calc --starter enduro "104 kg" > job.json   a new job, every field with a note on how to measure it
  python -m calc job.json                               size it and print a readable report
  python -m calc --json < job.json                      the same as JSON, from standard input
  python -m calc --demo                                 the worked demo job (invented)
  python -m calc --demo --job                           the demo's job file, to copy from

kinds of riding: {", ".join(USES)}
Exit status: 0 sized, 1 an end has no answer (the report says why), 2 the job could not be read.
"""


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; returns the exit status."""
    options = _parser().parse_args(arguments)
    try:
        document = _document(options)
        if options.starter or options.job:
            _print(with_notes(document) if options.starter else document)
            return 0
        return _size(load(document, options.draws), as_json=options.json)
    except JobError as error:
        print(f"calc: {error}", file=sys.stderr)
        return 2
    except BrokenPipeError:  # the reader closed early, as head does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m calc",
        description="Choose springs, preload and oil height for a motorcycle and its rider, and say what they will do.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("file", nargs="?", help="a job file (JSON); standard input when left out or -")
    parser.add_argument(
        "--json", action="store_true", help="print JSON: every quantity with value, unit, case, origin, plus_minus_95"
    )
    parser.add_argument(
        "--starter", nargs=2, metavar=("RIDING", "RIDER"), help='write a new job, for instance: --starter enduro "104 kg"'
    )
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
    except OSError as error:
        raise JobError(f"cannot read {name}: {error.strerror}") from error
    except UnicodeDecodeError as error:
        raise JobError(f"{name or 'standard input'} is not JSON: {error}") from error
    return read_json(text, name or "standard input")


def _size(job: Job, as_json: bool) -> int:
    report = report_of(job)
    if as_json:
        _print(report)
    else:
        print(report_text(report))
    for problem in job.problems:
        print(f"calc: {problem.sentence()}", file=sys.stderr)
    if job.problems:
        return 2
    return 0 if report.ends.front.state == report.ends.rear.state == "ok" else 1


def _print(data: Any) -> None:
    print(json.dumps(data, default=values, indent=2, ensure_ascii=False, allow_nan=False))


if __name__ == "__main__":
    sys.exit(main())
