"""The second demo from the first tap to the printed offer and card: a sealed cartridge opened into the leg, by touch on a phone."""

import os
import re
from pathlib import Path

from playwright.sync_api import expect

from calc.demo import jobs
from calc.job import load
from calc.job.work import REASSEMBLY
from calc.report.states import states_report
from tests.browser.helpers import PATIENCE, PHONE, at, settle
from tests.browser.test_bench import TOUCH, fold
from tests.browser.test_results import pages
from tests.browser.test_states import LABELS, chip

TRAIL = load(jobs()["trail"])
SHOTS = os.environ.get("STANCHION_SHOTS")  # a folder: every step as a picture, to be looked at


def test_a_conversion_from_the_first_tap_to_the_printed_offer_and_card(opened):
    page = opened(PHONE, **TOUCH)
    page.evaluate("window.print = () => {}")

    def seen(step: str) -> None:
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
        if SHOTS:
            page.screenshot(path=Path(SHOTS) / f"{step}.png", full_page=True)

    at(page, "door")
    seen("1-door")
    page.get_by_text("Saltmarsh 250 T").first.tap()
    page.locator(".place-front").wait_for()
    settle(page)
    seen("2-front")

    page.get_by_role("button", name="States", exact=True).tap()
    page.locator("[data-table=looked]").wait_for(timeout=PATIENCE)
    told = states_report(TRAIL, TRAIL)
    for state in LABELS:
        expect(chip(page, state)).to_be_visible()
    chip(page, "opened into one").tap()
    seen("3-states")
    page.get_by_text("The same for the customer").tap()
    for state in told.rows:
        expect(page.get_by_role("region", name="States of this fork")).to_contain_text(state.plain)
    both = told.replacements[-1]
    page.get_by_role("button", name=both.label).tap()
    expect(page.locator("[data-built=yes]")).to_be_visible(timeout=PATIENCE)
    seen("4-front-built")

    fold(page, "damping", "front")
    expect(page.locator("#fold-front-damping")).to_contain_text("the base valve must hold the difference", timeout=PATIENCE)
    seen("5-damping")

    options = fold(page, "options").locator(".options")
    expect(options).to_have_attribute("data-old", "false", timeout=PATIENCE)
    expect(options.locator("[data-between='1 2']")).to_have_attribute("data-same", "true")
    seen("6-options")
    options.get_by_role("button", name="Print the offer").tap()
    page.get_by_role("article", name="Offer", include_hidden=True).wait_for(state="attached")
    if SHOTS:
        page.pdf(path=Path(SHOTS) / "7-offer.pdf", format="A4")
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]

    checks = fold(page, "checks")
    for box in checks.locator("input[type=checkbox]").all():
        box.tap()
    expect(checks.locator("h2")).to_contain_text(f"{len(REASSEMBLY)} of {len(REASSEMBLY)}")
    page.get_by_role("button", name="Print", exact=True).tap()
    page.emulate_media(media="print")
    card = page.locator(".card")
    expect(card).to_contain_text(re.compile(r"Front, built: 4\.0 N/mm, \d+ mm preload"))
    expect(card).to_contain_text("Rear, draft, not built")
    expect(card.locator(".card-qr")).to_have_count(1)
    if SHOTS:
        page.pdf(path=Path(SHOTS) / "8-card.pdf", format="A4")
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]
    assert page.problems == []
