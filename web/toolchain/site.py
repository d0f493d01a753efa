"""The finished page in web/dist: vite's output, then what must be true of it before anybody gets it."""

from __future__ import annotations

import base64
import json
import re
import shutil
from pathlib import Path

from . import policy, wire
from .node import run_node, tool
from .places import DIST, GENERATED, RUNTIME, STAGE, WEB, say, stop
from .stamp import Stamp, files_under, key_of

NOT_SOURCES = {DIST, WEB / "node_modules", WEB / "toolchain"}
# Served to hosts and to the curious, not to the page: these need not work offline.
NOT_CACHED = {"sw.js", "files.json", *policy.HOST_FILES}

# The budgets, in bytes: (name, coding, limit).
WHOLE = (("everything, brotli", "br", 5_800_000), ("everything, gzip", "gzip", 7_600_000))
# The page's own scripts and styles: what the first screen waits for, and all places together.
FIRST = ("first screen, JS and CSS, gzip", 70_000)
OWN = ("all places, JS and CSS, gzip", 160_000)


def build() -> None:
    stamp = Stamp("site")
    sources = [path for path in sorted(WEB.iterdir()) if path not in NOT_SOURCES]
    key = key_of(*sources, RUNTIME / "runtime.json", Stamp("node_modules").path, Path(__file__),
                 Path(policy.__file__), str(DIST))
    if stamp.fresh(key):
        return
    say("building the page into web/dist")
    stamp.clear()
    shutil.rmtree(DIST, ignore_errors=True)
    run_node([tool("vite", "vite"), "build"], quiet=True)
    check_precache()
    policy.write(DIST)
    list_files()
    say("compressing it as hosts do, for the budgets and for serving")
    wire.pack(served_files())
    stamp.put(key, [DIST, STAGE, GENERATED])


def served_files() -> list[Path]:
    """Everything a visit may fetch."""
    return [path for path in files_under(DIST) if path.name not in policy.HOST_FILES and path.name != "files.json"]


def check_precache() -> None:
    """Every file is in the service worker's list with the hash of its content, and the list names nothing else."""
    listed = {}
    for entry in re.findall(r"\{[^{}]*\"url\":[^{}]*\}", (DIST / "sw.js").read_text(encoding="utf-8")):
        row = json.loads(entry)
        listed[row["url"].partition("?")[0]] = row["integrity"]
    there = {path.relative_to(DIST).as_posix(): integrity(path) for path in files_under(DIST)
             if path.name not in NOT_CACHED}
    if listed != there:
        wrong = sorted(name for name in listed.keys() | there.keys() if listed.get(name) != there.get(name))
        stop(f"the service worker's list and web/dist differ: {', '.join(wrong)}")


def integrity(path: Path) -> str:
    """A file's hash as browsers check it."""
    return "sha256-" + base64.b64encode(bytes.fromhex(wire.digest_of(path))).decode()


def list_files() -> None:
    rows = {path.relative_to(DIST).as_posix(): {"bytes": path.stat().st_size, "sha256": wire.digest_of(path)}
            for path in files_under(DIST)}
    (DIST / "files.json").write_text(json.dumps(rows, indent=1) + "\n")


def budgets() -> tuple[dict[str, dict[str, int]], list[tuple[str, int, int]]]:
    """Sizes by file, and (name, bytes, limit) of each budget."""
    files = {path.relative_to(DIST).as_posix(): wire.sizes(path) for path in served_files()}
    own = [name for name in files if name.endswith((".js", ".css")) and not name.startswith("runtime/")]
    judged = [(name, sum(row[coding] for row in files.values()), limit) for name, coding, limit in WHOLE]
    split = ((FIRST, first_screen()), (OWN, own))
    return files, [*judged, *((name, sum(files[file]["gzip"] for file in those), limit) for (name, limit), those in split)]


def first_screen() -> list[str]:
    """Scripts and styles that the page names itself, with the worker's: what stands before any part that is fetched later."""
    named = re.findall(r'(?:src|href)="\./([^"]+\.(?:js|css))"', (DIST / "index.html").read_text(encoding="utf-8"))
    return sorted({*named, *(path.relative_to(DIST).as_posix() for path in DIST.glob("assets/worker-*.js"))})


def check_budgets() -> None:
    _, judged = budgets()
    for name, bytes_, limit in judged:
        say(f"{name}: {bytes_:,} of {limit:,} bytes")
    over = [name for name, bytes_, limit in judged if bytes_ > limit]
    if over:
        stop(f"over budget: {', '.join(over)}. `python3 build.py bench` lists every file.")
