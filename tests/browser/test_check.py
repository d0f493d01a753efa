"""Check: hot, high and others; and an air spring on a phone: +/- shown, and nothing wider than the screen."""

import re

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, answer, at, field
from tests.browser.test_access import AXE
from tests.browser.test_places import FREE, MOST_SCREENS
from tests.browser.test_results import pages

VIOLATIONS = "axe.run().then((found) => found.violations.map((one) => [one.id, one.nodes[0].html]))"


def wide(locator) -> int:
    """How far a table's room scrolls sideways, px."""
    return locator.evaluate("(room) => room.scrollWidth - room.clientWidth")


def test_every_condition_has_a_plus_minus_and_the_table_fits_a_phone(opened):
    page = at(opened(), "check")
    page.get_by_role("button", name="Hot, high, others").click()
    table = page.locator("[data-places=front]")
    expect(table.locator(".result small").first).to_be_visible(timeout=PATIENCE)
    for cells in table.locator("tbody tr:not(.places-words)").all():
        assert re.search(r"±\d", cells.inner_text()), cells.inner_text()
    expect(table.locator(".places-words").first).to_contain_text(
        re.compile(r"Rides as if the gap were \d+ ±\d.* mm smaller\. Set \d+ ±\d.* mm to get the force at full travel back")
    )
    assert wide(page.locator(".table-room", has=table)) <= 0
    assert not page.problems


def test_an_air_spring_is_answered_by_its_pressure_and_tried_by_it(opened):
    page = opened()
    at(page, "bike").locator("[data-kind='front.air']").get_by_role("radio", name="Air spring").click()
    expect(page.locator("[name='front.air_pressure']")).to_have_count(0)
    field(page, "front.air_end").select_option("oil")
    expect(answer(page)).to_contain_text("Pump to", timeout=PATIENCE)
    expect(answer(page)).to_contain_text("ml in chamber")
    expect(page.locator(".how-sure").first).to_contain_text("bar in 8 of 10 runs", timeout=PATIENCE)
    # No field of another kind exists.
    expect(page.locator("[name='front.cartridge_charge']")).to_have_count(0)
    page.get_by_role("button", name="Springs on offer").click()
    page.locator("[data-candidate] > button").first.click()
    page.locator("[data-candidate]").first.get_by_role("button", name=re.compile("^Try")).click()
    expect(page.locator("[data-strip=front]")).to_have_attribute("data-looked", "try", timeout=PATIENCE)
    page.get_by_role("button", name="Try and answer").click()
    expect(page.locator("[data-beside=try]")).to_contain_text("Air pressure")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert not page.problems


READ = "Read the sags: front and rear, bike alone and with the rider."


def test_check_asks_for_the_sags_until_they_are_read_unless_the_job_says_where_it_is_ridden(opened):
    page = at(opened(), "check")
    lead = page.locator("[data-answer=check]")
    expect(lead).to_have_text(READ)
    says = page.locator("#fold-check-hot .fold-says")
    expect(says).to_have_text("50 °C, 1800 m assumed")
    assert wide(says) <= 0
    field(page, "conditions.high_altitude").fill("2400 m")
    expect(lead).to_have_text(re.compile("^At 2400 m, legs at 50 °C: "), timeout=PATIENCE)
    assert wide(says) <= 0
    field(page, "front.aboard_sag").fill("70")
    expect(lead).to_have_text(re.compile("sag"), timeout=PATIENCE)
    assert not page.problems


SAGS = {
    "front.alone_sag": "36", "front.alone_again_sag": "28", "front.aboard_sag": "75", "front.aboard_again_sag": "66",
    "rear.alone_sag": "8", "rear.alone_again_sag": "4", "rear.aboard_sag": "101", "rear.aboard_again_sag": "95",
}  # fmt: skip


def test_sags_found_stand_beside_those_expected_and_correct_the_answer(opened):
    page = at(opened(), "check")
    expect(page.locator("[data-sags=none]")).to_contain_text("Read each sag twice with a tape")
    for path, sag in SAGS.items():
        field(page, path).fill(sag)
    for end in ("front", "rear"):
        said = page.locator(f"[data-sags-end={end}]")
        expect(said).to_contain_text(re.compile(r"Rider sag \d+ mm found, \d+ ±\d+ expected"), timeout=PATIENCE)
        expect(said.get_by_role("img")).to_have_attribute("aria-label", re.compile(r"Travel \d+ mm: free sag found at"))
    corrected = page.locator("[data-corrected]")
    expect(corrected).to_have_attribute("data-corrected", "true")
    expect(corrected.get_by_role("row", name=re.compile("friction per leg"))).to_contain_text("±")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.evaluate("document.activeElement.blur()")  # the panel of the field last typed in closes
    assert page.locator("main").evaluate("(main) => main.scrollHeight") <= MOST_SCREENS * FREE
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert page.evaluate(VIOLATIONS) == []
    corrected.get_by_role("link", name="Use my readings as they are").click()
    field(page, "bike.sags_correct").select_option("no")
    expect(corrected).to_have_attribute("data-corrected", "false", timeout=PATIENCE)
    expect(corrected).to_contain_text("only compared")
    assert not page.problems


