"""The one door of the core for the page: JSON text in, JSON text out. It answers always and never raises."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import lru_cache
from typing import Any

from calc.job import DRAWS, Job, JobError, load
from calc.job.starter import start
from calc.job.text import read_jobs, read_json
from calc.job.visit import next_visit
from calc.report import ENDS, report_of
from calc.report.compare import comparison
from calc.report.figures import figures_data

Data = dict[str, Any]


def answer(text: str) -> str:
    """Answer one request of the page.

    Parameters: text, JSON: {"kind": "size", "job": {...}, "bands": true, "ends": ["front", "rear"], "draws": 200} (the last
    three may be left out), {"kind": "figures", "job": {...}, "end": "front"}, which is answered sooner and shown first,
    {"kind": "start", "use": "enduro", "rider": "104 kg"}, {"kind": "open", "text": what a job file or a link holds},
    {"kind": "compare", "before": {...}, "after": {...}} or {"kind": "next visit", "job": {...}, "date": "2026-09-01"}.
    Returns: JSON: {"kind": "report", "report": ...}, {"kind": "figures", "figures": ... or null where none is chosen},
    {"kind": "job", "job": ...}, {"kind": "jobs", "jobs": [...], "refused": [sentences]}, {"kind": "comparison", "comparison": ...}
    or {"kind": "failure", "message": ...}.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> answer("{}")
        '{"kind":"failure","message":"A request names its kind, one that the core knows."}'
    """
    try:
        request = read_json(text)
        handler = _HANDLERS.get(str(request.get("kind"))) if isinstance(request, dict) else None
        if handler is None:
            raise JobError("A request names its kind, one that the core knows.")
        reply = handler(request)
        return json.dumps(reply, allow_nan=False, separators=(",", ":"), ensure_ascii=False)
    except JobError as error:
        return _failure(str(error))
    except Exception as error:  # the last door before the page: a named failure, never a dead worker
        return _failure(f"The core failed on this job ({type(error).__name__}: {error}). Nothing was changed; please report it.")


def _failure(message: str) -> str:
    return json.dumps({"kind": "failure", "message": message}, separators=(",", ":"), ensure_ascii=False)


@lru_cache(maxsize=2)
def _loaded(asked: str) -> Job:
    return load(*json.loads(asked))


def _job(request: Data) -> Job:
    """The job of a request; the page asks several things of each, one after the other."""
    return _loaded(json.dumps([request.get("job"), request.get("draws", DRAWS)]))


def _size(request: Data) -> Data:
    asked = request.get("ends", ENDS)
    ends = [end for end in ENDS if isinstance(asked, (list, tuple)) and end in asked]
    if not ends:
        raise JobError("ends: name the front, the rear or both.")
    return {"kind": "report", "report": report_of(_job(request), bool(request.get("bands", True)), ends)}


def _figures(request: Data) -> Data:
    end = request.get("end")
    if end not in ENDS:
        raise JobError("end: name the front or the rear.")
    return {"kind": "figures", "figures": figures_data(_job(request), end)}


def _start(request: Data) -> Data:
    return {"kind": "job", "job": start(str(request.get("use", "")), str(request.get("rider", "")))}


def _open(request: Data) -> Data:
    jobs, refused = read_jobs(str(request.get("text", "")), "This file")
    return {"kind": "jobs", "jobs": jobs, "refused": refused}


def _compare(request: Data) -> Data:
    return {"kind": "comparison", "comparison": comparison(load(request.get("before")), load(request.get("after")))}


def _next_visit(request: Data) -> Data:
    return {"kind": "job", "job": next_visit(request.get("job", {}), str(request.get("date", "")))}


_HANDLERS: dict[str, Callable[[Data], Data]] = {
    "size": _size,
    "figures": _figures,
    "start": _start,
    "open": _open,
    "compare": _compare,
    "next visit": _next_visit,
}
