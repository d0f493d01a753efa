"""What is held against the budgets, and that going over one stops the build."""

import json
from pathlib import Path

import pytest

from web.toolchain import budgets, site, wire
from web.toolchain.places import Stop

PAGE = '<link href="./assets/base.css"><link rel="icon" href="./icon.svg"><script src="./assets/index.js"></script>'
MANIFEST = {
    "index.html": {"file": "assets/index.js", "css": ["assets/base.css"], "imports": ["_shared.js"]},
    "_shared.js": {"file": "assets/shared.js", "css": ["assets/shared.css"]},
    "front.tsx": {"file": "assets/front.js", "css": ["assets/front.css"], "imports": ["_shared.js", "_chart.js"]},
    "_chart.js": {"file": "assets/chart.js"},
}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A site of an entry, what it shares with a place, and the place."""
    monkeypatch.setattr(budgets, "DIST", tmp_path)
    monkeypatch.setattr(site, "DIST", tmp_path)
    monkeypatch.setattr(budgets, "TOLD", tmp_path)
    monkeypatch.setattr(wire, "WIRE", tmp_path / "wire")
    for name in ("assets", "runtime"):
        (tmp_path / name).mkdir()
    (tmp_path / "manifest.json").write_text(json.dumps(MANIFEST))
    (tmp_path / "index.html").write_text(PAGE)
    for chunk in MANIFEST.values():
        for name in (chunk["file"], *chunk.get("css", [])):
            (tmp_path / name).write_text("x" * 100)
    (tmp_path / "runtime" / "pyodide.js").write_text("x" * 100)
    return tmp_path


@pytest.mark.usefixtures("folder")
def test_the_first_screen_is_what_loads_without_being_asked_for() -> None:
    assert budgets.first_screen() == {"assets/index.js", "assets/base.css", "assets/shared.js", "assets/shared.css"}


@pytest.mark.usefixtures("folder")
def test_all_places_are_all_code_but_the_runtimes() -> None:
    found = {budget.name: budget.bytes for budget in budgets.budgets(budgets.sizes())}
    assert found[budgets.FIRST_SCREEN[0]] == 400
    assert found[budgets.ALL_PLACES[0]] == 700
    assert found["everything, brotli"] > 800


@pytest.mark.usefixtures("folder")
def test_over_budget_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    budgets.check()
    monkeypatch.setattr(budgets, "FIRST_SCREEN", ("the first screen", "gzip", 399))
    with pytest.raises(Stop, match="over budget: the first screen"):
        budgets.check()
