"""The built site, served in whole or with faults made on purpose, and a real browser on it."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, sync_playwright

from tests.browser.helpers import ARGUMENTS, ASK, PHONE, settle, watch
from web.toolchain.browser import chromium
from web.toolchain.places import DIST
from web.toolchain.server import Handler, Site


@pytest.fixture(scope="session")
def dist() -> Path:
    assert (DIST / "index.html").is_file(), "no built site: python3 build.py test builds it first"
    return DIST


@pytest.fixture
def copy_of_site(dist: Path, tmp_path: Path) -> Callable[[str], Path]:
    """Make a copy whose files may be replaced (not changed in place: they are links to the built ones)."""

    def copy(name: str) -> Path:
        shutil.copytree(dist, tmp_path / name, copy_function=os.link)
        return tmp_path / name

    return copy


@pytest.fixture
def serve() -> Iterator[Callable[..., Site]]:
    """Serve folders until the test ends."""
    running: list[Site] = []

    def start(folder: Path, handler: type[Handler] = Handler, port: int = 0) -> Site:
        site = Site(folder, port, handler=handler)
        running.append(site.__enter__())
        return site

    yield start
    for site in running:
        site.__exit__()


@pytest.fixture(scope="session")
def chromium_path() -> Path:
    return chromium()


@pytest.fixture(scope="session")
def playwright(chromium_path: Path) -> Iterator[Playwright]:
    """After chromium_path, which tries its find with a Playwright of its own."""
    assert chromium_path
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright: Playwright, chromium_path: Path) -> Iterator[Browser]:
    running = playwright.chromium.launch(executable_path=chromium_path, args=ARGUMENTS)
    yield running
    running.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page that remembers what went wrong in it (page.problems) and keeps no offline copy."""
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    watch(page)
    yield page
    context.close()


@pytest.fixture
def profile(playwright: Playwright, chromium_path: Path, tmp_path: Path):
    """A browser process on a profile that outlives it: `with profile() as context`. Each time a fresh process."""

    @contextmanager
    def launch() -> Iterator[BrowserContext]:
        context = playwright.chromium.launch_persistent_context(tmp_path / "profile", executable_path=chromium_path, args=ARGUMENTS)
        try:
            yield context
        finally:
            context.close()

    return launch


@pytest.fixture
def ask_core(dist: Path) -> Callable[..., list[dict]]:
    """Ask the shipped core inside the browser."""

    def ask(page: Page, *requests: dict) -> list[dict]:
        script = next((dist / "assets").glob("worker-*.js")).relative_to(dist)
        replies = page.evaluate(ASK, [f"./{script}", [json.dumps(request) for request in requests]])
        return [json.loads(reply) for reply in replies]

    return ask


@pytest.fixture
def opened(browser: Browser, serve, dist) -> Iterator[Callable[..., Page]]:
    """Open the page in a browser of its own, in a size and a light, worked out by its own core unless told otherwise."""
    site = serve(dist)
    contexts = []

    def open_page(size=PHONE, computed: bool = True, **how) -> Page:
        context = browser.new_context(viewport=size, service_workers="block", **how)
        contexts.append(context)
        page = context.new_page()
        watch(page)
        page.goto(site.url)
        if computed:
            settle(page)
        return page

    yield open_page
    for context in contexts:
        context.close()
