"""The ranges of the trade, opened to the user's own; and the worked demos, each with its own answer."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from calc.demo import jobs
from calc.practice import usual
from tests.browser.helpers import DEMO, KEPT, PATIENCE, answer, at, field, row, settle
from tests.support.plain import report

GAP = usual("gap", "enduro")


def open_ranges(page: Page) -> None:
    at(page, "bike")
    fold = page.get_by_role("button", name="Usual ranges")
    if fold.get_attribute("aria-expanded") == "false":
        fold.click()


def range_row(page: Page, title: str) -> Locator:
    return page.locator("fieldset.range", has=page.locator("legend", has_text=re.compile(f"^{title}\\b")))


def usual_words(page: Page, path: str) -> Locator:
    """What a field says of its usual range while the hand is in it."""
    field(page, path).focus()
    return row(page, path).locator(".panel .quiet").first


def until_range_is_kept(page: Page, name: str, low: str) -> None:
    """Wait until the demo job on the disk holds the range: writing takes its time."""
    page.wait_for_function(
        f"async ([id, name, low]) => String((await ({KEPT})(id)).row?.job?.practice?.[name]?.low) === low",
        arg=[DEMO, name, low],
        timeout=PATIENCE,
    )


def test_ranges_are_shut_until_asked_for_and_are_the_trades(opened):
    page = opened()
    at(page, "bike")
    expect(page.locator("fieldset.range").first).not_to_be_visible()
    open_ranges(page)
    gap = range_row(page, "Gap")
    expect(gap.locator("legend")).to_contain_text(f"confidence {GAP.confidence}")
    for key in ("low", "typical", "high"):
        expect(gap.get_by_label(key)).to_have_value(f"{getattr(GAP, key):g}")
    expect(gap.get_by_role("button", name="Use the default")).to_have_count(0)
    expect(page.locator("#ranges")).to_contain_text("Common practice, no source")


def test_an_own_range_is_followed_kept_and_given_back(opened):
    page = opened()
    trade = f"Usually {GAP.low:g} to {GAP.high:g} mm."
    expect(usual_words(page, "front.gap_left")).to_contain_text(trade)
    before = page.locator("[data-answer=front] .answer-lines").inner_text()
    open_ranges(page)
    gap = range_row(page, "Gap")
    gap.get_by_label("low").fill("92")
    gap.get_by_label("high").fill("150")
    expect(gap.locator("legend")).to_contain_text("yours")
    expect(usual_words(page, "front.gap_left")).to_contain_text("Usually 92 to 150 mm.")
    expect(field(page, "front.gap_left")).to_have_value("145")
    assert page.locator("[data-answer=front] .answer-lines").inner_text() == before, "a range never overrules a reading"
    until_range_is_kept(page, "gap", "92")
    page.reload()
    settle(page)
    expect(usual_words(page, "front.gap_left")).to_contain_text("Usually 92 to 150 mm.")
    open_ranges(page)
    expect(range_row(page, "Gap").get_by_label("low")).to_have_value("92")
    range_row(page, "Gap").get_by_role("button", name="Use the default").click()
    expect(range_row(page, "Gap").get_by_label("low")).to_have_value(f"{GAP.low:g}")
    expect(range_row(page, "Gap").locator("legend")).to_contain_text(f"confidence {GAP.confidence}")
    expect(usual_words(page, "front.gap_left")).to_contain_text(trade)
    assert page.problems == []


def test_a_range_stands_in_for_what_is_not_entered_and_judges_the_answer(opened):
    """Friction is not entered in the demo: its typical value is assumed. The frequency's range is told under the answer."""
    page = opened()
    expect(field(page, "front.friction")).to_have_attribute("placeholder", "30")
    open_ranges(page)
    range_row(page, "Friction per leg, ridden").get_by_label("typical").fill("26")
    expect(field(page, "front.friction")).to_have_attribute("placeholder", "26")
    hertz = usual("ride frequency front", "enduro")
    expect(at(page, "front").locator(".why-words")).to_contain_text(f"Usual for this riding: {hertz.low:g}-{hertz.high:g} Hz")
    open_ranges(page)
    range_row(page, "Ride frequency front").get_by_label("low").fill("1.7")
    expect(at(page, "front").locator(".why-words")).to_contain_text(f"Usual for this riding: 1.7-{hertz.high:g} Hz")


@pytest.mark.parametrize(
    ("key", "typed", "said"),
    [
        ("low", "wide", "not a number"),
        ("low", "9**9**9", "one number"),
        ("low", "180", "must rise in this order"),
        ("high", "12 bar", "does not fit here"),
        ("typical", "", "nothing is entered"),
    ],
)
def test_a_bad_range_is_refused_in_place(opened, key, typed, said):
    page = opened()
    open_ranges(page)
    gap = range_row(page, "Gap")
    gap.get_by_label(key).fill(typed)
    wrong = gap.locator(".attend")
    expect(wrong).to_contain_text(said)
    expect(wrong).to_contain_text("Until then the usual range stands")
    expect(gap.get_by_label(key)).to_have_attribute("aria-invalid", "true")
    expect(gap.get_by_label(key)).to_have_value(typed)
    expect(usual_words(page, "front.gap_left")).to_contain_text(f"Usually {GAP.low:g} to {GAP.high:g} mm.")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    open_ranges(page)
    gap.get_by_role("button", name="Use the default").click()
    expect(gap.locator(".attend")).to_have_count(0)
    expect(answer(page)).to_have_attribute("data-stale", "no")
    assert page.problems == []


DEMOS = jobs()


def start_of(document: dict, end: str) -> str:
    """The answer's first words, up to its numbers' end: what to fit, by the core of this desk."""
    told = report(document, with_bands=True)["ends"][end]["answer"]
    return re.match(r".+?N/mm", told)[0].replace("Keep the ", "Keep ")


def test_each_demo_has_an_answer_of_its_own():
    assert len({tuple(start_of(document, end) for end in ("front", "rear")) for document in DEMOS.values()}) == len(DEMOS) == 3


@pytest.mark.parametrize("name", list(DEMOS))
def test_a_demo_opens_and_settles_with_its_own_answer(opened, name):
    page = opened()
    document = DEMOS[name]
    at(page, "door").get_by_role("button", name=f"Demo: {document['name']}").click()
    expect(page.locator(".job-name")).to_have_text(f"{document['name']}, demo")
    expect(page.locator(".job-kind", has_text="demo")).to_be_visible()
    expect(field(page, "rider.mass")).to_have_value(document["rider"]["mass"]["value"].split()[0])
    settle(page)
    for end in ("front", "rear"):
        expect(answer(page, end)).to_contain_text(start_of(document, end))
        expect(answer(page, end)).to_have_attribute("data-stale", "no")
    page.reload()
    settle(page)
    expect(page.locator(".job-name")).to_have_text(f"{document['name']}, demo")
    expect(answer(page)).to_contain_text(start_of(document, "front"))
    assert page.problems == []
