"""One change tried in a fork: the changed module instead of the file's, the chosen tests, and the first that fails."""

from __future__ import annotations

import contextlib
import importlib
import importlib.machinery
import importlib.util
import os
import resource
import signal
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from types import CodeType, ModuleType

import pytest

from ..places import ROOT
from .record import OPTIONS

# What the tests import beside the core, imported once before the forks.
WARM = ("hypothesis", "numpy", "pint", "scipy.integrate", "scipy.interpolate", "scipy.optimize", "scipy.stats", "CoolProp.CoolProp",
        "fluids", "uncertainties")  # fmt: skip
MEMORY = 6 * 2**30
EXAMPLES = 12
# Of the processor's time, so that a busy machine ends nothing: for importing and collecting, and for each test [s].
TO_COLLECT, AT_LEAST, TIMES = 120, 10, 5
FIRST = 5
# Imported before the fork, hypothesis cannot have its own asserts told in full: nobody reads them here. The time limit of the
# tests goes by the clock, which stands still for nobody: only a guard here.
UNTOLD = ["-W", "ignore::pytest.PytestAssertRewriteWarning", "-o", "timeout=3600"]
# What a trial can end in, beside the name of a test that failed. The last: out of memory, or a crash.
PASSED, COLLECTING, LATE, DIED = "passed", "collecting", "late", "died"


@dataclass(frozen=True)
class Task:
    """A module's name, its path and changed text, the tests in their order with the seconds that each took.

    `in_full`: with as many examples as the tests ask for.
    """

    module: str
    path: Path
    text: str
    tests: dict[str, float]
    in_full: bool = False


class Changed(importlib.machinery.SourceFileLoader):
    """A module's file with another text."""

    text = ""

    def get_code(self, fullname: str) -> CodeType:  # noqa: ARG002
        return compile(self.text, self.path, "exec", dont_inherit=True)


class Finder:
    """Finds the changed module before the file is found."""

    def __init__(self, module: str, path: Path, text: str) -> None:
        self.module, self.loader = module, Changed(module, str(path))
        self.loader.text = text

    def find_spec(self, name: str, path: object = None, target: ModuleType | None = None) -> importlib.machinery.ModuleSpec | None:  # noqa: ARG002
        return importlib.util.spec_from_file_location(name, self.loader.path, loader=self.loader) if name == self.module else None


class Chosen:
    """Leaves pytest the chosen tests in their order, gives each its time, and keeps the name of the first that fails."""

    def __init__(self, tests: dict[str, float], in_full: bool) -> None:
        self.tests, self.order, self.failed = tests, {test: i for i, test in enumerate(tests)}, ""
        self.examples = {} if in_full else {"max_examples": EXAMPLES}

    def pytest_sessionstart(self) -> None:
        from hypothesis import Phase, settings

        # Found is enough: a failing example is not made small. Fewer examples can only leave more changes unnoticed.
        settings.register_profile("mutants", settings.get_profile("core"), phases=(Phase.explicit, Phase.generate), **self.examples)
        settings.load_profile("mutants")

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = sorted((item for item in items if item.nodeid in self.order), key=lambda item: self.order[item.nodeid])

    def pytest_runtest_setup(self, item: pytest.Item) -> None:
        give(AT_LEAST + TIMES * self.tests[item.nodeid])

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.failed = self.failed or report.nodeid


def give(seconds: float) -> None:
    """From now on so much time; then the signal ends the process, wherever it is."""
    signal.setitimer(signal.ITIMER_PROF, seconds)


def warm() -> None:
    os.chdir(ROOT)
    for name in WARM:
        importlib.import_module(name)
    if any(name.partition(".")[0] == "calc" for name in sys.modules):
        raise RuntimeError("the core is imported already, so that no change would be seen")


def notice(task: Task) -> str:
    """In the fork: the test that fails, COLLECTING when the tests cannot even be collected, PASSED when all pass."""
    with contextlib.suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    sys.meta_path.insert(0, Finder(task.module, task.path, task.text))
    tests = list(task.tests.items())
    # Most changes are noticed at once: the other files need not be collected then.
    for some in (tests[:FIRST], tests[FIRST:]):
        if some:
            give(TO_COLLECT)
            chosen = Chosen(dict(some), task.in_full)
            files = list(dict.fromkeys(test.partition("::")[0] for test, _ in some))
            if pytest.main([*files, "-x", *OPTIONS, *UNTOLD], plugins=[chosen]) != pytest.ExitCode.OK:
                return chosen.failed or COLLECTING
    return PASSED


def child(task: Task, pipe: int) -> None:
    quiet = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(quiet, stream)
    try:
        answer = notice(task)
    except BaseException:
        answer = COLLECTING
    os.write(pipe, answer.encode()[:60000])
    os._exit(0)


@dataclass
class Running:
    task: Task
    tell: Callable[[str], None]
    pid: int
    pipe: int


def start(task: Task, tell: Callable[[str], None]) -> Running:
    reading, writing = os.pipe()
    pid = os.fork()
    if pid == 0:
        os.close(reading)
        child(task, writing)
    os.close(writing)
    return Running(task, tell, pid, reading)


def ended(one: Running) -> bool:
    """Whether a trial is over; if so, its outcome is told."""
    done, status = os.waitpid(one.pid, os.WNOHANG)
    if not done:
        return False
    late = os.WIFSIGNALED(status) and os.WTERMSIG(status) == signal.SIGPROF
    with os.fdopen(one.pipe, "rb") as pipe:
        answer = pipe.read().decode()
    one.tell(LATE if late else answer or DIED)
    return True


def try_all(tasks: Iterator[tuple[Task, Callable[[str], None]]], jobs: int) -> None:
    running: list[Running] = []
    left = True
    while left or running:
        while left and len(running) < jobs:
            following = next(tasks, None)
            left = following is not None
            if following:
                running.append(start(*following))
        running = [one for one in running if not ended(one)]
        time.sleep(0.02)
