"""The results on the page: strip, answer, chart, table and card say the core's own numbers, in every light and on paper."""

from __future__ import annotations

import json
import re
import zlib

import pytest
from playwright.sync_api import Page, expect

from tests.browser.helpers import DESK, PATIENCE, PHONE, at, field, start_own
from web.toolchain.places import GENERATED


@pytest.fixture(scope="session")
def demo() -> dict:
    """The report of the demo job, as the build's core worked it out."""
    return json.loads((GENERATED / "demos" / "enduro.json").read_text(encoding="utf-8"))["report"]


def line_up(page: Page, rule: str) -> list[float]:
    """Positions of a drawing's marks: where its scale starts, where it ends, free sag, rider sag."""
    return page.evaluate(
        """(rule) => {
          const svg = document.querySelector(rule)
          const line = svg.querySelector('.rule-line')
          const at = (kind) => Number(svg.querySelector(`circle[data-mark=${kind}]`).getAttribute('cx'))
          return [line.x1.baseVal.value, line.x2.baseVal.value, at('free'), at('rider')]
        }""",
        rule,
    )


def attributes(page: Page) -> list[str]:
    return page.evaluate(
        "[...document.querySelectorAll('svg, svg *')].flatMap((one) => [...one.attributes].map((a) => `${a.name}=${a.value}`))"
    )


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_strip_marks_stand_where_its_numbers_say(opened, demo, size):
    page = opened(size)
    chosen = demo["ends"]["front"]["chosen"]
    start, end, free, rider = line_up(page, ".strip .rule svg")
    for mark, name in ((free, "free_sag"), (rider, "rider_sag")):
        assert (mark - start) / (end - start) * 300 == pytest.approx(chosen[name]["value"], abs=0.01), name
    strip = page.locator(".strip")
    expect(strip).to_contain_text(re.compile(r"Free sag\s*30 mm"))
    expect(strip).to_contain_text(re.compile(r"Rider sag\s*66 mm"))
    expect(strip).to_contain_text(re.compile(r"Full travel\s*7\.2 × load"))


def test_strip_is_of_the_end_that_is_looked_at_and_leads_to_it(opened):
    page = opened()
    strip = page.locator(".strip")
    expect(strip).to_have_attribute("data-strip", "front")
    at(page, "rear")
    expect(strip).to_have_attribute("data-strip", "rear")
    expect(strip).to_contain_text(re.compile(r"Rider sag\s*105 mm"))
    expect(page.locator("[data-chart]")).to_have_attribute("data-chart", "rear")
    # Where a place speaks of both, the strip keeps the end until it is swapped by a tap.
    at(page, "check")
    expect(strip).to_have_attribute("data-strip", "rear")
    strip.get_by_role("button", name=re.compile("^Rear")).click()
    expect(strip).to_have_attribute("data-strip", "front")
    strip.get_by_role("link", name=re.compile("^Rider sag")).click()
    expect(page.locator(".place-front")).to_be_visible()


def test_last_good_is_marked_on_strip_chart_and_card(opened):
    page = opened()
    field(page, "front.target_sag").fill("wide")
    expect(page.locator(".strip")).to_contain_text("last good")
    expect(page.locator(".strip")).to_contain_text("66 mm")
    expect(page.locator(".leg")).to_contain_text("last good")
    at(page, "card")
    expect(page.locator("[data-card-answer=front]").first).to_contain_text("Last good result")
    expect(page.locator("[data-card-answer=rear]").first).not_to_contain_text("Last good result")
    field(page, "front.target_sag").fill("66")
    expect(page.locator(".strip")).not_to_contain_text("last good")


