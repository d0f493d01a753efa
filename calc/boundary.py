"""The one door of the core for the page: JSON text in, JSON text out. It answers always and never raises."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated, Any, Literal

from calc.job import DRAWS, Job, JobError, load
from calc.job.customer import job_of
from calc.job.declared import Declared
from calc.job.starter import start
from calc.job.text import read_jobs, read_json
from calc.job.visit import next_visit
from calc.practice import Axle
from calc.report import ENDS
from calc.report.compare import Comparison, comparison
from calc.report.figures import figures_report
from calc.report.types import FiguresReport, MyBike, PartReport, Report, StatesLooked, values

Request = Mapping[str, Any]
Document = Annotated[dict[str, Any], Declared("JobDocument")]


@dataclass(frozen=True, slots=True)
class ReportReply:
    """The report of both ends."""

    kind: Literal["report"]
    report: Report


@dataclass(frozen=True, slots=True)
class PartReply:
    """The report of one end."""

    kind: Literal["part"]
    report: PartReport


@dataclass(frozen=True, slots=True)
class FiguresReply:
    """An end's figures; None where no setup is chosen."""

    kind: Literal["figures"]
    figures: FiguresReport | None


@dataclass(frozen=True, slots=True)
class StatesReply:
    """The states of a fork along their strokes; None where it has no sealed cartridge."""

    kind: Literal["states"]
    states: StatesLooked | None


@dataclass(frozen=True, slots=True)
class JobReply:
    """A new job."""

    kind: Literal["job"]
    job: Document


@dataclass(frozen=True, slots=True)
class JobsReply:
    """The jobs of a file, and what is wrong with those that were refused."""

    kind: Literal["jobs"]
    jobs: list[Document]
    refused: list[str]


@dataclass(frozen=True, slots=True)
class ComparisonReply:
    """Two visits side by side."""

    kind: Literal["comparison"]
    comparison: Comparison


@dataclass(frozen=True, slots=True)
class MyBikeReply:
    """What can be said of a customer's readings, and the job that they make for a tuner."""

    kind: Literal["my bike"]
    job: Document
    found: MyBike


@dataclass(frozen=True, slots=True)
class FailureReply:
    """Why there is no answer."""

    kind: Literal["failure"]
    message: str


Reply = ReportReply | PartReply | FiguresReply | StatesReply | JobReply | JobsReply | ComparisonReply | MyBikeReply | FailureReply


def answer(text: str) -> str:
    """Answer one request of the page.

    Parameters: text, JSON: {"kind": "size", "job": {...}, "bands": true, "ends": ["front", "rear"], "draws": 200} (the last
    three may be left out), {"kind": "figures", "job": {...}, "end": "front"}, which is answered sooner and shown first,
    {"kind": "states", "job": {...}}, the states of its fork along their strokes, asked when they are looked at,
    {"kind": "start", "use": "enduro", "rider": "104 kg"}, {"kind": "open", "text": what a job file or a link holds},
    {"kind": "compare", "before": {...}, "after": {...}}, {"kind": "next visit", "job": {...}, "date": "2026-09-01"} or
    {"kind": "my bike", "said": {"bike.use": "enduro", "rider.mass": "88 kg", "rear.hanging_length": "625", ...}}.
    Returns: JSON of a Reply: {"kind": "report", "report": ...}, {"kind": "part", "report": ...} where one end was asked for,
    {"kind": "figures", "figures": ... or null where none is chosen}, {"kind": "states", "states": ... or null where the fork has
    no sealed cartridge}, {"kind": "job", "job": ...}, {"kind": "jobs", ...},
    {"kind": "comparison", ...}, {"kind": "my bike", "job": ..., "found": ...} or {"kind": "failure", ...}.
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
        return to_json(handler(request))
    except JobError as error:
        return _failure(str(error))
    except Exception as error:  # the last door before the page: a named failure, never a dead worker
        return _failure(f"The core failed on this job ({type(error).__name__}: {error}). Nothing was changed; please report it.")


def to_json(reply: object) -> str:
    """Write a reply, or a part of one, as JSON.

    Parameters: reply, of the types of the report.
    Returns: JSON; a mapping or one of the types becomes an object, a tuple a list.
    Raises: ValueError for a number that is not finite.
    Formula: none. No part holds itself, so the encoder need not look for that.
    Source: RFC 8259.
    Example:
        >>> to_json(FailureReply("failure", "no"))
        '{"kind":"failure","message":"no"}'
    """
    return json.dumps(reply, default=values, check_circular=False, allow_nan=False, separators=(",", ":"), ensure_ascii=False)


def _failure(message: str) -> str:
    return to_json(FailureReply("failure", message))


@lru_cache(maxsize=2)
def _loaded(asked: str) -> Job:
    return load(*json.loads(asked))


def _job(request: Request) -> Job:
    """The job of a request; the page asks several things of each, one after the other."""
    return _loaded(json.dumps([request.get("job"), request.get("draws", DRAWS)]))


def _size(request: Request) -> ReportReply | PartReply:
    from calc.report import part_of, report_of  # late: see `calc.report`

    asked = request.get("ends", ENDS)
    ends: list[Axle] = [end for end in ENDS if isinstance(asked, (list, tuple)) and end in asked]
    if not ends:
        raise JobError("ends: name the front, the rear or both.")
    job, with_bands = _job(request), bool(request.get("bands", True))
    if len(ends) == 1:
        return PartReply("part", part_of(job, ends[0], with_bands))
    return ReportReply("report", report_of(job, with_bands))


def _figures(request: Request) -> FiguresReply:
    for end in ENDS:
        if request.get("end") == end:
            return FiguresReply("figures", figures_report(_job(request), end))
    raise JobError("end: name the front or the rear.")


def _states(request: Request) -> StatesReply:
    from calc.report.states_looked import states_looked

    return StatesReply("states", states_looked(_job(request)))


def _start(request: Request) -> JobReply:
    return JobReply("job", start(str(request.get("use", "")), str(request.get("rider", ""))))


def _open(request: Request) -> JobsReply:
    jobs, refused = read_jobs(str(request.get("text", "")), "This file")
    return JobsReply("jobs", jobs, refused)


def _compare(request: Request) -> ComparisonReply:
    return ComparisonReply("comparison", comparison(load(request.get("before")), load(request.get("after"))))


def _next_visit(request: Request) -> JobReply:
    return JobReply("job", next_visit(request.get("job", {}), str(request.get("date", ""))))


def _my_bike(request: Request) -> MyBikeReply:
    from calc.report.customer import my_bike

    said = request.get("said")
    if not isinstance(said, dict):
        raise JobError("said: what the customer typed, by field.")
    return MyBikeReply("my bike", job_of(said), my_bike(said))


_HANDLERS: dict[str, Callable[[Request], Reply]] = {
    "size": _size,
    "figures": _figures,
    "states": _states,
    "start": _start,
    "open": _open,
    "compare": _compare,
    "next visit": _next_visit,
    "my bike": _my_bike,
}
