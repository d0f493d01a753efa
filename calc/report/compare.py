"""Two jobs side by side, as two visits of one bike: what was entered differently and what is recommended differently."""

from __future__ import annotations

from dataclasses import dataclass

from calc.job import Job, Resolved
from calc.job.field import Kind
from calc.practice import Axle
from calc.report.figures import figures_report
from calc.report.quantity import figure_text
from calc.report.ride import ride_report
from calc.report.types import FiguresReport
from calc.report.words import named
from calc.uncertainty.corrected import sags_found


@dataclass(frozen=True, slots=True)
class EntryRow:
    """A field that was not entered alike; empty text where nothing was entered."""

    path: str
    label: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class ResultRow:
    """A figure that is not recommended alike; empty text where none is."""

    end: Axle
    label: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two visits side by side: what was entered, what was recommended, what the rides said."""

    entries: tuple[EntryRow, ...]
    results: tuple[ResultRow, ...]
    rides: tuple[ResultRow, ...]


_FIGURES = {
    "preload": "preload",
    "gap": "gap",
    "free_sag": "free sag",
    "rider_sag": "rider sag",
    "frequency": "ride frequency",
    "end_force": "end force",
}
_ENDS: dict[Axle, str] = {"front": "Front", "rear": "Rear"}


def comparison(before: Job, after: Job) -> Comparison:
    """Compare two jobs.

    Parameters: before, after, as read.
    Returns: `entries`, a row of path, label, before and after for each field that was not entered alike; `results`, such a row for
    each figure of the recommended setups that is not told alike, with the end it belongs to; `rides`, such a row for what the rides
    did not say alike. Empty text: nothing entered, none recommended, not ridden.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.job import load
        >>> one = {"format": "stanchion-job", "version": 4, "bike": {"use": "enduro"}, "rider": {"mass": "80 kg"}}
        >>> comparison(load(one), load(one | {"rider": {"mass": "82 kg"}})).entries
        (EntryRow(path='rider.mass', label='Rider in full kit', before='80 kg, stated', after='82 kg, stated'),)
    """
    entries = tuple(
        EntryRow(path, _label(one), *said)
        for path, one in before.fields.items()
        if (said := _entered_each(one, after.fields[path]))
    )
    rides = [_rides(job) for job in (before, after)]
    return Comparison(
        entries,
        tuple(row for end in _ENDS for row in _results(end, before, after)),
        tuple(row for end in _ENDS for row in _unlike(end, rides[0].get(end, {}), rides[1].get(end, {}))),
    )


def comparison_text(before: Job, after: Job) -> str:
    """The comparison as plain text for the command line."""
    found = comparison(before, after)
    names = [job.header["date"] or job.header["name"] or "no date" for job in (before, after)]
    lines = []
    for title, rows in (("Entered", found.entries), ("Recommended", found.results), ("Ridden", found.rides)):
        if title == "Ridden" and not rows:
            continue  # most visits that are compared were not ridden yet
        lines += [f"{title}:" if rows else f"{title}: the same."]
        lines += [f"  {row.label}: {row.before or '-'} -> {row.after or '-'}" for row in rows]
    return "\n".join([f"{names[0]} -> {names[1]}", *lines])


def _label(found: Resolved) -> str:
    of = found.field.group if found.field.end == "neither" else found.field.end
    end = {str(axle): word for axle, word in _ENDS.items()}.get(of, "")
    known = found.field.label
    return known if not end or end.lower() in known.lower() else f"{end}: {known[0].lower()}{known[1:]}"


def _entered_each(one: Resolved, other: Resolved) -> tuple[str, str] | None:
    """How each was entered; None where alike. A +/- is told where it is all that differs."""
    for band in (False, True):
        said = _entered(one, band), _entered(other, band)
        if said[0] != said[1]:
            return said
    return None


def _entered(found: Resolved, with_band: bool) -> str:
    if not found.entered:
        return ""
    text = found.field.choices.get(found.choice, found.text) if found.field.kind is Kind.CHOICE else found.text
    unit = f" {found.unit}" if found.number is not None and _is_bare(text) and found.unit else ""
    band = f" ±{found.plus_minus:g}" if with_band and found.plus_minus is not None else ""
    return f"{text}{unit}{band}, {found.origin}" if found.origin else text


def _is_bare(text: str) -> bool:
    return text.replace(",", "").replace(".", "").strip("+- ").isdigit()


def _results(end: Axle, before: Job, after: Job) -> list[ResultRow]:
    return _unlike(end, *(_told(figures_report(job, end)) for job in (before, after)))


def _rides(job: Job) -> dict[Axle, dict[str, str]]:
    """What the ride of a visit said, by end."""
    found = sags_found(job, with_draws=False)
    return {
        end.axle: {
            label: figure_text(figure)
            for label, figure in (("stroke not used", end.left), ("springs and gas at the mark", end.multiple))
            if figure is not None
        }
        | ({"after the ride": end.change.words} if end.change else {})
        for end in ride_report(job, found.correct(job), found)
    }


def _unlike(end: Axle, one: dict[str, str], other: dict[str, str]) -> list[ResultRow]:
    return [
        ResultRow(end, f"{_ENDS[end]}: {label}", one.get(label, ""), other.get(label, ""))
        for label in dict.fromkeys((*one, *other))
        if one.get(label) != other.get(label)
    ]


def _told(figures: FiguresReport | None) -> dict[str, str]:
    if figures is None:
        return {}
    setup = figures.setup
    known = {label: getattr(setup, key) for key, label in _FIGURES.items()}
    return {"pressure" if setup.pressure else "spring": named(setup)} | {
        label: figure_text(figure) for label, figure in known.items() if figure is not None
    }
