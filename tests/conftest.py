"""The core's tests draw the same examples everywhere, so that a failure at the desk is the same failure in the browser."""

import sys

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "core", derandomize=True, deadline=None, database=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("core")


IN_PYODIDE = sys.platform == "emscripten"  # the time limit's plugin needs threads, which Pyodide has not


def pytest_configure(config: pytest.Config) -> None:
    if IN_PYODIDE:
        config.addinivalue_line("markers", "timeout(seconds): left to the process that runs Pyodide")


def pytest_addoption(parser: pytest.Parser) -> None:
    if IN_PYODIDE:
        parser.addini("timeout", "left to the process that runs Pyodide")
    parser.addoption("--calibrate", action="store_true", help="calibrate every kind of riding anew, half a minute")
