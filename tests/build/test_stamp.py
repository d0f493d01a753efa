"""A step is done again exactly when its key or what it made has changed."""

import os
from pathlib import Path

import pytest

from web.toolchain import stamp
from web.toolchain.stamp import Stamp, key_of


@pytest.fixture
def made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(stamp, "BUILD", tmp_path / "build")
    made = tmp_path / "made"
    (made / "deep").mkdir(parents=True)
    (made / "deep" / "one").write_text("one")
    (made / "two").write_text("two")
    Stamp("step").put("key", [made])
    return made


@pytest.mark.usefixtures("made")
def test_fresh_while_nothing_changed() -> None:
    assert Stamp("step").fresh("key")


@pytest.mark.usefixtures("made")
def test_another_key_is_not_fresh() -> None:
    assert not Stamp("step").fresh("other key")


@pytest.mark.usefixtures("made")
def test_never_done_is_not_fresh() -> None:
    assert not Stamp("other step").fresh("key")


def test_a_lost_file_is_noticed(made: Path) -> None:
    (made / "deep" / "one").unlink()
    assert not Stamp("step").fresh("key")


def test_a_truncated_file_is_noticed(made: Path) -> None:
    (made / "two").write_text("t")
    assert not Stamp("step").fresh("key")


@pytest.mark.usefixtures("made")
def test_a_broken_stamp_is_not_fresh() -> None:
    Stamp("step").path.write_text('{"key": "key"')
    assert not Stamp("step").fresh("key")


def test_key_follows_names_and_contents(made: Path) -> None:
    before = key_of(made)
    assert key_of(made) == before
    (made / "two").rename(made / "three")
    renamed = key_of(made)
    (made / "three").write_text("2")
    assert len({before, renamed, key_of(made)}) == 3


def test_a_flipped_byte_is_noticed(made: Path) -> None:
    flip(made / "deep" / "one")
    assert not Stamp("step").fresh("key")


def test_of_a_tool_only_the_size_is_known(made: Path) -> None:
    Stamp("tools").put("key", [made / "two"], tools=[made])
    flip(made / "deep" / "one")
    assert Stamp("tools").fresh("key")
    flip(made / "two")
    assert not Stamp("tools").fresh("key"), "what ships is known by its hash, though it lies among tools"


def flip(path: Path) -> None:
    """One bit of a file, with its size and its times as they were."""
    before = path.stat()
    content = bytearray(path.read_bytes())
    content[-1] ^= 1
    path.write_bytes(content)
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
