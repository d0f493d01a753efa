"""Hot, high, elsewhere and an air spring on a phone: +/- shown, and nothing wider than the screen."""

import re

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, answer, field


def wide(locator) -> int:
    """How far a table's room scrolls sideways, px."""
    return locator.evaluate("(room) => room.scrollWidth - room.clientWidth")


def test_every_condition_has_a_plus_minus_and_the_table_fits_a_phone(opened):
    page = opened()
    table = page.locator("[data-places=front]")
    expect(table.locator(".told small").first).to_be_visible(timeout=PATIENCE)
    for cells in table.locator("tbody tr:not(.places-words)").all():
        assert re.search(r"±\d", cells.inner_text()), cells.inner_text()
    expect(table.locator(".places-words").first).to_contain_text(
        re.compile(r"Acts like \d+ ±\d.* mm less gap; gap \d+ ±\d.* mm restores it\.")
    )
    assert wide(page.locator(".table-room", has=table)) <= 0
    assert not page.problems


def test_an_air_spring_is_answered_by_its_pressure_and_tried_by_it(opened):
    page = opened()
    page.evaluate("for (const folded of document.querySelectorAll('details')) folded.open = true")
    field(page, "front.air").select_option("air leg")
    field(page, "front.air_end").select_option("oil")
    expect(answer(page)).to_contain_text("Pump to", timeout=PATIENCE)
    expect(answer(page)).to_contain_text("ml in chamber")
    expect(page.locator(".how-sure").first).to_contain_text("bar in 8 of 10 draws", timeout=PATIENCE)
    page.locator("[data-candidate] button").first.click()
    expect(page.locator("[data-tried=front]")).to_contain_text("Air pressure", timeout=PATIENCE)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert not page.problems
