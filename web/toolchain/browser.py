"""A Chromium that starts: found, or fetched, or the command that brings one is named. Never skipped."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

from .places import BUILD, VENV_PYTHON, Stop, run, say

NAMED = "STANCHION_CHROMIUM"
COMMANDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
BUNDLED = BUILD / "browser"
FLAGS = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         "--disable-dev-shm-usage")  # fmt: skip


def chromium() -> Path:
    """The path of a Chromium that has just loaded a page; fetches one if need be."""
    tried: list[str] = []
    for get in (named, installed, bundled, from_system, from_bundle):
        path = attempt(get, tried)
        if path:
            return path
    raise Stop(
        "no Chromium that starts.\n  " + "\n  ".join(tried) + "\n  Install one (Debian: apt-get install chromium; "
        f"elsewhere: {VENV_PYTHON} -m playwright install chromium), or set {NAMED} to its path."
    )


def attempt(get: Callable[[], Path | None], tried: list[str]) -> Path | None:
    try:
        path = get()
    except Stop as problem:
        tried.append(f"{get.__name__}: {problem}")
        return None
    if path is None:
        return None
    trouble = trouble_with(path)
    if trouble:
        tried.append(f"{path}: {trouble}")
        return None
    return path


def trouble_with(path: Path) -> str:
    from playwright.sync_api import Error, sync_playwright

    try:
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=path, args=list(FLAGS), timeout=60_000)
            browser.new_page().goto("about:blank")
            browser.close()
    except Error as problem:
        return problem.message.splitlines()[0]
    return ""


def named() -> Path | None:
    return Path(os.environ[NAMED]) if os.environ.get(NAMED) else None


def installed() -> Path | None:
    return next((Path(found) for name in COMMANDS if (found := shutil.which(name))), None)


def bundled() -> Path | None:
    """One that Playwright fetched before, for the version that is installed now."""
    os.environ["PLAYWRIGHT_BROWSERS_PATH"] = str(BUNDLED)
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        path = Path(playwright.chromium.executable_path)
    return path if path.exists() else None


def from_system() -> Path | None:
    """Debian's, whose packages its own keys vouch for."""
    if not (shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0):
        return None
    say("installing Debian's chromium for the browser tests")
    quiet = {"DEBIAN_FRONTEND": "noninteractive"}
    run(["apt-get", "update", "-qq"], env=quiet, quiet=True)
    run(["apt-get", "install", "-y", "-qq", "chromium"], env=quiet, quiet=True)
    return installed()


def from_bundle() -> Path | None:
    say("fetching Playwright's Chromium for the browser tests (over https; no hash of it is published)")
    run([VENV_PYTHON, "-m", "playwright", "install", "chromium"], quiet=True)
    return bundled()
