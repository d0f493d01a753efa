"""Jobs on the device: kept at every edit, started from two answers, filed, opened, and readable when the start fails."""

from __future__ import annotations

import json
import re

from playwright.sync_api import Page, expect

from tests.browser.helpers import PHONE, answer, field, row, settle, until_kept, wait_for_core


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


def test_failed_start_leaves_the_saved_answer_readable(browser, serve, copy_of_site):
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
