"""Know that a step is done and still whole, so that a second run does nothing and a broken tree is made again.

A stamp holds a key (a hash of what went in) and the hash of every file that came out: one that is missing or differs, be it
in a single byte, means that the step is done anew. Only tools that never ship are known by their size: a gigabyte of them
would take seconds at every command, and what was downloaded has been checked by hash before it was unpacked.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path

from .places import BUILD, sha256

# Written by the tools themselves as they run.
CHANGING = {"__pycache__", ".cache", ".vite", ".vite-temp", ".vitest"}


# The size of a file, or its hash.
Known = int | str


def key_of(*parts: str | Path) -> str:
    """Hash strings, files and whole folders (names and contents) into one key."""
    digest = hashlib.sha256()
    for part in parts:
        if isinstance(part, str):
            digest.update(part.encode() + b"\0")
            continue
        for path in [part] if part.is_file() else files_under(part):
            digest.update(path.relative_to(part.parent).as_posix().encode() + b"\0" + path.read_bytes() + b"\0")
    return digest.hexdigest()


def files_under(top: Path) -> list[Path]:
    found = []
    for folder, folders, names in os.walk(top):
        folders[:] = sorted(name for name in folders if name not in CHANGING)
        found += [Path(folder, name) for name in sorted(names)]
    return found


def files_of(tops: Iterable[Path]) -> list[Path]:
    return [path for top in tops for path in ([top] if top.is_file() else files_under(top))]


def state(path: Path, like: Known) -> Known:
    """A file's hash, or its size where that is what is known of it."""
    return os.lstat(path).st_size if isinstance(like, int) else sha256(path)


class Stamp:
    def __init__(self, name: str) -> None:
        self.path = BUILD / "stamps" / f"{name}.json"

    def fresh(self, key: str) -> bool:
        """Whether the step was done for this key and all that it made is still there."""
        try:
            held = json.loads(self.path.read_text())
            return held["key"] == key and all(state(Path(name), known) == known for name, known in held["files"].items())
        except (OSError, ValueError, KeyError):
            return False

    def clear(self) -> None:
        self.path.unlink(missing_ok=True)

    def put(self, key: str, outputs: Iterable[Path], tools: Iterable[Path] = ()) -> None:
        """Done for this key: outputs are known by their hash, tools by their size."""
        known: dict[str, Known] = {str(path): state(path, 0) for path in files_of(tools)}
        known |= {str(path): state(path, "") for path in files_of(outputs)}
        self.path.parent.mkdir(parents=True, exist_ok=True)
        self.path.write_text(json.dumps({"key": key, "files": known}))
