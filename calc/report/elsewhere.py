"""Hot, high, elsewhere as data and words."""

from __future__ import annotations

from collections.abc import Mapping

from calc.conditions.changes import HOME, UnderCondition, under_conditions
from calc.end.setup import Setup
from calc.job import Job
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.data import Data, number_text, plus_minus_text, quantity, with_half
from calc.report.setups import Cases, setup_data
from calc.uncertainty.conditions import Sure, condition_bands

# What a row shows, its name among the bands, and one of the report's units in internal ones.
_SHOWN = {"free_sag": 1.0, "rider_sag": 1.0, "frequency": 1.0, "end_force": 1000.0, "end_multiple": 1.0}
_CHANGES = ("rider_sag", "end_multiple")


def elsewhere_data(job: Job, axle: Axle, setup: Setup, recommended: bool) -> list[Data]:
    """A row for each condition: sags, end force, "acts like", and the gap that restores the built setup, each with its +/-.

    A setup that is not `recommended` is the one found: its +/- is that of its readings.
    """
    rows = under_conditions(job, axle, setup)
    sure = condition_bands(job, axle, setup if recommended else None) if rows else {}
    cases = Cases.of(job, axle)
    built = next((row.figures for row in rows if row.figures is not None and row.key == HOME), None)
    home = None if built is None else setup_data(setup, built, cases)
    return [_row(job, row, setup, cases, home, sure.get(row.key)) for row in rows]


def _row(job: Job, row: UnderCondition, setup: Setup, cases: Cases, home: Data | None, sure: Sure | None) -> Data:
    label = _label(job, row.key)
    if row.figures is None:
        assert row.problem is not None
        return {"key": row.key, "label": label, "problem": f"{row.problem.message} {row.problem.way_out}", "words": ""}
    whole, halves = setup_data(setup, row.figures, cases), {} if sure is None else sure.halves
    data: Data = {"key": row.key, "label": label, "problem": None, "topped_out": whole["topped_out"]}
    data |= {name: with_half(whole[name], _half(halves, name, unit)) for name, unit in _SHOWN.items()}
    like = None if row.acts_like is None else quantity(row.acts_like, "mm", "change of gap at home, same end force", 0)
    back = None if row.restoring is None else quantity(row.restoring, "mm", "gap that restores it here", 0)
    data["acts_like"] = None if like is None else with_half(like, halves.get("acts_like"))
    data["restoring"] = None if back is None else with_half(back, halves.get("restoring"))
    data["change"] = None if home is None or row.key == HOME else _change(whole, home, halves)
    data["draws"] = job.draws
    data["left_out"] = job.draws if sure is None else sure.left_out
    return data | {"words": _words(data, setup)}


def _half(halves: Mapping[str, float], name: str, unit: float) -> float | None:
    return None if name not in halves else halves[name] / unit


def _change(here: Data, home: Data, halves: Mapping[str, float]) -> Data:
    """What changes against as built, with a +/- of its own: the same draws stand behind both."""
    changes = {}
    for name in _CHANGES:
        figure = here[name]
        change = quantity(
            figure["value"] - home[name]["value"], figure["unit"], f"against as built, {figure['case']}", figure["decimals"]
        )
        changes[name] = with_half(change, _half(halves, f"change_{name}", _SHOWN[name]))
    return changes


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


def _words(row: Data, setup: Setup) -> str:
    """What the gap would do as much as the condition; where there is no gap, what changes against as built."""
    like, back = row["acts_like"], row["restoring"]
    if like is None:
        text = _change_words(row["change"])
    elif number_text(abs(like["value"]), like["decimals"]) == "0":
        text = (
            " ".join(filter(None, ("Acts like the gap as built", plus_minus_text(like), "mm" if plus_minus_text(like) else "")))
            + "."
        )
    else:
        text = f"Acts like {_size(like)} mm {'less' if like['value'] < 0 else 'more'} gap"
        if back is None:
            text += "; no gap restores it."
        else:
            text += f"; gap {_size(back)} mm restores it." if float(setup.gap) else "."
    if 0 < row["left_out"] < row["draws"]:
        text += f" {row['left_out']} of {row['draws']} draws of your readings cannot be so."
    return text.strip()


def _change_words(change: Data | None) -> str:
    if change is None:
        return ""
    sag, force = change["rider_sag"], change["end_multiple"]
    return f"Against as built: rider sag {_size(sag)} mm {_way(sag)}, end force {_size(force)} × load {_way(force)}."


def _way(change: Data) -> str:
    return "less" if change["value"] < 0 else "more"


def _size(figure: Data) -> str:
    """A number without its sign, and its +/-."""
    return f"{number_text(abs(figure['value']), figure['decimals'])} {plus_minus_text(figure)}".strip()
