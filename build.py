#!/usr/bin/env python3
"""Build, serve, test and measure Stanchion. Needs Python 3.11 or newer; everything else it fetches itself.

  python3 build.py serve          build the page and serve it here (--port N; --lan for phones on this network)
  python3 build.py test           build, then run every test; `test core browser` runs only the named groups, and what
                                  follows them goes to the runner: `test core -k gap`, `test page -t chart` (--list: the groups)
  python3 build.py dev            edit and see: the page from its sources, drawn anew at every change of web/ or calc/ (--port N)
  python3 build.py build          build the page into web/dist, ready for any static host
  python3 build.py bench          sizes against budgets, start-up times beside an untuned page
  python3 build.py size FILE      size a job on the command line (the same as: python -m calc FILE)
  python3 build.py mutants        change the core here and there: does a test notice? (--sample N; --all; --only calc/gas)
  python3 build.py lock           renew tests/requirements*.txt from their .in files, and the pins of the runtime

What it fetches is pinned, checked by hash and kept in .build/; a second run fetches nothing.
"""

from __future__ import annotations

import argparse
import contextlib
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

# Commands whose words are for another program.
WORDY = ("test", "size")


def arguments() -> argparse.Namespace:
    from web.toolchain import mutation

    shape = argparse.RawDescriptionHelpFormatter
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=shape, usage="python3 build.py COMMAND")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND")
    serve = commands.add_parser("serve")
    serve.add_argument("--port", type=int, default=8010)
    serve.add_argument("--lan", action="store_true", help="serve other machines on this network too")
    commands.add_parser("dev").add_argument("--port", type=int, default=8011)
    for name in WORDY:
        commands.add_parser(name, add_help=False).add_argument("words", nargs=argparse.REMAINDER)
    mutation.add_arguments(commands.add_parser("mutants"))
    for name in ("build", "bench", "lock"):
        commands.add_parser(name)
    chosen, rest = parser.parse_known_args()
    if chosen.command in WORDY:
        # argparse takes a leading option for its own.
        chosen.words = sys.argv[2:]
    elif rest:
        parser.error(f"unknown: {' '.join(rest)}")
    if not chosen.command:
        parser.print_help()
        raise SystemExit(0)
    return chosen


@contextlib.contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Let only one build work in this checkout at a time (where the system can lock a file)."""
    folder.mkdir(exist_ok=True)
    with (folder / "lock").open("w") as file:
        with contextlib.suppress(ImportError):
            import fcntl

            try:
                fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except OSError:
                print("- another build is at work here; waiting for it", flush=True)
                fcntl.flock(file, fcntl.LOCK_EX)
        yield


def make_parts() -> None:
    """All that vite makes the page of."""
    from web.toolchain import generated, node, notices, packs, sources

    node.prepare()
    sources.prepare()
    packs.prepare()
    generated.prepare()
    notices.prepare()


def build_page() -> None:
    from web.toolchain import site

    make_parts()
    site.build()


def perform(chosen: argparse.Namespace) -> None:
    """Everything that needs the environment; runs inside it."""
    from web.toolchain import places

    match chosen.command:
        case "lock":
            lock()
        case "mutants":
            from web.toolchain import mutation

            mutation.run_mutants(chosen)
        case "dev":
            from web.toolchain import dev

            with alone(places.BUILD):
                make_parts()
            dev.serve(chosen.port)
        case "test":
            from web.toolchain import checks

            groups, words = checks.split(chosen.words)
            with alone(places.BUILD):
                build_page()
            checks.run_checks(groups, words)
        case _:
            with alone(places.BUILD):
                build_page()
            after(chosen)


def after(chosen: argparse.Namespace) -> None:
    """What is done with a page that is built."""
    from web.toolchain import bench, budgets, serving

    match chosen.command:
        case "build":
            budgets.check()
        case "serve":
            serving.serve(chosen.port, chosen.lan)
        case "bench":
            # It judges the budgets itself, after it has listed every file.
            bench.run_bench()


def lock() -> None:
    from web.toolchain import environment, node, pins

    environment.lock()
    node.install()
    pins.lock()


def main() -> int:
    if sys.version_info < (3, 11):  # noqa: UP036  (the one place that says so to an older Python)
        print(f"Python 3.11 or newer is needed; this is {sys.version.split()[0]}", file=sys.stderr)
        return 1
    chosen = arguments()
    from web.toolchain import environment, places

    try:
        if Path(sys.prefix) == places.VENV:
            perform(chosen)
            return 0
        with alone(places.BUILD):
            environment.prepare()
        words = ["-m", "calc", *chosen.words] if chosen.command == "size" else [__file__, *sys.argv[1:]]
        return subprocess.call([places.VENV_PYTHON, *words])
    except places.Stop as problem:
        print(f"\nStopped: {problem}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    raise SystemExit(main())