def test_other_springs_wait_for_a_sag_that_fits_nothing_to_be_read_again(opened):
    page = opened()
    at(page, "check")
    field(page, "rear.aboard_sag").fill("131")
    field(page, "rear.aboard_again_sag").fill("127")
    expect(answer(page, "rear")).to_contain_text(
        "Don't order a spring by this yet: the rider sag that was read fits nothing else.", timeout=PATIENCE
    )
    expect(answer(page, "rear")).to_contain_text("Fit 52 N/mm")
    expect(at(page, "card").locator("[data-card-answer=rear]").first).to_contain_text("Don't order a spring by this yet")


def test_sags_that_differ_by_too_much_are_refused(opened):
    page = at(opened(), "check")
    field(page, "rear.aboard_sag").fill("90")
    field(page, "rear.aboard_again_sag").fill("108")
    expect(page.locator("[data-sags-end=rear]")).to_contain_text("something sticks", timeout=PATIENCE)


def test_sags_are_those_of_what_was_built_where_that_is_said(opened):
    page = opened()
    page.get_by_role("button", name="Build this").first.click()
    at(page, "check")
    field(page, "front.aboard_sag").fill("66")
    page.get_by_role("link", name="Of the bike as it came in").click()
    field(page, "bike.sags_of").select_option("built")
    expect(page.locator("[data-sags-end=front]")).to_contain_text(re.compile("Rider sag 66 mm found, 6[567] ±"), timeout=PATIENCE)
    expect(page.get_by_role("link", name="Of the bike as built")).to_be_visible()


def test_sags_are_read_as_lengths_too(opened):
    page = at(opened(), "check")
    page.get_by_role("button", name="How sags are read").click()
    field(page, "rear.sags_read").select_option("lengths")
    for path, length in {"hanging_length": "600", "alone_length": "592", "aboard_length": "504"}.items():
        field(page, f"rear.{path}").fill(length)
    expect(page.locator("[data-sags-end=rear]")).to_contain_text("Rider sag 96 mm found", timeout=PATIENCE)


def test_after_the_ride_the_one_thing_to_change_first_stands_under_what_was_read(opened):
    page = at(opened(), "check")
    page.get_by_role("button", name="After the ride").click()
    field(page, "front.mark").fill("299")
    field(page, "front.felt").select_option("bottoms")
    field(page, "rear.felt").select_option("kicks")
    front, rear = (page.locator(f"[data-ride-end={end}]") for end in ("front", "rear"))
    expect(front.locator("[data-ride-first]")).to_have_text(
        re.compile(
            r"Left so, first: add \d+ ml a leg \(gap \d+ to \d+ mm\): force at full travel \d+ % more, rider sag as it is\."
        ),
        timeout=PATIENCE,
    )
    expect(front).to_contain_text("All of the travel was used")
    expect(front.locator("[data-ride-target]")).to_have_text(
        re.compile(
            r"All of the travel was used: next time ask for \d+\.\d × rider load at full travel; the setup ridden has \d+\.\d × rider load\."
        )
    )
    expect(rear.locator("[data-ride-first]")).to_contain_text("more rebound damping")
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert page.evaluate(VIOLATIONS) == []
    page.reload()
    expect(front).to_contain_text("All of the travel was used", timeout=PATIENCE)
    assert not page.problems


def test_what_was_found_and_what_the_ride_said_stand_on_the_card(opened):
    page = at(opened(), "check")
    for path, sag in SAGS.items():
        field(page, path).fill(sag)
    page.get_by_role("button", name="After the ride").click()
    field(page, "front.felt").select_option("well")
    expect(page.locator("[data-ride-first]")).to_contain_text("Nothing to change.", timeout=PATIENCE)
    at(page, "card")
    page.get_by_role("button", name="The whole card").click()
    card = page.get_by_role("article", name="Card")
    expect(card).to_contain_text(
        re.compile(r"Sags found, as it came in front free sag 32, rider sag 70; rear free sag 6, rider sag 98 mm\.")
    )
    expect(card).to_contain_text("After the ride Front. Nothing to change. Write it on the card.")
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]
    assert not page.problems


def test_the_card_tells_as_found_what_the_tape_read_and_where_that_was_left_out(opened):
    page = opened()
    at(page, "door").get_by_text("Saltmarsh 250 T").first.click()
    page.locator(".place-front").wait_for()
    at(page, "check")
    for path, sag in (SAGS | {"front.alone_sag": "34", "front.alone_again_sag": "27", "front.aboard_sag": "78"}).items():
        field(page, path).fill("70" if path == "front.aboard_again_sag" else sag)
    at(page, "front").get_by_role("button", name="Build this").click()
    at(page, "card").get_by_role("button", name="The whole card").click()
    cells = page.locator(".card-table tr", has=page.get_by_role("rowheader", name=re.compile("^Rider sag"))).locator("td")
    expect(cells.nth(0)).to_have_text(re.compile(r"read 74 ±\d+ ?left out: read again"), timeout=PATIENCE)
    expect(cells.nth(0).locator(".stated, .measured")).to_have_text("74")
    expect(cells.nth(1)).not_to_contain_text("read")
    expect(cells.nth(2)).to_have_text(re.compile(r"^\s*read 98 ±\d+\s*$"))
    assert not page.problems
