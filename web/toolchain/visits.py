"""Visits of a real browser to a served page, each with its own profile, at full speed or slowed to a quarter."""

from __future__ import annotations

import contextlib
import json
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright

from . import brake
from .browser import FLAGS
from .places import INSIDE, ROOT

MARKS = ("first-screen", "saved-answer", "first-computed")
PATIENCE = 120_000  # [ms]
SLOWED = 4


@contextlib.contextmanager
def browser(playwright: Playwright, chromium: Path, profile: Path, slowed: bool) -> Iterator[BrowserContext]:
    context = playwright.chromium.launch_persistent_context(
        profile, executable_path=chromium, args=[*FLAGS], viewport={"width": 390, "height": 844}
    )
    brake = slow(profile) if slowed else None
    try:
        yield context
    finally:
        if brake:
            brake.terminate()
            brake.wait()
        context.close()


def cannot_slow() -> str:
    """Why this machine cannot slow a browser down, or nothing."""
    return "" if Path("/proc/self/cmdline").exists() else "it needs Linux's list of processes"


def slow(profile: Path) -> subprocess.Popen[bytes]:
    """Let the browser and all its children run for a quarter of the time (its own throttle misses workers)."""
    return subprocess.Popen([sys.executable, "-m", brake.__name__, str(process_of(profile)), str(1 / SLOWED)], cwd=ROOT)


def process_of(profile: Path) -> int:
    """The browser's own process: the one with this profile that is nobody's helper."""
    for folder in Path("/proc").glob("[0-9]*"):
        with contextlib.suppress(OSError):
            words = (folder / "cmdline").read_bytes().split(b"\0")
            if f"--user-data-dir={profile}".encode() in words and not any(w.startswith(b"--type=") for w in words):
                return int(folder.name)
    raise RuntimeError(f"no browser runs on {profile}")


def first_and_second(playwright: Playwright, chromium: Path, url: str, slowed: bool) -> list[dict[str, float | None]]:
    """The marks [ms from the start of navigation] of a visit with an empty profile, then of one in a new process."""
    with tempfile.TemporaryDirectory() as folder:
        seen = []
        for number in range(2):
            with browser(playwright, chromium, Path(folder), slowed) as context:
                page = open_page(context, url)
                seen.append(in_page(page, "marks.mjs", MARKS, PATIENCE))
                if number == 0:
                    let_it_settle(page)
        return seen


def open_page(context: BrowserContext, url: str) -> Page:
    page = context.new_page()
    page.goto(url, wait_until="commit", timeout=PATIENCE)
    in_page(page, "marks.mjs", MARKS, PATIENCE)
    return page


def let_it_settle(page: Page) -> None:
    """A second visit begins after the first one has put away what it keeps."""
    page.evaluate("navigator.serviceWorker.getRegistration().then(found => found && navigator.serviceWorker.ready)")
    page.wait_for_load_state("networkidle", timeout=PATIENCE)
    page.wait_for_timeout(1000)


def in_page(page: Page, script: str, *words: object) -> Any:
    """Run the one exported function of a file of inside/ in the page (a string, since the policy bars other scripts)."""
    source = (INSIDE / script).read_text()
    body = source[source.index("export async function") + len("export ") :]
    return page.evaluate(f"words => ({body})(words)", json.loads(json.dumps(words)))
