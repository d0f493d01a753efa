"""`build.py test`: which groups run, what goes on to their runner, and the floors of the core's tests."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from web.toolchain import checks
from web.toolchain.places import CORE_TESTS, DESK_ONLY, ROOT, Stop


@pytest.mark.parametrize(
    ("words", "groups", "rest"),
    [
        ("", [], []),
        ("core browser", ["core", "browser"], []),
        ("core -k gap -x", ["core"], ["-k", "gap", "-x"]),
        ("build tests/build/test_stamp.py", ["build"], ["tests/build/test_stamp.py"]),
        ("page -t chart", ["page"], ["-t", "chart"]),
        # A group's name behind an option is the option's.
        ("core -k build", ["core"], ["-k", "build"]),
    ],
)
def test_groups_come_first_and_the_rest_is_for_their_runner(words: str, groups: list[str], rest: list[str]) -> None:
    assert checks.split(words.split()) == (groups, rest)


def test_an_unknown_group_is_refused_with_those_that_are() -> None:
    with pytest.raises(Stop, match=r"brwser is no group of tests(.|\n)*browser"):
        checks.split(["brwser"])


def test_a_group_that_takes_no_words_says_so() -> None:
    with pytest.raises(Stop, match="style takes no further words: -k gap"):
        checks.split(["style", "-k", "gap"])


def test_a_file_named_takes_the_folders_place() -> None:
    folders = [ROOT / "tests" / "build"]
    assert checks.chosen(folders, ["-k", "gap"]) == [str(folders[0]), "-k", "gap"]
    assert checks.chosen(folders, ["tests/build/test_stamp.py::test_x"]) == ["tests/build/test_stamp.py::test_x"]


def test_words_reach_pytest() -> None:
    """The whole way from the command line, less the build: one test of one file, told by its runner."""
    code = "import sys; from web.toolchain import checks; checks.run_checks(*checks.split(sys.argv[1:]))"
    words = ["build", "tests/build/test_stamp.py", "-k", "flipped", "-rA"]
    done = subprocess.run([sys.executable, "-c", code, *words], cwd=ROOT, capture_output=True, text=True, timeout=100, check=True)
    assert "PASSED tests/build/test_stamp.py::test_a_flipped_byte_is_noticed" in done.stdout
    assert "1 passed" in done.stdout


LATE = """
from pathlib import Path
BEEN = Path(__file__).with_name("been")
def test_right(): pass
def test_late():
    been = BEEN.exists()
    BEEN.touch()
    assert been
"""


def test_what_failed_in_the_browser_is_tried_once_more_alone(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "test_made_up.py").write_text(LATE)
    checks.twice([tmp_path], [], {})
    told = capfd.readouterr().out
    assert re.search("1 failed, 1 passed(.|\n)*once more(.|\n)*\n1 passed(.|\n)*worth a look", told)


def test_what_fails_twice_fails(tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "test_made_up.py").write_text(LATE.replace("BEEN.touch()", "pass"))
    with pytest.raises(Stop):
        checks.twice([tmp_path], [], {})
    assert "worth a look" not in capfd.readouterr().out


def test_what_cannot_even_start_fails(tmp_path: Path) -> None:
    (tmp_path / "test_made_up.py").write_text("no Python at all")
    with pytest.raises(Stop):
        checks.twice([tmp_path], [], {})


def test_every_floor_is_there_and_has_tests() -> None:
    assert CORE_TESTS
    assert all(list(floor.rglob("test_*.py")) for floor in CORE_TESTS)


def test_what_only_a_desk_has_is_found_on_any_floor(tmp_path: Path) -> None:
    assert all(path.is_file() for path in checks.desk_only(DESK_ONLY.read_text(), CORE_TESTS))
    floors = [tmp_path / "unit", tmp_path / "whole"]
    (floors[0] / "gas").mkdir(parents=True)
    floors[1].mkdir()
    (floors[0] / "gas" / "test_a.py").touch()
    assert checks.desk_only("# words\n\ntest_a.py  # it needs a desk\n", floors) == [floors[0] / "gas" / "test_a.py"]
    for wrong in ("test_a.py", "test_b.py  # gone"):
        with pytest.raises(Stop, match="takes the name of one file"):
            checks.desk_only(wrong, floors)


def test_pyodide_gets_every_floor_less_what_needs_a_desk(monkeypatch: pytest.MonkeyPatch) -> None:
    told: list[str] = []
    monkeypatch.setattr(checks.sources, "run_inside", lambda *words, **_: told.extend(words))
    checks.core_in_pyodide(["-x"])
    words = json.loads(told[1])["words"]
    assert words[: len(CORE_TESTS)] == [str(floor) for floor in CORE_TESTS]
    assert "-x" in words
    assert any(word.startswith("--ignore=") and word.endswith("test_second_opinions.py") for word in words)
