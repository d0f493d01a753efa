"""How every place looks, at two sizes, against pictures that were looked at: what moves by more than a hair is seen.

STANCHION_LOOKS=new python3 build.py test browser -k looks draws them anew; look at each before it is committed.
"""

from __future__ import annotations

import base64
import os
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, answer, at
from tests.browser.mybike import walk

PICTURES = Path(__file__).parent / "looks"
PLACES = ("door", "bike", "front", "rear", "check", "card")
OFF = 0.004  # of the pixels: another version of the browser draws the edges of letters and lines a little otherwise

# How many of two pictures' pixels differ visibly, and how they differ in size. The browser decodes them, as it drew them.
COMPARE = """async ([one, other]) => {
  const pixels = async (data) => {
    const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(data), (byte) => byte.charCodeAt(0))]))
    const canvas = new OffscreenCanvas(picture.width, picture.height).getContext('2d')
    canvas.drawImage(picture, 0, 0)
    return { size: [picture.width, picture.height], at: canvas.getImageData(0, 0, picture.width, picture.height).data }
  }
  const [a, b] = [await pixels(one), await pixels(other)]
  let off = 0
  for (let i = 0; i < Math.min(a.at.length, b.at.length); i += 4)
    off += Math.max(...[0, 1, 2].map((channel) => Math.abs(a.at[i + channel] - b.at[i + channel]))) > 48
  return { sizes: [a.size, b.size], off: (4 * off) / a.at.length }
}"""


def compared(page, one: bytes, other: bytes) -> dict:
    return page.evaluate(COMPARE, [base64.b64encode(one).decode(), base64.b64encode(other).decode()])


def shot(page) -> bytes:
    """The whole place, once nothing moves on it any more."""
    page.evaluate("window.scrollTo(0, 0)")
    page.wait_for_function("document.fonts.status === 'loaded'")
    last = b""
    for _ in range(20):
        now = page.screenshot(full_page=True, animations="disabled", caret="hide")
        if now == last:
            return now
        last = now
        page.wait_for_timeout(200)
    raise AssertionError("the page does not come to rest")


def unlike(page, name: str) -> dict[str, dict]:
    """How a screen differs from its picture, by the picture's name; nothing where it hardly does."""
    now, kept = shot(page), PICTURES / name
    if os.environ.get("STANCHION_LOOKS") == "new":
        kept.parent.mkdir(exist_ok=True)
        kept.write_bytes(now)
    told = compared(page, now, kept.read_bytes())
    return {name: told} if told["sizes"][0] != told["sizes"][1] or told["off"] > OFF else {}


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_places_look_as_they_were_looked_at(opened, size):
    page = opened(size, color_scheme="light", reduced_motion="reduce")
    for end in ("front", "rear"):
        expect(answer(page, end)).to_contain_text("Of 10", timeout=PATIENCE)  # how sure it is comes last
    wrong = {}
    for place in (*PLACES[1:], PLACES[0]):
        at(page, place)
        page.wait_for_load_state("networkidle")
        wrong |= unlike(page, f"{place}-{size['width']}.png")
    assert wrong == {}


def test_a_customers_reading_and_verdict_look_as_they_were_looked_at(opened):
    page = opened(PHONE, color_scheme="light", reduced_motion="reduce")
    wrong = {}

    def press(locator) -> None:
        if page.locator("h2").first.inner_text().startswith("You on the bike, pushed down"):
            wrong.update(unlike(page, "mybike-aboard-390.png"))
        locator.click()

    walk(page, press)
    assert wrong | unlike(page, "mybike-verdict-390.png") == {}


def test_a_moved_line_is_seen(opened):
    page = opened(color_scheme="light", reduced_motion="reduce")
    before = shot(page)
    page.evaluate("document.querySelector('.answer').style.transform = 'translateY(4px)'")
    assert compared(page, before, shot(page))["off"] > OFF
    assert compared(page, before, before)["off"] == 0
