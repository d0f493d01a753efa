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
_UNEQUAL = {"unequal": "A different rate in each leg"}


def kind_fields(axle: Axle, part: Part, rates: tuple[float, float], stroke: float) -> tuple[Field, ...]:
    """Fields of spring kinds for one end, with the limits [N/mm] of a rate and the longest stroke [mm]."""
    kind = f"{axle}.spring_kind"
    kinds = _KINDS | _UNEQUAL if axle == "front" else _KINDS
    two = {kind: ("stacked", "nested")}
    table = {"second_dimension": "force", "second_unit": "N", "second_low": 0.0, "second_high": 60000.0}
    return (
        Field(
            kind, "Kind of spring", part, Kind.CHOICE, choices=kinds, default=Default(choice="single"), end=axle, typed="stated",
            how="With two springs, other rates replace the main one; a progressive spring is scaled in shape.",
        ),
        Field(
            f"{axle}.second_rate", "Second spring rate", part, _Q, "spring rate", "N/mm", *rates, 0.2, 2, plus_minus_relative=0.03, main=True,
            when=two, end=axle, typed="stated", how="From its marking, or better a spring tester. It stays in, whichever main spring is chosen.",
        ),
        Field(
            f"{axle}.second_room", "Second spring closes after", part, _Q, "length", "mm", 1, stroke, 1, 0, plus_minus=1, main=True,
            when={kind: ("stacked",)}, end=axle, how="Its free length minus its solid length, or the distance to its stop.",
        ),
        Field(
            f"{axle}.second_later", "Second spring joins after", part, _Q, "length", "mm", 0, stroke, 1, 0, plus_minus=1, main=True,
            when={kind: ("nested",)}, end=axle, how="The main spring's free length minus the second one's, with seats and spacers counted.",
        ),
        Field(
            f"{axle}.second_free", "Second spring free length", part, _Q, "length", "mm", 5, 700, 1, 0, plus_minus=1, when=two, end=axle,
            how="Out of the fork or shock, on a bench. With its solid length, its coil bind is checked too.",
        ),
        Field(
            f"{axle}.second_solid", "Second spring solid length", part, _Q, "length", "mm", 2, 500, 1, 0, plus_minus=1, when=two, end=axle,
            how="All coils touching: with ground ends, total coils times wire diameter. Leave empty to skip the check.",
        ),
        _pairs(
            f"{axle}.table", "Force against length", part, axle, stroke * 1.5, {kind: ("progressive",)}, table,
            "Millimetres compressed from free length, and the force there in newtons: 0 0; 50 210; 100 440. Go to full travel plus "
            "preload. Other rates are assumed to have the same shape.",
        ),
        Field(
            f"{axle}.table_error", "Error of the table's forces", part, _Q, "share", "%", -20, 20, 0.5, 1, plus_minus=3, when={kind: ("progressive",)},
            default=Default(value=0.0, plus_minus=3.0, reason="a drill press on bathroom scales; common practice, no source"), end=axle,
            how="0, with a +/- of 1 % for a spring tester, 3 % for a drill press on bathroom scales.",
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
            f"{axle}.topout_rate", "Top-out spring rate", part, _Q, "spring rate", "N/mm", 2, 400, 1, 1, plus_minus_relative=0.1, main=True,
            when={f"{axle}.topout": ("spring",)}, end=axle, how="From its marking, its wire and coil, or a tester.", typed="stated",
        ),
        Field(
            rubber, "Bump rubber", part, Kind.CHOICE, end=axle, default=Default(choice="none"), typed="stated",
            choices={"none": "Left out", "rate": "By its rate", "table": "From a table"},
            how="Never part of the force at full travel. The curve and the landing energy are shown with it and without.",
        ),
        Field(
            f"{axle}.rubber_length", "Rubber acts over the last", part, _Q, "length", "mm", 1, 120, 1, 0, plus_minus=2, main=True,
            when={rubber: ("rate", "table")}, end=axle, how="Stroke from first contact to the stop.",
        ),
        Field(
            f"{axle}.rubber_rate", "Rubber rate", part, _Q, "spring rate", "N/mm", 1, 2000, 5, 0, plus_minus_relative=0.3, main=True,
            when={rubber: ("rate",)}, end=axle, how="Force at the stop divided by the length it acts over.", typed="stated",
        ),
        _pairs(
            f"{axle}.rubber_table", "Rubber force", part, axle, 120.0, {rubber: ("table",)}, table,
            "Millimetres squeezed, and the force there in newtons: 0 0; 10 300; 20 1400.",
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
