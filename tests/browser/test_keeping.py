"""Nothing entered is lost: two tabs, a full device, a lost database, a reload while typing, a browser that is killed."""

from __future__ import annotations

import contextlib
import json
import os
import signal
import socket
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright, expect

from tests.browser.helpers import ARGUMENTS, DEMO, PATIENCE, answer, field, kept, settle, wait_for_core

LIMIT = 30.0  # [s] for a browser to start on a busy machine


def mass_of(job: dict) -> str:
    return job["rider"]["mass"]["value"].removesuffix(" kg")


@contextlib.contextmanager
def killable(playwright: Playwright, chromium: Path, profile: Path) -> Iterator[tuple[BrowserContext, subprocess.Popen]]:
    """A browser whose processes can be killed all at once, as a phone or a flat battery does."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    process = subprocess.Popen(
        [str(chromium), *ARGUMENTS, f"--user-data-dir={profile}", f"--remote-debugging-port={port}", "about:blank"],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        browser = connected(playwright, port)
        yield browser.contexts[0], process
    finally:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)
        process.wait()
        for lock in profile.glob("Singleton*"):
            lock.unlink()


def connected(playwright: Playwright, port: int):
    until = time.monotonic() + LIMIT
    while True:
        try:
            return playwright.chromium.connect_over_cdp(f"http://127.0.0.1:{port}")
        except Exception:
            if time.monotonic() > until:
                raise
            time.sleep(0.1)


RUNS = 10


@pytest.mark.timeout(400)
@pytest.mark.parametrize("stood", [0, 50, 200, 2000])
def test_a_reading_outlives_a_browser_that_is_killed(playwright, chromium_path, serve, dist, tmp_path, stood):
    """Typed, stood so many ms, every process killed: what stood 50 ms is there at the next start; what is there was typed."""
    url = serve(dist).url
    lost, before = [], "104"
    for run in range(RUNS + 1):
        with killable(playwright, chromium_path, tmp_path / "profile") as (context, process):
            page = context.new_page()
            page.goto(url)
            mass = field(page, "rider.mass")
            expect(mass).to_be_visible(timeout=PATIENCE)
            found = mass.input_value()
            if found != before:
                lost.append((before, found))
            if run == RUNS:
                break
            before = str(60 + run)
            mass.fill("")
            mass.press_sequentially(before)
            time.sleep(stood / 1000)
            os.killpg(process.pid, signal.SIGKILL)
    # Killed at once, the last key or two may be gone; what stands is still what was typed, whole, or what stood before.
    assert stood < 50 or lost == []
    assert all(was.startswith(found) or found in ("104", *map(str, range(60, 60 + RUNS))) for was, found in lost)


def two_tabs(profile_context: BrowserContext, url: str) -> tuple[Page, Page]:
    one, two = profile_context.new_page(), profile_context.new_page()
    for page in (one, two):
        page.goto(url)
        settle(page)
    return one, two


def hide_and_show(page: Page) -> None:
    for state in ("hidden", "visible"):
        page.evaluate(
            """(state) => {
            Object.defineProperty(document, 'visibilityState', { value: state, configurable: true })
            document.dispatchEvent(new Event('visibilitychange'))
        }""",
            state,
        )


def test_two_tabs_are_in_step_and_neither_takes_anything_from_the_other(browser, serve, dist):
    context = browser.new_context(service_workers="block")
    one, two = two_tabs(context, serve(dist).url)
    field(one, "rider.mass").fill("92")
    expect(field(two, "rider.mass")).to_have_value("92", timeout=PATIENCE)
    # Hiding an idle tab, the one that was there first too, writes nothing.
    for page in (one, two):
        hide_and_show(page)
    field(two, "rider.front_axle").fill("99")
    expect(field(one, "rider.front_axle")).to_have_value("99", timeout=PATIENCE)
    expect(field(one, "rider.mass")).to_have_value("92")
    # At once in both: a field each.
    for page, path, value in ((one, "rider.mass", "93"), (two, "rider.front_axle", "98")):
        page.evaluate(
            """([path, value]) => {
            const field = document.querySelector(`[name='${path}']`)
            field.value = value
            field.dispatchEvent(new Event('input', { bubbles: true }))
        }""",
            [path, value],
        )
    for page in (one, two):
        expect(field(page, "rider.mass")).to_have_value("93", timeout=PATIENCE)
        expect(field(page, "rider.front_axle")).to_have_value("98", timeout=PATIENCE)
    settle(one)
    settle(two)
    for page in (one, two):
        expect(answer(page)).to_contain_text("Of 10 runs", timeout=PATIENCE)  # how sure it is comes last
    expect(answer(two)).to_have_text(answer(one).inner_text(), use_inner_text=True, timeout=PATIENCE)
    job = kept(one)["row"]["job"]
    assert (mass_of(job), job["rider"]["front_axle"]["value"]) == ("93", "98 kg")
    context.close()


def test_a_reload_while_typing_keeps_every_key(opened):
    page = opened()
    mass = field(page, "rider.mass")
    for digits in ("9", "91", "91.", "91.5"):
        mass.fill(digits)
        page.reload()
        expect(field(page, "rider.mass")).to_have_value(digits)


# A device with no room: every write is refused as the browser refuses it, for as long as the flag stands. The browser's own limit
# (Storage.overrideQuotaForOrigin) is looked at seconds late, or not at all while it remembers how much room there was.
FULL = """() => {
  for (const name of ['add', 'put']) {
    const write = IDBObjectStore.prototype[name]
    IDBObjectStore.prototype[name] = function (...what) {
      if (localStorage.getItem('test-full')) throw new DOMException('full', 'QuotaExceededError')
      return write.apply(this, what)
    }
  }
}"""


def test_a_full_device_says_so_and_hands_the_job_out(browser, serve, dist):
    context = browser.new_context(service_workers="block")
    context.add_init_script(f"({FULL})()")
    page = context.new_page()
    page.goto(serve(dist).url)
    settle(page)
    page.evaluate("localStorage.setItem('test-full', 'yes')")
    field(page, "rider.mass").fill("92")
    failed = page.locator("[data-keep=failed]")
    expect(failed).to_contain_text("no room", timeout=PATIENCE)
    with page.expect_download() as coming:
        failed.get_by_role("button", name="Save this job's file").click()
    assert mass_of(json.loads(coming.value.path().read_text())) == "92"
    # A reload finds it in the last words.
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("92", timeout=PATIENCE)
    page.evaluate("localStorage.removeItem('test-full')")
    expect(failed).to_have_count(0, timeout=PATIENCE)  # it is tried again by itself
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))", timeout=PATIENCE)
    assert mass_of(kept(page)["row"]["job"]) == "92"
    context.close()


def test_a_database_lost_under_an_open_page_is_made_again(opened):
    page = opened()
    field(page, "rider.mass").fill("92")
    page.evaluate("""() => new Promise((done, fail) => {
        const going = indexedDB.deleteDatabase('stanchion')
        going.onsuccess = done
        going.onerror = fail
    })""")
    field(page, "rider.front_axle").fill("99")
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("92")
    expect(field(page, "rider.front_axle")).to_have_value("99")


@pytest.mark.parametrize("words", ["null", "5", '"x"', "{}", '{"rev": 1e9, "job": null}', "not JSON"])
def test_last_words_that_are_none_do_not_stop_the_page(opened, words):
    page = opened(computed=False)
    field(page, "rider.mass").fill("92")
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    page.evaluate(
        """(words) => ['stanchion-unwritten', 'stanchion-words:demo:enduro', 'stanchion-words:x']
        .forEach((key) => localStorage.setItem(key, words))""",
        words,
    )
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("92")
    assert page.problems == []


def test_words_that_the_database_has_overtaken_are_not_believed(opened):
    page = opened(computed=False)
    field(page, "rider.mass").fill("92")
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    row = kept(page)["row"]
    old = row["job"] | {"rider": {"mass": "70"}}
    words = json.dumps({"rev": row["rev"], "job": old})
    page.evaluate("([key, words]) => localStorage.setItem(key, words)", [f"stanchion-words:{DEMO}", words])
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("92")


# A core that dies while it answers an edit, as for want of memory: the worker is gone and nobody is told.
DYING = """
const Real = Worker
window.workers = []
window.Worker = class extends Real {
  constructor(...how) { super(...how); window.workers.push(this) }
  postMessage(message) {
    if (!window.swallow || JSON.parse(message.text).kind !== 'figures') return super.postMessage(message)
    window.swallow -= 1
    this.terminate()
  }
}
"""


def test_an_answer_that_died_with_its_worker_is_asked_again(browser, serve, dist):
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.add_init_script(DYING)
    page.goto(serve(dist).url)
    settle(page)
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    page.evaluate("window.swallow = 1")
    field(page, "rider.mass").fill("70")
    # The old answer is marked while it is not the answer to what stands there, and gives way to the right one by itself.
    expect(answer(page)).to_have_attribute("data-stale", "saved", timeout=3_000)
    expect(answer(page)).not_to_contain_text("Fit 4.6 N/mm", timeout=PATIENCE)
    expect(answer(page)).to_have_attribute("data-stale", "no", timeout=PATIENCE)
    assert page.evaluate("workers.length") == 2
    context.close()


def test_a_page_that_was_frozen_asks_again(opened):
    page = opened()
    expect(answer(page)).to_have_attribute("data-stale", "no", timeout=PATIENCE)
    # What is asked again may be answered within a frame or two: every change is written down where it happens.
    page.evaluate("""() => {
      const answer = document.querySelector('[data-answer=front]')
      window.seen = []
      new MutationObserver(() => window.seen.push(answer.dataset.stale)).observe(answer, { attributes: true })
      document.dispatchEvent(new Event('resume'))
    }""")
    page.wait_for_function("() => seen[0] === 'saved' && seen.at(-1) === 'no'", timeout=PATIENCE)


def test_try_again_asks_again(browser, serve, copy_of_site):
    folder = copy_of_site("site")
    wasm = folder / "runtime" / "core.pack.wasm"
    content = wasm.read_bytes()
    wasm.unlink()
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(serve(folder).url)
    wait_for_core(page, "failed")
    field(page, "rider.mass").fill("70")
    expect(answer(page)).to_have_attribute("data-stale", "saved")
    wasm.write_bytes(content)
    page.get_by_role("button", name="Try again").click()
    expect(answer(page)).to_have_attribute("data-stale", "no", timeout=PATIENCE)
    expect(answer(page)).not_to_contain_text("Fit 4.6 N/mm")
    context.close()
