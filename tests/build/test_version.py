"""The version has one source, pyproject.toml; the page, its failure report, the notices and the change log tell the same."""

import re
import tomllib

from web.toolchain.places import DIST, GENERATED, ROOT, version

DECLARED = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]


def test_the_page_is_told_the_declared_version() -> None:
    assert version() == DECLARED
    assert f"export const VERSION = '{DECLARED}'\n" in (GENERATED / "version.ts").read_text()


def test_the_built_page_and_its_notices_carry_it() -> None:
    scripts = "".join(path.read_text() for path in (DIST / "assets").glob("*.js"))
    assert f"Stanchion {DECLARED}" in scripts or re.search(rf"[`'\"]{re.escape(DECLARED)}[`'\"]", scripts)
    assert f"Stanchion {DECLARED}\n" in (DIST / "notices.txt").read_text()


def test_the_change_log_opens_with_it() -> None:
    log = (ROOT / "DEVELOPERS.md").read_text().partition("## Changes")[2]
    newest = re.search(r"^- \*\*(\d+\.\d+\.\d+)\*\*", log, re.MULTILINE)
    assert newest
    assert newest[1] == DECLARED
