"""The work done on a job: checks of reassembly and of the first ride, declared once, and the ticks that the file keeps.

In the job file: "work": {"ticks": {"caps": "2026-11-29"}, "note": "..."}, a date for each check that was made.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

WORK = "work"
KEYS = ("ticks", "note")

# Keys are kept in files: the words may change, the keys may not. Common practice, no source.
REASSEMBLY: Mapping[str, str] = {
    "locknuts": "Rod locknuts tight",
    "springs": "Springs seated",
    "gap": "Gap as above, both legs",
    "caps": "Caps to the maker's torque",
    "clamps": "Clamps to torque, in steps",
    "bled": "Bled on the stand",
    "pumped": "Fork pumped, pinch bolts last",
    "clickers": "Clickers and collar logged",
    "o-ring": "O-ring pushed down",
}
FIRST_RIDE: Mapping[str, str] = {
    "easy": "Ten easy minutes",
    "looked over": "Bleed the forks; check for leaks; check bolts",
    "o-ring read": "Read the o-ring",
    "sag again": "Sag again after 1-2 h",
    "one change": "One change at a time",
}
CHECKS: Mapping[str, str] = {**REASSEMBLY, **FIRST_RIDE}
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")


def work_problem(work: object) -> str:
    """What is wrong with a document's `work`, beside its note; empty where nothing is.

    Parameters: work, what stands under the key.
    Returns: a sentence naming the key and what it must be.
    Raises: nothing.
    Formula: none.
    Source: the job file's definition, above.
    Example:
        >>> work_problem({"ticks": {"cap": "2026-11-29"}})
        'work.ticks.cap is no check of a job. Did you mean work.ticks.caps?'
    """
    if not isinstance(work, Mapping):
        return f"{WORK} must be an object of {', '.join(KEYS)}."
    for key in work:
        if key not in KEYS:
            return _unknown(f"{WORK}.{key}", [f"{WORK}.{one}" for one in KEYS], "key")
    ticks = work.get("ticks", {})
    if not isinstance(ticks, Mapping):
        return f"{WORK}.ticks must be an object: a date for each check that was made."
    return next((wrong for key, on in ticks.items() if (wrong := _tick_problem(str(key), on))), "")


def _tick_problem(key: str, on: object) -> str:
    path = f"{WORK}.ticks.{key}"
    if key not in CHECKS:
        return _unknown(path, [f"{WORK}.ticks.{one}" for one in CHECKS], "check")
    return "" if isinstance(on, str) and _is_date(on) else f"{path} must be the date it was made, written 2026-11-29."


def _is_date(text: str) -> bool:
    try:
        return bool(_DATE.fullmatch(text) and date.fromisoformat(text))
    except ValueError:
        return False


def _unknown(path: str, known: list[str], what: str) -> str:
    near = difflib.get_close_matches(path, known, 1)
    return f"{path[:60]} is no {what} of a job." + (f" Did you mean {near[0]}?" if near else "")


def ticks(document: Mapping[str, Any]) -> dict[str, str]:
    """The checks that were made, and when.

    Parameters: document, a checked one.
    Returns: dates by check.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> ticks({"work": {"ticks": {"caps": "2026-11-29"}}})
        {'caps': '2026-11-29'}
    """
    return dict(document.get(WORK, {}).get("ticks", {}))


def ticked(document: dict[str, Any], keys: list[str], on: str) -> dict[str, Any]:
    """A copy of a document with further checks made.

    Parameters: document, a checked one; keys of the checks; on, the date, written 2026-11-29.
    Returns: the document with their ticks.
    Raises: ValueError naming the check or the date that cannot be.
    Formula: none.
    Source: none.
    Example:
        >>> ticked({"format": "stanchion-job"}, ["caps"], "2026-11-29")["work"]
        {'ticks': {'caps': '2026-11-29'}}
    """
    work = {**document.get(WORK, {}), "ticks": {**ticks(document), **dict.fromkeys(keys, on)}}
    wrong = work_problem(work)
    if wrong:
        raise ValueError(wrong)
    return {**document, WORK: work}
