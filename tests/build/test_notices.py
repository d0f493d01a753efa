"""The notices name everything that ships, each in the words of its own licence file; a part without one stops the build."""

import json
from pathlib import Path

import pytest

from web.toolchain import notices, sources
from web.toolchain.node import shipped_packages
from web.toolchain.places import DIST, LICENCES, MODULES, ROOT, Stop, version

SHIPPED = (DIST / "notices.txt").read_text(encoding="utf-8")


def test_every_part_is_named_with_its_version() -> None:
    lines = set(SHIPPED.split("\n"))
    assert f"Stanchion {version()}" in lines
    for name in shipped_packages():
        assert f"{name} {json.loads((MODULES / name / 'package.json').read_text())['version']}" in lines
    for name in sources.PURE_PACKAGES:
        assert f"{name} {sources.metadata.version(name)}" in lines
    font = "@fontsource-variable/atkinson-hyperlegible-next"
    assert {"preact", "@preact/signals", "idb", "d3-array", "workbox-core", font} <= set(shipped_packages())


def test_the_terms_are_there_in_their_own_words() -> None:
    """Phrases of each licence as published: BSD 3-Clause, MIT, ISC, SIL OFL 1.1, MPL 2.0, PSF 2; numpy's is a BSD of its own."""
    for phrase in (
        "Neither the name of the copyright holder nor the names of its contributors",
        "Permission is hereby granted, free of charge, to any person obtaining a copy",
        "Permission to use, copy, modify, and/or distribute this software for any purpose",
        "SIL OPEN FONT LICENSE Version 1.1",
        "Mozilla Public License Version 2.0",
        "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2",
        "NumPy Developers",
    ):
        assert phrase in SHIPPED
    for path in LICENCES.iterdir():
        assert path.read_text(encoding="utf-8").strip() in SHIPPED


def test_one_licence_of_many_parts_stands_once() -> None:
    parts = [notices.Part("a", "1", ("the terms",)), notices.Part("b", "2", ("the terms",)), notices.Part("c", "3", ("others",))]
    text = notices.text(parts)
    assert text.count("the terms") == 1
    assert text.index("a 1") < text.index("b 2") < text.index("the terms") < text.index("c 3") < text.index("others")


def test_a_part_without_a_licence_stops_the_build(tmp_path: Path) -> None:
    with pytest.raises(Stop, match="nameless 1 ships, and has no licence file"):
        notices.part("nameless", "1", [])
    (tmp_path / "LICENSE").write_text("\n")
    with pytest.raises(Stop, match="has no licence file"):
        notices.part("empty", "1", [tmp_path / "LICENSE"])


def test_what_is_bundled_undeclared_stops_the_build(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    notices.check_bundled()
    monkeypatch.setattr(notices, "TOLD", tmp_path)
    (tmp_path / "license.json").write_text(json.dumps([{"name": "preact"}, {"name": "smuggled"}]))
    with pytest.raises(Stop, match="smuggled"):
        notices.check_bundled()


def test_the_notices_work_offline() -> None:
    assert '"notices.txt"' in (DIST / "sw.js").read_text()


def test_our_own_licence_is_the_one_declared() -> None:
    assert 'license = "BSD-3-Clause"' in (ROOT / "pyproject.toml").read_text()
    assert (ROOT / "LICENSE").read_text().startswith("BSD 3-Clause License")
