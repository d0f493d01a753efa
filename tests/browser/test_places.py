"""The floor plan: places by address, what a reload keeps, what is built, and how much of the hand a job takes."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, answer, at, field, unfold
from tests.browser.test_results import pages

PLACES = ("bike", "front", "rear", "check", "card")
FREE = 672  # [px] of a phone's screen, between header and strip
MOST_SCREENS = 3
MOST_ACTIONS, MOST_TAPS = 3, 24


def hash_of(page: Page) -> str:
    return page.evaluate("location.hash")


def test_places_have_addresses_and_back_leads_to_the_door(opened):
    page = opened(computed=False)
    page.locator(".place-front").wait_for()
    assert hash_of(page) == "#front"
    at(page, "rear")
    assert hash_of(page) == "#rear"
    at(page, "card")
    page.get_by_role("button", name=re.compile("^Built")).click()
    assert hash_of(page) == "#card?built", "switching makes no step in the history"
    for expected in ("#rear", "#front", "#door"):
        page.go_back()
        page.locator(f".place-{expected[1:].split('?')[0]}").wait_for()
        assert hash_of(page).split("?")[0] == expected
    page.go_forward()
    page.locator(".place-front").wait_for()
    page.goto(f"{page.url.split('#')[0]}#check")
    page.locator(".place-check").wait_for()


def test_a_reload_keeps_place_scroll_and_open_folds(opened):
    page = opened()
    at(page, "rear")
    page.get_by_role("button", name=re.compile("^Targets and standard")).click()
    page.evaluate("scrollTo(0, 700)")
    page.wait_for_function("() => scrollY === 700")
    page.reload()
    page.locator(".place-rear").wait_for()
    expect(page.get_by_role("button", name=re.compile("^Targets and standard"))).to_have_attribute("aria-expanded", "true")
    expect(page.locator("[name='rear.preload_max']")).to_be_visible()
    page.wait_for_function("() => Math.abs(scrollY - 700) < 100")
    # Back and forth: each place where it was left; what changes its height above keeps what was in sight in sight.
    at(page, "front")
    assert page.evaluate("scrollY") == 0
    page.go_back()
    page.locator(".place-rear").wait_for()
    page.wait_for_function("() => Math.abs(scrollY - 700) < 100")


@pytest.mark.parametrize("place", PLACES)
def test_no_place_is_longer_than_three_screens(opened, place):
    page = opened()
    at(page, place)
    page.wait_for_timeout(500)
    expect(page.locator(".fold.open")).to_have_count(0)
    height = page.locator("main").evaluate("(main) => main.scrollHeight")
    assert height <= MOST_SCREENS * FREE, f"{place}: {height / FREE:.2f} screens"
    rows = page.locator(".place .rows > *:visible").count()
    assert rows <= 6, f"{place} shows {rows} rows of fields"


def test_a_changed_answer_is_three_actions_from_opening(opened):
    page = opened(computed=False)
    sag = page.locator("[name='front.target_sag']")
    acts = (sag.click, sag.select_text, lambda: page.keyboard.type("60"))
    for act in acts:
        act()
    expect(page.locator("[data-strip=front]")).to_contain_text(re.compile(r"Rider sag\s*60"), timeout=PATIENCE)
    assert len(acts) <= MOST_ACTIONS


class Hand:
    """Counts what a thumb does: taps, and how far the page is scrolled by hand. Keys on the keypad are no taps."""

    def __init__(self, page: Page) -> None:
        self.page, self.taps, self.scrolled = page, 0, 0.0

    def tap(self, target) -> None:
        self.bring(target)
        target.tap()
        self.taps += 1

    def bring(self, target) -> None:
        """Scroll a target into the free part of the screen, as far as it needs and no further."""
        target.wait_for(state="attached", timeout=PATIENCE)
        box = target.bounding_box()
        top, bottom = 60, PHONE["height"] - 150
        by = min(0, box["y"] - top) if box["y"] < top else max(0, box["y"] + box["height"] - bottom)
        if by and not target.evaluate("(e) => Boolean(e.closest('.head, .bar, .strip, .door-bar'))"):
            before = self.page.evaluate("scrollY")
            self.page.evaluate("(by) => scrollBy({ top: by, behavior: 'instant' })", by)
            self.scrolled += abs(self.page.evaluate("scrollY") - before)

    def write(self, path: str, text: str) -> None:
        """A reading typed where the focus is, or where a tap puts it."""
        target = self.page.locator(f"[name='{path}']")
        if self.page.evaluate("document.activeElement?.name") != path:
            self.tap(target)
        self.page.keyboard.type(text)

    def next(self) -> None:
        self.page.keyboard.press("Enter")

    def build(self) -> None:
        """What is recommended is taken over as what was built, once it is worked out of what was typed."""
        self.page.evaluate("() => document.activeElement.blur()")
        expect(self.page.locator("[data-strip]")).to_have_attribute("data-stale", "no", timeout=PATIENCE)
        self.tap(self.page.get_by_role("button", name="Build this"))
        expect(self.page.locator("[data-built=yes]")).to_be_visible(timeout=PATIENCE)


def test_a_whole_job_takes_few_taps_and_little_scroll(opened):
    """Own job, eleven readings, build, print: at most 24 taps and three screens of scroll."""
    page = opened(has_touch=True, is_mobile=True)
    printed = page.evaluate_handle("() => { const said = { times: 0 }; window.print = () => said.times++; return said }")
    hand = Hand(page)
    hand.tap(page.locator(".head-back"))
    hand.tap(page.get_by_role("button", name="New job"))
    page.get_by_label("Riding").select_option("enduro")
    hand.taps += 2  # the list, and its entry
    hand.tap(page.get_by_label("Rider in full kit"))
    page.keyboard.type("104")
    page.keyboard.press("Enter")
    page.locator(".place-bike").wait_for(timeout=PATIENCE)
    # Enter goes on to the next field: four weights, with one tap.
    readings = 1
    hand.write("bike.rear_axle", "59.3")
    for path, text in (("bike.front_axle", "54.5"), ("rider.rear_axle", "121.6"), ("rider.front_axle", "96.2")):
        hand.next()
        hand.write(path, text)
    readings += 4
    hand.tap(page.locator(".bar").get_by_text("Front"))
    hand.write("front.rate", "4.2")
    for path, text in (("front.preload", "6"), ("front.gap_left", "145"), ("front.gap_right", "147")):
        hand.next()
        hand.write(path, text)
    readings += 4
    hand.build()
    hand.tap(page.locator(".bar").get_by_text("Rear"))
    page.get_by_role("button", name="Answer", exact=True).tap()
    hand.taps += 1
    hand.write("rear.rate", "48")
    hand.next()
    hand.write("rear.preload", "9")
    readings += 2
    assert readings == 11
    hand.build()
    hand.tap(page.locator(".bar").get_by_text("Card"))
    expect(page.locator("[data-answer=card] [data-left=built]")).to_have_count(2)
    hand.tap(page.get_by_role("button", name="Print", exact=True))
    page.wait_for_function("(said) => said.times === 1", arg=printed)  # what goes to paper is drawn first
    assert hand.taps <= MOST_TAPS, hand.taps
    assert hand.scrolled <= MOST_SCREENS * PHONE["height"], hand.scrolled


def test_what_is_built_is_followed_everywhere_and_never_claimed_before(opened):
    page = opened()
    card = at(page, "card").locator("[data-answer=card]")
    expect(card).to_contain_text("draft, not built")
    expect(page.locator(".card")).not_to_contain_text("as left")
    at(page, "front").get_by_role("button", name="Springs on offer").click()
    page.locator("[data-candidate='4.8'] > button").click()
    page.get_by_role("button", name="Build the 4.8").click()
    assert hash_of(page) == "#front?built"
    expect(page.locator("[data-built=yes]")).to_contain_text("4.8 N/mm")
    expect(page.locator("[data-built=yes]")).to_contain_text("the answer is 4.6 N/mm")
    expect(page.locator("[data-strip=front]")).to_have_attribute("data-looked", "built")
    page.locator("[name='front.built_gap_left']").fill("126")
    expect(page.locator("[data-built=yes]")).to_contain_text("126 left")
    at(page, "check").get_by_role("button", name="Hot, high, others").click()
    expect(page.locator("[data-places=front] caption")).to_contain_text("as built", timeout=PATIENCE)
    at(page, "card")
    expect(card).to_contain_text(
        re.compile(r"Front, built: 4\.8 N/mm, 0 mm preload, gap 126 left, 124 right\. Recommended: Fit 4\.6")
    )
    expect(card).to_contain_text("Rear, draft, not built")
    heads = page.locator(".card-table thead tr").last.locator("th").all_text_contents()
    assert heads == ["as found", "as left", "as found", "draft"]
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.locator(".card-table thead tr").last.locator("th").nth(1)).to_have_text("draft")
    # A figure that is taken away is asked for, and nothing is told as built without it.
    at(page, "front").get_by_role("button", name=re.compile("^Built")).click()
    page.locator("[name='front.built_preload']").fill("")
    expect(page.locator("[data-built=no]")).to_contain_text("Preload built is not entered")
    page.get_by_role("button", name="Not built after all").click()
    expect(page.locator("[data-built=nothing]")).to_be_visible()


def test_candidates_open_in_place(opened):
    page = opened()
    page.get_by_role("button", name="Springs on offer").click()
    one = page.locator("[data-candidate='5.2']")
    where = "(e) => e.getBoundingClientRect().top + scrollY"
    top = one.evaluate(where)
    one.locator("> button").click()
    assert one.evaluate(where) == pytest.approx(top, abs=1)
    expect(one.get_by_role("button")).to_have_text([re.compile(r"^5\.2"), "Try the 5.2", "Build the 5.2"])


def test_fields_of_other_kinds_do_not_exist(opened):
    page = opened()
    for place in ("front", "rear", "bike"):
        at(page, place)
        unfold(page)
        for path in (
            "front.cartridge_charge",
            "front.air_pressure",
            "front.second_rate",
            "front.wire",
            "rear.rocker_x",
            "rider.passenger",
        ):
            expect(page.locator(f"[name='{path}']")).to_have_count(0)
    at(page, "bike").locator("[data-kind='front.air']").get_by_role("radio", name="Sealed cartridge").click()
    expect(field(page, "front.cartridge_charge")).to_be_visible()
    expect(answer(page)).to_contain_text("N/mm")


def test_the_browsers_search_opens_a_fold(opened):
    """What is folded is in the page, hidden until it is found."""
    page = opened()
    body = page.locator("#fold-front-leg-body")
    expect(body).to_have_attribute("hidden", "until-found")
    expect(body.locator("[name='front.wall'], [name='front.seal_diameter']").first).to_be_attached()
    body.evaluate("(e) => e.dispatchEvent(new Event('beforematch', { bubbles: true }))")
    expect(body).not_to_have_attribute("hidden", "until-found")
    expect(page.locator("[name='front.seal_diameter']")).to_be_visible()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_print_reaches_what_is_folded(opened, paper):
    page = opened(DESK)
    at(page, "rear")
    page.emulate_media(media="print")
    expect(page.locator("[name='rear.preload_max']")).to_be_visible()
    expect(page.locator(".bar")).not_to_be_visible()
    assert pages(page.pdf(format=paper)) >= 1
