"""The page in the hand: open, edit, refuse, reload, start anew; by finger and by keyboard, in every light."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.browser.helpers import PATIENCE, wait_for_core, watch
from web.toolchain.places import MODULES

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1280, "height": 800}
AXE = MODULES / "axe-core" / "axe.min.js"


@pytest.fixture
def opened(browser: Browser, serve, dist) -> Iterator[Callable[..., Page]]:
    """Open the page in a browser of its own: a size, a light."""
    site = serve(dist)
    contexts = []

    def open_page(size=PHONE, computed: bool = True, **how) -> Page:
        context = browser.new_context(viewport=size, service_workers="block", **how)
        contexts.append(context)
        page = context.new_page()
        watch(page)
        page.goto(site.url)
        if computed:
            settle(page)
        return page

    yield open_page
    for context in contexts:
        context.close()


def settle(page: Page) -> None:
    """Wait until what stands on the page is worked out by the page's own core."""
    wait_for_core(page)
    expect(page.locator("[data-answer][data-stale=saved]")).to_have_count(0, timeout=PATIENCE)


def until_kept(page: Page, state: str) -> None:
    """Wait until the demo job's kept report has its front in this state: writing to the disk takes its time."""
    page.wait_for_function("""(state) => new Promise((done) => {
        const opening = indexedDB.open('stanchion')
        opening.onsuccess = () => {
            const asked = opening.result.transaction('jobs').objectStore('jobs').get('demo')
            asked.onsuccess = () => (opening.result.close(), done(asked.result?.report?.ends.front.state === state))
        }
    })""", arg=state, timeout=PATIENCE)


def field(page: Page, path: str) -> Locator:
    return page.locator(f"[name='{path}']")


def row(page: Page, path: str) -> Locator:
    return page.locator(f"[id='{path}']")


def answer(page: Page, end: str = "front") -> Locator:
    return page.locator(f"[data-answer={end}]").first


def more(page: Page, part: str) -> None:
    """Open the readings of a part that stay folded until asked for."""
    page.locator(f"#{part} summary", has_text="More readings").click()


def test_demo_answers_before_the_core_is_up_and_says_so(opened):
    page = opened(computed=False)
    expect(answer(page)).to_contain_text("Saved answer, being worked out again")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    expect(page.locator(".job-kind", has_text="demo, invented")).to_be_visible()
    top = answer(page).bounding_box()
    settle(page)
    expect(answer(page)).not_to_contain_text("Saved answer")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    assert answer(page).bounding_box()["height"] == top["height"], "the mark moves nothing when it goes"


def test_result_follows_while_typing(opened):
    page = opened()
    field(page, "rider.front_axle").fill("92")
    expect(answer(page)).to_contain_text("Fit 4.4 N/mm")
    assert page.evaluate("document.activeElement.name") == "rider.front_axle", "the hand stays where it types"


def test_a_new_value_is_not_assumed_any_more(opened):
    page = opened()
    expect(row(page, "front.unsprung").locator(".value")).to_have_class(re.compile("assumed"))
    field(page, "front.unsprung").fill("15.5")
    expect(row(page, "front.unsprung").locator(".value")).to_have_class(re.compile("measured"))
    expect(row(page, "front.unsprung").locator(".spread")).to_have_text("±1.5")


def test_clearing_goes_back_to_practice(opened):
    page = opened()
    field(page, "front.unsprung").fill("")
    expect(field(page, "front.unsprung")).to_have_attribute("placeholder", "16")
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
    "70 bar": "does not fit here",
    "70 wombats": "not a unit",
    "x" * 41: "40 characters",
    "<img src=x onerror=alert(1)>": "not a number",
}


def test_bad_entries_keep_the_last_good_result_and_name_the_field(opened):
    page = opened()
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
    said = page.locator("[data-answer=front]").first.inner_text()
    assert "last good" in said.lower() and len(said) > 60, said


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


