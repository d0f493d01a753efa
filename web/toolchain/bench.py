"""`build.py bench`: sizes against budgets, start-up beside an untuned page, the core here and in the browser."""

from __future__ import annotations

import json
import platform
import re
import shutil
import statistics
import time
from pathlib import Path
from typing import Any

from playwright.sync_api import Error, Playwright, sync_playwright

from . import bench_core, budgets, sources, visits, wire
from .browser import chromium
from .fetch import numpy_wheel
from .places import BUILD, DIST, GENERATED, PYODIDE, ROOT, say, stop
from .policy import HEADERS
from .server import Handler, Site

STOCK = BUILD / "stock"
RESULT = BUILD / "bench.json"
VISITS = {1: 5, visits.SLOWED: 3}
STARTED = 0.45  # start-up of the page over that of the untuned one
SIZED = 4.0  # one sizing in the browser over the same in CPython
# An edit to its figures (median, 95th percentile) and to their +/- (median) over the untuned page's first visit, both held back:
# budgets of 50, 100 and 250 ms on a machine whose untuned page took 9.4 s so.
EDIT = {
    ("figures", "median"): 0.0053,
    ("figures", "p95"): 0.0106,
    ("bands", "median"): 0.0266,
    ("bands with sags", "median"): 0.0266,
}
# The load on the front axle decides the front's sags, which the result strip shows first. No value comes twice: the core
# remembers what it worked out.
EDITED, EDITS = "rider.front_axle", [f"{80 + 1.5 * step:.1f}" for step in range(20)]
# Both sags of both ends, each read twice, as the demo may have them; the load then moves by no more than they leave it.
SAGS = {
    "front.alone_sag": "34", "front.alone_again_sag": "28", "front.aboard_sag": "72", "front.aboard_again_sag": "65",
    "rear.alone_sag": "11", "rear.alone_again_sag": "7", "rear.aboard_sag": "99", "rear.aboard_again_sag": "92",
}  # fmt: skip
EDITS_WITH_SAGS = [f"{95.1 + 0.2 * step:.1f}" for step in range(10)]


class StockHandler(Handler):
    """The untuned page gets the caching that its usual host gives it."""

    headers_sent = HEADERS | {"Cache-Control": "public, max-age=31536000, immutable"}


