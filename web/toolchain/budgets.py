"""How many bytes the page may take, and how many it takes as a host sends it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from typing import NamedTuple

from . import site, wire
from .places import DIST, TOLD, say, stop

Sizes = dict[str, dict[str, int]]
CODE = (".js", ".css")
# (what, coding, limit in bytes); the places are all that the page's own code consists of, its two workers included.
WHOLE = (("everything, brotli", "br", 5_800_000), ("everything, gzip", "gzip", 7_600_000))
FIRST_SCREEN = ("JS and CSS before the first place is drawn, gzip", "gzip", 70_000)
ALL_PLACES = ("JS and CSS of all places, gzip", "gzip", 160_000)


class Budget(NamedTuple):
    name: str
    bytes: int
    limit: int

    @property
    def kept(self) -> bool:
        return self.bytes <= self.limit


def sizes() -> Sizes:
    return {path.relative_to(DIST).as_posix(): wire.sizes(path) for path in site.served_files()}


def first_screen() -> set[str]:
    """What index.html loads by itself: the scripts and styles that it names, what those import at once, and their styles."""
    manifest = json.loads((TOLD / "manifest.json").read_text(encoding="utf-8"))
    by_file = {chunk["file"]: chunk for chunk in manifest.values()}
    page = (DIST / "index.html").read_text(encoding="utf-8")
    waiting = [name.removeprefix("./") for name in re.findall(r'(?:src|href)="([^"]+)"', page)]
    found: set[str] = set()
    while waiting:
        name = waiting.pop()
        if name in found or not name.endswith(CODE):
            continue
        found.add(name)
        chunk = by_file.get(name, {})
        waiting += [*chunk.get("css", []), *(manifest[key]["file"] for key in chunk.get("imports", []))]
    return found


def budgets(files: Sizes) -> list[Budget]:
    own = [name for name in files if name.endswith(CODE) and not name.startswith("runtime/")]

    def judged(what: tuple[str, str, int], names: Iterable[str]) -> Budget:
        name, coding, limit = what
        return Budget(name, sum(files[file][coding] for file in names), limit)

    return [*(judged(what, files) for what in WHOLE), judged(FIRST_SCREEN, first_screen()), judged(ALL_PLACES, own)]


def tell() -> list[Budget]:
    """Each budget in a line; those that are missed."""
    judged = budgets(sizes())
    for budget in judged:
        say(f"{budget.name}: {budget.bytes:,} of {budget.limit:,} bytes{'' if budget.kept else ': MISSED'}")
    return [budget for budget in judged if not budget.kept]


def check() -> None:
    missed = tell()
    if missed:
        stop(f"over budget: {', '.join(budget.name for budget in missed)}. `python3 build.py bench` lists every file.")
