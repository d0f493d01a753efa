"""The page in the hand: it answers, follows the typing, refuses at the field, takes any unit."""

from __future__ import annotations

import re

from playwright.sync_api import expect

from tests.browser.helpers import PATIENCE, answer, at, field, row, settle


def test_demo_answers_before_the_core_is_up_and_says_so(opened):
    page = opened(computed=False)
    expect(answer(page)).to_contain_text("Saved answer, being worked out again")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    expect(page.locator(".job-kind", has_text="demo")).to_be_visible()
    settle(page)
    expect(answer(page)).not_to_contain_text("Saved answer")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")


def test_result_follows_while_typing(opened):
    page = opened()
    field(page, "front.target_sag").fill("60")
    expect(page.locator("[data-strip=front]")).to_contain_text(re.compile(r"Rider sag\s*(59|60) mm"))
    assert page.evaluate("document.activeElement.name") == "front.target_sag", "the hand stays where it types"
    field(page, "front.target_sag").fill("66")
    field(page, "rider.front_axle").fill("92")
    expect(answer(page)).to_contain_text(re.compile(r"with\s*0 mm preload"))


def test_a_new_value_is_not_assumed_any_more(opened):
    page = opened()
    expect(row(page, "front.unsprung").locator(".value")).to_have_class(re.compile("assumed"))
    field(page, "front.unsprung").fill("15.5")
    expect(row(page, "front.unsprung").locator(".value")).to_have_class(re.compile("measured"))
    expect(row(page, "front.unsprung").locator(".spread")).to_have_text("±1.5")


def test_clearing_goes_back_to_practice(opened):
    page = opened()
    field(page, "front.unsprung").fill("")
    expect(field(page, "front.unsprung")).to_have_attribute("placeholder", "16.7")
    expect(row(page, "front.unsprung").locator(".word")).to_have_text("assumed")
    row(page, "front.unsprung").locator(".spread").click()
    expect(row(page, "front.unsprung").locator(".panel")).to_contain_text("Assumed:")


BAD = {
    "nan": "This is not a number",
    "9**9**9": "one number",
    "1e400 mm": "too large",
    "4 4": "one number",
    "-": "not a number",
    "900": "above the limit of 200",
    "1,250": "From 5 to 200 mm",  # 1250 and 1.250 both lie outside: the range, no offers
    "70 bar": "does not fit here",
    "70 wombats": "not a unit",
    "x" * 41: "40 characters",
    "<img src=x onerror=alert(1)>": "not a number",
}


def test_bad_entries_keep_the_last_good_result_and_name_the_field(opened):
    page = opened()
    expect(answer(page, "rear")).to_contain_text("Of 10 runs", timeout=PATIENCE)  # how sure it is comes last
    rear = answer(page, "rear").inner_text()
    for typed, said in BAD.items():
        field(page, "front.target_sag").fill(typed)
        wrong = row(page, "front.target_sag").locator(".problem")
        expect(wrong).to_contain_text(said)
        expect(answer(page)).to_contain_text("Rider sag wanted")
        expect(field(page, "front.target_sag")).to_have_attribute("aria-invalid", "true")
        expect(answer(page)).to_have_attribute("data-stale", "last good")
        expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
        assert answer(page, "rear").inner_text() == rear, "the other end is not touched"
    assert page.problems == []
    field(page, "front.target_sag").fill("66")
    expect(answer(page)).to_have_attribute("data-stale", "no")
    expect(row(page, "front.target_sag").locator(".problem")).to_be_empty()


def test_a_comma_that_can_be_read_two_ways_offers_both(opened):
    page = opened()
    field(page, "place.ridden_altitude").fill("1,250")
    offers = row(page, "place.ridden_altitude").locator(".readings button")
    expect(offers).to_have_text([re.compile("^1250 m$"), re.compile("^1.250 m$")])
    field(page, "place.ridden_altitude").blur()
    expect(answer(page)).to_contain_text("Last good")
    offers.first.click()
    expect(field(page, "place.ridden_altitude")).to_have_value("1250")
    expect(answer(page)).to_have_attribute("data-stale", "no")


def test_impossible_bike_names_the_cause_and_the_way_out(opened):
    page = opened()
    field(page, "bike.front_axle").fill("15")
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    # The cause, and what would help: more than the name of a field.
    cause = page.locator("[data-answer=front] .answer-problems p").first.inner_text()
    assert len(cause) > 60, cause


