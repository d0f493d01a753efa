"""The offer at Card: options added by touch, what each costs and does read off the page, and one printed page."""

import re

import pytest
from playwright.sync_api import expect

from calc.demo import jobs
from calc.job import load
from calc.report import report_of
from tests.browser.helpers import DESK, PATIENCE, at, settle, start_own
from tests.browser.test_access import AXE
from tests.browser.test_check import VIOLATIONS
from tests.browser.test_results import pages

NO_DIALOG = "window.print = () => {}"


def options(page):
    """The fold of the options, open, with what they do worked out."""
    at(page, "card").get_by_role("button", name=re.compile("^Options")).click()
    part = page.locator(".options")
    part.wait_for(timeout=PATIENCE)
    return part


def trail(page):
    """The demo with two options."""
    at(page, "door").get_by_text("Saltmarsh 250 T").first.click()
    page.locator(".bar").wait_for()
    settle(page)
    part = options(page)
    expect(part).to_have_attribute("data-old", "false", timeout=PATIENCE)
    return part


def test_the_demos_options_say_what_the_core_says(opened):
    page = opened()
    part = trail(page)
    told = report_of(load(jobs()["trail"]))
    for option, done in zip(told.offer.options, told.options.options, strict=True):
        shown = part.locator(f"[data-option='{option.number}']")
        expect(shown.locator(".option-total")).to_have_text(option.bill.total)
        for words in (option.title, option.bill.words, option.complaints, option.valving, *(end.words for end in done.ends)):
            expect(shown).to_contain_text(words)
    pair = part.locator("[data-between='1 2']")
    expect(pair).to_have_attribute("data-same", "true")
    for words in told.options.between[0].words:
        expect(pair).to_contain_text(words)
    for end in told.options.found:
        table = part.locator(f"[data-table='options {end.axle}']")
        row = table.get_by_role("row", name=re.compile("^Rider sag")).get_by_role("cell").all_inner_texts()
        shown = [end, *(one for done in told.options.options for one in done.ends if one.axle == end.axle)]
        told_sags = [one.figures.rider_sag for one in shown]
        assert [" ".join(cell.split()) for cell in row] == [f"{sag.text} {sag.plus_minus_text}" for sag in told_sags]
    expect(part).to_contain_text(told.offer.invented)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert page.evaluate(VIOLATIONS) == []
    assert not page.problems


def test_two_options_by_touch_then_removed_and_brought_back(opened):
    page = opened(has_touch=True)
    part = options(page)
    part.get_by_label("Currency").fill("CHF")
    part.get_by_label("An hour of work").fill("90")
    part.get_by_label("Tax", exact=True).fill("8,1")
    part.get_by_role("button", name="leave it out").tap()
    part.get_by_text("Complaints: none yet").tap()
    part.get_by_role("button", name="Add a complaint").tap()
    part.get_by_label("Complaint 1", exact=True).fill("Harsh over roots")
    part.get_by_role("button", name="Add an option").tap()
    first = part.locator("[data-option='1']")
    expect(first.locator("[data-option-end=front]")).to_contain_text("Front: 4.6 N/mm, 3 mm preload, gap 120 mm.", timeout=PATIENCE)
    first.get_by_label("Name").fill("Springs and oil")
    first.get_by_role("button", name="Add a part").tap()
    first.get_by_role("textbox", name="What", exact=True).fill("Fork springs")
    price = first.get_by_label("Price each")
    assert price.get_attribute("inputmode") == "decimal"
    price.fill("1.250")
    expect(first.locator(".offer-problem")).to_contain_text("a price has at most two decimals")
    first.get_by_role("button", name="It is 1250").tap()
    first.get_by_label("Work").fill("2")
    first.get_by_label("Harsh over roots").check()
    # 1250 + 2 x 90 = 1430, and 8.1 % of it, 115.83, on top.
    expect(first.locator(".option-total")).to_have_text("1545.83 CHF")
    first.get_by_role("button", name="Copy it").tap()
    second = part.locator("[data-option='2']")
    expect(part.locator("[data-between='1 2']")).to_contain_text("the same force curve", timeout=PATIENCE)
    second.get_by_role("button", name="Change this option").tap()
    second.get_by_label("Take it from").first.select_option(index=2)
    expect(part.locator("[data-between='1 2']")).to_contain_text("option 2 against option 1", timeout=PATIENCE)
    second.get_by_role("button", name="Remove it").tap()
    expect(part).to_have_attribute("data-options", "1")
    part.get_by_role("button", name="Bring it back").tap()
    expect(part).to_have_attribute("data-options", "2")
    page.reload()
    expect(part.locator("[data-option='2'] .option-total")).to_have_text("1545.83 CHF", timeout=PATIENCE)
    for button in part.locator("button:visible").all():
        assert button.bounding_box()["height"] >= 48
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert not page.problems


