"""Damping on a phone: clickers and shims typed, factors and limits read, no answer moved by it."""

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, answer, at, bring, field, settle
from tests.browser.test_access import AXE

SHIMS = "Shims as found, group {}: {}"


def damping(page, end="front"):
    settle(page)
    at(page, end)
    bring(page, f"{end}.damper_piston")
    told = page.locator(f"#fold-{end}-damping [data-damping=told]")
    expect(told).to_have_attribute("data-old", "false", timeout=PATIENCE)
    return page


def audited(page, fold: str) -> None:
    assert page.evaluate("document.documentElement.scrollWidth") <= page.viewport_size["width"]
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert (
        page.evaluate("(fold) => axe.run(fold).then((found) => found.violations.map((one) => [one.id, one.nodes[0].html]))", fold)
        == []
    )


def test_what_is_typed_of_a_damper_is_told_and_moves_no_answer(opened):
    page = damping(opened())
    before = answer(page).inner_text()
    fold = page.locator("#fold-front-damping")
    expect(page.locator("[data-table=follows] tbody tr")).to_have_count(2)
    expect(fold).to_contain_text("a factor is not a number of clicks")
    expect(page.locator("#fold-front-damping [data-table=holds] tbody tr")).to_have_count(3)
    field(page, "front.base_drop").fill("3")
    expect(fold).to_contain_text("with the base valve as stated", timeout=PATIENCE)
    field(page, "front.rebound_force").fill("300 N")
    expect(fold).to_contain_text("of critical", timeout=PATIENCE)
    expect(answer(page)).to_have_text(before, use_inner_text=True, timeout=PATIENCE)
    audited(page, "#fold-front-damping")
    assert not page.problems


def test_shims_are_typed_cell_by_cell(opened):
    page = damping(opened())
    fold = page.locator("#fold-front-damping")
    for name, value in (("how many", "3"), ("outside mm", "24"), ("thick mm", "0,15")):
        page.get_by_label(SHIMS.format(1, name)).fill(value)
    expect(page.get_by_label(SHIMS.format(2, "how many"))).to_be_visible()
    for name, value in (("how many", "4"), ("outside mm", "24"), ("thick mm", "0.15")):
        page.get_by_label(SHIMS.replace("found", "built").format(1, name)).fill(value)
    field(page, "front.shim_clamp").fill("12")
    expect(fold).to_contain_text("3 of 0.15 mm became 4 of 0.15 mm, by themselves 1.33 times as stiff", timeout=PATIENCE)
    expect(fold).to_contain_text("All shims, bending together, are 1.33 times")
    page.get_by_label(SHIMS.format(1, "thick mm")).fill("15")
    expect(fold).to_contain_text("15 mm is above the limit of 2 mm", timeout=PATIENCE)
    expect(answer(page)).to_contain_text("4.6")
    audited(page, "#fold-front-damping")
    assert not page.problems


def test_the_shock_has_the_same_and_the_card_shows_both_logs(opened):
    page = damping(opened(), "rear")
    field(page, "rear.set_rebound").fill("10")
    expect(page.locator("#fold-rear-damping")).to_contain_text("1587 N of compression all along its stroke", timeout=PATIENCE)
    audited(page, "#fold-rear-damping")
    at(page, "card")
    page.get_by_role("button", name="The whole card").click()
    card = page.locator("article.card")
    expect(card).to_contain_text("Front clickers from closed, as found: rebound left 12", timeout=PATIENCE)
    expect(card).to_contain_text("rebound 14 → 10, compression 12 → –", timeout=PATIENCE)
    assert not page.problems
