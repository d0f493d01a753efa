"""Jobs on the device: kept at every edit, started from two answers, filed, opened, and readable when the start fails."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.helpers import PATIENCE, PHONE, answer, at, field, row, settle, start_own, until_kept, wait_for_core

FIXTURES = Path(__file__).parents[1] / "fixtures"


def test_reload_keeps_the_job_and_its_answer(opened):
    page = opened()
    field(page, "rider.front_axle").fill("84")
    expect(answer(page)).to_contain_text("Keep 4.2 N/mm")
    field(page, "front.target_sag").fill("wide")
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    until_kept(page, "refused")
    page.reload()
    # Before anything is computed: the last good result, the entry as it was typed, and what is wrong with it.
    expect(answer(page)).to_contain_text("Keep 4.2 N/mm")
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    expect(field(page, "front.target_sag")).to_have_value("wide")
    expect(field(page, "rider.front_axle")).to_have_value("84")
    settle(page)
    expect(answer(page)).to_have_attribute("data-stale", "last good")
    expect(answer(page)).to_contain_text("Keep 4.2 N/mm")


def test_an_answer_kept_by_another_version_does_not_stop_the_page(opened):
    page = opened()
    field(page, "rider.mass").fill("90")
    page.evaluate("""() => new Promise((done) => {
        const opening = indexedDB.open('stanchion')
        opening.onsuccess = () => {
            const answers = opening.result.transaction('answers', 'readwrite').objectStore('answers')
            const good = { front: { state: 'ok' }, rear: { state: 'ok' } }
            answers.put({ id: 'demo:enduro', report: { fields: {}, ends: good }, good }).onsuccess = done
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


def jobs_list(page: Page) -> Locator:
    """The list of jobs, at the door."""
    return at(page, "door")


def test_start_your_own_answers_at_once_and_says_what_it_rests_on(opened):
    page = opened()
    start_own(page, "adventure", "95")
    expect(page.locator(".place-bike")).to_be_visible()
    expect(page.locator(".place-bike")).to_contain_text("Mostly assumed values")
    expect(page.locator(".job-kind")).to_have_count(0)
    # The first thing to measure is one tap away, and its field takes the hand.
    page.locator("[data-next] a").click()
    expect(page.locator(".row :focus")).to_have_count(1)
    expect(answer(page)).to_contain_text("N/mm")
    expect(field(page, "rider.mass")).to_have_value("95")
    expect(field(page, "front.travel")).to_have_value("")
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("95")
    jobs_list(page).get_by_role("button", name="Demo: Brackwater 300 E").click()
    expect(page.locator(".job-name")).to_have_text("Brackwater 300 E, demo")
    expect(field(page, "rider.mass")).to_have_value("104")
    jobs_list(page).locator("[data-job] .job-open").first.click()
    expect(page.locator(".job-name")).to_have_text("Bike without a name")
    expect(field(page, "rider.mass")).to_have_value("95")


def test_start_your_own_refuses_in_place(opened):
    page = opened()
    start_own(page, "enduro", "9999")
    expect(page.locator("#start-wrong")).to_contain_text("above the limit of 200 kg")
    expect(at(page, "door").locator("[data-job]")).to_have_count(0)


def test_origin_plus_minus_and_note_are_kept(opened):
    page = opened()
    one = row(page, "rider.mass")
    one.locator(".spread").click()
    one.get_by_role("button", name="Stated").click()
    one.get_by_label("+/- (95 %)").fill("2,5")
    one.get_by_label("Note").fill("bathroom scale")
    expect(one.locator(".spread")).to_have_text("±2.5")
    expect(one.locator(".value")).to_have_class(re.compile("stated"))
    one.get_by_label("+/- (95 %)").fill("-3")
    expect(one.locator(".problem")).to_contain_text("+/- must lie between")
    one.get_by_label("+/- (95 %)").fill("2,5")
    at(page, "card").get_by_role("button", name="Share", exact=True).click()
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save the job file").click()
    saved = json.loads(coming.value.path().read_text())
    assert saved["rider"]["mass"] == {"value": "104 kg", "plus_minus_95": "2,5", "origin": "stated", "note": "bathroom scale"}
    assert coming.value.suggested_filename == "brackwater-300-e-2026-05-12.json"


def test_a_job_file_opens_or_is_refused_whole(opened, tmp_path):
    """Length before reading; what is refused says why, as on the command line, and what is opened replaces nothing."""
    page = opened()
    chooser = jobs_list(page).locator("input[type=file]")
    said = page.locator(".place-door > [role=alert]")
    for content, words in (
        (b"{", "not JSON"),
        (b'{"format": "x"}', "format must be"),
        (b"[]", "JSON object"),
        (b'"\xff"', "not UTF-8"),
        (b"[" * 50_000_000, "longer than"),
        (b"[" * 3_000_000, "nested deeper"),
        (b'{"format": "stanchion-job", "version": 2, "name": "a", "name": "b"}', "'name' stands twice"),
    ):
        (tmp_path / "job.json").write_bytes(content)
        chooser.set_input_files(tmp_path / "job.json")
        expect(said).to_contain_text(words)
    expect(field(page, "rider.mass")).to_have_value("104")
    chooser = jobs_list(page).locator("input[type=file]")
    job = {"format": "stanchion-job", "version": 1, "name": "Opened", "bike": {"use": "enduro"}, "rider": {"mass": 80}}
    (tmp_path / "job.json").write_bytes(b"\xef\xbb\xbf" + json.dumps(job).encode())
    chooser.set_input_files(tmp_path / "job.json")
    expect(page.locator(".job-name")).to_have_text("Opened")
    expect(field(page, "rider.mass")).to_have_value("80")


@pytest.mark.parametrize("number", ["1e999", "9" * 6000])
def test_a_number_too_large_stands_refused_and_not_empty(opened, tmp_path, number):
    page = opened()
    (tmp_path / "job.json").write_text(
        '{"format": "stanchion-job", "version": 2, "bike": {"use": "enduro"}, "rider": {"mass": %s}}' % number
    )
    jobs_list(page).locator("input[type=file]").set_input_files(tmp_path / "job.json")
    expect(page.locator(".job-name")).to_have_text("Bike without a name")
    expect(field(page, "rider.mass")).to_have_value(number)
    expect(row(page, "rider.mass").locator(".problem")).not_to_be_empty()


def test_a_file_of_version_1_opens(opened):
    page = opened()
    jobs_list(page).locator("input[type=file]").set_input_files(FIXTURES / "job-version-1.json")
    expect(page.locator(".place-front")).to_be_visible()
    expect(jobs_list(page).locator("[data-job]")).to_have_count(1)
    expect(field(page, "rider.mass")).to_have_value("104")


def open_file(page: Page, tmp_path: Path, **said) -> None:
    job = {"format": "stanchion-job", "version": 2, "bike": {"use": "enduro"}, "rider": {"mass": "80 kg"}} | said
    path = tmp_path / "one.json"
    path.write_text(json.dumps(job))
    jobs_list(page).locator("input[type=file]").set_input_files(path)
    expect(page.locator(".job-name")).to_have_text(said["name"])


def test_jobs_are_listed_found_copied_compared_renamed_deleted_and_brought_back(opened, tmp_path):
    page = opened()
    for name, owner in (
        ("Alder", "P. Q."),
        ("Birch", "R. S."),
        ("Cedar", "P. Q."),
        ("Dogwood", ""),
        ("Elm", ""),
        ("Fir", ""),
        ("Gorse", ""),
    ):
        open_file(page, tmp_path, name=name, owner=owner, date="2026-05-12")
    listed = jobs_list(page).locator("[data-job]")
    expect(listed).to_have_count(7)
    page.get_by_label("Search").fill("p. q.")
    expect(listed).to_have_count(2)
    listed.filter(has_text="Alder").locator(".job-open").click()
    expect(page.locator(".job-name")).to_have_text("Alder")
    # The next visit is a job of its own.
    one = jobs_list(page).locator("[data-job]").filter(has_text="Alder")
    one.get_by_label("More for").click()
    one.get_by_role("button", name="Copy as next visit").click()
    page.locator(".place-front").wait_for()
    field(page, "rider.mass").fill("88")
    visits = jobs_list(page).locator("[data-job]").filter(has_text="Alder")
    expect(visits).to_have_count(2)
    visits.first.get_by_label("More for").click()
    visits.first.get_by_role("button", name="Compare with another").click()
    visits.first.get_by_label("Compare with").select_option(index=1)
    expect(visits.first.get_by_role("row", name=re.compile("^Rider in full kit"))).to_contain_text("80 kg")
    expect(visits.first.get_by_role("row", name=re.compile("^Rider in full kit"))).to_contain_text("88 kg")
    visits.first.get_by_role("button", name="Rename").click()
    visits.first.get_by_label("Bike").fill("Alder two")
    visits.first.get_by_role("button", name="Keep").click()
    expect(page.locator("[data-job]").filter(has_text="Alder two")).to_have_count(1)
    second = page.locator("[data-job]").filter(has_text="Alder two")
    second.get_by_role("button", name="Delete").click()
    expect(page.locator("[data-job]").filter(has_text="Alder two")).to_have_count(0)
    page.reload()
    jobs_list(page).get_by_role("button", name="Bring it back").click()
    page.locator("[data-job]").filter(has_text="Alder two").locator(".job-open").click()
    expect(field(page, "rider.mass")).to_have_value("88")


def test_all_jobs_go_out_in_one_file_and_come_in_again_elsewhere(opened, tmp_path):
    page = opened()
    for name in ("Alder", "Birch"):
        open_file(page, tmp_path, name=name)
    jobs_list(page)
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save all jobs as one file").click()
    saved = json.loads(coming.value.path().read_text())
    assert (saved["format"], sorted(job["name"] for job in saved["jobs"])) == ("stanchion-jobs", ["Alder", "Birch"])
    other = opened()
    for _ in range(2):  # the second time all are here already
        jobs_list(other).locator("input[type=file]").set_input_files(coming.value.path())
        expect(other.locator(".place-front")).to_be_visible()
        expect(jobs_list(other).locator("[data-job]")).to_have_count(2)


def test_a_job_goes_into_a_link_and_comes_out_of_it(opened, serve, dist):
    page = opened()
    field(page, "rider.mass").fill("97")
    at(page, "card").get_by_role("button", name="Share", exact=True).click()
    page.get_by_role("button", name="Make a link").click()
    link = page.locator("[data-shared] input").input_value()
    assert "#job=1." in link
    expect(page.get_by_role("img", name="QR code of the link")).to_be_visible()
    other = opened(computed=False)
    other.goto(link)
    expect(other.locator("[data-answer=front]")).to_contain_text("Keep 4.2 N/mm", timeout=PATIENCE)
    expect(field(other, "rider.mass")).to_have_value("97", timeout=PATIENCE)
    assert "#job" not in other.url
    other.goto(f"{link.split('#')[0]}#job=1.AAAA")
    expect(other.locator(".news [role=alert]").first).to_contain_text("damaged")
    expect(field(other, "rider.mass")).to_have_value("97")


def test_undo_and_redo_outlive_a_reload(opened):
    page = opened()
    for mass in range(60, 112):
        field(page, "rider.mass" if mass % 2 else "rider.front_axle").fill(str(mass))
    page.wait_for_function("() => !Object.keys(localStorage).some((key) => key.startsWith('stanchion-words:'))")
    page.reload()
    expect(field(page, "rider.mass")).to_have_value("111")
    for mass in range(111, 60, -1):
        page.get_by_role("button", name="Undo").click()
        path = "rider.mass" if mass % 2 else "rider.front_axle"
        expect(field(page, path)).to_have_value(str(mass - 2) if mass > 61 else "104")
    page.reload()
    for mass in range(61, 112):
        page.get_by_role("button", name="Redo").click()
        expect(field(page, "rider.mass" if mass % 2 else "rider.front_axle")).to_have_value(str(mass))
    expect(page.get_by_role("button", name="Redo")).to_have_count(0)


def test_name_and_date_can_be_changed(opened):
    page = opened()
    at(page, "card")
    page.get_by_label("Name").fill("Quarry bike")
    page.get_by_label("Date").fill("2026-06-01")
    expect(page.locator(".job-name")).to_have_text("Quarry bike, demo")
    page.reload()
    expect(page.locator(".job-name")).to_have_text("Quarry bike, demo")