def make_stock_page() -> None:
    """The untuned page's files, with the core as source, and the request that both pages answer first."""
    shutil.rmtree(STOCK, ignore_errors=True)
    shutil.copytree(Path(__file__).parent / "stock", STOCK)
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json"):
        shutil.copyfile(PYODIDE / name, STOCK / name)
    shutil.copy(numpy_wheel(), STOCK)
    core = BUILD / "stock-core"
    shutil.rmtree(core, ignore_errors=True)
    shutil.copytree(sources.PURE, core)
    shutil.copytree(ROOT / "calc", core / "calc", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.make_archive(str(STOCK / "core"), "zip", core)
    demo = json.loads((GENERATED / "demos" / "enduro.json").read_text())
    # What the page itself asks first.
    request = json.dumps({"kind": "figures", "job": demo["job"], "end": "front"})
    (STOCK / "request.json").write_text(request)
    wire.pack([path for path in STOCK.iterdir() if path.suffix not in (".zip", ".whl")])


def middle(rows: list[dict[str, float | None]]) -> dict[str, float | None]:
    """Per mark the median of the visits that had it."""
    found = {name: [value for row in rows if (value := row[name]) is not None] for name in visits.MARKS}
    return {name: round(statistics.median(values), 1) if values else None for name, values in found.items()}


def start_up(playwright: Playwright, path: Path, urls: dict[str, str], speed: int) -> dict[str, Any]:
    rows: dict[str, list[list[dict[str, float | None]]]] = {name: [] for name in urls}
    # In turn, so that a machine that gets slower meanwhile slows both.
    for _ in range(VISITS[speed]):
        for name, url in urls.items():
            rows[name].append(visits.first_and_second(playwright, path, url, slowed=speed > 1))
    return {
        name: {visit: middle([pair[number] for pair in pairs]) for number, visit in enumerate(("first", "second"))}
        for name, pairs in rows.items()
    }


def rest() -> int:
    """What the page waits [ms] after an edit's figures before it asks for their +/-."""
    found = re.search(r"REST = (\d+)", (ROOT / "web" / "store" / "work.ts").read_text())
    assert found
    return int(found[1])


def time_edits(playwright: Playwright, path: Path, url: str, slowed: bool) -> dict[str, dict[str, float]]:
    """Median and 95th percentile [ms] from an edit to its figures and to their +/- on the screen; the same where sags correct."""
    with visits.browser(playwright, path, BUILD / "profile", slowed) as context:
        page = visits.open_page(context, url)
        visits.let_it_settle(page)  # the start is judged by itself
        page.evaluate("location.hash = 'bike'")
        page.locator(f'input[name="{EDITED}"]').wait_for()
        spent = visits.in_page(page, "edits.mjs", EDITED, EDITS, rest())
        page.evaluate("location.hash = 'check'")
        for name, sag in SAGS.items():
            page.locator(f'input[name="{name}"]').fill(sag)
        page.evaluate("location.hash = 'bike'")
        page.locator(f'input[name="{EDITED}"]').wait_for()
        with_sags = visits.in_page(page, "edits.mjs", EDITED, EDITS_WITH_SAGS, rest())
        spent |= {f"{what} with sags": times for what, times in with_sags.items()}
    shutil.rmtree(BUILD / "profile", ignore_errors=True)
    return {
        what: {"median": round(statistics.median(times), 1), "p95": round(sorted(times)[int(0.95 * (len(times) - 1))], 1)}
        for what, times in spent.items()
    }


def measure() -> dict[str, Any]:
    path = chromium()
    make_stock_page()
    files = budgets.sizes()
    result: dict[str, Any] = {
        "at": time.strftime("%Y-%m-%dT%H:%M:%S%z"),
        "machine": platform.platform(),
        "files": files,
        "budgets": [budget._asdict() for budget in budgets.budgets(files)],
        "start": {},
        "edit": {},
    }
    reason = visits.cannot_slow()
    with Site(DIST) as ours, Site(STOCK, handler=StockHandler) as stock, sync_playwright() as playwright:
        urls = {"page": ours.url, "stock": stock.url}
        for speed in VISITS:
            if speed > 1 and reason:
                result["not_measured"] = f"{speed}x not measured: {reason}"
                continue
            say(f"visiting both pages at {speed}x, {VISITS[speed]} times each")
            result["start"][f"{speed}x"] = start_up(playwright, path, urls, speed)
            result["edit"][f"{speed}x"] = time_edits(playwright, path, ours.url, slowed=speed > 1)
        say("sizing the demo jobs in the browser and in CPython")
        result["core"] = {"browser": bench_core.in_browser(playwright, path, ours.url), "cpython": bench_core.on_desk()}
    return result


def ratios(result: dict[str, Any]) -> list[tuple[str, float, float]]:
    """(what, ratio, limit) of all that is judged by ratio."""
    browser, desk = (result["core"][where] for where in ("browser", "cpython"))
    rows = [(f"{name}, browser over CPython", round(browser[name] / desk[name], 3), SIZED) for name in ("figures", "bands")]
    for speed, pages in result["start"].items():
        for visit in ("first", "second"):
            ours, stock = (pages[name][visit]["first-computed"] for name in ("page", "stock"))
            rows.append(
                (f"{visit} visit to first computed answer at {speed}, over the untuned page", round(ours / stock, 3), STARTED)
            )
    held = f"{visits.SLOWED}x"
    if held in result["edit"]:
        whole = result["start"][held]["stock"]["first"]["first-computed"]
        rows += [
            (
                f"an edit to its {what}, {which}, at {held}, over the untuned page's first visit",
                round(result["edit"][held][what][which] / whole, 4),
                limit,
            )
            for (what, which), limit in EDIT.items()
        ]
    return rows


def run_bench() -> None:
    from .bench_report import tell

    try:
        result = measure()
    except Error as problem:
        stop(f"the browser could not be measured: {problem.message}")
    judged = ratios(result)
    result["ratios"] = [{"name": name, "ratio": ratio, "limit": limit} for name, ratio, limit in judged]
    RESULT.write_text(json.dumps(result, indent=1) + "\n")
    tell(result)
    print(f"\nwritten to {RESULT.relative_to(ROOT)}")
    missed = [name for name, ratio, limit in judged if not ratio <= limit]
    missed += [row["name"] for row in result["budgets"] if row["bytes"] > row["limit"]]
    if missed:
        stop("missed: " + "; ".join(missed))
