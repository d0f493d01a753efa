"""Holds a running program and all its children back to a share of their time: python -m web.toolchain.brake PID SHARE.

By hand, since two unlike programs are packaged under the name cpulimit, and a browser's own throttle misses workers.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
import time
from collections.abc import Iterator

import psutil

ROUND = 0.02  # [s] short beside what is measured, long beside what one round of signals takes
LOOK = 0.2  # [s] between looks for new children


def family(pid: int) -> list[int]:
    with contextlib.suppress(psutil.NoSuchProcess):
        head = psutil.Process(pid)
        return [pid, *(child.pid for child in head.children(recursive=True))]
    return []


def tell(pids: list[int], what: signal.Signals) -> None:
    """Not psutil's own suspend: it looks each process up first, which takes longer than a round."""
    for pid in pids:
        with contextlib.suppress(ProcessLookupError):
            os.kill(pid, what)


def rounds(pid: int) -> Iterator[list[int]]:
    """Whom to hold in each round, until the program has ended."""
    while held := family(pid):
        end = time.monotonic() + LOOK
        while time.monotonic() < end:
            yield held


def hold(pid: int, share: float) -> None:
    """Let them run for a share of each round; they are running again when this ends."""
    held: list[int] = []
    try:
        for held in rounds(pid):
            tell(held, signal.SIGSTOP)
            time.sleep(ROUND * (1 - share))
            tell(held, signal.SIGCONT)
            time.sleep(ROUND * share)
    finally:
        tell(held, signal.SIGCONT)


def stop(*_: object) -> None:
    sys.exit()


if __name__ == "__main__":
    signal.signal(signal.SIGTERM, stop)
    hold(int(sys.argv[1]), float(sys.argv[2]))
