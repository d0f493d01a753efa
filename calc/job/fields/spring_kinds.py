"""How springs are put together, and what else pushes or pulls in a strut: declared once for both ends.

A kind is chosen first; only then do its own fields show.
"""

from __future__ import annotations

from collections.abc import Mapping

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY
_KINDS = {
    "single": "One spring",
    "stacked": "Two stacked, until one closes",
    "nested": "Two nested, one joins later",
    "progressive": "Progressive, from a table",
}
_UNEQUAL = {"unequal": "Another rate in each leg"}


def kind_fields(axle: Axle, part: Part, rates: tuple[float, float], stroke: float) -> tuple[Field, ...]:
    """Fields of spring kinds for one end, with the limits [N/mm] of a rate and the longest stroke [mm]."""
    kind = f"{axle}.spring_kind"
    kinds = _KINDS | _UNEQUAL if axle == "front" else _KINDS
    two = {kind: ("stacked", "nested")}
    table = {"second_dimension": "force", "second_unit": "N", "second_low": 0.0, "second_high": 60000.0}
    return (
        Field(
            kind, "Kind of spring", part, Kind.CHOICE, choices=kinds, default=Default(choice="single"), end=axle, typed="stated",
            how="Two or a progressive one: the fitted main spring is what other rates stand in for.",
        ),
        Field(
            f"{axle}.second_rate", "Second spring", part, _Q, "spring rate", "N/mm", *rates, 0.2, 2, plus_minus_relative=0.03, main=True,
            when=two, end=axle, typed="stated", how="Its marking, or better a spring tester. It is kept whatever main spring is chosen.",
        ),
        Field(
            f"{axle}.second_room", "Second spring closes after", part, _Q, "length", "mm", 1, stroke, 1, 0, plus_minus=1, main=True,
            when={kind: ("stacked",)}, end=axle, how="Its free length less its length with all coils touching, or until its stop.",
        ),
        Field(
            f"{axle}.second_later", "Second spring joins after", part, _Q, "length", "mm", 0, stroke, 1, 0, plus_minus=1, main=True,
            when={kind: ("nested",)}, end=axle, how="The main spring's free length less the second one's, seats and spacers counted.",
        ),
        Field(
            f"{axle}.second_free", "Second spring's free length", part, _Q, "length", "mm", 5, 700, 1, 0, plus_minus=1, when=two, end=axle,
            how="Out of the strut, on a table. With its solid length, coil bind of the second spring is checked.",
        ),
        Field(
            f"{axle}.second_solid", "Second spring's solid length", part, _Q, "length", "mm", 2, 500, 1, 0, plus_minus=1, when=two, end=axle,
            how="All coils touching: total coils times wire for ground ends. Empty: not checked.",
        ),
        _pairs(
            f"{axle}.table", "Force against length", part, axle, stroke * 1.5, {kind: ("progressive",)}, table,
            "Millimetres shortened from free length, and newtons there: 0 0; 50 210; 100 440. To full travel with preload. "
            "Other mean rates are taken as the same shape, an assumption.",
        ),
        Field(
            f"{axle}.table_error", "Table's forces off by", part, _Q, "share", "%", -20, 20, 0.5, 1, plus_minus=3, when={kind: ("progressive",)},
            default=Default(value=0.0, plus_minus=3.0, reason="a drill press on a bathroom scale; common practice, no source"), end=axle,
            how="0, with a +/- of 1 % for a spring tester, 3 % for a drill press on a bathroom scale.",
        ),
        *_stops(axle, part, table),
    )  # fmt: skip


def _stops(axle: Axle, part: Part, table: Mapping[str, object]) -> tuple[Field, ...]:
    """Top-out spring and bump rubber."""
    rubber = f"{axle}.rubber"
    return (
        Field(
            f"{axle}.topout", "Top-out spring", part, Kind.CHOICE, choices={"none": "Left out", "spring": "Counted"}, end=axle,
            default=Default(choice="none"), typed="stated", how="It acts over the first millimetres only. Zero and preload are read hanging, balanced on it.",
        ),
        Field(
            f"{axle}.topout_rate", "Top-out spring's rate", part, _Q, "spring rate", "N/mm", 2, 400, 1, 1, plus_minus_relative=0.1, main=True,
            when={f"{axle}.topout": ("spring",)}, end=axle, how="By its marking, wire and coil, or a tester.", typed="stated",
        ),
        Field(
            rubber, "Bump rubber", part, Kind.CHOICE, end=axle, default=Default(choice="none"), typed="stated",
            choices={"none": "Left out", "rate": "By its rate", "table": "From a table"},
            how="Never part of the end force. The curve and the landing energy are shown with it and without.",
        ),
        Field(
            f"{axle}.rubber_length", "Rubber acts over the last", part, _Q, "length", "mm", 1, 120, 1, 0, plus_minus=2, main=True,
            when={rubber: ("rate", "table")}, end=axle, how="Stroke of the strut from first touch to the stop.",
        ),
        Field(
            f"{axle}.rubber_rate", "Rubber's rate", part, _Q, "spring rate", "N/mm", 1, 2000, 5, 0, plus_minus_relative=0.3, main=True,
            when={rubber: ("rate",)}, end=axle, how="Force at the stop over the length it acts.", typed="stated",
        ),
        _pairs(
            f"{axle}.rubber_table", "Rubber's force", part, axle, 120.0, {rubber: ("table",)}, table,
            "Millimetres squeezed, and newtons there: 0 0; 10 300; 20 1400.",
        ),
    )  # fmt: skip


def _pairs(
    path: str,
    label: str,
    part: Part,
    axle: Axle,
    longest: float,
    when: Mapping[str, tuple[str, ...]],
    table: Mapping[str, object],
    how: str,
) -> Field:
    return Field(
        path, label, part, Kind.PAIRS, "length", "mm", 0, longest, main=True, when=when, end=axle, how=how, **table  # type: ignore[arg-type]
    )  # fmt: skip
