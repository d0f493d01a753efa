"""The bench's brake holds a program and its children back, and lets them go."""

from __future__ import annotations

import subprocess
import sys
import time

import psutil
import pytest

from web.toolchain import brake
from web.toolchain.places import ROOT

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="signals of POSIX")
BUSY = "while True: pass"
PARENT = f"import subprocess, sys; subprocess.run([sys.executable, '-c', {BUSY!r}])"


@pytest.fixture
def busy_child():
    parent = subprocess.Popen([sys.executable, "-c", PARENT])
    found: list[psutil.Process] = []
    while not found:
        found = psutil.Process(parent.pid).children()
    yield parent.pid, found[0]
    found[0].kill()
    parent.wait()


def share_of(process: psutil.Process) -> float:
    """The part of the time for which it ran."""
    start, before = time.monotonic(), process.cpu_times().user
    time.sleep(1.5)
    return (process.cpu_times().user - before) / (time.monotonic() - start)


def test_a_child_gets_its_share_and_is_let_go(busy_child):
    pid, child = busy_child
    holder = subprocess.Popen([sys.executable, "-m", brake.__name__, str(pid), "0.25"], cwd=ROOT)
    time.sleep(0.5)
    held = share_of(child)
    holder.terminate()
    holder.wait()
    assert 0.02 < held < 0.6, "a quarter is asked for; a busy machine gives less, none gives the whole"
    assert child.status() != psutil.STATUS_STOPPED


def test_it_ends_with_what_it_holds():
    done = subprocess.Popen([sys.executable, "-c", ""])
    done.wait()
    brake.hold(done.pid, 0.25)
