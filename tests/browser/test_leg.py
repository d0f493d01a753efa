"""The leg to scale: the core's numbers, moved by hand, keys and wheel in step with the chart, in every light and on paper."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, field
from tests.browser.test_access import AXE
from web.toolchain.places import GENERATED

A_LINE = 8  # [px] less than the least the wheel moves a page; focusing and anchoring may shift it by a pixel
LIGHTS = {
    "light": {},
    "dark": {"color_scheme": "dark"},
    "contrast": {"contrast": "more"},
    "forced": {"forced_colors": "active"},
}


@pytest.fixture(scope="session")
def section() -> dict:
    """The section of the demo job's answer, as the build's core worked it out."""
    demo = json.loads((GENERATED / "demos" / "enduro.json").read_text(encoding="utf-8"))
    return demo["report"]["ends"]["front"]["section"]


def leg_of(page: Page) -> Locator:
    leg = page.locator(".leg")
    expect(leg.locator(".leg-drawing")).to_be_visible(timeout=PATIENCE)
    leg.locator(".leg-drawing").scroll_into_view_if_needed()
    return leg


def stroke_of(leg: Locator) -> float:
    return float(leg.locator("[data-point]").get_attribute("data-point"))


def at(section: dict, values: list[float], stroke: float) -> float:
    strokes = section["stroke"]
    i = min(max(1, next((k for k, s in enumerate(strokes) if s > stroke), len(strokes) - 1)), len(strokes) - 1)
    share = (stroke - strokes[i - 1]) / (strokes[i] - strokes[i - 1])
    return values[i - 1] + share * (values[i] - values[i - 1])


def drag(page: Page, hold: Locator, up: float) -> None:
    """Take the middle of what is in sight of it, and go up by so many px."""
    box = hold.bounding_box()
    x, y = box["x"] + box["width"] / 2, max(min(box["y"] + box["height"] / 2, 500), box["y"] + box["height"] / 4)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - up / 2, steps=3)
    page.mouse.move(x, y - up, steps=3)
    page.mouse.up()


def heights(page: Page) -> dict[str, float]:
    """Screen heights of the lug's top, the point and the oil's level; and the scale in px per mm."""
    return page.evaluate(
        """() => {
          const box = (rule) => document.querySelector(`.leg-drawing ${rule}`).getBoundingClientRect()
          const level = box('[data-level]'), point = box('.leg-point circle'), lug = box('[data-part="axle lug"]')
          const rim = box('.gap-dimension'), gap = Number(document.querySelector('[data-gap-shown]').dataset.gapShown)
          return { lug: lug.top, point: (point.top + point.bottom) / 2, level: level.top, rim: rim.top, gap, low: rim.bottom }
        }"""
    )


def reveal(page: Page, path: str) -> None:
    """Follow a link to a field, wherever its fold stands."""
    page.evaluate(
        """(path) => {
          const link = Object.assign(document.createElement('a'), { href: `#${path}` })
          document.body.append(link)
          link.click()
          link.remove()
        }""",
        path,
    )
    expect(page.locator(f"[id='{path}']")).to_be_visible()


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_leg_is_to_scale_and_in_step_with_the_chart(opened, section, size):
    page = opened(size, computed=False)
    leg = leg_of(page)
    drawn = section["legs"][0]
    foot = next(part["top"] for part in drawn["parts"] if part["name"] == "axle lug")
    for stroke in (0, 95, 300):
        leg.get_by_role("slider").fill(str(stroke))
        seen = heights(page)
        scale = (seen["lug"] - seen["rim"]) / (foot - stroke)
        assert (seen["low"] - seen["rim"]) / scale == pytest.approx(drawn["gap"], abs=3), (
            "the gap's dimension, its line's width left"
        )
        assert (seen["level"] - seen["rim"]) / scale == pytest.approx(at(section, drawn["spaces"][0]["bottom"], stroke), abs=4)
        assert seen["point"] == pytest.approx(seen["lug"], abs=2), "one line joins lug and curve"
        expect(leg.locator("[data-line=oil]")).to_contain_text(f"{at(section, drawn['spaces'][0]['bottom'], stroke):.0f} mm")
        expect(leg.locator("[data-line='over the oil']")).to_contain_text(
            f"{at(section, drawn['spaces'][0]['volume'], stroke):.0f} ml"
        )


@pytest.mark.parametrize("hold", ["leg", "chart"])
def test_dragged_anywhere_it_follows_the_hand(opened, hold):
    page = opened(DESK, computed=False)
    leg = leg_of(page)
    start, was = stroke_of(leg), heights(page)["lug"]
    drag(page, leg.locator(f"[data-hold={hold}]"), 56)
    assert stroke_of(leg) > start
    assert was - heights(page)["lug"] == pytest.approx(56, abs=1.5), "the axle stays under the hand"
    drag(page, leg.locator(f"[data-hold={hold}]"), -900)
    assert stroke_of(leg) == 0
    assert page.problems == []


def test_keys_move_by_five(opened):
    page = opened(computed=False)
    leg = leg_of(page)
    slider = leg.get_by_role("slider")
    slider.focus()
    start = stroke_of(leg)
    for key, by in (("ArrowUp", 5), ("ArrowRight", 5), ("ArrowDown", -5), ("ArrowLeft", -5)):
        page.keyboard.press(key)
        start += by
        assert stroke_of(leg) == start
    page.keyboard.press("End")
    assert stroke_of(leg) == 300
    expect(leg.locator("[data-event]")).to_have_attribute("data-event", "full")
    assert re.match(r"300 mm of stroke; 5\.[67] kN at the wheel; oil \d+ mm under the rim", slider.get_attribute("aria-valuetext"))
    page.keyboard.press("Home")
    assert stroke_of(leg) == 0
    expect(leg.locator("[data-event]")).to_have_attribute("data-event", "topped out")


def test_wheel_moves_the_leg_and_at_its_ends_the_page(opened):
    page = opened(DESK, computed=False, reduced_motion="reduce")  # else the page glides to the slider after it was asked
    leg = leg_of(page)
    leg.get_by_role("slider").fill("295")
    box = leg.locator("[data-hold=leg]").bounding_box()
    page.mouse.move(box["x"] + 40, min(box["y"] + 150, 500))
    before = page.evaluate("scrollY")
    page.mouse.wheel(0, -100)
    expect(leg.locator("[data-point='300']")).to_have_count(1)
    assert page.evaluate("scrollY") == pytest.approx(before, abs=A_LINE)
    page.mouse.wheel(0, 100)
    expect(leg.locator("[data-point='295']")).to_have_count(1)
    assert page.evaluate("scrollY") == pytest.approx(before, abs=A_LINE)
    leg.get_by_role("slider").fill("0")
    page.mouse.wheel(0, 200)
    page.wait_for_function("(was) => scrollY > was", arg=before)


@pytest.mark.parametrize(
    ("across", "down", "path"), [(0.6, 0.25, "front.rate"), (0.05, 0.08, "front.gap_left"), (0.5, 0.97, "front.seal_diameter")]
)
def test_a_tapped_part_opens_its_fields(opened, across, down, path):
    page = opened(DESK, computed=False, reduced_motion="reduce")
    leg = leg_of(page)
    leg.get_by_role("slider").fill("0")
    drawing, hold = leg.locator(".section").bounding_box(), leg.locator("[data-hold=leg]").bounding_box()
    middle = drawing["x"] + drawing["width"] / 2 - hold["x"]
    x = middle + (across - 0.5) * drawing["width"] if across > 0.1 else 6
    leg.locator("[data-hold=leg]").click(position={"x": x, "y": drawing["y"] - hold["y"] + down * drawing["height"]})
    expect(field(page, path)).to_be_focused()


def test_turned_the_leg_lies_over_the_chart(opened):
    page = opened(computed=False)
    leg = leg_of(page)
    leg.get_by_role("button", name="Turn the chart").click()
    expect(leg.locator("[data-turned=true]")).to_have_count(1)
    lug = leg.locator("[data-part='axle lug']").bounding_box()
    cap = leg.locator("[data-part=cap]").bounding_box()
    assert lug["x"] < cap["x"], "stroke and axle go to the right"
    leg.get_by_role("slider").fill("250")
    assert leg.locator("[data-part='axle lug']").bounding_box()["x"] > lug["x"]
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_figures_stand_in_a_table(opened, section):
    page = opened(computed=False)
    leg = leg_of(page)
    leg.locator("summary", has_text="Figures as a table").click()
    last = leg.locator("[data-table=leg] tbody tr").last
    drawn = section["legs"][0]
    space = drawn["spaces"][0]
    told = [f"{space['bottom'][-1]:.0f}", f"{space['volume'][-1]:.0f}", f"{space['pressure'][-1]:.1f}"]
    assert last.locator("td").all_inner_texts()[:3] == told
    expect(leg).to_contain_text("Not measured, drawn as assumed: outer tube")


def test_the_drawing_is_described(opened):
    page = opened(computed=False)
    said = leg_of(page).locator(".leg-drawing").get_attribute("aria-label")
    for words in (
        "the outer tube above",
        "spring, cartridge, rod",
        "Gap 120 mm, read collapsed",
        "Full travel at 300 mm.",
        "5.65 kN",
    ):
        assert words in said


@pytest.mark.parametrize("size", [{"width": 320, "height": 640}, PHONE, DESK], ids=["narrow", "phone", "desk"])
def test_labels_keep_off_each_other_and_inside(opened, size):
    page = opened(size, computed=False)
    leg = leg_of(page)
    for stroke in (20, 66, 150, 290):
        leg.get_by_role("slider").fill(str(stroke))
        boxes = leg.locator(".leg-drawing :is([data-end], [data-sag], .leg-point, .leg-lines) text").evaluate_all(
            """(texts) => texts.map((text) => {
              const b = text.getBoundingClientRect()
              return [text.textContent, b.left, b.right, b.top + 4, b.bottom - 4]
            })"""
        )
        for i, (one, left, right, top, bottom) in enumerate(boxes):
            assert left >= 0, f"{one} runs off the page"
            assert right <= size["width"], f"{one} runs off the page"
            for other, left2, right2, top2, bottom2 in boxes[i + 1 :]:
                assert left >= right2 or left2 >= right or top >= bottom2 or top2 >= bottom, f"{one} lies on {other} at {stroke}"


@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing_in_it(opened, light):
    page = opened(computed=False, reduced_motion="reduce", **LIGHTS[light])
    leg = leg_of(page)
    leg.locator("summary", has_text="Figures as a table").click()
    page.evaluate(AXE.read_text(encoding="utf-8"))
    for turned in (False, True):
        if turned:
            leg.get_by_role("button", name="Turn the chart").click()
        found = page.evaluate("axe.run('.leg', { resultTypes: ['violations'] })")
        assert found["passes"], "axe looked at nothing"
        assert [v["id"] for v in found["violations"]] == [], json.dumps(found["violations"], indent=1)[:3000]


def test_in_forced_colours_words_read_on_the_springs(opened):
    page = opened(computed=False, forced_colors="active")
    leg_of(page)
    fill, opacity, ink = page.evaluate(
        """() => {
          const of = (rule) => getComputedStyle(document.querySelector(`.leg-drawing ${rule}`))
          return [of('.field-springs').fill, Number(of('.field-springs').fillOpacity), of('.inside text').fill]
        }"""
    )
    assert fill == ink
    assert opacity < 0.25


def test_paper_has_the_drawing_and_nothing_to_press(opened):
    page = opened(computed=False)
    leg_of(page)
    page.emulate_media(media="print")
    shown = page.evaluate(
        """() => Object.fromEntries(['.leg-block', '.leg-note', '.leg-slider', '.leg-arrow', '.leg details']
          .map((rule) => [rule, getComputedStyle(document.querySelector(rule)).display !== 'none']))"""
    )
    assert shown == {".leg-block": True, ".leg-note": True, ".leg-slider": False, ".leg-arrow": False, ".leg details": False}


def test_side_view_is_drawn_from_the_first_point_on_and_lights_the_one_typed(opened):
    page = opened(reduced_motion="reduce")
    reveal(page, "rear.motion_from")
    page.locator("[id='rear.motion_from'] select").select_option("points")
    picture = page.locator(".linkage-picture")
    expect(picture).to_have_attribute("data-linkage", "entered", timeout=PATIENCE)
    expect(picture).to_contain_text("Not entered yet: axle, shock top, shock foot.")
    for path, value in (("rear.axle_x", "-550"), ("rear.axle_z", "-60")):
        reveal(page, path)
        field(page, path).fill(value)
    expect(picture.locator("[data-point-of=axle]")).to_have_count(1, timeout=PATIENCE)
    expect(picture.locator("[data-lit=axle]")).to_have_count(1)
    expect(picture).to_contain_text("Not entered yet: shock top, shock foot.")
    for path, value in (
        ("rear.shock_top_x", "-180"),
        ("rear.shock_top_z", "330"),
        ("rear.shock_foot_x", "-260"),
        ("rear.shock_foot_z", "-20"),
    ):
        reveal(page, path)
        field(page, path).fill(value)
    expect(picture).to_have_attribute("data-linkage", "closed", timeout=PATIENCE)
    expect(picture.locator("[data-lit='shock foot']")).to_have_count(3)
    assert page.problems == []
