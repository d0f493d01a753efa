"""What stands with an answer: the unit that was typed, the rider that nobody weighed, weights that contradict each other."""

from __future__ import annotations

import re

from playwright.sync_api import Page, expect

from calc.job import load
from calc.report import report_of
from tests.browser.helpers import DESK, PATIENCE, answer, at, field
from tests.support.documents import demo

UNWEIGHED = re.compile(r"This is for a rider of \d+ kg in kit, the usual one for such a bike: weigh yours first\.")


def clear(page: Page, *paths: str) -> None:
    for path in paths:
        field(page, path).fill("")
        page.keyboard.press("Tab")


def test_a_rate_typed_in_another_unit_is_answered_in_that_unit_too(opened):
    page = opened()
    at(page, "rear")
    field(page, "rear.rate").fill("274 lb/in")
    also = answer(page, "rear").locator("[data-also]")
    expect(also).to_have_text(re.compile(r"^\d+ N/mm is \d+ lb/in\.$"), timeout=PATIENCE)
    newtons, pounds = (float(number) for number in re.findall(r"\d+", also.inner_text()))
    assert abs(newtons / pounds / 0.1751 - 1) < 0.01
    expect(answer(page, "front").locator("[data-also]")).to_have_count(0)
    assert page.problems == []


def test_nobody_weighed_the_rider(opened):
    page = opened(DESK)
    at(page, "bike")
    clear(page, "rider.mass", "rider.front_axle", "rider.rear_axle")
    expect(answer(page)).to_contain_text(UNWEIGHED, timeout=PATIENCE)
    expect(page.locator(".next").first).to_contain_text("weigh the rider in full kit")
    expect(page.locator(".next").first).to_have_attribute("data-next", "rider.mass")
    field(page, "rider.mass").fill("104 kg")
    expect(answer(page)).not_to_contain_text(UNWEIGHED, timeout=PATIENCE)
    assert page.problems == []


def test_no_spring_is_ordered_by_weights_that_contradict_each_other(opened):
    page = opened()
    at(page, "bike")
    field(page, "rider.mass").fill("90 kg")
    words = "Don't order a spring by this yet: the weights that were entered contradict each other. Weigh again."
    expect(answer(page, "rear")).to_contain_text(words, timeout=PATIENCE)
    field(page, "rider.mass").fill("104 kg")
    expect(answer(page, "rear")).not_to_contain_text("contradict", timeout=PATIENCE)
    assert page.problems == []


def pressure_told() -> str:
    """What the core tells of the demo with an air spring of which nothing is known but its gap as sold, and a rider of 86 kg."""
    sold = {"front.gap_left": "126 mm", "front.gap_right": "126 mm"}
    job = demo(sold | {"front.air": "air leg", "rider.mass": "86 kg", "rider.front_axle": None, "rider.rear_axle": None})
    return report_of(load(job), with_bands=False).ends.front.chosen.pressure.text


def test_a_pressure_that_nobody_read_is_pumped_to_and_one_that_was_read_is_kept(opened):
    """Springs and air as the standard rider has them: what is in stays, where it is known what that is."""
    page = opened()
    at(page, "bike").locator("[data-kind='front.air']").get_by_role("radio", name="Air spring").click()
    clear(page, "rider.front_axle", "rider.rear_axle")
    field(page, "rider.mass").fill("86 kg")
    for leg in ("left", "right"):
        field(page, f"front.gap_{leg}").fill("126 mm")
    told, bar = answer(page), pressure_told()
    expect(told).to_contain_text(re.compile(rf"Pump to\s*{re.escape(bar)} bar"), timeout=PATIENCE)
    field(page, "front.air_pressure").fill(f"{bar} bar")
    expect(told).to_contain_text(re.compile(rf"Keep\s*{re.escape(bar)}"), timeout=PATIENCE)
    assert page.problems == []