def test_unit_button_says_what_was_typed(opened):
    page = opened()
    field(page, "rider.mass").fill("229")
    unit = row(page, "rider.mass").get_by_role("button", name=re.compile("^Unit: "))
    expect(row(page, "rider.mass").locator(".problem")).to_contain_text("above the limit")
    while unit.inner_text() != "lb":
        unit.click()
    expect(row(page, "rider.mass").locator(".problem")).to_be_empty()
    assert page.evaluate("document.activeElement.name") == "rider.mass", "the keypad stays up"
    field(page, "rider.mass").blur()
    expect(field(page, "rider.mass")).to_have_value("229")
    expect(row(page, "rider.mass").locator(".unit")).to_have_text("lb")


def test_reload_keeps_the_job_and_its_answer(opened):
    page = opened()
    field(page, "rider.front_axle").fill("92")
    expect(answer(page)).to_contain_text("Fit 4.4 N/mm")
    field(page, "front.target_sag").fill("wide")
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    until_kept(page, "refused")
    page.reload()
    # Before anything is computed: the last good result, the entry as it was typed, and what is wrong with it.
    expect(answer(page)).to_contain_text("Fit 4.4 N/mm")
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    expect(field(page, "front.target_sag")).to_have_value("wide")
    expect(field(page, "rider.front_axle")).to_have_value("92")
    settle(page)
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    expect(answer(page)).to_contain_text("Fit 4.4 N/mm")


def start_own(page: Page, use: str, rider: str) -> None:
    page.get_by_role("button", name="Start your own").click()
    sheet = page.locator("#sheet")
    sheet.get_by_label("Riding").select_option(use)
    sheet.get_by_label("Rider, kitted").fill(rider)
    sheet.get_by_role("button", name="Work it out").click()


def test_start_your_own_answers_at_once_and_says_what_it_rests_on(opened):
    page = opened()
    start_own(page, "adventure", "95")
    expect(page.locator("#sheet form")).to_have_count(0)
    expect(answer(page)).to_contain_text("N/mm")
    expect(page.locator("#bike")).to_contain_text("Rests on assumed values")
    expect(page.locator("#bike")).to_contain_text("Measure first")
    expect(page.locator(".job-kind", has_text="demo, invented")).to_have_count(0)
    expect(field(page, "rider.mass")).to_have_value("95")
    expect(field(page, "front.travel")).to_have_value("")
    # The first thing to measure is one tap away, and its field takes the hand.
    page.locator(".measure-first a").first.click()
    expect(page.locator(".row :focus")).to_have_count(1)
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("95")
    page.get_by_role("button", name="Job ›").click()
    page.get_by_role("button", name="Demo: Brackwater 300 E").click()
    expect(field(page, "rider.mass")).to_have_value("104")
    page.get_by_role("button", name="Job ›").click()
    page.get_by_role("button", name="Back to your job").click()
    expect(field(page, "rider.mass")).to_have_value("95")


def test_start_your_own_refuses_in_place(opened):
    page = opened()
    start_own(page, "enduro", "9999")
    expect(page.locator("#start-wrong")).to_contain_text("above the limit of 200 kg")
    expect(page.locator(".job-kind", has_text="demo, invented")).to_be_visible()


def test_try_beside_the_answer_and_back(opened):
    page = opened()
    steps = page.get_by_role("group", name="Try, front")
    steps.get_by_role("button", name="Springs: 0.2 N/mm more").click()
    steps.get_by_role("button", name="Gap: 5 mm less").dblclick()
    expect(steps.locator("output").first).to_have_text(re.compile(r"4\.8\s+N/mm"))
    expect(steps.locator("output").last).to_have_text(re.compile(r"110\s+mm"))
    tried = page.locator("[data-tried=front]")
    expect(tried).to_contain_text("4.8")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    tried.get_by_role("button", name="Back to the answer").click()
    expect(tried).to_have_count(0)
    expect(steps.locator("output").first).to_have_text(re.compile(r"4\.6\s+N/mm"))


