"""The work at the bench on the page: filling by touch, checks that stay ticked, what is due, the message, the code on paper."""

import re

import pytest
from playwright.sync_api import expect

from calc.job.work import CHECKS, FIRST_RIDE, REASSEMBLY
from tests.browser.helpers import DESK, PATIENCE, PHONE, at, bring, field, wait_for_core
from tests.browser.test_offline import expect_offline, open_page
from tests.browser.test_results import pages

TOUCH = {"has_touch": True, "is_mobile": True}
LEAST = 48  # px, a target for a thumb in a glove
SQUARE = 0.35  # mm: what a phone reads off a sheet


def fold(page, name, place="card"):
    at(page, place)
    one = page.locator(f"#fold-{place}-{name}")
    if "open" not in one.get_attribute("class").split():
        one.locator("h2 > button").click()
    return one


def tick(page, key):
    return page.locator(f"[name='tick {key}']")


def until_written(page):
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")


def test_checks_are_ticked_by_touch_and_stay_ticked(opened):
    page = opened(PHONE, **TOUCH)
    checks = fold(page, "checks")
    expect(checks.locator("h2")).to_contain_text(f"0 of {len(REASSEMBLY)}")
    for label in checks.locator(".ticks label").all():
        assert label.bounding_box()["height"] >= LEAST
    for key in ("caps", "gap"):
        checks.locator("label", has=tick(page, key)).tap()
    expect(checks.locator("h2")).to_contain_text(f"2 of {len(REASSEMBLY)}")
    fold(page, "ride").locator("label", has=tick(page, "easy")).tap()
    expect(page.locator("#fold-card-ride h2")).to_contain_text(f"1 of {len(FIRST_RIDE)}")
    until_written(page)
    page.reload()
    fold(page, "checks")
    for key in CHECKS:
        expect(tick(page, key)).to_be_checked(checked=key in ("caps", "gap", "easy"))
    page.get_by_role("button", name="Undo").click()
    expect(tick(page, "easy")).not_to_be_checked()
    expect(tick(page, "caps")).to_be_checked()


def test_a_check_is_ticked_by_key_and_taken_back(opened):
    page = opened(DESK)
    fold(page, "checks")
    tick(page, "caps").focus()
    page.keyboard.press("Space")
    expect(tick(page, "caps")).to_be_checked()
    page.keyboard.press("Tab")
    expect(tick(page, "clamps")).to_be_focused()
    tick(page, "caps").focus()
    page.keyboard.press("Space")
    expect(tick(page, "caps")).not_to_be_checked()
    expect(page.get_by_label("Caps to the maker's torque")).to_have_count(1)


def test_ticks_go_with_the_link(opened):
    page = opened()
    field(page, "rider.mass").fill("97")  # by which the answer tells that the link's job is open
    fold(page, "checks")
    tick(page, "bled").check()
    page.get_by_role("button", name="Share", exact=True).click()
    page.get_by_role("button", name="Make a link").click()
    link = page.locator("[data-shared] input").input_value()
    other = opened(computed=False)
    other.goto(link)
    expect(other.locator("[data-answer=front]")).to_contain_text("Keep 4.2 N/mm", timeout=PATIENCE)
    fold(other, "checks")
    expect(tick(other, "bled")).to_be_checked()
    expect(tick(other, "caps")).not_to_be_checked()


def test_ticks_are_there_with_the_server_gone(serve, dist, profile):
    site = serve(dist)
    with profile() as context:
        page = open_page(context, site.url)
        wait_for_core(page)
        expect_offline(page, "ready")
        fold(page, "checks")
        tick(page, "caps").check()
        until_written(page)
    site.__exit__()
    with profile() as context:
        page = open_page(context, site.url)
        wait_for_core(page)
        fold(page, "checks")
        expect(tick(page, "caps")).to_be_checked()
        tick(page, "gap").check()
        expect(page.locator("#fold-card-checks h2")).to_contain_text(f"2 of {len(REASSEMBLY)}")


def test_the_gap_is_filled_at_the_card_and_at_what_is_built(opened):
    page = opened(PHONE, **TOUCH)
    told = fold(page, "checks").locator("[data-filling]")
    expect(told).to_contain_text("Left: 123 read, 120 wanted: add 5 ml")
    expect(told).to_contain_text("The legs differ by 4 mm: match them to 1 mm.")
    page.locator("[name='front.filling_gap_left']").fill("118")
    expect(told).to_contain_text("Left: 118 read, 120 wanted: take out 3 ml", timeout=PATIENCE)
    expect(told).to_contain_text("The legs match to 1 mm.")
    at(page, "front").get_by_role("button", name="Build this").first.tap()
    page.locator("[name='front.built_gap_left']").fill("116")
    expect(page.locator(".filling [data-filling=built]")).to_contain_text("Left: 118 read, 116 wanted: add 3 ml", timeout=PATIENCE)
    page.locator("[name='front.filling_gap_left']").fill("700")
    expect(page.locator("[data-filling]")).to_contain_text("Gap read now, left", timeout=PATIENCE)
    expect(page.locator("[data-built=yes]")).to_be_visible()


