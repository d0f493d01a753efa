"""The usual windows of an end's results, as data."""

from __future__ import annotations

from calc.job import Job
from calc.model import sag_window
from calc.practice import Axle
from calc.report.data import Data


def windows_data(job: Job, axle: Axle) -> Data:
    """Sags [mm, as they are read], ride frequency [Hz], end force over rider load [-]."""
    rows: Data = {}
    for row in ("free sag", "rider sag"):
        low, high = sag_window(job, axle, row)
        rows[row.replace(" ", "_")] = {"low": low, "high": high, "unit": "mm"}
    for row, name, unit in (("ride frequency", "frequency", "Hz"), ("end multiple", "end_multiple", "")):
        found = job.usual(f"{row} {axle}")
        assert found is not None
        rows[name] = {"low": found.low, "high": found.high, "unit": unit, "confidence": found.confidence}
    return rows
