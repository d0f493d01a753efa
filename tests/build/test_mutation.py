"""The mutation run leaves out what it says, draws fairly, picks the tests that reach a line, and sees what a change does."""

import json
import shutil
import subprocess
import sys
from textwrap import dedent

import pytest

from web.toolchain.mutation import choose, names, rule, score
from web.toolchain.mutation.choose import Mutant
from web.toolchain.mutation.select import Reach, merged, some
from web.toolchain.places import CORE_TESTS, ROOT

SOURCE = dedent('''
    """Words, 1 + 1."""
    LIMIT: int = 3
    ROW = _row(5)
    @lru_cache(maxsize=7)
    def law(a: float | None, *, b: int = 2) -> int | None:
        if a < 4:
            return Field("name", 6)
        return (b +
                8)
    if __name__ == "__main__":
        law(9)
''')


def numbers_left(path: str) -> set[str]:
    spans = rule.left_out(path, SOURCE)
    return {
        sign for n, line in enumerate(SOURCE.split("\n"), 1) for column, sign in enumerate(line)
        if sign in "23456789|*" and not any(rule.inside((n, column), span) for span in spans)
    }  # fmt: skip


def test_what_computes_is_mutated_and_shapes_are_not():
    assert numbers_left("calc/sag.py") == {"3", "5", "2", "4", "6", "8"}


def test_tables_of_data_are_left_out_and_the_functions_beside_them_are_not():
    assert numbers_left("calc/practice/rows.py") == {"2", "4", "8"}


def test_columns_are_counted_as_the_tree_counts_them():
    spans = rule.left_out("calc/sag.py", 'x: "é" = 1')
    assert rule.inside((1, 3), spans[0])
    assert not rule.inside((1, len('x: "é" = '.encode())), spans[0])


@pytest.mark.parametrize(("line", "lines"), [(3, [3]), (6, [6]), (7, [7]), (8, [8]), (9, [9, 10]), (10, [9, 10])])
def test_a_line_belongs_to_its_statement_or_to_the_head_of_it(line, lines):
    assert list(next(one.lines for one in names.statements("calc/sag.py", SOURCE) if line in one.lines)) == lines


def test_a_sample_is_each_modules_share_and_the_same_for_the_same_seed():
    by_module = [[Mutant(name, "operator", i, 1, 0) for i in range(many)] for name, many in (("a", 300), ("b", 90), ("c", 10))]
    drawn = choose.sample(by_module, 40, 5)
    assert len(drawn) == len(set(drawn)) == 40
    assert [sum(one.path == name for one in drawn) for name in "abc"] == [30, 9, 1]
    assert drawn == choose.sample(by_module, 40, 5)
    assert drawn != choose.sample(by_module, 40, 6)
    assert sorted(choose.sample(by_module, 9999, 5), key=str) == sorted([one for some in by_module for one in some], key=str)


def test_a_module_or_a_folder_can_be_asked_for_alone():
    assert choose.modules(["calc/array.py"]) == choose.modules(["calc/array"]) == ["calc/array.py"]
    assert set(choose.modules(["calc/gas"])) == {path.relative_to(ROOT).as_posix() for path in (ROOT / "calc/gas").glob("*.py")}
    assert not choose.modules(["calc/ga"])


@pytest.fixture
def small(tmp_path, monkeypatch) -> Reach:
    """A core of two modules: a table, a second table made of it, and who reads them."""
    (tmp_path / "calc").mkdir()
    (tmp_path / "tests" / "core").mkdir(parents=True)
    (tmp_path / "calc" / "m.py").write_text("TABLE = [\n    1]\nOTHER = 2\ndef law():\n    return 3\n")
    (tmp_path / "calc" / "n.py").write_text("from calc.m import TABLE\nTWICE = TABLE * 2\ndef read():\n    return TWICE\n")
    (tmp_path / "tests" / "core" / "test_a.py").write_text("OTHER\n")
    monkeypatch.setattr(names, "ROOT", tmp_path)
    monkeypatch.setattr(names, "CORE_TESTS", [tmp_path / "tests" / "core"])
    for cached in (names.sources, names.statements, names.mentions):
        cached.cache_clear()
    a, b, c = (f"tests/core/test_{name}.py" for name in "abc")
    yield Reach(
        {f"{a}::slow": 3.0, f"{a}::quick": 1.0, f"{b}::two": 2.0, f"{b}::three": 1.0, f"{c}::words": 0.1},
        {"calc/m.py": {"1": ["import"], "3": ["import"], "4": ["import"], "5": [f"{a}::slow", f"{a}::quick", b]},
         "calc/n.py": {"2": ["import"], "3": ["import"], "4": [f"{b}::two"]}},
    )  # fmt: skip
    for cached in (names.sources, names.statements, names.mentions):
        cached.cache_clear()