def test_chart_marks_and_curves_are_the_numbers(opened, demo):
    page = opened()
    front = demo["ends"]["front"]
    bottom, top, left, right = page.evaluate(
        """() => {
          const ticks = (axis) => [...document.querySelectorAll(`[data-chart=front] .axes [data-axis=${axis}]`)]
            .map((tick) => [Number(tick.textContent), ...tick.getAttribute('transform').match(/-?[\\d.]+/g).map(Number)])
          const up = ticks('up'), across = ticks('across')
          const scale = (list, i) => {
            const [a, b] = [list[0], list.at(-1)]
            return (v) => a[i] + (v - a[0]) / (b[0] - a[0]) * (b[i] - a[i])
          }
          return [scale(up, 2)(0), scale(up, 2)(300), scale(across, 1)(0), scale(across, 1)(1)]
        }"""
    )
    for kind in ("free", "rider"):
        mark = page.locator(f"[data-chart=front] [data-sag={kind}] circle")
        mm = (float(mark.get_attribute("cy")) - bottom) / (top - bottom) * 300
        assert mm == pytest.approx(front["chosen"][f"{kind}_sag"]["value"], abs=0.6), kind
    working = page.locator("[data-chart=front] [data-curve=working]").get_attribute("d")
    x, y = (float(number) for number in re.findall(r"-?[\d.]+", working)[-2:])
    assert (x - left) / (right - left) == pytest.approx(front["chosen"]["end_force"]["value"], abs=0.02)
    assert y == pytest.approx(top, abs=0.6)


def test_no_drawing_holds_what_is_no_number(opened):
    page = opened()
    bad = re.compile(r"NaN|Infinity|undefined|null")
    assert len(attributes(page)) > 500
    assert [said for said in attributes(page) if bad.search(said)] == []
    page.get_by_role("button", name="Turn the chart").first.click()
    expect(page.locator("[data-turned=true]")).to_have_count(1)
    assert [said for said in attributes(page) if bad.search(said)] == []
    assert page.problems == []


def test_chart_turns_and_its_labels_keep_off_each_other(opened):
    page = opened()
    for turned in ("false", "true"):
        chart = page.locator(f"[data-chart=front][data-turned={turned}]")
        expect(chart).to_have_count(1)
        boxes = chart.locator("[data-end] text, [data-sag] text").evaluate_all(
            """(texts) => texts.map((text) => {
              const b = text.getBoundingClientRect()
              return [text.textContent, b.left, b.right, b.top + 4, b.bottom - 4]
            })"""
        )
        assert len(boxes) >= 5
        for i, (one, left, right, top, bottom) in enumerate(boxes):
            assert left >= 0, f"{one} runs off the page"
            assert right <= PHONE["width"], f"{one} runs off the page"
            for other, left2, right2, top2, bottom2 in boxes[i + 1 :]:
                assert left >= right2 or left2 >= right or top >= bottom2 or top2 >= bottom, f"{one} lies on {other}"
        if turned == "false":
            page.get_by_role("button", name="Turn the chart").first.click()


def test_table_behind_the_chart(opened, demo):
    page = opened()
    page.locator("summary", has_text="Figures as a table").first.click()
    table = page.locator("[data-table=front]")
    expect(table).to_be_visible()
    strokes = table.locator("tbody th").all_inner_texts()
    assert strokes == [str(mm) for mm in range(0, 301, 25)]
    curve = demo["ends"]["front"]["curve"]
    last = table.locator("tbody tr").last.locator("td").all_inner_texts()
    names = ("springs", None, "slow", "working", "fast")
    for text, name in zip(last, names, strict=False):
        if name:
            assert text == f"{curve[name][-1]:.2f}", name
    assert float(last[1]) == pytest.approx(curve["slow"][-1] - curve["springs"][-1], abs=0.006)
    assert last[5] == f"{curve['wheel_rate'][-1]:.1f}"


def test_chart_is_described_for_those_who_hear_it(opened):
    page = opened()
    page.locator(".leg").get_by_label("as found").check()
    said = page.locator("[data-chart=front]").get_attribute("aria-label")
    for words in ("Free sag 30 mm", "rider sag 66 mm", "5.65 kN", "As found"):
        assert words in said


def test_tried_lies_beside_the_answer_on_the_chart(opened):
    page = opened()
    page.get_by_role("button", name="Springs on offer").click()
    page.locator("[data-candidate='4.8'] > button").click()
    page.get_by_role("button", name="Try the 4.8").click()
    expect(page.locator("[data-chart=front] [data-curve=answer]")).to_have_count(1)
    page.get_by_role("button", name="Back to the answer").click()
    expect(page.locator("[data-curve=answer]")).to_have_count(0)


