"""A setup under the job's other conditions, in figures and words."""

from __future__ import annotations

from collections.abc import Mapping

from calc.conditions.changes import HOME, UnderCondition, under_conditions
from calc.end.setup import Setup
from calc.job import Job
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.quantity import banded_text, number_text, quantity, size_text, with_half
from calc.report.setups import Cases, setup_report
from calc.report.types import Change, Condition, ConditionBarred, ConditionFigures, Quantity, SetupReport
from calc.uncertainty.conditions import Sure, condition_bands

KILO = 1e-3  # the core's forces are in N


def condition_rows(job: Job, axle: Axle, setup: Setup, recommended: bool) -> tuple[Condition, ...]:
    """A row for each condition: sags, end force, "acts like", and the gap that restores the built setup, each with its +/-.

    A setup that is not `recommended` is the one found: its +/- is that of its readings.
    """
    rows = under_conditions(job, axle, setup)
    sure = condition_bands(job, axle, setup if recommended else None) if rows else {}
    cases = Cases.of(job, axle)
    at_home = next((row.figures for row in rows if row.figures is not None and row.key == HOME), None)
    home = None if at_home is None else setup_report(setup, at_home, cases)
    return tuple(_row(job, row, setup, cases, home, sure.get(row.key)) for row in rows)


def _row(job: Job, row: UnderCondition, setup: Setup, cases: Cases, home: SetupReport | None, sure: Sure | None) -> Condition:
    label = _label(job, row.key)
    if row.figures is None:
        assert row.problem is not None
        return ConditionBarred(row.key, label, f"{row.problem.message} {row.problem.way_out}", "")
    here, halves = setup_report(setup, row.figures, cases), {} if sure is None else sure.halves
    like = _or_none(row.acts_like, "change of gap at home, same end force", halves.get("acts_like"))
    back = _or_none(row.restoring, "gap that restores it here", halves.get("restoring"))
    change = None if home is None or row.key == HOME else _change(here, home, halves)
    left_out = job.draws if sure is None else sure.left_out
    return ConditionFigures(
        key=row.key,
        label=label,
        problem=None,
        topped_out=here.topped_out,
        free_sag=with_half(here.free_sag, halves.get("free_sag")),
        rider_sag=with_half(here.rider_sag, halves.get("rider_sag")),
        frequency=with_half(here.frequency, halves.get("frequency")),
        end_force=with_half(here.end_force, halves["end_force"] * KILO if "end_force" in halves else None),
        end_multiple=with_half(here.end_multiple, halves.get("end_multiple")),
        acts_like=like,
        restoring=back,
        change=change,
        draws=job.draws,
        left_out=left_out,
        words=_words(like, back, change, setup, left_out, job.draws),
    )


def _or_none(millimetres: object, case: str, half: float | None) -> Quantity | None:
    return None if millimetres is None else with_half(quantity(millimetres, "mm", case, 0), half)


def _change(here: SetupReport, home: SetupReport, halves: Mapping[str, float]) -> Change:
    """What changes against as built, with a +/- of its own: the same draws stand behind both."""

    def between(now: Quantity, was: Quantity, name: str) -> Quantity:
        change = quantity(now.value - was.value, now.unit, f"against as built, {now.case}", now.decimals)
        return with_half(change, halves.get(f"change_{name}"))

    sag = between(here.rider_sag, home.rider_sag, "rider_sag")
    return Change(sag, between(here.end_multiple, home.end_multiple, "end_multiple"))


def _label(job: Job, key: str) -> str:
    hot = f"{convert(job.number('conditions.hot_temperature'), 'K', '°C'):.0f} °C"
    high = f"{job.number('conditions.high_altitude') / 1000:.0f} m"
    labels = {
        "as built": "As built",
        "hot": f"Legs at {hot}",
        "high": f"At {high}, not bled there",
        "high, bled there": f"At {high}, bled there",
        "hot and high": f"At {high}, legs at {hot}",
    }
    if key == "other rider":
        return f"Rider of {job.number('conditions.rider'):.0f} kg"
    if key == "luggage":
        return f"With {job.number('conditions.luggage'):.0f} kg of luggage"
    return labels[key]


def _words(like: Quantity | None, back: Quantity | None, change: Change | None, setup: Setup, left_out: int, draws: int) -> str:
    """What the gap would do as much as the condition; where there is no gap, what changes against as built."""
    text = change_words(change) if like is None else gap_words(like, back, float(setup.gap))
    if 0 < left_out < draws:
        text += f" In {left_out} of {draws} runs with your ± varied this cannot be."
    return text.strip()


def gap_words(like: Quantity, back: Quantity | None, gap: float) -> str:
    """Which gap it rides as if it had, and which gap brings the force at full travel back."""
    if size_text(like) == "0":
        half = like.plus_minus_text and f" ({like.plus_minus_text} mm of gap)"
        return f"Rides as built{half}."
    text = f"Rides as if the gap were {_size(like)} mm {'smaller' if like.value < 0 else 'larger'}"
    if back is None:
        return f"{text}; no gap brings the force at full travel back."
    if not gap:
        return f"{text}."
    text = f"{text}. Set {_size(back)} mm to get the force at full travel back"
    simply = number_text(gap - like.value, 0)
    if simply == back.text:
        return f"{text}."
    counts = "more" if abs(back.value - gap) < abs(like.value) else "less"
    return f"{text}: not {simply}, since a millimetre of gap counts for {counts} there."


def change_words(change: Change | None) -> str:
    """What a condition changes against as built."""
    if change is None:
        return ""
    sag, force = change.rider_sag, change.end_multiple
    at_end = f"force at full travel {_size(force)} × rider load {_way(force)}"
    return f"Compared with as built: rider sag {_size(sag)} mm {_way(sag)}, {at_end}."


def _way(change: Quantity) -> str:
    return "less" if change.value < 0 else "more"


def _size(figure: Quantity) -> str:
    """A number without its sign, and its +/-."""
    return banded_text(figure, size_text(figure))
