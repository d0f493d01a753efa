"""What an oil's sheet says, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from calc.job import Job
from calc.report.quantity import figure_text
from calc.report.types import OilOrder, OilPoint, OilReport

NOTE = (
    "The number called weight on a tin (5W, 10) means nothing between tins: no rule says which viscosity a fork oil of that number "
    "has. Compare oils by mm²/s at 40 °C."
)


def sheet_words(job: Job, report: OilReport) -> tuple[str, ...]:
    """The change from cold to hot first, since it is what the letter tells; then what it rests on, growth, index, mix, order."""
    return (
        *_thinner(report),
        *_assumed(job, report),
        *_growth(job, report),
        *_index(report),
        *_mix(report),
        *_frost(report),
        *_order(job, report),
    )


def _thinner(report: OilReport) -> Iterator[str]:
    change = report.change
    if change is None:
        if not report.problem:
            yield "Hot is entered no warmer than the cold start: there is nothing to compare."
        return
    cold, hot = report.points[0], report.points[-1]
    if change.thinner is None:
        return
    yield (
        f"Cold to hot, {_said(cold)} to {_said(hot)}, the oil is {change.thinner.text} times thinner. "
        "Where damping follows viscosity (bleeds, small gaps) it falls by about that; where it follows density (ports at speed) "
        f"by {change.lighter.text} %. A damper is a bit of both: this is no promise of clicks."
    )


def _assumed(job: Job, report: OilReport) -> Iterator[str]:
    """The temperatures that nobody entered, and where to."""
    where = {
        "cold": ("place.bled_temperature", "Leg temperature when bled, which comes with that in use"),
        "hot": ("conditions.hot_temperature", "Fork when hot, at Check"),
    }
    told = [
        f"{point.label.lower()} {figure_text(point.temperature)} (enter: {where[point.when][1]})"
        for point in report.points
        if point.when in where and not job.entered(where[point.when][0])
    ]
    if told:
        yield f"Assumed: {', '.join(told)}."


def _said(point: OilPoint) -> str:
    told = point.mix or point.first
    assert told is not None
    return f"{figure_text(told)} at {figure_text(point.temperature)}"


def _growth(job: Job, report: OilReport) -> Iterator[str]:
    if report.change is None:
        return
    volume = f"{figure_text(report.change.leg)} {'as read' if report.legs else 'assumed'}"
    inside = " around the cartridge" if job.choice("front.air") == "sealed cartridge" else ""
    yield f"The oil of one leg{inside}, {volume}, grows by {figure_text(report.change.growth)} on the way."


def _index(report: OilReport) -> Iterator[str]:
    named = {"of the oil": report.index.first, "of the second": report.index.second, "of the mix": report.index.mix}
    told = [f"{index.text} {name}" for name, index in named.items() if index is not None]
    if told:
        words = told[0].removesuffix(" of the oil") if len(told) == 1 else ", ".join(told)
        yield f"Viscosity index {words}: the higher, the less it thins as it warms."
    elif report.points and report.points[0].first is not None:
        yield "Thinner than 2 mm²/s at 100 °C: a viscosity index is not defined for it."


def _mix(report: OilReport) -> Iterator[str]:
    if report.index.mix is not None or any(point.mix for point in report.points):
        yield (
            "The mix is an estimate, by volume: it may not hold for oils with thickeners that keep them from thinning (a viscosity "
            "index well above 100 tells of them)."
        )


def _frost(report: OilReport) -> Iterator[str]:
    if any(point.first is not None and point.temperature.value < 0 for point in report.points):
        yield "In frost an oil near its pour point is thicker than this: the line holds where it is all liquid."


def _order(job: Job, report: OilReport) -> Iterator[str]:
    if not report.orders:
        yield "Oil to order: measure what one leg takes (Oil in the leg), and it is told in litre tins."
        return
    legs = [one.text for one in report.legs]
    each = f"{legs[0]} ml a leg" if len(set(legs)) == 1 else f"{legs[0]} ml left, {legs[1]} ml right"
    inside = " What is inside the cartridges comes on top." if job.choice("front.air") == "sealed cartridge" else ""
    yield f"To order, {each}: {'; '.join(_tins(one) for one in report.orders)}.{inside}"


def _tins(order: OilOrder) -> str:
    name = "" if order.name == "Oil" else f"{order.name.lower()} {figure_text(order.volume)}, "
    return f"{name}{figure_text(order.tins)}, {figure_text(order.left)} left over"
