"""The report as whoever reads its JSON gets it: tests look at that, not at the core's own types."""

from __future__ import annotations

import json
from typing import Any

from calc.boundary import to_json
from calc.job import DRAWS, Job, load
from calc.practice import Axle
from calc.report import part_of
from calc.report import report_of as typed_report_of
from calc.report.figures import figures_report
from calc.report.text import report_text

Data = dict[str, Any]


def report(document: object, with_bands: bool = True, draws: int = DRAWS) -> Data:
    """The report of a job's document."""
    return report_of(load(document, draws), with_bands)


def report_of(job: Job, with_bands: bool = True) -> Data:
    """The report of a job."""
    return read(typed_report_of(job, with_bands))


def text(document: object, with_bands: bool = True) -> str:
    """The report as the command line prints it."""
    return report_text(typed_report_of(load(document), with_bands))


def part(document: object, axle: Axle, with_bands: bool = True) -> Data:
    """The report of one end alone."""
    return read(part_of(load(document), axle, with_bands))


def figures(job: Job, axle: Axle) -> Data | None:
    """An end's figures, ahead of its report."""
    return read(figures_report(job, axle))


def applies(told: Data, path: str) -> bool:
    """Whether a field applies; those that are idle and empty are not told."""
    return path in told["fields"] and told["fields"][path]["applies"]


def read(typed: object) -> Any:
    """What JSON makes of a part of the report."""
    return json.loads(to_json(typed))
