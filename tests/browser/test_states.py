"""The states of a cartridge on the leg and the curve: chosen by a tap, laid over each other, followed through the stroke, built."""

from __future__ import annotations

import re

import numpy as np
import pytest
from playwright.sync_api import Page, expect

from calc.demo import jobs
from calc.job import load
from calc.report.quantity import banded_text
from calc.report.states import states_report
from calc.report.states_looked import states_looked
from tests.browser.helpers import DESK, PATIENCE, PHONE, at, settle
from tests.browser.test_access import LIGHTS, violations
from tests.browser.test_places import FREE, MOST_SCREENS

TRAIL = load(jobs()["trail"])
SEEN = {one.state: one for one in states_looked(TRAIL).states}
LABELS = {how: one.label for how, one in SEEN.items()}


# Of each cell its lines, and its words.
LINES = """(all) => all.map((one) => {
  const range = document.createRange()
  range.selectNodeContents(one.querySelector('button') ?? one)
  const lines = new Set([...range.getClientRects()].map((line) => Math.round(line.top))).size
  return [lines, one.textContent.trim().split(/\\s+/).length]
})"""


def trail(page: Page) -> Page:
    """The second demo, with its bands."""
    at(page, "door").get_by_text("Saltmarsh 250 T").first.click()
    page.locator(".place-front").wait_for()
    settle(page)
    return page


def looked(page: Page) -> Page:
    trail(page).get_by_role("button", name="States", exact=True).click()
    page.locator("[data-table=looked]").wait_for(timeout=PATIENCE)
    return page


def chip(page: Page, how: str):
    return page.locator(".states-chips button", has_text=re.compile(f"^{re.escape(LABELS[how])}(, laid over it)?$"))


def row(page: Page, name: str) -> list[str]:
    return (
        page.locator("[data-table=looked] tr", has=page.get_by_role("rowheader", name=re.compile(f"^{name}")))
        .locator("td")
        .all_inner_texts()
    )


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_one_state_is_looked_at_and_another_lies_over_it_dashed_on_leg_and_curve(opened, size):
    page = looked(opened(size))
    assert page.evaluate("location.hash") == "#front?states=as-built,opened-into-one"
    expect(page.locator("[data-leg]")).to_have_attribute("data-leg", "sealed cartridge")
    expect(page.locator(".laid-over")).to_have_attribute("data-over", "opened into one")
    dash = page.locator("[data-curve=state] .curve-beside").evaluate("(e) => getComputedStyle(e).strokeDasharray")
    assert dash not in ("none", "")
    expect(page.locator("[data-end=state]")).to_contain_text("Opened to the leg")
    chip(page, "oil moved").click()
    assert page.evaluate("location.hash") == "#front?states=oil-moved,as-built"
    expect(page.locator(".laid-over")).to_have_attribute("data-over", "as built")
    expect(page.locator("[data-gap-shown]")).to_have_attribute("data-gap-shown", "190")
    chip(page, "both replaced").click()
    expect(page.locator("[data-leg]")).to_have_attribute("data-leg", "opened cartridge")
    expect(page.locator("[data-gap-shown]")).to_have_attribute("data-gap-shown", f"{SEEN['both replaced'].setup.gap.value:.0f}")
    expect(chip(page, "both replaced")).to_have_attribute("aria-pressed", "true")
    chip(page, "both replaced").click()
    expect(page.locator(".laid-over, [data-curve=state]")).to_have_count(0)
    assert page.problems == []


def test_its_figures_follow_the_stroke_and_are_the_core_s(opened):
    page = looked(opened())
    slider = page.locator(".leg-slider input")
    for stroke in (60, 145, 290):
        slider.fill(str(stroke))
        expect(page.locator("[data-table=looked] thead")).to_contain_text(f"At {stroke} mm")
        told = [SEEN["as built"], SEEN["opened into one"]]
        for name, decimals, values in (
            ("Force", 2, [one.curve.working for one in told]),
            ("Behind", 1, [one.behind for one in told]),
            ("Gas", 0, [one.gas_share for one in told]),
        ):
            shown = [float(text.replace("−", "-")) for text in row(page, name)]
            wanted = [
                float(np.interp(stroke, one.curve.stroke, np.array(one_values, dtype=float)))
                for one, one_values in zip(told, values, strict=True)
            ]
            assert shown == pytest.approx(wanted, abs=0.51 * 10**-decimals), name
    assert row(page, "Rider sag") == [one.setup.rider_sag.text for one in told]
    # The strip tells the one looked at.
    expect(page.locator("[data-strip=front]")).to_contain_text(re.compile(rf"Rider sag\s*{told[0].setup.rider_sag.text}"))