def test_a_link_to_the_gap_opens_its_fold_at_the_answer(opened):
    page = opened()
    bring(page, "front.filling_gap_left")
    expect(page.locator("#fold-front-oil [data-filling=answer]")).to_contain_text("add 5 ml")
    assert page.locator("[name='front.filling_gap_left']").count() == 1


def test_what_is_due_and_serviced_now(opened):
    page = opened()
    told = fold(page, "service").locator("[data-service]")
    expect(told).to_contain_text("Shock: next service due at 50 h, in 8 h.")
    field(page, "service.now_hours").fill("61")
    expect(told).to_contain_text("Shock: service was due at 50 h and is 11 h overdue.", timeout=PATIENCE)
    page.get_by_role("button", name="Shock serviced now").click()
    expect(told).to_contain_text("Shock: next service due at 111 h, in 50 h.", timeout=PATIENCE)
    expect(page.locator(".card")).to_contain_text("Shock: next service due at 111 h")
    page.locator("[name='service.counted']").select_option("km")
    expect(page.locator("[name='service.now_hours']")).to_have_count(0)
    expect(page.locator("[name='service.now_km']")).to_be_visible()


def test_the_message_is_copied_whole_and_tells_a_plan_from_what_was_built(opened):
    page = opened(permissions=["clipboard-read", "clipboard-write"])
    message = fold(page, "message")
    expect(message).to_contain_text("This is the plan. Nothing is done yet.")
    page.get_by_role("button", name="Copy the message").click()
    expect(message.get_by_role("status")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied.split("\n\n") == message.locator(".message p").all_inner_texts()
    for end in ("front", "rear"):
        at(page, end)
        page.get_by_role("button", name="Answer", exact=True).click()
        page.get_by_role("button", name="Build this").first.click()
    expect(fold(page, "message")).to_contain_text("Your bike is done. The fork springs are stiffer", timeout=PATIENCE)


@pytest.mark.parametrize("light", ["light", "dark"])
def test_the_code_on_paper_has_squares_that_a_phone_reads(opened, light):
    """Sizes of ISO/IEC 18004: 17 squares and four for each version, and a rim of four; black on white whatever the light."""
    page = at(opened(DESK, color_scheme=light), "card")
    code = page.locator(".card-qr svg")
    page.emulate_media(media="print", color_scheme=light)
    squares = int(code.get_attribute("viewBox").split()[2])
    assert (squares - 8 - 17) % 4 == 0
    millimetres = code.bounding_box()["width"] / 96 * 25.4
    assert millimetres / squares >= SQUARE
    assert millimetres < 70
    assert code.locator("rect").evaluate("(e) => getComputedStyle(e).fill") == "rgb(255, 255, 255)"
    assert code.locator("path").evaluate("(e) => getComputedStyle(e).fill") == "rgb(0, 0, 0)"


def test_a_job_that_says_too_much_says_so_on_paper(opened):
    page = opened()
    note = " ".join(f"{n * 7919 % 10007}{n * 104729 % 99991:x}" for n in range(220))
    page.evaluate(
        """(note) => {
          const input = document.querySelector('.named input')
          input.removeAttribute('maxLength')
          input.value = note.slice(0, 1990)
          input.dispatchEvent(new Event('input', { bubbles: true }))
        }""",
        note,
    ) if at(page, "card") else None
    expect(page.locator(".card")).to_contain_text("too much for a QR code that scans off paper")
    expect(page.locator(".card-qr")).to_have_count(0)


@pytest.mark.parametrize("name", ["Brackwater", "Saltmarsh", "Fellgate"])
def test_every_demo_done_and_ticked_prints_on_one_page(opened, name):
    page = opened(DESK)
    if name != "Brackwater":
        at(page, "door").locator("button, a").filter(has_text=name).first.click()
        expect(page.locator(".job-name")).to_contain_text(name)
        expect(page.locator("[data-stale=saved]")).to_have_count(0, timeout=PATIENCE)
    meter = "km" if name == "Fellgate" else "hours"
    fold(page, "service")
    for key, value in (("now", "900"), ("fork_last", "100"), ("shock_last", "100")):
        page.locator(f"[name='service.{key}_{meter}']").fill(value)
    for part in ("checks", "ride"):
        for box in fold(page, part).locator("input[type=checkbox]").all():
            box.check()
    assert page.locator(".card li.made").count() == len(CHECKS)
    expect(page.locator(".card")).to_contain_text(re.compile(r"Shock: (next service|service was) due"), timeout=PATIENCE)
    expect(page.locator(".card-qr")).to_have_count(1)
    assert [pages(page.pdf(format=paper)) for paper in ("A4", "Letter")] == [1, 1]
