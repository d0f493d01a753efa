"""By keyboard, by finger and by screen reader, in every light and size."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.helpers import DESK, PHONE, answer, field, row
from web.toolchain.places import MODULES

AXE = MODULES / "axe-core" / "axe.min.js"
LIGHTS: dict[str, dict] = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "sun": {},
    "more": {"contrast": "more"},
    "forced": {"forced_colors": "active"},
}


def test_by_keyboard_alone(opened):
    page = opened(DESK)
    page.keyboard.press("Tab")
    expect(page.locator(".skip")).to_be_focused()
    reach(page, "button", "Start your own")
    page.keyboard.press("Enter")
    expect(page.locator("#start-name")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.type("Enduro")
    page.keyboard.press("Tab")
    page.keyboard.type("88")
    page.keyboard.press("Enter")
    expect(page.locator("#sheet form")).to_have_count(0)
    reach(page, "input", "rider.mass")
    expect(page.locator(":focus")).to_have_value("88")
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_attribute("aria-label", re.compile("^Unit: kg"))
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(row(page, "rider.mass").locator(".panel")).to_be_visible()
    visible = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert visible == "solid", "the focus can be seen"


def reach(page: Page, tag: str, what: str, most: int = 60) -> None:
    """Tab until the focus is on an element with this name or these words."""
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate("([tag, what]) => { const e = document.activeElement;"
                         " return e.localName === tag && (e.name === what || e.textContent.includes(what)) }", [tag, what]):
            return
    raise AssertionError(f"{what} is not reached by the keyboard")


def folded_open(page: Page) -> None:
    """Everything that can be unfolded, unfolded, so that it is looked at too."""
    for summary in page.locator("main summary").all():
        if summary.is_visible():
            summary.click()
    row(page, "rider.mass").locator(".spread").click()
    field(page, "place.ridden_altitude").fill("1,250")
    expect(page.locator(".readings button")).to_have_count(2)


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing(opened, size, light):
    page = opened(size, reduced_motion="reduce", **LIGHTS[light])
    if light == "sun":
        page.get_by_role("button", name="Job ›").click()
        page.get_by_label("Sun").check()
    found = violations(page)
    folded_open(page)
    page.get_by_role("button", name="Start your own").first.click()
    found += violations(page)
    assert found == [], json.dumps(found, indent=1)[:4000]


def violations(page: Page) -> list[dict]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    result = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    assert result["passes"], "axe looked at nothing"
    return [{"id": v["id"], "nodes": [n["html"][:160] + " | " + (n.get("failureSummary") or "")[:300] for n in v["nodes"][:4]]}
            for v in result["violations"]]


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_everything_is_in_reach(opened, size):
    """Nothing is cut off sideways, text is at least 16 px, targets at least 48 px (24 px inside a line of words)."""
    page = opened(size)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "the page does not scroll sideways"
    small = page.evaluate("""() => [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() &&
        [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()) && parseFloat(getComputedStyle(e).fontSize) < 15.99)
        .map((e) => e.outerHTML.slice(0, 120))""")
    assert small == []
    low = page.evaluate("""() => [...document.querySelectorAll('button, summary, label.button, nav a')].filter((e) =>
        e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 120))""")
    assert low == []


def test_strip_stays_in_view(opened):
    page = opened(reduced_motion="reduce")
    for place in (0, 1200, 3000):
        page.evaluate(f"scrollTo(0, {place})")
        box = page.locator("[data-strip]").bounding_box()
        assert box["y"] + box["height"] == pytest.approx(PHONE["height"], abs=1)
    field(page, "rear.travel").focus()
    inside = field(page, "rear.travel").bounding_box()
    assert inside["y"] + inside["height"] < page.locator("[data-strip]").bounding_box()["y"], "the strip hides no field in use"


def test_look_is_chosen_and_kept(opened):
    page = opened()
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    light = page.evaluate(ground)
    page.get_by_role("button", name="Job ›").click()
    page.get_by_label("Dark").check()
    assert page.evaluate(ground) != light
    page.reload()
    expect(answer(page)).to_be_visible()
    assert page.evaluate("document.documentElement.dataset.theme") == "dark"
