"""numpy's wheel is used only with the hash of Pyodide's lock; a broken one is fetched again, from the next source."""

import hashlib
import json
from collections.abc import Callable
from pathlib import Path

import pytest

from web.toolchain import fetch
from web.toolchain.places import Stop

GOOD = b"the wheel"
NAME = "numpy.whl"


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    entry = {"file_name": NAME, "sha256": hashlib.sha256(GOOD).hexdigest()}
    (tmp_path / "pyodide-lock.json").write_text(json.dumps({"packages": {"numpy": entry}}))
    monkeypatch.setattr(fetch, "PYODIDE", tmp_path)
    monkeypatch.setattr(fetch, "ROOT", tmp_path)
    monkeypatch.setattr(fetch, "CACHE", tmp_path / "cache")
    (tmp_path / "cache").mkdir()
    return tmp_path / "cache"


def giving(content: bytes) -> Callable[[str, Path], Path]:
    def source(name: str, folder: Path) -> Path:
        (folder / name).write_bytes(content)
        return folder / name

    return source


def unreachable(_name: str, _folder: Path) -> Path:
    raise OSError("no network")


def use(monkeypatch: pytest.MonkeyPatch, releases: Callable, carrier: Callable) -> None:
    monkeypatch.setattr(fetch, "from_releases", releases)
    monkeypatch.setattr(fetch, "from_carrier", carrier)


def test_a_whole_cache_needs_no_network(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    use(monkeypatch, unreachable, unreachable)
    (cache / NAME).write_bytes(GOOD)
    assert fetch.numpy_wheel() == cache / NAME


@pytest.mark.parametrize("broken", [b"", b"the whe", b"the wheel and more"])
def test_a_broken_cache_is_mended(cache: Path, monkeypatch: pytest.MonkeyPatch, broken: bytes) -> None:
    use(monkeypatch, giving(GOOD), unreachable)
    (cache / NAME).write_bytes(broken)
    assert fetch.numpy_wheel().read_bytes() == GOOD


@pytest.mark.usefixtures("cache")
@pytest.mark.parametrize("first", [unreachable, giving(b"something else")])
def test_the_next_source_is_asked(monkeypatch: pytest.MonkeyPatch, first: Callable) -> None:
    use(monkeypatch, first, giving(GOOD))
    assert fetch.numpy_wheel().read_bytes() == GOOD


def test_no_right_file_stops_and_leaves_nothing(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    use(monkeypatch, unreachable, giving(b"something else"))
    with pytest.raises(Stop, match="another hash"):
        fetch.numpy_wheel()
    assert list(cache.iterdir()) == []