def test_how_sure_counts_to_ten(opened, demo):
    page = opened(DESK)
    counts = {str(one["rate"]): one["of_ten"] for one in demo["ends"]["front"]["sure"]["counts"]}
    tally = page.locator("[data-how-sure]")
    expect(tally).to_be_visible(timeout=PATIENCE)
    strokes = tally.locator("svg").evaluate_all("(all) => all.map((one) => one.childElementCount)")
    shown = dict(zip(tally.locator("b").all_inner_texts(), strokes, strict=True))
    assert sum(shown.values()) == 10
    assert shown == {rate: count for rate, count in counts.items() if count}


def pages(pdf: bytes) -> int:
    """Pages of a PDF, counted in its objects, packed ones too."""
    packed = re.findall(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.S)
    texts = [pdf]
    for stream in packed:
        try:
            texts.append(zlib.decompress(stream))
        except zlib.error:
            continue
    return sum(len(re.findall(rb"/Type\s*/Page(?![a-zA-Z])", text)) for text in texts)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("light", ["light", "dark"])
def test_card_prints_on_one_page(opened, paper, size, light):
    page = at(opened(size, color_scheme=light), "card")
    expect(page.locator(".card")).to_contain_text("Built by")
    assert pages(page.pdf(format=paper)) == 1


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_card_that_rests_on_assumptions_prints_on_one_page_and_says_so(opened, paper):
    page = opened()
    start_own(page, "enduro", "104 kg")
    page.locator(".place-bike").wait_for(timeout=PATIENCE)
    at(page, "card")
    expect(page.locator(".card")).to_contain_text("Bike without a name")
    expect(page.locator("[data-card-answer=front]").first).to_contain_text("Can't choose a fork spring yet", timeout=PATIENCE)
    assert page.locator(".card .assumed").count() > 20
    assert pages(page.pdf(format=paper)) == 1


def test_counting_pages_can_fail(opened):
    page = at(opened(), "card")
    page.evaluate("""() => {
      for (let i = 0; i < 80; i++) document.querySelector('.card').appendChild(document.createElement('p')).append('x')
    }""")
    assert pages(page.pdf(format="A4")) > 1


def test_print_shows_the_card_and_nothing_else(opened):
    page = at(opened(), "card")
    page.emulate_media(media="print")
    expect(page.locator(".card")).to_be_visible()
    for beside in (".strip", ".head", ".bar", ".pair-boxes", ".card-buttons", ".fold > h2"):
        expect(page.locator(beside).first).not_to_be_visible()


def test_card_says_what_was_asked(opened):
    page = at(opened(), "card")
    card = page.locator(".card")
    for words in (
        "Brackwater 300 E",
        "Enduro",
        "104 kg",
        "12 May 2026",
        "Demo, invented",
        "standing",
        "riding, gas exponent 1.33",
        "bike alone, gas settled",
        "as found",
        "draft",
        "Bled at 400 m",
        "Ridden at 400 m",
        "Caps to the maker's torque",
        "Ten easy minutes",
        "Gas under pressure.",
        "Left out:",
        "Built by",
    ):
        expect(card).to_contain_text(words)
    rows = card.locator(".card-table tbody tr").all_text_contents()
    assert [row.split()[0] for row in rows] == ["Spring", "Preload", "Gap", "Oil", "Free", "Rider", "Ride", "Force", "Force"]
    expect(card.locator(".card-rests li", has_text="Wheel and lower legs")).to_contain_text("assumed")
    expect(card.locator(".card-rests .assumed").first).to_have_css("border-bottom-style", "dashed")


@pytest.mark.parametrize("light", ["light", "dark"])
def test_text_of_the_drawings_reads_in_every_light(opened, light):
    page = opened(color_scheme=light)
    ratio = page.evaluate(
        """() => {
          const value = (css) => css.match(/[\\d.]+/g).slice(0, 3).map(Number)
          const lum = (css) => value(css).map((v) => v / 255).map((v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
            .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0)
          const ground = lum(getComputedStyle(document.documentElement).backgroundColor)
          return [...document.querySelectorAll('[data-chart] text')].map((text) => lum(getComputedStyle(text).fill))
            .map((ink) => (Math.max(ink, ground) + 0.05) / (Math.min(ink, ground) + 0.05)).reduce((a, b) => Math.min(a, b))
        }"""
    )
    assert ratio >= 7
