"""The report's types: frozen through and through, each part JSON, and each drawn by the page or excused here."""

from __future__ import annotations

import re
import types
from collections.abc import Iterator
from dataclasses import FrozenInstanceError, fields, is_dataclass
from pathlib import Path

import pytest

import calc.report.types as declared
from calc.boundary import to_json
from calc.job import load
from calc.report import part_of, report, report_of
from calc.report.types import values
from tests.support.documents import demo
from tests.support.golden.jobs import golden_jobs

WEB = Path(__file__).parents[3] / "web"
KINDS = [kind for name in declared.__all__ if is_dataclass(kind := getattr(declared, name))]

# What the page draws nothing from, by type, each with its reason.
IN_WORDS = "the page shows the sentence made from it"
DERIVED = "follows from figures that are drawn; for whoever reads the JSON"
UNDRAWN = "on the command line and in the JSON; the page has no place for it yet"
NOT_DRAWN = {
    "Attitude.front_height": IN_WORDS, "Attitude.rear_height": IN_WORDS, "Attitude.clamp_shift": IN_WORDS, "Attitude.rake_change": IN_WORDS,
    "EndOk.moved": IN_WORDS, "Moved.along": IN_WORDS, "Seat.move": IN_WORDS, "Seat.turns": IN_WORDS, "BrakingFigures.front_tyre": DERIVED,
    "ConditionFigures.acts_like": IN_WORDS, "ConditionFigures.restoring": IN_WORDS, "ConditionFigures.change": IN_WORDS,
    "ConditionFigures.draws": IN_WORDS, "ConditionFigures.topped_out": DERIVED, "HowSure.draws": IN_WORDS, "HowSure.undecided": IN_WORDS,
    "Curve.force_unit": "the chart's axis is always in kN", "EndLoads.alone": DERIVED, "EndLoads.sprung_mass": DERIVED,
    "SetupReport.energy_per_mass": DERIVED, "SetupReport.flat_drop": IN_WORDS, "SetupReport.wheel_rate": DERIVED, "SetupReport.topped_out": IN_WORDS,
    "SetupReport.bind_clearance": "what bars a candidate names it", "SetupReport.second_bind_clearance": "what bars a candidate names it",
    "SetupReport.free_sag_friction": UNDRAWN, "SetupReport.rider_sag_friction": UNDRAWN, "SetupReport.landing_energy": UNDRAWN,
    "SetupReport.landing_energy_rubber": IN_WORDS, "SizedEnd.standard": UNDRAWN,
    "EndOk.verdict": IN_WORDS, "SizedEnd.yardstick": IN_WORDS,
    "YardstickReport.source": IN_WORDS, "Candidate.gap_other": UNDRAWN, "Curve.wheel_rate": UNDRAWN,
    "SagsOfEnd.spring_rate": IN_WORDS, "SagsOfEnd.friction": IN_WORDS,
    "StateFigures.free_sag": UNDRAWN, "StateFigures.end_force": UNDRAWN, "StateFigures.gas_share": IN_WORDS, "StateFigures.gap_now": IN_WORDS,
    "Replacement.preload": IN_WORDS, "Replacement.more": IN_WORDS, "Replacement.gap": IN_WORDS, "Replacement.oil": IN_WORDS,
    "OilReport.change": IN_WORDS, "OilChange.thinner": IN_WORDS, "OilChange.lighter": IN_WORDS, "OilChange.growth": IN_WORDS,
    "OilReport.legs": IN_WORDS, "OilReport.orders": IN_WORDS, "OilOrder.tins": IN_WORDS,
    "DampingOfEnd.moved": IN_WORDS, "DampingOfEnd.wheel": IN_WORDS, "OilMoved.base": IN_WORDS, "OilMoved.speed": IN_WORDS, "OilMoved.pushed_out": IN_WORDS, "OilMoved.piston": IN_WORDS,
    "OilMoved.ports": IN_WORDS, "OilMoved.vapour": IN_WORDS, "AtWheel.critical": IN_WORDS, "AtWheel.rebound_ratio": IN_WORDS, "AtWheel.compression_ratio": IN_WORDS,
    "DampingOfEnd.clickers": "the card shows the line made of it", "HoldsAt.stated_drop": UNDRAWN, "HoldsAt.refill": IN_WORDS, "ShimChange.ratio": IN_WORDS,
    "RideChange.brings": IN_WORDS, "RideOfEnd.landing": IN_WORDS, "RideOfEnd.multiple": IN_WORDS,
    "Verdict.chances": IN_WORDS, "Verdict.chance": IN_WORDS, "Chances.softer": IN_WORDS, "Chances.stiffer": IN_WORDS,
    "GapStepReport.gas_before": IN_WORDS, "GapStepReport.gas_after": IN_WORDS,
    "OfferBill.net": IN_WORDS, "OfferBill.labour": IN_WORDS,
    "WholeBike.modifiers": UNDRAWN, "Modifier.when": UNDRAWN,
}  # fmt: skip


def walk(part: object, where: str = "report") -> Iterator[tuple[str, object]]:
    yield where, part
    if is_dataclass(part):
        for name, value in values(part).items():
            yield from walk(value, f"{where}.{name}")
    elif isinstance(part, types.MappingProxyType):
        for name, value in part.items():
            yield from walk(value, f"{where}.{name}")
    elif isinstance(part, tuple):
        for index, value in enumerate(part):
            yield from walk(value, f"{where}[{index}]")


@pytest.mark.parametrize("name", ["demo", "no spring fits, one entry refused", "two-up with luggage"])
def test_what_is_kept_of_a_report_cannot_be_changed(name):
    """The ends are kept from one question to the next: whoever changed one would change the next answer."""
    told = report(golden_jobs()[name])
    for where, part in walk(told.ends):
        assert part is None or isinstance(part, (str, bool, int, float, tuple, types.MappingProxyType)) or is_dataclass(part), where
    with pytest.raises(FrozenInstanceError):
        told.ends.front.problems = ()


def test_no_type_can_be_changed_or_given_more():
    for kind in KINDS:
        assert kind.__dataclass_params__.frozen, kind
        assert "__slots__" in vars(kind), kind
        assert len(fields(kind)) > 1, f"{kind}: the reader of a type's values takes two or more"


def test_the_same_job_gives_the_same_report_by_value():
    one, other = load(demo()), load(demo())
    assert one is not other
    assert report_of(one) == report_of(other)
    assert to_json(part_of(one, "front")) == to_json(part_of(other, "front"))


def sources() -> str:
    """Every view and store of the page; not its tests, and not the types themselves."""
    paths = [path for folder in ("parts", "store") for end in ("ts", "tsx") for path in (WEB / folder).rglob(f"*.{end}")]
    return "\n".join(path.read_text(encoding="utf-8") for path in [*paths, WEB / "Page.tsx"] if ".test." not in path.name)


def test_the_page_draws_every_part_of_the_report_or_says_why_not():
    """A part's name is read somewhere: as a property, or taken out of its object. A name that two types share counts for both."""
    words = set(re.findall(r"\??\.(\w+)|\b(\w+)(?=\s*[,}:])", sources()))
    read = {name for pair in words for name in pair if name}
    parts = {f"{kind.__name__}.{name}" for kind in KINDS for name in vars(kind).get("__annotations__", {})}
    unread = {part for part in parts if part.split(".")[1] not in read}
    assert unread - set(NOT_DRAWN) == set()
    assert set(NOT_DRAWN) - parts == set(), "no longer a part"
