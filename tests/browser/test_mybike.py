"""The customer's path: by touch alone, by keyboard alone, by a screen reader's labels, offline; and the tuner who opens the link."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, at, field, unfold, wait_for_core
from tests.browser.mybike import (
    FRONT_TITLES,
    FRONT_TYPED,
    LENGTHS,
    TITLES,
    TYPED,
    click,
    expect_front_verdict,
    keyed,
    tab_to,
    tap,
    title,
    walk,
    walk_front,
)
from tests.browser.test_access import LIGHTS, violations
from tests.browser.test_offline import expect_offline, open_page

ENDS = ("rear", "front")


def test_the_whole_path_by_touch_alone_and_the_tuner_opens_it(opened):
    page = opened(has_touch=True, is_mobile=True)
    walk(page, tap)
    found = page.locator("[data-finding]")
    expect(found).to_have_attribute("data-finding", "soft")
    expect(page.get_by_role("heading", level=2)).to_contain_text(re.compile(r"is too soft for you: at least \d+ chances in \d+"))
    expect(
        found.get_by_role("img", name=re.compile("Free sag, bike alone: 30.*usual 21 to 43.*Rider sag, you aboard: 124"))
    ).to_be_visible()
    expect(found).to_contain_text("Do not order a spring yet.")
    page.get_by_role("button", name="Send to my tuner").tap()
    page.get_by_label("Your name").fill("T. A.")
    link = page.get_by_role("textbox", name="Link")
    expect(link).to_have_value(re.compile("#job="), timeout=PATIENCE)
    expect(page.get_by_role("img", name="QR code of the link")).to_be_visible(timeout=PATIENCE)
    page.wait_for_timeout(200)  # the link follows what is typed
    tuner = opened()
    tuner.goto(link.input_value())
    wait_for_core(tuner)
    # The link's job takes the demo's place, and with it the page goes to Front: whoever goes on sooner is led back there.
    tuner.wait_for_function("() => sessionStorage.getItem('stanchion-link') === null", timeout=PATIENCE)
    expect(tuner.locator(".job-name")).not_to_contain_text("Brackwater", timeout=PATIENCE)
    expect(tuner.locator(".place-front")).to_be_visible(timeout=PATIENCE)
    at(tuner, "check")
    unfold(tuner)
    for path, length in zip(("hanging", "alone", "alone_again", "aboard", "aboard_again"), LENGTHS, strict=True):
        expect(field(tuner, f"rear.{path}_length")).to_have_value(length)
        expect(tuner.locator(f"[id='rear.{path}_length'] label")).to_contain_text("(customer’s)")
    expect(tuner.locator("[data-sags-end=rear]")).to_contain_text("Rider sag 124 mm found", timeout=PATIENCE)
    expect(tuner.locator("[id='rider.mass'] label")).to_have_count(0)
    at(tuner, "bike")
    expect(tuner.locator("[id='rider.mass'] label")).to_contain_text("(customer’s)")
    expect(at(tuner, "door").locator("[data-job]")).to_contain_text("T. A.")
    assert not page.problems
    assert not tuner.problems


@pytest.mark.parametrize("end", ENDS)
def test_the_whole_path_by_keyboard_alone(opened, end):
    page = opened(DESK)
    tab_to(page, "Jobs", 4)
    page.keyboard.press("Enter")
    page.locator(".place-door").wait_for()
    tab_to(page, "Check my bike")
    page.keyboard.press("Enter")
    title(page, TITLES[0])
    tab_to(page, "motocross")
    page.keyboard.press("ArrowDown")
    expect(page.get_by_role("radio", name="Enduro", exact=True)).to_be_checked()
    page.keyboard.press("Enter")
    keyed(page, TITLES[1:], TYPED)
    expect(page.locator("[data-finding=soft]")).to_be_visible(timeout=PATIENCE)
    if end == "front":
        tab_to(page, "Check the front too", 8)
        page.keyboard.press("Enter")
        keyed(page, FRONT_TITLES, FRONT_TYPED)
        expect_front_verdict(page)
    tab_to(page, "Send to my tuner", 8)
    page.keyboard.press("Enter")
    title(page, "Send your readings to your tuner")
    assert not page.problems


def test_earlier_readings_are_ticks_and_survive_a_reload(opened):
    page = opened()
    walk(page, click, upto=TITLES[9])
    body = page.locator(".mybike").inner_text()
    assert not any(length in body for length in LENGTHS), "a figure in sight would pull the next one towards it"
    expect(page.locator(".mybike-ticks .done")).to_have_count(3)
    expect(page.locator(".mybike-progress")).to_contain_text("Reading 4 of 5")
    page.reload()
    title(page, TITLES[9])
    page.get_by_role("button", name="Back").click()
    title(page, TITLES[8])
    expect(page.get_by_role("textbox")).to_have_value("600")
    page.get_by_role("button", name="Next").click()
    title(page, TITLES[9])
    page.go_back()
    title(page, TITLES[8])


def test_numbers_are_forgiven_and_what_cannot_be_is_said_in_place(opened):
    page = opened()
    walk(page, click, upto=TITLES[6])
    onward = page.get_by_role("button", name="Next")
    onward.click()
    expect(page.locator("#mybike-wrong")).to_contain_text("Write what you read.")
    page.get_by_role("textbox").fill("62,5")
    onward.click()
    expect(page.locator("#mybike-wrong")).to_contain_text("62.5 mm from the axle to the dot")
    page.get_by_role("button", name="It is 62.5 cm").click()
    expect(page.get_by_role("button", name="cm", exact=True)).to_have_attribute("aria-pressed", "true")
    onward.click()
    title(page, TITLES[7])
    page.get_by_role("textbox").fill("a lot")
    onward.click()
    expect(page.locator("#mybike-wrong")).to_contain_text("this is not a number")
    expect(page.get_by_role("textbox")).to_have_value("a lot")
    page.get_by_role("button", name="in", exact=True).click()
    page.get_by_role("textbox").fill("28")  # longer than hanging
    onward.click()
    expect(page.locator("#mybike-wrong")).to_contain_text("must be the longest")
    page.get_by_role("button", name="Go to: Wheel off the ground").click()
    title(page, TITLES[6])


def test_something_that_sticks_and_a_change_of_one_reading(opened):
    page = opened()
    walk(page, click, ("625", "598", "612", "508", "526"))
    expect(page.locator("[data-finding=sticks]")).to_contain_text("something sticks")
    expect(page.locator(".mybike-tally")).to_have_count(0)
    page.get_by_text("Your answers").click()
    page.get_by_role("button", name=re.compile("You on the bike, lifted")).click()
    title(page, TITLES[10])
    page.get_by_role("textbox").fill("516")
    page.get_by_role("button", name="See the verdict").click()
    expect(page.locator("[data-finding]:not([data-finding=sticks])")).to_be_visible(timeout=PATIENCE)
    page.get_by_text("Your answers").click()
    page.get_by_role("button", name="Clear them and start again").click()
    title(page, TITLES[0])
    expect(page.get_by_role("radio", checked=True)).to_have_count(0)


def test_a_verdict_without_all_answers_says_what_is_missing(opened):
    page = opened()
    page.evaluate("""localStorage.setItem('stanchion-mybike', JSON.stringify(
        { said: { 'bike.use': 'enduro', 'rider.mass': '86', 'rear.hanging_length': '625' }, units: {}, at: 'verdict' }))""")
    page.goto(page.url.split("#")[0] + "#mybike")
    page.reload()
    title(page, "Not yet")
    expect(page.get_by_role("button", name=re.compile("Bike alone, pushed down"))).to_contain_text("not said")
    page.get_by_role("button", name=re.compile("Bike alone, lifted")).click()
    title(page, TITLES[8])


@pytest.mark.parametrize("light", LIGHTS)
def test_axe_finds_nothing_and_all_is_in_reach(opened, light):
    """On every screen: no violation, nothing sideways, targets of 48 px, both buttons at the thumb."""
    page = opened(PHONE, reduced_motion="reduce", **LIGHTS[light])
    if light == "sun":
        at(page, "door").get_by_label("Sun").check()
    said: dict[str, list[dict]] = {}

    def press(locator) -> None:
        name = page.locator("h2").first.inner_text()
        said[name] = violations(page)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), name
        low = page.evaluate("""() => [...document.querySelectorAll('.mybike button, .mybike summary, .mybike label, .mybike-head a')]
            .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 47).map((e) => e.outerHTML.slice(0, 120))""")
        assert low == [], name
        if page.locator(".mybike-bar").count():
            bar = page.locator(".mybike-bar").bounding_box()
            assert bar["y"] + bar["height"] <= PHONE["height"] + 1, name
        locator.click()

    walk(page, press)
    for summary in page.locator("summary").all():
        summary.click()
    press(page.get_by_role("button", name="Send to my tuner"))
    expect(page.get_by_role("img", name="QR code of the link")).to_be_visible(timeout=PATIENCE)
    said["send"] = violations(page)
    assert {name: found for name, found in said.items() if found} == {}, json.dumps(said, indent=1)[:4000]
    assert len(said) == len(TITLES) + 3


def test_it_fits_the_narrowest_phone(opened):
    page = opened({"width": 320, "height": 640})

    def press(locator) -> None:
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), page.locator("h2").first.inner_text()
        locator.click()

    walk(page, press)
    press(page.get_by_role("button", name="Send to my tuner"))


@pytest.mark.parametrize("end", ENDS)
def test_it_works_with_the_server_gone(serve, dist, profile, end):
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        wait_for_core(page)
        expect_offline(page, "ready")
    site.__exit__()
    with profile() as context:
        page = open_page(context, site.url)
        page.set_viewport_size(PHONE)
        walk(page, click)
        expect(page.locator("[data-finding=soft]")).to_be_visible()
        if end == "front":
            walk_front(page, click)
            expect_front_verdict(page)
        page.get_by_role("button", name="Send to my tuner").click()
        expect(page.get_by_role("textbox", name="Link")).to_have_value(re.compile("#job="), timeout=PATIENCE)


def test_a_passenger_is_asked_for_two_up(opened):
    page = opened()
    at(page, "door").get_by_role("link", name=re.compile("^Check my bike")).click()
    title(page, TITLES[0])
    page.get_by_role("radio", name="Two-up with luggage").check()
    page.get_by_role("button", name="Next").click()
    title(page, TITLES[1])
    expect(page.locator(".mybike-progress")).to_contain_text("of 7")
    page.get_by_role("textbox").fill("90")
    page.get_by_role("button", name="Next").click()
    title(page, "What does your passenger weigh in full kit?")


def test_the_job_can_be_opened_on_the_same_device(opened):
    page = opened()
    walk(page, click)
    page.get_by_role("button", name="Send to my tuner").click()
    page.get_by_role("button", name="Open as a job here").click()
    expect(page.locator(".place-check")).to_be_visible(timeout=PATIENCE)
    expect(page.locator("[data-sags-end=rear]")).to_contain_text("Rider sag 124 mm found", timeout=PATIENCE)
