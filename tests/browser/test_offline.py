"""Ready offline means ready: a fresh browser opens the page and computes with the server gone."""

from __future__ import annotations

import base64
import hashlib
from collections import Counter

import pytest
from playwright.sync_api import Error, expect

from tests.browser.helpers import PATIENCE, answer, at, replace, wait_for_core, watch

OFFERED = "[data-update]"


def open_page(context, url: str):
    page = context.new_page()
    watch(page)
    page.goto(f"{url}#door")  # where the page says how it stands
    return page


def expect_offline(page, state: str) -> None:
    page.wait_for_selector(f"[data-offline={state}]", timeout=PATIENCE)


def second_version(copy_of_site):
    """The site with another title, its service worker's list put right as the build would."""
    second = copy_of_site("second")
    index = second / "index.html"
    old = index.read_bytes()
    new = old.replace(b"<title>Stanchion</title>", b"<title>Stanchion, second</title>")
    assert new != old
    replace(index, new)
    script = (second / "sw.js").read_text()
    for form in (
        lambda data: hashlib.sha256(data).hexdigest(),
        lambda data: base64.b64encode(hashlib.sha256(data).digest()).decode(),
    ):
        assert script.count(form(old)) == 1
        script = script.replace(form(old), form(new))
    replace(second / "sw.js", script.encode())
    return second


@pytest.mark.parametrize("browsers_own_copy", ["kept", "dropped"])
def test_server_gone_and_browser_fresh(serve, dist, profile, ask_core, browsers_own_copy):
    """Also when the browser has dropped what it keeps by itself, as it may at any time."""
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        wait_for_core(page)
        expect_offline(page, "ready")
    site.__exit__()
    with profile() as context:
        with pytest.raises(Error, match="ERR_CONNECTION_REFUSED"):
            # The server is gone indeed, and nothing but the offline copy can answer.
            context.new_page().goto(site.url.replace("localhost", "127.0.0.1"))
        if browsers_own_copy == "dropped":
            context.new_cdp_session(context.pages[0]).send("Network.clearBrowserCache")
        page = open_page(context, site.url)
        wait_for_core(page)
        expect_offline(page, "ready")
        (started,) = ask_core(page, {"kind": "start", "use": "enduro", "rider": "104 kg"})
        (report,) = ask_core(page, {"kind": "size", "job": started["job"]})
        assert report["kind"] == "report", report


def traced(context, page, categories: str, act) -> list[str]:
    """The names of what the browser itself reports while something is done."""
    session = context.new_cdp_session(page)
    names: list[str] = []
    session.on("Tracing.dataCollected", lambda told: names.extend(event["name"] for event in told["value"]))
    over: list[object] = []
    session.on("Tracing.tracingComplete", lambda told: over.append(told))
    session.send("Tracing.start", {"traceConfig": {"includedCategories": categories.split(",")}, "transferMode": "ReportEvents"})
    act()
    session.send("Tracing.end")
    while not over:
        page.wait_for_timeout(50)
    return names


def test_second_visit_takes_the_machine_code_of_the_first(serve, dist, profile):
    """Compiling again was the largest part of a second start."""
    site = serve(dist)

    def visit() -> list[str]:
        with profile() as context:
            page = context.new_page()
            names = traced(context, page, "v8.wasm", lambda: (page.goto(f"{site.url}#door"), wait_for_core(page)))
            expect_offline(page, "ready")
            page.wait_for_timeout(3_000)  # the browser puts the code away a little after it was compiled
            return names

    first, second = visit(), visit()
    assert "wasm.Deserialize" not in first
    assert "wasm.Deserialize" in second, sorted(set(second))


def test_every_byte_is_fetched_once(serve, dist, profile):
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        whole = Counter(sent.path for sent in site.sent if sent.status == 200)
        files = {f"/{path.relative_to(dist).as_posix()}" for path in dist.rglob("*") if path.is_file()}
        assert {f"/runtime/{path.name}" for path in (dist / "runtime").iterdir()} <= set(whole)
        assert {path: times for path, times in whole.items() if times > 1} == {}
        assert set(whole) - {"/"} <= files
        before = len(site.sent)
        page.reload()
        expect_offline(page, "ready")
        # A second visit asks only whether there is a new version, some time after it is up.
        for _ in range(100):
            page.wait_for_timeout(100)
            if len(site.sent) > before:
                break
        page.wait_for_timeout(1000)
        assert [sent.path for sent in site.sent[before:]] == ["/sw.js"]


