"""`build.py dev`: an edited module goes to the page as source, all else as the build's bytecode, and the build stays as it is."""

import json
import os
import shutil
from pathlib import Path

import pytest

from tests.build.test_packs import unpacked
from web.toolchain import dev, packs, reach
from web.toolchain.places import RUNTIME, sha256


@pytest.fixture
def stage(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(dev, "DEV", tmp_path)
    shutil.copytree(RUNTIME, tmp_path / "runtime", copy_function=os.link)
    return tmp_path / "runtime"


def edit(monkeypatch: pytest.MonkeyPatch, name: str, text: str, folder: Path) -> None:
    """Another text for one module of the core."""
    source = folder / "edited.py"
    source.write_text(text)
    files = packs.core_files(json.loads(reach.REACHED.read_text())) | {name: source}
    monkeypatch.setattr(packs, "core_files", lambda _: files)


def test_an_edit_goes_as_source_and_the_rest_as_bytecode(stage: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = sha256(RUNTIME / dev.PACK)
    edit(monkeypatch, "calc/array.py", "EDITED = True\n", tmp_path)
    monkeypatch.setattr(dev, "edited", lambda name, _: name == "calc/array.py")
    dev.refresh_core()
    built = {name for name in unpacked("core") if name != "calc/array.pyc"}
    monkeypatch.setattr("tests.build.test_packs.RUNTIME", stage)
    packed = unpacked("core")
    assert packed["calc/array.py"] == b"EDITED = True\n"
    assert set(packed) == {*built, "calc/array.py"}
    listed = json.loads((stage / "runtime.json").read_text())["files"][dev.PACK]
    assert listed == {"bytes": (stage / dev.PACK).stat().st_size, "sha256": sha256(stage / dev.PACK)}
    assert sha256(RUNTIME / dev.PACK) == before, "the build's own pack was written into"


def test_a_module_is_edited_when_it_is_younger_than_its_bytecode(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(packs, "BYTECODE", tmp_path)
    source, code = tmp_path / "module.py", tmp_path / "core" / "module.pyc"
    code.parent.mkdir()
    for path, when in ((source, 2000), (code, 1000)):
        path.touch()
        os.utime(path, (when, when))
    assert dev.edited("module.py", source)
    os.utime(source, (500, 500))
    assert not dev.edited("module.py", source)
    assert dev.edited("another.py", source), "a new module has no bytecode yet"


@pytest.mark.usefixtures("stage")
def test_a_slip_is_told_where_it_was_typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    edit(monkeypatch, "calc/array.py", "def broken(:\n", tmp_path)
    monkeypatch.setattr(dev, "edited", lambda name, _: name == "calc/array.py")
    with pytest.raises(SyntaxError) as told:
        dev.refresh_core()
    assert (told.value.filename, told.value.lineno) == (str(tmp_path / "edited.py"), 1)