def test_origin_plus_minus_and_note_are_kept(opened):
    page = opened()
    one = row(page, "rider.mass")
    one.locator(".spread").click()
    one.get_by_label("stated").check()
    one.get_by_label("Give or take, 95 %").fill("2,5")
    one.get_by_label("Note").fill("bathroom scale")
    expect(one.locator(".spread")).to_have_text("±2.5")
    expect(one.locator(".value")).to_have_class(re.compile("stated"))
    one.get_by_label("Give or take, 95 %").fill("-3")
    expect(one.locator(".problem")).to_contain_text("+/- must lie between")
    one.get_by_label("Give or take, 95 %").fill("2,5")
    with page.expect_download() as coming:
        page.get_by_role("button", name="Job ›").click()
        page.get_by_role("button", name="Save the job file").click()
    saved = json.loads(coming.value.path().read_text())
    assert saved["rider"]["mass"] == {
        "value": "104 kg", "plus_minus_95": "2,5", "origin": "stated", "note": "bathroom scale"}
    assert coming.value.suggested_filename == "brackwater-300-e-2026-05-12.json"


def test_a_job_file_opens_or_is_refused_whole(opened, tmp_path):
    page = opened()
    page.get_by_role("button", name="Job ›").click()
    chooser = page.locator("input[type=file]")
    for content, said in (("{", "not JSON"), ('{"format": "x"}', "format must be"), ("[]", "JSON object")):
        (tmp_path / "job.json").write_text(content)
        chooser.set_input_files(tmp_path / "job.json")
        expect(page.locator("#sheet [role=alert]")).to_contain_text(said)
        expect(field(page, "rider.mass")).to_have_value("104")
    job = {"format": "stanchion-job", "version": 1, "name": "Opened", "bike": {"use": "enduro"}, "rider": {"mass": 80}}
    (tmp_path / "job.json").write_text(json.dumps(job))
    chooser.set_input_files(tmp_path / "job.json")
    expect(page.locator(".job-name")).to_have_text("Opened")
    expect(field(page, "rider.mass")).to_have_value("80")


def test_name_and_date_can_be_changed(opened):
    page = opened()
    page.get_by_role("button", name="Job ›").click()
    page.get_by_label("Name").fill("Quarry bike")
    page.get_by_label("Date").fill("2026-06-01")
    expect(page.locator(".job-name")).to_have_text("Quarry bike")
    page.reload()
    expect(page.locator(".job-name")).to_have_text("Quarry bike")


