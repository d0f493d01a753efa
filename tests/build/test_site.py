"""What the build promises of web/dist is checked by the build, and the checks can fail."""

import json
from pathlib import Path

import pytest

from web.toolchain import policy, site
from web.toolchain.places import DIST, Stop, sha256


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(site, "DIST", tmp_path)
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text("page")
    (tmp_path / "assets" / "a.js").write_text("script")
    write_list(tmp_path, "index.html", "assets/a.js")
    return tmp_path


def write_list(folder: Path, *names: str) -> None:
    """As the build does where an address names the content; the hash is what is judged."""
    rows = [{"revision": None, "url": f"{name}?12345678", "integrity": site.integrity(folder / name)} for name in names]
    (folder / "sw.js").write_text(f"start({json.dumps(rows)})")


def test_a_whole_list_passes(folder: Path) -> None:
    policy.write(folder)
    site.check_precache()


def test_a_file_left_out_fails(folder: Path) -> None:
    write_list(folder, "index.html")
    with pytest.raises(Stop, match=r"assets/a\.js"):
        site.check_precache()


def test_a_file_that_changed_after_fails(folder: Path) -> None:
    (folder / "index.html").write_text("another page")
    with pytest.raises(Stop, match=r"index\.html"):
        site.check_precache()


def test_a_file_that_is_gone_fails(folder: Path) -> None:
    (folder / "assets" / "a.js").unlink()
    with pytest.raises(Stop, match=r"assets/a\.js"):
        site.check_precache()


def test_the_built_site_lists_every_file() -> None:
    rows = json.loads((DIST / "files.json").read_text())
    there = {
        path.relative_to(DIST).as_posix(): {"bytes": path.stat().st_size, "sha256": sha256(path)}
        for path in DIST.rglob("*")
        if path.is_file() and path.name != "files.json"
    }
    assert rows == there


@pytest.mark.parametrize("name", policy.HOST_FILES)
def test_hosts_are_told_the_same_policy(name: str) -> None:
    text = (DIST / name).read_text()
    for header, value in policy.HEADERS.items():
        assert header in text
        assert value in text


def test_the_policy_allows_no_inline_and_no_other_origin() -> None:
    for part in policy.CONTENT.split("; "):
        allowed = part.split()[1:]
        assert allowed, part
        assert set(allowed) <= {"'none'", "'self'", "'wasm-unsafe-eval'", "data:", "blob:"}
