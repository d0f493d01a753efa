"""The command line as a process of its own, and what the README says of it."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from calc.demo import jobs
from tests.support.documents import demo
from tests.support.plain import report

ROOT = Path(__file__).parents[2]


def test_a_starter_is_written_without_numpy_or_pint_in_half_a_second():
    """Of the processor's time, the start of Python with it: what a slow disk adds is not the program's."""
    code = (
        "import sys, time, calc.__main__ as m\n"
        "assert m.main(['--starter', 'enduro', '16 st 5 lb', '--short']) == 0\n"
        "assert not {'numpy', 'pint'} & set(sys.modules), 'loaded'\n"
        "assert time.process_time() < 0.5, time.process_time()\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT, stdout=subprocess.DEVNULL)


@pytest.mark.parametrize("encoding", ["ascii", "utf-8"])
def test_a_terminal_that_lacks_a_sign_gets_another(tmp_path, encoding):
    """The report is full of them (a plus-minus, a minus, a degree); a job's own name may be in any script."""
    file = tmp_path / "job.json"
    file.write_text(json.dumps(demo() | {"name": "Vélo ± 平"}), encoding="utf-8")
    for how in ([], ["--json"], ["--full"]):
        done = subprocess.run(
            [sys.executable, "-m", "calc", str(file), *how], capture_output=True, cwd=ROOT, env={"PYTHONIOENCODING": encoding}
        )
        assert (done.returncode, done.stderr) == (0, b""), done.stderr
        assert "Vélo ± 平".encode(encoding, "backslashreplace") in done.stdout


def test_a_name_that_is_no_text_is_refused_in_one_line(tmp_path):
    """Half of a pair of surrogates: nothing can show or store it."""
    file = tmp_path / "job.json"
    file.write_text(json.dumps(demo() | {"name": "\ud800 bike"}), encoding="utf-8")
    done = subprocess.run([sys.executable, "-m", "calc", str(file)], capture_output=True, cwd=ROOT)
    assert (done.returncode, done.stdout) == (2, b"")
    assert done.stderr.count(b"\n") == 1
    assert b"name" in done.stderr


def test_the_readme_shows_json_as_it_is():
    """A figure with all its parts, its texts the rounded numbers; and every name that the examples for jq take from the report."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    told = report(jobs()["enduro"])
    shown = json.loads(re.search(r"```json\n(.*?)```", text, re.DOTALL)[1])
    numbers = {"value", "plus_minus_95", "text", "plus_minus_text"}
    sag = told["ends"]["front"]["chosen"]["rider_sag"]
    assert list(shown) == list(sag)
    assert {key: part for key, part in shown.items() if key not in numbers} == {
        key: part for key, part in sag.items() if key not in numbers
    }
    assert (shown["text"], shown["plus_minus_text"]) == (f"{shown['value']:.0f}", f"±{shown['plus_minus_95']:.0f}")
    names = {
        name
        for line in text.split("\n")
        if line.startswith("jq ")
        for name in re.findall(r"\.(\w+)", line.split(" report.json")[0])
    }
    assert names - {"key", "value"} <= set(re.findall(r'"(\w+)":', json.dumps(told)))
    assert len(names) > 12