def test_by_keyboard_alone(opened):
    page = opened(DESK)
    page.keyboard.press("Tab")
    expect(page.locator(".skip")).to_be_focused()
    reach(page, "button", "Start your own")
    page.keyboard.press("Enter")
    expect(page.locator("#start-name")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.type("Enduro")
    page.keyboard.press("Tab")
    page.keyboard.type("88")
    page.keyboard.press("Enter")
    expect(page.locator("#sheet form")).to_have_count(0)
    reach(page, "input", "rider.mass")
    expect(page.locator(":focus")).to_have_value("88")
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_attribute("aria-label", re.compile("^Unit: kg"))
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(row(page, "rider.mass").locator(".panel")).to_be_visible()
    visible = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert visible == "solid", "the focus can be seen"


def reach(page: Page, tag: str, what: str, most: int = 60) -> None:
    """Tab until the focus is on an element with this name or these words."""
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate("([tag, what]) => { const e = document.activeElement;"
                         " return e.localName === tag && (e.name === what || e.textContent.includes(what)) }", [tag, what]):
            return
    raise AssertionError(f"{what} is not reached by the keyboard")


def folded_open(page: Page) -> None:
    """Everything that can be unfolded, unfolded, so that it is looked at too."""
    for summary in page.locator("main summary").all():
        if summary.is_visible():
            summary.click()
    row(page, "rider.mass").locator(".spread").click()
    field(page, "place.ridden_altitude").fill("1,250")
    expect(page.locator(".readings button")).to_have_count(2)


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("light", ["light", "dark", "sun", "more", "forced"])
def test_axe_finds_nothing(opened, size, light):
    how = {"more": {"contrast": "more"}, "forced": {"forced_colors": "active"}}.get(light, {"color_scheme": "dark" if light == "dark" else "light"})
    page = opened(size, reduced_motion="reduce", **how)
    if light == "sun":
        page.get_by_role("button", name="Job ›").click()
        page.get_by_label("Sun").check()
    found = violations(page)
    folded_open(page)
    page.get_by_role("button", name="Start your own").first.click()
    found += violations(page)
    assert found == [], json.dumps(found, indent=1)[:4000]


def violations(page: Page) -> list[dict]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    result = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    assert result["passes"], "axe looked at nothing"
    return [{"id": v["id"], "nodes": [n["html"][:160] + " | " + (n.get("failureSummary") or "")[:300] for n in v["nodes"][:4]]}
            for v in result["violations"]]


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_everything_is_in_reach(opened, size):
    """Nothing is cut off sideways, text is at least 16 px, targets at least 48 px (24 px inside a line of words)."""
    page = opened(size)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "the page does not scroll sideways"
    small = page.evaluate("""() => [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() &&
        [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()) && parseFloat(getComputedStyle(e).fontSize) < 15.99)
        .map((e) => e.outerHTML.slice(0, 120))""")
    assert small == []
    low = page.evaluate("""() => [...document.querySelectorAll('button, summary, label.button, nav a')].filter((e) =>
        e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 120))""")
    assert low == []


def test_strip_stays_in_view(opened):
    page = opened(reduced_motion="reduce")
    for place in (0, 1200, 3000):
        page.evaluate(f"scrollTo(0, {place})")
        box = page.locator("[data-strip]").bounding_box()
        assert box["y"] + box["height"] == pytest.approx(PHONE["height"], abs=1)
    field(page, "rear.travel").focus()
    inside = field(page, "rear.travel").bounding_box()
    assert inside["y"] + inside["height"] < page.locator("[data-strip]").bounding_box()["y"], "the strip hides no field in use"


def test_look_is_chosen_and_kept(opened):
    page = opened()
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    light = page.evaluate(ground)
    page.get_by_role("button", name="Job ›").click()
    page.get_by_label("Dark").check()
    assert page.evaluate(ground) != light
    page.reload()
    expect(answer(page)).to_be_visible()
    assert page.evaluate("document.documentElement.dataset.theme") == "dark"


def test_slow_core_shows_the_last_value_and_takes_edits(opened):
    """While the core is still coming the saved answer stands, and what is typed then is worked out once it is there."""
    page = opened(computed=False)
    field(page, "rider.front_axle").fill("92")
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    settle(page)
    expect(answer(page)).to_contain_text("Fit 4.4 N/mm")


def test_an_answer_kept_by_another_version_does_not_stop_the_page(opened):
    page = opened()
    field(page, "rider.mass").fill("90")
    page.evaluate("""() => new Promise((done) => {
        const opening = indexedDB.open('stanchion')
        opening.onsuccess = () => {
            const jobs = opening.result.transaction('jobs', 'readwrite').objectStore('jobs')
            jobs.get('demo').onsuccess = ({ target }) => {
                const kept = target.result
                kept.report = { fields: {}, ends: {} }
                kept.good = { front: { state: 'ok' }, rear: { state: 'ok' } }
                jobs.put(kept, 'demo').onsuccess = done
            }
        }
    })""")
    page.reload()
    settle(page)
    expect(field(page, "rider.mass")).to_have_value("90")
    expect(answer(page)).to_contain_text("N/mm")


def test_failed_start_leaves_the_saved_answer_readable(opened, browser, serve, copy_of_site):
    folder = copy_of_site("site")
    (folder / "runtime" / "pyodide.asm.wasm").unlink()
    site = serve(folder)
    context = browser.new_context(viewport=PHONE, service_workers="block")
    page = context.new_page()
    page.goto(site.url)
    wait_for_core(page, "failed")
    expect(page.locator("[data-reason=missing-file]")).to_be_visible()
    expect(answer(page)).to_contain_text("Fit 4.6 N/mm")
    expect(answer(page)).to_have_attribute("data-stale", "saved")
    field(page, "rider.mass").fill("90")
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("90")
    context.close()