def test_not_ready_while_a_file_is_missing(serve, copy_of_site, profile):
    folder = copy_of_site("site")
    icon = folder / "icons" / "icon-512.png"
    content = icon.read_bytes()
    replace(icon, None)
    site = serve(folder)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "failed")
        expect(page.locator("[data-offline]")).to_contain_text("icon-512.png")
        icon.write_bytes(content)
        page.locator(".offline-notice").get_by_role("button", name="Fetch again").click()
        expect_offline(page, "ready")


def damage(page, name: str, *, cut: bool = False) -> None:
    """Change a byte of the offline copy, or cut it short."""
    changed = page.evaluate(
        """async ([name, cut]) => {
      let changed = 0
      for (const cacheName of await caches.keys()) {
        const cache = await caches.open(cacheName)
        for (const request of await cache.keys()) {
          if (!request.url.includes(name)) continue
          const held = await cache.match(request)
          const bytes = new Uint8Array(await held.arrayBuffer()).slice(0, cut ? -100 : undefined)
          bytes[bytes.length - 20] ^= 1
          await cache.put(request, new Response(bytes, { headers: { 'Content-Type': held.headers.get('Content-Type') } }))
          changed += 1
        }
      }
      return changed
    }""",
        [name, cut],
    )
    assert changed == 1


def test_damaged_copy_is_found_and_mended(serve, dist, profile):
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        damage(page, "icon-512.png")
        port = site.server_port
        site.__exit__()
        page.reload()
        expect_offline(page, "failed")
        expect(page.locator("[data-offline]")).to_contain_text("icon-512.png")
        serve(dist, port=port)
        page.reload()
        expect_offline(page, "ready")


def test_fetch_everything_again(serve, dist, profile):
    """The way out of a damaged copy that keeps the core from starting, taken by the user."""
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        damage(page, "numpy.pack.wasm", cut=True)
        page.reload()
        failure = page.locator("[data-reason=damaged-file]")
        expect(failure).to_contain_text("numpy.pack.wasm", timeout=PATIENCE)
        failure.get_by_role("button", name="Fetch everything again").click()
        wait_for_core(page)
        expect_offline(page, "ready")
        expect(page.locator("[data-reason]")).to_have_count(0)


def test_fetch_everything_again_without_a_signal_takes_nothing_away(serve, dist, profile):
    """Fetched and checked first, replaced then: with no signal the copy stays, damaged as it is, and opens the page."""
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        damage(page, "numpy.pack.wasm", cut=True)
        port = site.server_port
        site.__exit__()
        page.reload()
        failure = page.locator("[data-reason=damaged-file]")
        expect(failure).to_contain_text("numpy.pack.wasm", timeout=PATIENCE)
        failure.get_by_role("button", name="Fetch everything again").click()
        expect(failure.get_by_role("status")).to_contain_text("the copy that was here is kept", timeout=PATIENCE)
        page.reload()
        expect(answer(page)).to_contain_text("Fit 4.6 N/mm", timeout=PATIENCE)
        again = serve(dist, port=port)
        failure.get_by_role("button", name="Fetch everything again").click()
        wait_for_core(page)
        at(page, "door")  # where the page says how it stands
        expect_offline(page, "ready")
        assert [sent.path for sent in again.sent].count("/runtime/numpy.pack.wasm") >= 1


def test_new_version_is_offered_and_waits(serve, dist, copy_of_site, profile):
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        expect(page.locator(OFFERED)).to_have_count(0)
        site.folder = second_version(copy_of_site)
        page.reload()
        expect(page.locator(OFFERED)).to_be_visible(timeout=PATIENCE)
        page.evaluate("window.untouched = true")
        page.wait_for_timeout(3_000)
        assert page.title() == "Stanchion"
        assert page.evaluate("window.untouched"), "the page was reloaded without being asked"
        page.reload()
        wait_for_core(page)
        assert page.title() == "Stanchion"
        page.locator(OFFERED).get_by_role("button").click()
        expect(page).to_have_title("Stanchion, second", timeout=PATIENCE)
        wait_for_core(page)
        expect_offline(page, "ready")
        expect(page.locator(OFFERED)).to_have_count(0)


def test_nobody_is_stranded_on_an_old_version(serve, dist, copy_of_site, profile):
    """An offer that was never taken: the next fresh start of the browser opens the new version."""
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        site.folder = second_version(copy_of_site)
        page.reload()
        expect(page.locator(OFFERED)).to_be_visible(timeout=PATIENCE)
    with profile() as context:
        page = open_page(context, site.url)
        wait_for_core(page)
        assert page.title() == "Stanchion, second"


def test_offer_comes_to_a_page_left_open(serve, dist, copy_of_site, profile):
    """A page that stays open for days looks for a new version when it comes back into view."""
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        expect_offline(page, "ready")
        site.folder = second_version(copy_of_site)
        page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
        expect(page.locator(OFFERED)).to_be_visible(timeout=PATIENCE)
