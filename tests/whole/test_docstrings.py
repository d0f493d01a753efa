"""Docstrings: every public function says what it takes, in which unit, what it gives, from which formula and source."""

import ast
import doctest
import importlib
import inspect
import pkgutil
import re
from dataclasses import MISSING
from types import FunctionType

import pytest

import calc

PARTS = ("Parameters:", "Returns:", "Raises:", "Formula:", "Source:", "Example:")
NUMBERS = ("float", "int", "Number", "Array")
MODULES = sorted(m.name for m in pkgutil.walk_packages(calc.__path__, "calc.") if m.name != "calc.__main__")
# Modules that only put what others worked out into words and data: a summary says it all there.
TELLING = ("calc.report", "calc.job", "calc.practice", "calc.demo")


def public_functions() -> list[tuple[str, FunctionType]]:
    found = []
    for name in MODULES:
        module = importlib.import_module(name)
        for key, thing in vars(module).items():
            if isinstance(thing, FunctionType) and not key.startswith("_") and thing.__module__ == name:
                found.append((f"{name}.{key}", thing))
    return found


def public_classes() -> list[tuple[str, type]]:
    found = []
    for name in MODULES:
        module = importlib.import_module(name)
        found += [
            (f"{name}.{k}", t)
            for k, t in vars(module).items()
            if inspect.isclass(t) and t.__module__ == name and not k.startswith("_")
        ]
    return found


FUNCTIONS, CLASSES = public_functions(), public_classes()
LAWS = [(name, function) for name, function in FUNCTIONS if not name.startswith(TELLING)]


def numeric_parameters(function: FunctionType) -> list[str]:
    return [
        name for name, parameter in inspect.signature(function).parameters.items()
        if isinstance(parameter.annotation, str) and re.search(rf"\b({'|'.join(NUMBERS)})\b", parameter.annotation)
        and "Callable" not in parameter.annotation
    ]  # fmt: skip


@pytest.mark.parametrize(("name", "thing"), FUNCTIONS + CLASSES, ids=[n for n, _ in FUNCTIONS + CLASSES])
def test_every_public_name_has_a_summary(name, thing):
    summary = (inspect.getdoc(thing) or "").split("\n")[0]
    assert summary, name
    assert not summary.startswith(f"{thing.__name__}("), f"{name}: a docstring written by Python is no docstring"


@pytest.mark.parametrize(("name", "function"), LAWS, ids=[n for n, _ in LAWS])
def test_a_law_has_the_whole_template_in_order(name, function):
    text = inspect.getdoc(function) or ""
    places = [text.find(part) for part in PARTS]
    assert -1 not in places, f"{name}: {PARTS[places.index(-1)]} is missing"
    assert places == sorted(places), name


@pytest.mark.parametrize(("name", "function"), LAWS, ids=[n for n, _ in LAWS])
def test_a_number_that_goes_in_names_itself_and_a_unit(name, function):
    text = inspect.getdoc(function) or ""
    taken = text[text.find("Parameters:") : text.find("Returns:")]
    for parameter in numeric_parameters(function):
        assert re.search(rf"\b{parameter}\b", taken), f"{name}: {parameter} is not told"
    if numeric_parameters(function):
        assert re.search(r"\[[^\]]+\]", taken) or "as `" in taken, f"{name}: no unit in brackets"


def test_what_is_told_of_a_class_is_what_it_holds():
    """A parameter named at the start of a class's Parameters is a field of it; each field without a default is told."""
    told = 0
    for name, kind in CLASSES:
        text = inspect.getdoc(kind) or ""
        if "Parameters:" not in text or not hasattr(kind, "__dataclass_fields__"):
            continue
        for field, details in kind.__dataclass_fields__.items():
            if details.default is not MISSING:
                continue  # a default is its own explanation
            assert re.search(rf"\b{field}\b", text), f"{name}: {field} is not told"
            told += 1
    assert told > 40


@pytest.mark.parametrize("name", MODULES)
def test_examples_run(name):
    module = importlib.import_module(name)
    assert (module.__doc__ or "").strip(), name
    failed, _ = doctest.testmod(module)
    assert failed == 0


def test_there_are_examples():
    finder = doctest.DocTestFinder()
    assert sum(bool(t.examples) for n in MODULES for t in finder.find(importlib.import_module(n))) >= 30


def test_no_line_of_the_core_hides_a_name_behind_a_star():
    for name in MODULES:
        tree = ast.parse(inspect.getsource(importlib.import_module(name)))
        assert not [n for n in ast.walk(tree) if isinstance(n, ast.ImportFrom) and any(a.name == "*" for a in n.names)], name
