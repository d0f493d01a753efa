"""The core's own speed: the same jobs sized in the shipped core in a browser and in CPython, each time with other sags wanted."""

from __future__ import annotations

import json
import shutil
import statistics
from pathlib import Path

from playwright.sync_api import Playwright

from . import visits
from .places import BUILD, DIST, GENERATED, INSIDE, ROOT, VENV_PYTHON, run

TIMES = 12
WARMING = "warming up"  # a browser compiles the code that runs most while it runs; in no table
DRAWS = (50, 100, 400, 800)  # beside the 200 that the page asks for
# The demo's fork with more in it; what the bench does not say is assumed, as for any job.
RICHER = {
    "a second spring nested in the fork's": {"spring_kind": "nested", "second_rate": "1 N/mm", "second_later": "100 mm"},
    "a sealed cartridge beside the leg's space": {"air": "sealed cartridge"},
    "three spaces: an air leg with balance chamber and second volume": {
        "air": "air leg",
        "balance": "yes",
        "second": "yes",
        "gap_min": "60 mm",
    },
}


def series(demo: str, fork: dict[str, str] | None = None, **asked: object) -> list[str]:
    """Requests that differ in both ends' sag, so that none is answered from what the core remembers."""
    kept = json.loads((GENERATED / "demos" / f"{demo}.json").read_text())
    requests = []
    for number in range(TIMES):
        job = json.loads(json.dumps(kept["job"]))
        job["front"] |= fork or {}
        for end in ("front", "rear"):
            state = kept["report"]["fields"][f"{end}.target_sag"]
            job[end]["target_sag"] = {"value": f"{state['value'] - 0.01 * number} {state['unit']}", "origin": "stated"}
        requests.append(json.dumps({"kind": "size", "job": job} | asked))
    return requests


def cases() -> dict[str, list[str]]:
    """What is asked, by what it is called: figures, then bands, which grow with draws, chambers and springs."""
    demos = {entry["key"]: entry["name"] for entry in json.loads((GENERATED / "demos.json").read_text())}
    found = {WARMING: series("trail"), "figures": series("enduro", bands=False), "bands": series("enduro")}
    found |= {f"bands, {draws} draws": series("enduro", draws=draws) for draws in DRAWS}
    found |= {f"bands, {name}": series("enduro", fork) for name, fork in RICHER.items()}
    found |= {f"bands, demo {name}": series(key) for key, name in demos.items() if key != "enduro"}
    return found


def in_browser(playwright: Playwright, path: Path, url: str) -> dict[str, float]:
    """Medians [ms] by case, without a page's own work."""
    script = next((DIST / "assets").glob("worker-*.js")).relative_to(DIST).as_posix()
    asked = cases()
    with visits.browser(playwright, path, BUILD / "profile", slowed=False) as context:
        page = visits.open_page(context, url)
        visits.let_it_settle(page)  # the page's own core and its offline copy take the processor too
        spent = visits.in_page(page, "time_core.mjs", script, [text for texts in asked.values() for text in texts])
    shutil.rmtree(BUILD / "profile", ignore_errors=True)
    return medians(asked, spent)


def on_desk() -> dict[str, float]:
    asked = cases()
    listing = BUILD / "requests.json"
    listing.write_text(json.dumps([text for texts in asked.values() for text in texts]))
    told = run([VENV_PYTHON, INSIDE / "time_desk.py", listing], env={"PYTHONPATH": str(ROOT)}, quiet=True)
    return medians(asked, json.loads(told))


def medians(asked: dict[str, list[str]], spent: list[float]) -> dict[str, float]:
    """By case but the first; the first answer of each loads what it needs and is left out."""
    found = {}
    for name, texts in asked.items():
        mine, spent = spent[: len(texts)], spent[len(texts) :]
        found[name] = round(statistics.median(mine[1:]), 1)
    return {name: spent for name, spent in found.items() if name != WARMING}
