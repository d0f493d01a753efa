"""By keyboard, by finger and by screen reader, in every light, size and place."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, answer, at, field, row, unfold
from web.toolchain.places import MODULES

AXE = MODULES / "axe-core" / "axe.min.js"
LIGHTS: dict[str, dict] = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "sun": {},
    "more": {"contrast": "more"},
    "forced": {"forced_colors": "active"},
}
PLACES = ("bike", "front", "rear", "check", "card")
STOPS_TO_PRINT = 20


def stops_until(page: Page, tag: str, what: str, most: int) -> int:
    """Tab until the focus is on an element with this name or these words; how many stops that took."""
    for stop in range(1, most + 1):
        page.keyboard.press("Tab")
        if page.evaluate(
            "([tag, what]) => { const e = document.activeElement;"
            " return e.localName === tag && (e.name === what || e.textContent.includes(what)) }",
            [tag, what],
        ):
            return stop
    raise AssertionError(f"{what} is not reached within {most} stops")


def test_the_whole_path_by_keyboard_alone(opened):
    """From the demo's answer to a job of one's own, a reading, what is built, and Print: keys only, and every focus is seen."""
    page = opened(DESK)
    stops_until(page, "a", "Jobs", 3)
    page.keyboard.press("Enter")
    page.locator(".place-door").wait_for()
    stops_until(page, "button", "New job", 20)
    page.keyboard.press("Enter")
    expect(page.locator("#start-name")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.type("Enduro")
    page.keyboard.press("Tab")
    page.keyboard.type("88")
    page.keyboard.press("Enter")
    page.locator(".place-bike").wait_for(timeout=PATIENCE)
    expect(field(page, "rider.mass")).to_have_value("88")
    page.get_by_role("link", name="To the fields").focus()
    page.keyboard.press("Enter")
    stops_until(page, "input", "rider.mass", 3)
    # One stop a field; what is known of it is reached with arrow down, and Escape leads back.
    page.keyboard.press("ArrowDown")
    assert page.evaluate("document.activeElement.closest('.panel') !== null")
    page.keyboard.press("Escape")
    expect(page.locator(":focus")).to_have_attribute("name", "rider.mass")
    assert page.evaluate("getComputedStyle(document.activeElement.closest('.value')).outlineStyle") == "solid", "the focus is seen"
    expect(at(page, "front").get_by_role("button", name="Build this")).to_be_visible(timeout=PATIENCE)
    stops_until(page, "button", "Build this", 60)
    page.keyboard.press("Enter")
    expect(page.locator("[data-built=yes]")).to_be_visible(timeout=PATIENCE)


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_print_is_near_for_the_keyboard(opened, size):
    page = opened(size)
    first = stops_until(page, "a", "Card", STOPS_TO_PRINT)
    page.keyboard.press("Enter")
    page.locator(".place-card").wait_for()
    assert first + stops_until(page, "button", "Print", STOPS_TO_PRINT) < STOPS_TO_PRINT


def test_the_whole_path_by_touch_alone(opened):
    """Every step is a tap on something that can be tapped, help included."""
    page = opened(has_touch=True, is_mobile=True)
    page.locator(".bar").get_by_text("Front").tap()
    page.locator("[name='front.preload']").tap()
    expect(row(page, "front.preload").locator(".panel")).to_contain_text("Free length plus spacers", timeout=PATIENCE)
    page.get_by_role("button", name="Build this").tap()
    expect(page.locator("[data-built=yes]")).to_be_visible(timeout=PATIENCE)
    page.locator("[name='front.built_gap_left']").fill("122")
    expect(page.locator("[data-built=yes]")).to_contain_text("122 left")
    page.locator(".bar").get_by_text("Card").tap()
    expect(page.locator("[data-answer=card]")).to_contain_text("gap 122 left, 120 right")
    expect(page.get_by_role("button", name="Print", exact=True)).to_be_visible()


def violations(page: Page) -> list[dict]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    result = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    assert result["passes"], "axe looked at nothing"
    return [
        {"id": v["id"], "nodes": [n["html"][:160] + " | " + (n.get("failureSummary") or "")[:300] for n in v["nodes"][:4]]}
        for v in result["violations"]
    ]


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing_in_any_place(opened, size, light):
    page = opened(size, reduced_motion="reduce", **LIGHTS[light])
    if light == "sun":
        at(page, "door").get_by_label("Sun").check()
        page.get_by_role("button", name=re.compile("^Demo: Brackwater")).click()
        page.locator(".place-front").wait_for()
    found = {}
    for place in PLACES:
        at(page, place)
        found[place] = violations(page)
        if place == "front":
            field(page, "place.ridden_altitude").fill("1,250")
            expect(page.locator(".readings button")).to_have_count(2)
            page.get_by_role("button", name="Build this").click()
        unfold(page)
        found[f"{place}, unfolded"] = violations(page)
    at(page, "door").get_by_role("button", name="New job").click()
    found["door"] = violations(page)
    assert {place: said for place, said in found.items() if said} == {}, json.dumps(found, indent=1)[:4000]


@pytest.mark.parametrize("size", [{"width": 320, "height": 640}, PHONE, DESK], ids=["narrow", "phone", "desk"])
def test_everything_is_in_reach(opened, size):
    """Nothing is cut off sideways, text is at least 16 px, targets at least 48 px, rows 8 px apart."""
    page = opened(size)
    for place in ("door", *PLACES):
        at(page, place)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"{place} scrolls sideways"
        small = page.evaluate("""() => [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() &&
            [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()) && parseFloat(getComputedStyle(e).fontSize) < 15.99)
            .map((e) => e.outerHTML.slice(0, 120))""")
        assert small == [], place
        low = page.evaluate("""() => [...document.querySelectorAll('button, summary, label.button, nav a')].filter((e) =>
            e.checkVisibility({ contentVisibilityAuto: true }) && !e.closest('[hidden]') && !e.closest('.skips')
            && e.getBoundingClientRect().height < 46.5).map((e) => e.outerHTML.slice(0, 120))""")
        assert low == [], place
        close = page.evaluate("""() => {
            const rows = [...document.querySelectorAll('.rows > *')].filter((e) => e.checkVisibility() && !e.closest('[hidden]'))
              .map((e) => e.getBoundingClientRect())
            return rows.slice(1).filter((one, i) => one.top >= rows[i].top && one.top - rows[i].bottom < 7.5 && one.top > rows[i].bottom - 1).length
        }""")
        assert close == 0, f"{place}: rows stand 8 px apart"
    strip = at(page, "front").locator("[data-strip] .result").last.bounding_box()
    assert strip["x"] + strip["width"] <= size["width"], "the strip clips nothing"


def test_every_description_is_there(opened):
    page = opened()
    for place in PLACES:
        at(page, place)
        unfold(page)
        missing = page.evaluate("""() => [...document.querySelectorAll('[aria-describedby], [aria-controls], [aria-labelledby]')]
            .flatMap((e) => ['aria-describedby', 'aria-controls', 'aria-labelledby'].flatMap((name) => (e.getAttribute(name) ?? '').split(' ')))
            .filter((id) => id && !document.getElementById(id))""")
        assert missing == [], place


def test_strip_stays_in_view_and_hides_no_field(opened):
    page = opened(reduced_motion="reduce")
    for place in (0, 600, 1500):
        page.evaluate(f"scrollTo(0, {place})")
        box, bar = page.locator("[data-strip]").bounding_box(), page.locator(".bar").bounding_box()
        assert box["y"] + box["height"] == pytest.approx(bar["y"], abs=1)
        assert bar["y"] + bar["height"] == pytest.approx(PHONE["height"], abs=1)
    field(page, "rear.target_sag").focus()
    inside = field(page, "rear.target_sag").bounding_box()
    assert inside["y"] + inside["height"] < page.locator("[data-strip]").bounding_box()["y"], "the strip hides no field in use"


def test_look_is_chosen_and_kept(opened):
    page = opened()
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    light = page.evaluate(ground)
    at(page, "door").get_by_label("Dark").check()
    assert page.evaluate(ground) != light
    page.reload()
    expect(answer(page)).to_be_visible()
    assert page.evaluate("document.documentElement.dataset.theme") == "dark"