def test_any_unit_in_any_field(opened):
    page = opened()
    field(page, "front.rate").fill("24 lb/in")
    expect(row(page, "front.rate").locator(".spread")).to_have_text("±0.72")
    field(page, "rider.mass").fill("16 st 5 lb")
    expect(field(page, "rider.mass")).to_have_attribute("aria-invalid", "false")
    field(page, "front.travel").fill("30 cm")
    expect(answer(page)).to_have_attribute("data-stale", "no")
    field(page, "front.travel").blur()
    expect(field(page, "front.travel")).to_have_value("30")
    expect(row(page, "front.travel").locator(".unit")).to_have_text("cm")


def test_unit_boxes_say_what_was_typed_and_offer_what_a_bench_reads(opened):
    page = opened()
    field(page, "rider.mass").fill("229")
    units = row(page, "rider.mass").get_by_role("group", name="Unit").get_by_role("button")
    expect(units).to_have_text(["kg", "lb", "st"])
    expect(row(page, "rider.mass").locator(".problem")).to_contain_text("above the limit")
    units.nth(1).click()
    expect(row(page, "rider.mass").locator(".problem")).to_be_empty()
    assert page.evaluate("document.activeElement.name") == "rider.mass", "the keypad stays up"
    field(page, "rider.mass").blur()
    expect(field(page, "rider.mass")).to_have_value("229")
    expect(row(page, "rider.mass").locator(".unit")).to_have_text("lb")


def test_try_beside_the_answer_and_back(opened):
    page = opened()
    steps = page.get_by_role("group", name="Try, front")
    steps.get_by_role("button", name="Springs: 0.2 N/mm more").click()
    steps.get_by_role("button", name="Gap: 5 mm less").dblclick()
    springs, gap = (steps.locator(f"output[name='front.tried_{what}']") for what in ("rate", "gap"))
    expect(springs).to_have_text(re.compile(r"4\.8\s+N/mm\s*answer 4\.6"))
    expect(gap).to_have_text(re.compile(r"110\s+mm\s*answer 120"))
    expect(page.locator("[data-strip=front]")).to_have_attribute("data-looked", "try")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    page.get_by_role("button", name="Try and answer").click()
    expect(page.locator("[data-beside=try] tbody tr").first).to_have_text(re.compile(r"Spring rate\s*4\.6.*4\.8"))
    page.get_by_role("button", name="Back to the answer").click()
    expect(page.locator("[data-beside]")).to_have_count(0)
    expect(springs).to_have_text(re.compile(r"4\.6\s+N/mm$"))


def test_a_try_that_cannot_be_says_so_where_it_is_turned(opened):
    page = opened()
    less = page.get_by_role("button", name="Gap: 5 mm less")
    for _ in range(18):
        less.click()
    expect(page.locator(".build-this")).to_contain_text("oil", timeout=PATIENCE)
    expect(page.get_by_role("button", name="Build this try")).to_have_count(0)
    expect(page.locator("[data-strip=front]")).to_contain_text("try: no")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")


def test_slow_core_shows_the_last_value_and_takes_edits(opened):
    """While the core is still coming the saved answer stands, and what is typed then is worked out once it is there."""
    page = opened(computed=False)
    field(page, "rider.front_axle").fill("92")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    settle(page)
    expect(answer(page)).to_contain_text(re.compile(r"with\s*0 mm preload"))


def test_two_kinds_of_figures_in_a_row_read_in_order_each_with_its_own_band(opened):
    """ "Leverage 2.5 ±0.05, falls by 22 % ±4": two figures of unlike units cannot share one +/-."""
    page = at(opened(), "rear")
    pair = page.get_by_role("group", name="Leverage", exact=True)
    bands = pair.locator(".spread")
    expect(bands).to_have_text([re.compile("^±"), re.compile("^±")])
    label = pair.locator("label").last
    expect(label).to_have_text("falls by")
    parts = (pair.locator(".pair-name"), pair.locator("input").first, bands.first, label, pair.locator("input").last, bands.last)
    # All at once: what stands above may still be moving.
    measured = "(all) => all.map((one) => one.getBoundingClientRect()).map(({ x, y, height }) => [x, y + height / 2])"
    places = page.evaluate(measured, [part.element_handle() for part in parts])
    lefts, middles = zip(*places, strict=True)
    assert list(lefts) == sorted(set(lefts))
    assert max(middles) - min(middles) < 40, "one row, or two of text in it"
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
