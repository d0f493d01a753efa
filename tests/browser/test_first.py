"""The very first script: whatever keeps the page from standing is named, and the saved jobs are handed out all the same."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import Page, expect

from tests.browser.helpers import PATIENCE, field, kept, replace, wait_for_core, watch
from web.toolchain.server import Handler

HTML = b"<!doctype html><title>Sign in to the network</title>"


def one(folder, pattern: str):
    """A file of the site by its name; a copy's files are links and may only be replaced."""
    return next(iter((folder / "assets").glob(pattern)))


def cut(content: bytes) -> bytes:
    return content[: len(content) // 2]


@pytest.mark.parametrize("name", ["index-*.js", "early-*.js"])
@pytest.mark.parametrize(
    ("make", "says"),
    [(lambda _: None, "is not on the server (HTTP 404)"), (cut, "arrived incomplete"), (lambda _: HTML, "arrived incomplete"), (lambda _: b"", "arrived incomplete")],
    ids=["missing", "truncated", "html", "empty"],
)  # fmt: skip
def test_a_script_of_the_page_is_named_and_trying_again_mends_it(browser, serve, copy_of_site, name, make, says):
    folder = copy_of_site("site")
    path = one(folder, name)
    content = path.read_bytes()
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    site = serve(folder)
    page.goto(site.url)
    field(page, "rider.mass").fill("92")
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    replace(path, make(content))
    page.reload()
    notice = page.locator("[data-first]")
    expect(notice).to_contain_text(path.name, timeout=PATIENCE)
    expect(notice).to_contain_text(says, timeout=PATIENCE)
    expect(notice).not_to_contain_text("too old")
    assert handed_out(page)[0]["rider"]["mass"]["value"] == "92 kg"
    if path.exists():
        path.unlink()
    path.write_bytes(content)
    notice.get_by_role("button", name="Try again").click()
    expect(field(page, "rider.mass")).to_have_value("92", timeout=PATIENCE)
    expect(page.locator("[data-first]")).to_have_count(0)
    context.close()


def handed_out(page: Page) -> list[dict]:
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save my jobs as a file").click()
    saved = json.loads(coming.value.path().read_text())
    assert saved["format"] == "stanchion-jobs"
    return saved["jobs"]


def test_a_page_sent_in_place_of_a_script_is_named_as_that(browser, serve, copy_of_site):
    """As a network that wants a sign-in does: every script is answered by its own page."""

    class SignIn(Handler):
        def send(self, status, body, headers, with_body):
            if "/assets/index-" in self.path and ".js" in self.path:
                body, headers = HTML, {"Content-Type": "text/html"}
            super().send(status, body, headers, with_body)

    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(serve(copy_of_site("site"), SignIn).url)
    expect(page.locator("[data-first]")).to_contain_text("the server sent a web page", timeout=PATIENCE)
    context.close()


@pytest.mark.parametrize(
    ("content", "says"),
    [(None, "HTTP 404"), (HTML, "demo's file"), (b"{", "demo's file"), (b"{}", "holds no demo"), (b"null", "holds no demo")],
)
def test_a_bad_demo_file_is_named_and_the_page_stands(browser, serve, copy_of_site, content, says):
    folder = copy_of_site("site")
    replace(one(folder, "enduro-*.json"), content)
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    watch(page)
    page.goto(serve(folder).url)
    expect(page.locator(".news [role=alert], .status [role=alert]").first).to_contain_text(says, timeout=PATIENCE)
    wait_for_core(page)
    expect(page.locator("[data-first]")).to_have_count(0)
    context.close()


RECORDS: list[dict] = [
    {},
    {"job": None},
    {"job": 5, "redo": []},
    {"job": {}, "redo": []},
    {"job": {"format": "stanchion-job"}},
    {"name": 7, "report": {}, "good": {}},
    {"report": {"ends": {"front": {}, "rear": {}}}, "good": {"front": {}, "rear": {}}},
]


@pytest.mark.parametrize("record", RECORDS, ids=range(len(RECORDS)))
def test_a_stored_record_without_its_parts_does_not_stop_the_page(opened, record):
    page = opened(computed=False)
    field(page, "rider.mass").fill("92")
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    page.evaluate(
        """(record) => new Promise((done) => {
        const opening = indexedDB.open('stanchion')
        opening.onsuccess = () => {
            const going = opening.result.transaction(['rows', 'heads', 'answers', 'settings'], 'readwrite')
            going.objectStore('rows').put({ ...record, id: 'demo:enduro', rev: 999 })
            going.objectStore('heads').put({ ...record, id: 'broken' })
            going.objectStore('answers').put({ ...record, id: 'demo:enduro' })
            going.objectStore('settings').put(record, 'current')
            going.oncomplete = () => (opening.result.close(), done())
        }
    })""",
        record,
    )
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("92", timeout=PATIENCE)
    wait_for_core(page)
    assert page.problems == []


def test_a_browser_below_the_floor_is_told_so_and_nobody_else(browser, serve, copy_of_site):
    folder = copy_of_site("site")
    replace(one(folder, "index-*.js"), b"an old browser reads no modules")
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.add_init_script("delete HTMLScriptElement.prototype.noModule")
    page.goto(serve(folder).url)
    expect(page.locator("[data-first=old-browser]")).to_contain_text("Safari 16.4", timeout=PATIENCE)
    context.close()


def test_jobs_that_version_1_kept_are_taken_over(browser, serve, dist):
    """Its database, made before the page first opens: both jobs are there, under version 2, with what they said."""
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    site = serve(dist)
    page.goto(f"{site.url}files.json")
    page.evaluate("""() => new Promise((done) => {
        const opening = indexedDB.open('stanchion', 1)
        opening.onupgradeneeded = () => {
            const job = (name, mass) => ({ job: { format: 'stanchion-job', version: 1, name, date: '', invented: name !== 'Mine', note: '',
                bike: { use: 'enduro' }, rider: { mass } }, report: null, good: { front: null, rear: null } })
            opening.result.createObjectStore('jobs').put(job('Brackwater 300 E', '101 kg'), 'demo')
            opening.transaction.objectStore('jobs').put(job('Mine', '77 kg'), 'own')
            opening.result.createObjectStore('settings').put('own', 'current')
        }
        opening.onsuccess = () => (opening.result.close(), done())
    })""")
    page.goto(site.url)
    expect(field(page, "rider.mass")).to_have_value("77", timeout=PATIENCE)
    expect(page.locator(".job-name")).to_have_text("Mine")
    assert kept(page, "demo:enduro")["row"]["job"]["rider"]["mass"] == "101 kg"
    context.close()
