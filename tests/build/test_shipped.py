"""What ships is what was pinned: a single flipped bit anywhere on its way stops the build or is made good."""

import json
import shutil
from importlib import metadata
from pathlib import Path
from types import SimpleNamespace

import pytest

from tests.build.test_stamp import flip
from web.toolchain import pins, site, sources, wire
from web.toolchain.places import BUILD, PYODIDE, RUNTIME, STAGE, Stop


@pytest.fixture
def runtime(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the runtime, in a site of its own."""
    monkeypatch.setattr(site, "DIST", tmp_path)
    shutil.copytree(RUNTIME, tmp_path / "runtime")
    return tmp_path / "runtime"


def test_the_pins_are_of_what_npm_installs() -> None:
    """The pinned version is package-lock's, whose hash npm checks; none of the runtime's files is without a pin."""
    lock = json.loads((PYODIDE.parent.parent / "package-lock.json").read_text())
    assert lock["packages"]["node_modules/pyodide"]["version"] == pins.version()
    assert set(pins.held()) == set(pins.NAMES)
    pins.check(PYODIDE)


def test_a_whole_runtime_passes(runtime: Path) -> None:
    assert len(list(runtime.iterdir())) == 7
    site.check_runtime()


@pytest.mark.parametrize("name", sorted(path.name for path in RUNTIME.glob("*.*m*")))
def test_a_flipped_bit_in_a_shipped_file_stops_the_build(runtime: Path, name: str) -> None:
    flip(runtime / name)
    with pytest.raises(Stop, match=name):
        site.check_runtime()


def test_a_flipped_bit_in_the_installed_runtime_stops_the_build(tmp_path: Path) -> None:
    shutil.copyfile(PYODIDE / "pyodide.asm.wasm", tmp_path / "pyodide.asm.wasm")
    pins.check(tmp_path)
    flip(tmp_path / "pyodide.asm.wasm")
    with pytest.raises(Stop, match=r"pyodide\.asm\.wasm"):
        pins.check(tmp_path)


def test_pins_of_another_version_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pins, "PINS", tmp_path / "pins.json")
    pins.PINS.write_text(json.dumps({"version": "0.0.1", "sha256": {}}))
    with pytest.raises(Stop, match="is installed"):
        pins.held()


def test_a_flipped_bit_in_an_installed_package_stops_the_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = tmp_path / "installed" / "module.py"
    source.parent.mkdir()
    source.write_text("value = 1\n")
    monkeypatch.setattr(sources, "PURE", tmp_path / "pure")
    files = [listed(source, sources.recorded(source))]
    monkeypatch.setattr(sources.metadata, "files", lambda _: files)
    cleared: list[str] = []
    monkeypatch.setattr(sources, "Stamp", lambda name: SimpleNamespace(clear=lambda: cleared.append(name)))
    sources.copy_package("package")
    assert (tmp_path / "pure" / "module.py").read_text() == "value = 1\n"
    flip(source)
    with pytest.raises(Stop, match=r"module\.py is not as package's wheel brought it"):
        sources.copy_package("package")
    assert cleared == ["venv"], "the next run makes the environment anew"


def listed(source: Path, recorded: str) -> metadata.PackagePath:
    """A file as a wheel's record names it."""
    path = metadata.PackagePath(source.name)
    path.hash = metadata.FileHash(f"sha256={recorded}")
    path.dist = SimpleNamespace(locate_file=lambda _: source)
    return path


def test_a_broken_compressed_copy_is_made_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(wire, "WIRE", tmp_path / "wire")
    (tmp_path / "page.html").write_text("<title>A page</title>" * 50)
    wire.pack([tmp_path / "page.html"])
    copies = {path: path.read_bytes() for path in (tmp_path / "wire").iterdir()}
    assert {path.suffix for path in copies} == {".br", ".gzip"}
    for path in copies:
        flip(path)
    wire.pack([tmp_path / "page.html"])
    assert {path: path.read_bytes() for path in (tmp_path / "wire").iterdir()} == copies


def test_every_stamp_of_what_ships_holds_hashes() -> None:
    for name, top in (("site", STAGE), ("packs", RUNTIME), ("sources", BUILD / "sources"), ("node_modules", PYODIDE)):
        held = json.loads((BUILD / "stamps" / f"{name}.json").read_text())["files"]
        known = [state for path, state in held.items() if path.startswith(str(top))]
        assert known, name
        assert all(isinstance(state, str) and len(state) == 64 for state in known), name
