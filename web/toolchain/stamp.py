"""Know that a step is done and still whole, so that a second run does nothing and a broken tree is made again.

A stamp holds a key (a hash of what went in) and the size of every file that came out. A file that is
missing or has another size means that the step is done anew. Sizes, not hashes: 30 000 files are checked
in under a second, and what was downloaded has been checked by hash before it was unpacked.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path

from .places import BUILD

# Written by the tools themselves as they run.
CHANGING = {"__pycache__", ".cache", ".vite", ".vite-temp", ".vitest"}


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


class Stamp:
    def __init__(self, name: str) -> None:
        self.path = BUILD / "stamps" / f"{name}.json"

    def fresh(self, key: str) -> bool:
        """Whether the step was done for this key and all that it made is still there."""
        try:
            held = json.loads(self.path.read_text())
            return held["key"] == key and all(
                os.lstat(name).st_size == size for name, size in held["files"].items())
        except (OSError, ValueError, KeyError):
            return False

    def clear(self) -> None:
        self.path.unlink(missing_ok=True)

    def put(self, key: str, outputs: Iterable[Path]) -> None:
        files = [path for top in outputs for path in ([top] if top.is_file() else files_under(top))]
        self.path.parent.mkdir(parents=True, exist_ok=True)
        sizes = {str(path): os.lstat(path).st_size for path in files}
        self.path.write_text(json.dumps({"key": key, "files": sizes}))
