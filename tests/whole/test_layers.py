"""Which part of the core may know which: the contracts of pyproject.toml, and pint in one module only."""

import subprocess
import sys
from pathlib import Path

import grimp
from importlinter.cli import lint_imports

ROOT = Path(__file__).parents[2]


def test_the_contracts_hold(monkeypatch, capsys):
    monkeypatch.chdir(ROOT)
    status = lint_imports(no_cache=True)
    assert status == 0, capsys.readouterr().out


def test_pint_stands_at_the_edge_only():
    graph = grimp.build_graph("calc", include_external_packages=True, cache_dir=None)
    assert graph.find_modules_that_directly_import("pint") == {"calc.quantities.entry"}


def test_the_core_needs_numpy_and_pint_and_nothing_else():
    graph = grimp.build_graph("calc", include_external_packages=True, cache_dir=None)
    for part in {"calc.practice.calibrate", *graph.find_descendants("calc.practice.calibrate")}:  # a desk's script: it needs scipy
        graph.remove_module(part)
    outside = {
        module for module in graph.modules if not module.startswith("calc") and graph.find_modules_that_directly_import(module)
    }
    assert outside - set(sys.stdlib_module_names) == {"numpy", "pint"}


def test_a_job_is_sized_without_loading_pint():
    code = "import sys, calc.boundary as b, calc.demo as d, json\n"
    code += "b.answer(json.dumps({'kind': 'size', 'job': d.jobs()['enduro']}))\nassert 'pint' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT)


def test_nothing_leans_on_what_calibrates_the_tables():
    """It is left out of what the page gets."""
    graph = grimp.build_graph("calc", cache_dir=None)
    script = {"calc.practice.calibrate", *graph.find_descendants("calc.practice.calibrate")}
    importers = set().union(*(graph.find_modules_that_directly_import(part) for part in script))
    assert importers <= script