def test_drawn_out_where_the_gas_pulls_no_share_is_told(opened):
    page = looked(opened())
    page.locator(".leg-slider input").fill("0")
    expect(page.locator("[data-table=looked] thead")).to_contain_text("At 0 mm")
    assert row(page, "Gas")[1] == "–"


def test_back_leaves_the_states_and_a_reload_keeps_them(opened):
    page = looked(opened())
    chip(page, "seal leaking").click()
    page.reload()
    settle(page)
    expect(chip(page, "seal leaking")).to_have_attribute("aria-pressed", "true", timeout=PATIENCE)
    page.go_back()
    expect(page.locator("[data-answer=front]")).to_be_visible()
    assert page.evaluate("location.hash") == "#front"
    page.go_forward()
    expect(page.locator(".states-chips")).to_be_visible(timeout=PATIENCE)
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.locator("[data-answer=front]")).to_be_visible()
    expect(page.locator(".states-chips")).to_have_count(0)


def test_what_was_lost_is_a_table_and_a_tap_puts_a_replacement_in_as_built(opened):
    page = looked(opened())
    told = states_report(TRAIL, TRAIL)
    for lost in told.lost:
        part = page.locator(f"[data-lost={lost.what}]")
        assert part.locator("tr").first.locator("td").all_inner_texts() == [banded_text(figure) for figure in lost.figures]
        if lost.replaced:
            expect(part).to_contain_text(lost.replaced)
    both = told.replacements[-1]
    page.get_by_role("button", name=both.label).click()
    expect(page.locator("[data-built=yes]")).to_be_visible(timeout=PATIENCE)
    assert page.evaluate("location.hash") == "#front?built"
    for path, text in both.entries:
        expect(page.locator(f"[name='{path}']")).to_have_value(re.compile(rf"^{re.escape(text.split()[0])}"))
    expect(page.locator("[data-strip=front]")).to_contain_text(re.compile(r"Rider sag\s*62"), timeout=PATIENCE)
    # One step of undo takes all of it back.
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-built=nothing]")).to_be_visible(timeout=PATIENCE)


def test_a_fork_that_is_not_opened_is_told_what_to_enter_first(opened):
    page = trail(opened())
    page.locator("[name='front.cartridge_state']").select_option("as built")
    page.get_by_role("button", name="States", exact=True).click()
    expect(page.locator(".states-build")).to_contain_text("enter “Opened to the leg”", timeout=PATIENCE)
    expect(page.locator(".states-build button")).to_have_count(0)


def test_an_open_fork_has_no_states_and_an_address_of_some_shows_its_answer(opened):
    page = opened()
    expect(page.get_by_role("button", name="States", exact=True)).to_have_count(0)
    page.goto(f"{page.url.split('#')[0]}#front?states=as-built")
    expect(page.locator("[data-answer=front]")).to_be_visible()
    expect(page.locator(".states-chips")).to_have_count(0)


def test_the_front_with_a_cartridge_is_no_longer_than_three_screens(opened):
    page = trail(opened())
    page.wait_for_timeout(500)
    expect(page.locator(".fold.open")).to_have_count(0)
    height = page.locator("main").evaluate("(main) => main.scrollHeight")
    assert height <= MOST_SCREENS * FREE, f"{height / FREE:.2f} screens"


def test_names_of_states_and_losses_take_two_lines_on_a_phone(opened):
    page = looked(opened(PHONE))
    tables = "[data-table=states] {0} th, [data-table=lost] {0} th"
    names, heads = (page.locator(tables.format(part)).evaluate_all(LINES) for part in ("tbody", "thead"))
    assert len(names) > 8
    assert max(lines for lines, _ in names) <= 2
    assert all(lines <= words for lines, words in heads), "a word of a head is not broken"


def test_every_state_is_a_thumb_wide(opened):
    page = looked(opened())
    sizes = page.locator(".states-chips button, .states-build button, .states th .link").evaluate_all(
        "(all) => all.map((one) => one.getBoundingClientRect().height)"
    )
    assert len(sizes) > 7
    assert min(sizes) >= 48


@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing_and_nothing_scrolls_sideways(opened, light):
    page = looked(opened(**LIGHTS[light]))
    if light == "sun":
        page.evaluate("document.documentElement.dataset.theme = 'sun'")
    for words in ("Each state in words", "The same for the customer"):
        page.get_by_text(words).click()
    assert violations(page) == []
    # Heavier letters for the sun have no room on the narrowest screen anywhere on the page.
    for size in (*([] if light == "sun" else [{"width": 320, "height": 640}]), PHONE, DESK):
        page.set_viewport_size(size)
        page.wait_for_timeout(300)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), size
