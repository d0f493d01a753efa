"""The usual windows of an end's results."""

from __future__ import annotations

from calc.job import Job
from calc.model import sag_window
from calc.practice import Axle
from calc.report.types import Window, Windows


def usual_windows(job: Job, axle: Axle) -> Windows:
    """Sags [mm, as they are read], ride frequency [Hz], end force over rider load [-]."""

    def sag(row: str) -> Window:
        low, high = sag_window(job, axle, row)
        return Window(low, high, "mm", "")

    def usual(row: str, unit: str) -> Window:
        found = job.usual(f"{row} {axle}")
        assert found is not None
        return Window(found.low, found.high, unit, found.confidence)

    return Windows(sag("free sag"), sag("rider sag"), usual("ride frequency", "Hz"), usual("end multiple", ""))
