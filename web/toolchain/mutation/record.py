"""Which test runs which line of the core, and how much of the processor's time [s] each test takes.

A process of its own: python -m web.toolchain.mutation.record FILE TESTS...
"""

from __future__ import annotations

import functools
import gc
import importlib
import json
import os
import pkgutil
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from .names import IMPORTING

if TYPE_CHECKING:
    from coverage import Coverage

OPTIONS = ["-q", "-p", "no:cacheprovider", "-p", "no:xdist"]


class Recorder:
    """Tells coverage who is running, and forgets what core and tests remember before each, so that none rides on another's."""

    def __init__(self, coverage: Coverage) -> None:
        self.coverage, self.now = coverage, ""
        self.caches: list[functools._lru_cache_wrapper[object]] = []
        self.seconds: dict[str, float] = {}

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[None]:
        self.coverage.switch_context(collector.nodeid.partition("::")[0] or IMPORTING)
        return (yield)

    def pytest_collection_finish(self) -> None:
        self.caches = [
            thing
            for thing in gc.get_objects()
            if isinstance(thing, functools._lru_cache_wrapper) and str(thing.__module__).partition(".")[0] in ("calc", "tests")
        ]

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        for cache in self.caches:
            cache.cache_clear()
        self.now = item.nodeid
        self.coverage.switch_context(self.now)
        started = time.process_time()
        try:
            return (yield)
        finally:
            self.seconds[item.nodeid] = time.process_time() - started

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[object]) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        # What tests share is credited to all of the file.
        self.coverage.switch_context(self.now.partition("::")[0])
        try:
            return (yield)
        finally:
            self.coverage.switch_context(self.now)


def main(out: Path, tests: list[str]) -> int:
    os.environ["COVERAGE_CORE"] = "ctrace"  # the newer cores cannot tell tests apart
    from coverage import Coverage

    coverage = Coverage(data_file=None, config_file=False, source=["calc"])
    coverage.start()
    coverage.switch_context(IMPORTING)
    calc = importlib.import_module("calc")
    for module in pkgutil.walk_packages(calc.__path__, "calc."):
        importlib.import_module(module.name)
    recorder = Recorder(coverage)
    code = pytest.main([*tests, *OPTIONS], plugins=[recorder])
    coverage.stop()
    if code:
        return int(code)
    data, root = coverage.get_data(), Path.cwd()
    lines = {Path(file).relative_to(root).as_posix(): data.contexts_by_lineno(file) for file in data.measured_files()}
    out.write_text(json.dumps({"seconds": recorder.seconds, "lines": lines}))
    return 0


if __name__ == "__main__":
    raise SystemExit(main(Path(sys.argv[1]), sys.argv[2:]))
