"""The front after the rear's verdict: by touch and names alone, nothing out of reach on any screen, and the tuner's job holds it."""

from __future__ import annotations

import re

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, PHONE
from tests.browser.mybike import AXLE, FRONT_TITLES, click, expect_front_verdict, tap, title, walk, walk_front
from tests.browser.test_access import violations


def test_five_more_readings_tell_of_the_fork(opened):
    page = opened(PHONE, has_touch=True, is_mobile=True, reduced_motion="reduce")
    walk(page, tap)
    rear = page.locator("[data-finding]").get_attribute("data-finding")
    expect(page.locator(".mybike-head")).to_contain_text("rear")
    found = {}

    def press(button) -> None:
        name = page.get_by_role("heading", level=2).inner_text()
        if name in FRONT_TITLES:
            expect(page.locator(".mybike-head")).to_contain_text("front")
            found[name] = violations(page)
            assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), name
            bar = page.locator(".mybike-bar").bounding_box()
            assert bar["y"] + bar["height"] <= PHONE["height"] + 1, name
        if AXLE in name:
            expect(page.get_by_role("img", name=re.compile("tape runs along"))).to_be_visible()
        button.tap()

    walk_front(page, press)
    assert found == {name: [] for name in FRONT_TITLES}
    expect_front_verdict(page)
    assert violations(page) == []
    # A step back in the answers is the rear's verdict, as it was.
    for _ in range(len(FRONT_TITLES) + 1):
        page.get_by_role("button", name="Back").tap()
        page.wait_for_timeout(50)
    expect(page.locator("[data-finding]")).to_have_attribute("data-finding", rear or "", timeout=PATIENCE)
    expect(page.get_by_role("heading", level=2)).to_contain_text("rear spring")
    expect(page.get_by_role("button", name="Next: the front")).to_be_visible()
    assert not page.problems


def test_a_slip_of_the_unit_is_asked_back_at_the_front_too(opened):
    page = opened(PHONE)
    walk(page, click)
    walk_front(page, click, upto=FRONT_TITLES[3])
    page.get_by_role("textbox").fill("70")
    page.get_by_role("button", name="Next").click()
    expect(page.locator("#mybike-wrong")).to_contain_text("70 mm from the axle to the dot is no bike's")
    page.get_by_role("button", name="It is 70 cm").click()
    page.get_by_role("button", name="Next").click()
    title(page, FRONT_TITLES[4])
    assert not page.problems
