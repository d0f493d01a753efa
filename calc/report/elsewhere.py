"""Hot, high, elsewhere as data and words."""

from __future__ import annotations

from calc.elsewhere import Seen, seen
from calc.job import Job
from calc.quantity import convert
from calc.report.data import Data, number_text, quantity
from calc.report.setups import Cases, setup_data
from calc.setup import Setup

_SHOWN = ("free_sag", "rider_sag", "frequency", "end_force", "end_multiple", "topped_out")


def elsewhere_data(job: Job, end: str, setup: Setup) -> list[Data]:
    """A row for each condition: sags, end force, "acts like", and the gap that restores the built setup."""
    cases = Cases.of(job, end)
    return [_row(job, row, setup, cases) for row in seen(job, end, setup)]


def _row(job: Job, row: Seen, setup: Setup, cases: Cases) -> Data:
    label = _label(job, row.key)
    if row.figures is None:
        assert row.problem is not None
        return {"key": row.key, "label": label, "problem": f"{row.problem.message} {row.problem.way_out}", "words": ""}
    whole = setup_data(setup, row.figures, cases)
    data: Data = {"key": row.key, "label": label, "problem": None} | {name: whole[name] for name in _SHOWN}
    data["acts_like"] = None if row.acts_like is None else quantity(row.acts_like, "mm", "change of gap at home, same end force", 0)
    data["restoring"] = None if row.restoring is None else quantity(row.restoring, "mm", "gap that restores it here", 0)
    return data | {"words": _words(row, setup)}


def _label(job: Job, key: str) -> str:
    hot = f"{convert(job.number('elsewhere.hot_temperature'), 'K', '°C'):.0f} °C"
    high = f"{job.number('elsewhere.high_altitude') / 1000:.0f} m"
    labels = {
        "as built": "As built",
        "hot": f"Legs at {hot}",
        "high": f"At {high}, not bled there",
        "high, bled there": f"At {high}, bled there",
        "hot and high": f"At {high}, legs at {hot}",
    }
    if key == "other rider":
        return f"Rider of {job.number('elsewhere.rider'):.0f} kg"
    if key == "luggage":
        return f"With {job.number('elsewhere.luggage'):.0f} kg of luggage"
    return labels[key]


def _words(row: Seen, setup: Setup) -> str:
    if row.acts_like is None:
        return ""
    change = number_text(abs(row.acts_like), 0)
    if change == "0":
        return "Acts like the gap as built."
    acts = f"Acts like {change} mm {'less' if row.acts_like < 0 else 'more'} gap"
    if row.restoring is None:
        return f"{acts}; no gap restores it."
    return f"{acts}; gap {number_text(row.restoring, 0)} mm restores it." if float(setup.gap) else f"{acts}."
