"""The start ends in a ready core or in a failure that has a name, words and a way out; never in waiting for ever."""

from __future__ import annotations

from threading import Event

import pytest
from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, replace, wait_for_core
from web.toolchain.server import Handler

WASM = "pyodide.asm.wasm"
PARTS = [WASM, "stdlib.zip.wasm", "numpy.pack.wasm", "core.pack.wasm", "pyodide.mjs", "pyodide.asm.mjs"]
EMPTY_MODULE = b"\0asm\1\0\0\0"  # valid WebAssembly, and not ours
OLD_WORKER = """
const Real = Worker
window.Worker = class { constructor(script, { name }) { return new Real(script, { name }) } }
"""


def expect_failure(page, reason: str, *, says: str = "") -> None:
    """The failure is on the page in words, with its report, and the page has not been loaded again by itself."""
    notice = page.locator(f"[data-reason={reason}]")
    expect(notice).to_be_visible(timeout=PATIENCE)
    expect(notice).to_contain_text(says)
    expect(notice.get_by_role("button", name="Try again")).to_be_visible()
    assert f"reason: {reason}" in notice.locator("pre").text_content()
    assert page.evaluate("performance.getEntriesByType('navigation')[0].type") == "navigate"
    assert page.locator("html").get_attribute("data-core") == "failed"


def test_start_to_a_computed_answer(page, serve, dist, ask_core):
    site = serve(dist)
    page.goto(site.url)
    wait_for_core(page)
    (started,) = ask_core(page, {"kind": "start", "use": "enduro", "rider": "104 kg"})
    assert started["kind"] == "job", started
    report, nonsense = ask_core(page, {"kind": "size", "job": started["job"]}, {"kind": "size", "job": 1})
    assert report["kind"] == "report", report
    assert nonsense["kind"] == "failure"
    assert page.evaluate("performance.getEntriesByName('stanchion:first-screen').length") == 1
    # The service worker is blocked for this page; nothing else may go wrong, the security policy included.
    assert [said for said in page.problems if "service worker" not in said.lower()] == []


def test_the_worker_is_under_way_before_the_bundle(page, serve, dist):
    """The page's own bundle is held back until the core's wasm is asked for: what waited for the bundle would wait in vain."""
    asked, waited = Event(), []

    class HoldingTheBundle(Handler):
        def answer(self, with_body):
            if WASM in self.path:
                asked.set()
            if "/assets/index-" in self.path and ".js" in self.path:
                waited.append(asked.wait(30))
            super().answer(with_body)

    site = serve(dist, HoldingTheBundle)
    page.goto(site.url)
    wait_for_core(page)
    assert waited == [True], "the wasm is asked for while the bundle is on its way"
    assert [sent.path for sent in site.sent].count(f"/runtime/{WASM}") == 1, "the wasm is fetched once"


@pytest.mark.parametrize("name", PARTS)
def test_missing_file_is_named_and_can_be_mended(page, serve, copy_of_site, name):
    folder = copy_of_site("site")
    path = folder / "runtime" / name
    content = path.read_bytes()
    replace(path, None)
    page.goto(serve(folder).url)
    expect_failure(page, "missing-file", says=name)
    path.write_bytes(content)
    page.locator("[data-reason]").get_by_role("button", name="Try again").click()
    wait_for_core(page)
    expect(page.locator("[data-reason]")).to_have_count(0)


@pytest.mark.parametrize("name", PARTS)
def test_truncated_file_is_named(page, serve, copy_of_site, name):
    folder = copy_of_site("site")
    path = folder / "runtime" / name
    replace(path, path.read_bytes()[:-100])
    page.goto(serve(folder).url)
    expect_failure(page, "damaged-file", says=name)


@pytest.mark.parametrize("name", PARTS[:4])
def test_changed_byte_is_found_by_hash(page, serve, copy_of_site, name):
    folder = copy_of_site("site")
    path = folder / "runtime" / name
    content = bytearray(path.read_bytes())
    content[-20] ^= 1
    replace(path, bytes(content))
    page.goto(serve(folder).url)
    expect_failure(page, "damaged-file", says=name)


