"""The sheet of an oil's tin on a phone: typed, its table and sentences read, and no answer moved by it."""

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, answer, at, bring, field, settle
from tests.browser.test_access import AXE


def sheet(page):
    settle(page)
    at(page, "front")
    bring(page, "oil.viscosity_40")
    expect(page.locator("[data-oil=none]")).to_contain_text("Enter the two viscosities", timeout=PATIENCE)
    return page


def with_bands(page):
    """The answer as it stands once its +/- are in: after every edit they come last."""
    expect(answer(page)).to_contain_text("±", timeout=PATIENCE)
    return answer(page).inner_text()


def test_a_sheet_is_typed_and_its_words_are_read(opened):
    page = sheet(opened())
    before = with_bands(page)
    expect(page.locator("[name='oil.second_40']")).to_have_count(0)
    field(page, "oil.viscosity_40").fill("15 cSt")
    expect(page.locator("[data-oil=problem]")).to_contain_text("Enter the viscosity at 40 °C and at 100 °C both", timeout=PATIENCE)
    field(page, "oil.viscosity_100").fill("3,6")
    told = page.locator("[data-oil=told]")
    expect(told).to_contain_text("times thinner", timeout=PATIENCE)
    expect(told).to_contain_text("means nothing between tins")
    rows = page.locator("[data-table=oil] tbody tr")
    expect(rows).to_have_count(3)
    expect(rows.last).to_contain_text("Viscosity index")
    field(page, "oil.second_40").fill("46")
    field(page, "oil.second_100").fill("8")
    field(page, "oil.second_share").fill("30")
    expect(page.locator("[data-table=oil] thead")).to_contain_text("mix", timeout=PATIENCE)
    expect(page.locator("[data-oil=told]")).to_contain_text("The mix is an estimate", timeout=PATIENCE)
    # No answer rests on it.
    expect(answer(page)).to_have_text(before, use_inner_text=True, timeout=PATIENCE)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert (
        page.evaluate("axe.run('#fold-front-oil').then((found) => found.violations.map((one) => [one.id, one.nodes[0].html]))")
        == []
    )
    assert not page.problems


def test_an_entry_that_cannot_be_is_refused_and_stops_no_answer(opened):
    page = sheet(opened())
    before = with_bands(page)
    field(page, "oil.viscosity_40").fill("15")
    field(page, "oil.viscosity_100").fill("400")
    expect(page.locator("[data-oil=problem]")).to_contain_text("above the limit of 200 mm²/s", timeout=PATIENCE)
    expect(answer(page)).to_have_text(before, use_inner_text=True, timeout=PATIENCE)
    assert not page.problems
