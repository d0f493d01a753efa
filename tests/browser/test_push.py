"""A bench push on a phone: typed or pasted, its verdict read, its curves and what they miss the points by."""

import re

from playwright.sync_api import expect

from calc.demo import jobs
from tests.browser.helpers import PATIENCE, at, bring, field, settle
from tests.browser.test_access import AXE

POINTS = jobs()["trail"]["front"]["push_points"]["value"]


def trail(page):
    """The demo with the cartridge, its push taken out."""
    at(page, "door").get_by_text("Saltmarsh 250 T").first.click()
    page.locator(".bar").wait_for()
    settle(page)
    at(page, "front")
    bring(page, "front.push_points")
    expect(page.locator("[data-push]")).to_be_visible(timeout=PATIENCE)
    return page


def test_points_are_typed_and_the_verdict_is_read(opened):
    page = trail(opened())
    points = field(page, "front.push_points")
    points.fill("")
    expect(page.locator("[data-push=none]")).to_contain_text("Push one leg in slowly", timeout=PATIENCE)
    expect(page.locator("[name='front.push_read']")).to_have_count(0)
    points.fill(POINTS)
    verdict = page.locator(".push-verdict")
    expect(verdict).to_contain_text(re.compile(r"The charge is gone, (over )?\d+ in 100"), timeout=PATIENCE)
    expect(page.locator("[data-push='seal leaking opened into one'][data-old=false]")).to_contain_text(
        "Sags can't show a lost seal", timeout=PATIENCE
    )
    chart = page.locator("[data-chart=push]")
    expect(chart).to_have_attribute("aria-label", re.compile("Read: 111 N ±4 at 150 mm"))
    assert chart.locator(".push-line").count() == 3, "those that press alike share a line"
    expect(chart.locator(".push-point")).to_have_count(5)
    page.get_by_text("What each misses the points by").click()
    expect(page.get_by_role("region", name="What each explanation misses the points by").locator("tbody tr")).to_have_count(5)
    page.get_by_role("button", name="Whole forces").click()
    expect(chart).to_contain_text("N, one leg")
    # The same points read on the way out are worked out again: friction then held some of the force back.
    field(page, "front.push_read").select_option("out")
    expect(page.locator(".push[data-push='as built'], .push[data-push='open'], .push[data-push='oil moved']").first).to_be_visible(
        timeout=PATIENCE
    )
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.evaluate(AXE.read_text(encoding="utf-8"))
    assert (
        page.evaluate("axe.run('#fold-front-push').then((found) => found.violations.map((one) => [one.id, one.nodes[0].html]))")
        == []
    )
    assert not page.problems


def test_a_table_is_pasted_as_a_spreadsheet_copies_it(opened):
    page = trail(opened())
    points = field(page, "front.push_points")
    points.fill("")
    points.evaluate(
        """(input, text) => {
          const data = new DataTransfer()
          data.setData('text', text)
          input.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
        }""",
        POINTS.replace("; ", "\r\n").replace(" ", "\t"),
    )
    expect(points).to_have_value(POINTS.replace(" ", "\t").replace(";\t", "; "))
    expect(page.locator(".push-verdict")).to_contain_text("The charge is gone", timeout=PATIENCE)
    assert not page.problems


def test_what_the_points_correct_is_told_and_can_be_refused(opened):
    """The first demo's open leg pushed: the gap and all else were read, so that its cap, which was assumed, is what gives."""
    page = opened()
    at(page, "front")
    bring(page, "front.push_points")
    field(page, "front.push_points").fill("150 119; 200 181; 240 253; 260 304; 280 369")
    said = page.locator(".push[data-push]")
    told = re.compile(r"Front: cap in the tube 20 ±10 ml assumed: 2\d ±\d ml by your push\.")
    expect(said).to_contain_text(told, timeout=PATIENCE)
    at(page, "check")
    corrected = page.locator("[data-corrected=true]")
    expect(corrected).to_contain_text("Corrected by your push")
    expect(corrected.get_by_role("row", name=re.compile("cap in the tube"))).to_contain_text("20")
    expect(corrected).to_contain_text("What you typed stays as it is.")
    corrected.get_by_role("link", name="Use my readings as they are").click()
    field(page, "front.push_correct").select_option("no")
    expect(said).to_contain_text("these points are only compared", timeout=PATIENCE)
    at(page, "check")
    expect(page.locator("[data-corrected]")).to_have_count(0)
    assert not page.problems