@pytest.mark.parametrize("light", ["light", "dark"])
def test_the_offer_prints_on_one_page_and_the_card_keeps_its_own(opened, light):
    page = opened(color_scheme=light)
    part = trail(page)
    page.evaluate(NO_DIALOG)
    part.get_by_role("button", name="Print the offer").click()
    sheet = page.get_by_role("article", name="Offer", include_hidden=True)
    sheet.wait_for(state="attached")
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]
    page.emulate_media(media="print")
    expect(sheet).to_be_visible()
    for words in (
        "Demo, invented",
        "429.50 EUR",
        "931.00 EUR",
        "Options 1 and 2 give the same force curve",
        "No click makes a difference",
    ):
        expect(sheet).to_contain_text(words)
    expect(page.locator(".card")).to_be_hidden()
    expect(page.locator(".option").first).to_be_hidden()
    page.emulate_media(media="screen")
    expect(sheet).to_be_hidden()
    page.get_by_role("button", name="Print", exact=True).click()
    expect(sheet).to_have_count(0)
    page.emulate_media(media="print")
    expect(page.locator(".card")).to_be_visible()
    assert pages(page.pdf(format="A4")) == 1


def test_four_options_still_print_on_one_page_and_twelve_stand_side_by_side(opened):
    page = opened(DESK)
    part = trail(page)
    page.evaluate(NO_DIALOG)
    for _ in range(2):
        part.locator("[data-option='1']").get_by_role("button", name="Copy it").click()
    expect(part.locator("[data-between]")).to_have_count(3, timeout=PATIENCE)
    part.get_by_role("button", name="Print the offer").click()
    sheet = page.get_by_role("article", name="Offer", include_hidden=True)
    expect(sheet).to_contain_text("Option 4", timeout=PATIENCE)
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]
    while part.locator(".option").count() < 12:
        part.locator("[data-option='1']").get_by_role("button", name="Copy it").click()
    expect(part.get_by_role("button", name="Add an option")).to_be_disabled()
    expect(part.locator("[data-between]")).to_have_count(11, timeout=PATIENCE)
    tops = [part.locator(f"[data-option='{number}']").bounding_box()["y"] for number in (1, 2)]
    assert tops[0] == tops[1]
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280
    assert not page.problems


def test_an_own_job_begins_with_no_option_and_no_guess(opened):
    page = opened()
    start_own(page, "enduro", "104 kg")
    page.locator(".place-bike").wait_for(timeout=PATIENCE)
    part = options(page)
    expect(part).to_have_attribute("data-options", "0")
    part.get_by_role("button", name="Add an option").click()
    expect(part.locator(".option-total")).to_contain_text("No total yet. The currency is not entered.", timeout=PATIENCE)
    expect(part.get_by_label("Currency")).to_have_value("")


def test_an_option_may_leave_the_cartridge_shut_and_charged(opened):
    """Chosen by touch and typed: the page says what the core says of the same offer."""
    page = opened(has_touch=True)
    part = trail(page)
    option = part.locator("[data-option='2']")
    option.get_by_role("button", name="Change this option").tap()
    option.get_by_label("Cartridge").select_option("as built")
    for leg in ("left", "right"):
        option.locator(f"[name='offer.options[2].setup.front.gap_{leg}']").fill("190")
    document = jobs()["trail"]
    document["offer"]["options"][1]["setup"]["front"] |= {"cartridge": "as built", "gap_left": "190 mm", "gap_right": "190 mm"}
    told = report_of(load(document)).options
    expect(option.locator("[data-option-end=front]")).to_have_text(told.options[1].ends[0].words, timeout=PATIENCE)
    assert "around the shut cartridge" in told.options[1].ends[0].words
    pair = part.locator("[data-between='1 2']")
    for words in told.between[0].words:
        expect(pair).to_contain_text(words)
    expect(pair).to_contain_text("Option 2: shut and charged as built")
    option.get_by_label("Cartridge").select_option("")
    expect(option.locator("[data-option-end=front]")).not_to_contain_text("shut cartridge", timeout=PATIENCE)
    assert not page.problems
