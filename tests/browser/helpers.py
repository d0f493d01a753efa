"""What the browser tests share beside their fixtures."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from web.toolchain.browser import FLAGS

# Beside the common flags, a name for this machine that is no secure context, as a network address is none.
ARGUMENTS = [*FLAGS, "--host-resolver-rules=MAP plain.test 127.0.0.1"]
PHONE = {"width": 390, "height": 844}
DESK = {"width": 1280, "height": 800}
PATIENCE = 60_000  # [ms] for a start on a busy machine

# A worker of the test's own on the shipped script and archives, asked one thing after another.
ASK = """async ([script, requests]) => {
  const name = JSON.stringify({ runtime: new URL('runtime/', document.baseURI).href, verify: true })
  const worker = new Worker(script, { type: 'module', name })
  const replies = []
  return await new Promise((resolve, reject) => {
    const next = () => replies.length < requests.length
      ? worker.postMessage({ id: replies.length, text: requests[replies.length] })
      : (worker.terminate(), resolve(replies))
    worker.onerror = (event) => reject(new Error(event.message || 'the worker script did not load'))
    worker.onmessage = ({ data }) => {
      if (data.type === 'failed' || data.type === 'broken') reject(new Error(JSON.stringify(data)))
      if (data.type === 'answer') replies.push(data.text)
      if (data.type === 'answer' || data.type === 'ready') next()
    }
  })
}"""


def replace(path: Path, content: bytes | None) -> None:
    """Put other bytes in place of a linked file, or take it away."""
    path.unlink()
    if content is not None:
        path.write_bytes(content)


def watch(page: Page) -> None:
    page.problems = []  # type: ignore[attr-defined]
    page.on("pageerror", lambda error: page.problems.append(str(error)))
    page.on("console", lambda said: said.type == "error" and page.problems.append(said.text))


def wait_for_core(page: Page, state: str = "ready") -> None:
    page.wait_for_selector(f"html[data-core={state}]", state="attached", timeout=PATIENCE)


def settle(page: Page) -> None:
    """Wait until what stands on the page is worked out by the page's own core."""
    wait_for_core(page)
    expect(page.locator("[data-stale=saved]")).to_have_count(0, timeout=PATIENCE)


KEPT = """(id) => new Promise((done) => {
    const opening = indexedDB.open('stanchion')
    opening.onsuccess = () => {
        const db = opening.result
        const going = db.transaction(['rows', 'answers', 'heads'])
        const found = {}
        going.objectStore('rows').openCursor(IDBKeyRange.bound([id, 0], [id, Infinity]), 'prev').onsuccess =
            ({ target }) => (found.row = target.result?.value)
        going.objectStore('answers').get(id).onsuccess = ({ target }) => (found.answer = target.result)
        going.objectStore('heads').get(id).onsuccess = ({ target }) => (found.head = target.result)
        going.oncomplete = () => (db.close(), done(found))
    }
})"""
DEMO = "demo:enduro"


def kept(page: Page, job: str = DEMO) -> dict:
    """What the database holds of a job: its newest row, its answer and its line in the list."""
    return page.evaluate(KEPT, job)


def until_kept(page: Page, state: str) -> None:
    """Wait until the demo job's kept report has its front in this state: writing to the disk takes its time."""
    page.wait_for_function(
        f"async ([id, state]) => (await ({KEPT})(id)).answer?.report?.ends.front.state === state",
        arg=[DEMO, state],
        timeout=PATIENCE,
    )


def at(page: Page, room: str) -> Page:
    """Go to a place by its tile, or to the door; stay where that is here already."""
    page.locator(".page").wait_for()
    if page.locator(f".at-{room}").count() == 0:
        if room != "door" and page.locator(".at-door").count():
            page.evaluate("(room) => void (location.hash = room)", room)  # by address: the door has no tiles
        else:
            page.locator(".head-back" if room == "door" else f".bar a[href^='#{room}']").click()
    page.locator(f".place-{room}").wait_for()
    return page


# What a link to a field does, from anywhere on the page.
FOLLOW = """(path) => {
  const link = document.body.appendChild(document.createElement('a'))
  link.href = `#${path}`
  link.click()
  link.remove()
}"""


def bring(page: Page, path: str) -> None:
    """Bring a field out, as every link to it does: its place, its fold, the hand on it."""
    page.locator(".place").wait_for()
    if not page.locator(f"[name='{path}']").is_visible():
        page.evaluate(FOLLOW, path)
        page.locator(f"[name='{path}']").wait_for()
        page.wait_for_function("(path) => document.activeElement?.name === path", arg=path)


def field(page: Page, path: str) -> Locator:
    """A field, brought out where its place is another or its fold is closed."""
    bring(page, path)
    return page.locator(f"[name='{path}']")


def row(page: Page, path: str) -> Locator:
    bring(page, path)
    return page.locator(f"[id='{path}']")


def answer(page: Page, end: str = "front") -> Locator:
    """An end's answer, in its place."""
    at(page, end)
    return page.locator(f"[data-answer={end}]")


def unfold(page: Page) -> None:
    """Open every fold of the place, those too that come with the report while others are being opened."""
    closed = page.locator(".fold:not(.open) > h2 > button")
    while closed.count():
        closed.first.click()


def start_own(page: Page, use: str, rider: str) -> None:
    """A job of one's own from two answers."""
    at(page, "door").get_by_role("button", name="New job").click()
    page.get_by_label("Riding").select_option(use)
    page.get_by_label("Rider in full kit").fill(rider)
    page.get_by_role("button", name="Work it out").click()