@pytest.mark.parametrize(
    ("line", "tests"),
    [
        (5, ["a.py::quick", "a.py::slow", "b.py::three", "b.py::two"]),  # quick ones first, then what collecting a file runs
        (2, ["b.py::two"]),  # a table's second line, read through a table made of it
        (3, ["a.py::quick", "a.py::slow"]),  # named in a file of tests alone
        (4, ["c.py::words", "a.py::quick", "b.py::three", "b.py::two", "a.py::slow"]),  # named nowhere: everything
    ],
)
def test_the_tests_that_reach_a_line(small, line, tests):
    assert list(small.tests("calc/m.py", line)) == [f"tests/core/test_{test}" for test in tests]


def test_a_slow_test_is_left_out_where_quick_ones_reach(small):
    small.seconds["tests/core/test_a.py::slow"] = 99.0
    assert "tests/core/test_a.py::slow" in small.tests("calc/m.py", 5)
    small.seconds.update({f"tests/core/test_b.py::{i}": 1.0 for i in range(5)})
    assert "tests/core/test_a.py::slow" not in small.tests("calc/m.py", 5)
    assert "tests/core/test_a.py::slow" in small.tests("calc/m.py", 5, in_full=True)


def test_a_record_is_renewed_by_files_of_tests():
    lines = {"1": ["import"], "2": ["a.py::x", "b.py::y"], "9": ["b.py"]}
    held = {"seconds": {"a.py::x": 1.0, "b.py::y": 2.0}, "lines": {"m.py": lines}}
    fresh = {"seconds": {"b.py::z": 3.0}, "lines": {"m.py": {"1": ["import"], "2": ["b.py::z"]}}}
    assert merged(held, fresh, {"a.py"}) == {
        "seconds": {"a.py::x": 1.0, "b.py::z": 3.0}, "lines": {"m.py": {"1": ["import"], "2": ["a.py::x", "b.py::z"]}},
    }  # fmt: skip


def test_of_many_cases_some_are_run_and_of_few_all():
    many = [f"t.py::many[{i}]" for i in range(100)]
    kept = some([*many, "t.py::one", "t.py::two[a]", "t.py::two[b]"])
    assert kept[-3:] == ["t.py::one", "t.py::two[a]", "t.py::two[b]"]
    assert len(kept) == 3 + 3
    assert kept[:3] == [many[0], many[49], many[-1]]


TRIALS = """
import json, sys
from web.toolchain.mutation import trial
trial.warm()
trial.AT_LEAST, trial.TIMES = 8, 0
path = trial.ROOT / "calc" / "array.py"
text, ends, test = path.read_text(), [], sys.argv[1]
changes = ["", "def find_root(*a, **b): raise ZeroDivisionError", "def find_root(*a, **b):\\n    while True: pass",
           "raise KeyError", "import os, signal\\nos.kill(os.getpid(), signal.SIGKILL)"]
tasks = [trial.Task("calc.array", path, text + "\\n" + change, {test: 1.0}) for change in changes]
trial.try_all(iter([(task, lambda end, i=i: ends.append((i, end))) for i, task in enumerate(tasks)]), 2)
print(json.dumps([end for _, end in sorted(ends)]))
"""


def test_trials_end_as_the_change_deserves():
    file = next(path for floor in CORE_TESTS for path in floor.rglob("test_roots.py")).relative_to(ROOT).as_posix()
    noticed = f"{file}::test_steep_flat_and_bent_functions"
    words = [sys.executable, "-c", TRIALS, noticed]
    done = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, timeout=110, check=True)
    assert json.loads(done.stdout.splitlines()[-1]) == ["passed", noticed, "late", "collecting", "died"]


def test_a_known_equivalent_stands_in_no_score_and_survivors_are_kept(tmp_path, monkeypatch):
    known = tmp_path / "equivalent.json"
    known.write_text(json.dumps([{"path": "calc/sag.py", "before": "a", "after": "b", "reason": "the same"}]))
    monkeypatch.setattr(score, "EQUIVALENT", known)
    kept = ROOT / ".build" / "mutation" / "of-a-test"
    kept.mkdir(parents=True, exist_ok=True)
    monkeypatch.setattr(score, "SURVIVORS", kept / "survivors.json")
    monkeypatch.setattr(score, "OUTCOMES", kept / "outcomes.json")
    mutant = Mutant("calc/sag.py", "NumberReplacer", 0, 1, 0)
    run = [score.Outcome(mutant, ("a", "b"), "passed"), score.Outcome(mutant, ("c", "d"), "passed"),
           score.Outcome(mutant, ("e", "f"), "late"), score.Outcome(mutant, ("g", "h"), "t::one")]  # fmt: skip
    told = score.report(run, "about")
    survivors = json.loads(score.SURVIVORS.read_text())["survivors"]
    assert score.kept() == (run, "about")
    shutil.rmtree(kept)
    assert [one["change"] for one in survivors] == [["c", "d"]]
    assert "66.7%" in told
    assert "not counted: 1" in told


def test_every_known_equivalent_still_stands_in_its_module():
    for path, before, after in score.equivalents():
        assert before in {line.strip() for line in (ROOT / path).read_text().split("\n")}, before
        assert before != after