def test_wrong_wasm_file(page, serve, copy_of_site):
    folder = copy_of_site("site")
    replace(folder / "runtime" / WASM, EMPTY_MODULE)
    page.goto(serve(folder).url)
    expect_failure(page, "damaged-file", says=WASM)


def test_wrong_wasm_file_over_plain_http(page, serve, copy_of_site):
    """Without a secure context there is no digest, and Pyodide waits for ever on a module that is not its own."""
    folder = copy_of_site("site")
    path = folder / "runtime" / WASM
    padding = path.stat().st_size - len(EMPTY_MODULE) - 5
    size = bytes((padding >> shift) & 0x7F | (0x80 if shift < 21 else 0) for shift in (0, 7, 14, 21))
    custom_section = b"\0" + size + b"\0" * padding
    replace(path, EMPTY_MODULE + custom_section)
    site = serve(folder)
    page.goto(f"http://plain.test:{site.server_port}/")
    expect_failure(page, "stalled")


def test_plain_http_computes_and_claims_nothing(page, serve, dist):
    site = serve(dist)
    page.goto(f"http://plain.test:{site.server_port}/#door")
    wait_for_core(page)
    expect(page.locator("[data-offline]")).to_have_attribute("data-offline", "not-possible")
    expect(page.locator("[data-offline]")).to_contain_text("plain http")


def test_no_webassembly(page, serve, dist):
    page.add_init_script("delete window.WebAssembly")
    page.goto(serve(dist).url)
    expect_failure(page, "no-webassembly", says="WebAssembly")


def test_browser_without_module_workers(page, serve, dist):
    page.add_init_script(OLD_WORKER)
    page.goto(serve(dist).url)
    expect_failure(page, "old-browser", says="Safari 16.4")


def test_worker_script_does_not_arrive(page, serve, copy_of_site):
    folder = copy_of_site("site")
    replace(next((folder / "assets").glob("worker-*.js")), None)
    page.goto(serve(folder).url)
    expect_failure(page, "blocked-worker")


def test_core_that_cannot_be_imported(page, serve, copy_of_site):
    """Over plain http the pack's length is all that is checked: the interpreter itself then finds the damage."""
    folder = copy_of_site("site")
    path = folder / "runtime" / "core.pack.wasm"
    content = path.read_bytes()
    header = 4 + int.from_bytes(content[:4], "little")
    replace(path, content[:header] + b"\0" * (len(content) - header))
    site = serve(folder)
    page.goto(f"http://plain.test:{site.server_port}/")
    expect_failure(page, "broken-core")


class Cutting(Handler):
    """Promises the whole wasm and hangs up half way."""

    def send(self, status, body, headers, with_body):
        if WASM not in self.path:
            return super().send(status, body, headers, with_body)
        self.send_response(status)
        for name, value in {**headers, "Content-Length": str(len(body))}.items():
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(body[: len(body) // 2])
        self.close_connection = True
        return None


def test_connection_that_breaks_off(page, serve, dist):
    page.goto(serve(dist, Cutting).url)
    expect_failure(page, "no-connection", says=WASM)


class Mistyped(Handler):
    """A host that does not know .wasm."""

    def send(self, status, body, headers, with_body):
        if ".wasm" in self.path:
            headers = {**headers, "Content-Type": "application/octet-stream"}
        return super().send(status, body, headers, with_body)


def test_host_that_does_not_know_wasm(page, serve, dist):
    page.goto(serve(dist, Mistyped).url)
    wait_for_core(page)


def test_start_that_never_settles(page, serve, dist):
    released = Event()

    class Holding(Handler):
        def answer(self, with_body):
            if WASM in self.path:
                released.wait(90)
            super().answer(with_body)

    page.goto(serve(dist, Holding).url)
    expect_failure(page, "stalled", says="halt")
    assert "of" in page.locator("[data-reason] pre").text_content()
    released.set()
    wait_for_core(page)  # late is better than never
