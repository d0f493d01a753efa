"""What a host would send: each file once in brotli and gzip, kept under the hash of its content."""

from __future__ import annotations

import gzip
import hashlib
import os
import zlib
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from functools import lru_cache
from pathlib import Path

import brotli

from .places import BUILD, say, sha256

WIRE = BUILD / "wire"
# Compressed already.
PLAIN = {".png", ".woff2", ".ico"}
MAKERS: dict[str, Callable[[bytes], bytes]] = {
    "br": lambda data: brotli.compress(data, quality=11),
    "gzip": lambda data: gzip.compress(data, 9, mtime=0),
}
OPENERS: dict[str, Callable[[bytes], bytes]] = {"br": brotli.decompress, "gzip": gzip.decompress}


@lru_cache(maxsize=4096)
def digest(path: Path, _changed: int, _size: int) -> str:
    return sha256(path)


def digest_of(path: Path) -> str:
    state = path.stat()
    return digest(path, state.st_mtime_ns, state.st_size)


def packed(path: Path, coding: str) -> Path | None:
    """The compressed copy of a file (coding is br or gzip), if there is one."""
    copy = WIRE / f"{digest_of(path)}.{coding}"
    return copy if path.suffix not in PLAIN and copy.exists() else None


def pack(paths: list[Path]) -> None:
    """Compress what is not yet in the store or not whole there, the largest first, on all processors."""
    WIRE.mkdir(parents=True, exist_ok=True)
    wanted = [(path, WIRE / f"{digest_of(path)}.{coding}") for path in paths for coding in MAKERS if path.suffix not in PLAIN]
    missing = [(path, copy) for path, copy in wanted if not whole(copy)]
    missing.sort(key=lambda pair: -pair[0].stat().st_size)
    if missing:
        say(f"compressing {len(paths)} files as hosts do, for the budgets and for serving")
        with ProcessPoolExecutor(os.cpu_count()) as pool:
            list(pool.map(pack_one, *zip(*missing, strict=True)))


def whole(copy: Path) -> bool:
    """Whether a compressed copy is there and unpacks to the content that its name is the hash of."""
    try:
        content = OPENERS[copy.suffix[1:]](copy.read_bytes())
    except (OSError, EOFError, zlib.error, brotli.error):
        return False
    return hashlib.sha256(content).hexdigest() == copy.stem


def pack_one(path: Path, copy: Path) -> None:
    part = copy.with_name(f"{copy.name}.{os.getpid()}")
    part.write_bytes(MAKERS[copy.suffix[1:]](path.read_bytes()))
    part.replace(copy)


def sizes(path: Path) -> dict[str, int]:
    """Bytes of a file: raw, and as sent under each coding."""
    raw = path.stat().st_size
    return {"raw": raw} | {
        coding: min(raw, copy.stat().st_size) if (copy := packed(path, coding)) else raw for coding in ("br", "gzip")
    }
