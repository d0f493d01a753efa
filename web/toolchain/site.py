"""The finished page in web/dist: vite's output, then what must be true of it before anybody gets it."""

from __future__ import annotations

import base64
import json
import re
import shutil
from pathlib import Path

from . import notices, pins, policy, wire
from .node import run_node, tool
from .places import DIST, GENERATED, RUNTIME, STAGE, TOLD, WEB, say, sha256, stop
from .stamp import Stamp, files_under, key_of

NOT_SOURCES = {DIST, WEB / "node_modules", WEB / "toolchain"}
# Served to hosts and to the curious, not to the page: these need not work offline.
NOT_CACHED = {"sw.js", "files.json", *policy.HOST_FILES}


def build() -> None:
    stamp = Stamp("site")
    sources = [path for path in sorted(WEB.iterdir()) if path not in NOT_SOURCES]
    key = key_of(
        *sources,
        RUNTIME / "runtime.json",
        notices.NOTICES,
        Stamp("node_modules").path,
        Path(__file__),
        Path(policy.__file__),
        str(DIST),
    )
    if not stamp.fresh(key):
        stamp.clear()
        make()
        stamp.put(key, [DIST, STAGE, GENERATED, TOLD])
    check_runtime()
    wire.pack(served_files())


def make() -> None:
    say("building the page into web/dist")
    for folder in (DIST, TOLD):
        shutil.rmtree(folder, ignore_errors=True)
    run_node([tool("vite", "vite"), "build"], quiet=True)
    shutil.move(DIST / ".vite", TOLD)
    notices.check_bundled()
    check_precache()
    policy.write(DIST)
    list_files()


def served_files() -> list[Path]:
    """Everything a visit may fetch."""
    return [path for path in files_under(DIST) if path.name not in policy.HOST_FILES and path.name != "files.json"]


def check_precache() -> None:
    """Every file is in the service worker's list with the hash of its content, and the list names nothing else."""
    listed = {}
    for entry in re.findall(r"\{[^{}]*\"url\":[^{}]*\}", (DIST / "sw.js").read_text(encoding="utf-8")):
        row = json.loads(entry)
        listed[row["url"].partition("?")[0]] = row["integrity"]
    there = {path.relative_to(DIST).as_posix(): integrity(path) for path in files_under(DIST) if path.name not in NOT_CACHED}
    if listed != there:
        wrong = sorted(name for name in listed.keys() | there.keys() if listed.get(name) != there.get(name))
        stop(f"the service worker's list and web/dist differ: {', '.join(wrong)}")


def check_runtime() -> None:
    """The runtime that ships is the one that was packed, and its makers' files are as they are pinned."""
    listed = json.loads((RUNTIME / "runtime.json").read_text())["files"]
    wrong = [name for name, row in listed.items() if sha256(DIST / "runtime" / name) != row["sha256"]]
    if wrong:
        stop(f"web/dist/runtime is not what was packed: {', '.join(wrong)}. Delete .build/stage and web/dist, and build again.")
    pins.check(DIST / "runtime")


def integrity(path: Path) -> str:
    """A file's hash as browsers check it."""
    return "sha256-" + base64.b64encode(bytes.fromhex(wire.digest_of(path))).decode()


def list_files() -> None:
    rows = {
        path.relative_to(DIST).as_posix(): {"bytes": path.stat().st_size, "sha256": wire.digest_of(path)}
        for path in files_under(DIST)
    }
    (DIST / "files.json").write_text(json.dumps(rows, indent=1) + "\n")
